package element

import (
	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// A table is ruled between rows, its head in the accent over a heavier rule.
func table(t render.Table, c *compose.Compositor) compose.Block {
	n := 0
	for _, r := range append([][][]render.Run{t.Head}, t.Rows...) {
		n = max(n, len(r))
	}
	if n == 0 {
		return compose.Block{}
	}
	u := c.Beat
	tags, body := hands(t, c, n)
	g := columns(t, c, tags, body)
	b := compose.Block{Runs: true}
	if len(t.Head) > 0 {
		var k compose.Canvas
		h := g.Row(&k, t.Head, tags, t.Align, 0)
		k.Across(0, h+u/2, c.Width, c.Rule, compose.Accent)
		head := compose.Slab{Height: c.Beats(h + u/2), Keep: true, Ops: k.Ops}
		b.Slabs = append(b.Slabs, head)
		b.Again = &head
	}
	air := u
	if t.Large { // the line of large figures has air enough
		air = 0
	}
	for i, r := range t.Rows {
		var k, out compose.Canvas
		h := c.Beats(g.Row(&k, r, body, t.Align, air/2) + air)
		if i%2 == 1 {
			out.Ground(0, 0, c.Width, h, compose.Tint)
		}
		out.Add(k.Ops...)
		out.Across(0, h, c.Width, c.Hair, compose.Hairline)
		if t.Ruled {
			for i := 1; i < n; i++ {
				x := g.X(i) - g.Gap/2
				out.Add(sheet.Line{X1: x, Y1: 0, X2: x, Y2: h, Width: c.Hair, Color: compose.Hairline})
			}
		}
		if i < len(t.Marked) && t.Marked[i] {
			out.Add(sheet.Rect{X: c.Frame / 2, Y: c.Frame / 2, W: c.Width - c.Frame, H: h - c.Frame, Fill: sheet.NoColor, Stroke: compose.Accent, StrokeWidth: 2 * c.Frame, Role: sheet.Tint})
		}
		last := i == len(t.Rows)-1 && len(t.Under) > 0
		b.Slabs = append(b.Slabs, compose.Slab{Height: h, Keep: i == 0 && len(t.Rows) > 1 || i == len(t.Rows)-2 || last, Ops: out.Ops})
	}
	if len(t.Under) > 0 {
		var k compose.Canvas
		p := c.Set(t.Under, c.Text, c.Width-2*u, 0)
		k.Para(p, u, u/2)
		b.Slabs = append(b.Slabs, compose.Slab{Height: c.Beats(p.Height() + u/2), Ops: k.Ops})
	}
	return b
}

// hands are the type of the head and of the rows, by column.
func hands(t render.Table, c *compose.Compositor, columns int) (tags, body []compose.Hand) {
	tags, body = make([]compose.Hand, columns), make([]compose.Hand, columns)
	for i := range columns {
		if tags[i], body[i] = c.Tag, c.Text; t.Grid {
			tags[i] = c.Strong.In(compose.Accent)
		}
		if t.Large && (i >= len(t.Fine) || !t.Fine[i]) {
			body[i] = c.Hand(c.Units.Cap(), typeface.Semibold, compose.Ink)
		}
	}
	return tags, body
}

// tabs are the columns, as wide as their cells. The bands reach half a gap past
// the text on either side; room to spare goes between the columns, as far as the
// eye still crosses it.
func columns(t render.Table, c *compose.Compositor, tags, body []compose.Hand) compose.Tabs {
	n, u := len(tags), c.Beat
	least, whole := make([]int, n), make([]int, n)
	fit := func(cells [][]render.Run, h []compose.Hand, lines int) {
		for i, cell := range cells {
			l, w := c.Extent(cell, h[i])
			least[i], whole[i] = max(least[i], l), max(whole[i], l, w/lines)
		}
	}
	lines := 1
	if t.Large {
		lines = 2 // the figures take the width; the head may take several lines
	}
	fit(t.Head, tags, lines)
	for _, r := range t.Rows {
		fit(r, body, 1)
	}
	g := compose.Tabs{C: c, Widths: c.Columns(least, whole, c.Width-2*u, 3*u, 0), Gap: 3 * u, Left: u}
	if spare := g.Widths[0] - whole[0]; n > 1 && spare > 0 {
		g.Widths[0] = whole[0]
		g.Gap += min(spare/(n-1), 5*u)
	}
	return g
}
