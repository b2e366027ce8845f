package quantity

import (
	"math/big"
	"strings"
)

// A Verdict is the result of CompareAlso.
type Verdict uint8

const (
	Agrees    Verdict = iota
	Wider             // it agrees, but accepts values that the first band does not
	Disagrees         // it is not the first band in its unit
)

// CompareAlso compares second, which a manual prints beside first, with first.
//
// The bands agree when each end of second is the exact conversion of first's
// end, rounded to the nearest at a place that its digits allow:
//
//   - the place of its last digit, or the denominator of its fraction: 25 lbf·in is 2.82 N·m, and "3" is that to its last digit;
//   - for a number without decimals that ends in zeros, the place of any of these zeros, if the result is within 2.5 % of the conversion: 1000 psi is 6895 kPa, and "7000" is that to the thousands.
//
// A conversion half way between two steps may be rounded to either. The ends
// of a ± band are sums of its numbers, each as fine as the finer of the two. A
// ± band also agrees when nominal and tolerance each agree, because manuals
// round them separately, and the sum may then be off by both: 55 ±10 N·m is
// rightly printed as 41 ±7 lbf·ft, whose low end is 34 where the exact one is
// 33.2.
//
// A bare value agrees only with a bare value, a maximum with a maximum, a
// minimum with a minimum. Bands that agree are Wider when an end of second
// lies outside first by more than a tenth of first's width. The width of a
// maximum counts from zero; a minimum and a bare value have none.
func CompareAlso(first, second Band) Verdict {
	exact := first.In(second.Unit)
	switch {
	case exact.Unit.factor == nil,
		(first.Form == Bare) != (second.Form == Bare),
		(exact.Low == nil) != (second.Low == nil),
		(exact.High == nil) != (second.High == nil):
		return Disagrees
	case second.Form == Bare:
		if !isRounding(second.digits(0), exact.Nominal.Value) {
			return Disagrees
		}
		return Agrees
	}
	low, high := second.typedEnds()
	ends := (exact.Low == nil || isRounding(low, exact.Low)) && (exact.High == nil || isRounding(high, exact.High))
	if !ends && !sameParts(exact, second) {
		return Disagrees
	}
	if width := exact.Width(); width != nil {
		tenth := times(width, big.NewRat(1, 10))
		if exact.Low != nil && new(big.Rat).Sub(exact.Low, second.Low).Cmp(tenth) > 0 ||
			new(big.Rat).Sub(second.High, exact.High).Cmp(tenth) > 0 {
			return Wider
		}
	}
	return Agrees
}

// sameParts reports whether the ± band second agrees with exact in its nominal
// and in each tolerance.
func sameParts(exact, second Band) bool {
	if second.Form != PlusMinus || len(second.Numbers) < 2 {
		return false
	}
	nominal := exact.Target()
	under, over := second.digits(1), second.digits(len(second.Numbers)-1)
	if second.Numbers[1].Value.Cmp(second.Numbers[len(second.Numbers)-1].Value) > 0 {
		under, over = over, under
	}
	below := new(big.Rat).Sub(exact.Low, nominal)
	if len(second.Numbers) == 2 {
		below.Neg(below) // typed without a sign
	}
	return isRounding(second.digits(0), nominal) &&
		isRounding(over, new(big.Rat).Sub(exact.High, nominal)) && isRounding(under, below)
}

// A rounded is a number and the steps to which it may have been rounded: that
// of its last digit, and that of its last trailing zero. A step of zero means
// exact.
type rounded struct{ value, digit, zeros *big.Rat }

// isRounding reports whether n is x rounded to the nearest at one of n's
// steps.
func isRounding(n rounded, x *big.Rat) bool {
	off := new(big.Rat).Sub(n.value, x)
	off.Abs(off)
	twice := times(off, big.NewRat(2, 1))
	if twice.Cmp(n.digit) <= 0 {
		return true
	}
	most := times(x, big.NewRat(1, 40))
	return twice.Cmp(n.zeros) <= 0 && off.Cmp(most.Abs(most)) <= 0
}

// computed returns an exact number.
func computed(x *big.Rat) rounded { return rounded{x, new(big.Rat), new(big.Rat)} }

// digits returns the band's i-th typed number; for a computed band it is the
// nominal.
func (b Band) digits(i int) rounded {
	if len(b.Numbers) == 0 {
		return computed(b.Nominal.Value)
	}
	n := b.Numbers[i]
	digit := n.DigitStep()
	return rounded{n.Value, digit, n.zeros(digit)}
}

// zeros returns the step of the highest trailing zero of a number without
// decimals, digit if it has none.
func (n Number) zeros(digit *big.Rat) *big.Rat {
	if n.Fraction() || strings.ContainsAny(n.Text, ".,") {
		return digit
	}
	return power(len(n.Text) - len(strings.TrimRight(n.Text, "0")))
}

// typedEnds returns the ends of a band as typed. Those of a ± band are sums,
// as fine as the finer of the two numbers; a tolerance of 0 is exact and does
// not count.
func (b Band) typedEnds() (low, high rounded) {
	switch {
	case len(b.Numbers) == 0:
		return computed(b.Low), computed(b.High)
	case b.Form == PlusMinus:
		low = b.digits(0)
		for i, n := range b.Numbers[1:] {
			if t := b.digits(i + 1); n.Value.Sign() != 0 {
				low.digit, low.zeros = smaller(low.digit, t.digit), smaller(low.zeros, t.zeros)
			}
		}
		high = low
		low.value, high.value = b.Low, b.High
		return low, high
	}
	return b.digits(0), b.digits(len(b.Numbers) - 1)
}

func smaller(a, b *big.Rat) *big.Rat {
	if a.Cmp(b) <= 0 {
		return a
	}
	return b
}

// InUnitOf returns first in second's unit, rounded to second's last digits, as
// a writer would type it: what second should have been.
func InUnitOf(first, second Band, mark DecimalMark) string {
	exact := first.In(second.Unit)
	step, fractions := second.typedStep()
	s := Scale{Unit: second.Unit, Step: step, Fractions: fractions}
	text := ""
	if first.Form == Bare && exact.Nominal != nil {
		text = s.Print(exact.Nominal.Value, mark)
	} else {
		text = Marks{s, exact.Low, exact.High}.Print(mark)
	}
	return strings.ReplaceAll(text, nbsp, " ")
}
