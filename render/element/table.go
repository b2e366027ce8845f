package element

import (
	"regexp"

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
	if l.bands > 1 {
		b.Slabs = l.banded(head, rows)
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
		p := c.Set(t.Under, c.Text, c.Width, 0)
		k.Para(p, 0, c.Beat/2)
		if n := len(b.Slabs); n > 0 {
			b.Slabs[n-1].Keep = true
		}
		b.Slabs = append(b.Slabs, compose.Slab{Height: p.Height() + c.Beat/2, Ops: k.Ops})
	}
	return b
}

// A ledge is a table on its tabs. Its text begins where other text does; the
// grounds and frames of its rows reach past it on either side.
type ledge struct {
	render.Table
	compose.Tabs
	tags, body []compose.Hand
	shift      [][]int // of a cell to the right, by row and column: decimal marks stand one over the other
	bands      int     // that the rows stand in
	width      int     // of the rows: all of the column, or that of one band
	fits       bool    // each column has its natural width
}

// How far the ground of a row, and the frame of a marked one, reach past its text.
// No more is left between a column and the trim.
const (
	groundOver = 700
	frameOver  = 1000
)

// mostHeadLines is how many lines a head may take over large figures, which take
// the width.
const mostHeadLines = 3

func newLedge(t render.Table, c *compose.Compositor, columns int) *ledge {
	l := &ledge{Table: t, width: c.Width}
	l.hands(c, columns)
	l.line(c, columns)
	most := 1
	if l.Large {
		most = mostHeadLines
	}
	l.fit(c, 1)
	for lines := 2; lines <= most; lines++ { // more where it lets the columns, or a further band, in
		try := *l
		if try.fit(c, lines); !l.fits || try.bands > l.bands {
			*l = try
		}
	}
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

// line finds how far to the right the numbers of each column stand, so that their
// decimal marks stand one over the other. A column that holds words too, or is not
// set from the left, stays as it is.
func (l *ledge) line(c *compose.Compositor, columns int) {
	l.shift = make([][]int, len(l.Rows))
	for r := range l.Rows {
		l.shift[r] = make([]int, columns)
	}
	for i := range columns {
		if i < len(l.Align) && l.Align[i] != render.Left {
			continue
		}
		before, most, numbers := make([]int, len(l.Rows)), 0, true
		for r, row := range l.Rows {
			if i >= len(row) || len(row[i]) == 0 {
				continue
			}
			whole, is := wholePart(row[i])
			numbers = numbers && is
			_, before[r] = c.Extent(whole, l.body[i])
			most = max(most, before[r])
		}
		for r, row := range l.Rows {
			if numbers && i < len(row) && len(row[i]) > 0 {
				l.shift[r][i] = most - before[r]
			}
		}
	}
}

// wholePart is what stands before the decimal mark of a number or of the first of
// a range.
func wholePart(cell []render.Run) ([]render.Run, bool) {
	text := ""
	for _, r := range cell {
		text += r.Text
	}
	m := number.FindStringSubmatch(text)
	if m == nil {
		return nil, false
	}
	return []render.Run{{Text: m[1], Weight: cell[0].Weight}}, true
}

// number is a number or a range of two: 0.50, −3 to −1.
var number = regexp.MustCompile(`^([-+−±]?\d+)(?:[.,]\d+)?(?:\s+\pL+\s+[-+−]?\d+(?:[.,]\d+)?)?$`)

// fit makes the columns as wide as their cells, a head on so many lines at most.
// Room to spare goes between the columns, as far as the eye still crosses it, or is
// left for further bands.
func (l *ledge) fit(c *compose.Compositor, lines int) {
	n, u := len(l.tags), c.Beat
	least, whole := make([]int, n), make([]int, n)
	for i, cell := range l.Head {
		least[i], whole[i] = c.Extent(cell, l.tags[i])
		if lines > 1 {
			whole[i] = c.Narrowest(cell, l.tags[i], lines)
		}
	}
	for r, row := range l.Rows {
		for i, cell := range row {
			a, w := c.Extent(cell, l.body[i])
			least[i], whole[i] = max(least[i], a+l.shift[r][i]), max(whole[i], w+l.shift[r][i])
		}
	}
	gap := 3 * u / 2
	l.fits = compose.Sum(whole)+(n-1)*gap <= c.Width
	l.Tabs = compose.Tabs{C: c, Widths: c.Share(least, whole, c.Width, gap, 0), Gap: gap}
	spare := l.Widths[0] - whole[0]
	if spare > 0 {
		l.Widths[0] = whole[0]
	}
	l.bands, l.width = l.inBands(), c.Width
	switch {
	case l.bands > 1:
		l.Gap, l.width = 3*u, (c.Width-(l.bands-1)*bandGap(c))/l.bands
	case spare > 0 && n > 1:
		l.Gap += min(spare/(n-1), 4*u)
	}
}

// gridBand is how many columns a table with a reading across may have and still run
// in bands: with more, the eye takes the second band for further columns.
const gridBand = 3

// bandGap is the room between two bands.
func bandGap(c *compose.Compositor) int { return max(2*c.Beat, 2*frameOver+c.Rule) }

// inBands returns how many bands the rows stand in: as many as the column holds,
// if there are rows enough that it saves height.
func (l *ledge) inBands() int {
	c := l.C
	if len(l.Rows) < 6 || l.Grid && len(l.Widths) > gridBand {
		return 1
	}
	one := compose.Sum(l.Widths) + (len(l.Widths)-1)*3*c.Beat
	return max(1, min((c.Width+bandGap(c))/(one+bandGap(c)), 3, len(l.Rows)/3))
}

// banded sets the rows in bands, each under the head. Where they are taller than
// a face, what one face holds comes first.
func (l *ledge) banded(head *compose.Slab, rows []compose.Slab) []compose.Slab {
	c, n, gap := l.C, l.bands, bandGap(l.C)
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
			x, y := part*(l.width+gap), 0
			if part > 0 {
				k.Ground(x-gap/2-c.Hair, 0, 2*c.Hair, tall, compose.Accent)
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
		out = append(out, compose.Slab{Gap: c.Beat, Height: height, Ops: k.Ops})
	}
	return out
}

// shifted adds operations, moved right and down.
func shifted(k *compose.Canvas, ops []sheet.Op, dx, dy int) {
	for _, op := range ops {
		k.Add(sheet.Moved(op, dx, dy))
	}
}

// head sets what the columns are, each standing on the rule.
func (l *ledge) head() compose.Slab {
	var k compose.Canvas
	c, tall := l.C, 0
	paras := make([]compose.Para, len(l.Head))
	for i, cell := range l.Head {
		paras[i] = c.Set(cell, l.tags[i], l.Widths[i], 0)
		tall = max(tall, paras[i].Height())
	}
	for i, p := range paras {
		a := render.Left
		if i < len(l.Align) {
			a = l.Align[i]
		}
		k.Aligned(p, l.X(i), tall-p.Height(), l.Widths[i], a)
	}
	h := tall + c.Beat/4
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
	h := l.Tabs.Row(&k, l.Rows[i], l.body, l.Align, l.shift[i], air/2) + air
	if i%2 == 1 {
		out.Ground(-groundOver, 0, l.width+2*groundOver, h, compose.Tint)
	}
	out.Add(k.Ops...)
	out.Across(0, h, l.width, c.Hair, compose.Hairline)
	if l.Ruled {
		for i := 1; i < len(l.Widths); i++ {
			x := l.X(i) - l.Gap/2
			out.Add(sheet.Line{X1: x, Y1: 0, X2: x, Y2: h, Width: c.Hair, Color: compose.Hairline})
		}
	}
	if i < len(l.Marked) && l.Marked[i] { // its inner edge is clear of the text
		x := c.Frame/2 - frameOver
		out.Add(sheet.Rect{X: x, W: l.width - 2*x, H: h, Fill: sheet.NoColor, Stroke: compose.Accent, StrokeWidth: c.Frame, Role: sheet.Tint})
	}
	return compose.Slab{Height: h, Ops: out.Ops}
}
