package render

// The end stands between two rules.
func (e End) lay(c *compositor) block {
	var k canvas
	p := c.Set(says(e.Text), c.Strong.In(accent), c.Width, 0)
	h := p.Height() + 2*c.Beat
	w := p.Width + 4*c.Beat
	y := h / 2
	k.Across(0, y, (c.Width-w)/2, c.Rule, accent)
	k.Aligned(p, 0, c.Beat, c.Width, Center)
	k.Across(c.Width-(c.Width-w)/2, y, (c.Width-w)/2, c.Rule, accent)
	return one(h, k)
}

// Below is the end where the body has no room for it: at the right of the
// foot's first line.
func (e End) Below(c *compositor) block {
	var k canvas
	p := c.Set(says(e.Text), c.Strong.In(accent), c.Column-codeSquare-2*c.Beat, 0)
	k.Aligned(p, 0, c.Beat/2, c.Column-codeSquare-2*c.Beat, Right)
	return one(p.Height(), k)
}
