package render

import "strconv"

// A stage's name stands on a band that runs the width of the face.
func (s Stage) lay(c *compositor) block {
	var k canvas
	u := c.beat
	p := c.balanced(s.Title, c.style.stage, c.width-2*u)
	height := c.beats(p.height() + u)
	k.ground(0, 0, c.width, height, band)
	k.para(p, u, (height-p.height())/2)
	return one(height, k)
}

// A step hangs from a rule: its number in a block that the hand finds, its
// action, and the box to tick.
func (s Step) lay(c *compositor) block {
	var k canvas
	u := c.beat
	p := c.balanced(s.Title, c.style.title, c.width-c.hang-c.tick-2*u)
	top := u + max(0, (c.tick-p.hand.lead)/2) // the first line stands level with the box
	k.ground(0, 0, c.width, c.rule, accent)
	k.ground(0, 0, c.hang-2*u, u+c.tick, accent)
	c.numeral(&k, s.Number, c.hang-2*u, top+p.hand.lead/2)
	k.para(p, c.hang, top)
	k.frame(c.width-c.tick, u, c.tick, c.tick, c.frame, u/4, white, ink, TickBox)
	return one(c.beats(max(u+c.tick, top+p.height())), k)
}

// numeral is a number in white, middle of its capitals at y, shrunk where
// three figures would not fit w.
func (c *compositor) numeral(k *canvas, n, w, y int) {
	h := c.number
	text := strconv.Itoa(n)
	if room, need := w-c.beat, textWidth(h.font, h.size, text); need > room {
		h.size = h.size * room / need
	}
	width := textWidth(h.font, h.size, text)
	k.span(span{text: text, font: h.font, w: width}, h, (w-width)/2, y+h.cap()/2)
}
