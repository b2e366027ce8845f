package render

// The summary has one line a hazard: word, symbols, what it is, where it
// waits.
func (z Hazards) lay(c *compositor) block {
	u, gap := c.beat, 2*c.beat
	b := block{runs: true}
	if len(z.Rows) == 0 {
		return Listing{Title: z.Title, None: z.None}.lay(c)
	}
	const n = 4
	least, whole := make([]int, n), make([]int, n)
	for _, r := range z.Rows {
		var scratch canvas
		chip := c.chip(&scratch, r.Signal, r.Word, 0, 0, c.text.lead, 0)
		signs := max(0, len(r.Symbols)*(c.minor+u)-u)
		tl, tw := c.extent(r.Text, c.text)
		sl, sw := c.extent(says(r.Steps), c.label)
		for i, p := range [n][2]int{{chip, chip}, {signs, signs}, {tl, tw}, {sl, sw}} {
			least[i], whole[i] = max(least[i], p[0]), max(whole[i], p[1])
		}
	}
	g := tabs{c: c, widths: c.columns(least, whole, c.width, gap, 2), gap: gap}
	head := func(title string) slab {
		var k canvas
		h := c.heading(&k, title)
		return slab{height: c.beats(h), keep: true, ops: k.ops}
	}
	again := head(z.Title + " " + c.say.Continued)
	b.again = &again
	b.slabs = append(b.slabs, head(z.Title))
	for i, r := range z.Rows {
		var k canvas
		top := u / 2
		shift := max(0, (c.minor-c.text.lead)/2)
		c.chip(&k, r.Signal, r.Word, g.x(0), top+shift, c.text.lead, g.widths[0])
		for j, s := range r.Symbols {
			c.symbolAt(&k, s, g.x(1)+j*(c.minor+u), top, c.minor)
		}
		p := c.set(r.Text, c.text, g.widths[2], 0)
		q := c.set(says(r.Steps), c.label, g.widths[3], 0)
		lift := max(0, (c.minor-p.height())/2)
		k.para(p, g.x(2), top+lift)
		k.para(q, g.x(3), top+max(0, (c.minor-q.height())/2))
		h := c.beats(max(p.height(), q.height(), c.minor) + u)
		k.across(0, h, c.width, c.hair, hairline)
		b.slabs = append(b.slabs, slab{height: h, keep: i == 0 && len(z.Rows) > 1 || i == len(z.Rows)-2, ops: k.ops})
	}
	return b
}
