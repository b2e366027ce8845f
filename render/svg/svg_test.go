package svg

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"
)

// unit is a step count of a drawing whose view box is 16 wide.
const unit = Side / 16

// drawn reads the inside of a drawing 16 units square and writes its shapes in
// units, to three places.
func drawn(t *testing.T, inside string) string {
	t.Helper()
	d, refused := Read([]byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16">` + inside + `</svg>`))
	if refused != nil {
		t.Fatalf("%s is refused: %v", inside, refused)
	}
	var out []string
	for _, s := range d.Shapes {
		switch s := s.(type) {
		case *Path:
			out = append(out, outline(s.Segs))
		case *Text:
			out = append(out, fmt.Sprintf("%s %q at %s", num(s.Size), s.Says, nums(s.X, s.Y)))
		}
	}
	return strings.Join(out, "; ")
}

func outline(segs []Seg) string {
	var out []string
	for _, g := range segs {
		switch g.Verb {
		case 'Z':
			out = append(out, "Z")
		case 'C':
			out = append(out, "C "+nums(g.X1, g.Y1, g.X2, g.Y2, g.X, g.Y))
		default:
			out = append(out, string(g.Verb)+" "+nums(g.X, g.Y))
		}
	}
	return strings.Join(out, " ")
}

func nums(steps ...int) string {
	var out []string
	for _, v := range steps {
		out = append(out, num(v))
	}
	return strings.Join(out, " ")
}

func num(steps int) string {
	v := math.Round(float64(steps)/unit*1000) / 1000
	return fmt.Sprint(v + 0) // no minus before 0
}

// Each way to write an outline comes to points that were worked out by hand.
func TestOutlines(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{`<path d="M1 2L3 4H5V6"/>`, "M 1 2 L 3 4 L 5 4 L 5 6"},
		{`<path d="M1 2 3 4 5 6"/>`, "M 1 2 L 3 4 L 5 6"},
		{`<path d="m1 2 3 4 -1-1"/>`, "M 1 2 L 4 6 L 3 5"},
		{`<path d="M1,2l2,1.5.5.25z m1 1h1"/>`, "M 1 2 L 3 3.5 L 3.5 3.75 Z M 2 3 L 3 3"},
		{`<path d="M1 1h3v3h-3zl2 2"/>`, "M 1 1 L 4 1 L 4 4 L 1 4 Z M 1 1 L 3 3"},
		{`<path d="M 1e1 10 L 1.5e1 1.5E+1"/>`, "M 10 10 L 15 15"},
		{`<path d="M1 2C3 4 5 6 7 8c1 1 2 2 3 3"/>`, "M 1 2 C 3 4 5 6 7 8 C 8 9 9 10 10 11"},
		// S takes the control point before it, mirrored at its start; behind a
		// line it takes the start itself.
		{`<path d="M1 2C1 4 5 6 7 8S9 9 10 10s1 0 2 1"/>`, "M 1 2 C 1 4 5 6 7 8 C 9 10 9 9 10 10 C 11 11 11 10 12 11"},
		{`<path d="M1 2L3 3S4 4 5 5"/>`, "M 1 2 L 3 3 C 3 3 4 4 5 5"},
		// A quadratic curve is the cubic one whose control points lie two thirds
		// of the way to its own.
		{`<path d="M1 1Q4 7 7 1"/>`, "M 1 1 C 3 5 5 5 7 1"},
		{`<path d="M1 4Q2.5 7 4 4T7 4t3 0"/>`, "M 1 4 C 2 6 3 6 4 4 C 5 2 6 2 7 4 C 8 6 9 6 10 4"},
		{`<path d="M1 4T4 7"/>`, "M 1 4 C 1 4 2 5 4 7"},
		{`<line x1="1" y1="2" x2="3" y2="4" stroke="#000"/>`, "M 1 2 L 3 4"},
		{`<polyline points="1,2 3,4 5 6"/>`, "M 1 2 L 3 4 L 5 6"},
		{`<polygon points="1 2,3 4,5 6"/>`, "M 1 2 L 3 4 L 5 6 Z"},
		{`<rect x="1" y="2" width="3" height="4"/>`, "M 1 2 L 4 2 L 4 6 L 1 6 L 1 2 Z"},
		// Corners: one radius stands for both; no radius is more than half a side.
		{`<rect x="1" y="1" width="4" height="6" rx="1"/>`, "M 2 1 L 4 1 C 4.552 1 5 1.448 5 2 L 5 6 C 5 6.552 4.552 7 4 7 L 2 7 C 1.448 7 1 6.552 1 6 L 1 2 C 1 1.448 1.448 1 2 1 Z"},
		{`<rect x="1" y="1" width="2" height="6" rx="4" ry="1"/>`, "M 2 1 L 2 1 C 2.552 1 3 1.448 3 2 L 3 6 C 3 6.552 2.552 7 2 7 L 2 7 C 1.448 7 1 6.552 1 6 L 1 2 C 1 1.448 1.448 1 2 1 Z"},
		{`<circle cx="8" cy="8" r="4"/>`, "M 12 8 C 12 10.209 10.209 12 8 12 C 5.791 12 4 10.209 4 8 C 4 5.791 5.791 4 8 4 C 10.209 4 12 5.791 12 8 Z"},
		{`<ellipse cx="8" cy="8" rx="2" ry="4"/>`, "M 10 8 C 10 10.209 9.105 12 8 12 C 6.895 12 6 10.209 6 8 C 6 5.791 6.895 4 8 4 C 9.105 4 10 5.791 10 8 Z"},
		// What has no extent is not drawn.
		{`<rect x="1" y="2" width="0" height="4"/><circle cx="1" cy="1"/><path/>`, ""},
		{`<path d="M1 1H2" fill="none"/>`, ""},
	} {
		if got := drawn(t, c.in); got != c.want {
			t.Errorf("%s\n got %s\nwant %s", c.in, got, c.want)
		}
	}
}

// Arcs, after the implementation notes of SVG 1.1 (appendix F.6) and SVG 2
// (appendix B.2). A quarter of a circle has handles of 0.55228 of its radius.
func TestArcs(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"M8 4A4 4 0 0 1 12 8", "M 8 4 C 10.209 4 12 5.791 12 8"},
		{"M8 4a4 4 0 0 0 -4 4", "M 8 4 C 5.791 4 4 5.791 4 8"},
		// The long way around, with its flags run together.
		{"M8 4A4 4 0 104 8", "M 8 4 C 8 1.791 6.209 0 4 0 C 1.791 0 0 1.791 0 4 C 0 6.209 1.791 8 4 8"},
		{"M4 8A4 4 0 118 4", "M 4 8 C 1.791 8 0 6.209 0 4 C 0 1.791 1.791 0 4 0 C 6.209 0 8 1.791 8 4"},
		// An ellipse that is turned by a quarter is the other one.
		{"M8 4A4 2 90 0 1 10 8", "M 8 4 C 9.105 4 10 5.791 10 8"},
		// F.6.2 and F.6.6: to its own start nothing, without a radius a line, a
		// negative radius is positive, one too small is grown till it reaches.
		{"M8 8A4 4 0 0 1 8 8", "M 8 8"},
		{"M8 8A0 4 0 0 1 12 8", "M 8 8 L 12 8"},
		{"M8 4A-4 4 0 0 1 12 8", "M 8 4 C 10.209 4 12 5.791 12 8"},
		{"M4 8A1 1 0 0 1 12 8", "M 4 8 C 4 5.791 5.791 4 8 4 C 10.209 4 12 5.791 12 8"},
	} {
		if got := drawn(t, `<path d="`+c.in+`"/>`); got != c.want {
			t.Errorf("%s\n got %s\nwant %s", c.in, got, c.want)
		}
	}
}

// All points of an arc lie on the ellipse that its numbers describe, and the
// arc goes the way and the length that its flags say.
func TestArcLiesOnItsEllipse(t *testing.T) {
	for i := range 400 {
		rx, ry, phi := 3+float64(i%7), 2+float64(i%5), float64(i*37%360)
		large, sweep := i&1 == 1, i&2 == 2
		var p pen
		p.move(1, 2)
		x, y := 1+4*math.Cos(float64(i)), 2+3*math.Sin(float64(i))
		p.arc(rx, ry, phi, large, sweep, x, y)
		s, c := math.Sincos(phi * math.Pi / 180)
		on := func(x, y float64) (float64, float64) { return (c*x + s*y) / rx, (c*y - s*x) / ry }
		// The middle of three points of a circle, by its chords.
		var pts [][2]float64
		px, py := 1.0, 2.0
		for _, g := range p.pieces[1:] {
			for k := range 5 {
				u := float64(k) / 4
				at := func(a, b, c, d float64) float64 {
					return a*(1-u)*(1-u)*(1-u) + 3*b*u*(1-u)*(1-u) + 3*c*u*u*(1-u) + d*u*u*u
				}
				ex, ey := on(at(px, g.x1, g.x2, g.x), at(py, g.y1, g.y2, g.y))
				pts = append(pts, [2]float64{ex, ey})
			}
			px, py = g.x, g.y
		}
		a, b, d := pts[0], pts[len(pts)/2], pts[len(pts)-1]
		bx, by, dx, dy := b[0]-a[0], b[1]-a[1], d[0]-a[0], d[1]-a[1]
		q := 2 * (bx*dy - by*dx)
		mx := (dy*(bx*bx+by*by)-by*(dx*dx+dy*dy))/q + a[0]
		my := (bx*(dx*dx+dy*dy)-dx*(bx*bx+by*by))/q + a[1]
		turned := 0.0
		for k, v := range pts {
			if r := math.Hypot(v[0]-mx, v[1]-my); math.Abs(r-1) > 5e-4 {
				t.Fatalf("arc %d leaves its ellipse at point %d: radius %f", i, k, r)
			}
			if k > 0 {
				u := pts[k-1]
				turned += math.Asin(max(-1, min(1, (u[0]-mx)*(v[1]-my)-(u[1]-my)*(v[0]-mx))))
			}
		}
		if (turned > 0) != sweep || math.Abs(turned) > math.Pi+1e-3 != large && math.Abs(math.Abs(turned)-math.Pi) > 1e-2 {
			t.Errorf("arc %d turns by %.3f: large %v, sweep %v", i, turned, large, sweep)
		}
	}
}

func TestTransforms(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"translate(1 2)", "M 2 2 L 3 2"},
		{"translate(1)", "M 2 0 L 3 0"},
		{"scale(2)", "M 2 0 L 4 0"},
		{"scale(2,3) translate(0,1)", "M 2 3 L 4 3"}, // the last one is done first
		{"rotate(90)", "M 0 1 L 0 2"},
		{"rotate(90 1 0)", "M 1 0 L 1 1"},
		{"translate(8 8),rotate(-30)", "M 8.866 7.5 L 9.732 7"},
		{"translate(0 1) skewX(45)", "M 1 1 L 2 1"},
		{"skewY(45)", "M 1 1 L 2 2"},
		{"matrix(0 1 1 0 2 3)", "M 2 4 L 2 5"},
	} {
		if got := drawn(t, `<g transform="`+c.in+`"><path d="M1 0L2 0"/></g>`); got != c.want {
			t.Errorf("%s\n got %s\nwant %s", c.in, got, c.want)
		}
	}
	if got, want := drawn(t, `<g transform="translate(1 1)"><g transform="scale(2)"><path transform="translate(1 0)" d="M0 0H1"/></g><path d="M0 0H1"/></g>`), "M 3 1 L 5 1; M 1 1 L 2 1"; got != want {
		t.Errorf("groups: got %s, want %s", got, want)
	}
}

// What is handed down, what is overridden, and by what.
func TestStyles(t *testing.T) {
	red, ink := Color(0xFF0000), Color(Ink)
	for _, c := range []struct {
		in   string
		want Path
	}{
		{`<path d="M1 1H2"/>`, Path{Fill: 0, Stroke: None}},
		{`<path fill="none" stroke="red" d="M1 1H2"/>`, Path{Fill: None, Stroke: red, Width: unit}},
		{`<path fill="#f00" stroke="currentColor" stroke-width=".5" d="M1 1H2"/>`, Path{Fill: red, Stroke: ink, Width: unit / 2}},
		{`<g color="#00F" fill="currentColor"><path color="red" d="M1 1H2"/></g>`, Path{Fill: red, Stroke: None}},
		{`<g stroke="#123456" fill="none"><path stroke-linecap="round" stroke-linejoin="round" d="M1 1H2"/></g>`,
			Path{Fill: None, Stroke: 0x123456, Width: unit, Cap: RoundCap, Join: RoundJoin}},
		{`<path fill="red" style="fill:none; stroke:RED;-own-word:3" d="M1 1H2"/>`, Path{Fill: None, Stroke: red, Width: unit}},
		{`<path style="fill-rule:evenodd;opacity:1;font-family:&quot;A B&quot;" d="M1 1H2"/>`, Path{EvenOdd: true, Stroke: None}},
		{`<path fill-rule="evenodd" d="M1 1H2"/>`, Path{EvenOdd: true, Stroke: None}},
		{`<path stroke="red" stroke-dasharray="1" d="M1 1H2"/>`, Path{Stroke: red, Width: unit, Dash: []int{unit, unit}}},
		{`<path stroke="red" stroke-dasharray="4,1 1,1" d="M1 1H2"/>`, Path{Stroke: red, Width: unit, Dash: []int{4 * unit, unit, unit, unit}}},
		{`<g stroke-dasharray="1 2" stroke="red"><path stroke-dasharray="none" d="M1 1H2"/></g>`, Path{Stroke: red, Width: unit}},
		{`<g transform="scale(2) rotate(30)"><path transform="rotate(-30)" stroke="red" stroke-dasharray="1" d="M1 1H2"/></g>`,
			Path{Stroke: red, Width: 2 * unit, Dash: []int{2 * unit, 2 * unit}}},
		{`<path stroke-width="0.5mm" stroke="red" d="M1 1H2"/>`, Path{Stroke: red, Width: whole(0.5 * 96 / 25.4 * unit)}},
	} {
		d, refused := Read([]byte(`<svg viewBox="0 0 16 16">` + c.in + `</svg>`))
		if refused != nil {
			t.Fatalf("%s is refused: %v", c.in, refused)
		}
		got := *d.Shapes[0].(*Path)
		got.Segs = nil
		if !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s\n got %+v\nwant %+v", c.in, got, c.want)
		}
	}
}

func TestTexts(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{`<text x="1" y="2" font-size="3">ring  retainer
			</text>`, `3 "ring retainer" at 1 2`},
		{`<text font-size="2" transform="translate(1 1) scale(2)" x="1" y="2">A &amp; B</text>`, `4 "A & B" at 3 5`},
		{`<text x="1" y="2" font-size="1"><tspan x="3" y="4">one</tspan><tspan x="3" y="6" font-size="2">two</tspan></text>`, `1 "one" at 3 4; 2 "two" at 3 6`},
		{`<text x="1" y="2" font-size="1">one<tspan x="3">two</tspan></text>`, `1 "one" at 1 2; 1 "two" at 3 2`},
		{`<text x="1" y="2" font-size="1"> <tspan font-size="2">all of it</tspan> </text>`, `2 "all of it" at 1 2`},
		{`<text x="1" y="2" font-size="1"><title>unseen</title>seen<!-- not --></text>`, `1 "seen" at 1 2`},
		{`<text x="1" y="2" fill="none">unseen</text><text x="1" y="1"> </text>`, ``},
	} {
		if got := drawn(t, c.in); got != c.want {
			t.Errorf("%s\n got %s\nwant %s", c.in, got, c.want)
		}
	}
	d, _ := Read([]byte(`<svg viewBox="0 0 16 16"><g font-weight="bold" text-anchor="middle"><text x="1" y="1" fill="#4f1b4e">a</text><text x="1" y="1" font-weight="600" text-anchor="end">b</text></g></svg>`))
	a, b := d.Shapes[0].(*Text), d.Shapes[1].(*Text)
	if a.Weight != 700 || a.Anchor != Middle || a.Fill != 0x4F1B4E || b.Weight != 600 || b.Anchor != End || b.Fill != 0 {
		t.Errorf("the look of text: %+v, %+v", a, b)
	}
}

// Where a drawing begins and how large it is.
func TestViewBox(t *testing.T) {
	for _, c := range []struct {
		root string
		w, h int
		want string // of a line from 1, 1 to 2, 1
	}{
		{`viewBox="0 0 16 8"`, Side, Side / 2, "M 1 1 L 2 1"},
		{`viewBox="1,1,4,8"`, Side / 2, Side, "M 0 0 L 2 0"},
		{`width="32" height="16px"`, Side, Side / 2, "M 0.5 0.5 L 1 0.5"},
		{`width="1in" height="96"`, Side, Side, "M 0.167 0.167 L 0.333 0.167"},
		{`viewBox="0 0 16 8" width="100%" height="3em"`, Side, Side / 2, "M 1 1 L 2 1"},
	} {
		d, refused := Read([]byte("\uFEFF<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg " + c.root + `><path d="M1 1H2"/></svg>`))
		if refused != nil {
			t.Errorf("%s is refused: %v", c.root, refused)
			continue
		}
		if got := outline(d.Shapes[0].(*Path).Segs); d.W != c.w || d.H != c.h || got != c.want {
			t.Errorf("%s: %d × %d, %s; want %d × %d, %s", c.root, d.W, d.H, got, c.w, c.h, c.want)
		}
	}
}

// What an editor writes beside the drawing is passed over.
func TestPassedOver(t *testing.T) {
	in := `<?xml version="1.0"?><!-- by an editor --><svg xmlns="http://www.w3.org/2000/svg" xmlns:svg="http://www.w3.org/2000/svg" xmlns:ed="https://editor.example/ns"
 xmlns:xlink="http://www.w3.org/1999/xlink" ed:version="1" version="1.1" id="a" class="b" viewBox="0 0 16 16" xml:space="preserve">
<title>T</title><desc>D <b>bold</b></desc><metadata><script/></metadata><defs id="d"/><ed:view grid="1"><path d="M0 0"/></ed:view>
<svg:g ed:label="Layer" style="display:inline"><path id="p" ed:kind="x" class="c" data-x="1" aria-hidden="true" d="M1 1H2" style="fill:#000000;fill-opacity:1;stroke:none;stroke-miterlimit:4;-ed-own:1"><title>T</title></path></svg:g></svg>`
	d, refused := Read([]byte(in))
	if refused != nil {
		t.Fatalf("refused: %+v", refused)
	}
	if len(d.Shapes) != 1 {
		t.Errorf("%d shapes", len(d.Shapes))
	}
}
