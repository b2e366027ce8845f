package element

import (
	"strconv"

	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// A stage's name stands on a band that runs the width of the face.
func stage(s render.Stage, c *compose.Compositor) compose.Block {
	var k compose.Canvas
	u := c.Beat
	p := c.Balanced(s.Title, c.Style.Stage, c.Width-2*u)
	height := c.Beats(p.Height() + u)
	k.Ground(0, 0, c.Width, height, compose.Band)
	k.Para(p, u, (height-p.Height())/2)
	return compose.One(height, k)
}

// A step hangs from a rule: its number in a block that the hand finds, its
// action, and the box to tick.
func step(s render.Step, c *compose.Compositor) compose.Block {
	var k compose.Canvas
	u := c.Beat
	p := c.Balanced(s.Title, c.Style.Title, c.Width-c.Hang-c.Tick-2*u)
	top := u + max(0, (c.Tick-p.Hand.Lead)/2) // the first line stands level with the box
	k.Ground(0, 0, c.Width, c.Rule, compose.Accent)
	k.Ground(0, 0, c.Hang-2*u, u+c.Tick, compose.Accent)
	numeral(c, &k, s.Number, c.Hang-2*u, top+p.Hand.Lead/2)
	k.Para(p, c.Hang, top)
	k.Frame(c.Width-c.Tick, u, c.Tick, c.Tick, c.Frame, u/4, compose.White, compose.Ink, sheet.TickBox)
	return compose.One(c.Beats(max(u+c.Tick, top+p.Height())), k)
}

// numeral is a number in white, middle of its capitals at y, shrunk where
// three figures would not fit w.
func numeral(c *compose.Compositor, k *compose.Canvas, n, w, y int) {
	h := c.Number
	text := strconv.Itoa(n)
	if room, need := w-c.Beat, typeface.Width(h.Font, h.Size, text); need > room {
		h.Size = h.Size * room / need
	}
	width := typeface.Width(h.Font, h.Size, text)
	k.Span(compose.Span{Text: text, Font: h.Font, W: width}, h, (w-width)/2, y+h.Cap()/2)
}
