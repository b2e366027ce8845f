package render

// Facts stand side by side, label over fact, as many to a row as fit.
func (f Facts) lay(c *compositor) block {
	u, gap := c.beat, 3*c.beat
	type fact struct{ least, whole int }
	var all []fact
	for _, r := range f.Rows {
		l, _ := c.extent(says(r.Label), c.label)
		least, whole := c.extent(r.Runs, c.strong)
		all = append(all, fact{max(l, least), min(max(l, whole), c.width)})
	}
	var b block
	for from := 0; from < len(all); {
		to, sum := from, 0
		for to < len(all) && (to == from || sum+gap+max(all[to].least, min(all[to].whole, c.width/3)) <= c.width) {
			if to > from {
				sum += gap
			}
			sum += max(all[to].least, min(all[to].whole, c.width/3))
			to++
		}
		least, whole := make([]int, to-from), make([]int, to-from)
		for i := range least {
			least[i], whole[i] = all[from+i].least, all[from+i].whole
		}
		g := tabs{c: c, widths: c.columns(least, whole, c.width, gap, to-from-1), gap: gap}
		var k canvas
		tallest := 0
		for i, r := range f.Rows[from:to] {
			p := c.set(says(r.Label), c.label, g.widths[i], 0)
			q := c.set(r.Runs, c.strong, g.widths[i], 0)
			k.para(p, g.x(i), 0)
			k.para(q, g.x(i), p.height())
			tallest = max(tallest, p.height()+q.height())
		}
		for i := 1; i < to-from; i++ {
			x := g.x(i) - gap/2
			k.add(Line{X1: x, Y1: u / 2, X2: x, Y2: tallest - u/2, Width: c.hair, Color: hairline})
		}
		b.slabs = append(b.slabs, slab{gap: u, height: c.beats(tallest), ops: k.ops})
		from = to
	}
	return b
}
