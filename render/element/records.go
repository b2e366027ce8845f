package element

import (
	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

import "strconv"

// records draws lines to fill in: step, what and its limits at the left, at the
// right a box for each reading, then the instrument's number and the initials.
func records(r render.Records, c *compose.Compositor) compose.Block {
	again := recordsHead(r, c, compose.Joined(" ", r.Title, c.Say.Continued))
	if r.Title == "" {
		again = recordsHead(r, c, "")
	}
	b := compose.Block{Runs: true, Again: &again, Slabs: []compose.Slab{recordsHead(r, c, r.Title)}}
	for i, row := range r.Rows {
		c.Ref = row.Ref
		s := recordsRow(r, c, row)
		s.Keep = keptRow(i, len(r.Rows))
		b.Slabs = append(b.Slabs, s)
	}
	return b
}

// mostReadings is how many boxes for readings stand on one line.
const mostReadings = 4

// boxGap returns the room between boxes on a strip.
func boxGap(c *compose.Compositor) int { return max(compose.LeastBoxGap, c.Beat) }

// recordsTail returns the columns of the tail: instrument and initials, each as
// wide as a box.
func recordsTail(r render.Records, c *compose.Compositor) int {
	return len(r.Tail) * (c.Boxes + boxGap(c))
}

// recordsHead draws the title over the heads of the columns.
func recordsHead(r render.Records, c *compose.Compositor, title string) compose.Slab {
	var k compose.Canvas
	h := 0
	if title != "" {
		h = heading(c, &k, title)
	}
	tall := 0
	at := func(x, w int, s string, a render.Align) {
		p := c.Set(compose.Says(s), c.Label, w, 0)
		k.Aligned(p, x, h, w, a)
		tall = max(tall, p.Height())
	}
	right := c.Width - recordsTail(r, c)
	at(0, c.Width/3, compose.Joined(" · ", r.Step, r.What), render.Left)
	at(right-2*c.Boxes, 2*c.Boxes, r.Readings, render.Right)
	for i, s := range r.Tail {
		at(right+i*(c.Boxes+boxGap(c))+boxGap(c), c.Boxes, s, render.Left)
	}
	h += tall
	k.Across(0, h, c.Width, c.Hair, compose.Hairline)
	return compose.Slab{Height: h + c.Hair, Keep: true, Ops: k.Ops}
}

// recordsRow sets one line: the text level with its boxes, each box apart from the
// next and under its label; where that leaves the text no room, it stands above
// them. Where no box belongs, a dash says so.
func recordsRow(r render.Records, c *compose.Compositor, row render.RecordRow) compose.Slab {
	u, gap := c.Beat, boxGap(c)
	top, stroke := gap/2, c.Frame
	if row.Hold {
		stroke = 2 * c.Frame
	}
	cell := c.Boxes + gap
	least := 12 * c.Small.Size // of the text, beside its boxes
	right := c.Width - recordsTail(r, c)
	n := min(len(row.Boxes), mostReadings, max(1, (right-least)/cell))
	if lines := (len(row.Boxes) + n - 1) / max(n, 1); lines > 1 { // no line much shorter than the others
		n = (len(row.Boxes) + lines - 1) / lines
	}
	number := 5 * c.Small.Size / 2
	step := c.Set(compose.Says(row.Step), c.Name, number, 0)
	runs := sentence(heavy(row.What, render.Semibold), row.Limits)
	room := right + gap - n*cell - gap - number
	var k compose.Canvas
	var text compose.Para
	if room < least {
		n = min(len(row.Boxes), max(1, (right+gap)/cell))
		text = c.Set(runs, c.Small, c.Width-number, 0)
		k.Para(step, 0, top)
		k.Para(text, number, top)
		top += text.Height()
	} else {
		text = c.Set(runs, c.Small, room, 0)
	}
	y, over := top, 0
	for from := 0; from < len(row.Boxes); from += n {
		line := row.Boxes[from:min(from+n, len(row.Boxes))]
		if from > 0 {
			y += over + c.Box + gap
		}
		over = 0
		for _, l := range line {
			over = max(over, c.Set(compose.Says(l), c.Label, c.Boxes, 0).Height())
		}
		for i, l := range line {
			x := right + gap - (len(line)-i)*cell
			p := c.Set(compose.Says(l), c.Label, c.Boxes, 0)
			k.Para(p, x, y+over-p.Height())
			k.Frame(x, y+over, c.Boxes, c.Box, stroke, u/4, compose.White, compose.Ink, sheet.WriteBox)
		}
	}
	for i := range r.Tail {
		x := right + i*cell + gap
		if i < len(row.Tail) && row.Tail[i] {
			k.Frame(x, y+over, c.Boxes, c.Box, stroke, u/4, compose.White, compose.Ink, sheet.WriteBox)
		} else {
			k.Across(x+c.Boxes/2-u, y+over+c.Box/2, 2*u, c.Rule, compose.Soft)
		}
	}
	bottom := y + over + c.Box
	if room >= least {
		level := max(top, (bottom+top-text.Height())/2)
		k.Para(step, 0, level)
		k.Para(text, number, level)
		bottom = max(bottom, level+text.Height())
	}
	height := bottom + gap - gap/2
	k.Across(0, height, c.Width, c.Hair, compose.Hairline)
	return compose.Slab{Height: height, Ops: k.Ops}
}

// ticksAcross is how many cells for ticks stand in a row: a step's number then
// says where to look for it.
const ticksAcross = 10

// ticks draws one narrow cell a step: its number and the box to tick.
func ticks(t render.Ticks, c *compose.Compositor) compose.Block {
	if len(t.Numbers) == 0 {
		return compose.Block{}
	}
	var head compose.Canvas
	h := heading(c, &head, t.Title)
	b := compose.Block{Runs: true, Slabs: []compose.Slab{{Height: h, Keep: true, Ops: head.Ops}}}
	gap := boxGap(c)
	number := 0
	for _, n := range t.Numbers {
		number = max(number, typeface.Width(c.Name.Font, c.Name.Size, strconv.Itoa(n)))
	}
	cell := number + c.Beat/2 + c.Tick + gap
	per := min(ticksAcross, max(1, (c.Width+gap)/cell))
	cell = max(cell, (c.Width+gap)/ticksAcross)
	for from := 0; from < len(t.Numbers); from += per {
		var k compose.Canvas
		for i, n := range t.Numbers[from:min(from+per, len(t.Numbers))] {
			x := i * cell
			k.Label(c, strconv.Itoa(n), c.Name, x+number, gap/2+c.Tick/2, render.Right)
			k.Frame(x+number+c.Beat/2, gap/2, c.Tick, c.Tick, c.Frame, c.Beat/4, compose.White, compose.Ink, sheet.TickBox)
		}
		b.Slabs = append(b.Slabs, compose.Slab{Height: c.Tick + gap, Ops: k.Ops})
	}
	return b
}
