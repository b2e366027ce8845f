package render

import (
	"fmt"
	"strconv"
)

// A picture takes the width, or less where it would be too tall; it is never
// enlarged past 4 pixels a millimetre. Its caption and the legend of its spots
// stay with it.
func (p Picture) lay(c *compositor) block {
	pixels, format, w, h, err := decodePicture(p.Name, p.Data)
	if err != nil {
		c.Problem(BadPicture, err.Error())
		return block{}
	}
	width := min(c.Width, w*1000/4)
	height := width * h / w
	if height > c.Picture {
		height = max(1, c.Picture)
		width = max(1, height*w/h)
	}
	c.Drawn = max(c.Drawn, height)
	k := column{C: c, Width: c.Measure()}
	k.Add(Image{W: width, H: height, Name: p.Name, Alt: p.Alt, Pixels: pixels, Format: format})
	k.spots(p.Spots, width, height)
	k.Y = height
	if len(p.Caption) > 0 {
		k.Y += c.Beat / 2
		k.Text(p.Caption, c.Label)
	}
	if len(p.Spots) > 0 {
		k.Y += c.Beat
		k.legend(p.Spots)
	}
	return one(c.Beats(k.Y), k.canvas)
}

// spotSize is the width of a spot's disc: its number is as tall as an
// instruction.
func (s style) spotSize() int { return 2 * s.Text.Cap() }

// spots draws the numbers on a picture of that size, over the lines that lead
// to their places. Each is white on a dark disc in a white ring: one of the two
// stands out from whatever the photograph shows.
func (k *column) spots(spots []Spot, width, height int) {
	c := k.C
	size := c.spotSize()
	at, to := make([]point, len(spots)), make([]point, len(spots))
	end := 4 * c.Rule // of a line, a dot so wide
	for i, s := range spots {
		at[i] = point{inside(s.X*width/1000, size, width), inside(s.Y*height/1000, size, height)}
		if !s.Leads {
			to[i] = at[i]
			continue
		}
		to[i] = point{inside(s.ToX*width/1000, end, width), inside(s.ToY*height/1000, end, height)}
		line := Line{X1: at[i].x, Y1: at[i].y, X2: to[i].x, Y2: to[i].y, Width: 3 * c.Rule, Color: white}
		k.Add(line)
		line.Width, line.Color = c.Rule, ink
		k.Add(line)
	}
	for i, s := range spots {
		if s.Leads {
			k.dot(to[i].x, to[i].y, end)
		}
	}
	element := c.Ref
	for i, p := range at {
		c.Ref = spots[i].Ref
		if size > min(width, height) {
			c.Problem(SpotHides, fmt.Sprintf("number %d covers the whole picture", i+1))
		}
		for j := range at {
			switch {
			case j < i && touch(p, at[j], size):
				c.Problem(SpotHides, fmt.Sprintf("number %d covers number %d", i+1, j+1))
			case j != i && spots[j].Leads && touch(p, to[j], (size+end)/2):
				c.Problem(SpotHides, fmt.Sprintf("number %d covers the place of number %d", i+1, j+1))
			}
		}
		k.dot(p.x, p.y, size)
		k.spotNumber(i+1, p.x, p.y)
	}
	c.Ref = element
}

type point struct{ x, y int }

// touch says whether two points are less than that far apart.
func touch(p, q point, far int) bool {
	dx, dy := p.x-q.x, p.y-q.y
	return dx*dx+dy*dy < far*far
}

// inside keeps what is so large and stands at a place within an extent.
func inside(at, size, extent int) int {
	if size > extent {
		return extent / 2
	}
	return max(size/2, min(at, extent-(size+1)/2))
}

// dot is a dark disc in a white ring, so wide in all.
func (k *column) dot(x, y, size int) {
	ring := k.C.Rule
	k.Add(Rect{X: x - size/2, Y: y - size/2, W: size, H: size, Radius: size / 2, Fill: white, Stroke: NoColor, Role: Tint})
	size -= 2 * ring
	k.Add(Rect{X: x - size/2, Y: y - size/2, W: size, H: size, Radius: size / 2, Fill: ink, Stroke: NoColor, Role: Tint})
}

// spotNumber sets the number in the middle of its disc.
func (k *column) spotNumber(n, x, y int) {
	h := k.C.Strong.In(white)
	text := strconv.Itoa(n)
	w := textWidth(h.Font, h.Size, text)
	k.Span(span{Text: text, Font: h.Font, W: w}, h, x-w/2, y+h.Cap()/2)
}

// legend says what each number is about, in two columns where that is shorter
// and nothing in it takes more than three lines.
func (k *column) legend(spots []Spot) {
	c, u := k.C, k.C.Beat
	size := c.spotSize()
	height := func(p para) int { return max(size, p.Height()+max(0, size-p.Hand.Lead)) + u/4 }
	set := func(columns int) (paras []para, width, rows, tall int) {
		width = (k.Width - (columns-1)*2*u) / columns
		rows = (len(spots) + columns - 1) / columns
		sum := 0
		for i, s := range spots {
			if i%rows == 0 {
				sum = 0
			}
			if least, _ := c.Extent(s.Says, c.Text); columns > 1 && least > width-size-u {
				return nil, 0, 0, 1 << 30
			}
			paras = append(paras, c.Set(s.Says, c.Text, width-size-u, 0))
			if columns > 1 && len(paras[i].Lines) > 3 {
				return nil, 0, 0, 1 << 30
			}
			sum += height(paras[i])
			tall = max(tall, sum)
		}
		return paras, width, rows, tall
	}
	paras, width, rows, tall := set(1)
	if p, w, r, t := set(2); t < tall {
		paras, width, rows, tall = p, w, r, t
	}
	y := k.Y
	for i, p := range paras {
		if i%rows == 0 {
			y = k.Y
		}
		x := k.X + i/rows*(width+2*u)
		k.dot(x+size/2, y+size/2, size)
		k.spotNumber(i+1, x+size/2, y+size/2)
		k.Para(p, x+size+u, y+max(0, size-p.Hand.Lead)/2)
		y += height(p)
	}
	k.Y += tall
}
