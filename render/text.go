package render

import "strconv"

// A paragraph stands in one slab, unless it is longer than a face.
func (t Text) lay(c *compositor) block {
	u, h, indent := c.beat, c.text, 0
	switch t.Role {
	case Lead:
		h = c.strong
	case Tip:
		h, indent = c.aside, 2*u // a rule down the left sets it apart
	case Why:
		h = c.aside
	case Small:
		h = c.label
	}
	p := c.set(t.Runs, h, c.measure()-indent, 0)
	if p.height() > c.tallest {
		var b block
		for _, line := range p.lines {
			var k canvas
			k.para(para{hand: h, lines: [][]span{line}}, indent, 0)
			b.slabs = append(b.slabs, slab{height: h.lead, ops: k.ops})
		}
		return b
	}
	var k canvas
	if t.Role == Tip && p.height() > 0 {
		k.ground(0, u/2, u/2, p.height()-u, accent)
	}
	k.para(p, indent, 0)
	b := one(c.beats(p.height()), k)
	b.runs = t.Role == Lead // over what runs on
	return b
}

// measure is the width of running text: the column, or what holds 70
// characters.
func (c *compositor) measure() int { return min(c.width, measureEms*c.text.size) }

// Each item of the list is a slab; items below an item stay with it.
func (l List) lay(c *compositor) block {
	var b block
	for i, item := range l.Items {
		k := column{c: c, width: c.measure()}
		item.draw(&k, l.Ordered, i, 0)
		b.slabs = append(b.slabs, slab{gap: c.beat / 2, height: c.beats(k.y), ops: k.ops})
	}
	return b
}

// draw sets an item with its mark hanging, and what is below it.
func (t Item) draw(k *column, ordered bool, i, depth int) {
	c := k.c
	indent := 3 * c.beat
	mark, h := "•", c.strong.in(accent)
	if ordered {
		mark = strconv.Itoa(i+1) + "."
	} else if depth > 0 {
		mark = "–"
	}
	w := textWidth(h.font, h.size, mark)
	if ordered {
		indent = max(4*c.beat, c.beats(w+c.beat))
	}
	k.span(span{text: mark, font: h.font, w: w}, h, k.x, k.y+h.base())
	sub := column{canvas: k.canvas, c: c, x: k.x + indent, y: k.y, width: k.width - indent}
	sub.text(t.Runs, c.text)
	sub.y = max(sub.y, k.y+h.lead)
	if t.Sub != nil {
		for j, under := range t.Sub.Items {
			sub.y += c.beat / 4
			under.draw(&sub, t.Sub.Ordered, j, depth+1)
		}
	}
	k.canvas, k.y = sub.canvas, sub.y
}
