package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
)

// A wrench bought as NeedFor describes it is chosen, keeps the torque inside
// its limits and is not set too low; set to the target itself it could be no
// less accurate.
func TestNeedForProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	for range 500 {
		nominal := quantity.Number{Value: big.NewRat(10+r.Int64N(4000), 10)}
		b := quantity.Band{Form: quantity.PlusMinus, Nominal: &nominal, Unit: newtonMeter}
		b.Low = new(big.Rat).Mul(nominal.Value, big.NewRat(80+r.Int64N(20), 100))
		b.High = new(big.Rat).Mul(nominal.Value, big.NewRat(101+r.Int64N(20), 100))
		n := NeedFor(b, newtonMeter)
		// The target lies on a mark, and the scale ends at its limits.
		step := new(big.Rat).Quo(nominal.Value, new(big.Rat).SetInt(ceil(new(big.Rat).Quo(nominal.Value, n.Step))))
		w := &shop.Wrench{Scale: quantity.Scale{Unit: n.Unit, Low: n.Low, High: n.High, Step: step}, Accuracy: n.Accuracy}
		c, _ := ChooseWrench(b, nil, []*shop.Wrench{w})
		if c == nil || !c.Keeps || c.LowInRange || c.Setting.Cmp(nominal.Value) != 0 {
			t.Fatalf("%s to %s: %+v of %+v", b.Low, b.High, c, n)
		}
		w.Accuracy = new(big.Rat).Mul(n.Accuracy, big.NewRat(1001, 1000))
		if c, _ := ChooseWrench(b, nil, []*shop.Wrench{w}); n.Accuracy.Sign() > 0 && c.Keeps {
			t.Fatalf("%s to %s: a worse accuracy than %s keeps", b.Low, b.High, n.Accuracy)
		}
		w.Scale.High = n.Longest
		if c, _ := ChooseWrench(b, nil, []*shop.Wrench{w}); c.LowInRange {
			t.Fatalf("%s is low on a wrench of %s", c.Setting, n.Longest)
		}
		w.Scale.High = new(big.Rat).Add(n.Longest, step)
		if c, _ := ChooseWrench(b, nil, []*shop.Wrench{w}); !c.LowInRange {
			t.Fatalf("%s is not low on a wrench of %s", c.Setting, w.Scale.High)
		}
		// Marks as fine as said always leave one inside.
		if _, ok := b.Inward(quantity.Scale{Unit: n.Unit, Step: n.Step}); !ok {
			t.Fatalf("%s to %s: no mark of %s", b.Low, b.High, n.Step)
		}
	}
}

// ceil returns the whole number at or above x.
func ceil(x *big.Rat) *big.Int {
	s := quantity.Scale{Step: big.NewRat(1, 1)}
	return s.Ceil(x).Num()
}
