package bench

import (
	"math/big"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

func TestInterference(t *testing.T) {
	for _, c := range []struct{ fit, least, most, source string }{
		{"50 H7/p6", "1", "42", "published example"},
		{"50 H7/s6", "18", "59", "Bhandari, Design of Machine Elements, ex. 3.3: 0.018 to 0.059 mm"},
		{"50 P7/h6", "1", "42", "by the rule of the shift: as 50 H7/p6"},
		{"50 H7/g6", "-50", "-9", "from memory"},
	} {
		hole, shaft, err := quantity.ParseFit(c.fit, quantity.Point)
		if err != nil {
			t.Errorf("%s: %v", c.fit, err)
			continue
		}
		least, most, err := Interference(hole, shaft)
		if err != nil || least.Cmp(num(t, c.least)) != 0 || most.Cmp(num(t, c.most)) != 0 {
			t.Errorf("%s (%s): %v to %v (%v), want %s to %s", c.fit, c.source, least, most, err, c.least, c.most)
		}
	}
	if _, _, err := Interference(quantity.Tolerance{Size: num(t, "50"), Letter: "H", Grade: 7}, quantity.Tolerance{Size: num(t, "51"), Letter: "p", Grade: 6}); err == nil {
		t.Error("a fit of two sizes")
	}
	of := func(size, letter string, grade int) quantity.Tolerance {
		tol := quantity.Tolerance{Letter: letter, Grade: grade}
		if size != "" {
			tol.Size = num(t, size)
		}
		return tol
	}
	for _, f := range [][2]quantity.Tolerance{
		{of("50", "h", 7), of("50", "p", 6)}, {of("50", "H", 7), of("50", "P", 6)}, {of("50", "p", 6), of("50", "H", 7)},
		{of("", "H", 7), of("50", "p", 6)}, {of("50", "H", 7), of("", "p", 6)}, {of("50", "H", 14), of("50", "p", 6)}, {of("50", "H", 7), of("50", "x", 6)},
	} {
		if least, most, err := Interference(f[0], f[1]); err == nil {
			t.Errorf("%v with %v: %s to %s", f[0], f[1], least, most)
		}
	}
	for _, s := range []string{"2 H7/p6", "50 H7/j6"} {
		hole, shaft, _ := quantity.ParseFit(s, quantity.Point)
		if _, _, err := Interference(hole, shaft); err != quantity.ErrToleranceRow {
			t.Errorf("%s, whose rows no formula checks: %v", s, err)
		}
	}
}

// From K on, a hole of grade 7 with a shaft h6 fits as H7 does with the same
// letter of a shaft (ISO 286-1, the rule of the shift).
func TestInterferenceMirrors(t *testing.T) {
	for tenths := int64(35); tenths <= 2500; tenths += 13 {
		size := big.NewRat(tenths, 10)
		for _, letter := range []string{"k", "m", "n", "p", "r", "s"} {
			a, b, err := Interference(quantity.Tolerance{Size: size, Letter: "H", Grade: 7}, quantity.Tolerance{Size: size, Letter: letter, Grade: 6})
			c, d, other := Interference(quantity.Tolerance{Size: size, Letter: strings.ToUpper(letter), Grade: 7}, quantity.Tolerance{Size: size, Letter: "h", Grade: 6})
			if err != nil || other != nil || a.Cmp(c) != 0 || b.Cmp(d) != 0 {
				t.Fatalf("%s H7/%s6 and its mirror differ", size, letter)
			}
		}
	}
}

// The room between the least and the most interference is the widths of the
// two tolerances, and a larger shaft letter never fits looser.
func TestInterferenceProperties(t *testing.T) {
	for tenths := int64(35); tenths <= 2500; tenths += 29 {
		size := big.NewRat(tenths, 10)
		var last *big.Rat
		for _, letter := range []string{"d", "e", "f", "g", "h", "k", "m", "n", "p", "r", "s"} {
			hole, shaft := quantity.Tolerance{Size: size, Letter: "H", Grade: 7}, quantity.Tolerance{Size: size, Letter: letter, Grade: 6}
			least, most, err := Interference(hole, shaft)
			if err != nil {
				t.Fatal(err)
			}
			room := new(big.Rat)
			for _, one := range []quantity.Tolerance{hole, shaft} {
				low, high, _ := one.Deviations()
				room.Add(room, high.Sub(high, low))
			}
			if new(big.Rat).Sub(most, least).Cmp(room) != 0 {
				t.Fatalf("%s H7/%s6: %s to %s, widths of %s", size, letter, least, most, room)
			}
			if last != nil && least.Cmp(last) <= 0 {
				t.Fatalf("%s H7/%s6 is no tighter than the letter before", size, letter)
			}
			last = least
		}
	}
}
