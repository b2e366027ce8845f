// Package figure draws the pictures of a card: those that are worked out from
// numbers (an order of fasteners, a pack of shims, a contact pattern) and those
// that a writer gives. A drawing computes nothing that the card says.
package figure

import (
	"math"
	"strconv"

	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// Order draws a figure of the fasteners with what is said of it beside it, or
// under it where it takes the width.
func Order(o render.Order, c *compose.Compositor) compose.Block {
	if len(o.Numbers) == 0 {
		return compose.Block{}
	}
	u := c.Beat
	b := placesOf(o, c)
	k := compose.Column{C: c, Width: c.Width}
	if b.w > c.Width {
		c.Problem(render.Problem{Kind: render.FigureTooWide, Size: b.w, Room: c.Width})
		return compose.Block{}
	}
	drawOrder(o, &k, b)
	beside := c.Width - b.w - 3*u
	if beside >= 8*c.Text.Size {
		k.X, k.Width = b.w+3*u, beside
	} else {
		k.Y = b.h + u
	}
	k.Lines(o.Lines, c.Text)
	return compose.One(max(b.h, k.Y), k.Canvas)
}

// places is where the fasteners stand: the middle of each, the radius of its
// disc, and the size of the whole.
type places struct {
	x, y []int
	disc int
	w, h int
}

// placesOf finds room for every number. A number in a disc is as tall as an
// instruction, and two discs stand well apart.
func placesOf(o render.Order, c *compose.Compositor) places {
	n, u := len(o.Numbers), c.Beat
	w := 0
	for _, k := range o.Numbers {
		w = max(w, typeface.Width(c.Strong.Font, c.Strong.Size, strconv.Itoa(k)))
	}
	half := max(w, c.Strong.Cap()*3/2)/2 + u
	apart := 2*half + 2*u
	b := places{disc: half}
	put := func(x, y int) { b.x, b.y = append(b.x, x), append(b.y, y) }
	switch o.Shape {
	case render.Circle:
		r := 0
		if n > 1 {
			r = int(math.Ceil(float64(apart) / 2 / math.Sin(math.Pi/float64(n))))
		}
		r = max(r, 8*u)
		for i := range n {
			put(compose.OnCircle(r+half, r+half, r, 360*float64(i)/float64(n)))
		}
		b.w, b.h = 2*(r+half), 2*(r+half)
	case render.Rectangle:
		top := (n + 1) / 2
		step, down := max(apart, 12*u), max(apart, 12*u)
		for i := range n {
			if i < top {
				put(half+i*step, half)
			} else {
				put(half+(n-1-i)*step, half+down)
			}
		}
		b.w, b.h = 2*half+(top-1)*step, 2*half+down
	default:
		for i := range n {
			put(half+i*apart, half)
		}
		b.w, b.h = 2*half+(n-1)*apart, 2*half
	}
	return b
}

// drawOrder draws the line on which the discs stand, and each disc with its
// number. The first is filled.
func drawOrder(o render.Order, k *compose.Column, b places) {
	c, n := k.C, len(o.Numbers)
	switch {
	case o.Shape == render.Circle:
		k.Add(compose.Ring(b.w/2, b.h/2, b.w/2-b.disc, c.Frame, compose.Hairline, sheet.NoColor))
	case o.Shape == render.Rectangle && n > 2:
		k.Add(compose.Poly(sheet.NoColor, compose.Hairline, c.Frame, b.disc, b.disc, b.w-b.disc, b.disc, b.w-b.disc, b.h-b.disc, b.disc, b.h-b.disc, b.disc, b.disc))
	default:
		k.Across(b.disc, b.h/2, b.w-2*b.disc, c.Frame, compose.Hairline)
	}
	for i, number := range o.Numbers {
		fill, h := compose.White, c.Strong
		if number == 1 {
			fill, h = compose.Accent, c.Strong.In(compose.White)
		}
		k.Frame(b.x[i]-b.disc, b.y[i]-b.disc, 2*b.disc, 2*b.disc, c.Frame, b.disc-c.Frame/2, fill, compose.Ink, sheet.Tint)
		k.Label(c, strconv.Itoa(number), h, b.x[i], b.y[i], render.Center)
	}
}
