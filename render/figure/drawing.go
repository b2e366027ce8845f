package figure

import (
	"path"
	"strings"

	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
	"benchwright/render/svg"
	"benchwright/render/typeface"
)

// isDrawing tells a drawing from a photograph: by its name, so that a file that
// is not what its name says is refused as what it was to be.
func isDrawing(p render.Picture) bool { return strings.EqualFold(path.Ext(p.Name), ".svg") }

// drawing draws an SVG file as wide as the room, or less where it would be too
// tall, but no smaller than its text can be read.
func drawing(p render.Picture, c *compose.Compositor) (sheet.Drawing, bool) {
	d, refused := svg.Read(p.Data)
	if refused != nil {
		c.Problem(render.Problem{Kind: render.BadDrawing, Drawing: p.Name})
		return sheet.Drawing{}, false
	}
	width := c.Width
	if height := scaled(d.H, width, d.W); height > c.Picture {
		width = scaled(d.W, max(1, c.Picture), d.H)
	}
	width = min(c.Width, max(width, legible(d, c.Label.Cap())))
	out := sheet.Drawing{W: width, H: max(1, scaled(d.H, width, d.W)), Name: p.Name, Alt: p.Alt}
	for _, s := range d.Shapes {
		switch s := s.(type) {
		case *svg.Path:
			out.Ops = append(out.Ops, drawnPath(s, width, d.W))
		case *svg.Text:
			out.Ops = append(out.Ops, drawnText(p.Name, s, width, d.W, c)...)
		}
	}
	return out, true
}

// scaled returns v·to/from, rounded to the nearest.
func scaled(v, to, from int) int {
	n := 2*v*to + from
	if n < 0 {
		n -= 2*from - 1 // a quotient is cut toward 0
	}
	return n / (2 * from)
}

// legible returns the width of a drawing at which the capitals of its text are
// at least so tall.
func legible(d *svg.Drawing, least int) int {
	width := 0
	for _, s := range d.Shapes {
		if t, is := s.(*svg.Text); is {
			per := typeface.CapHeight(weight(t), 1000)
			size := (least*1000 + per - 1) / per
			width = max(width, (size+1)*d.W/max(1, t.Size))
		}
	}
	return width
}

func drawnPath(p *svg.Path, to, from int) sheet.Path {
	out := sheet.Path{Fill: color(p.Fill), EvenOdd: p.EvenOdd, Stroke: color(p.Stroke), StrokeWidth: scaled(p.Width, to, from),
		Butt: p.Cap == svg.Butt, Miter: p.Join == svg.Miter}
	for i, v := range p.Dash {
		out.Dash[i] = scaled(v, to, from)
	}
	at := func(v int) int { return scaled(v, to, from) }
	for _, g := range p.Segs {
		out.Segs = append(out.Segs, sheet.Seg{Verb: g.Verb, X1: at(g.X1), Y1: at(g.Y1), X2: at(g.X2), Y2: at(g.Y2), X: at(g.X), Y: at(g.Y)})
	}
	return out
}

// drawnText sets a line of a drawing in the card's type.
func drawnText(name string, t *svg.Text, to, from int, c *compose.Compositor) []sheet.Op {
	font, size := weight(t), scaled(t.Size, to, from)
	before := len(c.Problems)
	text := c.Clean(t.Says)
	for i := before; i < len(c.Problems); i++ {
		p := &c.Problems[i]
		p.Drawing, p.Start, p.End = name, t.Start, t.End
	}
	g := sheet.Glyphs{X: scaled(t.X, to, from), Y: scaled(t.Y, to, from), Width: typeface.Width(font, size, text),
		Size: size, Font: font, Color: color(t.Fill), Text: text}
	switch t.Anchor {
	case svg.Middle:
		g.X -= g.Width / 2
	case svg.End:
		g.X -= g.Width
	}
	if is, least := typeface.CapHeight(font, size), c.Label.Cap(); is < least {
		c.Problem(render.Problem{Kind: render.SmallText, Size: is, Room: least, Drawing: name, Start: t.Start, End: t.End})
	} else if g.X < 0 || g.X+g.Width > to {
		c.Problem(render.Problem{Kind: render.TextOver, Text: text, Drawing: name, Start: t.Start, End: t.End})
	}
	if text == "" {
		return nil
	}
	return []sheet.Op{g}
}

// weight returns the face nearest to a text's weight.
func weight(t *svg.Text) typeface.Font {
	switch {
	case t.Weight < 500:
		return typeface.Regular
	case t.Weight < 700:
		return typeface.Semibold
	}
	return typeface.Bold
}

func color(c svg.Color) sheet.Color {
	switch c {
	case svg.None:
		return sheet.NoColor
	case svg.Ink:
		return compose.Ink
	}
	return sheet.Color(c)
}
