package symbol

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"testing"

	"benchwright/render/sheet"
)

// Every symbol's data can be read, and the codes are those that the hazard
// table names, with the stop octagon and the safety alert.
func TestSymbolsCanBeRead(t *testing.T) {
	for _, table := range []map[string]symbol{warningSymbols, mandatorySymbols, otherSymbols} {
		for code, s := range table {
			if paths, err := s.paths(); err != nil || len(paths) < 2 {
				t.Errorf("%s (%s): %d paths, %v", code, s.meaning, len(paths), err)
			}
		}
	}
	want := []string{
		"W001", "W010", "W011", "W012", "W015", "W016", "W017", "W019", "W021", "W022", "W023", "W024", "W029", "W038", "W089",
		"M001", "M002", "M003", "M004", "M008", "M009", "M013", "M014", "M016", "M017", "M021", "P003", "P028",
		"stop", "alert", "alert-danger", "alert-warning", "alert-caution",
	}
	slices.Sort(want)
	if got := Codes(); !slices.Equal(got, want) {
		t.Errorf("codes %q\nwant  %q", got, want)
	}
	if ops, ok := Draw("W026", 0, 0, 1000); ok || ops != nil {
		t.Error("a code without a drawing is drawn")
	}
}

// A symbol keeps to its square, wherever it stands and whatever its size, and
// fills most of it.
func TestSymbolsKeepToTheirSquare(t *testing.T) {
	const x, y, size = -7000, 33000, 10000
	for _, code := range Codes() {
		ops, _ := Draw(code, x, y, size)
		left, top, right, bottom := math.MaxInt, math.MaxInt, math.MinInt, math.MinInt
		for _, op := range ops {
			p := op.(sheet.Path)
			half := p.StrokeWidth / 2
			for _, s := range p.Segs {
				if s.Verb == 'Z' {
					continue
				}
				left, right = min(left, s.X-half), max(right, s.X+half)
				top, bottom = min(top, s.Y-half), max(bottom, s.Y+half)
			}
		}
		if left < x || top < y || right > x+size || bottom > y+size {
			t.Errorf("%s reaches %d,%d to %d,%d outside its square", code, left, top, right, bottom)
		}
		if right-left < size*9/10 || bottom-top < size*8/10 {
			t.Errorf("%s is %d × %d in a square of %d", code, right-left, bottom-top, size)
		}
	}
}

// A picture's colors stand apart on a gray printer: at least 3:1 by the
// contrast of WCAG 2.2 (1.4.11, graphical objects).
func TestSymbolsInGrey(t *testing.T) {
	for _, pair := range [][2]sheet.Color{
		{inkBlack, SafetyYellow}, {inkWhite, SafetyBlue}, {inkBlack, inkWhite},
		{inkWhite, SafetyRed}, {inkBlack, SafetyOrange},
	} {
		if c := contrast(pair[0], pair[1]); c < 3 {
			t.Errorf("%06X on %06X: contrast %.2f", pair[0], pair[1], c)
		}
	}
}

// symbolContrast is the ratio of relative luminances after WCAG 2.2.
func contrast(a, b sheet.Color) float64 {
	lum := func(c sheet.Color) float64 {
		sum := 0.0
		for shift, weight := range map[int]float64{16: 0.2126, 8: 0.7152, 0: 0.0722} {
			v := float64(c>>shift&0xFF) / 255
			if v <= 0.04045 {
				v /= 12.92
			} else {
				v = math.Pow((v+0.055)/1.055, 2.4)
			}
			sum += weight * v
		}
		return sum
	}
	x, y := lum(a), lum(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// No two symbols are the same drawing.
func TestSymbolsDiffer(t *testing.T) {
	seen := map[string]string{}
	for code, paths := range maps.All(all()) {
		s := fmt.Sprint(paths)
		if other, twice := seen[s]; twice {
			t.Errorf("%s and %s are one drawing", code, other)
		}
		seen[s] = code
	}
}

func TestSymbolDataIsChecked(t *testing.T) {
	for _, bad := range []string{"paint M 0 0", "fill L 1 1", "fill M 1", "line M 0 0 1 1", "fill M a b", "fill O 1 2", "fill Q 1 2", "fill M 0 0 Z 1 1"} {
		if _, err := parseParts(bad, inkBlack, inkWhite); err == nil {
			t.Errorf("%q is read", bad)
		}
	}
}
