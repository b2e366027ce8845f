package render

import "strconv"

// A paragraph stands in one slab, unless it is longer than a face.
func (t Text) lay(c *compositor) block {
	u, h, indent := c.Beat, c.Text, 0
	switch t.Role {
	case Lead:
		h = c.Strong
	case Tip:
		h, indent = c.Aside, 2*u // a rule down the left sets it apart
	case Why:
		h = c.Aside
	case Small:
		h = c.Label
	}
	p := c.Set(t.Runs, h, c.Measure()-indent, 0)
	if p.Height() > c.Tallest {
		var b block
		for _, line := range p.Lines {
			var k canvas
			k.Para(para{Hand: h, Lines: [][]span{line}}, indent, 0)
			b.Slabs = append(b.Slabs, slab{Height: h.Lead, Ops: k.Ops})
		}
		return b
	}
	var k canvas
	if t.Role == Tip && p.Height() > 0 {
		k.Ground(0, u/2, u/2, p.Height()-u, accent)
	}
	k.Para(p, indent, 0)
	b := one(c.Beats(p.Height()), k)
	b.Runs = t.Role == Lead // over what runs on
	return b
}

// Each item of the list is a slab; items below an item stay with it.
func (l List) lay(c *compositor) block {
	var b block
	for i, item := range l.Items {
		k := column{C: c, Width: c.Measure()}
		item.draw(&k, l.Ordered, i, 0)
		b.Slabs = append(b.Slabs, slab{Gap: c.Beat / 2, Height: c.Beats(k.Y), Ops: k.Ops})
	}
	return b
}

// draw sets an item with its mark hanging, and what is below it.
func (t Item) draw(k *column, ordered bool, i, depth int) {
	c := k.C
	indent := 3 * c.Beat
	mark, h := "•", c.Strong.In(accent)
	if ordered {
		mark = strconv.Itoa(i+1) + "."
	} else if depth > 0 {
		mark = "–"
	}
	w := textWidth(h.Font, h.Size, mark)
	if ordered {
		indent = max(4*c.Beat, c.Beats(w+c.Beat))
	}
	k.Span(span{Text: mark, Font: h.Font, W: w}, h, k.X, k.Y+h.Base())
	sub := column{canvas: k.canvas, C: c, X: k.X + indent, Y: k.Y, Width: k.Width - indent}
	sub.Text(t.Runs, c.Text)
	sub.Y = max(sub.Y, k.Y+h.Lead)
	if t.Sub != nil {
		for j, under := range t.Sub.Items {
			sub.Y += c.Beat / 4
			under.draw(&sub, t.Sub.Ordered, j, depth+1)
		}
	}
	k.canvas, k.Y = sub.canvas, sub.Y
}
