package bench

import (
	"math/big"
	"math/rand/v2"
	"slices"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

// Of random passes that can be made: each is a mark on the scale, as near to
// its share as any, and above the one before; the last two are the setting.
func TestPassesProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 1))
	made := 0
	for range 1000 {
		step := big.NewRat(1, []int64{1, 2, 4, 10}[r.IntN(4)])
		s := quantity.Scale{Unit: newtonMeter, Step: step}
		s.Low = new(big.Rat).Mul(step, big.NewRat(r.Int64N(60), 1))
		s.High = new(big.Rat).Add(s.Low, new(big.Rat).Mul(step, big.NewRat(100+r.Int64N(300), 1)))
		setting := new(big.Rat).Add(s.Low, new(big.Rat).Mul(step, big.NewRat(1+r.Int64N(100), 1)))
		var per []int64
		for range r.IntN(4) {
			per = append(per, 1+r.Int64N(99))
		}
		slices.Sort(per)
		var shares []*big.Rat
		for _, x := range append(slices.Compact(per), 100) {
			shares = append(shares, big.NewRat(x, 100))
		}
		passes, fault, at := Passes(setting, shares, s)
		if fault != PassesGood {
			want := new(big.Rat).Mul(setting, shares[at])
			if fault == PassLow && want.Cmp(new(big.Rat).Add(s.Low, step)) >= 0 || fault != PassLow && fault != PassSame {
				t.Fatalf("%s of %s on marks of %s: fault %d", shares[at], setting, step, fault)
			}
			continue
		}
		made++
		if len(passes) != len(shares)+1 {
			t.Fatalf("%d passes of %d shares", len(passes), len(shares))
		}
		half := new(big.Rat).Quo(step, big.NewRat(2, 1))
		last := new(big.Rat)
		for i, p := range passes {
			round := i == len(shares)
			if p.Round != round || round && p.Setting.Cmp(setting) != 0 || !round && p.Setting.Cmp(last) <= 0 {
				t.Fatalf("pass %d of %s: %s after %s", i, setting, p.Setting, last)
			}
			off := new(big.Rat).Sub(p.Setting, new(big.Rat).Mul(setting, p.Share))
			if off.Abs(off).Cmp(half) > 0 || !new(big.Rat).Quo(p.Setting, step).IsInt() || p.Setting.Cmp(s.Low) < 0 || p.Setting.Cmp(s.High) > 0 {
				t.Fatalf("%s of %s on marks of %s from %s: %s", p.Share, setting, step, s.Low, p.Setting)
			}
			last = p.Setting
		}
		if passes[len(shares)-1].Setting.Cmp(setting) != 0 {
			t.Fatalf("the last cross pass is %s, not %s", passes[len(shares)-1].Setting, setting)
		}
	}
	if made < 300 {
		t.Errorf("only %d could be made", made)
	}
}

// A random order is good where it is a permutation; what is left out, named
// twice or not there is named, and nothing else.
func TestCheckOrderProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 2))
	for range 500 {
		n := 2 + r.IntN(20)
		order := r.Perm(n)
		for i := range order {
			order[i]++
		}
		if f := CheckOrder(n, order); !f.Good() {
			t.Fatalf("%v: %+v", order, f)
		}
		// One fault alone is enough.
		for what, bad := range map[string][]int{"outside": append(slices.Clone(order), 0), "twice": append(slices.Clone(order), order[0]), "missing": order[1:]} {
			if f := CheckOrder(n, bad); f.Good() {
				t.Fatalf("%v, one %s: good", bad, what)
			}
		}
		at := r.IntN(n)
		was := order[at]
		order[at] = order[(at+1)%n]
		if f := CheckOrder(n, order); !slices.Equal(f.Twice, []int{order[at]}) || !slices.Equal(f.Missing, []int{was}) || len(f.Outside) > 0 {
			t.Fatalf("%v: %+v", order, f)
		}
		order[at] = n + 1 + r.IntN(5)
		if f := CheckOrder(n, order); !slices.Equal(f.Outside, []int{order[at]}) || !slices.Equal(f.Missing, []int{was}) || len(f.Twice) > 0 {
			t.Fatalf("%v: %+v", order, f)
		}
	}
}
