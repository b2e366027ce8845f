package render

import (
	"math"
	"strconv"
)

// An order is a figure of the fasteners with what is said of it beside it, or
// under it where it takes the width.
func (o Order) lay(c *compositor) block {
	if len(o.Numbers) == 0 {
		return block{}
	}
	u := c.Beat
	b := o.places(c)
	k := column{C: c, Width: c.Width}
	if b.w > c.Width {
		c.Problem(TooWide, lengths(b.w, c.Width))
		return block{}
	}
	o.draw(&k, b)
	beside := c.Width - b.w - 3*u
	if beside >= c.Width/3 {
		k.X, k.Width = b.w+3*u, beside
	} else {
		k.Y = b.h + u
	}
	k.Lines(o.Lines, c.Text)
	return one(c.Beats(max(b.h, k.Y)), k.canvas)
}

// places is where the fasteners stand: the middle of each, the radius of its
// disc, and the size of the whole.
type places struct {
	x, y []int
	disc int
	w, h int
}

// places finds room for every number: what a disc holds is as tall as an
// instruction, and two discs stand well apart.
func (o Order) places(c *compositor) places {
	n, u := len(o.Numbers), c.Beat
	w := 0
	for _, k := range o.Numbers {
		w = max(w, textWidth(c.Strong.Font, c.Strong.Size, strconv.Itoa(k)))
	}
	half := max(w, c.Strong.Cap()*3/2)/2 + u
	apart := 2*half + 2*u
	b := places{disc: half}
	put := func(x, y int) { b.x, b.y = append(b.x, x), append(b.y, y) }
	switch o.Shape {
	case Circle:
		r := 0
		if n > 1 {
			r = int(math.Ceil(float64(apart) / 2 / math.Sin(math.Pi/float64(n))))
		}
		r = max(r, 11*u)
		for i := range n {
			put(onCircle(r+half, r+half, r, 360*float64(i)/float64(n)))
		}
		b.w, b.h = 2*(r+half), 2*(r+half)
	case Rectangle:
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

// draw draws the line on which they stand, and each with its number. The first
// is filled.
func (o Order) draw(k *column, b places) {
	c, n := k.C, len(o.Numbers)
	switch {
	case o.Shape == Circle:
		k.Add(ring(b.w/2, b.h/2, b.w/2-b.disc, c.Frame, hairline, NoColor))
	case o.Shape == Rectangle && n > 2:
		k.Add(poly(NoColor, hairline, c.Frame, b.disc, b.disc, b.w-b.disc, b.disc, b.w-b.disc, b.h-b.disc, b.disc, b.h-b.disc, b.disc, b.disc))
	default:
		k.Across(b.disc, b.h/2, b.w-2*b.disc, c.Frame, hairline)
	}
	for i, number := range o.Numbers {
		fill, h := white, c.Strong
		if number == 1 {
			fill, h = accent, c.Strong.In(white)
		}
		k.Frame(b.x[i]-b.disc, b.y[i]-b.disc, 2*b.disc, 2*b.disc, c.Frame, b.disc-c.Frame/2, fill, ink, Tint)
		k.Label(c, strconv.Itoa(number), h, b.x[i], b.y[i], Center)
	}
}
