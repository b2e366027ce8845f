package element

import (
	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
)

// reading draws what is read and with what; the figure that is accepted and the
// boxes, side by side if both fit; the band on a bar with its reject sides
// hatched; and what to do below and above it.
func reading(r render.Reading, c *compose.Compositor) compose.Block {
	u := c.Beat
	k := c.Within()
	k.Titled(r.Title, runIn(r.Tools))
	boxes := r.Boxes
	if r.Value != "" {
		figure := c.Figure
		if r.Plain { // only what to expect: it must not look like a band to accept
			c.Figure = c.Units
			c.Figure.Lead = max(c.Units.Lead, c.Figure.Cap()+2*u)
		}
		boxes = k.Measured(r.Label, r.Value, r.Unit, boxes, r.BoxUnit)
		c.Figure = figure
	}
	k.Text(r.Source, c.Label)
	k.Note(append(r.Lines[:len(r.Lines):len(r.Lines)], r.Use), c.Text)
	if len(boxes) > 0 {
		k.Y += u / 2
		k.Boxes(boxes, r.BoxUnit, 2*c.Boxes)
	}
	if !r.Plain && (r.Low != "" || r.High != "") {
		k.Y += u / 2
		band(&k, r)
	}
	branches(&k, r)
	return c.Panel(k)
}

// sides returns the widths of the reject parts of the bar, and of the words
// below each. The bar shows on which side of the limits a reading lies and is
// to no scale: a part is as wide as its words need. A side without a limit has
// no part.
func sides(r render.Reading, width int) (low, high int) {
	low, high = width/5, width/5
	switch {
	case r.Low == "" && r.High == "" && (len(r.IfLow) == 0 || len(r.IfHigh) == 0): // no bar, and one of them alone
		low, high = width, width
	case len(r.IfLow) > 0 && len(r.IfHigh) > 0:
		low, high = width*7/16, width*7/16
	case len(r.IfLow) > 0:
		low, high = width*2/3, width/6
	case len(r.IfHigh) > 0:
		low, high = width/6, width*2/3
	}
	return low, high
}

// band draws the bar: the accept band is clear, what lies outside is hatched.
func band(k *compose.Column, r render.Reading) {
	c := k.C
	h := c.Text.Lead / 2 // as tall where air is taken out
	low, high := sides(r, k.Width)
	from, to := k.X, k.X+k.Width
	if r.Low != "" {
		from += low
		hatch(k, k.X, k.Y, low, h)
	}
	if r.High != "" {
		to -= high
		hatch(k, to, k.Y, high, h)
	}
	k.Ground(from, k.Y, to-from, h, compose.White)
	k.Add(sheet.Rect{X: k.X, Y: k.Y, W: k.Width, H: h, Fill: sheet.NoColor, Stroke: compose.Ink, StrokeWidth: c.Hair, Role: sheet.Tint})
	if r.Low != "" {
		k.Add(sheet.Line{X1: from, Y1: k.Y, X2: from, Y2: k.Y + h, Width: 2 * c.Rule, Color: compose.Ink})
	}
	if r.High != "" {
		k.Add(sheet.Line{X1: to, Y1: k.Y, X2: to, Y2: k.Y + h, Width: 2 * c.Rule, Color: compose.Ink})
	}
	k.Y += h
}

// hatch fills an area with strokes at 45°.
func hatch(k *compose.Column, x, y, w, h int) {
	c := k.C
	k.Ground(x, y, w, h, compose.White)
	step := c.Beat
	for d := step / 2; d < w+h; d += step {
		x1, y1 := x+d, y
		if d > w {
			x1, y1 = x+w, y+d-w
		}
		x2, y2 := x+d-h, y+h
		if d < h {
			x2, y2 = x, y+d
		}
		k.Add(sheet.Line{X1: x1, Y1: y1, X2: x2, Y2: y2, Width: c.Rule * 4 / 5, Color: compose.Soft})
	}
}

// branches draws what to do below and above, each under its part of the bar,
// with an arrow that points the way.
func branches(k *compose.Column, r render.Reading) {
	c, u := k.C, k.C.Beat
	if len(r.IfLow) == 0 && len(r.IfHigh) == 0 {
		return
	}
	k.Y += u / 4
	arrow := c.Text.Lead * 3 / 8
	low, high := sides(r, k.Width)
	side := func(x, width int, label string, runs []render.Run, down bool) int {
		if len(runs) == 0 {
			return 0
		}
		pointer(k, x, k.Y+(c.Text.Lead-arrow)/2, arrow, down)
		p := c.Set(sentence([]render.Run{{Text: label + ":", Weight: render.Semibold}}, runs), c.Text, width-arrow-u/2, 0)
		k.Para(p, x+arrow+u/2, k.Y)
		return p.Height()
	}
	k.Y += max(side(k.X, low, r.LowLabel, r.IfLow, true), side(k.X+k.Width-high, high, r.HighLabel, r.IfHigh, false))
}

// pointer draws a solid triangle that points down or up.
func pointer(k *compose.Column, x, y, size int, down bool) {
	h := size * 7 / 8
	y += (size - h) / 2
	tip, base := y, y+h
	if down {
		tip, base = y+h, y
	}
	k.Add(sheet.Path{Fill: compose.Ink, Stroke: sheet.NoColor, Segs: []sheet.Seg{
		{Verb: 'M', X: x, Y: base}, {Verb: 'L', X: x + size, Y: base}, {Verb: 'L', X: x + size/2, Y: tip}, {Verb: 'Z'}}})
}
