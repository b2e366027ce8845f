package element

import (
	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
)

// A ledger is how the lines of a Records are set: their columns, and whether
// the limits stand under what they limit because a column of their own would
// leave that no room.
type ledger struct {
	compose.Tabs
	stacked bool
}

// Records are lines to fill in: step, what, limits, then the boxes.
func records(r render.Records, c *compose.Compositor) compose.Block {
	l := newLedger(c, r)
	again := l.head(r, compose.Joined(" ", r.Title, c.Say.Continued))
	if r.Title == "" {
		again = l.head(r, "")
	}
	b := compose.Block{Runs: true, Again: &again, Slabs: []compose.Slab{l.head(r, r.Title)}}
	for i, row := range r.Rows {
		c.Ref = row.Ref
		s := l.row(row)
		s.Keep = i == 0 && len(r.Rows) > 1 || i == len(r.Rows)-2
		b.Slabs = append(b.Slabs, s)
	}
	return b
}

// newLedger shares the width out: the text gets what it needs, then the boxes
// what is good to write in.
func newLedger(c *compose.Compositor, r render.Records) ledger {
	gap := max(3*c.Beat/2, compose.LeastBoxGap)
	n := max(3, len(r.Columns))
	least, whole := make([]int, n), make([]int, n)
	for i, s := range r.Columns {
		least[i], whole[i] = c.Extent(compose.Says(s), c.Tag)
		if i >= 3 {
			least[i] = max(least[i], compose.LeastBoxWidth)
			whole[i] = least[i]
		}
	}
	element := c.Ref
	for _, row := range r.Rows {
		c.Ref = row.Ref
		for i, cell := range [][]render.Run{compose.Says(row.Step), row.What, row.Limits} {
			h := c.Strong
			if i == 1 && !row.Hold {
				h = c.Text
			}
			l, w := c.Extent(cell, h)
			least[i], whole[i] = max(least[i], l), max(whole[i], w)
		}
	}
	c.Ref = element
	whole[2] += c.Beat / 2
	least[2] = max(least[2], min(whole[2], c.Width*3/10)) // limits are read at a glance
	first := 3
	stacked := compose.Sum(least)-least[1]+9*c.Text.Size+gap*(n-1) > c.Width
	if stacked {
		whole[1], least[1] = max(whole[1], whole[2]), max(least[1], least[2])
		least, whole = append(least[:2], least[3:]...), append(whole[:2], whole[3:]...)
		first = 2
	}
	l := ledger{compose.Tabs{C: c, Widths: c.Columns(least, whole, c.Width, gap, 1), Gap: gap}, stacked}
	if boxes := l.Widths[first:]; len(boxes) > 0 {
		more := max(0, l.Widths[1]-whole[1]) / len(boxes)
		for i := range boxes {
			wider := max(0, min(more, c.Boxes-boxes[i]))
			boxes[i] += wider
			l.Widths[1] -= wider
		}
	}
	return l
}

// head is the title over the heads of the columns.
func (l ledger) head(r render.Records, title string) compose.Slab {
	c := l.C
	var k compose.Canvas
	h := 0
	if title != "" {
		h = heading(c, &k, title)
	}
	var cells [][]render.Run
	for i, s := range r.Columns {
		if i == 2 && l.stacked {
			cells[1] = compose.Says(compose.Joined(" · ", r.Columns[1], s))
			continue
		}
		cells = append(cells, compose.Says(s))
	}
	h += l.Tabs.Row(&k, cells, []compose.Hand{c.Label}, nil, h)
	k.Across(0, h, c.Width, c.Hair, compose.Hairline)
	return compose.Slab{Height: c.Beats(h), Keep: true, Ops: k.Ops}
}

// row sets one line: the text level with its boxes, each box apart from the
// next. Where no box belongs, a dash says so.
func (l ledger) row(row render.RecordRow) compose.Slab {
	c, u := l.C, l.C.Beat
	top := max(3*u/4, compose.LeastBoxGap/2) // two of these lie between boxes
	level := top + max(0, (c.Box-c.Text.Lead)/2)
	what, stroke := c.Text, c.Frame
	if row.Hold {
		what, stroke = c.Strong, 2*c.Frame
	}
	cells, hands := [][]render.Run{compose.Says(row.Step), row.What, row.Limits}, []compose.Hand{c.Strong, what, c.Strong}
	var k compose.Canvas
	under, first := 0, 3
	switch {
	case !l.stacked:
		under = level + l.Tabs.Row(&k, cells, hands, nil, level)
	case len(row.Limits) == 0:
		first = 2
		under = level + l.Tabs.Row(&k, cells[:2], hands, nil, level)
	default:
		first = 2
		under = top + l.Tabs.Row(&k, cells[:2], hands, nil, top)
		under += l.Tabs.Row(&k, [][]render.Run{nil, row.Limits}, hands[2:], nil, under)
	}
	for i, draw := range row.Boxes {
		if first+i >= len(l.Widths) {
			break
		}
		x, w := l.X(first+i), l.Widths[first+i]
		if draw {
			k.Frame(x, top, w, c.Box, stroke, u/4, compose.White, compose.Ink, sheet.WriteBox)
		} else {
			k.Across(x+w/2-u, top+c.Box/2, 2*u, c.Rule, compose.Soft)
		}
	}
	height := c.Beats(max(top+c.Box, under) + top)
	k.Across(0, height, c.Width, c.Hair, compose.Hairline)
	return compose.Slab{Height: height, Ops: k.Ops}
}
