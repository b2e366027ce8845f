package svg

import "math"

// A stroke of the pen in the units of the element that it stands in, before
// any transform. Curves are cubic.
type piece struct {
	verb           byte // 'M', 'L', 'C' or 'Z'
	x1, y1, x2, y2 float64
	x, y           float64
}

// A pen draws pieces and knows where it stands.
type pen struct {
	pieces       []piece
	x, y         float64 // where it stands
	fromX, fromY float64 // where the part began that it draws
}

func (p *pen) move(x, y float64) {
	p.x, p.y, p.fromX, p.fromY = x, y, x, y
	p.pieces = append(p.pieces, piece{verb: 'M', x: x, y: y})
}

func (p *pen) line(x, y float64) {
	p.x, p.y = x, y
	p.pieces = append(p.pieces, piece{verb: 'L', x: x, y: y})
}

func (p *pen) curve(x1, y1, x2, y2, x, y float64) {
	p.x, p.y = x, y
	p.pieces = append(p.pieces, piece{'C', x1, y1, x2, y2, x, y})
}

// quad draws a quadratic curve, which is a cubic one with its control points
// two thirds of the way to its own.
func (p *pen) quad(x1, y1, x, y float64) {
	third := func(a, b float64) float64 { return (a + mul(2, b)) / 3 }
	p.curve(third(p.x, x1), third(p.y, y1), third(x, x1), third(y, y1), x, y)
}

func (p *pen) close() {
	p.x, p.y = p.fromX, p.fromY
	p.pieces = append(p.pieces, piece{verb: 'Z'})
}

// arc draws an elliptical arc to x, y after the implementation notes of SVG
// (SVG 1.1, F.6.5 and F.6.6; SVG 2, B.2.4 and B.2.5). phi is the turn of the
// ellipse in degrees.
func (p *pen) arc(rx, ry, phi float64, large, sweep bool, x, y float64) {
	if x == p.x && y == p.y {
		return
	}
	rx, ry = math.Abs(rx), math.Abs(ry)
	if rx == 0 || ry == 0 {
		p.line(x, y)
		return
	}
	s, c := sine(phi), cosine(phi)
	dx, dy := (p.x-x)/2, (p.y-y)/2
	x1, y1 := mul(c, dx)+mul(s, dy), mul(c, dy)-mul(s, dx) // F.6.5.1
	u, v := x1/rx, y1/ry
	over := mul(u, u) + mul(v, v) // F.6.6.2
	if over > 1 {
		grow := math.Sqrt(over)
		rx, ry = mul(rx, grow), mul(ry, grow)
		u, v, over = u/grow, v/grow, 1
	}
	// F.6.5.2, on the circle of radius 1 that the ellipse becomes
	k := math.Sqrt(max(0, 1-over) / over)
	if large == sweep {
		k = -k
	}
	cu, cv := mul(k, v), mul(-k, u)
	from := cut(math.Atan2(v-cv, u-cu))          // F.6.5.5
	turn := cut(math.Atan2(-v-cv, -u-cu)) - from // F.6.5.6
	if sweep && turn < 0 {
		turn += 2 * math.Pi
	} else if !sweep && turn > 0 {
		turn -= 2 * math.Pi
	}
	back := matrix{mul(c, rx), mul(s, rx), mul(-s, ry), mul(c, ry), 0, 0}
	midX, midY := back.point(cu, cv) // F.6.5.3
	back.e, back.f = midX+(p.x+x)/2, midY+(p.y+y)/2
	p.turn(back, from, turn, x, y)
}

// turn draws an arc of the unit circle under m, in pieces of at most a quarter,
// and ends exactly at x, y.
func (p *pen) turn(m matrix, from, turn, x, y float64) {
	n := max(1, int(math.Ceil(math.Abs(turn)/(math.Pi/2)-1e-9)))
	step := turn / float64(n)
	k := mul(4.0/3, cut(math.Tan(step/4)))
	at := func(i int) (sin, cos float64) {
		sin, cos = math.Sincos(from + mul(float64(i), step))
		return cut(sin), cut(cos)
	}
	for i := range n {
		s1, c1 := at(i)
		s2, c2 := at(i + 1)
		x1, y1 := m.point(c1-mul(k, s1), s1+mul(k, c1))
		x2, y2 := m.point(c2+mul(k, s2), s2-mul(k, c2))
		ex, ey := m.point(c2, s2)
		if i == n-1 {
			ex, ey = x, y
		}
		p.curve(x1, y1, x2, y2, ex, ey)
	}
}

// ellipse draws a whole one from its right end on, clockwise.
func (p *pen) ellipse(cx, cy, rx, ry float64) {
	p.move(cx+rx, cy)
	p.turn(matrix{rx, 0, 0, ry, cx, cy}, 0, 2*math.Pi, cx+rx, cy)
	p.close()
}

// rect draws a rectangle from behind its top left corner on, clockwise.
func (p *pen) rect(x, y, w, h, rx, ry float64) {
	quarter := func(toX, toY float64) {
		if rx > 0 {
			p.arc(rx, ry, 0, false, true, toX, toY)
		}
	}
	p.move(x+rx, y)
	p.line(x+w-rx, y)
	quarter(x+w, y+ry)
	p.line(x+w, y+h-ry)
	quarter(x+w-rx, y+h)
	p.line(x+rx, y+h)
	quarter(x, y+h-ry)
	p.line(x, y+ry)
	quarter(x+rx, y)
	p.close()
}
