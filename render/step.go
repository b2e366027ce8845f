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
	height := max(p.height()+u, 7*u)
	k.ground(0, 0, c.width, c.rule, accent)
	c.numeral(&k, s.Number, c.hang-2*u, 7*u)
	k.para(p, c.hang, u+max(0, (c.tick-p.hand.lead)/2))
	k.frame(c.width-c.tick, u, c.tick, c.tick, c.frame, u/4, white, ink, TickBox)
	return one(c.beats(max(height, u+c.tick, u+max(0, (c.tick-p.hand.lead)/2)+p.height())), k)
}

// numeral is a number in white on a block of the accent.
func (c *compositor) numeral(k *canvas, n, w, h int) {
	k.ground(0, 0, w, h, accent)
	num := c.style.number
	text := strconv.Itoa(n)
	if room, need := w-c.beat, textWidth(num.font, num.size, text); need > room {
		num.size = num.size * room / need
	}
	width := textWidth(num.font, num.size, text)
	k.span(span{text: text, font: num.font, w: width}, num, (w-width)/2, (h+num.cap())/2)
}
