package bench

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
)

// Fillings divides a quantity that is poured into fillings of a measure: so many
// full ones, to its highest mark, and a last one between two marks, so that the
// sum lies inside the limits whatever the last one is. The fewest fillings are
// chosen. ok is false where the limits have not two ends above zero, no mark
// lies inside them, or what would be left for the last filling is less than the
// measure's lowest mark.
func Fillings(limits quantity.Band, s quantity.Scale) (full int, last quantity.Marks, ok bool) {
	c := limits.In(s.Unit)
	if c.Low == nil || c.High == nil || s.Step == nil || s.Step.Sign() <= 0 {
		return 0, quantity.Marks{}, false
	}
	low, high := s.Ceil(c.Low), s.Floor(c.High)
	bottom, top := s.Ends()
	if low.Sign() <= 0 || low.Cmp(high) > 0 || top != nil && top.Sign() <= 0 {
		return 0, quantity.Marks{}, false
	}
	if top != nil {
		q := new(big.Rat).Quo(low, top)
		n := new(big.Int).Quo(new(big.Int).Sub(q.Num(), big.NewInt(1)), q.Denom()) // ⌈q⌉ − 1
		if !n.IsInt64() || n.Int64() > 1000 {
			return 0, quantity.Marks{}, false
		}
		full = int(n.Int64())
		poured := new(big.Rat).Mul(top, new(big.Rat).SetInt(n))
		low, high = low.Sub(low, poured), high.Sub(high, poured)
		if high.Cmp(top) > 0 {
			high = top
		}
	}
	if bottom != nil && low.Cmp(bottom) < 0 {
		low = bottom
	}
	return full, quantity.Marks{Scale: s, Low: low, High: high}, low.Cmp(high) <= 0
}
