package quantity

import (
	"math/big"
	"strings"
)

// A Verdict is what the second of two bands printed side by side is worth.
type Verdict uint8

// The verdicts.
const (
	Agrees    Verdict = iota
	Wider             // it agrees, but accepts what the first does not
	Disagrees         // it is not the first in its unit
)

// Also compares second, which a manual prints beside first, with first.
//
// The bands agree when each end of second is the exact conversion of first's
// end, rounded to nearest at some place that its digits allow. A place is
// allowed in two ways:
//
//   - that of its own last digit, or the denominator of its fraction:
//     25 lbf·in is 2.82 N·m, and "3" says that to its last digit;
//   - for a number without decimals that ends in zeros, that of any of these
//     zeros, as long as the result is within 2.5 % of the conversion: 1000 psi
//     is 6895 kPa, and "7000" says that to the thousands.
//
// A conversion half way between two steps may be rounded to either. A ± band
// has the ends that its numbers add up to, each as fine as the finer of them.
// A ± band agrees also when nominal and tolerance agree each by itself, because
// a manual rounds them so, and their sum may then be off by both:
// 55 ±10 N·m is rightly printed as 41 ±7 lbf·ft, with an end at 34 where the
// exact one is 33.2.
//
// A bare value agrees with a bare value alone, a maximum with a maximum, a
// minimum with a minimum.
//
// Bands that agree are Wider when an end of second lies outside first by more
// than a tenth of first's width; a maximum counts its width from zero, and a
// minimum and a bare value have none.
func Also(first, second Band) Verdict {
	exact := first.In(second.Unit)
	switch {
	case exact.Unit.factor == nil,
		(first.Form == Bare) != (second.Form == Bare),
		(exact.Low == nil) != (second.Low == nil),
		(exact.High == nil) != (second.High == nil):
		return Disagrees
	case second.Form == Bare:
		if !rounds(second.digits(0), exact.Nominal.Value) {
			return Disagrees
		}
		return Agrees
	}
	low, high := second.typedEnds()
	ends := (exact.Low == nil || rounds(low, exact.Low)) && (exact.High == nil || rounds(high, exact.High))
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

// sameParts reports whether second, a ± band, agrees with exact number by
// number: the nominal and each tolerance.
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
	return rounds(second.digits(0), nominal) &&
		rounds(over, new(big.Rat).Sub(exact.High, nominal)) && rounds(under, below)
}

// A rounded is a number and the places to which its digits allow that it was
// rounded: its last digit, and the last of the zeros at its end.
type rounded struct{ value, digit, zeros *big.Rat }

// rounds reports whether n is x rounded to nearest at a place that it allows.
func rounds(n rounded, x *big.Rat) bool {
	off := new(big.Rat).Sub(n.value, x)
	off.Abs(off)
	twice := times(off, big.NewRat(2, 1))
	if twice.Cmp(n.digit) <= 0 {
		return true
	}
	most := times(x, big.NewRat(1, 40))
	return twice.Cmp(n.zeros) <= 0 && off.Cmp(most.Abs(most)) <= 0
}

// exactly returns a number that was computed.
func exactly(x *big.Rat) rounded { return rounded{x, new(big.Rat), new(big.Rat)} }

// digits returns the band's i-th number; a computed band of one number has none.
func (b Band) digits(i int) rounded {
	if len(b.Numbers) == 0 {
		return exactly(b.Nominal.Value)
	}
	n := b.Numbers[i]
	digit := n.Place()
	return rounded{n.Value, digit, n.zeros(digit)}
}

// zeros returns the place of the last of the zeros at the end of a number
// without decimals, else digit.
func (n Number) zeros(digit *big.Rat) *big.Rat {
	if n.Fraction() || strings.ContainsAny(n.Text, ".,") {
		return digit
	}
	return power(len(n.Text) - len(strings.TrimRight(n.Text, "0")))
}

// typedEnds returns the ends of a band as they were typed. Those of a ± band
// are sums, as fine as the finer of the numbers added; a tolerance of 0 is
// exact and counts for nothing.
func (b Band) typedEnds() (low, high rounded) {
	switch {
	case len(b.Numbers) == 0:
		return exactly(b.Low), exactly(b.High)
	case b.Form == PlusMinus:
		low = b.digits(0)
		for i, n := range b.Numbers[1:] {
			if t := b.digits(i + 1); n.Value.Sign() != 0 {
				low.digit, low.zeros = least(low.digit, t.digit), least(low.zeros, t.zeros)
			}
		}
		high = low
		low.value, high.value = b.Low, b.High
		return low, high
	}
	return b.digits(0), b.digits(len(b.Numbers) - 1)
}

func least(a, b *big.Rat) *big.Rat {
	if a.Cmp(b) <= 0 {
		return a
	}
	return b
}

// Restate returns first in second's unit, rounded to second's last digits, as a
// writer would type it: what should have stood in second's place.
func Restate(first, second Band, mark Mark) string {
	exact := first.In(second.Unit)
	step, fractions := second.place()
	s := Scale{Unit: second.Unit, Step: step, Fractions: fractions}
	text := ""
	if first.Form == Bare && exact.Nominal != nil {
		text = s.Print(exact.Nominal.Value, mark)
	} else {
		text = Marks{s, exact.Low, exact.High}.Print(mark)
	}
	return strings.ReplaceAll(text, nbsp, " ")
}
