package render

// A hold point is a heavy black frame with a stop sign: nobody reads past it.
func (h Hold) lay(c *compositor) block {
	u := c.beat
	border := 2 * c.frame
	strip := border + 8*u
	sign := 13 * u / 2
	k := column{c: c, x: border + c.pad(), y: strip + u/2, width: c.width - 2*(border+c.pad())}
	k.text(h.Who, c.strong)
	k.text(h.Sees, c.text)
	k.text(h.Before, c.strong)
	if len(h.Boxes) > 0 {
		k.y += u
		k.boxes(h.Boxes, "", k.width)
	}
	height := c.beats(k.y + u + border)
	var out canvas
	out.frame(0, 0, c.width, height, border, 0, white, black, Ground)
	out.ground(border, border, c.width-2*border, strip-border, black)
	c.symbolAt(&out, "stop", border+u, border+(strip-border-sign)/2, sign)
	title := c.title.in(white)
	p := c.set(says(h.Title), title, c.width-2*border-sign-4*u, 0)
	out.para(p, border+sign+3*u, border+(strip-border-p.height())/2)
	out.add(k.ops...)
	return one(height, out)
}
