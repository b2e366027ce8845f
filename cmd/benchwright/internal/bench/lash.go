package bench

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
)

// MeshRate returns how much backlash opens, along the turn, per length by
// which the teeth are drawn apart: j = 2·Δa·tan α, α in degrees. It is nil
// unless 0 < α < 90. Source: the published spur relation, Δa = 1.933 j at
// 14.5° and 1.374 j at 20°. The result is as exact as Cos.
func MeshRate(pressure *big.Rat) *big.Rat {
	if !acute(pressure) {
		return nil
	}
	t := new(big.Rat).Quo(sin(pressure), Cos(pressure))
	return t.Add(t, t)
}

// A Bevel is one member of a pair of bevel gears whose shafts cross at 90°.
type Bevel struct {
	Teeth, Mate int      // teeth of the member that moves, and of the other
	Pressure    *big.Rat // αn, degrees
	Spiral      *big.Rat // β, degrees; 0 for straight teeth
}

// AxialRate returns how much backlash opens, along the turn at the pitch
// radius, per length by which the member moves out along its axis:
//
//	jt/jx = 2·tan αn·sin δ/cos β, sin δ = Teeth/√(Teeth² + Mate²)
//
// It is nil where a number of teeth or an angle is out of range. The form is from memory and this
// derivation: the movement opens the mesh by jx·sin δ, which is put into the
// relation of MeshRate. So it is a check on a manual's own ratio and never the
// only ground for a figure. The result is good to 1e-20.
func (b Bevel) AxialRate() *big.Rat {
	rate := MeshRate(b.Pressure)
	if rate == nil || b.Teeth < 1 || b.Mate < 1 || b.Spiral.Sign() != 0 && !acute(b.Spiral) {
		return nil
	}
	rate.Mul(rate, b.PitchSine())
	return rate.Quo(rate, Cos(b.Spiral))
}

// PitchSine returns the sine of the member's pitch angle,
// Teeth/√(Teeth² + Mate²), good to 30 decimals; the teeth are above zero.
func (b Bevel) PitchSine() *big.Rat {
	z, m := big.NewRat(int64(b.Teeth), 1), big.NewRat(int64(b.Mate), 1)
	z.Mul(z, z)
	whole := new(big.Rat).Add(z, m.Mul(m, m))
	return root(z.Quo(z, whole))
}

// FarFromTheory reports whether a manual's own ratio of backlash to movement
// is under half or over twice the theory's, signs aside: the warning's bounds
// are ours. A rate of 0 is far.
func FarFromTheory(stated, theory *big.Rat) bool {
	o, t := new(big.Rat).Abs(stated), new(big.Rat).Abs(theory)
	two := big.NewRat(2, 1)
	return new(big.Rat).Mul(o, two).Cmp(t) < 0 || o.Cmp(t.Mul(t, two)) > 0
}

// A LashPoint is where and how backlash is taken on the member that is turned,
// the other locked.
type LashPoint struct {
	Radius *big.Rat // from the axis, in the unit of the other point
	Square bool     // square to the flank, not along the turn
}

// LashFactor returns by how much a backlash stated for one point is to be
// multiplied to be what a dial at another shows: with jt along the turn at
// radius r,
//
//	jn = jt·cos αn·cos β square to the flank, and jt·r'/r at radius r'
//
// angles in degrees. It is nil unless the radii are above zero and the angles
// from 0 to below 90. At 20° and 35° the first is 23 % less. The result is as
// exact as Cos.
func LashFactor(stated, dial LashPoint, pressure, spiral *big.Rat) *big.Rat {
	for _, a := range []*big.Rat{pressure, spiral} {
		if a.Sign() != 0 && !acute(a) {
			return nil
		}
	}
	if stated.Radius.Sign() <= 0 || dial.Radius.Sign() <= 0 {
		return nil
	}
	f := new(big.Rat).Quo(dial.Radius, stated.Radius)
	if stated.Square == dial.Square {
		return f
	}
	flank := new(big.Rat).Mul(Cos(pressure), Cos(spiral))
	if dial.Square {
		return f.Mul(f, flank)
	}
	return f.Quo(f, flank)
}

// OnDial returns limits of backlash as the dial shows them: multiplied by
// factor, exact in the dial's unit, and on its marks, rounded inward. ok is
// false where no mark lies inside, the limits are none, or the kinds differ.
func OnDial(limits quantity.Band, factor *big.Rat, dial quantity.Scale) (exact quantity.Band, marks quantity.Marks, ok bool) {
	if factor.Sign() <= 0 || limits.Unit.Dimension != dial.Unit.Dimension {
		return quantity.Band{}, quantity.Marks{}, false
	}
	exact = Scaled(limits, factor, dial.Unit)
	marks, ok = exact.Inward(dial)
	return exact, marks, ok
}

// Scaled returns limits multiplied by a factor above zero, exactly, in a unit of
// their kind.
func Scaled(limits quantity.Band, factor *big.Rat, u quantity.Unit) quantity.Band {
	b := limits.In(u)
	if b.Nominal != nil {
		b.Nominal = &quantity.Number{Value: new(big.Rat).Mul(b.Nominal.Value, factor)}
	}
	if b.Low != nil {
		b.Low = new(big.Rat).Mul(b.Low, factor)
	}
	if b.High != nil {
		b.High = new(big.Rat).Mul(b.High, factor)
	}
	return b
}

// A LashFinding is how limits of backlash look beside what is recommended.
type LashFinding uint8

// The findings.
const (
	LashUsual LashFinding = iota
	LashSmall             // all of the limits lie below
	LashLarge             // all of the limits lie above
	LashNoRow             // the table has no row for this pitch
)

// lashRows are the AGMA recommended backlash, quality 7 to 13, by diametral
// pitch; thousandths of an inch.
var lashRows = [...]struct{ from, to, low, high int64 }{
	{4, 5, 6, 8},
	{5, 6, 5, 7},
	{6, 8, 4, 6},
}

// UsualLash returns the recommended backlash in inches for a diametral pitch
// (25.4 ÷ module in mm). ok is false below 4 and above 8, where the table has
// no row: module 3 is 8.47. A pitch on a boundary takes both its rows.
func UsualLash(pitch *big.Rat) (low, high *big.Rat, ok bool) {
	for _, r := range lashRows {
		if pitch.Cmp(big.NewRat(r.from, 1)) < 0 || pitch.Cmp(big.NewRat(r.to, 1)) > 0 {
			continue
		}
		if high == nil {
			high = big.NewRat(r.high, 1000)
		}
		low = big.NewRat(r.low, 1000)
	}
	return low, high, low != nil
}

// JudgeLash compares limits of backlash with the recommended ones: a matter
// of plausibility and for a warning at most. A side that is open, and a bare
// value, are judged by what they have.
func JudgeLash(limits quantity.Band, pitch *big.Rat) LashFinding {
	low, high, ok := UsualLash(pitch)
	if !ok || limits.Unit.Dimension != inch.Dimension {
		return LashNoRow
	}
	l, h := limits.In(inch), limits.In(inch).High
	from := l.Low
	if from == nil && h == nil && l.Nominal != nil {
		from, h = l.Nominal.Value, l.Nominal.Value
	}
	switch {
	case h != nil && h.Cmp(low) < 0:
		return LashSmall
	case from != nil && from.Cmp(high) > 0:
		return LashLarge
	}
	return LashUsual
}

// acute reports whether an angle lies between 0 and 90 degrees.
func acute(a *big.Rat) bool { return a.Sign() > 0 && a.Cmp(big.NewRat(90, 1)) < 0 }

// sin returns the sine of an angle in degrees, as exact as Cos.
func sin(degrees *big.Rat) *big.Rat {
	return Cos(new(big.Rat).Sub(big.NewRat(90, 1), degrees))
}

// root returns the square root of x, which is not below zero, rounded down to
// 30 decimals.
func root(x *big.Rat) *big.Rat {
	n := new(big.Int).Mul(x.Num(), unit30)
	n.Mul(n, unit30).Quo(n, x.Denom())
	return new(big.Rat).SetFrac(n.Sqrt(n), unit30)
}
