package render

// panel is a ground with a bar down its left, which holds one number.
func (c *compositor) panel(k column) block {
	var out canvas
	height := c.beats(k.y + c.beat)
	out.add(Rect{W: c.width, H: height, Fill: tint, Stroke: NoColor, Role: Ground})
	out.ground(0, 0, c.beat/2, height, accent)
	out.add(k.ops...)
	return one(height, out)
}

// within is a column inside such a panel.
func (c *compositor) within() column {
	left := c.pad() + c.beat/2
	return column{c: c, x: left, y: c.beat, width: c.width - left - c.pad()}
}

// labelled sets a figure with its label before it on the same line where both
// fit, or else above it.
func (k *column) labelled(label, value, unit string) {
	c, u := k.c, k.c.beat
	p := c.set(says(label), c.strong.in(accent), k.width, 0)
	beside := p.width + 2*u
	if len(p.lines) != 1 || beside+c.figureWidth(value, unit) > k.width {
		k.para(p, k.x, k.y)
		k.y += p.height()
		k.figure(value, unit)
		return
	}
	k.para(p, k.x, k.y+c.figure.base()-p.hand.base())
	k.x, k.width = k.x+beside, k.width-beside
	k.figure(value, unit)
	k.x, k.width = k.x-beside, k.width+beside
}

// figureWidth is what a figure and its unit take at full size.
func (c *compositor) figureWidth(value, unit string) int {
	w := textWidth(c.figure.font, c.figure.size, value)
	if unit != "" {
		w += c.beat + textWidth(c.units.font, c.units.size, unit)
	}
	return w
}

// figure sets the large figure and its unit on one base line. It shrinks what
// does not fit the column, never below what must be read; then it is a
// Problem.
func (k *column) figure(value, unit string) {
	c := k.c
	value, unit = c.clean(value), c.clean(unit)
	h, b := c.figure, c.units
	least := h.size * c.leastFigure / h.cap()
	if whole := c.figureWidth(value, unit); whole > k.width {
		h.size = max(least, h.size*k.width/whole)
		b.size = max(c.text.size, b.size*k.width/whole)
	}
	w := textWidth(h.font, h.size, value)
	behind := textWidth(b.font, b.size, unit)
	if all := w + c.beat + behind; unit != "" && all > k.width || w > k.width {
		c.problem(TooWide, joined(" ", value, unit))
	}
	base := k.y + c.figure.base()
	k.span(span{text: value, font: h.font, w: w}, h, k.x, base)
	if unit != "" {
		k.span(span{text: unit, font: b.font, w: behind}, b, k.x+w+c.beat, base)
	}
	k.y += h.lead
}
