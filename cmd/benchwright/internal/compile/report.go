package compile

import (
	"fmt"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/deck"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/render"
)

// A finding is a problem of a laid-out deck, with the messages about it.
type finding struct {
	render.Problem
	at      source.Place
	written bool // Text was found in a file, at this place
	msgs    *diag.List
}

// findings converts the problems of a layout to messages.
func (lib *library) findings(problems []render.Problem, f *procedureFile, d *deck.Deck) []finding {
	var out []finding
	for _, problem := range problems {
		x := finding{Problem: problem, at: d.Place(problem.Ref), msgs: &diag.List{}}
		if x.at.File == nil {
			x.at = f.procedure.Title.At // of the running head, or of a fixed word
		}
		lib.report(&x, f, out)
		out = append(out, x)
	}
	return out
}

// report reports a finding. One that was found before, such as a missing
// character in a name used several times, is not reported again.
func (lib *library) report(x *finding, f *procedureFile, before []finding) {
	switch msgs := x.msgs; x.Kind {
	case render.TooTall:
		msgs.Report("step-too-tall", x.at, makeRoom(x.Problem), "this step does not fit one page: %s%s", lengths(x.Problem), tallest(x.Problem))
	case render.TableTooWide, render.FigureTooWide: // not caused by a particular word
		if !slices.ContainsFunc(before, func(b finding) bool { return b.wide() && b.at == x.at }) {
			msgs.Report("too-wide", x.at, "narrow what it is for, or choose larger paper", "a table or a figure is wider than the page: %s", lengths(x.Problem))
		}
	case render.WordTooWide:
		word := strings.TrimRight(x.Text, ".,;:")
		if x.at, x.written = lib.written(x.at, f, word); x.written {
			msgs.Report("too-wide", x.at, "shorten it, or break it up with spaces", "this is wider than the page, and nothing in it can be broken")
			return
		}
		msgs.Report("too-wide", x.at, "shorten it, or break it up with spaces", "this is wider than the page: %s", word)
	case render.MissingGlyph:
		if x.Drawing != "" {
			x.at = lib.drawing(x.Drawing).At(x.Start, x.End)
		}
		x.at, x.written = lib.written(x.at, f, x.Text)
		if !x.written && slices.ContainsFunc(before, func(b finding) bool { return b.Kind == render.MissingGlyph && b.Text == x.Text }) {
			return // an escape in a name that is used in several places
		}
		msgs.Report("glyph-missing", x.at, "write it in other words", "the card's type has no character `%s`", x.Text)
	case render.BadPicture:
		msgs.Report("picture-bad", x.at, "save it again as PNG or JPEG, at most 8 megapixels", "the picture cannot be used: %s", x.Text)
	case render.BadDrawing:
		lib.reportRefusals(x.Drawing, x.at, msgs)
	case render.SmallText, render.TextOver:
		lib.drawnText(x.Problem, x.at, msgs)
	case render.SpotHides:
		msgs.Report("call-out-place", x.at, "move one of them and draw a line to its place with `to:`, or take a larger picture", "at the size in which the picture is printed, %s", hides(x.Problem))
	case render.Loose:
		msgs.Report("page-loose", x.at, makeRoom(x.Problem), "this step leaves more than half a column empty before it: it is %d mm tall, and %d mm are left", (x.Size+999)/1000, x.Room/1000)
	case render.BadLink:
		msgs.Report("step-unknown", x.at, "name a step of this card", "the link leads nowhere: %s", x.Text).Basis = diag.OnProcedure
	default:
		panic(fmt.Sprintf("no message for the layout's problem %+v", x.Problem))
	}
}

// tallParts names tall parts of a step, and what makes them lower.
var tallParts = map[string]struct{ name, fix string }{
	"table":   {"its table", "move the table to a step of its own"},
	"picture": {"its picture", "take a lower picture"},
	"contact": {"its pictures", "give the contact pattern a step of its own"},
	"callout": {"its callout", "shorten the callout"},
	"list":    {"its list", "part the list into steps"},
	"text":    {"its text", "shorten the text"},
	"reading": {"its panel", "give the reading a step of its own"},
	"setting": {"its panel", "give the torque a step of its own"},
	"tools":   {"its tools", "take them in a step of their own"},
}

// tallest names the tallest part of a step, "" if it has no name.
func tallest(p render.Problem) string {
	if part, ok := tallParts[p.Text]; ok {
		return fmt.Sprintf("; %s alone takes %d mm", part.name, (p.Part+999)/1000)
	}
	return ""
}

// makeRoom returns the fix for a step that is too tall.
func makeRoom(p render.Problem) string {
	if part, ok := tallParts[p.Text]; ok {
		return "split the step in two, or " + part.fix
	}
	return "split the step in two, or choose larger paper"
}

// lengths prints a length and the room for it.
func lengths(p render.Problem) string {
	return fmt.Sprintf("%d mm of %d mm", (p.Size+999)/1000, p.Room/1000)
}

// hides describes what the number of a callout hides.
func hides(p render.Problem) string {
	switch {
	case p.Other == 0:
		return fmt.Sprintf("number %d covers the whole picture", p.Spot)
	case p.Place:
		return fmt.Sprintf("number %d covers the place of number %d", p.Spot, p.Other)
	}
	return fmt.Sprintf("number %d covers number %d", p.Spot, p.Other)
}

// written finds where a text on a face was written. The layout only knows the
// place of the element that holds the text: the text is there, or further on
// in the file, or in the unit or shop that a name comes from. If it is
// nowhere, it returns at.
func (lib *library) written(at source.Place, p *procedureFile, text string) (source.Place, bool) {
	search := func(f *source.File, from, to int) (source.Place, bool) {
		if f == nil || text == "" {
			return at, false
		}
		i := strings.Index(string(f.Text[from:to]), text)
		if i < 0 {
			return at, false
		}
		return f.At(from+i, from+i+len(text)), true
	}
	files := []*source.File{p.File}
	if u := p.unit(); u != nil {
		files = append(files, u.File)
	}
	files = append(files, lib.workspace.Shop)
	if at.File != nil {
		if found, ok := search(at.File, at.Span.Start, at.Span.End); ok {
			return found, true
		}
		if found, ok := search(at.File, at.Span.End, len(at.File.Text)); ok {
			return found, true
		}
	}
	for _, f := range files {
		if f == nil {
			continue
		}
		if found, ok := search(f, 0, len(f.Text)); ok {
			return found, true
		}
	}
	return at, false
}
