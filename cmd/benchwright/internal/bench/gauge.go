package bench

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
)

// A Fitness is how well a gauge suits its limits.
type Fitness uint8

// The fitnesses.
const (
	Fine   Fitness = iota
	Coarse         // a warning
	TooCoarse
)

// MarksAcross returns how many marks of the scale the width of the limits is:
// width ÷ step, a maximum counted from zero. ok is false for a minimum and a
// bare value, which have no width, and for a scale of another dimension.
func MarksAcross(limits quantity.Band, s quantity.Scale) (marks *big.Rat, ok bool) {
	width := limits.In(s.Unit).Width()
	if width == nil || s.Step == nil || s.Step.Sign() <= 0 {
		return nil, false
	}
	return width.Quo(width, s.Step), true
}

// JudgeMarks returns how well a gauge suits limits that are marks wide: under
// refuse it is too coarse, under warn coarse. The shop states both, 5 and 2 as
// a start (common practice); one that is nil is not applied.
func JudgeMarks(marks, warn, refuse *big.Rat) Fitness {
	switch {
	case refuse != nil && marks.Cmp(refuse) < 0:
		return TooCoarse
	case warn != nil && marks.Cmp(warn) < 0:
		return Coarse
	}
	return Fine
}

// UncertaintyRatio returns the width of the limits over twice the gauge's
// expanded uncertainty, which is to be 4 or more (ANSI/NCSL Z540.3 5.3). ok is
// false where the limits have no width or the uncertainty is not above zero.
func UncertaintyRatio(limits quantity.Band, uncertainty quantity.Value) (ratio *big.Rat, ok bool) {
	u := spread(uncertainty, limits.Unit)
	width := limits.Width()
	if width == nil || u == nil || u.Sign() <= 0 {
		return nil, false
	}
	return width.Quo(width, u.Add(u, u)), true
}

// Guard returns the limits narrowed by w × uncertainty on each side that is
// not open, w being 1 or, after ISO 14253-1:2017 (secondary source), 0.825. ok
// is false where nothing is left between them.
func Guard(limits quantity.Band, w *big.Rat, uncertainty quantity.Value) (guarded quantity.Band, ok bool) {
	u := spread(uncertainty, limits.Unit)
	if u == nil {
		return quantity.Band{}, false
	}
	u.Mul(u, w)
	out := quantity.Band{Form: limits.Form, Unit: limits.Unit, Nominal: limits.Nominal}
	if limits.Low != nil {
		out.Low = new(big.Rat).Add(limits.Low, u)
	}
	if limits.High != nil {
		out.High = new(big.Rat).Sub(limits.High, u)
	}
	if out.Low != nil && out.High != nil && out.Low.Cmp(out.High) > 0 {
		return quantity.Band{}, false
	}
	return out, out.Low != nil || out.High != nil
}

// spread returns an uncertainty in unit u, as the difference that it is.
func spread(uncertainty quantity.Value, u quantity.Unit) *big.Rat {
	return quantity.Convert(uncertainty.Value, uncertainty.Unit.Difference(), u.Difference())
}
