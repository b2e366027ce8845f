package svg

// A shapeKind is an element that is an outline: its own attributes, and how it
// is drawn from them. draw reports false where its values make no outline,
// which it has refused if it is wrong.
type shapeKind struct {
	attributes []string
	draw       func(*reader, *element, *pen) bool
}

var shapes = map[string]shapeKind{
	"path":     {[]string{"d"}, (*reader).path},
	"line":     {[]string{"x1", "y1", "x2", "y2"}, (*reader).line},
	"polyline": {[]string{"points"}, (*reader).polyline},
	"polygon":  {[]string{"points"}, (*reader).polyline},
	"rect":     {[]string{"x", "y", "width", "height", "rx", "ry"}, (*reader).rect},
	"circle":   {[]string{"cx", "cy", "r"}, (*reader).circle},
	"ellipse":  {[]string{"cx", "cy", "rx", "ry"}, (*reader).ellipse},
}

// number returns the length that an attribute gives, or other if it is left
// out. A value that is no length, or below least, is refused.
func (r *reader) number(e *element, name string, other, least float64) (float64, bool) {
	a, ok := e.get(name)
	if !ok {
		return other, true
	}
	v, ok := length(a.value)
	if !ok || v < least {
		r.refuse(Value, e.name, name, a.start, a.end)
		return 0, false
	}
	return v, true
}

// numbers returns several lengths. Those after the first free ones may not be
// below 0.
func (r *reader) numbers(e *element, free int, names ...string) ([]float64, bool) {
	list, good := make([]float64, len(names)), true
	for i, name := range names {
		least := 0.0
		if i < free {
			least = -maxNumber
		}
		v, ok := r.number(e, name, 0, least)
		list[i], good = v, good && ok
	}
	return list, good
}

func (r *reader) path(e *element, p *pen) bool {
	a, ok := e.get("d")
	if !ok || a.value == "none" {
		return false
	}
	s := scanner{text: a.value}
	if !p.path(&s) {
		from, to := a.word(s.at)
		r.refuse(Value, e.name, "d", from, to)
		return false
	}
	return len(p.pieces) > 0
}

func (r *reader) line(e *element, p *pen) bool {
	v, ok := r.numbers(e, 4, "x1", "y1", "x2", "y2")
	if ok {
		p.move(v[0], v[1])
		p.line(v[2], v[3])
	}
	return ok
}

func (r *reader) polyline(e *element, p *pen) bool {
	a, _ := e.get("points")
	s := scanner{text: a.value}
	v, ok := s.numbers()
	if !ok || len(v)%2 != 0 {
		from, to := a.word(s.at)
		r.refuse(Value, e.name, "points", from, to)
		return false
	}
	for i := 0; i < len(v); i += 2 {
		if i == 0 {
			p.move(v[0], v[1])
		} else {
			p.line(v[i], v[i+1])
		}
	}
	if len(v) > 0 && e.name == "polygon" {
		p.close()
	}
	return len(v) > 0
}

func (r *reader) rect(e *element, p *pen) bool {
	v, ok := r.numbers(e, 2, "x", "y", "width", "height", "rx", "ry")
	if !ok || v[2] == 0 || v[3] == 0 {
		return false
	}
	rx, ry := v[4], v[5]
	if _, set := e.get("rx"); !set {
		rx = ry
	}
	if _, set := e.get("ry"); !set {
		ry = rx
	}
	rx, ry = min(rx, v[2]/2), min(ry, v[3]/2)
	if rx == 0 || ry == 0 {
		rx, ry = 0, 0
	}
	p.rect(v[0], v[1], v[2], v[3], rx, ry)
	return true
}

func (r *reader) circle(e *element, p *pen) bool {
	v, ok := r.numbers(e, 2, "cx", "cy", "r")
	if !ok || v[2] == 0 {
		return false
	}
	p.ellipse(v[0], v[1], v[2], v[2])
	return true
}

func (r *reader) ellipse(e *element, p *pen) bool {
	v, ok := r.numbers(e, 2, "cx", "cy", "rx", "ry")
	if !ok || v[2] == 0 || v[3] == 0 {
		return false
	}
	p.ellipse(v[0], v[1], v[2], v[3])
	return true
}

// shape adds an outline to the drawing.
func (r *reader) shape(e *element, f frame, kind shapeKind) {
	var p pen
	if !kind.draw(r, e, &p) || r.scale == 0 {
		return
	}
	if r.points += len(p.pieces); r.points > MaxPoints {
		return // the walk ends
	}
	s := &f.style
	out := &Path{Fill: s.drawn(s.fill), EvenOdd: s.evenOdd, Stroke: s.drawn(s.stroke), Cap: s.cap, Join: s.join}
	if out.Stroke != None {
		scale, even := f.matrix.even()
		if !even {
			r.refuse(StrokeBent, e.name, "", e.start, e.end)
			return
		}
		steps := func(v float64) int { return whole(min(mul(mul(v, scale), r.scale), 4*Side)) }
		if out.Width = steps(s.width); out.Width == 0 {
			out.Stroke = None
		}
		round := 0
		for _, v := range s.dash {
			out.Dash = append(out.Dash, steps(v))
			round += steps(v)
		}
		if s.dash != nil && round < Side/2000 { // nobody sees it, and a viewer toils
			r.refuse(Value, e.name, "stroke-dasharray", e.start, e.end)
			return
		}
	}
	if out.Stroke == None {
		out.Width, out.Dash = 0, nil
	}
	out.Segs = make([]Seg, len(p.pieces))
	for i, v := range p.pieces {
		g := Seg{Verb: v.verb}
		ok, near := true, true
		if v.verb != 'Z' {
			g.X, g.Y, ok = r.steps(f.matrix, v.x, v.y)
		}
		if v.verb == 'C' {
			g.X1, g.Y1, near = r.steps(f.matrix, v.x1, v.y1)
			ok = ok && near
			g.X2, g.Y2, near = r.steps(f.matrix, v.x2, v.y2)
			ok = ok && near
		}
		if !ok {
			r.refuse(Outside, e.name, "", e.start, e.end)
			return
		}
		out.Segs[i] = g
	}
	if out.Fill == None && out.Stroke == None {
		return // nothing is seen of it
	}
	if !r.inside(out) {
		r.refuse(Outside, e.name, "", e.start, e.end)
		return
	}
	r.out.Shapes = append(r.out.Shapes, out)
}

// inside reports whether an outline with its stroke lies in the view box, or
// over its edge by no more than a hundredth of the longer side, so that a frame
// may stand on the edge.
func (r *reader) inside(p *Path) bool {
	slack := Side/100 - p.Width/2
	in := func(x, y int) bool { return x >= -slack && y >= -slack && x <= r.out.W+slack && y <= r.out.H+slack }
	var x, y int
	for _, g := range p.Segs {
		switch {
		case g.Verb == 'Z':
			continue
		case !in(g.X, g.Y):
			return false
		case g.Verb == 'C' && !curveIn(in, [8]int{x, y, g.X1, g.Y1, g.X2, g.Y2, g.X, g.Y}, 8):
			return false
		}
		x, y = g.X, g.Y
	}
	return true
}

// curveIn reports whether a curve lies where in says: if its control points do,
// it does; if not, its halves are asked.
func curveIn(in func(x, y int) bool, c [8]int, depth int) bool {
	if !in(c[0], c[1]) {
		return false
	}
	if depth == 0 || in(c[2], c[3]) && in(c[4], c[5]) {
		return true
	}
	var a, b [8]int
	for i := range 2 {
		p, q, s, t := c[i], c[i+2], c[i+4], c[i+6]
		pq, qs, st := (p+q)/2, (q+s)/2, (s+t)/2
		l, m := (pq+qs)/2, (qs+st)/2
		a[i], a[i+2], a[i+4], a[i+6] = p, pq, l, (l+m)/2
		b[i], b[i+2], b[i+4], b[i+6] = (l+m)/2, m, st, t
	}
	return curveIn(in, a, depth-1) && curveIn(in, b, depth-1)
}
