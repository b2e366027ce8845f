package element

import (
	"benchwright/render"
	"benchwright/render/compose"
)

// The summary has one line a hazard: word, symbols, what it is, where it
// waits.
func hazards(z render.Hazards, c *compose.Compositor) compose.Block {
	u, gap := c.Beat, 2*c.Beat
	b := compose.Block{Runs: true}
	if len(z.Rows) == 0 {
		return listing(render.Listing{Title: z.Title, None: z.None}, c)
	}
	const n = 4
	least, whole := make([]int, n), make([]int, n)
	for _, r := range z.Rows {
		var scratch compose.Canvas
		chip := drawChip(c, &scratch, r.Signal, r.Word, 0, 0, c.Text.Lead, 0)
		signs := max(0, len(r.Symbols)*(c.Minor+u)-u)
		tl, tw := c.Extent(r.Text, c.Text)
		sl, sw := c.Extent(compose.Says(r.Steps), c.Label)
		for i, p := range [n][2]int{{chip, chip}, {signs, signs}, {tl, tw}, {sl, sw}} {
			least[i], whole[i] = max(least[i], p[0]), max(whole[i], p[1])
		}
	}
	g := compose.Tabs{C: c, Widths: c.Columns(least, whole, c.Width, gap, 2), Gap: gap}
	head := func(title string) compose.Slab {
		var k compose.Canvas
		h := heading(c, &k, title)
		return compose.Slab{Height: c.Beats(h), Keep: true, Ops: k.Ops}
	}
	again := head(z.Title + " " + c.Say.Continued)
	b.Again = &again
	b.Slabs = append(b.Slabs, head(z.Title))
	for i, r := range z.Rows {
		var k compose.Canvas
		top := u / 2
		shift := max(0, (c.Minor-c.Text.Lead)/2)
		drawChip(c, &k, r.Signal, r.Word, g.X(0), top+shift, c.Text.Lead, g.Widths[0])
		for j, s := range r.Symbols {
			symbolAt(c, &k, s, g.X(1)+j*(c.Minor+u), top, c.Minor)
		}
		p := c.Set(r.Text, c.Text, g.Widths[2], 0)
		q := c.Set(compose.Says(r.Steps), c.Label, g.Widths[3], 0)
		lift := max(0, (c.Minor-p.Height())/2)
		k.Para(p, g.X(2), top+lift)
		k.Para(q, g.X(3), top+max(0, (c.Minor-q.Height())/2))
		h := c.Beats(max(p.Height(), q.Height(), c.Minor) + u)
		k.Across(0, h, c.Width, c.Hair, compose.Hairline)
		b.Slabs = append(b.Slabs, compose.Slab{Height: h, Keep: i == 0 && len(z.Rows) > 1 || i == len(z.Rows)-2, Ops: k.Ops})
	}
	return b
}
