package render

import "strconv"

// A stage's name stands on a band that runs the width of the face.
func (s Stage) lay(c *compositor) block {
	var k canvas
	u := c.Beat
	p := c.Balanced(s.Title, c.style.Stage, c.Width-2*u)
	height := c.Beats(p.Height() + u)
	k.Ground(0, 0, c.Width, height, band)
	k.Para(p, u, (height-p.Height())/2)
	return one(height, k)
}

// A step hangs from a rule: its number in a block that the hand finds, its
// action, and the box to tick.
func (s Step) lay(c *compositor) block {
	var k canvas
	u := c.Beat
	p := c.Balanced(s.Title, c.style.Title, c.Width-c.Hang-c.Tick-2*u)
	top := u + max(0, (c.Tick-p.Hand.Lead)/2) // the first line stands level with the box
	k.Ground(0, 0, c.Width, c.Rule, accent)
	k.Ground(0, 0, c.Hang-2*u, u+c.Tick, accent)
	c.numeral(&k, s.Number, c.Hang-2*u, top+p.Hand.Lead/2)
	k.Para(p, c.Hang, top)
	k.Frame(c.Width-c.Tick, u, c.Tick, c.Tick, c.Frame, u/4, white, ink, TickBox)
	return one(c.Beats(max(u+c.Tick, top+p.Height())), k)
}

// numeral is a number in white, middle of its capitals at y, shrunk where
// three figures would not fit w.
func (c *compositor) numeral(k *canvas, n, w, y int) {
	h := c.Number
	text := strconv.Itoa(n)
	if room, need := w-c.Beat, textWidth(h.Font, h.Size, text); need > room {
		h.Size = h.Size * room / need
	}
	width := textWidth(h.Font, h.Size, text)
	k.Span(span{Text: text, Font: h.Font, W: width}, h, (w-width)/2, y+h.Cap()/2)
}
