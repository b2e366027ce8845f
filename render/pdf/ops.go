package pdf

import (
	"fmt"
	"strings"

	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// draw writes one operation. Lines have butt ends, rectangles square corners,
// paths round caps and joins; a path is filled by the nonzero rule.
func (p *writer) draw(s sheet.Sheet, op sheet.Op) error {
	switch op := op.(type) {
	case sheet.Glyphs:
		return p.glyphs(op)
	case sheet.Rect:
		p.rect(op)
	case sheet.Line:
		p.line(op)
	case sheet.Path:
		return p.path(op)
	case sheet.Image:
		return p.image(op)
	case sheet.Link:
		return p.link(s, op)
	default:
		return fmt.Errorf("%T cannot be drawn", op)
	}
	return nil
}

func (p *writer) glyphs(g sheet.Glyphs) error {
	if err := checkGlyphs(g.Text); err != nil {
		return err
	}
	if g.Text == "" {
		return nil
	}
	if g.Font > typeface.Bold || g.Size <= 0 {
		return fmt.Errorf("no face %d in size %d", g.Font, g.Size)
	}
	p.setFont(textState{g.Font, g.Size})
	p.f.SetTextColor(rgb(g.Color))
	p.f.Text(points(g.X), points(g.Y), g.Text)
	return nil
}

func (p *writer) setFont(t textState) {
	if t == p.text {
		return
	}
	p.text = t
	family := "SourceSans3-" + t.font.Name()
	p.f.AddUTF8FontFromBytes(family, "", cutFonts[t.font]()) // does nothing the second time
	p.f.SetFont(family, "", points(t.size))
}

func (p *writer) rect(r sheet.Rect) {
	if r.Radius > 0 {
		// Not the library's own: it leaves the graphics state unbalanced.
		p.paint(r.Outline(), r.Fill, penState{r.Stroke, r.StrokeWidth, 0, false})
		return
	}
	if style := p.style(r.Fill, penState{r.Stroke, r.StrokeWidth, 0, false}); style != "" {
		x, y := points(r.X), points(r.Y)
		p.f.Rect(x, y, points(r.X+r.W)-x, points(r.Y+r.H)-y, style)
	}
}

func (p *writer) line(l sheet.Line) {
	if p.style(sheet.NoColor, penState{l.Color, l.Width, l.Dash, false}) != "" {
		p.f.Line(points(l.X1), points(l.Y1), points(l.X2), points(l.Y2))
	}
}

func (p *writer) path(o sheet.Path) error {
	for i, s := range o.Segs {
		if i == 0 && s.Verb != 'M' || !strings.ContainsRune("MLCZ", rune(s.Verb)) {
			return fmt.Errorf("segment %d of a path is %q", i, s.Verb)
		}
	}
	p.paint(o.Segs, o.Fill, penState{o.Stroke, o.StrokeWidth, 0, true})
	return nil
}

func (p *writer) paint(segs []sheet.Seg, fill sheet.Color, pen penState) {
	style := p.style(fill, pen)
	if style == "" || len(segs) == 0 {
		return
	}
	for _, s := range segs {
		x, y := points(s.X), points(s.Y)
		switch s.Verb {
		case 'M':
			p.f.MoveTo(x, y)
		case 'L':
			p.f.LineTo(x, y)
		case 'C':
			p.f.CurveBezierCubicTo(points(s.X1), points(s.Y1), points(s.X2), points(s.Y2), x, y)
		case 'Z':
			p.f.ClosePath()
		}
	}
	p.f.DrawPath(style)
}

// style sets colours and pen and says what to paint: "F", "D", "FD", or ""
// for nothing.
func (p *writer) style(fill sheet.Color, pen penState) string {
	style := ""
	if fill != sheet.NoColor {
		style = "F"
		if fill != p.fill {
			p.fill = fill
			p.f.SetFillColor(rgb(fill))
		}
	}
	if pen.color == sheet.NoColor || pen.width <= 0 {
		return style
	}
	if pen != p.pen {
		p.pen = pen
		p.f.SetDrawColor(rgb(pen.color))
		p.f.SetLineWidth(points(pen.width))
		var dashes []float64
		if pen.dash > 0 {
			dashes = []float64{points(pen.dash), points(pen.dash)}
		}
		p.f.SetDashPattern(dashes, 0)
		ends, joins := "butt", "miter"
		if pen.round {
			ends, joins = "round", "round"
		}
		p.f.SetLineCapStyle(ends)
		p.f.SetLineJoinStyle(joins)
	}
	return style + "D"
}

func (p *writer) link(s sheet.Sheet, l sheet.Link) error {
	if s.Turned {
		l.X, l.Y = s.Width-l.X-l.W, s.Height-l.Y-l.H
	}
	x, y := points(l.X), points(l.Y)
	w, h := points(l.X+l.W)-x, points(l.Y+l.H)-y
	if strings.HasPrefix(l.To, "https://") {
		if strings.ContainsFunc(l.To, func(r rune) bool { return r <= ' ' || r > '~' }) {
			return fmt.Errorf("address %q holds a character that must be percent-encoded", l.To)
		}
		p.f.LinkString(x, y, w, h, l.To)
		return nil
	}
	to, ok := p.anchors[l.To]
	if !ok {
		return fmt.Errorf("link to %q, which is no anchor", l.To)
	}
	p.f.Link(x, y, w, h, to)
	return nil
}

func rgb(c sheet.Color) (r, g, b int) {
	return int(c >> 16 & 0xFF), int(c >> 8 & 0xFF), int(c & 0xFF)
}
