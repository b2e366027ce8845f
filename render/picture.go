package render

// A picture takes the width, or less where it would be too tall; it is never
// enlarged past 4 pixels a millimetre.
func (p Picture) lay(c *compositor) block {
	pixels, format, w, h, err := decodePicture(p.Name, p.Data)
	if err != nil {
		c.problem(BadPicture, err.Error())
		return block{}
	}
	width := min(c.width, w*1000/4)
	height := width * h / w
	if height > c.picture {
		height = max(1, c.picture)
		width = max(1, height*w/h)
	}
	c.drawn = max(c.drawn, height)
	var k canvas
	k.add(Image{W: width, H: height, Name: p.Name, Alt: p.Alt, Pixels: pixels, Format: format})
	y := height
	if q := c.set(p.Caption, c.label, c.measure(), 0); len(q.lines) > 0 {
		y += c.beat / 2
		k.para(q, 0, y)
		y += q.height()
	}
	return one(c.beats(y), k)
}
