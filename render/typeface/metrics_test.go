package typeface

import (
	"math"
	"testing"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Source Sans 3 states a capital height of 0.660 of the em in every weight (its
// OS/2 table); its capitals are up to 1.3 % lower, and sizes on a face follow from
// what is seen.
func TestMetricsOfTheFaces(t *testing.T) {
	for i, m := range metrics() {
		if m.cap > 660 || m.cap < 660*98/100 {
			t.Errorf("face %d: capital height %d, want a little under 660", i, m.cap)
		}
	}
}

func TestEveryRuneOfTheRepertoireHasAnAdvance(t *testing.T) {
	for f := Regular; f <= Bold; f++ {
		for _, r := range Repertoire() {
			if a := Advance(f, r); a <= 0 {
				t.Errorf("face %d: advance of %q is %d", f, r, a)
			}
		}
		for _, r := range "⌀⚠\u00AD\u200B中\U0001F527" {
			if a := Advance(f, r); a != Missing {
				t.Errorf("face %d: advance of %q is %d, want none", f, r, a)
			}
		}
	}
}

// Figures of one width stand under one another in tables.
func TestFiguresHaveOneWidth(t *testing.T) {
	for f := Regular; f <= Bold; f++ {
		for _, r := range "123456789" {
			if Advance(f, r) != Advance(f, '0') {
				t.Errorf("face %d: %q is not as wide as 0", f, r)
			}
		}
	}
}

func TestTextWidth(t *testing.T) {
	want := Advance(Bold, 'N') + Advance(Bold, '·') + Advance(Bold, 'm')
	if got := Width(Bold, 1000, "N·m"); got != want {
		t.Errorf("width at one millimeter is %d, want %d", got, want)
	}
	if got, whole := Width(Regular, 3333, "WWW"), 3*Advance(Regular, 'W')*3333; got != (whole+500)/1000 {
		t.Errorf("width is rounded more than once: %d", got)
	}
}

// Dark on light a stroke is about a sixth of the height (DOD-HDBK-791): that of
// the semibold face. The bold one of figures is thicker, the regular one of
// instructions thinner: an eighth.
func TestStrokes(t *testing.T) {
	for font, want := range map[Font]float64{Regular: 8, Semibold: 5.7, Bold: 4.5} {
		var buf sfnt.Buffer
		m := metrics()[font]
		g, err := m.font.GlyphIndex(&buf, 'I') // a stroke and nothing else
		if err != nil {
			t.Fatal(err)
		}
		segments, err := m.font.LoadGlyph(&buf, g, fixed.Int26_6(m.upem), nil)
		if err != nil {
			t.Fatal(err)
		}
		bounds := segments.Bounds()
		stroke := m.thousandths(bounds.Max.X - bounds.Min.X)
		if parts := float64(m.cap) / float64(stroke); math.Abs(parts-want) > 0.1 {
			t.Errorf("face %d: a stroke is 1/%.2f of the height, want 1/%g", font, parts, want)
		}
	}
}
