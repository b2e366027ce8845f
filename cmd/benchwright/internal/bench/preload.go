package bench

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
)

// Pull returns the limits of the pull on a cord that turns a drum within
// limits of rotating torque,
//
//	F = T/r, r = drum radius + half the cord
//
// in the unit of the spring scale: exact, and on its marks, rounded inward so
// that no accepted pull lies outside the torque. It holds for a steady pull,
// one layer of cord, square to the shaft. ok is false where the torque has no
// limits or one below zero, the radius is not above zero, the cord is below
// zero, a quantity is of the wrong kind, or no mark lies inside: then exact
// still tells the limits, where they can be computed.
//
// Source: TM 5-2420-230-24-1 (T = F × R); the half cord is the lever of a
// force along the middle of the cord.
func Pull(torque quantity.Band, drum, cord quantity.Value, s quantity.Scale) (exact quantity.Band, marks quantity.Marks, ok bool) {
	r := CordRadius(drum, cord)
	if r == nil || torque.Unit.Dimension != quantity.Torque || s.Unit.Dimension != quantity.Force {
		return quantity.Band{}, quantity.Marks{}, false
	}
	t := torque.In(newtonMeter)
	for _, end := range []*big.Rat{t.Low, t.High} {
		if end != nil && end.Sign() < 0 {
			return quantity.Band{}, quantity.Marks{}, false
		}
	}
	f := quantity.Band{Form: t.Form, Unit: newton}
	if t.Low != nil {
		f.Low = new(big.Rat).Quo(t.Low, r)
	}
	if t.High != nil {
		f.High = new(big.Rat).Quo(t.High, r)
	}
	if f.Low == nil && f.High == nil {
		return quantity.Band{}, quantity.Marks{}, false
	}
	exact = f.In(s.Unit)
	marks, ok = exact.Inward(s)
	return exact, marks, ok
}

// RotatingTorque returns the torque in N·m that a pull on the cord makes, the
// inverse of Pull; nil where Pull would refuse drum, cord or pull.
func RotatingTorque(pull, drum, cord quantity.Value) *big.Rat {
	r := CordRadius(drum, cord)
	f := pull.In(newton)
	if r == nil || f.Value == nil || f.Value.Sign() < 0 {
		return nil
	}
	return r.Mul(r, f.Value)
}

// CordRadius returns the radius at which the cord pulls, in m, or nil.
func CordRadius(drum, cord quantity.Value) *big.Rat {
	d, c := drum.In(meter), cord.In(meter)
	if d.Value == nil || c.Value == nil || d.Value.Sign() <= 0 || c.Value.Sign() < 0 {
		return nil
	}
	r := new(big.Rat).Quo(c.Value, big.NewRat(2, 1))
	return r.Add(r, d.Value)
}
