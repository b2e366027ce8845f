package element

import (
	"benchwright/render"
	"benchwright/render/compose"
)

// The end stands between two rules.
func end(e render.End, c *compose.Compositor) compose.Block {
	var k compose.Canvas
	p := c.Set(compose.Says(e.Text), c.Strong.In(compose.Accent), c.Width, 0)
	h := p.Height() + 2*c.Beat
	w := p.Width + 4*c.Beat
	y := h / 2
	k.Across(0, y, (c.Width-w)/2, c.Rule, compose.Accent)
	k.Aligned(p, 0, c.Beat, c.Width, render.Center)
	k.Across(c.Width-(c.Width-w)/2, y, (c.Width-w)/2, c.Rule, compose.Accent)
	return compose.One(h, k)
}

// EndBelow is the end where the body has no room for it: at the right of the
// foot's first line.
func EndBelow(e render.End, c *compose.Compositor) compose.Block {
	var k compose.Canvas
	p := c.Set(compose.Says(e.Text), c.Strong.In(compose.Accent), c.Column-compose.CodeSquare-2*c.Beat, 0)
	k.Aligned(p, 0, c.Beat/2, c.Column-compose.CodeSquare-2*c.Beat, render.Right)
	return compose.One(p.Height(), k)
}
