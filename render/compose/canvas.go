package compose

import (
	"benchwright/render"
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// A Canvas is the drawing of one slab, measured from its top left corner.
type Canvas struct{ Ops []sheet.Op }

// Add draws operations over what is there.
func (c *Canvas) Add(ops ...sheet.Op) { c.Ops = append(c.Ops, ops...) }

// Ground fills an area without being a box.
func (c *Canvas) Ground(x, y, w, h int, fill sheet.Color) {
	c.Add(sheet.Rect{X: x, Y: y, W: w, H: h, Fill: fill, Stroke: sheet.NoColor, Role: sheet.Tint})
}

// Frame strokes a box whose outer edges are the given ones.
func (c *Canvas) Frame(x, y, w, h, stroke, radius int, fill, color sheet.Color, role sheet.BoxRole) {
	c.Add(sheet.Rect{X: x + stroke/2, Y: y + stroke/2, W: w - stroke, H: h - stroke,
		Radius: radius, Fill: fill, Stroke: color, StrokeWidth: stroke, Role: role})
}

// Across draws a level line.
func (c *Canvas) Across(x, y, w, width int, color sheet.Color) {
	c.Add(sheet.Line{X1: x, Y1: y, X2: x + w, Y2: y, Width: width, Color: color})
}

// Para draws p with its first line at (x, y).
func (c *Canvas) Para(p Para, x, y int) { c.Aligned(p, x, y, 0, render.Left) }

// Aligned draws p within width.
func (c *Canvas) Aligned(p Para, x, y, width int, a render.Align) {
	h := p.Hand
	for i, line := range p.Lines {
		if len(line) == 0 {
			continue
		}
		base := y + i*h.Lead + h.Base()
		shift := 0
		if end := line[len(line)-1].x + line[len(line)-1].W; a == render.Right {
			shift = width - end
		} else if a == render.Center {
			shift = (width - end) / 2
		}
		for _, s := range line {
			c.Span(s, h, x+shift+s.x, base)
		}
	}
}

// Span draws a piece of a line from x on its base line, with the ground, the
// line through it and the link that it has.
func (c *Canvas) Span(s Span, h Hand, x, base int) {
	if s.code {
		pad := typeface.Scaled(codePad, h.Size)
		over := h.Size / 6
		c.Add(sheet.Rect{X: x - pad, Y: base - h.Cap() - over, W: s.W + 2*pad, H: h.Cap() + 2*over + h.Size/12,
			Radius: h.Size / 8, Fill: Tint, Stroke: sheet.NoColor, Role: sheet.Tint})
	}
	c.Add(sheet.Glyphs{X: x, Y: base, Width: s.W, Size: h.Size, Font: s.Font, Color: h.color, Text: s.Text})
	if s.gone {
		y := base - h.Cap()*2/5
		c.Add(sheet.Line{X1: x, Y1: y, X2: x + s.W, Y2: y, Width: h.Size / 12, Color: h.color})
	}
	if s.link != "" {
		c.Add(sheet.Link{X: x, Y: base - h.Cap() - h.Size/6, W: s.W, H: h.Cap() + h.Size/3, To: s.link})
	}
}
