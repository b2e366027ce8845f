package quantity

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"
)

// A size with a tolerance is a limit wherever a length's limits are read. The
// limits are those of the published examples in tolerance_test.go.
func TestReadTolerance(t *testing.T) {
	for _, c := range []struct{ text, want, written string }{
		{"50 H7", "50.000 to 50.025 mm", "50 H7"},
		{"50 p6", "50.026 to 50.042 mm", "50 p6"},
		{"25 k6", "25.002 to 25.015 mm", "25 k6"},
		{"25k6", "25.002 to 25.015 mm", "25 k6"},
		{"25 mm k6", "25.002 to 25.015 mm", "25 mm k6"},
		{"⌀52 H7", "52.000 to 52.030 mm", "⌀52 H7"},
		{"⌀ 52 H7 ", "52.000 to 52.030 mm", "⌀52 H7"},
		{"Ø52H7", "52.000 to 52.030 mm", "Ø52 H7"},
		{"16 H7", "16.000 to 16.018 mm", "16 H7"},
		{"4 m6", "4.004 to 4.012 mm", "4 m6"},
		{"35 K7", "34.982 to 35.007 mm", "35 K7"}, // one public data set has it wrong
		{"25 N7", "24.972 to 24.993 mm", "25 N7"}, // and this
		{"50 JS7", "49.9875 to 50.0125 mm", "50 JS7"},
		{"6.50 h9", "6.464 to 6.500 mm", "6.50 h9"},
	} {
		b, p := ParseBandOf(c.text, Point, Length)
		if p != nil {
			t.Errorf("%q: %s", c.text, p.Message)
			continue
		}
		if got := strings.ReplaceAll(b.Range(Point), nbsp, " "); got != c.want || b.Form != Range || b.Unit.Symbol != "mm" {
			t.Errorf("%q is %s, want %s", c.text, got, c.want)
		}
		if got := strings.ReplaceAll(b.Written, nbsp, " "); got != c.written {
			t.Errorf("%q is written %q, want %q", c.text, got, c.written)
		}
	}
	b, p := ParseBand("6,5 h9", Comma)
	if p != nil || strings.ReplaceAll(b.Range(Comma), nbsp, " ") != "6,464 to 6,500 mm" {
		t.Errorf("6,5 h9: %v, %v", b.Range(Comma), p)
	}
	// Each in the other system, as a drawing prints them.
	if CompareAlso(band(t, "52 H7"), band(t, "2.0472 to 2.0484 in")) != Agrees || CompareAlso(band(t, "2.0472 to 2.0484 in"), band(t, "52 H7")) != Disagrees {
		t.Error("52 H7 is 2.0472 to 2.0484 in, to the ten-thousandth and no finer")
	}
}

func TestReadToleranceProblems(t *testing.T) {
	for _, c := range []struct {
		text string
		want Dimension
		slug string
		at   string
		fix  string // "" for any
	}{
		{"25 x6", Length, "tolerance-unknown", "x6", "from the drawing"},
		{"25 j6", Length, "tolerance-unknown", "j6", "from the drawing"}, // from memory alone
		{"25 J7", Length, "tolerance-unknown", "J7", ""},
		{"25 K9", Length, "tolerance-unknown", "K9", ""},
		{"25 q6", Length, "tolerance-unknown", "q6", ""},
		{"25 H13", Length, "tolerance-unknown", "13", ""},
		{"25 H4", Length, "tolerance-unknown", "4", ""},
		{"251 H7", Length, "tolerance-unknown", "251", ""},
		{"2.5 H7", Length, "tolerance-unknown", "2.5", ""}, // no formula checks the row
		{"3 m6", Length, "tolerance-unknown", "3", ""},
		{"0 H7", Length, "tolerance-unknown", "0", ""},
		{"25 Js6", Length, "tolerance-unknown", "Js6", "write `25 JS6` for a hole or `25 js6` for a shaft"},
		{"50 H7/p6", Length, "tolerance-unknown", "/p6", "write the one that is measured here, `50 H7` or `50 p6`"},
		{"2 in H7", Length, "tolerance-unknown", "in", ""},
		{"52 H7", Torque, "measure-kind", "52 H7", "write it in N·m"},
		{"52,5 H7", None, "decimal-mark", "52,5", "write `52.5 H7`"},
		{"52. H7", None, "quantity-malformed", "52.", "write `52 H7`"},
		{"52 H", None, "measure-unknown", "H", ""},
		{"52 HH7", None, "quantity-malformed", "HH7", ""},
	} {
		_, p := ParseBandOf(c.text, Point, c.want)
		if p == nil {
			t.Errorf("%q is let through", c.text)
			continue
		}
		if p.Slug != c.slug || c.text[p.Start:p.End] != c.at || !strings.Contains(p.Fix, c.fix) {
			t.Errorf("%q: %s at %q, %s; want %s at %q, %s", c.text, p.Slug, c.text[p.Start:p.End], p.Fix, c.slug, c.at, c.fix)
		}
	}
	if _, p := ParseValue("52 H7", Point); p == nil {
		t.Error("limits pass for one value")
	}
}

// Of any size, letter and grade: either it is refused, or its limits stand at
// the deviations from the size, and no reading on a scale that they accept
// inward lies outside them.
func TestReadToleranceProperty(t *testing.T) {
	r := rand.New(rand.NewPCG(286, 1))
	read := 0
	for range 4000 {
		size := big.NewRat(int64(1+r.IntN(2600)), 10)
		letter := string(rune("ah"[r.IntN(2)] + byte(r.IntN(12))))
		if r.IntN(2) == 0 {
			letter = strings.ToUpper(letter)
		}
		tol := Tolerance{size, letter, 3 + r.IntN(12)}
		text := fmt.Sprintf("%s %s%d", size.FloatString(1), tol.Letter, tol.Grade)
		b, p := ParseBand(text, Point)
		lower, upper, err := tol.Deviations()
		if p != nil {
			if err == nil && size.Cmp(big.NewRat(3, 1)) > 0 && letter != "j" {
				t.Fatalf("%s: %s", text, p.Message)
			}
			continue
		}
		read++
		for _, side := range []struct{ end, deviation *big.Rat }{{b.Low, lower}, {b.High, upper}} {
			if d := new(big.Rat).Sub(side.end, size); err != nil || times(d, thousand).Cmp(side.deviation) != 0 {
				t.Fatalf("%s: %s stands %s from the size", text, b.Range(Point), d.RatString())
			}
		}
		if m, ok := b.Inward(scale(t, "mm", "0", "300", "0.005")); ok && (m.Low.Cmp(b.Low) < 0 || m.High.Cmp(b.High) > 0) {
			t.Fatalf("%s accepts %s", text, m.Print(Point))
		}
	}
	if read < 500 {
		t.Errorf("only %d were read", read)
	}
}
