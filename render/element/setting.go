package element

import (
	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
)

// setting draws the number that the reader sets, the largest on the face, and
// the way to turn beside it.
func setting(s render.Setting, c *compose.Compositor) compose.Block {
	u := c.Beat
	k := c.Within()
	whole, under := k.Width, 0
	if s.Turn != render.NoTurn {
		size, side := 8*u, 8*u
		var from compose.Para
		if s.SeenFrom != "" {
			least, all := c.Extent(compose.Says(s.SeenFrom), c.Small)
			side = max(side, least, all*62/100)
			from = c.Balanced(compose.Says(s.SeenFrom), c.Small, side)
		}
		turn(&k, s.Turn, k.X+k.Width-(side+size)/2, k.Y, size)
		k.Aligned(from, k.X+k.Width-side, k.Y+size, side, render.Center)
		under = k.Y + size + from.Height()
		k.Width -= side + u
	}
	k.Titled(s.Title, runIn(s.Tools))
	boxes := s.Boxes
	switch {
	case len(s.Passes) > 0:
		k.Text(compose.Says(s.Label), c.Strong.In(compose.Accent))
	case s.Value == "" && s.Label != "":
		k.Text(compose.Says(s.Label), c.Strong.In(compose.Accent))
		k.Boxes([]string{""}, s.Unit, 2*c.Boxes)
	case s.Value != "":
		boxes = k.Measured(s.Label, s.Value, s.Unit, boxes, s.BoxUnit)
	}
	k.Text(s.Source, c.Label)
	k.Note(s.Lines, c.Text)
	if len(s.Passes) > 0 || len(s.Actions) > 0 || len(boxes) > 0 { // they take the whole width
		k.Y, k.Width = max(k.Y, under), whole
	}
	if len(s.Passes) > 0 {
		passes(&k, s.Passes, s.Unit)
	}
	actions(&k, s.Actions, max(1, s.First))
	if len(boxes) > 0 {
		k.Y += u / 2
		k.Boxes(boxes, s.BoxUnit, 2*c.Boxes)
	}
	k.Y = max(k.Y, under)
	return c.Panel(k)
}

// passes sets figures side by side in columns of one width, each under its
// label and unit, four to a row at most.
func passes(k *compose.Column, list []render.Pass, unit string) {
	c, u := k.C, k.C.Beat
	rows := (len(list) + 3) / 4
	n := (len(list) + rows - 1) / rows
	w := (k.Width - (n-1)*2*u) / n
	for from := 0; from < len(list); from += n {
		k.Y += u / 2
		bottom := k.Y
		for i, p := range list[from:min(from+n, len(list))] {
			cell := compose.Column{C: c, X: k.X + i*(w+2*u), Y: k.Y, Width: w}
			if i > 0 {
				cell.Ground(cell.X-u-c.Hair, cell.Y, 2*c.Hair, c.Figure.Lead+c.Label.Lead, compose.Accent)
			}
			cell.Text(compose.Says(compose.Joined(", ", p.Label, unit)), c.Tag)
			cell.Figure(p.Value, "")
			k.Add(cell.Ops...)
			bottom = max(bottom, cell.Y)
		}
		k.Y = bottom
	}
}

// actions sets what the hands do one under the other, with hanging numbers.
func actions(k *compose.Column, list [][]render.Run, first int) {
	if len(list) == 0 {
		return
	}
	l := render.List{Ordered: true}
	for _, runs := range list {
		l.Items = append(l.Items, render.Item{Runs: runs})
	}
	k.Y += k.C.Beat / 2
	for i, item := range l.Items {
		if i > 0 {
			k.Y += k.C.Beat / 2
		}
		drawItem(item, k, true, first-1+i, 0)
	}
}

// turn draws an arrow round a hexagon: three quarters of a circle that end at
// the top.
func turn(k *compose.Column, t render.Turn, x, y, size int) {
	u := k.C.Beat
	cx, cy, r := x+size/2, y+size/2, size/2-u
	side := 1
	if t == render.Counterclockwise {
		side = -1
	}
	h := r * 5523 / 10000
	// From the side, through the bottom and the far side, to the top.
	at := func(dx, dy int) (int, int) { return cx + side*dx, cy + dy }
	curve := func(x1, y1, x2, y2, x3, y3 int) sheet.Seg {
		s := sheet.Seg{Verb: 'C'}
		s.X1, s.Y1 = at(x1, y1)
		s.X2, s.Y2 = at(x2, y2)
		s.X, s.Y = at(x3, y3)
		return s
	}
	sx, sy := at(r, 0)
	k.Add(sheet.Path{Fill: sheet.NoColor, Stroke: compose.Accent, StrokeWidth: u * 3 / 4, Segs: []sheet.Seg{
		{Verb: 'M', X: sx, Y: sy},
		curve(r, h, h, r, 0, r),
		curve(-h, r, -r, h, -r, 0),
		curve(-r, -h, -h, -r, 0, -r)}})
	var head []sheet.Seg
	for i, p := range [][2]int{{-u / 4, -r - 3*u/2 + u/4}, {2*u + u/4, -r}, {-u / 4, -r + 3*u/2 - u/4}} {
		px, py := at(p[0], p[1])
		verb := byte('L')
		if i == 0 {
			verb = 'M'
		}
		head = append(head, sheet.Seg{Verb: verb, X: px, Y: py})
	}
	k.Add(sheet.Path{Fill: compose.Accent, Stroke: sheet.NoColor, Segs: append(head, sheet.Seg{Verb: 'Z'})})
	hex := r * 55 / 100
	var nut []sheet.Seg
	for i, p := range [][2]int{{-1000, 0}, {-500, -866}, {500, -866}, {1000, 0}, {500, 866}, {-500, 866}} {
		verb := byte('L')
		if i == 0 {
			verb = 'M'
		}
		nut = append(nut, sheet.Seg{Verb: verb, X: cx + hex*p[0]/1000, Y: cy + hex*p[1]/1000})
	}
	k.Add(sheet.Path{Fill: compose.White, Stroke: compose.Ink, StrokeWidth: k.C.Frame, Segs: append(nut, sheet.Seg{Verb: 'Z'})})
	k.Add(compose.Disc(cx, cy, hex*45/100, compose.Tint))
}
