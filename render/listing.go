package render

// A listing of the set-out face has its title on a tinted bar and its rows
// between thin rules, or the word that says there are none.
func (l Listing) lay(c *compositor) block {
	u := c.Beat
	b := block{Runs: true}
	n := len(l.Columns)
	for _, r := range l.Rows {
		n = max(n, len(r))
	}
	if len(l.Rows) == 0 {
		var k canvas
		p := c.Set(says(l.Title), c.Strong.In(accent), c.Width, 0)
		c.heading(&k, l.Title)
		q := c.Set(says(l.None), c.Text, c.Width-p.Width-3*u, 0)
		k.Para(q, p.Width+3*u, 0)
		b.Slabs = []slab{{Height: c.Beats(p.Height() + u/2), Ops: k.Ops}}
		return b
	}
	least, whole := make([]int, n), make([]int, n)
	for i, s := range l.Columns {
		least[i], whole[i] = c.Extent(says(s), c.Label)
	}
	hands := []hand{c.Strong, c.Text}
	if n == 1 {
		hands = []hand{c.Text}
	}
	for _, r := range l.Rows {
		for i, cell := range r {
			a, w := c.Extent(cell, hands[min(i, len(hands)-1)])
			least[i], whole[i] = max(least[i], a), max(whole[i], w)
		}
	}
	g := tabs{C: c, Widths: c.Columns(least, whole, c.Width, 2*u, 0), Gap: 2 * u}
	head := func(title string) slab {
		var k canvas
		h := c.heading(&k, title)
		if len(l.Columns) > 0 {
			var cells [][]Run
			for _, s := range l.Columns {
				cells = append(cells, says(s))
			}
			h += g.Row(&k, cells, []hand{c.Label}, nil, h)
			k.Across(0, h, c.Width, c.Hair, hairline)
		}
		return slab{Height: c.Beats(h), Keep: true, Ops: k.Ops}
	}
	again := head(l.Title + " " + c.Say.Continued)
	b.Again = &again
	b.Slabs = append(b.Slabs, head(l.Title))
	for i, r := range l.Rows {
		var k canvas
		h := g.Row(&k, r, hands, nil, u/4) + u/2
		k.Across(0, h, c.Width, c.Hair, hairline)
		b.Slabs = append(b.Slabs, slab{Height: c.Beats(h), Keep: i == 0 && len(l.Rows) > 1 || i == len(l.Rows)-2, Ops: k.Ops})
	}
	return b
}

// heading is the title of a listing over its rule; it returns the height.
func (c *compositor) heading(k *canvas, title string) int {
	p := c.Set(says(title), c.Strong.In(accent), c.Width, 0)
	k.Para(p, 0, 0)
	h := p.Height()
	k.Across(0, h, c.Width, c.Rule, accent)
	return h + c.Beat/4
}
