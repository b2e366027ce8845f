package element

import (
	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
)

// table draws a table with rules between rows, its head in the accent over a
// heavier rule. A narrow and long one runs in bands beside each other, read
// down the first band and then down the next.
func table(t render.Table, c *compose.Compositor) compose.Block {
	n := 0
	for _, r := range append([][][]render.Run{t.Head}, t.Rows...) {
		n = max(n, len(r))
	}
	if n == 0 {
		return compose.Block{}
	}
	l := newLedge(t, c, n)
	rows := make([]compose.Slab, len(t.Rows))
	for i := range t.Rows {
		rows[i] = l.row(i)
	}
	b := compose.Block{Runs: true}
	var head *compose.Slab
	if len(t.Head) > 0 {
		head = new(l.head())
	}
	if bands := l.bands(rows); bands > 1 {
		b.Slabs = l.banded(head, rows, bands)
	} else {
		if head != nil {
			b.Slabs, b.Again = append(b.Slabs, *head), head
		}
		for i := range rows {
			last := i == len(rows)-1 && len(t.Under) > 0
			rows[i].Keep = keptRow(i, len(rows)) || last
		}
		b.Slabs = append(b.Slabs, rows...)
	}
	if len(t.Under) > 0 {
		var k compose.Canvas
		p := c.Set(t.Under, c.Text, c.Width-2*c.Beat, 0)
		k.Para(p, c.Beat, c.Beat/2)
		if n := len(b.Slabs); n > 0 {
			b.Slabs[n-1].Keep = true
		}
		b.Slabs = append(b.Slabs, compose.Slab{Height: p.Height() + c.Beat/2, Ops: k.Ops})
	}
	return b
}

// A ledge is a table on its tabs.
type ledge struct {
	render.Table
	compose.Tabs
	tags, body []compose.Hand
	width      int // of the rows: all of the column, or that of one band
}

func newLedge(t render.Table, c *compose.Compositor, columns int) *ledge {
	l := &ledge{Table: t, width: c.Width}
	l.hands(c, columns)
	l.fit(c)
	return l
}

// hands returns the type of the head and of the rows, by column.
func (l *ledge) hands(c *compose.Compositor, columns int) {
	l.tags, l.body = make([]compose.Hand, columns), make([]compose.Hand, columns)
	for i := range columns {
		if l.tags[i], l.body[i] = c.Tag, c.Text; l.Grid {
			l.tags[i] = c.Strong.In(compose.Accent)
		}
		if l.Large && (i >= len(l.Fine) || !l.Fine[i]) {
			l.body[i] = c.LookUp
		}
	}
}

// fit makes the columns as wide as their cells. The rows reach past the text on
// either side; room to spare goes between the columns, as far as the eye still
// crosses it, or is left for further bands.
func (l *ledge) fit(c *compose.Compositor) {
	n, u := len(l.tags), c.Beat
	least, whole := make([]int, n), make([]int, n)
	measure := func(cells [][]render.Run, h []compose.Hand, lines int) {
		for i, cell := range cells {
			a, w := c.Extent(cell, h[i])
			least[i], whole[i] = max(least[i], a), max(whole[i], a, w/lines)
		}
	}
	lines := 1
	if l.Large {
		lines = 3 // the figures take the width; the head may take several lines
	}
	measure(l.Head, l.tags, lines)
	for _, r := range l.Rows {
		measure(r, l.body, 1)
	}
	gap, left := 3*u/2, u/2
	if len(l.Marked) > 0 {
		left = u // clear of a row's frame
	}
	l.Tabs = compose.Tabs{C: c, Widths: c.Share(least, whole, c.Width-2*left, gap, 0), Gap: gap, Left: left}
	if spare := l.Widths[0] - whole[0]; spare > 0 {
		l.Widths[0] = whole[0]
		if n > 1 {
			l.Gap += min(spare/(n-1), 4*u)
		}
	}
}

// gridBand is how many columns a table with a reading across may have and still run
// in bands: with more, the eye takes the second band for further columns.
const gridBand = 4

// bands returns how many bands the rows stand in: as many as the column holds,
// if there are rows enough that it saves height.
func (l *ledge) bands(rows []compose.Slab) int {
	c, u := l.C, l.C.Beat
	if len(rows) < 6 || l.Grid && len(l.Widths) > gridBand {
		return 1
	}
	one := u + compose.Sum(l.Widths) + (len(l.Widths)-1)*3*u
	n := min((c.Width+2*u)/(one+2*u), 3, len(rows)/3)
	if n < 2 {
		return 1
	}
	l.Gap = 3 * u
	l.width = (c.Width - (n-1)*2*u) / n
	for i := range rows {
		rows[i] = l.row(i)
	}
	return n
}

// banded sets the rows in bands, each under the head. Where they are taller than
// a face, what one face holds comes first.
func (l *ledge) banded(head *compose.Slab, rows []compose.Slab, n int) []compose.Slab {
	c, u := l.C, l.C.Beat
	if head != nil {
		head = new(l.head())
	}
	var out []compose.Slab
	for len(rows) > 0 {
		per, tall := 0, 0
		if head != nil {
			tall = head.Height
		}
		for per < (len(rows)+n-1)/n && (per == 0 || tall+rows[per].Height <= c.Tallest*9/10) {
			tall += rows[per].Height
			per++
		}
		var k compose.Canvas
		height := 0
		for part := 0; part < n && len(rows) > 0; part++ {
			x, y := part*(l.width+2*u), 0
			if part > 0 {
				k.Ground(x-u-c.Hair, 0, 2*c.Hair, tall, compose.Accent)
			}
			if head != nil {
				shifted(&k, head.Ops, x, 0)
				y = head.Height
			}
			for _, r := range rows[:min(per, len(rows))] {
				shifted(&k, r.Ops, x, y)
				y += r.Height
			}
			height = max(height, y)
			rows = rows[min(per, len(rows)):]
		}
		out = append(out, compose.Slab{Gap: u, Height: height, Ops: k.Ops})
	}
	return out
}

// shifted adds operations, moved right and down.
func shifted(k *compose.Canvas, ops []sheet.Op, dx, dy int) {
	for _, op := range ops {
		k.Add(sheet.Moved(op, dx, dy))
	}
}

func (l *ledge) head() compose.Slab {
	var k compose.Canvas
	c := l.C
	h := l.Tabs.Row(&k, l.Head, l.tags, l.Align, 0) + c.Beat/4
	k.Across(0, h, l.width, c.Rule, compose.Accent)
	return compose.Slab{Height: h + c.Rule, Keep: true, Ops: k.Ops}
}

func (l *ledge) row(i int) compose.Slab {
	c := l.C
	var k, out compose.Canvas
	air := c.Beat / 2
	if l.Large { // the line of large figures has air enough
		air = 0
	}
	h := l.Tabs.Row(&k, l.Rows[i], l.body, l.Align, air/2) + air
	if i%2 == 1 {
		out.Ground(0, 0, l.width, h, compose.Tint)
	}
	out.Add(k.Ops...)
	out.Across(0, h, l.width, c.Hair, compose.Hairline)
	if l.Ruled {
		for i := 1; i < len(l.Widths); i++ {
			x := l.X(i) - l.Gap/2
			out.Add(sheet.Line{X1: x, Y1: 0, X2: x, Y2: h, Width: c.Hair, Color: compose.Hairline})
		}
	}
	if i < len(l.Marked) && l.Marked[i] {
		out.Add(sheet.Rect{X: c.Frame / 2, Y: c.Frame / 2, W: l.width - c.Frame, H: h - c.Frame, Fill: sheet.NoColor, Stroke: compose.Accent, StrokeWidth: 2 * c.Frame, Role: sheet.Tint})
	}
	return compose.Slab{Height: h, Ops: out.Ops}
}
