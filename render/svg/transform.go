package svg

import "math"

// A matrix takes x, y to a·x + c·y + e, b·x + d·y + f.
type matrix struct{ a, b, c, d, e, f float64 }

var unmoved = matrix{a: 1, d: 1}

// mul returns a product that no processor fuses with the sum around it, so that
// drawings come out the same on every machine.
func mul(x, y float64) float64 { return float64(x * y) }

func (m matrix) point(x, y float64) (float64, float64) {
	return mul(m.a, x) + mul(m.c, y) + m.e, mul(m.b, x) + mul(m.d, y) + m.f
}

// times returns n followed by m.
func (m matrix) times(n matrix) matrix {
	var p matrix
	p.a, p.b = mul(m.a, n.a)+mul(m.c, n.b), mul(m.b, n.a)+mul(m.d, n.b)
	p.c, p.d = mul(m.a, n.c)+mul(m.c, n.d), mul(m.b, n.c)+mul(m.d, n.d)
	p.e, p.f = m.point(n.e, n.f)
	return p
}

// even returns by how much m scales, and whether it does so alike in every
// direction; what is left of a rounded sine counts for nothing.
func (m matrix) even() (float64, bool) {
	x, y := math.Hypot(m.a, m.b), math.Hypot(m.c, m.d)
	square := math.Abs(mul(m.a, m.c) + mul(m.b, m.d))
	return x, math.Abs(x-y) <= 1e-4*x && square <= 1e-4*mul(x, y)
}

// level reports whether text under m stands upright on a level line.
func (m matrix) level() bool {
	x, even := m.even()
	return even && m.a > 0 && m.d > 0 && math.Abs(m.b) <= 1e-4*x
}

// sine returns the sine of an angle in degrees.
func sine(degrees float64) float64 {
	return cut(math.Sin(mul(math.Mod(degrees, 360), math.Pi/180)))
}

func cosine(degrees float64) float64 { return sine(degrees + 90) }

// cut leaves out the last bits of a sine or an angle, in which processors
// differ; what is a whole number comes out whole.
func cut(v float64) float64 { return math.Round(mul(v, 1e12)) / 1e12 }

// transform reads the value of a transform attribute.
func (s *scanner) transform() (matrix, bool) {
	m := unmoved
	s.blanks()
	for !s.done() {
		from := s.at
		for letter(s.peek()) {
			s.at++
		}
		name := s.text[from:s.at]
		s.blanks()
		if s.peek() != '(' {
			return m, false
		}
		s.at++
		s.blanks()
		var v []float64
		for s.peek() != ')' {
			n, ok := s.number()
			if !ok || len(v) == 6 {
				return m, false
			}
			v = append(v, n)
			s.apart()
		}
		s.at++
		n, ok := named(name, v)
		if !ok {
			s.at = from
			return m, false
		}
		m = m.times(n)
		s.apart()
	}
	return m, true
}

// named returns the matrix of one transform function.
func named(name string, v []float64) (matrix, bool) {
	switch n := len(v); {
	case name == "matrix" && n == 6:
		return matrix{v[0], v[1], v[2], v[3], v[4], v[5]}, true
	case name == "translate" && n == 1:
		return matrix{1, 0, 0, 1, v[0], 0}, true
	case name == "translate" && n == 2:
		return matrix{1, 0, 0, 1, v[0], v[1]}, true
	case name == "scale" && n == 1:
		return matrix{v[0], 0, 0, v[0], 0, 0}, true
	case name == "scale" && n == 2:
		return matrix{v[0], 0, 0, v[1], 0, 0}, true
	case name == "rotate" && (n == 1 || n == 3):
		s, c := sine(v[0]), cosine(v[0])
		m := matrix{c, s, -s, c, 0, 0}
		if n == 3 {
			m = matrix{1, 0, 0, 1, v[1], v[2]}.times(m).times(matrix{1, 0, 0, 1, -v[1], -v[2]})
		}
		return m, true
	case name == "skewX" && n == 1 && cosine(v[0]) != 0:
		return matrix{1, 0, sine(v[0]) / cosine(v[0]), 1, 0, 0}, true
	case name == "skewY" && n == 1 && cosine(v[0]) != 0:
		return matrix{1, sine(v[0]) / cosine(v[0]), 0, 1, 0, 0}, true
	}
	return unmoved, false
}
