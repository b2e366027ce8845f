package compile

import (
	"fmt"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/render"
	"benchwright/render/svg"
)

// reportRefusals reports each thing in a drawing that cannot be drawn, with
// its fix. At is the place that names the picture.
func (lib *library) reportRefusals(name string, at source.Place, msgs *diag.List) {
	file := lib.drawing(name)
	_, refused := svg.Read(file.Text)
	for _, r := range refused {
		d := msgs.Add(diag.Diagnostic{Slug: "drawing-refused", At: file.At(r.Start, r.End), Message: refusalSentence(r), Fix: fix(r)})
		d.Related = append(d.Related, diag.Related{At: at, Message: "the drawing is shown here"})
	}
}

// refusalSentence describes a refusal.
func refusalSentence(r svg.Refusal) string {
	switch r.Kind {
	case svg.Malformed:
		return "the drawing is not well-formed XML in UTF-8: " + r.What
	case svg.NotSVG:
		return "the file holds no SVG drawing"
	case svg.Declared:
		return fmt.Sprintf("`%s` is not read", r.What)
	case svg.Element:
		return fmt.Sprintf("`%s` is not drawn", r.Element)
	case svg.Attribute:
		return fmt.Sprintf("`%s` of `%s` is not drawn", r.What, r.Element)
	case svg.Value:
		return fmt.Sprintf("this `%s` of `%s` cannot be drawn", r.What, r.Element)
	case svg.Twice:
		return fmt.Sprintf("`%s` of `%s` stands here a second time", r.What, r.Element)
	case svg.NoSize:
		return "the drawing does not say how large it is, or one side is more than 100 times the other"
	case svg.TooLarge:
		return "the drawing is too large: " + map[string]string{
			"bytes":  fmt.Sprintf("more than %d KB", svg.MaxBytes>>10),
			"points": fmt.Sprintf("its outlines have more than %d points", svg.MaxPoints),
			"shapes": fmt.Sprintf("more than %d shapes", svg.MaxShapes),
			"depth":  fmt.Sprintf("elements stand within each other more than %d deep", svg.MaxDepth),
		}[r.What]
	case svg.Outside:
		return fmt.Sprintf("this `%s` reaches out of the drawing's view box", r.Element)
	case svg.TextTurned:
		return "text that is turned, slanted or stretched cannot be set in the card's type"
	case svg.TextParted:
		return "a text changes in its midst"
	case svg.TextStroked:
		return "text with an outline cannot be set in the card's type"
	case svg.StrokeBent:
		return fmt.Sprintf("the stroke of this `%s` is stretched in one direction", r.Element)
	}
	panic(fmt.Sprintf("no message for the refusal %+v", r))
}

// fixes has the fix for the most common refusals, by element or property.
var fixes = map[string]string{
	"style":            "export as plain SVG, with the look written at each shape",
	"xml-stylesheet":   "export as plain SVG, with the look written at each shape",
	"DOCTYPE":          "take the line out, or export as plain SVG",
	"script":           "take the script out",
	"image":            "take the photograph out; show it as a picture of its own, PNG or JPEG",
	"use":              "turn the copies into shapes of their own (unlink the clones)",
	"symbol":           "turn the copies into shapes of their own (unlink the clones)",
	"foreignObject":    "write it as plain `text` elements",
	"flowRoot":         "turn the flowing text into plain `text` elements",
	"shape-inside":     "turn the flowing text into plain `text` elements",
	"textPath":         "write it level, as a plain `text` element",
	"linearGradient":   "fill with one color",
	"radialGradient":   "fill with one color",
	"pattern":          "draw the hatching as lines",
	"clipPath":         "cut the shapes themselves, or take what is unused out of `defs`",
	"mask":             "cut the shapes themselves, or take what is unused out of `defs`",
	"marker":           "draw arrow heads as shapes",
	"marker-start":     "draw arrow heads as shapes",
	"marker-mid":       "draw arrow heads as shapes",
	"marker-end":       "draw arrow heads as shapes",
	"filter":           "take the effect out",
	"opacity":          "choose a lighter color in place of one that shines through",
	"fill-opacity":     "choose a lighter color in place of one that shines through",
	"stroke-opacity":   "choose a lighter color in place of one that shines through",
	"fill":             "write the color as `#rrggbb` or `none`",
	"stroke":           "write the color as `#rrggbb` or `none`",
	"display":          "delete what is hidden",
	"visibility":       "delete what is hidden",
	"stroke-dasharray": "write one, two or four lengths of dashes and gaps",
	"stroke-linecap":   "write `butt` or `round`",
	"stroke-linejoin":  "write `miter` or `round`",
	"font-style":       "write the text upright",
	"animate":          "take the animation out",
	"animateTransform": "take the animation out",
	"set":              "take the animation out",
	"a":                "take the link out and leave its shapes",
	"svg":              "put the inner drawing into a group, `g`",
}

// fix returns the fix for a refusal.
func fix(r svg.Refusal) string {
	switch r.Kind {
	case svg.Malformed, svg.NotSVG, svg.Twice:
		return "export the drawing again, as plain SVG in UTF-8"
	case svg.NoSize:
		return "write `viewBox` with the drawing's corner, width and height"
	case svg.TooLarge:
		return "draw less: simplify the paths, and leave out what nobody sees at the bench"
	case svg.Outside:
		return "fit the page to the drawing, or move it inside"
	case svg.TextTurned:
		return "write it level, or turn it into a path"
	case svg.TextParted:
		return "write what is set differently as a `text` of its own, or give the `tspan` its `x` and `y`"
	case svg.TextStroked:
		return "take the stroke off the text; choose bold for heavier letters"
	case svg.StrokeBent:
		return "ungroup the shape, so that the stretching goes into its points"
	case svg.Element, svg.Declared:
		if fix, ok := fixes[r.Element]; ok {
			return fix
		}
		if fix, ok := fixes[r.What]; ok {
			return fix
		}
		return "draw it with paths, lines, circles, rectangles and plain text, or take it out"
	}
	if fix, ok := fixes[r.What]; ok {
		return fix
	}
	if r.Kind == svg.Attribute {
		return "take it out, or export as plain SVG"
	}
	return "write a plain value, or export as plain SVG"
}

// drawnText reports a text in a drawing that cannot be set as drawn, at its
// place in the drawing.
func (lib *library) drawnText(problem render.Problem, at source.Place, msgs *diag.List) {
	text := lib.drawing(problem.Drawing).At(problem.Start, problem.End)
	var d *diag.Diagnostic
	if problem.Kind == render.SmallText {
		d = msgs.Report("drawing-text", text, "make the text larger, or the drawing round it less wide",
			"at the size in which the drawing is printed, the capitals of this text are too low to read: %s of %s", hundredths(problem.Size), hundredths(problem.Room))
	} else {
		d = msgs.Report("drawing-text", text, "move it inward, shorten it, or make the view box larger",
			"in the card's type, `%s` runs over the edge of the drawing", problem.Text)
	}
	d.Related = []diag.Related{{At: at, Message: "the drawing is shown here"}}
}

// hundredths prints a length in micrometers as mm with two decimals, as for
// type sizes.
func hundredths(um int) string { return fmt.Sprintf("%d.%02d mm", um/1000, um%1000/10) }

// drawing returns the file of a drawing.
func (lib *library) drawing(name string) *source.File {
	kept, _ := lib.drawings.Load(name)
	return kept.(*source.File)
}
