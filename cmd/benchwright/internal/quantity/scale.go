package quantity

import "math/big"

// Marks are limits that lie on the marks of a scale, in its unit; nil for a
// side that is open.
type Marks struct {
	Scale     Scale
	Low, High *big.Rat
}

// Floor returns the highest mark at or below x, counted from zero, whether or
// not the scale reaches it. The step must be above zero.
func (s Scale) Floor(x *big.Rat) *big.Rat {
	q := per(x, s.Step)
	n := new(big.Int).Div(q.Num(), q.Denom()) // Div rounds down: the divisor is above zero
	return new(big.Rat).Mul(new(big.Rat).SetInt(n), s.Step)
}

// Ceil returns the lowest mark at or above x, as Floor does.
func (s Scale) Ceil(x *big.Rat) *big.Rat {
	down := s.Floor(new(big.Rat).Neg(x))
	return down.Neg(down)
}

// Ends returns the scale's lowest and highest mark, nil where not known.
func (s Scale) Ends() (low, high *big.Rat) {
	if s.Low != nil {
		low = s.Ceil(s.Low)
	}
	if s.High != nil {
		high = s.Floor(s.High)
	}
	return low, high
}

// Inward returns the widest limits on the marks of a scale that lie inside the
// band: the low limit rounded up, the high limit down, both on the scale. So no
// reading that they accept lies outside the band. ok is false where no mark is
// left, or the band has no limits, or the scale measures something else.
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

// Finest returns the index of the scale with the closest marks among those that
// have a mark inside the band, the first of equals, or -1 where none has.
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

// base returns the scale's step in the dimension's base unit.
func (s Scale) base() *big.Rat { return times(s.Step, s.Unit.factor) }

// CoarsestStep returns the coarsest of the steps 1, 2, 5, 10 … in u that is no
// wider than the band, and so has a mark inside it; nil where the band has not
// two sides or no width. A scale as fine as this will do.
func (b Band) CoarsestStep(u Unit) *big.Rat {
	c := b.In(u)
	if c.Low == nil || c.High == nil || c.Low.Cmp(c.High) >= 0 {
		return nil
	}
	return StepWithin(c.Width())
}

// StepWithin returns the coarsest of the steps 1, 2, 5, 10 … that is no more
// than most, nil where most is not above zero.
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

// Width returns how wide the band is in its unit: a maximum counts from zero;
// nil for a minimum and for a bare value, which have no width.
func (b Band) Width() *big.Rat {
	switch {
	case b.High == nil:
		return nil
	case b.Low == nil:
		return new(big.Rat).Abs(b.High)
	}
	return new(big.Rat).Sub(b.High, b.Low)
}

// Target returns what one would aim for in the band: its nominal, else its
// middle; nil for a band that is open to one side.
func (b Band) Target() *big.Rat {
	if b.Nominal != nil {
		return b.Nominal.Value
	}
	if b.Low == nil || b.High == nil {
		return nil
	}
	return times(new(big.Rat).Add(b.Low, b.High), big.NewRat(1, 2))
}

// WithTolerance returns the limits of a bare value with a tolerance to both sides,
// 1/20 for 5 %. Its Written stays that of the bare value. All other bands are
// returned as they are.
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
