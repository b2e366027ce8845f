package element

import (
	"benchwright/render"
	"benchwright/render/compose"
)

// hazards draws the summary, one line a hazard: symbols, word, what it is,
// where it waits.
func hazards(z render.Hazards, c *compose.Compositor) compose.Block {
	u := c.Beat
	b := compose.Block{Runs: true}
	if len(z.Rows) == 0 {
		return listing(render.Listing{Title: z.Title, None: z.None}, c)
	}
	signs, chip := 0, 0
	for _, r := range z.Rows {
		var scratch compose.Canvas
		chip = max(chip, drawChip(c, &scratch, r.Signal, r.Word, 0, 0, 0))
		signs = max(signs, len(r.Symbols)*(c.Minor+u/2))
	}
	head := func(title string) compose.Slab {
		var k compose.Canvas
		h := heading(c, &k, title)
		return compose.Slab{Height: h, Keep: true, Ops: k.Ops}
	}
	b.Again = new(head(z.Title + " " + c.Say.Continued))
	b.Slabs = append(b.Slabs, head(z.Title))
	for i, r := range z.Rows {
		var k compose.Canvas
		left := signs + chip + 3*u/2
		p := c.Set(sentence(heavy(r.Text, render.Semibold), compose.Says(r.Steps)), c.Small, c.Width-left, 0)
		h := max(p.Height(), c.Minor) + u/2
		for j, s := range r.Symbols {
			symbolAt(c, &k, s, j*(c.Minor+u/2), (h-c.Minor)/2, c.Minor)
		}
		drawChip(c, &k, r.Signal, r.Word, signs, (h-chipHeight(c))/2, chip)
		k.Para(p, left, (h-p.Height())/2)
		k.Across(0, h, c.Width, c.Hair, compose.Hairline)
		b.Slabs = append(b.Slabs, compose.Slab{Height: h, Keep: keptRow(i, len(z.Rows)), Ops: k.Ops})
	}
	return b
}
