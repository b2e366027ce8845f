package compose

import "testing"

func TestOnCircle(t *testing.T) {
	for _, c := range []struct {
		degrees float64
		x, y    int
	}{{0, 0, -1000}, {90, 1000, 0}, {180, 0, 1000}, {270, -1000, 0}, {30, 500, -866}} {
		if x, y := OnCircle(0, 0, 1000, c.degrees); x != c.x || y != c.y {
			t.Errorf("%v°: %d, %d", c.degrees, x, y)
		}
	}
}

// The curves of an arc keep to the circle: their middles lie on it too.
func TestArcKeepsToTheCircle(t *testing.T) {
	for _, to := range []float64{20, 90, 200, 360, -300} {
		p := Arc(0, 0, 100000, 10, 10+to, 1, Ink)
		from := p.Segs[0]
		for _, s := range p.Segs[1:] {
			x, y := (from.X+3*s.X1+3*s.X2+s.X)/8, (from.Y+3*s.Y1+3*s.Y2+s.Y)/8
			if d := x*x + y*y; d < 99990*99990 || d > 100010*100010 {
				t.Errorf("to %v°: %d, %d is off the circle", to, x, y)
			}
			from = s
		}
		if x, y := OnCircle(0, 0, 100000, 10+to); from.X != x || from.Y != y {
			t.Errorf("to %v°: ends at %d, %d", to, from.X, from.Y)
		}
	}
}
