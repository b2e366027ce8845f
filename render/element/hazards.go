package element

import (
	"slices"

	"benchwright/render"
	"benchwright/render/compose"
)

// hazards draws the summary: each signal word once, with the symbols of all that it stands
// for, and below it one line a hazard: what it is, where it waits.
func hazards(z render.Hazards, c *compose.Compositor) compose.Block {
	u := c.Beat
	b := compose.Block{Runs: true}
	if len(z.Rows) == 0 {
		return listing(render.Listing{Title: z.Title, None: z.None}, c)
	}
	head := func(title string) compose.Slab {
		var k compose.Canvas
		h := heading(c, &k, title)
		return compose.Slab{Height: h, Keep: true, Ops: k.Ops}
	}
	b.Again = new(head(z.Title + " " + c.Say.Continued))
	b.Slabs = append(b.Slabs, head(z.Title))
	for rows := z.Rows; len(rows) > 0; {
		n := 1
		for n < len(rows) && rows[n].Signal == rows[0].Signal && rows[n].Word == rows[0].Word {
			n++
		}
		b.Slabs = append(b.Slabs, flag(rows[:n], c))
		for i, r := range rows[:n] {
			var k compose.Canvas
			p := c.Set(sentence(heavy(r.Text, render.Semibold), compose.Says(r.Steps)), c.Small, c.Width, 0)
			k.Para(p, 0, u/8)
			h := p.Height() + u/4
			if i == n-1 {
				k.Across(0, h, c.Width, c.Hair, compose.Hairline)
			}
			b.Slabs = append(b.Slabs, compose.Slab{Height: h, Keep: keptRow(i, n), Ops: k.Ops})
		}
		rows = rows[n:]
	}
	return b
}

// flag is a signal word and behind it the symbols of its hazards, each once.
func flag(rows []render.HazardRow, c *compose.Compositor) compose.Slab {
	u := c.Beat
	var k compose.Canvas
	left := drawChip(c, &k, rows[0].Signal, rows[0].Word, 0, (c.Minor+u/2-chipHeight(c))/2, 0) + u
	x, y := left, u/4
	var seen []string
	for _, r := range rows {
		for _, s := range r.Symbols {
			if slices.Contains(seen, s) {
				continue
			}
			seen = append(seen, s)
			if x+c.Minor > c.Width {
				x, y = left, y+c.Minor+u/2
			}
			symbolAt(c, &k, s, x, y, c.Minor)
			x += c.Minor + u/2
		}
	}
	return compose.Slab{Height: y + c.Minor + u/4, Keep: true, Ops: k.Ops}
}
