package render

// A listing of the set-out face has its title on a tinted bar and its rows
// between thin rules, or the word that says there are none.
func (l Listing) lay(c *compositor) block {
	u := c.beat
	b := block{runs: true}
	n := len(l.Columns)
	for _, r := range l.Rows {
		n = max(n, len(r))
	}
	if len(l.Rows) == 0 {
		var k canvas
		p := c.set(says(l.Title), c.strong.in(accent), c.width, 0)
		c.heading(&k, l.Title)
		q := c.set(says(l.None), c.text, c.width-p.width-3*u, 0)
		k.para(q, p.width+3*u, 0)
		b.slabs = []slab{{height: c.beats(p.height() + u/2), ops: k.ops}}
		return b
	}
	least, whole := make([]int, n), make([]int, n)
	for i, s := range l.Columns {
		least[i], whole[i] = c.extent(says(s), c.label)
	}
	hands := []hand{c.strong, c.text}
	if n == 1 {
		hands = []hand{c.text}
	}
	for _, r := range l.Rows {
		for i, cell := range r {
			a, w := c.extent(cell, hands[min(i, len(hands)-1)])
			least[i], whole[i] = max(least[i], a), max(whole[i], w)
		}
	}
	g := tabs{c: c, widths: c.columns(least, whole, c.width, 2*u, 0), gap: 2 * u}
	head := func(title string) slab {
		var k canvas
		h := c.heading(&k, title)
		if len(l.Columns) > 0 {
			var cells [][]Run
			for _, s := range l.Columns {
				cells = append(cells, says(s))
			}
			h += g.row(&k, cells, []hand{c.label}, nil, h)
			k.across(0, h, c.width, c.hair, hairline)
		}
		return slab{height: c.beats(h), keep: true, ops: k.ops}
	}
	again := head(l.Title + " " + c.say.Continued)
	b.again = &again
	b.slabs = append(b.slabs, head(l.Title))
	for i, r := range l.Rows {
		var k canvas
		h := g.row(&k, r, hands, nil, u/4) + u/2
		k.across(0, h, c.width, c.hair, hairline)
		b.slabs = append(b.slabs, slab{height: c.beats(h), keep: i == 0 && len(l.Rows) > 1 || i == len(l.Rows)-2, ops: k.ops})
	}
	return b
}

// heading is the title of a listing over its rule; it returns the height.
func (c *compositor) heading(k *canvas, title string) int {
	p := c.set(says(title), c.strong.in(accent), c.width, 0)
	k.para(p, 0, 0)
	h := p.height()
	k.across(0, h, c.width, c.rule, accent)
	return h + c.beat/4
}
