package element

import (
	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// A reading shows what to read, the band on a bar with its reject sides
// hatched, the boxes, and what to do on either side.
func reading(r render.Reading, c *compose.Compositor) compose.Block {
	u := c.Beat
	k := c.Within()
	k.Text(r.Title, c.Strong)
	k.Text(toolRuns(r.Gauge), c.Text)
	k.Y += u / 2
	if r.Value != "" {
		figure := c.Figure
		if r.Plain { // only what to expect: it must not look like an accept band
			c.Figure = c.Hand(c.Units.Cap(), typeface.Semibold, compose.Ink)
		}
		k.Labelled(r.Label, r.Value, r.Unit)
		c.Figure = figure
	}
	if !r.Plain && (r.Low != "" || r.High != "") {
		k.Y += u
		band(&k, r.Low, r.High)
	}
	k.Text(r.Source, c.Label)
	if len(r.Lines) > 0 {
		k.Y += u / 2
		k.Lines(r.Lines, c.Text)
	}
	if len(r.Boxes) > 0 {
		k.Y += u
		k.Boxes(r.Boxes, "", 2*c.Boxes)
	}
	if len(r.Use) > 0 {
		k.Y += u / 2
		k.Text(r.Use, c.Strong)
	}
	if len(r.IfLow) > 0 || len(r.IfHigh) > 0 {
		k.Y += u
		branches(&k, r)
	}
	return c.Panel(k)
}

// runs names a tool on one line.
func toolRuns(t render.ToolRow) []render.Run {
	var runs []render.Run
	for _, r := range []render.Run{{Text: t.Verb}, {Text: t.Name, Weight: render.Semibold}, {Text: t.Number, Code: true}, {Text: t.Place}, {Text: t.Note}} {
		if r.Text == "" {
			continue
		}
		if len(runs) > 0 {
			runs = append(runs, render.Run{Text: " "})
		}
		runs = append(runs, r)
	}
	return runs
}

// band draws the bar: the accept band is clear, with its ends written inside
// it, for a reading at an end is still accepted; what lies outside is hatched.
// A side without an end has no reject part.
func band(k *compose.Column, low, high string) {
	c, u := k.C, k.C.Beat
	h := 9 * u / 2
	from, to := k.X, k.X+k.Width
	if low != "" {
		from += k.Width / 5
		hatch(k, k.X, k.Y, from-k.X, h)
	}
	if high != "" {
		to -= k.Width / 5
		hatch(k, to, k.Y, k.X+k.Width-to, h)
	}
	k.Ground(from, k.Y, to-from, h, compose.White)
	k.Add(sheet.Rect{X: k.X, Y: k.Y, W: k.Width, H: h, Fill: sheet.NoColor, Stroke: compose.Ink, StrokeWidth: c.Rule, Role: sheet.Tint})
	end := func(x int, s string, a render.Align) {
		k.Add(sheet.Line{X1: x, Y1: k.Y, X2: x, Y2: k.Y + h, Width: 2 * c.Frame, Color: compose.Ink})
		p := c.Set(compose.Says(s), c.Strong, to-from, 0)
		k.Aligned(p, from+u, k.Y+(h-p.Hand.Lead)/2, to-from-2*u, a)
	}
	if low != "" {
		end(from, low, render.Left)
	}
	if high != "" {
		end(to, high, render.Right)
	}
	k.Y += h + u/2
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

// branches are what to do below and above, with arrows that point the way.
func branches(k *compose.Column, r render.Reading) {
	c, u := k.C, k.C.Beat
	label := 0
	for _, s := range []string{r.LowLabel, r.HighLabel} {
		_, w := c.Extent(compose.Says(s), c.Strong)
		label = max(label, w)
	}
	label = min(label, k.Width/3)
	arrow := 2 * u
	row := func(text string, runs []render.Run, down bool) {
		if len(runs) == 0 {
			return
		}
		k.Across(k.X, k.Y, k.Width, c.Hair, compose.Hairline)
		k.Y += u / 2
		pointer(k, k.X, k.Y+(c.Text.Lead-arrow)/2, arrow, down)
		p := c.Set(compose.Says(text), c.Strong, label, 0)
		q := c.Set(runs, c.Text, k.Width-arrow-label-3*u, 0)
		k.Para(p, k.X+arrow+u, k.Y)
		k.Para(q, k.X+arrow+label+3*u, k.Y)
		k.Y += max(p.Height(), q.Height()) + u/2
	}
	row(r.LowLabel, r.IfLow, true)
	row(r.HighLabel, r.IfHigh, false)
}

// pointer is a solid triangle that points down or up.
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
