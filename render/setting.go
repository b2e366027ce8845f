package render

// A setting is the number that the reader sets, the largest on the face; the
// way to turn stands beside it.
func (s Setting) lay(c *compositor) block {
	u := c.beat
	k := c.within()
	k.text(s.Title, c.strong)
	k.y += u / 2
	under, whole := k.y, k.width
	if s.Turn != NoTurn {
		size := 11 * u
		side := size + 5*u
		k.turn(s.Turn, k.x+k.width-side+5*u/2, k.y, size)
		p := c.set(says(s.SeenFrom), c.text, side, 0)
		k.aligned(p, k.x+k.width-side, k.y+size+u/4, side, Center)
		under += size + u/4 + p.height()
		k.width -= side + u
	}
	switch {
	case len(s.Passes) > 0:
		k.text(says(s.Label), c.strong.in(accent))
	case s.Value == "" && s.Label != "":
		k.text(says(s.Label), c.strong.in(accent))
		k.blank(s.Unit)
	case s.Value != "":
		k.labelled(s.Label, s.Value, s.Unit)
	}
	k.text(s.Source, c.label)
	if len(s.Lines) > 0 {
		k.y += u / 2
		k.lines(s.Lines, c.text)
	}
	if len(s.Passes) > 0 { // they take the whole width
		k.y, k.width = max(k.y, under), whole
		k.passes(s.Passes, s.Unit)
	}
	k.actions(s.Actions, max(1, s.First))
	k.y, k.width = max(k.y, under), whole
	if len(s.Boxes) > 0 {
		k.y += u
		k.boxes(s.Boxes, s.BoxUnit, 2*c.boxes)
	}
	return c.panel(k)
}

// passes sets figures side by side in columns of one width, each under its
// label and unit, four to a row at most.
func (k *column) passes(list []Pass, unit string) {
	c, u := k.c, k.c.beat
	rows := (len(list) + 3) / 4
	n := (len(list) + rows - 1) / rows
	w := (k.width - (n-1)*2*u) / n
	for from := 0; from < len(list); from += n {
		k.y += u / 2
		bottom := k.y
		for i, p := range list[from:min(from+n, len(list))] {
			cell := column{c: c, x: k.x + i*(w+2*u), y: k.y, width: w}
			if i > 0 {
				cell.ground(cell.x-u-c.hair, cell.y, 2*c.hair, c.figure.lead+c.label.lead, accent)
			}
			cell.text(says(joined(", ", p.Label, unit)), c.tag)
			cell.figure(p.Value, "")
			k.add(cell.ops...)
			bottom = max(bottom, cell.y)
		}
		k.y = bottom
	}
}

// actions sets what the hands do one under the other, with hanging numbers.
func (k *column) actions(list [][]Run, first int) {
	if len(list) == 0 {
		return
	}
	l := List{Ordered: true}
	for _, runs := range list {
		l.Items = append(l.Items, Item{Runs: runs})
	}
	k.y += k.c.beat / 2
	for i, item := range l.Items {
		if i > 0 {
			k.y += k.c.beat / 2
		}
		item.draw(k, true, first-1+i, 0)
	}
}

// blank is a box for a figure that is not known before.
func (k *column) blank(unit string) {
	c, u := k.c, k.c.beat
	h, w, high := c.units, min(2*c.boxes, k.width*2/3), c.box+u
	unit = c.clean(unit)
	k.frame(k.x, k.y+u/2, w, high, c.frame, u/4, white, ink, WriteBox)
	k.span(span{text: unit, font: h.font, w: textWidth(h.font, h.size, unit)}, h, k.x+w+u, k.y+u/2+(high+h.cap())/2)
	k.y += high + 2*u
}

// turn draws an arrow round a hexagon: three quarters of a circle that end at
// the top.
func (k *column) turn(t Turn, x, y, size int) {
	u := k.c.beat
	cx, cy, r := x+size/2, y+size/2, size/2-u
	side := 1
	if t == Anticlockwise {
		side = -1
	}
	h := r * 5523 / 10000
	// From the side, through the bottom and the far side, to the top.
	at := func(dx, dy int) (int, int) { return cx + side*dx, cy + dy }
	curve := func(x1, y1, x2, y2, x3, y3 int) Seg {
		s := Seg{Verb: 'C'}
		s.X1, s.Y1 = at(x1, y1)
		s.X2, s.Y2 = at(x2, y2)
		s.X, s.Y = at(x3, y3)
		return s
	}
	sx, sy := at(r, 0)
	k.add(Path{Fill: NoColor, Stroke: accent, StrokeWidth: u * 3 / 4, Segs: []Seg{
		{Verb: 'M', X: sx, Y: sy},
		curve(r, h, h, r, 0, r),
		curve(-h, r, -r, h, -r, 0),
		curve(-r, -h, -h, -r, 0, -r)}})
	var head []Seg
	for i, p := range [][2]int{{-u / 4, -r - 3*u/2 + u/4}, {2*u + u/4, -r}, {-u / 4, -r + 3*u/2 - u/4}} {
		px, py := at(p[0], p[1])
		verb := byte('L')
		if i == 0 {
			verb = 'M'
		}
		head = append(head, Seg{Verb: verb, X: px, Y: py})
	}
	k.add(Path{Fill: accent, Stroke: NoColor, Segs: append(head, Seg{Verb: 'Z'})})
	hex := r * 55 / 100
	var nut []Seg
	for i, p := range [][2]int{{-1000, 0}, {-500, -866}, {500, -866}, {1000, 0}, {500, 866}, {-500, 866}} {
		verb := byte('L')
		if i == 0 {
			verb = 'M'
		}
		nut = append(nut, Seg{Verb: verb, X: cx + hex*p[0]/1000, Y: cy + hex*p[1]/1000})
	}
	k.add(Path{Fill: white, Stroke: ink, StrokeWidth: k.c.frame, Segs: append(nut, Seg{Verb: 'Z'})})
	k.add(disc(cx, cy, hex*45/100, tint))
}

// disc is a filled circle. The handles of its four curves are 0.5523 of the
// radius.
func disc(x, y, r int, fill Color) Path {
	k := r * 5523 / 10000
	return Path{Fill: fill, Stroke: NoColor, Segs: []Seg{
		{Verb: 'M', X: x, Y: y - r},
		{Verb: 'C', X1: x + k, Y1: y - r, X2: x + r, Y2: y - k, X: x + r, Y: y},
		{Verb: 'C', X1: x + r, Y1: y + k, X2: x + k, Y2: y + r, X: x, Y: y + r},
		{Verb: 'C', X1: x - k, Y1: y + r, X2: x - r, Y2: y + k, X: x - r, Y: y},
		{Verb: 'C', X1: x - r, Y1: y - k, X2: x - k, Y2: y - r, X: x, Y: y - r},
		{Verb: 'Z'}}}
}
