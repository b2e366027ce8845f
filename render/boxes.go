package render

// boxes adds boxes to write in, each under its label, in rows of equal
// columns none wider than most. A unit stands behind each box.
func (k *column) boxes(labels []string, unit string, most int) {
	if len(labels) == 0 {
		return
	}
	c, gap := k.c, 2*k.c.beat
	unit = c.clean(unit)
	after := 0
	if unit != "" {
		after = textWidth(c.units.font, c.label.size, unit) + c.beat
	}
	least := c.boxes
	for _, l := range labels {
		w, _ := c.extent(says(l), c.label)
		least = max(least, w)
	}
	n := min(len(labels), max(1, (k.width+gap)/(least+after+gap)))
	w := min((k.width-(n-1)*gap)/n-after, most)
	if len(labels)%n == 1 && n > 2 { // no box alone on the last row
		n = (len(labels) + 1) / 2
	}
	for from := 0; from < len(labels); from += n {
		if from > 0 {
			k.y += c.beat
		}
		row := labels[from:min(from+n, len(labels))]
		over := 0
		paras := make([]para, len(row))
		for i, l := range row {
			paras[i] = c.set(says(l), c.label, w+after, 0)
			over = max(over, paras[i].height())
		}
		for i, p := range paras {
			x := k.x + i*(w+after+gap)
			k.para(p, x, k.y+over-p.height())
			k.frame(x, k.y+over, w, c.box, c.frame, c.beat/4, white, ink, WriteBox)
			if unit != "" {
				h := c.label
				width := textWidth(c.units.font, h.size, unit)
				k.span(span{text: unit, font: c.units.font, w: width}, h.in(ink), x+w+c.beat/2, k.y+over+c.box-c.beat)
			}
		}
		k.y += over + c.box
	}
	k.y = c.beats(k.y + c.beat/2)
}

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
	whole := textWidth(c.figure.font, c.figure.size, value) + u + textWidth(c.units.font, c.units.size, unit)
	if p.height() != p.hand.lead || p.width+2*u+whole > k.width {
		k.para(p, k.x, k.y)
		k.y += p.height()
		k.figure(value, unit, k.width)
		return
	}
	k.para(p, k.x, k.y+(c.figure.lead+c.figure.cap())/2-(p.hand.lead+p.hand.cap())/2)
	k.x, k.width = k.x+p.width+2*u, k.width-p.width-2*u
	k.figure(value, unit, k.width)
	k.x, k.width = k.x-p.width-2*u, k.width+p.width+2*u
}

// figure sets the large figure and its unit on one base line and returns
// its width. It shrinks what does not fit the room, never below what must be
// read; then it is a Problem.
func (k *column) figure(value, unit string, room int) {
	c := k.c
	value, unit = c.clean(value), c.clean(unit)
	h, b := c.figure, c.units
	gap := c.beat
	width := func() int {
		w := textWidth(h.font, h.size, value)
		if unit != "" {
			w += gap + textWidth(b.font, b.size, unit)
		}
		return w
	}
	least := h.size * c.leastFigure / h.cap()
	for width() > room && h.size > least {
		h.size = max(least, h.size-h.size/20-1)
		b.size = min(b.size, h.size)
	}
	if width() > room {
		c.problem(TooWide, value)
	}
	base := k.y + (h.lead+c.figure.cap())/2
	w := textWidth(h.font, h.size, value)
	k.span(span{text: value, font: h.font, w: w}, h, k.x, base)
	if unit != "" {
		k.span(span{text: unit, font: b.font, w: textWidth(b.font, b.size, unit)}, b, k.x+w+gap, base)
	}
	k.y += h.lead
}
