package bench

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

func TestFillings(t *testing.T) {
	for _, c := range []struct{ limits, span, marks, want string }{
		{"1.20 to 1.30 L", "0 to 2 L", "0.02 L", "0, then 1.20 to 1.30 L"},
		{"1.20 to 1.30 L", "0 to 2 L", "0.05 L", "0, then 1.20 to 1.30 L"},
		{"2.2 to 2.4 L", "0 to 1 L", "0.05 L", "2, then 0.20 to 0.40 L"},
		{"2.0 to 2.1 L", "0 to 1 L", "0.05 L", "1, then 1.00 to 1.00 L"}, // a full one is the last one
		{"1.95 to 2.05 L", "0 to 1 L", "0.05 L", "1, then 0.95 to 1.00 L"},
		{"2 to 2.2 US qt", "0 to 1 L", "0.02 L", "1, then 0.90 to 1.00 L"}, // 1.893 to 2.082 L
		{"2.05 to 2.08 L", "0.1 to 1 L", "0.01 L", ""},                     // below the lowest mark
		{"1.21 to 1.24 L", "0 to 2 L", "0.05 L", ""},                       // between two marks
		{"max 1.3 L", "0 to 2 L", "0.05 L", ""},
		{"at least 1.3 L", "0 to 2 L", "0.05 L", ""},
		{"0 to 1.3 L", "0 to 2 L", "0.05 L", ""},
		{"-1 to 1.3 L", "0 to 2 L", "0.05 L", ""},
		{"1 to 1.3 L", "-2 to 0 L", "0.05 L", ""},
		{"1.1 to 1.3 L", "1.1 to 1.3 L", "0.05 L", "0, then 1.10 to 1.30 L"}, // the marks at the ends of both
		{"1001 to 1002 L", "0 to 1 L", "0.05 L", "1000, then 1.00 to 1.00 L"},
		{"1002 to 1003 L", "0 to 1 L", "0.05 L", ""}, // nobody counts so far
		{"1.3 L", "0 to 2 L", "0.05 L", ""},
		{"40 to 60 g", "0 to 2 L", "0.05 L", ""},
	} {
		full, last, ok := Fillings(band(t, c.limits), scale(t, c.span, c.marks))
		got := ""
		if ok {
			got = strings.ReplaceAll(fmt.Sprint(full)+", then "+last.Print(quantity.Point), "\u00a0", " ")
		}
		if got != c.want {
			t.Errorf("%s in %s by %s: %q, want %q", c.limits, c.span, c.marks, got, c.want)
		}
	}
	for name, s := range map[string]quantity.Scale{"no marks": {Unit: quantity.MustUnit("L")}, "marks of no width": {Unit: quantity.MustUnit("L"), Step: new(big.Rat)}} {
		if full, last, ok := Fillings(band(t, "1 to 1.3 L"), s); ok {
			t.Errorf("%s: %d, then %v", name, full, last)
		}
	}
	if full, last, ok := Fillings(band(t, "51 to 51.3 L"), quantity.Scale{Unit: quantity.MustUnit("L"), Step: num(t, "0.1")}); !ok || full != 0 || last.High.Cmp(num(t, "51.3")) != 0 {
		t.Errorf("a measure without an end: %d, then %v", full, last)
	}
}

// However the last jug is filled, the sum lies inside the limits; the jug has
// every mark that is named, and no fewer fillings would do.
func TestFillingsNeverOutside(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	made := 0
	for range 2000 {
		s := quantity.Scale{Unit: quantity.MustUnit("L"), Step: big.NewRat(1, []int64{10, 20, 50, 100}[rng.IntN(4)]), Low: big.NewRat(rng.Int64N(3), 10), High: big.NewRat(5+rng.Int64N(45), 10)}
		low := big.NewRat(50+rng.Int64N(4000), 300)
		b := quantity.Band{Form: quantity.Range, Low: low, High: new(big.Rat).Add(low, big.NewRat(rng.Int64N(300), 700)), Unit: s.Unit}
		full, last, ok := Fillings(b, s)
		if !ok {
			continue
		}
		made++
		bottom, top := s.Ends()
		if last.Low.Cmp(bottom) < 0 || last.High.Cmp(top) > 0 || last.Low.Sign() <= 0 {
			t.Fatalf("%v in %v: the last jug is %s to %s", b, s, last.Low, last.High)
		}
		poured := new(big.Rat).Mul(top, big.NewRat(int64(full), 1))
		if new(big.Rat).Add(poured, last.Low).Cmp(b.Low) < 0 || new(big.Rat).Add(poured, last.High).Cmp(b.High) > 0 {
			t.Fatalf("%s to %s: %d jugs of %s and %s to %s", b.Low, b.High, full, top, last.Low, last.High)
		}
		if poured.Cmp(b.Low) >= 0 {
			t.Fatalf("%s: %d full jugs of %s are enough already", b.Low, full, top)
		}
	}
	if made < 1000 {
		t.Errorf("only %d of 2000 could be poured", made)
	}
}
