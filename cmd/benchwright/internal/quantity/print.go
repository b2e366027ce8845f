package quantity

import (
	"math/big"
	"strings"
)

// nbsp keeps a value and its unit on one line.
const nbsp = "\u00a0"

// After returns number followed by the unit, as printed: "95 N·m", "20°".
func (u Unit) After(number string) string {
	if u.Symbol == "°" {
		return number + u.Symbol
	}
	return number + nbsp + u.Symbol
}

// Format prints x with the number of decimals that multiples of step need:
// step 0.01 gives "0.15", step 0.5 "95.5", step 1 "95". A step that no
// decimals can express, such as 1/3, gives a fraction. X is rounded to the
// nearest step, half away from zero. A minus sign is U+2212.
func Format(x, step *big.Rat, mark DecimalMark) string {
	if places, ok := decimals(step); ok {
		s := new(big.Rat).Abs(x).FloatString(places)
		if x.Sign() < 0 && strings.Trim(s, "0.") != "" {
			s = "−" + s
		}
		return strings.Replace(s, ".", mark.sign(), 1)
	}
	return FormatFraction(x, step)
}

// Decimal prints x with as many decimals as it needs: "0.15", "95"; as a
// fraction if no decimals can express it.
func Decimal(x *big.Rat, mark DecimalMark) string {
	return Format(x, new(big.Rat).SetFrac(big.NewInt(1), x.Denom()), mark)
}

// FormatFraction prints x as a whole number and a fraction in lowest terms, as
// on scales marked in fractions: "8-5/16", "5/16", "8". X is rounded to the
// nearest step, half away from zero.
func FormatFraction(x, step *big.Rat) string {
	y := new(big.Rat).Abs(x)
	if step.Sign() > 0 {
		y = times(round(per(y, step)), step)
	}
	whole := new(big.Int).Quo(y.Num(), y.Denom())
	part := new(big.Rat).Sub(y, new(big.Rat).SetInt(whole))
	s := whole.String()
	if part.Sign() != 0 {
		s = part.RatString()
		if whole.Sign() != 0 {
			s = whole.String() + "-" + s
		}
	}
	if x.Sign() < 0 && y.Sign() != 0 {
		s = "−" + s
	}
	return s
}

// ExampleLimits returns a bare value with plausible limits around it, as a
// writer would type them, for a message to show the form. The tolerance is two
// steps of the value's last digit, or part of a step if the value is small.
func (b Band) ExampleLimits(mark DecimalMark) string {
	if b.Form != Bare || b.Nominal == nil {
		return strings.ReplaceAll(b.Written, nbsp, " ")
	}
	n := *b.Nominal
	step := n.DigitStep()
	if n.Value.Sign() != 0 {
		step = n.zeros(step)
	}
	tolerance, part := times(step, big.NewRat(2, 1)), big.NewRat(1, 10)
	if n.Fraction() {
		part = big.NewRat(1, 8)
	}
	if half := times(n.Value, big.NewRat(1, 2)); tolerance.Cmp(half.Abs(half)) >= 0 {
		tolerance = times(step, part)
	}
	text := b.Unit.After(n.Text + " ±" + Format(tolerance, tolerance, mark))
	if n.Fraction() {
		text = b.Unit.After(n.Text + " ±" + FormatFraction(tolerance, tolerance))
	}
	return strings.ReplaceAll(text, nbsp, " ")
}

// decimals returns the number of decimals that multiples of step need; ok is
// false if no number suffices.
func decimals(step *big.Rat) (places int, ok bool) {
	d := new(big.Int).Set(step.Denom())
	count := func(f int64) (n int) {
		q, m := new(big.Int), new(big.Int)
		for q.QuoRem(d, big.NewInt(f), m); m.Sign() == 0; q.QuoRem(d, big.NewInt(f), m) {
			d.Set(q)
			n++
		}
		return n
	}
	twos, fives := count(2), count(5)
	return max(twos, fives), d.Cmp(big.NewInt(1)) == 0
}

// round rounds x ≥ 0 to the nearest whole number, half up.
func round(x *big.Rat) *big.Rat {
	y := new(big.Rat).Add(x, big.NewRat(1, 2))
	return new(big.Rat).SetInt(new(big.Int).Quo(y.Num(), y.Denom()))
}

// Number prints x in the form of the scale's marks.
func (s Scale) Number(x *big.Rat, mark DecimalMark) string {
	if s.Fractions {
		return FormatFraction(x, s.Step)
	}
	return Format(x, s.Step, mark)
}

// Print prints x in the form of the scale's marks, with the unit.
func (s Scale) Print(x *big.Rat, mark DecimalMark) string { return s.Unit.After(s.Number(x, mark)) }

// Print prints marks as a band of the scale: "0.15 to 0.25 mm", "max 0.05 mm",
// "at least 12 mm".
func (m Marks) Print(mark DecimalMark) string {
	low, high := m.Ends(mark)
	return joinEnds(low, high, m.Scale.Unit)
}

// Ends prints each limit without the unit, "" for an open side.
func (m Marks) Ends(mark DecimalMark) (low, high string) {
	if m.Low != nil {
		low = m.Scale.Number(m.Low, mark)
	}
	if m.High != nil {
		high = m.Scale.Number(m.High, mark)
	}
	return low, high
}

// Range prints the band's limits without ±: "95 to 105 N·m" for 100 ±5 N·m. A
// bare value is printed as it is.
func (b Band) Range(mark DecimalMark) string {
	low, high := b.Ends(mark)
	if b.Form == Bare && b.Nominal != nil {
		return b.Unit.After(typed(*b.Nominal, mark))
	}
	return joinEnds(low, high, b.Unit)
}

// Ends prints each limit of the band without the unit, "" for an open side: as
// typed, or for the sums of a ± band with the digits that the typed numbers
// need.
func (b Band) Ends(mark DecimalMark) (low, high string) {
	if n := len(b.Numbers); n > 0 && b.Form != PlusMinus {
		if b.Low != nil {
			low = typed(b.Numbers[0], mark)
		}
		if b.High != nil {
			high = typed(b.Numbers[n-1], mark)
		}
		return low, high
	}
	step, fractions := b.typedStep()
	m := Marks{Scale{Unit: b.Unit, Step: step, Fractions: fractions}, b.Low, b.High}
	return m.Ends(mark)
}

// typed prints a number as typed, with U+2212 as minus sign.
func typed(n Number, mark DecimalMark) string {
	if n.Text == "" {
		return Decimal(n.Value, mark)
	}
	if rest, negative := strings.CutPrefix(n.Text, "-"); negative {
		return "−" + rest
	}
	return strings.TrimPrefix(n.Text, "+")
}

func joinEnds(low, high string, u Unit) string {
	switch {
	case low == "" && high == "":
		return ""
	case low == "":
		return "max " + u.After(high)
	case high == "":
		return "at least " + u.After(low)
	}
	return low + " to " + u.After(high)
}

// typedStep returns the coarsest step of which all the band's numbers are
// multiples, with the digits they were typed with, and whether one of them is
// a fraction.
func (b Band) typedStep() (step *big.Rat, fractions bool) {
	d := big.NewInt(1)
	join := func(e *big.Int) { // d becomes the least common multiple of d and e
		gcd := new(big.Int).GCD(nil, nil, d, e)
		d = new(big.Int).Mul(d, new(big.Int).Quo(e, gcd))
	}
	for _, n := range b.Numbers {
		fractions = fractions || n.Fraction()
		if p := n.DigitStep(); p != nil {
			join(p.Denom())
		}
	}
	for _, x := range []*big.Rat{b.Low, b.High} {
		if x != nil {
			join(x.Denom())
		}
	}
	return new(big.Rat).SetFrac(big.NewInt(1), d), fractions
}
