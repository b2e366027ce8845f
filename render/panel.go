package render

// Panel is a ground with a bar down its left, which holds one number.
func (c *compositor) Panel(k column) block {
	var out canvas
	height := c.Beats(k.Y + c.Beat)
	out.Add(Rect{W: c.Width, H: height, Fill: tint, Stroke: NoColor, Role: Ground})
	out.Ground(0, 0, c.Beat/2, height, accent)
	out.Add(k.Ops...)
	return one(height, out)
}

// Within is a column inside such a panel.
func (c *compositor) Within() column {
	left := c.Pad() + c.Beat/2
	return column{C: c, X: left, Y: c.Beat, Width: c.Width - left - c.Pad()}
}

// Labelled sets a figure with its label before it on the same line where both
// fit, or else above it.
func (k *column) Labelled(label, value, unit string) {
	c, u := k.C, k.C.Beat
	p := c.Set(says(label), c.Strong.In(accent), k.Width, 0)
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
func (c *compositor) figureWidth(value, unit string) int {
	w := textWidth(c.Figure.Font, c.Figure.Size, value)
	if unit != "" {
		w += c.Beat + textWidth(c.Units.Font, c.Units.Size, unit)
	}
	return w
}

// Figure sets the large figure and its unit on one base line. It shrinks what
// does not fit the column, never below what must be read; then it is a
// Problem.
func (k *column) Figure(value, unit string) {
	c := k.C
	value, unit = c.Clean(value), c.Clean(unit)
	h, b := c.Figure, c.Units
	least := h.Size * c.leastFigure / h.Cap()
	if whole := c.figureWidth(value, unit); whole > k.Width {
		h.Size = max(least, h.Size*k.Width/whole)
		b.Size = max(c.Text.Size, b.Size*k.Width/whole)
	}
	w := textWidth(h.Font, h.Size, value)
	behind := textWidth(b.Font, b.Size, unit)
	if all := w + c.Beat + behind; unit != "" && all > k.Width || w > k.Width {
		c.Problem(TooWide, joined(" ", value, unit))
	}
	base := k.Y + c.Figure.Base()
	k.Span(span{Text: value, Font: h.Font, W: w}, h, k.X, base)
	if unit != "" {
		k.Span(span{Text: unit, Font: b.Font, W: behind}, b, k.X+w+c.Beat, base)
	}
	k.Y += h.Lead
}
