package unit

import (
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

func etched(t *testing.T, nominal, step, tolerance string, shorter bool) *Table {
	t.Helper()
	value := func(text string) quantity.Value {
		v, p := quantity.ParseValue(text, quantity.Point)
		if p != nil {
			t.Fatal(text, p.Message)
		}
		return v
	}
	return &Table{Nominal: value(nominal), PerMark: value(step), Tolerance: value(tolerance), Shorter: shorter, First: -5, Last: 5}
}

// same reports whether two bands have the same limits and the same aim, exactly.
func same(a, b quantity.Band) bool {
	b = b.In(a.Unit)
	return a.Low.Cmp(b.Low) == 0 && a.High.Cmp(b.High) == 0 && a.Target().Cmp(b.Target()) == 0
}

func TestTableBand(t *testing.T) {
	for _, c := range []struct {
		nominal, step, tolerance string
		shorter                  bool
		mark                     int
		want                     string
	}{
		{"62.00 mm", "0.01 mm", "0.02 mm", false, 2, "62.00 to 62.04 mm"},
		{"62.00 mm", "0.01 mm", "0.02 mm", true, 2, "61.96 to 62.00 mm"},
		{"62.00 mm", "0.01 mm", "0.02 mm", false, -3, "61.95 to 61.99 mm"},
		{"62.00 mm", "0.01 mm", "0.02 mm", true, 0, "61.98 to 62.02 mm"},
		{"2.5 in", "0.001 in", "0.002 in", false, 1, "2.499 to 2.503 in"},
		{"25.4 mm", "0.001 in", "0.002 in", false, 1, "25.3746 to 25.4762 mm"},
	} {
		b := etched(t, c.nominal, c.step, c.tolerance, c.shorter).Band(c.mark)
		want, p := quantity.ParseBand(c.want, quantity.Point)
		if p != nil || !same(b, want) {
			t.Errorf("%s, mark %d: %s, want %s", c.nominal, c.mark, strings.ReplaceAll(b.Range(quantity.Point), "\u00a0", " "), c.want)
		}
	}
}

// Each row lies one step from the row before it, all are equally wide, and a
// table of the other sense is the same one read backward.
func TestTableBandProperties(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 5))
	for range 50 {
		a := etched(t, "60 mm", "0.01 mm", "0.02 mm", false)
		a.Nominal.Value = big.NewRat(int64(rng.IntN(90000)), 1000)
		a.PerMark.Value = big.NewRat(int64(1+rng.IntN(50)), 1000)
		a.Tolerance.Value = big.NewRat(int64(rng.IntN(50)), 1000)
		other := *a
		other.Shorter = true
		for _, m := range a.Marks() {
			x, y := a.Band(m), a.Band(m+1)
			if d := new(big.Rat).Sub(y.Low, x.Low); d.Cmp(a.PerMark.Value) != 0 || y.Width().Cmp(x.Width()) != 0 {
				t.Errorf("mark %d: %s apart", m, d)
			}
			if !same(x, other.Band(-m)) {
				t.Errorf("mark %d is not %d of the other sense", m, -m)
			}
		}
	}
}
