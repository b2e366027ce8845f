package figure

import (
	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
)

// Indicator draws an indicator at the gear that is turned, which is seen end on, its
// teeth cut off below; the other gear is clamped. The drawing is no scale
// drawing: what stands beside it has the number. It goes beside where there is
// room, else below.
func Indicator(f render.Indicator, c *compose.Compositor) compose.Block {
	u := c.Beat
	var k compose.Canvas
	r, mate := 12*u, 5*u/2
	if f.Pinion {
		r, mate = 9*u, 9*u/2
	}
	tip, long := r*109/100, 10*u
	// What stands far off the teeth is reached by an arm.
	reach := r * min(max(f.Reach, 500), 1500) / 1000
	arm := f.Reach < 750 || f.Reach > 1200
	if !arm {
		reach = r
	}
	_, w := c.Extent(compose.Says(f.Locked), c.Label)
	x, y := max(7*u+tip, r+3*u+w/2, w+2*u), long+5*u
	if top := tip + 3*u; y < top {
		y = top
	}
	gear(&k, x, y, r, tip, c.Rule)
	clamped(&k, c, x-r, y, mate)
	k.Label(c, f.Locked, c.Label, x-r-3*u, y+mate+2*u+c.Label.Lead/2, render.Center)
	// The way it is turned.
	for _, end := range []float64{-1, 1} {
		k.Add(compose.Arc(x, y, tip+3*u/2, -42, -42+end*18, c.Rule, compose.Accent))
		hx, hy := compose.OnCircle(x, y, tip+3*u/2, -42+end*24)
		k.Add(compose.ArrowHead(hx, hy, 3*u/2, -42+end*24+end*90, compose.Accent))
	}
	px, py := x+reach, y
	if arm {
		k.Frame(x-2*u, y-u, reach+7*u/2, 2*u, c.Rule, u, compose.White, compose.Ink, sheet.Tint)
		py -= u
	}
	k.Add(compose.Ring(x, y, 5*u/2, c.Rule, compose.Ink, compose.White), compose.Disc(x, y, u/2, compose.Ink))
	// Its distance from the middle, below.
	foot := y + 9*u/2
	if f.Radius != "" {
		for _, at := range []int{x, px} {
			k.Add(sheet.Line{X1: at, Y1: y + u/2, X2: at, Y2: foot + u/2, Width: c.Hair, Color: compose.Ink})
		}
		mid := (x + px) / 2
		k.Arrow(mid, foot, x, foot, c.Hair, u, compose.Ink)
		k.Arrow(mid, foot, px, foot, c.Hair, u, compose.Ink)
		foot += u/2 + c.Label.Lead
		k.Label(c, f.Radius, c.Strong, mid, foot-c.Label.Lead/2, render.Center)
	}
	lean := 0.0
	if f.Square {
		lean = 20 // the flank's own slope, as common pressure angles have it
	}
	right := dial(&k, c, px, py, long, lean)
	width := max(right, x+tip, px+2*u)
	if width > c.Width {
		c.Problem(render.Problem{Kind: render.FigureTooWide, Size: width, Room: c.Width})
		return compose.Block{}
	}
	height := max(foot, y+mate+2*u+c.Label.Lead) + u
	return c.Beside(k, width+2*u, height, f.Lines)
}

// gear draws the upper part of a gear, end on. A flank crosses the pitch circle
// level with its middle on the right, where an indicator touches it.
func gear(k *compose.Canvas, x, y, r, tip, width int) {
	const pitch = 15.0 // degrees from tooth to tooth
	root := 2*r - tip
	var xy []int
	add := func(r int, at float64) {
		px, py := compose.OnCircle(x, y, r, at)
		xy = append(xy, px, py)
	}
	for at := 90 + pitch/4 - 13*pitch; at < 100; at += pitch {
		add(root, at-pitch*0.32)
		add(tip, at-pitch*0.17)
		add(tip, at+pitch*0.17)
		add(root, at+pitch*0.32)
	}
	k.Add(compose.Poly(compose.Tint, sheet.NoColor, 0, xy...), compose.Poly(sheet.NoColor, compose.Ink, width, xy...))
}

// clamped draws the mating gear at x, from the side, with its shaft between two
// jaws.
func clamped(k *compose.Canvas, c *compose.Compositor, x, y, half int) {
	u := c.Beat
	out, in := x-u, x+7*u/2
	k.Frame(out-5*u, y-u, 5*u, 2*u, c.Rule, 0, compose.White, compose.Ink, sheet.Tint)
	k.Add(compose.Poly(compose.White, compose.Ink, c.Rule, out, y-half, in, y-half*6/10, in, y+half*6/10, out, y+half))
	for i := -2; i <= 2; i++ {
		k.Add(sheet.Line{X1: out, Y1: y + half*i*4/10, X2: in, Y2: y + half*i*24/100, Width: c.Hair, Color: compose.Ink})
	}
	for _, top := range []int{y - 5*u/2, y + u} {
		k.Add(compose.Poly(compose.Ink, sheet.NoColor, 0, out-4*u, top, out-u, top, out-u, top+3*u/2, out-4*u, top+3*u/2))
	}
}

// dial draws an indicator that touches at x, y. Its stem points in a direction
// in degrees, clockwise from upward, and the middle of its dial is so far off.
// It returns its right edge.
func dial(k *compose.Canvas, c *compose.Compositor, x, y, long int, lean float64) int {
	u := c.Beat
	at := func(along int) (int, int) { return compose.OnCircle(x, y, along, lean) }
	sx, sy := at(9 * u / 2)
	dx, dy := at(long)
	k.Add(sheet.Line{X1: x, Y1: y, X2: sx, Y2: sy, Width: u / 2, Color: compose.Accent},
		sheet.Line{X1: sx, Y1: sy, X2: dx, Y2: dy, Width: 3 * u / 2, Color: compose.Accent},
		compose.Disc(x, y, u/2, compose.Accent), compose.Ring(dx, dy, 9*u/2, u/2, compose.Accent, compose.White))
	for i := range 12 {
		ax, ay := compose.OnCircle(dx, dy, 7*u/2, float64(30*i))
		bx, by := compose.OnCircle(dx, dy, 4*u, float64(30*i))
		k.Add(sheet.Line{X1: ax, Y1: ay, X2: bx, Y2: by, Width: c.Hair, Color: compose.Ink})
	}
	nx, ny := compose.OnCircle(dx, dy, 3*u, 40)
	k.Add(sheet.Line{X1: dx, Y1: dy, X2: nx, Y2: ny, Width: c.Rule, Color: compose.Ink}, compose.Disc(dx, dy, u/2, compose.Ink))
	return dx + 19*u/4
}
