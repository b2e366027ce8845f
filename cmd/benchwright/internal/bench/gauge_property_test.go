package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

// A guard of w × U takes just that from each side, and given back it is the
// limits again; more uncertainty never accepts more, and never has the better
// ratio. In another unit it is the same.
func TestGuardProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(10, 1))
	for range 500 {
		b := quantity.Band{Form: quantity.Range, Unit: quantity.MustUnit("mm"), Low: big.NewRat(r.Int64N(1000), 1000)}
		b.High = new(big.Rat).Add(b.Low, big.NewRat(1+r.Int64N(300), 1000))
		u := quantity.Value{Number: quantity.Number{Value: big.NewRat(1+r.Int64N(60), 1000)}, Unit: b.Unit}
		w := []*big.Rat{num(t, "1"), num(t, "0.825")}[r.IntN(2)]
		g, ok := Guard(b, w, u)
		taken := new(big.Rat).Mul(w, u.Value)
		twice := new(big.Rat).Add(taken, taken)
		if ok != (twice.Cmp(b.Width()) <= 0) {
			t.Fatalf("%s wide, %s taken from each side: %v", b.Width(), taken, ok)
		}
		ratio, _ := UncertaintyRatio(b, u)
		if back := new(big.Rat).Mul(ratio, new(big.Rat).Add(u.Value, u.Value)); back.Cmp(b.Width()) != 0 {
			t.Fatalf("a ratio of %s for ±%s in %s", ratio, u.Value, b.Width())
		}
		inch := quantity.Value{Number: quantity.Number{Value: quantity.Convert(u.Value, u.Unit, quantity.MustUnit("in"))}, Unit: quantity.MustUnit("in")}
		if same, _ := UncertaintyRatio(b.In(quantity.MustUnit("µm")), inch); same.Cmp(ratio) != 0 {
			t.Fatalf("in other units the ratio is %s, not %s", same, ratio)
		}
		if !ok {
			continue
		}
		if new(big.Rat).Sub(g.Low, taken).Cmp(b.Low) != 0 || new(big.Rat).Add(g.High, taken).Cmp(b.High) != 0 {
			t.Fatalf("%s to %s guarded by %s: %s to %s", b.Low, b.High, taken, g.Low, g.High)
		}
		more := u
		more.Value = new(big.Rat).Mul(u.Value, num(t, "1.1"))
		if h, ok := Guard(b, w, more); ok && (h.Low.Cmp(g.Low) < 0 || h.High.Cmp(g.High) > 0) {
			t.Fatal("more uncertainty accepts more")
		}
		if worse, _ := UncertaintyRatio(b, more); worse.Cmp(ratio) >= 0 {
			t.Fatal("more uncertainty has the better ratio")
		}
	}
}

// Twice as fine marks are twice as many, in whatever unit the limits are.
func TestMarksAcrossProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(10, 2))
	for range 300 {
		b := quantity.Band{Form: quantity.Range, Unit: quantity.MustUnit("mm"), Low: big.NewRat(r.Int64N(1000), 1000)}
		b.High = new(big.Rat).Add(b.Low, big.NewRat(1+r.Int64N(300), 1000))
		s := quantity.Scale{Unit: quantity.MustUnit("mm"), Step: big.NewRat(1+r.Int64N(50), 1000)}
		n, _ := MarksAcross(b, s)
		if width := new(big.Rat).Mul(n, s.Step); width.Cmp(b.Width()) != 0 {
			t.Fatalf("%s marks of %s are not %s", n, s.Step, b.Width())
		}
		if inch, _ := MarksAcross(b.In(quantity.MustUnit("in")), s); inch.Cmp(n) != 0 {
			t.Fatalf("%s marks, and %s for the same in inches", n, inch)
		}
		fine := s
		fine.Step = new(big.Rat).Quo(s.Step, big.NewRat(2, 1))
		if twice, _ := MarksAcross(b, fine); twice.Cmp(new(big.Rat).Add(n, n)) != 0 {
			t.Fatalf("%s marks, and %s twice as fine", n, twice)
		}
	}
}
