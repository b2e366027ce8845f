package element

import (
	"benchwright/render"
	"benchwright/render/compose"
)

// listing draws a list of the lay-out page: its title on a tinted bar, and its
// rows between thin rules, or the word that says there are none.
func listing(l render.Listing, c *compose.Compositor) compose.Block {
	u := c.Beat
	b := compose.Block{Runs: true}
	n := len(l.Columns)
	for _, r := range l.Rows {
		n = max(n, len(r))
	}
	if len(l.Rows) == 0 {
		var k compose.Canvas
		p := c.Set(compose.Says(l.Title), c.Strong.In(compose.Accent), c.Width, 0)
		heading(c, &k, l.Title)
		q := c.Set(compose.Says(l.None), c.Small, c.Width-p.Width-3*u, 0)
		k.Para(q, p.Width+3*u, 0)
		b.Slabs = []compose.Slab{{Height: p.Height() + u/2, Ops: k.Ops}}
		return b
	}
	least, whole := make([]int, n), make([]int, n)
	for i, s := range l.Columns {
		least[i], whole[i] = c.Extent(compose.Says(s), c.Label)
	}
	hands := []compose.Hand{c.Name, c.Small}
	if n == 1 {
		hands = []compose.Hand{c.Small}
	}
	for _, r := range l.Rows {
		for i, cell := range r {
			a, w := c.Extent(cell, hands[min(i, len(hands)-1)])
			least[i], whole[i] = max(least[i], a), max(whole[i], w)
		}
	}
	slack := 0
	if n == 2 { // a name, and what is said of it
		slack = 1
	}
	g := compose.Tabs{C: c, Widths: c.Share(least, whole, c.Width, 2*u, slack), Gap: 2 * u}
	head := func(title string) compose.Slab {
		var k compose.Canvas
		h := heading(c, &k, title)
		if len(l.Columns) > 0 {
			var cells [][]render.Run
			for _, s := range l.Columns {
				cells = append(cells, compose.Says(s))
			}
			h += g.Row(&k, cells, []compose.Hand{c.Label}, nil, h)
			k.Across(0, h, c.Width, c.Hair, compose.Hairline)
		}
		return compose.Slab{Height: h, Keep: true, Ops: k.Ops}
	}
	b.Again = new(head(l.Title + " " + c.Say.Continued))
	b.Slabs = append(b.Slabs, head(l.Title))
	for i, r := range l.Rows {
		var k compose.Canvas
		h := g.Row(&k, r, hands, nil, u/8) + u/4
		k.Across(0, h, c.Width, c.Hair, compose.Hairline)
		b.Slabs = append(b.Slabs, compose.Slab{Height: h, Keep: keptRow(i, len(l.Rows)), Ops: k.Ops})
	}
	return b
}

// keptRow reports whether a row stays with the next one, so that neither the
// first nor the last stands alone in a column.
func keptRow(i, rows int) bool { return i == 0 && rows > 1 || i == rows-2 }

// heading draws the title of a listing over its rule and returns the height.
func heading(c *compose.Compositor, k *compose.Canvas, title string) int {
	p := c.Set(compose.Says(title), c.Strong.In(compose.Accent), c.Width, 0)
	k.Para(p, 0, 0)
	h := p.Height()
	k.Across(0, h, c.Width, c.Rule, compose.Accent)
	return h + c.Beat/4
}
