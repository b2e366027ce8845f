package render

// Records are lines to fill in: step, what, limits, then the boxes.
func (r Records) lay(c *compositor) block {
	gap := max(3*c.beat/2, leastBoxGap)
	n := max(3, len(r.Columns))
	least, whole := make([]int, n), make([]int, n)
	for i, s := range r.Columns {
		l, w := c.extent(says(s), c.tag)
		least[i], whole[i] = l, w
		if i >= 3 {
			least[i] = max(l, leastBoxWidth)
			whole[i] = max(least[i], c.boxes)
		}
	}
	element := c.ref
	for _, row := range r.Rows {
		c.ref = row.Ref
		for i, cell := range [][]Run{says(row.Step), row.What, row.Limits} {
			h := c.strong
			if i == 1 && !row.Hold {
				h = c.text
			}
			l, w := c.extent(cell, h)
			least[i], whole[i] = max(least[i], l), max(whole[i], w)
		}
	}
	whole[2] += c.beat / 2
	least[2] = max(least[2], min(whole[2], c.width*3/10)) // limits are read at a glance
	c.ref = element
	// Where What would be narrow, the limits stand under it.
	stacked := sum(least)-least[1]+9*c.text.size+gap*(n-1) > c.width
	if stacked {
		whole[1], least[1] = max(whole[1], whole[2]), max(least[1], least[2])
		least, whole = append(least[:2], least[3:]...), append(whole[:2], whole[3:]...)
	}
	g := tabs{c: c, widths: c.columns(least, whole, c.width, gap, 1), gap: gap}
	head := func(title string) slab {
		var k canvas
		h := 0
		if title != "" {
			h = c.heading(&k, title)
		}
		var cells [][]Run
		for i, s := range r.Columns {
			if i == 2 && stacked {
				cells[1] = says(joined(" · ", r.Columns[1], s))
				continue
			}
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
		k := row.lay(c, g, stacked)
		k.keep = i == 0 && len(r.Rows) > 1 || i == len(r.Rows)-2
		b.slabs = append(b.slabs, k)
	}
	return b
}

// lay sets one line: the text level with its boxes, each box apart from the
// next. Where no box belongs, a dash says so.
func (row RecordRow) lay(c *compositor, g tabs, stacked bool) slab {
	u := c.beat
	top := max(3*u/4, leastBoxGap/2) // two of these lie between boxes
	shift := max(0, (c.box-c.text.lead)/2)
	what, stroke := c.text, c.frame
	if row.Hold {
		what, stroke = c.strong, 2*c.frame
	}
	var k canvas
	h, first := 0, 3
	if stacked {
		first = 2
		name := g.row(&k, [][]Run{says(row.Step), row.What}, []hand{c.strong, what}, nil, top)
		h = name
		if len(row.Limits) > 0 {
			h += g.row(&k, [][]Run{nil, row.Limits}, []hand{c.strong}, nil, top+name)
		} else if name == c.text.lead {
			k = canvas{}
			h = shift + g.row(&k, [][]Run{says(row.Step), row.What}, []hand{c.strong, what}, nil, top+shift)
		}
	} else {
		h = shift + g.row(&k, [][]Run{says(row.Step), row.What, row.Limits}, []hand{c.strong, what, c.strong}, nil, top+shift)
	}
	for i, draw := range row.Boxes {
		if first+i >= len(g.widths) {
			break
		}
		x, w := g.x(first+i), g.widths[first+i]
		if draw {
			k.frame(x, top, w, c.box, stroke, u/4, white, ink, WriteBox)
		} else {
			k.across(x+w/2-u, top+c.box/2, 2*u, c.rule, soft)
		}
	}
	height := c.beats(max(c.box, h) + 2*top)
	k.across(0, height, c.width, c.hair, hairline)
	return slab{height: height, ops: k.ops}
}
