package render

// The end stands between two rules.
func (e End) lay(c *compositor) block {
	var k canvas
	p := c.set(says(e.Text), c.strong.in(accent), c.width, 0)
	h := p.height() + 2*c.beat
	w := p.width + 4*c.beat
	y := h / 2
	k.across(0, y, (c.width-w)/2, c.rule, accent)
	k.aligned(p, 0, c.beat, c.width, Center)
	k.across(c.width-(c.width-w)/2, y, (c.width-w)/2, c.rule, accent)
	return one(h, k)
}

// below is the end where the body has no room for it: at the right of the
// foot's first line.
func (e End) below(c *compositor) block {
	var k canvas
	p := c.set(says(e.Text), c.strong.in(accent), c.column-codeSquare-2*c.beat, 0)
	k.aligned(p, 0, c.beat/2, c.column-codeSquare-2*c.beat, Right)
	return one(p.height(), k)
}
