package render

// The tools of a step stand in lines between thin rules: what to do, name,
// number, place. The name is what the eye looks for.
func (t Tools) lay(c *compositor) block {
	if len(t.Rows) == 0 {
		return block{}
	}
	u, gap := c.beat, 3*c.beat/2
	const n = 4
	cells := make([][][]Run, len(t.Rows))
	hands := []hand{c.text.in(accent), c.text, c.text, c.aside.in(ink)}
	least, whole := make([]int, n), make([]int, n)
	for i, r := range t.Rows {
		name := []Run{{Text: r.Name, Weight: Semibold}}
		if r.Note != "" {
			name = append(name, Run{Text: " "}, Run{Text: r.Note})
		}
		cells[i] = [][]Run{says(r.Verb), name, code(r.Number), says(r.Place)}
		for j, cell := range cells[i] {
			a, w := c.extent(cell, hands[j])
			least[j], whole[j] = max(least[j], a), max(whole[j], w)
		}
	}
	g := tabs{c: c, widths: c.columns(least, whole, c.width, gap, 1), gap: gap}
	var k canvas
	y := 0
	k.across(0, y, c.width, c.hair, hairline)
	for _, row := range cells {
		y += u / 4
		y += g.row(&k, row, hands, nil, y) + u/4
		k.across(0, y, c.width, c.hair, hairline)
	}
	return one(c.beats(y), k)
}

// code is a name set apart, or nothing.
func code(s string) []Run {
	if s == "" {
		return nil
	}
	return []Run{{Text: s, Code: true}}
}
