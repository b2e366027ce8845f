package figure

import (
	"math/rand/v2"
	"testing"

	"benchwright/render"
)

// A patch lies on its flank and keeps the side that its numbers say, whatever
// the tooth's size: the toe is on the left and the top above.
func TestPatchLiesOnTheFlank(t *testing.T) {
	m := rand.New(rand.NewPCG(4, 48))
	for range 500 {
		f := flank{x: m.IntN(1000), width: 5000 + m.IntN(50000), toe: 3000, heel: 1000, toeRoot: 9000, heelRoot: 10000}
		r := render.ContactRow{Half: 50 + m.IntN(300), Height: 50 + m.IntN(300)}
		r.Along, r.Up = r.Half+m.IntN(1000-2*r.Half), r.Height+m.IntN(1000-2*r.Height)
		for _, s := range f.patch(r).Segs {
			if s.Verb == 'Z' {
				continue
			}
			along := (s.X - f.x) * 1000 / f.width
			root, top := f.toeRoot+(f.heelRoot-f.toeRoot)*along/1000, f.toe+(f.heel-f.toe)*along/1000
			if s.X < f.x || s.X > f.x+f.width || s.Y > root+20 || s.Y < top-20 {
				t.Fatalf("%+v: %d, %d is off the flank %+v", r, s.X, s.Y, f)
			}
		}
	}
	f := flank{width: 1000, toe: 300, heel: 100, toeRoot: 900, heelRoot: 1000}
	for _, c := range [][4]int{{0, 0, 0, 900}, {0, 1000, 0, 300}, {1000, 0, 1000, 1000}, {1000, 1000, 1000, 100}} {
		if x, y := f.at(c[0], c[1]); x != c[2] || y != c[3] {
			t.Errorf("%v: %d, %d", c, x, y)
		}
	}
}
