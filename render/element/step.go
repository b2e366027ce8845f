package element

import (
	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

import "strconv"

// stage draws a stage's name on a band that runs the width of the column.
func stage(s render.Stage, c *compose.Compositor) compose.Block {
	var k compose.Canvas
	u := c.Beat
	p := c.Balanced(s.Title, c.Style.Stage, c.Width-2*u)
	height := p.Height() + u/2
	k.Ground(0, 0, c.Width, height, compose.Band)
	k.Para(p, u, u/4)
	return compose.One(height, k)
}

// step draws its number on a tag that the hand finds, its action beside it, and
// in the margin below the tag the box to tick. Layout draws a rule between it
// and what stands above it.
func step(s render.Step, c *compose.Compositor) compose.Block {
	var k compose.Canvas
	u := c.Beat
	p := c.Balanced(s.Title, c.Style.Title, c.Width-c.Hang)
	tag := c.Style.Number.Cap() + 2*u
	k.Ground(0, 0, c.Tick, tag, compose.Accent)
	numeral(c, &k, s.Number, c.Tick, tag/2)
	k.Para(p, c.Hang, (tag-p.Hand.Lead)/2)
	k.Frame(0, tag+u/2, c.Tick, c.Tick, c.Frame, u/4, compose.White, compose.Ink, sheet.TickBox)
	b := compose.One(max(tag, (tag-p.Hand.Lead)/2+p.Height()), k)
	b.Reach = tag + u/2 + c.Tick
	return b
}

// numeral draws a number in white, with the middle of its capitals at y. It is
// shrunk if three figures would not fit w.
func numeral(c *compose.Compositor, k *compose.Canvas, n, w, y int) {
	h := c.Number
	text := strconv.Itoa(n)
	if room, need := w-c.Beat/2, typeface.Width(h.Font, h.Size, text); need > room {
		h.Size = h.Size * room / need
	}
	width := typeface.Width(h.Font, h.Size, text)
	k.Span(compose.Span{Text: text, Font: h.Font, W: width}, h, (w-width)/2, y+h.Cap()/2)
}
