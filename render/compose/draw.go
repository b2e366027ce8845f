package compose

import (
	"math"

	"benchwright/render"
	"benchwright/render/sheet"
)

// The strokes of the computed figures: circles, arcs, arrows and labels.

// OnCircle returns the point of a circle at an angle in degrees, clockwise from
// the top. It is rounded to whole micrometers, so that the last bit of a sine
// never shows.
func OnCircle(x, y, r int, degrees float64) (int, int) {
	s, c := math.Sincos(degrees * math.Pi / 180)
	return x + int(math.Round(float64(r)*s)), y - int(math.Round(float64(r)*c))
}

// Disc returns a filled circle. The handles of its four curves are 0.5523 of
// the radius.
func Disc(x, y, r int, fill sheet.Color) sheet.Path {
	k := r * 5523 / 10000
	return sheet.Path{Fill: fill, Stroke: sheet.NoColor, Segs: []sheet.Seg{
		{Verb: 'M', X: x, Y: y - r},
		{Verb: 'C', X1: x + k, Y1: y - r, X2: x + r, Y2: y - k, X: x + r, Y: y},
		{Verb: 'C', X1: x + r, Y1: y + k, X2: x + k, Y2: y + r, X: x, Y: y + r},
		{Verb: 'C', X1: x - k, Y1: y + r, X2: x - r, Y2: y + k, X: x - r, Y: y},
		{Verb: 'C', X1: x - r, Y1: y - k, X2: x - k, Y2: y - r, X: x, Y: y - r},
		{Verb: 'Z'}}}
}

// Ring returns a stroked circle, filled if fill is a color.
func Ring(x, y, r, width int, stroke, fill sheet.Color) sheet.Path {
	p := Disc(x, y, r, fill)
	p.Stroke, p.StrokeWidth = stroke, width
	return p
}

// Arc returns an open stroke along a circle, clockwise from one angle to
// another (counterclockwise if to is less), in degrees from the top.
func Arc(x, y, r int, from, to float64, width int, color sheet.Color) sheet.Path {
	n := max(1, int(math.Ceil(math.Abs(to-from)/45)))
	step := (to - from) / float64(n)
	handle := float64(r) * 4 / 3 * math.Tan(step*math.Pi/180/4)
	px, py := OnCircle(x, y, r, from)
	p := sheet.Path{Fill: sheet.NoColor, Stroke: color, StrokeWidth: width, Segs: []sheet.Seg{{Verb: 'M', X: px, Y: py}}}
	for i := range n {
		a, b := from+float64(i)*step, from+float64(i+1)*step
		s1, c1 := math.Sincos(a * math.Pi / 180)
		s2, c2 := math.Sincos(b * math.Pi / 180)
		ax, ay := OnCircle(x, y, r, a)
		bx, by := OnCircle(x, y, r, b)
		p.Segs = append(p.Segs, sheet.Seg{Verb: 'C',
			X1: ax + int(math.Round(handle*c1)), Y1: ay + int(math.Round(handle*s1)),
			X2: bx - int(math.Round(handle*c2)), Y2: by - int(math.Round(handle*s2)), X: bx, Y: by})
	}
	return p
}

// Poly returns a polygon. The points alternate x and y.
func Poly(fill, stroke sheet.Color, width int, xy ...int) sheet.Path {
	p := sheet.Path{Fill: fill, Stroke: stroke, StrokeWidth: width}
	for i := 0; i+1 < len(xy); i += 2 {
		verb := byte('L')
		if i == 0 {
			verb = 'M'
		}
		p.Segs = append(p.Segs, sheet.Seg{Verb: verb, X: xy[i], Y: xy[i+1]})
	}
	if fill != sheet.NoColor {
		p.Segs = append(p.Segs, sheet.Seg{Verb: 'Z'})
	}
	return p
}

// ArrowHead returns a solid arrowhead of a length, with its tip at x, y. It
// points in a direction in degrees, clockwise from upward.
func ArrowHead(x, y, length int, degrees float64, color sheet.Color) sheet.Path {
	ax, ay := OnCircle(x, y, length, degrees+180-22)
	bx, by := OnCircle(x, y, length, degrees+180+22)
	return Poly(color, sheet.NoColor, 0, x, y, ax, ay, bx, by)
}

// Arrow returns a straight line with an arrowhead at its end.
func (k *Canvas) Arrow(x1, y1, x2, y2, width, head int, color sheet.Color) {
	degrees := math.Atan2(float64(x2-x1), float64(y1-y2)) * 180 / math.Pi
	ex, ey := OnCircle(x2, y2, head*3/4, degrees+180)
	k.Add(sheet.Line{X1: x1, Y1: y1, X2: ex, Y2: ey, Width: width, Color: color}, ArrowHead(x2, y2, head, degrees, color))
}

// Label sets one line of text with its middle at y: from x on (Left), about x
// (Center) or up to x (Right). It returns the text's width.
func (k *Canvas) Label(c *Compositor, text string, h Hand, x, y int, a render.Align) int {
	p := c.Set(Says(text), h, 1<<30, 0)
	if len(p.Lines) == 0 {
		return 0
	}
	_, w := c.Extent(Says(text), h)
	switch a {
	case render.Center:
		x -= w / 2
	case render.Right:
		x -= w
	}
	k.Para(p, x, y-h.Lead/2)
	return w
}

// Beside returns a block with a figure of a height and the text about it from x
// on, or below the figure if too little width is left beside it.
func (c *Compositor) Beside(figure Canvas, x, height int, lines [][]render.Run) Block {
	k := Column{Canvas: figure, C: c, X: x, Width: c.Width - x}
	if k.Width < 17*c.Text.Size/2 {
		k.X, k.Y, k.Width = 0, height+c.Beat, c.Width
	}
	k.Lines(lines, c.Text)
	return One(max(height, k.Y), k.Canvas)
}
