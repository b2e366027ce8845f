package render

import "testing"

// The capital height of Source Sans 3 is 0.660 of the em in every weight (its
// OS/2 table); sizes on a face follow from it.
func TestMetricsOfTheFaces(t *testing.T) {
	for i, m := range metrics() {
		if m.cap != 660 {
			t.Errorf("face %d: capital height %d, want 660", i, m.cap)
		}
		if m.x < 480 || m.x > 500 {
			t.Errorf("face %d: x-height %d", i, m.x)
		}
	}
}

func TestEveryRuneOfTheRepertoireHasAnAdvance(t *testing.T) {
	for f := FontRegular; f <= FontBold; f++ {
		for _, r := range cutset() {
			if a := advance(f, r); a <= 0 {
				t.Errorf("face %d: advance of %q is %d", f, r, a)
			}
		}
		for _, r := range "⌀⚠\u00AD\u200B中\U0001F527" {
			if a := advance(f, r); a != none {
				t.Errorf("face %d: advance of %q is %d, want none", f, r, a)
			}
		}
	}
}

// Figures of one width stand under one another in tables.
func TestFiguresHaveOneWidth(t *testing.T) {
	for f := FontRegular; f <= FontBold; f++ {
		for _, r := range "123456789" {
			if advance(f, r) != advance(f, '0') {
				t.Errorf("face %d: %q is not as wide as 0", f, r)
			}
		}
	}
}

func TestTextWidth(t *testing.T) {
	want := advance(FontBold, 'N') + advance(FontBold, '·') + advance(FontBold, 'm')
	if got := textWidth(FontBold, 1000, "N·m"); got != want {
		t.Errorf("width at one millimetre is %d, want %d", got, want)
	}
	if got, whole := textWidth(FontRegular, 3333, "WWW"), 3*advance(FontRegular, 'W')*3333; got != (whole+500)/1000 {
		t.Errorf("width is rounded more than once: %d", got)
	}
}
