package render

// A hold point is a heavy black frame with a stop sign: nobody reads past it.
func (h Hold) lay(c *compositor) block {
	u := c.beat
	border, sign := 2*c.frame, 13*u/2
	title := c.set(says(h.Title), c.title.in(white), c.width-2*border-sign-4*u, 0)
	strip := border + max(8*u, title.height()+2*u)
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
	out.para(title, border+sign+3*u, border+(strip-border-title.height())/2)
	out.add(k.ops...)
	return one(height, out)
}
