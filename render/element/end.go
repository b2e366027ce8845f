package element

import (
	"benchwright/render"
	"benchwright/render/compose"
)

// end draws the end between two rules.
func end(e render.End, c *compose.Compositor) compose.Block {
	var k compose.Canvas
	p := c.Set(compose.Says(e.Text), c.Strong.In(compose.Accent), c.Width, 0)
	h := p.Height() + c.Beat
	w := p.Width + 4*c.Beat
	y := h / 2
	k.Across(0, y, (c.Width-w)/2, c.Rule, compose.Accent)
	k.Aligned(p, 0, c.Beat/2, c.Width, render.Center)
	k.Across(c.Width-(c.Width-w)/2, y, (c.Width-w)/2, c.Rule, compose.Accent)
	return compose.One(h, k)
}

// EndBelow draws the end in the foot, before the date, if the body has no room
// for it.
func EndBelow(e render.End, c *compose.Compositor) compose.Block {
	var k compose.Canvas
	date := 5 * c.Tag.Size
	k.Aligned(c.Set(compose.Says(e.Text), c.Tag, c.Page, 0), 0, 0, c.Page-date-2*c.Beat, render.Right)
	return compose.One(c.Tag.Lead, k)
}
