package pdf

import (
	"fmt"
	"strings"

	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// draw writes one operation. Lines have butt ends, rectangles square corners.
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
	case sheet.Drawing:
		for _, op := range op.Ops {
			if err := p.draw(s, op); err != nil {
				return err
			}
		}
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
	p.f.AddUTF8FontFromBytes(family, "", cutFonts[t.font]()) // no effect the second time
	p.f.SetFont(family, "", points(t.size))
}

func (p *writer) rect(r sheet.Rect) {
	if r.Radius > 0 {
		// The library's own function leaves the graphics state unbalanced.
		p.paint(r.Outline(), r.Fill, false, penState{color: r.Stroke, width: r.StrokeWidth})
		return
	}
	if style := p.style(r.Fill, penState{color: r.Stroke, width: r.StrokeWidth}); style != "" {
		x, y := points(r.X), points(r.Y)
		p.f.Rect(x, y, points(r.X+r.W)-x, points(r.Y+r.H)-y, style)
	}
}

func (p *writer) line(l sheet.Line) {
	if p.style(sheet.NoColor, penState{color: l.Color, width: l.Width, dash: [4]int{l.Dash, l.Dash}}) != "" {
		p.f.Line(points(l.X1), points(l.Y1), points(l.X2), points(l.Y2))
	}
}

func (p *writer) path(o sheet.Path) error {
	for i, s := range o.Segs {
		if i == 0 && s.Verb != 'M' || !strings.ContainsRune("MLCZ", rune(s.Verb)) {
			return fmt.Errorf("segment %d of a path is %q", i, s.Verb)
		}
	}
	if o.Miter && !p.miter {
		p.miter = true
		p.f.RawWriteStr("4 M")
	}
	p.paint(o.Segs, o.Fill, o.EvenOdd, penState{o.Stroke, o.StrokeWidth, o.Dash, !o.Butt, !o.Miter})
	return nil
}

func (p *writer) paint(segs []sheet.Seg, fill sheet.Color, evenOdd bool, pen penState) {
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
	if evenOdd && fill != sheet.NoColor {
		style += "*"
	}
	p.f.DrawPath(style)
}

// style sets colors and pen and returns the paint operator: "F", "D", "FD", or
// "" for nothing.
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
		if d := pen.dash; d != [4]int{} {
			dashes = []float64{points(d[0]), points(d[1])}
			if d[2] != 0 || d[3] != 0 {
				dashes = append(dashes, points(d[2]), points(d[3]))
			}
		}
		p.f.SetDashPattern(dashes, 0)
		ends, joins := "butt", "miter"
		if pen.roundEnds {
			ends = "round"
		}
		if pen.roundJoins {
			joins = "round"
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
