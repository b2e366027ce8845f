package render

// A cord on a drum, end on: it leaves the drum level, square to the shaft, and
// the spring scale pulls it off. What to heed stands beside it where there is
// room, else below.
func (f Cord) lay(c *compositor) block {
	u := c.beat
	var k canvas
	r, width := 7*u, 39*u
	// Beside the drum stand its radius and, under the scale, the pull.
	for _, l := range []struct {
		text string
		hand hand
	}{{f.Drum, c.label}, {f.Pull, c.strong}} {
		_, w := c.extent(says(l.text), l.hand)
		width = max(width, 16*u+w)
	}
	// The cord touches the drum at its top and turns it clockwise.
	top := c.label.lead + 3*u/2
	x, y := r+u, top+r
	k.add(ring(x, y, r, u, accent, white), ring(x, y, r-u/2, c.hair, accent, tint))
	k.add(arc(x, y, r*5/8, -140, 20, c.rule, soft))
	hx, hy := onCircle(x, y, r*5/8, 38)
	k.add(arrowHead(hx, hy, 3*u/2, 118, soft))
	k.add(disc(x, y, u/2, ink))
	px, py := onCircle(x, y, r, 125)
	k.arrow(x, y, px, py, c.rule, 3*u/2, ink)
	// The scale hangs on the cord's end: a body with its marks, and the hand's
	// pull.
	from, to := x+14*u, width-4*u
	h := 5 * u / 2
	k.add(Line{X1: x, Y1: top, X2: from, Y2: top, Width: u, Color: accent})
	k.frame(from, top-h/2, to-from, h, c.rule, u/2, white, ink, Tint)
	for i := 1; i < 6; i++ {
		at := from + i*(to-from)/6
		k.add(Line{X1: at, Y1: top - h/2, X2: at, Y2: top, Width: c.hair, Color: ink})
	}
	k.arrow(to, top, width, top, c.rule, 2*u, ink)
	// Each label stands at its own thing: the cord, the scale, the radius.
	k.label(c, f.Cord, c.label, x+u, top-u-c.label.lead/2, Left)
	k.label(c, f.Pull, c.strong, width, top+h/2+u/2+c.strong.lead/2, Right)
	k.label(c, f.Drum, c.label, px+3*u/2, py+u, Left)
	height := y + r + u
	return c.beside(k, width+3*u, height, f.Lines)
}
