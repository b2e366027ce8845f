package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

// There and back a factor is 1, by way of a third point it is the product; it
// grows with the radius of the dial, and square to the flank the dial never
// shows more than along the turn.
func TestLashFactorProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 1))
	one := big.NewRat(1, 1)
	for range 300 {
		point := func() LashPoint { return LashPoint{big.NewRat(50+r.Int64N(2000), 10), r.IntN(2) == 0} }
		alpha, beta := big.NewRat(145+r.Int64N(110), 10), big.NewRat(r.Int64N(45), 1)
		a, b, c := point(), point(), point()
		factor := func(from, to LashPoint) *big.Rat {
			f := LashFactor(from, to, alpha, beta)
			if f == nil || f.Sign() <= 0 {
				t.Fatalf("%v to %v at %s°, %s°: %v", from, to, alpha, beta, f)
			}
			return f
		}
		if back := new(big.Rat).Mul(factor(a, b), factor(b, a)); back.Cmp(one) != 0 {
			t.Fatalf("%v to %v and back: %s", a, b, back)
		}
		if via := new(big.Rat).Mul(factor(a, b), factor(b, c)); via.Cmp(factor(a, c)) != 0 {
			t.Fatalf("%v by %v to %v: another factor", a, b, c)
		}
		further := LashPoint{new(big.Rat).Add(b.Radius, one), b.Square}
		if factor(a, further).Cmp(factor(a, b)) <= 0 {
			t.Fatalf("%v: no more further out than %v", a, b)
		}
		if factor(a, LashPoint{b.Radius, true}).Cmp(factor(a, LashPoint{b.Radius, false})) >= 0 {
			t.Fatalf("square to the flank at %s°, %s° shows no less", alpha, beta)
		}
	}
}

// What the dial accepts lies inside the limits where they are stated, and one
// mark further does not.
func TestOnDialIsInsideAndWidest(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 2))
	kept := 0
	for range 500 {
		b := quantity.Band{Form: quantity.Range, Unit: quantity.MustUnit([]string{"mm", "in"}[r.IntN(2)]), Low: big.NewRat(r.Int64N(400), 1000)}
		b.High = new(big.Rat).Add(b.Low, big.NewRat(1+r.Int64N(200), 1000))
		factor := big.NewRat(1+r.Int64N(400), 100)
		dial := quantity.Scale{Unit: quantity.MustUnit([]string{"mm", "in"}[r.IntN(2)]), Step: big.NewRat(1, []int64{100, 500, 1000}[r.IntN(3)])}
		exact, m, ok := OnDial(b, factor, dial)
		back := func(x *big.Rat) *big.Rat {
			y := new(big.Rat).Quo(x, factor)
			return quantity.Convert(y, dial.Unit, b.Unit)
		}
		if back(exact.Low).Cmp(b.Low) != 0 || back(exact.High).Cmp(b.High) != 0 {
			t.Fatalf("%s to %s × %s: exact %s to %s", b.Low, b.High, factor, exact.Low, exact.High)
		}
		if !ok {
			continue
		}
		kept++
		less, more := new(big.Rat).Sub(m.Low, dial.Step), new(big.Rat).Add(m.High, dial.Step)
		if back(m.Low).Cmp(b.Low) < 0 || back(m.High).Cmp(b.High) > 0 || back(less).Cmp(b.Low) >= 0 || back(more).Cmp(b.High) <= 0 {
			t.Fatalf("%s to %s %s × %s: %s", b.Low, b.High, b.Unit.Symbol, factor, m.Print(quantity.Point))
		}
	}
	if kept < 300 {
		t.Errorf("only %d kept a mark", kept)
	}
}

// Only how far the two lie apart in ratio counts, not their signs nor which of
// them is the manual's.
func TestFarFromTheoryProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 3))
	for range 300 {
		own, theory := big.NewRat(1+r.Int64N(300), 100), big.NewRat(1+r.Int64N(300), 100)
		got := FarFromTheory(own, theory)
		ratio := new(big.Rat).Quo(own, theory)
		if want := ratio.Cmp(big.NewRat(1, 2)) < 0 || ratio.Cmp(big.NewRat(2, 1)) > 0; got != want {
			t.Fatalf("%s beside %s: %v", own, theory, got)
		}
		if twice := new(big.Rat).Add(theory, theory); FarFromTheory(twice, theory) || FarFromTheory(theory, twice) {
			t.Fatalf("just twice %s is far", theory)
		}
		if FarFromTheory(theory, own) != got || FarFromTheory(new(big.Rat).Neg(own), theory) != got {
			t.Fatalf("%s beside %s: not the same the other way", own, theory)
		}
	}
}

// The backlash that is usual never grows with the pitch, and limits that hold
// a usual one are never strange.
func TestUsualLashProperties(t *testing.T) {
	inch := quantity.MustUnit("in")
	var lastLow, lastHigh *big.Rat
	for hundredths := int64(400); hundredths <= 800; hundredths++ {
		pitch := big.NewRat(hundredths, 100)
		low, high, ok := UsualLash(pitch)
		if !ok || low.Cmp(high) >= 0 {
			t.Fatalf("%s: %v to %v", pitch, low, high)
		}
		if lastLow != nil && (low.Cmp(lastLow) > 0 || high.Cmp(lastHigh) > 0) {
			t.Fatalf("%s: more than for a coarser pitch", pitch)
		}
		lastLow, lastHigh = low, high
		for _, c := range []struct {
			from, to *big.Rat
			want     LashFinding
		}{
			{low, high, LashUsual},
			{new(big.Rat), low, LashUsual},
			{high, big.NewRat(1, 1), LashUsual},
			{new(big.Rat), new(big.Rat).Sub(low, big.NewRat(1, 1e6)), LashSmall},
			{new(big.Rat).Add(high, big.NewRat(1, 1e6)), big.NewRat(1, 1), LashLarge},
		} {
			if got := JudgeLash(quantity.Band{Form: quantity.Range, Low: c.from, High: c.to, Unit: inch}, pitch); got != c.want {
				t.Fatalf("%s to %s at %s: %d, want %d", c.from, c.to, pitch, got, c.want)
			}
		}
	}
}
