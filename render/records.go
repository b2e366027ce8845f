package render

// Records are lines to fill in: step, what, limits, then the boxes.
func (r Records) lay(c *compositor) block {
	gap := 3 * c.beat / 2
	n := max(3, len(r.Columns))
	least, whole := make([]int, n), make([]int, n)
	for i, s := range r.Columns {
		l, w := c.extent(says(s), c.tag)
		least[i], whole[i] = l, w
		if i >= 3 {
			least[i] = max(l, c.boxes*7/10, leastBoxWidth)
			whole[i] = least[i]
		}
	}
	for _, row := range r.Rows {
		c.ref = row.Ref
		for i, cell := range [][]Run{says(row.Step), row.What, row.Limits} {
			h := c.text
			if i == 0 {
				h = c.strong
			}
			l, w := c.extent(cell, h)
			least[i], whole[i] = max(least[i], l), max(whole[i], w)
		}
	}
	g := grid{c: c, widths: c.columns(least, whole, c.width, gap, 1), gap: gap}
	head := func(title string) slab {
		var k canvas
		h := 0
		if title != "" {
			h = c.heading(&k, title)
		}
		var cells [][]Run
		for _, s := range r.Columns {
			cells = append(cells, says(s))
		}
		h += g.row(&k, cells, []hand{c.label}, nil, h)
		k.across(0, h, c.width, c.hair, hairline)
		return slab{height: c.beats(h), keep: true, ops: k.ops}
	}
	b := block{runs: true}
	title := r.Title
	if title != "" {
		title += " " + c.say.Continued
	}
	again := head(title)
	b.again = &again
	b.slabs = append(b.slabs, head(r.Title))
	for i, row := range r.Rows {
		c.ref = row.Ref
		k := r.row(c, g, row)
		k.keep = i == 0 && len(r.Rows) > 1 || i == len(r.Rows)-2
		b.slabs = append(b.slabs, k)
	}
	return b
}

func (r Records) row(c *compositor, g grid, row RecordRow) slab {
	u := c.beat
	var k canvas
	stroke := c.frame * 3 / 4
	if row.Hold {
		stroke = c.frame * 2
	}
	box := c.box
	inner := max(box, c.text.lead)
	// One line of text stands in the middle of the box.
	shift := (box - c.text.lead) / 2
	what := c.text
	if row.Hold {
		what = c.strong
	}
	h := g.row(&k, [][]Run{says(row.Step), row.What, row.Limits}, []hand{c.strong, what, c.strong}, nil, u/2+u/4+shift)
	inner = max(inner, h+shift)
	for i, draw := range row.Boxes {
		if 3+i >= len(g.widths) {
			break
		}
		x, w := g.x(3+i), g.widths[3+i]
		if draw {
			k.frame(x, u/2+u/4, w, box, stroke, u/4, white, ink, WriteBox)
		} else {
			k.across(x+w/2-u, u/2+u/4+box/2, 2*u, c.rule, soft)
		}
	}
	height := c.beats(inner + u + u/2)
	k.across(0, height, c.width, c.hair, hairline)
	return slab{height: height, ops: k.ops}
}
