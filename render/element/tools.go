package element

import (
	"benchwright/render"
	"benchwright/render/compose"
)

// The tools of a step stand in lines between thin rules: what to do, name,
// number, place. The name is what the eye looks for.
func tools(t render.Tools, c *compose.Compositor) compose.Block {
	if len(t.Rows) == 0 {
		return compose.Block{}
	}
	u, gap := c.Beat, 3*c.Beat/2
	const n = 4
	cells := make([][][]render.Run, len(t.Rows))
	hands := []compose.Hand{c.Text.In(compose.Accent), c.Text, c.Text, c.Aside.In(compose.Ink)}
	least, whole := make([]int, n), make([]int, n)
	for i, r := range t.Rows {
		name := []render.Run{{Text: r.Name, Weight: render.Semibold}}
		if r.Note != "" {
			name = append(name, render.Run{Text: " "}, render.Run{Text: r.Note})
		}
		cells[i] = [][]render.Run{compose.Says(r.Verb), name, code(r.Number), compose.Says(r.Place)}
		for j, cell := range cells[i] {
			a, w := c.Extent(cell, hands[j])
			least[j], whole[j] = max(least[j], a), max(whole[j], w)
		}
	}
	g := compose.Tabs{C: c, Widths: c.Columns(least, whole, c.Width, gap, 1), Gap: gap}
	var k compose.Canvas
	y := 0
	k.Across(0, y, c.Width, c.Hair, compose.Hairline)
	for _, row := range cells {
		y += u / 4
		y += g.Row(&k, row, hands, nil, y) + u/4
		k.Across(0, y, c.Width, c.Hair, compose.Hairline)
	}
	return compose.One(c.Beats(y), k)
}

// code is a name set apart, or nothing.
func code(s string) []render.Run {
	if s == "" {
		return nil
	}
	return []render.Run{{Text: s, Code: true}}
}
