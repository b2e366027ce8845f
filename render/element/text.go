package element

import (
	"strconv"

	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/typeface"
)

// text draws a paragraph in one slab, unless it is longer than a face.
func text(t render.Text, c *compose.Compositor) compose.Block {
	u, h, indent := c.Beat, c.Text, 0
	switch t.Role {
	case render.Lead:
		h = c.Strong
	case render.Tip:
		h, indent = c.Label, 3*u/2 // a rule down the left sets it apart
	case render.Changed:
		indent = 3 * u
	case render.Why:
		h = c.Label
	case render.Small:
		h = c.Label
	}
	p := c.Set(t.Runs, h, c.Measure()-indent, 0)
	if p.Height() > c.Tallest {
		var b compose.Block
		for _, line := range p.Lines {
			var k compose.Canvas
			k.Para(compose.Para{Hand: h, Lines: [][]compose.Span{line}}, indent, 0)
			b.Slabs = append(b.Slabs, compose.Slab{Height: h.Lead, Ops: k.Ops})
		}
		return b
	}
	var k compose.Canvas
	if t.Role == render.Tip && p.Height() > 0 {
		k.Ground(0, u/2, u/3, p.Height()-u/2, compose.Accent)
	}
	if t.Role == render.Changed && p.Height() > 0 {
		k.Ground(0, u/4, u, p.Height()-u/2, compose.Black)
	}
	k.Para(p, indent, 0)
	b := compose.One(p.Height(), k)
	b.Runs = t.Role == render.Lead // over what runs on
	return b
}

// list draws each item as a slab; items below an item stay with it.
func list(l render.List, c *compose.Compositor) compose.Block {
	var b compose.Block
	for i, item := range l.Items {
		k := compose.Column{C: c, Width: c.Measure()}
		drawItem(item, &k, l.Ordered, i, 0)
		b.Slabs = append(b.Slabs, compose.Slab{Gap: c.Beat / 2, Height: k.Y, Ops: k.Ops})
	}
	return b
}

// drawItem draws an item with its mark hanging, and what is below it.
func drawItem(t render.Item, k *compose.Column, ordered bool, i, depth int) {
	c := k.C
	indent := 3 * c.Beat
	mark, h := "•", c.Strong.In(compose.Accent)
	if ordered {
		mark = strconv.Itoa(i+1) + "."
	} else if depth > 0 {
		mark = "–"
	}
	w := typeface.Width(h.Font, h.Size, mark)
	if ordered {
		indent = max(4*c.Beat, w+c.Beat)
	}
	k.Span(compose.Span{Text: mark, Font: h.Font, W: w}, h, k.X, k.Y+h.Base())
	sub := compose.Column{Canvas: k.Canvas, C: c, X: k.X + indent, Y: k.Y, Width: k.Width - indent}
	sub.Text(t.Runs, c.Text)
	sub.Y = max(sub.Y, k.Y+h.Lead)
	if t.Sub != nil {
		for j, under := range t.Sub.Items {
			sub.Y += c.Beat / 4
			drawItem(under, &sub, t.Sub.Ordered, j, depth+1)
		}
	}
	k.Canvas, k.Y = sub.Canvas, sub.Y
}
