package render

// A pack of shims cut through: its layers between the two faces that press it
// together, each with its thickness, and the whole beside them. Thick layers are
// drawn thicker, thin ones never thinner than their figure.
func (f Pack) lay(c *compositor) block {
	u := c.Beat
	var k canvas
	figure := c.Tag.In(ink)
	width := 22 * u
	all := 0
	for _, l := range f.Layers {
		_, w := c.Extent(says(l.Label), figure)
		width, all = max(width, w+4*u), all+max(l.Size, 0)
	}
	for _, s := range []string{f.Above, f.Below} {
		_, w := c.Extent(says(s), c.Label)
		width = max(width, w+4*u)
	}
	width = min(width, c.Width/2)
	y := 0
	face := func(name string) {
		h := 3*u + u/2
		k.Ground(0, y, width, h, band)
		k.Label(c, name, c.Label.In(ink), width/2, y+h/2, Center)
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
		fill := white
		if i%2 == 1 {
			fill = tint
		}
		k.Add(Rect{X: 0, Y: y, W: width, H: h, Fill: fill, Stroke: ink, StrokeWidth: c.Hair, Role: Tint})
		k.Label(c, l.Label, figure, width/2, y+h/2, Center)
		y += h
	}
	bottom := y
	face(f.Below)
	// The micrometer spans the layers alone.
	x, mid := width+2*u, (top+bottom)/2
	k.Arrow(x, mid, x, top, c.Rule, 3*u/2, ink)
	k.Arrow(x, mid, x, bottom, c.Rule, 3*u/2, ink)
	k.Across(width, top, 3*u, c.Hair, ink)
	k.Across(width, bottom, 3*u, c.Hair, ink)
	x += 3*u/2 + k.Label(c, f.Total, c.Strong, x+3*u/2, mid, Left)
	return c.Beside(k, x+3*u, y, f.Lines)
}
