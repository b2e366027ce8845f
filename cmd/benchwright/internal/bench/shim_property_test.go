package bench

import (
	"math/big"
	"math/rand/v2"
	"slices"
	"testing"
)

// reading + rate·change = aim, whichever way the shim works; more shim is
// called for where it opens and the reading is small, less where it closes.
func TestShimChangeProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	for range 500 {
		aim, reading := big.NewRat(r.Int64N(100), 100), big.NewRat(r.Int64N(100), 100)
		rate := big.NewRat(1+r.Int64N(2000), 1000)
		if r.IntN(2) == 0 {
			rate.Neg(rate)
		}
		change, ok := ShimChange(aim, reading, rate)
		if !ok {
			t.Fatalf("rate %s is refused", rate)
		}
		after := new(big.Rat).Mul(rate, change)
		if after.Add(after, reading).Cmp(aim) != 0 {
			t.Fatalf("aim %s, reading %s, rate %s: %s leads to %s", aim, reading, rate, change, after)
		}
		if change.Sign() != rate.Sign()*aim.Cmp(reading) {
			t.Fatalf("aim %s, reading %s, rate %s: the change is %s", aim, reading, rate, change)
		}
		inPlace := big.NewRat(r.Int64N(200), 100)
		wanted, _ := wantedPack(inPlace, aim, reading, rate)
		if wanted.Sub(wanted, change).Cmp(inPlace) != 0 {
			t.Fatalf("in place %s, change %s: %s", inPlace, change, wanted)
		}
	}
}

// A part that goes and comes back leaves the pack as it was, by way of a third
// part too; the same mark changes nothing.
func TestMarkChangeProperties(t *testing.T) {
	for old := int64(-6); old <= 6; old++ {
		for now := int64(-6); now <= 6; now++ {
			for _, step := range []string{"-0.001", "0.01"} {
				at := func(a, b int64) *big.Rat { return MarkChange(big.NewRat(a, 1), big.NewRat(b, 1), num(t, step)) }
				sum := new(big.Rat).Add(at(old, now), at(now, old))
				via := new(big.Rat).Add(at(old, 2), at(2, now))
				if sum.Sign() != 0 || via.Cmp(at(old, now)) != 0 || (at(old, now).Sign() == 0) != (old == now) {
					t.Fatalf("%d to %d by %s: %s", old, now, step, at(old, now))
				}
			}
		}
	}
}

// Layers are the same shims in another order, with the thickest outside.
func TestLayersProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 2))
	s := stacks(t, thicknesses(t, metricStock), 1, 6)
	for range 300 {
		stack, ok := s.Make(big.NewRat(10+r.Int64N(290), 100), num(t, "0.01"), Side(r.IntN(2)))
		if !ok {
			continue
		}
		if !slices.IsSortedFunc(stack.Shims, func(a, b *big.Rat) int { return b.Cmp(a) }) {
			t.Fatalf("%s is not thickest first", stack.text())
		}
		sum := new(big.Rat)
		for _, x := range stack.Shims {
			sum.Add(sum, x)
		}
		if sum.Cmp(stack.Total) != 0 {
			t.Fatalf("%s is said to be %s", stack.text(), stack.Total.FloatString(2))
		}
		layers := stack.Layers()
		if n := len(layers); layers[0].Cmp(stack.Shims[0]) != 0 || n > 1 && layers[n-1].Cmp(stack.Shims[1]) != 0 {
			t.Fatalf("%s: a thin one lies outside", stack.text())
		}
		slices.SortFunc(layers, func(a, b *big.Rat) int { return b.Cmp(a) })
		if !slices.EqualFunc(layers, stack.Shims, func(a, b *big.Rat) bool { return a.Cmp(b) == 0 }) {
			t.Fatalf("%s: other shims when laid", stack.text())
		}
	}
}

// The one pack that serves for a span is within of every pack in it, however it
// measures; whole steps are as near to the middle as any.
func TestServeProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 3))
	s := stacks(t, thicknesses(t, metricStock), 1, 6)
	served := 0
	for range 1000 {
		rule := PackRule{Stacks: s, Within: big.NewRat(1+r.Int64N(50), 1000), Over: big.NewRat(r.Int64N(15), 1000), Safe: Side(r.IntN(2))}
		if r.IntN(2) == 0 {
			rule.Round = big.NewRat(1+r.Int64N(5), 100)
		}
		low := big.NewRat(300+r.Int64N(1500), 1000)
		high := new(big.Rat).Add(low, big.NewRat(r.Int64N(40), 1000))
		p, fault := rule.Serve(low, high)
		if fault != PackGood {
			continue
		}
		served++
		for _, made := range []*big.Rat{p.From, p.Total, p.To} {
			for _, want := range []*big.Rat{low, high} {
				if d := new(big.Rat).Sub(made, want); d.Abs(d).Cmp(rule.Within) > 0 {
					t.Fatalf("%s for %s to %s: more than %s off", made.FloatString(3), low.FloatString(3), high.FloatString(3), rule.Within.FloatString(3))
				}
			}
		}
		if span := new(big.Rat).Sub(p.To, p.From); span.Cmp(new(big.Rat).Add(rule.Over, rule.Over)) != 0 {
			t.Fatalf("may measure %s to %s", p.From, p.To)
		}
		if rule.Round != nil {
			middle := new(big.Rat).Add(low, high)
			off := new(big.Rat).Sub(p.Total, middle.Quo(middle, big.NewRat(2, 1)))
			if !new(big.Rat).Quo(p.Total, rule.Round).IsInt() || off.Abs(off).Cmp(new(big.Rat).Quo(rule.Round, big.NewRat(2, 1))) > 0 {
				t.Fatalf("%s is not the nearest step of %s", p.Total.FloatString(3), rule.Round.FloatString(2))
			}
		}
	}
	if served < 200 {
		t.Errorf("only %d were served", served)
	}
}

// 0.92 can be made of three shims in just two ways, recomputed by hand: of two
// as good the one with the thickest single shim is taken.
func TestMakeTwoWays(t *testing.T) {
	stock := thicknesses(t, metricStock)
	var ways []string
	for i, a := range stock {
		for j, b := range stock[:i+1] {
			for _, c := range stock[:j+1] {
				sum := new(big.Rat).Add(a.Value, b.Value)
				if sum.Add(sum, c.Value).Cmp(num(t, "0.92")) == 0 {
					ways = append(ways, Stack{Shims: []*big.Rat{a.Value, b.Value, c.Value}}.text())
				}
			}
		}
	}
	if !slices.Equal(ways, []string{"0.40+0.40+0.12", "0.50+0.30+0.12"}) {
		t.Errorf("0.92 is %q", ways)
	}
	if got, _ := stacks(t, stock, 1, 6).Make(num(t, "0.92"), new(big.Rat), Thinner); got.text() != ways[1] {
		t.Errorf("taken is %s", got.text())
	}
}
