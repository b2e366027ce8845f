package check

import (
	"math/big"
	"testing"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
)

// The mend for a pack that cannot be made prints all its lengths with the same
// digits, as many as the finest of them needs. What is to be bought goes beside
// the thickest shim: 0.80 − 0.50, 0.240 − 0.125.
func TestStacksBesideDigits(t *testing.T) {
	for _, c := range []struct {
		unit, thick string // thicknesses of the stock: 0.10, thick
		want, mark  string
		fix         string
	}{
		{"mm", "0.50", "0.80", "0.01", "the stock can make 0.60\u00a0mm (0.50 + 0.10) and 1.00\u00a0mm (0.50 + 0.50); buy shims of 0.30\u00a0mm, or widen `within:`"},
		{"mm", "0.125", "0.24", "0.01", "the stock can make 0.225\u00a0mm (0.125 + 0.100) and 0.250\u00a0mm (0.125 + 0.125); buy shims of 0.115\u00a0mm, or widen `within:`"},
	} {
		rat := func(s string) *big.Rat { r, _ := new(big.Rat).SetString(s); return r }
		u := quantity.MustUnit(c.unit)
		stacks, ok := bench.NewStacks([]bench.Thickness{{Value: rat("0.10")}, {Value: rat(c.thick)}}, 1, 2)
		if !ok {
			t.Fatal("no stacks")
		}
		p := &pass{Card: &card.Card{}}
		got := p.stacksBeside(&card.Shim{Shim: &procedure.Shim{}, Unit: u, Stacks: stacks, Miss: &card.ShimMiss{Want: rat(c.want)},
			Micrometer: &shop.Gauge{Scale: quantity.Scale{Unit: u, Step: rat(c.mark)}}})
		if got != c.fix {
			t.Errorf("got  %q, want %q", got, c.fix)
		}
	}
}
