package render

// The tools of a step stand in lines between thin rules: what to do, name,
// number, place. The name is what the eye looks for.
func (t Tools) lay(c *compositor) block {
	if len(t.Rows) == 0 {
		return block{}
	}
	u, gap := c.Beat, 3*c.Beat/2
	const n = 4
	cells := make([][][]Run, len(t.Rows))
	hands := []hand{c.Text.In(accent), c.Text, c.Text, c.Aside.In(ink)}
	least, whole := make([]int, n), make([]int, n)
	for i, r := range t.Rows {
		name := []Run{{Text: r.Name, Weight: Semibold}}
		if r.Note != "" {
			name = append(name, Run{Text: " "}, Run{Text: r.Note})
		}
		cells[i] = [][]Run{says(r.Verb), name, code(r.Number), says(r.Place)}
		for j, cell := range cells[i] {
			a, w := c.Extent(cell, hands[j])
			least[j], whole[j] = max(least[j], a), max(whole[j], w)
		}
	}
	g := tabs{C: c, Widths: c.Columns(least, whole, c.Width, gap, 1), Gap: gap}
	var k canvas
	y := 0
	k.Across(0, y, c.Width, c.Hair, hairline)
	for _, row := range cells {
		y += u / 4
		y += g.Row(&k, row, hands, nil, y) + u/4
		k.Across(0, y, c.Width, c.Hair, hairline)
	}
	return one(c.Beats(y), k)
}

// code is a name set apart, or nothing.
func code(s string) []Run {
	if s == "" {
		return nil
	}
	return []Run{{Text: s, Code: true}}
}
