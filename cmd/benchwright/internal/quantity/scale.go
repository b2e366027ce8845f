package quantity

import "math/big"

// Marks are limits that lie on marks of a scale, in its unit; nil for an open
// side.
type Marks struct {
	Scale     Scale
	Low, High *big.Rat
}

// Floor returns the highest mark at or below x, counted from zero, even beyond
// the ends of the scale. The step must be above zero.
func (s Scale) Floor(x *big.Rat) *big.Rat {
	q := per(x, s.Step)
	n := new(big.Int).Div(q.Num(), q.Denom()) // Div rounds down for a positive divisor
	return new(big.Rat).Mul(new(big.Rat).SetInt(n), s.Step)
}

// Ceil returns the lowest mark at or above x, even beyond the ends of the
// scale.
func (s Scale) Ceil(x *big.Rat) *big.Rat {
	down := s.Floor(new(big.Rat).Neg(x))
	return down.Neg(down)
}

// Ends returns the lowest and highest mark of the scale, nil if not known.
func (s Scale) Ends() (low, high *big.Rat) {
	if s.Low != nil {
		low = s.Ceil(s.Low)
	}
	if s.High != nil {
		high = s.Floor(s.High)
	}
	return low, high
}

// Inward returns the widest limits on marks of the scale that lie inside the
// band: low rounded up, high rounded down, both on the scale. No reading
// within them is outside the band. Ok is false if no mark is inside, or the
// band has no limits, or the dimensions differ.
func (b Band) Inward(s Scale) (m Marks, ok bool) {
	c := b.In(s.Unit)
	if c.Low == nil && c.High == nil || s.Step == nil || s.Step.Sign() <= 0 {
		return m, false
	}
	m.Scale = s
	low, high := s.Ends()
	if c.Low != nil {
		if m.Low = s.Ceil(c.Low); low == nil || m.Low.Cmp(low) > 0 {
			low = m.Low
		} else {
			m.Low = low
		}
	}
	if c.High != nil {
		if m.High = s.Floor(c.High); high == nil || m.High.Cmp(high) < 0 {
			high = m.High
		} else {
			m.High = high
		}
	}
	if low != nil && high != nil && low.Cmp(high) > 0 {
		return Marks{}, false
	}
	return m, true
}

// Finest returns the index of the scale with the smallest step among those
// with a mark inside the band, the first of equals, -1 if there is none.
func Finest(b Band, scales []Scale) int {
	best := -1
	for i, s := range scales {
		if _, ok := b.Inward(s); !ok {
			continue
		}
		if best < 0 || s.base().Cmp(scales[best].base()) < 0 {
			best = i
		}
	}
	return best
}

// base returns the scale's step in base units.
func (s Scale) base() *big.Rat { return times(s.Step, s.Unit.factor) }

// CoarsestStep returns the coarsest step of 1, 2, 5, 10 … in u that is no
// wider than the band, and so has a mark inside it. It returns nil for a band
// without two sides or without width. A scale this fine will do.
func (b Band) CoarsestStep(u Unit) *big.Rat {
	c := b.In(u)
	if c.Low == nil || c.High == nil || c.Low.Cmp(c.High) >= 0 {
		return nil
	}
	return StepWithin(c.Width())
}

// StepWithin returns the coarsest step of 1, 2, 5, 10 … that is at most most,
// nil unless most is above zero.
func StepWithin(most *big.Rat) *big.Rat {
	if most.Sign() <= 0 {
		return nil
	}
	n := 0
	for power(n).Cmp(most) > 0 {
		n--
	}
	for power(n+1).Cmp(most) <= 0 {
		n++
	}
	best := power(n)
	for _, f := range []int64{2, 5} {
		if s := times(power(n), big.NewRat(f, 1)); s.Cmp(most) <= 0 {
			best = s
		}
	}
	return best
}

// Width returns the width of the band in its unit; that of a maximum counts
// from zero. It is nil for a minimum and a bare value.
func (b Band) Width() *big.Rat {
	switch {
	case b.High == nil:
		return nil
	case b.Low == nil:
		return new(big.Rat).Abs(b.High)
	}
	return new(big.Rat).Sub(b.High, b.Low)
}

// Target returns the value to aim for: the nominal, else the middle; nil for a
// one-sided band.
func (b Band) Target() *big.Rat {
	if b.Nominal != nil {
		return b.Nominal.Value
	}
	if b.Low == nil || b.High == nil {
		return nil
	}
	return times(new(big.Rat).Add(b.Low, b.High), big.NewRat(1, 2))
}

// WithTolerance returns a bare value with a symmetric tolerance, 1/20 for 5 %.
// Written stays that of the bare value. Any other band is returned unchanged.
func (b Band) WithTolerance(tolerance *big.Rat) Band {
	if b.Form != Bare || b.Nominal == nil {
		return b
	}
	half := times(b.Nominal.Value, tolerance)
	half.Abs(half)
	b.Form = PlusMinus
	b.Low = new(big.Rat).Sub(b.Nominal.Value, half)
	b.High = new(big.Rat).Add(b.Nominal.Value, half)
	b.Numbers = nil
	return b
}
