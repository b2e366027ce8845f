package bench

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
)

// An Adapter stands between a torque wrench and the fastener.
type Adapter struct {
	Length quantity.Value // E, from the center of the drive to the center of the fastener
	Angle  *big.Rat       // θ in degrees, between adapter and handle: 0 in line
}

// Setting returns the limits at the fastener as limits on the setting of a
// wrench of that length, drive to grip. Every setting inside them gives a torque
// inside limits, also where the cosine is not exact. A nil adapter changes
// nothing. ok is false where the adapter leaves the wrench no lever.
func (a *Adapter) Setting(limits quantity.Band, length *quantity.Value) (b quantity.Band, ok bool) {
	least, most, ok := a.gain(length)
	if !ok {
		return quantity.Band{}, false
	}
	b = quantity.Band{Form: limits.Form, Unit: limits.Unit}
	// A limit above zero is drawn in by the gain that brings it nearest.
	if limits.Low != nil {
		b.Low = new(big.Rat).Quo(limits.Low, least)
	}
	if limits.High != nil {
		b.High = new(big.Rat).Quo(limits.High, most)
	}
	if n := limits.Nominal; n != nil {
		b.Nominal = &quantity.Number{Value: new(big.Rat).Quo(n.Value, least)}
	}
	return b, true
}

// gain returns the torque at the fastener for one of the setting, (L + E·cos θ)/L,
// between two bounds, which are one where the cosine is exact.
func (a *Adapter) gain(length *quantity.Value) (least, most *big.Rat, ok bool) {
	one := big.NewRat(1, 1)
	if a == nil {
		return one, one, true
	}
	if length == nil {
		return nil, nil, false
	}
	extension := quantity.Convert(a.Length.Value, a.Length.Unit, length.Unit)
	g, ok := AdapterTorque(one, length.Value, extension, a.Angle)
	if !ok {
		return nil, nil, false
	}
	if exactCos(a.Angle) {
		return g, g, true
	}
	slack := new(big.Rat).Mul(cosError, new(big.Rat).Quo(extension, length.Value))
	slack.Abs(slack)
	return new(big.Rat).Sub(g, slack), new(big.Rat).Add(g, slack), true
}

// SetAdapter returns what to set on a torque wrench that drives the fastener
// through an adapter:
//
//	S = T·L/(L + E·cos θ)
//
// T is the torque at the fastener, S the setting, both in one unit; L runs from
// the center of the drive to the center of the grip, E from the center of the
// drive to the center of the fastener, both in one unit; θ is the angle in
// degrees between adapter and handle: 0 in line, 90 where S = T, 180 where the
// adapter points back along the handle. It holds for a pull at the center of
// the grip and for no other. ok is false where L + E·cos θ is not above zero.
// The result is as exact as Cos. Source: NAVEDTRA 14315 ch. 3; TM
// 1-1500-204-23-9 fig. 8-16.
func SetAdapter(torque, length, extension, angle *big.Rat) (setting *big.Rat, ok bool) {
	lever := AdapterLever(length, extension, angle)
	if length.Sign() <= 0 || lever.Sign() <= 0 {
		return nil, false
	}
	s := new(big.Rat).Mul(torque, length)
	return s.Quo(s, lever), true
}

// AdapterTorque returns the torque at the fastener that a setting gives, the
// inverse of SetAdapter: T = S·(L + E·cos θ)/L.
func AdapterTorque(setting, length, extension, angle *big.Rat) (torque *big.Rat, ok bool) {
	lever := AdapterLever(length, extension, angle)
	if length.Sign() <= 0 || lever.Sign() <= 0 {
		return nil, false
	}
	t := new(big.Rat).Mul(setting, lever)
	return t.Quo(t, length), true
}

// AdapterLever returns L + E·cos θ, in the unit of L and E.
func AdapterLever(length, extension, angle *big.Rat) *big.Rat {
	e := new(big.Rat).Mul(extension, Cos(angle))
	return e.Add(e, length)
}

// halfTurn is π to 40 decimals.
var halfTurn, _ = new(big.Rat).SetString("3.1415926535897932384626433832795028841972")

// Cos returns the cosine of an angle in degrees: exactly at every multiple of
// 60° and 90°, where alone it is rational, and elsewhere to within 1e-24. The
// same angle gives the same result on every machine: no floating point.
func Cos(degrees *big.Rat) *big.Rat {
	// Fold the angle into 0…90°, where the cosine is not negative.
	whole := new(big.Rat).Quo(degrees, big.NewRat(360, 1))
	turns := new(big.Int).Div(whole.Num(), whole.Denom())
	x := new(big.Rat).Sub(degrees, new(big.Rat).Mul(new(big.Rat).SetInt(turns), big.NewRat(360, 1)))
	if x.Cmp(big.NewRat(180, 1)) > 0 {
		x.Sub(big.NewRat(360, 1), x)
	}
	negative := x.Cmp(big.NewRat(90, 1)) > 0
	if negative {
		x.Sub(big.NewRat(180, 1), x)
	}
	var c *big.Rat
	switch {
	case x.Sign() == 0:
		c = big.NewRat(1, 1)
	case x.Cmp(big.NewRat(60, 1)) == 0:
		c = big.NewRat(1, 2)
	case x.Cmp(big.NewRat(90, 1)) == 0:
		c = new(big.Rat)
	default:
		c = series(shorten(x.Mul(x, halfTurn).Quo(x, big.NewRat(180, 1))))
	}
	if negative {
		c.Neg(c)
	}
	return c
}

// cosError is more than a cosine of Cos is ever out.
var cosError = big.NewRat(1, 1e15)

// exactCos reports whether Cos is exact at an angle.
func exactCos(degrees *big.Rat) bool {
	return new(big.Rat).Quo(degrees, big.NewRat(60, 1)).IsInt() || new(big.Rat).Quo(degrees, big.NewRat(90, 1)).IsInt()
}

// series returns the cosine of x radians, 0 < x < π/2, by its power series.
func series(x *big.Rat) *big.Rat {
	square := shorten(new(big.Rat).Mul(x, x))
	sum, term := big.NewRat(1, 1), big.NewRat(1, 1)
	for n := int64(1); term.Sign() != 0; n += 2 {
		term.Mul(term, square)
		term = shorten(term.Quo(term, big.NewRat(-n*(n+1), 1)))
		sum.Add(sum, term)
	}
	return sum
}

// unit30 is 10 to the 30.
var unit30 = new(big.Int).Exp(big.NewInt(10), big.NewInt(30), nil)

// shorten rounds x toward zero to 30 decimals, so that no fraction grows.
func shorten(x *big.Rat) *big.Rat {
	n := new(big.Int).Mul(x.Num(), unit30)
	return new(big.Rat).SetFrac(n.Quo(n, x.Denom()), unit30)
}
