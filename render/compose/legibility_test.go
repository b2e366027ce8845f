package compose

import (
	"math"
	"testing"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"benchwright/render/sheet"
	"benchwright/render/symbol"
	"benchwright/render/typeface"
)

// height returns the height that an angle in minutes of arc spans at a distance
// in mm.
func height(minutes, distance float64) float64 {
	return distance * 2 * math.Tan(minutes/60*math.Pi/180/2)
}

// The design's table, from its angles: 18 minutes for what is instructed, 16 for
// the rest; and what NUREG-0700, 11.4.1.5, has of the multipliers for 15 and 20
// minutes, which are rounded: 0.004 and 0.006 of the distance are really 13.75 and
// 20.6 minutes. All recomputed.
func TestHeightsOfAngles(t *testing.T) {
	for _, c := range []struct{ minutes, distance, want, within float64 }{
		{18, 500, 2.62, 0.005},
		{16, 500, 2.33, 0.005},
		{16, 700, 3.26, 0.005},
		{20, 700, 4.07, 0.005},
		{13.75, 1, 0.004, 0.0000005},
		{20.6, 1, 0.006, 0.00001},
	} {
		if got := height(c.minutes, c.distance); math.Abs(got-c.want) > c.within {
			t.Errorf("%g minutes at %g mm are %.6f mm, want %g", c.minutes, c.distance, got, c.want)
		}
	}
}

// distances are those that a shop may state, in mm.
var distances = []int{350, 500, 700, 1000}

// capital returns the height of a capital H of a face, read from its outline
// and not from what the face says of itself.
func capital(t *testing.T, h Hand) float64 {
	t.Helper()
	face, err := sfnt.Parse(typeface.File(h.Font))
	if err != nil {
		t.Fatal(err)
	}
	var buf sfnt.Buffer
	g, err := face.GlyphIndex(&buf, 'H')
	if err != nil {
		t.Fatal(err)
	}
	segments, err := face.LoadGlyph(&buf, g, fixed.Int26_6(face.UnitsPerEm()), nil)
	if err != nil {
		t.Fatal(err)
	}
	top := segments.Bounds().Min.Y // y runs down
	return -float64(top) / float64(face.UnitsPerEm()) * float64(h.Size) / 1000
}

// Whatever a face says is as tall as its reader needs at the distance that the
// shop states, on the type itself.
func TestHeightsFollowTheReadingDistance(t *testing.T) {
	for _, p := range sheet.Papers {
		for _, d := range distances {
			s := NewStyle(p, d*1000, false)
			for _, c := range []struct {
				what    string
				minutes float64 // of arc
				part    float64 // of the distance
				hands   []Hand
			}{
				{"an instruction", 18, 1.0 / 190, []Hand{s.Text, s.Strong, s.Title, s.Stage, s.Number}},
				{"a figure", 0, 1.0 / 100, []Hand{s.Figure}},
				{"a figure of a table", 0, 1.0 / 150, []Hand{s.LookUp, s.Units}},
				{"a label", 16, 0.00465, []Hand{s.Small, s.Name, s.Label, s.Tag, s.Watch}},
			} {
				want := max(height(c.minutes, float64(d)), c.part*float64(d))
				for i, h := range c.hands {
					if got := capital(t, h); got < want-0.01 { // a hundredth of a millimeter for the outline's own units
						t.Errorf("%s at %d mm: %s (%d) of %.3f mm, want %.3f", p.Name, d, c.what, i, got, want)
					}
				}
			}
		}
	}
}

// Left out, the distance is half a meter; a pocket card is nearer. A
// strip lies beside its card and never farther off than that.
func TestUsualDistances(t *testing.T) {
	for name, want := range map[string]int{"A4": 500000, "A5": 500000, "A3": 500000, "A6": 350000} {
		for _, p := range sheet.Papers {
			if p.Name == name && NewStyle(p, 0, false) != NewStyle(p, want, false) {
				t.Errorf("%s is not read at %d µm", name, want)
			}
		}
	}
	a4 := sheet.Papers[0]
	for at, want := range map[int]int{0: 500000, 350000: 350000, 700000: 500000, 1000000: 500000} {
		if s, card := NewStyle(a4, at, true), NewStyle(a4, want, false); s.Distance != want || s.Label.Cap() != card.Label.Cap() || s.Text.Cap() != card.Text.Cap() {
			t.Errorf("beside a card read at %d µm a strip is read at %d µm", at, s.Distance)
		}
	}
}

// Columns follow from the paper and the distance, and each holds 35 characters of
// running text.
func TestColumns(t *testing.T) {
	for _, c := range []struct {
		paper             string
		distance, columns int
	}{
		{"A4", 500, 2}, {"A4", 700, 1}, {"A4", 1000, 1}, {"A4", 350, 3},
		{"A4-landscape", 500, 3}, {"A4-landscape", 700, 2}, {"A3-landscape", 500, 4},
		{"A5", 500, 1}, {"half-Letter", 500, 1}, {"Letter", 500, 2}, {"A6", 350, 1},
	} {
		for _, p := range sheet.Papers {
			if p.Name != c.paper {
				continue
			}
			s := NewStyle(p, c.distance*1000, false)
			if got := s.Columns(p, false); got != c.columns {
				t.Errorf("%s at %d mm: %d columns, want %d", p.Name, c.distance, got, c.columns)
			}
		}
	}
}

func TestHandsAreWellLedAndRanked(t *testing.T) {
	for _, d := range distances {
		s := NewStyle(sheet.Papers[0], d*1000, false)
		for _, h := range []Hand{s.Text, s.Strong, s.Title, s.Stage, s.Small, s.Name, s.Label, s.Tag} {
			if ratio := float64(h.Lead) / float64(h.Size); ratio < 1.15 || ratio > 1.35 {
				t.Errorf("%d µm type on %d µm lines is %.2f", h.Size, h.Lead, ratio)
			}
		}
		// The order of rank: the figure, then number and action, then the rest.
		if !(s.Figure.Cap() > s.Units.Cap() && s.Figure.Cap() >= s.Title.Cap()*3/2 &&
			s.Number.Cap() > s.Title.Cap() && s.Title.Cap() > s.Stage.Cap() && s.Stage.Cap() > s.Text.Cap() &&
			s.Text.Cap() > s.Small.Cap() && s.Small.Cap() >= s.Label.Cap()) {
			t.Errorf("at %d mm sizes are out of rank", d)
		}
		if s.Box < LeastBoxHeight || s.Boxes < LeastBoxWidth {
			t.Errorf("a box to write in is %d × %d µm", s.Boxes, s.Box)
		}
		if s.Side < LeastTrim || s.Bottom < LeastTrim || s.Top < LeastTrim {
			t.Errorf("margins %d, %d and %d are under %d", s.Side, s.Top, s.Bottom, LeastTrim)
		}
	}
}

// luminance returns the relative luminance of WCAG 2.1.
func luminance(c sheet.Color) float64 {
	part := func(v sheet.Color) float64 {
		s := float64(v&0xFF) / 255
		if s <= 0.03928 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*part(c>>16) + 0.7152*part(c>>8) + 0.0722*part(c)
}

func contrast(a, b sheet.Color) float64 {
	x, y := luminance(a), luminance(b)
	if x < y {
		x, y = y, x
	}
	return (x + 0.05) / (y + 0.05)
}

func TestContrast(t *testing.T) {
	if got := contrast(Black, White); math.Abs(got-21) > 0.01 {
		t.Fatalf("black on white is %.2f, want 21 (WCAG 2.1)", got)
	}
	pairs := [][2]sheet.Color{{Ink, White}, {Ink, Tint}, {Soft, White}, {Soft, Tint}, {Accent, White}, {Accent, Tint}, {Accent, Band}, {White, Accent}, {White, Black}}
	for _, l := range looks {
		pairs = append(pairs, [2]sheet.Color{l.Word, l.Ground})
	}
	for _, p := range pairs {
		if got := contrast(p[0], p[1]); got < 7 {
			t.Errorf("%06X on %06X is %.2f:1, want 7:1", p[0], p[1], got)
		}
	}
}

// hue returns a hue in degrees.
func hue(c sheet.Color) float64 {
	r, g, b := float64(c>>16&0xFF), float64(c>>8&0xFF), float64(c&0xFF)
	return math.Mod(math.Atan2(math.Sqrt(3)*(g-b), 2*r-g-b)*180/math.Pi+360, 360)
}

func TestTheAccentIsNoSafetyColor(t *testing.T) {
	for name, c := range map[string]sheet.Color{"red": symbol.SafetyRed, "orange": symbol.SafetyOrange, "yellow": symbol.SafetyYellow, "blue": symbol.SafetyBlue, "green": 0x00824A} {
		d := math.Abs(hue(Accent) - hue(c))
		if d = min(d, 360-d); d < 45 {
			t.Errorf("the accent is %.0f° from safety %s", d, name)
		}
	}
}
