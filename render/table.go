package render

// A table is ruled between rows, its head in the accent over a heavier rule.
func (t Table) lay(c *compositor) block {
	n := 0
	for _, r := range append([][][]Run{t.Head}, t.Rows...) {
		n = max(n, len(r))
	}
	if n == 0 {
		return block{}
	}
	u := c.beat
	tags, body := t.hands(c, n)
	g := t.tabs(c, tags, body)
	b := block{runs: true}
	if len(t.Head) > 0 {
		var k canvas
		h := g.row(&k, t.Head, tags, t.Align, 0)
		k.across(0, h+u/2, c.width, c.rule, accent)
		head := slab{height: c.beats(h + u/2), keep: true, ops: k.ops}
		b.slabs = append(b.slabs, head)
		b.again = &head
	}
	air := u
	if t.Large { // the line of large figures has air enough
		air = 0
	}
	for i, r := range t.Rows {
		var k, out canvas
		h := c.beats(g.row(&k, r, body, t.Align, air/2) + air)
		if i%2 == 1 {
			out.ground(0, 0, c.width, h, tint)
		}
		out.add(k.ops...)
		out.across(0, h, c.width, c.hair, hairline)
		if t.Ruled {
			for i := 1; i < n; i++ {
				x := g.x(i) - g.gap/2
				out.add(Line{X1: x, Y1: 0, X2: x, Y2: h, Width: c.hair, Color: hairline})
			}
		}
		if i < len(t.Marked) && t.Marked[i] {
			out.add(Rect{X: c.frame / 2, Y: c.frame / 2, W: c.width - c.frame, H: h - c.frame, Fill: NoColor, Stroke: accent, StrokeWidth: 2 * c.frame, Role: Tint})
		}
		last := i == len(t.Rows)-1 && len(t.Under) > 0
		b.slabs = append(b.slabs, slab{height: h, keep: i == 0 && len(t.Rows) > 1 || i == len(t.Rows)-2 || last, ops: out.ops})
	}
	if len(t.Under) > 0 {
		var k canvas
		p := c.set(t.Under, c.text, c.width-2*u, 0)
		k.para(p, u, u/2)
		b.slabs = append(b.slabs, slab{height: c.beats(p.height() + u/2), ops: k.ops})
	}
	return b
}

// hands are the type of the head and of the rows, by column.
func (t Table) hands(c *compositor, columns int) (tags, body []hand) {
	tags, body = make([]hand, columns), make([]hand, columns)
	for i := range columns {
		if tags[i], body[i] = c.tag, c.text; t.Grid {
			tags[i] = c.strong.in(accent)
		}
		if t.Large && (i >= len(t.Fine) || !t.Fine[i]) {
			body[i] = c.hand(c.units.cap(), FontSemibold, ink)
		}
	}
	return tags, body
}

// tabs are the columns, as wide as their cells. The bands reach half a gap past
// the text on either side; room to spare goes between the columns, as far as the
// eye still crosses it.
func (t Table) tabs(c *compositor, tags, body []hand) tabs {
	n, u := len(tags), c.beat
	least, whole := make([]int, n), make([]int, n)
	fit := func(cells [][]Run, h []hand, lines int) {
		for i, cell := range cells {
			l, w := c.extent(cell, h[i])
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
	g := tabs{c: c, widths: c.columns(least, whole, c.width-2*u, 3*u, 0), gap: 3 * u, left: u}
	if spare := g.widths[0] - whole[0]; n > 1 && spare > 0 {
		g.widths[0] = whole[0]
		g.gap += min(spare/(n-1), 5*u)
	}
	return g
}
