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
	if rows := (len(labels) + n - 1) / n; rows > 1 { // no box alone on the last row
		n = (len(labels) + rows - 1) / rows
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
	k.y = c.beats(k.y + c.beat)
}
