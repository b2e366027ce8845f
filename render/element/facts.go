package element

import (
	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
)

// facts draws facts side by side, label over fact, as many to a row as fit.
func facts(f render.Facts, c *compose.Compositor) compose.Block {
	u, gap := c.Beat, 2*c.Beat
	type fact struct{ least, whole int }
	var all []fact
	for _, r := range f.Rows {
		l, _ := c.Extent(compose.Says(r.Label), c.Label)
		least, whole := c.Extent(r.Runs, c.Name)
		all = append(all, fact{max(l, least), min(max(l, whole), c.Width)})
	}
	var b compose.Block
	for from := 0; from < len(all); {
		to, sum := from, 0
		for to < len(all) && (to == from || sum+gap+max(all[to].least, min(all[to].whole, c.Width/3)) <= c.Width) {
			if to > from {
				sum += gap
			}
			sum += max(all[to].least, min(all[to].whole, c.Width/3))
			to++
		}
		least, whole := make([]int, to-from), make([]int, to-from)
		for i := range least {
			least[i], whole[i] = all[from+i].least, all[from+i].whole
		}
		g := compose.Tabs{C: c, Widths: c.Share(least, whole, c.Width, gap, to-from-1), Gap: gap}
		var k compose.Canvas
		tallest := 0
		for i, r := range f.Rows[from:to] {
			p := c.Set(compose.Says(r.Label), c.Label, g.Widths[i], 0)
			q := c.Set(r.Runs, c.Name, g.Widths[i], 0)
			k.Para(p, g.X(i), 0)
			k.Para(q, g.X(i), p.Height())
			tallest = max(tallest, p.Height()+q.Height())
		}
		for i := 1; i < to-from; i++ {
			x := g.X(i) - gap/2
			k.Add(sheet.Line{X1: x, Y1: u / 2, X2: x, Y2: tallest - u/2, Width: c.Hair, Color: compose.Hairline})
		}
		b.Slabs = append(b.Slabs, compose.Slab{Gap: u / 2, Height: tallest, Ops: k.Ops})
		from = to
	}
	return b
}
