package figure

import (
	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
)

// Cord draws a cord on a drum, end on: it leaves the drum level, square to the shaft, and
// the spring scale pulls it off. What to heed stands beside it where there is
// room, else below.
func Cord(f render.Cord, c *compose.Compositor) compose.Block {
	u := c.Beat
	var k compose.Canvas
	r, width := 7*u, 39*u
	// Beside the drum stand its radius and, under the scale, the pull.
	for _, l := range []struct {
		text string
		hand compose.Hand
	}{{f.Drum, c.Label}, {f.Pull, c.Strong}} {
		_, w := c.Extent(compose.Says(l.text), l.hand)
		width = max(width, 16*u+w)
	}
	if width > c.Width {
		c.Problem(render.Problem{Kind: render.FigureTooWide, Size: width, Room: c.Width})
		return compose.Block{}
	}
	// The cord touches the drum at its top and turns it clockwise.
	top := c.Label.Lead + 3*u/2
	x, y := r+u, top+r
	k.Add(compose.Ring(x, y, r, u, compose.Accent, compose.White), compose.Ring(x, y, r-u/2, c.Hair, compose.Accent, compose.Tint))
	k.Add(compose.Arc(x, y, r*5/8, -140, 20, c.Rule, compose.Soft))
	hx, hy := compose.OnCircle(x, y, r*5/8, 38)
	k.Add(compose.ArrowHead(hx, hy, 3*u/2, 118, compose.Soft))
	k.Add(compose.Disc(x, y, u/2, compose.Ink))
	px, py := compose.OnCircle(x, y, r, 125)
	k.Arrow(x, y, px, py, c.Rule, 3*u/2, compose.Ink)
	// The scale hangs on the cord's end: a body with its marks, and the hand's
	// pull.
	from, to := x+14*u, width-4*u
	h := 5 * u / 2
	k.Add(sheet.Line{X1: x, Y1: top, X2: from, Y2: top, Width: u, Color: compose.Accent})
	k.Frame(from, top-h/2, to-from, h, c.Rule, u/2, compose.White, compose.Ink, sheet.Tint)
	for i := 1; i < 6; i++ {
		at := from + i*(to-from)/6
		k.Add(sheet.Line{X1: at, Y1: top - h/2, X2: at, Y2: top, Width: c.Hair, Color: compose.Ink})
	}
	k.Arrow(to, top, width, top, c.Rule, 2*u, compose.Ink)
	// Each label stands at its own thing: the cord, the scale, the radius.
	k.Label(c, f.Cord, c.Label, x+u, top-u-c.Label.Lead/2, render.Left)
	k.Label(c, f.Pull, c.Strong, width, top+h/2+u/2+c.Strong.Lead/2, render.Right)
	k.Label(c, f.Drum, c.Label, px+3*u/2, py+u, render.Left)
	height := y + r + u
	return c.Beside(k, width+3*u, height, f.Lines)
}
