package render

// A ledger is how the lines of a Records are set: their columns, and whether
// the limits stand under what they limit because a column of their own would
// leave that no room.
type ledger struct {
	tabs
	stacked bool
}

// Records are lines to fill in: step, what, limits, then the boxes.
func (r Records) lay(c *compositor) block {
	l := c.ledger(r)
	again := l.head(r, joined(" ", r.Title, c.say.Continued))
	if r.Title == "" {
		again = l.head(r, "")
	}
	b := block{runs: true, again: &again, slabs: []slab{l.head(r, r.Title)}}
	for i, row := range r.Rows {
		c.ref = row.Ref
		s := l.row(row)
		s.keep = i == 0 && len(r.Rows) > 1 || i == len(r.Rows)-2
		b.slabs = append(b.slabs, s)
	}
	return b
}

// ledger shares the width out: the text gets what it needs, then the boxes
// what is good to write in.
func (c *compositor) ledger(r Records) ledger {
	gap := max(3*c.beat/2, leastBoxGap)
	n := max(3, len(r.Columns))
	least, whole := make([]int, n), make([]int, n)
	for i, s := range r.Columns {
		least[i], whole[i] = c.extent(says(s), c.tag)
		if i >= 3 {
			least[i] = max(least[i], leastBoxWidth)
			whole[i] = least[i]
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
	c.ref = element
	whole[2] += c.beat / 2
	least[2] = max(least[2], min(whole[2], c.width*3/10)) // limits are read at a glance
	first := 3
	stacked := sum(least)-least[1]+9*c.text.size+gap*(n-1) > c.width
	if stacked {
		whole[1], least[1] = max(whole[1], whole[2]), max(least[1], least[2])
		least, whole = append(least[:2], least[3:]...), append(whole[:2], whole[3:]...)
		first = 2
	}
	l := ledger{tabs{c: c, widths: c.columns(least, whole, c.width, gap, 1), gap: gap}, stacked}
	if boxes := l.widths[first:]; len(boxes) > 0 {
		more := max(0, l.widths[1]-whole[1]) / len(boxes)
		for i := range boxes {
			wider := max(0, min(more, c.boxes-boxes[i]))
			boxes[i] += wider
			l.widths[1] -= wider
		}
	}
	return l
}

// head is the title over the heads of the columns.
func (l ledger) head(r Records, title string) slab {
	c := l.c
	var k canvas
	h := 0
	if title != "" {
		h = c.heading(&k, title)
	}
	var cells [][]Run
	for i, s := range r.Columns {
		if i == 2 && l.stacked {
			cells[1] = says(joined(" · ", r.Columns[1], s))
			continue
		}
		cells = append(cells, says(s))
	}
	h += l.tabs.row(&k, cells, []hand{c.label}, nil, h)
	k.across(0, h, c.width, c.hair, hairline)
	return slab{height: c.beats(h), keep: true, ops: k.ops}
}

// row sets one line: the text level with its boxes, each box apart from the
// next. Where no box belongs, a dash says so.
func (l ledger) row(row RecordRow) slab {
	c, u := l.c, l.c.beat
	top := max(3*u/4, leastBoxGap/2) // two of these lie between boxes
	level := top + max(0, (c.box-c.text.lead)/2)
	what, stroke := c.text, c.frame
	if row.Hold {
		what, stroke = c.strong, 2*c.frame
	}
	cells, hands := [][]Run{says(row.Step), row.What, row.Limits}, []hand{c.strong, what, c.strong}
	var k canvas
	under, first := 0, 3
	switch {
	case !l.stacked:
		under = level + l.tabs.row(&k, cells, hands, nil, level)
	case len(row.Limits) == 0:
		first = 2
		under = level + l.tabs.row(&k, cells[:2], hands, nil, level)
	default:
		first = 2
		under = top + l.tabs.row(&k, cells[:2], hands, nil, top)
		under += l.tabs.row(&k, [][]Run{nil, row.Limits}, hands[2:], nil, under)
	}
	for i, draw := range row.Boxes {
		if first+i >= len(l.widths) {
			break
		}
		x, w := l.x(first+i), l.widths[first+i]
		if draw {
			k.frame(x, top, w, c.box, stroke, u/4, white, ink, WriteBox)
		} else {
			k.across(x+w/2-u, top+c.box/2, 2*u, c.rule, soft)
		}
	}
	height := c.beats(max(top+c.box, under) + top)
	k.across(0, height, c.width, c.hair, hairline)
	return slab{height: height, ops: k.ops}
}
