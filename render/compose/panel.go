package compose

import (
	"benchwright/render"
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// Panel is a ground with a bar down its left, which holds one number.
func (c *Compositor) Panel(k Column) Block {
	var out Canvas
	height := c.Beats(k.Y + c.Beat)
	out.Add(sheet.Rect{W: c.Width, H: height, Fill: Tint, Stroke: sheet.NoColor, Role: sheet.Ground})
	out.Ground(0, 0, c.Beat/2, height, Accent)
	out.Add(k.Ops...)
	return One(height, out)
}

// Within is a column inside such a panel.
func (c *Compositor) Within() Column {
	left := c.Pad() + c.Beat/2
	return Column{C: c, X: left, Y: c.Beat, Width: c.Width - left - c.Pad()}
}

// Labelled sets a figure with its label before it on the same line where both
// fit, or else above it.
func (k *Column) Labelled(label, value, unit string) {
	c, u := k.C, k.C.Beat
	p := c.Set(Says(label), c.Strong.In(Accent), k.Width, 0)
	beside := p.Width + 2*u
	if len(p.Lines) != 1 || beside+c.figureWidth(value, unit) > k.Width {
		k.Para(p, k.X, k.Y)
		k.Y += p.Height()
		k.Figure(value, unit)
		return
	}
	k.Para(p, k.X, k.Y+c.Figure.Base()-p.Hand.Base())
	k.X, k.Width = k.X+beside, k.Width-beside
	k.Figure(value, unit)
	k.X, k.Width = k.X-beside, k.Width+beside
}

// figureWidth is what a figure and its unit take at full size.
func (c *Compositor) figureWidth(value, unit string) int {
	w := typeface.Width(c.Figure.Font, c.Figure.Size, value)
	if unit != "" {
		w += c.Beat + typeface.Width(c.Units.Font, c.Units.Size, unit)
	}
	return w
}

// Figure sets the large figure and its unit on one base line. It shrinks what
// does not fit the column, never below what must be read; then it is a
// Problem.
func (k *Column) Figure(value, unit string) {
	c := k.C
	value, unit = c.Clean(value), c.Clean(unit)
	h, b := c.Figure, c.Units
	least := h.Size * c.leastFigure / h.Cap()
	if whole := c.figureWidth(value, unit); whole > k.Width {
		h.Size = max(least, h.Size*k.Width/whole)
		b.Size = max(c.Text.Size, b.Size*k.Width/whole)
	}
	w := typeface.Width(h.Font, h.Size, value)
	behind := typeface.Width(b.Font, b.Size, unit)
	if all := w + c.Beat + behind; unit != "" && all > k.Width || w > k.Width {
		c.Problem(render.Problem{Kind: render.WordTooWide, Text: Joined(" ", value, unit)})
	}
	base := k.Y + c.Figure.Base()
	k.Span(Span{Text: value, Font: h.Font, W: w}, h, k.X, base)
	if unit != "" {
		k.Span(Span{Text: unit, Font: b.Font, W: behind}, b, k.X+w+c.Beat, base)
	}
	k.Y += h.Lead
}
