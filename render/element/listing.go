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
	if len(l.Signs) > 0 {
		return signs(l, c)
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
			h += g.Row(&k, cells, []compose.Hand{c.Label}, nil, nil, h)
			k.Across(0, h, c.Width, c.Hair, compose.Hairline)
		}
		return compose.Slab{Height: h, Keep: true, Ops: k.Ops}
	}
	b.Again = new(head(l.Title + " " + c.Say.Continued))
	b.Slabs = append(b.Slabs, head(l.Title))
	for i, r := range l.Rows {
		var k compose.Canvas
		h := g.Row(&k, r, hands, nil, nil, u/8) + u/4
		k.Across(0, h, c.Width, c.Hair, compose.Hairline)
		b.Slabs = append(b.Slabs, compose.Slab{Height: h, Keep: keptRow(i, len(l.Rows)), Ops: k.Ops})
	}
	return b
}

// signs sets a listing's rows side by side in columns, each behind its sign.
func signs(l render.Listing, c *compose.Compositor) compose.Block {
	u := c.Beat
	var k compose.Canvas
	y := heading(c, &k, l.Title) + u/4
	in, widest := c.Minor+u/2, 0
	for _, r := range l.Rows {
		_, w := c.Extent(r[0], c.Small)
		widest = max(widest, w)
	}
	n := max(1, min(len(l.Rows), (c.Width+2*u)/(in+widest+2*u)))
	cell := (c.Width + 2*u) / n
	for from := 0; from < len(l.Rows); from += n {
		tall := c.Minor
		for i, r := range l.Rows[from:min(from+n, len(l.Rows))] {
			p := c.Set(r[0], c.Small, cell-2*u-in, 0)
			symbolAt(c, &k, l.Signs[from+i], i*cell, y, c.Minor)
			k.Para(p, i*cell+in, y+max(0, c.Minor-p.Height())/2)
			tall = max(tall, p.Height())
		}
		y += tall + u/4
	}
	k.Across(0, y, c.Width, c.Hair, compose.Hairline)
	b := compose.One(y, k)
	b.Runs = true
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
