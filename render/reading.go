package render

// A reading shows what to read, the band on a bar with its reject sides
// hatched, the boxes, and what to do on either side.
func (r Reading) lay(c *compositor) block {
	u := c.beat
	k := c.within()
	k.text(r.Title, c.strong)
	k.text(r.Gauge.runs(), c.text)
	k.y += u / 2
	if r.Value != "" {
		figure := c.figure
		if r.Plain { // only what to expect: it must not look like an accept band
			c.figure = c.hand(c.units.cap(), FontSemibold, ink)
		}
		k.labelled(r.Label, r.Value, r.Unit)
		c.figure = figure
	}
	if !r.Plain && (r.Low != "" || r.High != "") {
		k.y += u
		k.band(r.Low, r.High)
	}
	k.text(r.Source, c.label)
	if len(r.Lines) > 0 {
		k.y += u / 2
		k.lines(r.Lines, c.text)
	}
	if len(r.Boxes) > 0 {
		k.y += u
		k.boxes(r.Boxes, "", 2*c.boxes)
	}
	if len(r.Use) > 0 {
		k.y += u / 2
		k.text(r.Use, c.strong)
	}
	if len(r.IfLow) > 0 || len(r.IfHigh) > 0 {
		k.y += u
		k.branches(r)
	}
	return c.panel(k)
}

// runs names a tool on one line.
func (t ToolRow) runs() []Run {
	var runs []Run
	for _, r := range []Run{{Text: t.Verb}, {Text: t.Name, Weight: Semibold}, {Text: t.Number, Code: true}, {Text: t.Place}, {Text: t.Note}} {
		if r.Text == "" {
			continue
		}
		if len(runs) > 0 {
			runs = append(runs, Run{Text: " "})
		}
		runs = append(runs, r)
	}
	return runs
}

// band draws the bar: the accept band is clear, with its ends written inside
// it, for a reading at an end is still accepted; what lies outside is hatched.
// A side without an end has no reject part.
func (k *column) band(low, high string) {
	c, u := k.c, k.c.beat
	h := 9 * u / 2
	from, to := k.x, k.x+k.width
	if low != "" {
		from += k.width / 5
		k.hatch(k.x, k.y, from-k.x, h)
	}
	if high != "" {
		to -= k.width / 5
		k.hatch(to, k.y, k.x+k.width-to, h)
	}
	k.ground(from, k.y, to-from, h, white)
	k.add(Rect{X: k.x, Y: k.y, W: k.width, H: h, Fill: NoColor, Stroke: ink, StrokeWidth: c.rule, Role: Tint})
	end := func(x int, s string, a Align) {
		k.add(Line{X1: x, Y1: k.y, X2: x, Y2: k.y + h, Width: 2 * c.frame, Color: ink})
		p := c.set(says(s), c.strong, to-from, 0)
		k.aligned(p, from+u, k.y+(h-p.hand.lead)/2, to-from-2*u, a)
	}
	if low != "" {
		end(from, low, Left)
	}
	if high != "" {
		end(to, high, Right)
	}
	k.y += h + u/2
}

// hatch fills an area with strokes at 45°.
func (k *column) hatch(x, y, w, h int) {
	c := k.c
	k.ground(x, y, w, h, white)
	step := c.beat
	for d := step / 2; d < w+h; d += step {
		x1, y1 := x+d, y
		if d > w {
			x1, y1 = x+w, y+d-w
		}
		x2, y2 := x+d-h, y+h
		if d < h {
			x2, y2 = x, y+d
		}
		k.add(Line{X1: x1, Y1: y1, X2: x2, Y2: y2, Width: c.rule * 4 / 5, Color: soft})
	}
}

// branches are what to do below and above, with arrows that point the way.
func (k *column) branches(r Reading) {
	c, u := k.c, k.c.beat
	label := 0
	for _, s := range []string{r.LowLabel, r.HighLabel} {
		_, w := c.extent(says(s), c.strong)
		label = max(label, w)
	}
	label = min(label, k.width/3)
	arrow := 2 * u
	row := func(text string, runs []Run, down bool) {
		if len(runs) == 0 {
			return
		}
		k.across(k.x, k.y, k.width, c.hair, hairline)
		k.y += u / 2
		k.pointer(k.x, k.y+(c.text.lead-arrow)/2, arrow, down)
		p := c.set(says(text), c.strong, label, 0)
		q := c.set(runs, c.text, k.width-arrow-label-3*u, 0)
		k.para(p, k.x+arrow+u, k.y)
		k.para(q, k.x+arrow+label+3*u, k.y)
		k.y += max(p.height(), q.height()) + u/2
	}
	row(r.LowLabel, r.IfLow, true)
	row(r.HighLabel, r.IfHigh, false)
}

// pointer is a solid triangle that points down or up.
func (k *column) pointer(x, y, size int, down bool) {
	h := size * 7 / 8
	y += (size - h) / 2
	tip, base := y, y+h
	if down {
		tip, base = y+h, y
	}
	k.add(Path{Fill: ink, Stroke: NoColor, Segs: []Seg{
		{Verb: 'M', X: x, Y: base}, {Verb: 'L', X: x + size, Y: base}, {Verb: 'L', X: x + size/2, Y: tip}, {Verb: 'Z'}}})
}
