package figure

import (
	"slices"
	"strconv"

	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/raster"
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// Picture sets a writer's picture. It takes the width, or less where it would be
// too tall. Its caption stays with it, and so does the legend of its spots: below
// it, or beside it where that is lower.
func Picture(p render.Picture, c *compose.Compositor) compose.Block {
	whole, found := c.Width, len(c.Problems)
	if beside := whole * 5 / 8; len(p.Spots) > 0 && whole-beside > legendEms*c.Small.Size {
		a, b := *c, *c
		below, fits := pictured(p, &a, whole)
		if k, ok := pictured(p, &b, beside); ok && len(b.Problems) == found && (!fits || k.Y < below.Y) {
			c.Drawn = b.Drawn
			return compose.One(k.Y, k.Canvas)
		}
	}
	k, ok := pictured(p, c, whole)
	if !ok {
		return compose.Block{}
	}
	return compose.One(k.Y, k.Canvas)
}

// legendEms is the least width of a legend that stands beside its picture, in em
// of small text.
const legendEms = 11

// pictured sets a picture in a width, with its caption and its legend; where that
// is not all of the column, the legend stands in the rest.
func pictured(p render.Picture, c *compose.Compositor, room int) (compose.Column, bool) {
	whole := c.Width
	defer func() { c.Width = whole }()
	c.Width = room
	k := compose.Column{C: c, Width: c.Measure()}
	var width, height int
	if isDrawing(p) {
		d, ok := drawing(p, c)
		if !ok {
			return k, false
		}
		k.Add(d)
		width, height = d.W, d.H
	} else {
		i, ok := photograph(p, c)
		if !ok {
			return k, false
		}
		k.Add(i)
		width, height = i.W, i.H
	}
	c.Drawn = max(c.Drawn, height)
	spots(&k, p.Spots, width, height)
	k.Y = height
	if len(p.Caption) > 0 {
		k.Y += c.Beat / 2
		k.Text(p.Caption, c.Label)
	}
	switch {
	case len(p.Spots) == 0:
	case room < whole:
		low := k.Y
		k.X, k.Y, k.Width = width+2*c.Beat, 0, whole-width-2*c.Beat
		legend(&k, p.Spots)
		k.Y = max(k.Y, low)
	default:
		k.Y += c.Beat
		legend(&k, p.Spots)
	}
	return k, true
}

// photograph draws a PNG or JPEG file. It is never enlarged past 4 pixels a
// millimeter.
func photograph(p render.Picture, c *compose.Compositor) (sheet.Image, bool) {
	pixels, format, w, h, err := raster.Decode(p.Name, p.Data)
	if err != nil {
		c.Problem(render.Problem{Kind: render.BadPicture, Text: err.Error()})
		return sheet.Image{}, false
	}
	width := min(c.Width, w*1000/4)
	height := width * h / w
	if height > c.Picture {
		height = max(1, c.Picture)
		width = max(1, height*w/h)
	}
	return sheet.Image{W: width, H: height, Name: p.Name, Alt: p.Alt, Pixels: pixels, Format: format}, true
}

// spotSize returns the width of a spot's disc. Its number is as tall as an
// instruction, and two figures have room in it.
func spotSize(s compose.Style, spots []render.Spot) int {
	if n := len(spots); n > 9 && !spots[n-1].Shown {
		return 5 * s.Text.Cap() / 2
	}
	return 2 * s.Text.Cap()
}

// spots draws the numbers on a picture of that size, over the lines that lead
// to their places. Each is white on a dark disc in a white ring: one of the two
// stands out from whatever the photograph shows.
func spots(k *compose.Column, spots []render.Spot, width, height int) {
	c := k.C
	size := spotSize(c.Style, spots)
	at, to := make([]point, len(spots)), make([]point, len(spots))
	end := 4 * c.Rule // of a line, a dot so wide
	for i, s := range spots {
		if s.Shown {
			continue
		}
		at[i] = point{inside(s.X*width/1000, size, width), inside(s.Y*height/1000, size, height)}
		if !s.Leads {
			to[i] = at[i]
			continue
		}
		to[i] = point{inside(s.ToX*width/1000, end, width), inside(s.ToY*height/1000, end, height)}
		line := sheet.Line{X1: at[i].x, Y1: at[i].y, X2: to[i].x, Y2: to[i].y, Width: 3 * c.Rule, Color: compose.White}
		k.Add(line)
		line.Width, line.Color = c.Rule, compose.Ink
		k.Add(line)
	}
	for i, s := range spots {
		if s.Leads {
			dot(k, to[i].x, to[i].y, end)
		}
	}
	element := c.Ref
	for i, p := range at {
		if spots[i].Shown {
			continue
		}
		c.Ref = spots[i].Ref
		if size > min(width, height) {
			c.Problem(render.Problem{Kind: render.SpotHides, Spot: i + 1})
		}
		for j := range at {
			switch {
			case spots[j].Shown:
			case j < i && touch(p, at[j], size):
				c.Problem(render.Problem{Kind: render.SpotHides, Spot: i + 1, Other: j + 1})
			case j != i && spots[j].Leads && touch(p, to[j], (size+end)/2):
				c.Problem(render.Problem{Kind: render.SpotHides, Spot: i + 1, Other: j + 1, Place: true})
			}
		}
		dot(k, p.x, p.y, size)
		spotNumber(k, i+1, p.x, p.y, compose.White)
	}
	c.Ref = element
}

type point struct{ x, y int }

// touch reports whether two points are less than a distance apart.
func touch(p, q point, far int) bool {
	dx, dy := p.x-q.x, p.y-q.y
	return dx*dx+dy*dy < far*far
}

// inside returns the place nearest to at for something of a size so that it
// lies within an extent.
func inside(at, size, extent int) int {
	if size > extent {
		return extent / 2
	}
	return max(size/2, min(at, extent-(size+1)/2))
}

// dot draws a dark disc in a white ring of a width, ring included.
func dot(k *compose.Column, x, y, size int) {
	ring := k.C.Rule
	k.Add(sheet.Rect{X: x - size/2, Y: y - size/2, W: size, H: size, Radius: size / 2, Fill: compose.White, Stroke: sheet.NoColor, Role: sheet.Tint})
	size -= 2 * ring
	k.Add(sheet.Rect{X: x - size/2, Y: y - size/2, W: size, H: size, Radius: size / 2, Fill: compose.Ink, Stroke: sheet.NoColor, Role: sheet.Tint})
}

// spotNumber sets a number with its middle at x, y.
func spotNumber(k *compose.Column, n, x, y int, color sheet.Color) {
	h := k.C.Strong.In(color)
	text := strconv.Itoa(n)
	w := typeface.Width(h.Font, h.Size, text)
	k.Span(compose.Span{Text: text, Font: h.Font, W: w}, h, x-w/2, y+h.Cap()/2)
}

// legend sets what each number is about, in two or three columns if that is
// shorter and no text takes more than three lines. A number that the picture
// itself shows has no disc here either.
func legend(k *compose.Column, spots []render.Spot) {
	c, u := k.C, k.C.Beat
	size := spotSize(c.Style, spots)
	if !slices.ContainsFunc(spots, func(s render.Spot) bool { return !s.Shown }) {
		size = c.Small.Lead // no disc to make room for
	}
	height := func(p compose.Para) int { return max(size, p.Height()+max(0, size-p.Hand.Lead)) + u/4 }
	set := func(columns int) (paras []compose.Para, width, rows, tall int) {
		width = (k.Width - (columns-1)*2*u) / columns
		rows = (len(spots) + columns - 1) / columns
		sum := 0
		for i, s := range spots {
			if i%rows == 0 {
				sum = 0
			}
			if least, _ := c.Extent(s.Says, c.Small); columns > 1 && least > width-size-u {
				return nil, 0, 0, 1 << 30
			}
			paras = append(paras, c.Set(s.Says, c.Small, width-size-u, 0))
			if columns > 1 && len(paras[i].Lines) > 3 {
				return nil, 0, 0, 1 << 30
			}
			sum += height(paras[i])
			tall = max(tall, sum)
		}
		return paras, width, rows, tall
	}
	paras, width, rows, tall := set(1)
	for columns := 2; columns <= 3; columns++ {
		if p, w, r, t := set(columns); t < tall {
			paras, width, rows, tall = p, w, r, t
		}
	}
	y := k.Y
	for i, p := range paras {
		if i%rows == 0 {
			y = k.Y
		}
		x := k.X + i/rows*(width+2*u)
		color := compose.Ink
		if !spots[i].Shown {
			dot(k, x+size/2, y+size/2, size)
			color = compose.White
		}
		spotNumber(k, i+1, x+size/2, y+size/2, color)
		k.Para(p, x+size+u, y+max(0, size-p.Hand.Lead)/2)
		y += height(p)
	}
	k.Y += tall
}
