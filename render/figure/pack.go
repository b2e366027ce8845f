package figure

import (
	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
)

// Pack draws a pack of shims cut through: its layers between the two faces that press it
// together, each with its thickness, and the whole beside them. Thick layers are
// drawn thicker, thin ones never thinner than their figure.
func Pack(f render.Pack, c *compose.Compositor) compose.Block {
	u := c.Text.Lead / 4 // its figures need the same room where air is taken out
	var k compose.Canvas
	figure := c.Tag.In(compose.Ink)
	width := 22 * u
	all := 0
	for _, l := range f.Layers {
		_, w := c.Extent(compose.Says(l.Label), figure)
		width, all = max(width, w+4*u), all+max(l.Size, 0)
	}
	for _, s := range []string{f.Above, f.Below} {
		_, w := c.Extent(compose.Says(s), c.Label)
		width = max(width, w+4*u)
	}
	width = min(width, c.Width/2)
	y := 0
	face := func(name string) {
		h := 3*u + u/2
		k.Ground(0, y, width, h, compose.Band)
		k.Label(c, name, c.Label.In(compose.Ink), width/2, y+h/2, render.Center)
		y += h
	}
	face(f.Above)
	top, done := y, 0
	for i, l := range f.Layers {
		// What is left of the room for thickness goes by turns, so that no rounding
		// adds up.
		before := done * 6 * u / max(all, 1)
		done += max(l.Size, 0)
		h := 3*u + done*6*u/max(all, 1) - before
		fill := compose.White
		if i%2 == 1 {
			fill = compose.Tint
		}
		k.Add(sheet.Rect{X: 0, Y: y, W: width, H: h, Fill: fill, Stroke: compose.Ink, StrokeWidth: c.Hair, Role: sheet.Tint})
		k.Label(c, l.Label, figure, width/2, y+h/2, render.Center)
		y += h
	}
	bottom := y
	face(f.Below)
	// The micrometer spans the layers alone.
	x, mid := width+2*u, (top+bottom)/2
	k.Arrow(x, mid, x, top, c.Rule, 3*u/2, compose.Ink)
	k.Arrow(x, mid, x, bottom, c.Rule, 3*u/2, compose.Ink)
	k.Across(width, top, 3*u, c.Hair, compose.Ink)
	k.Across(width, bottom, 3*u, c.Hair, compose.Ink)
	x += 3*u/2 + k.Label(c, f.Total, c.Strong, x+3*u/2, mid, render.Left)
	return c.Beside(k, x+3*u, y, f.Lines)
}
