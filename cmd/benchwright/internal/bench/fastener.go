package bench

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
)

// A Thread is a metric or a unified screw thread. A metric one has Diameter
// and Pitch in mm, a unified one Diameter in inches and PerInch, its threads
// to the inch.
type Thread struct {
	Diameter *big.Rat
	Pitch    *big.Rat // nil for a unified thread
	PerInch  *big.Rat // nil for a metric thread
}

// sound reports whether the thread is of one kind and has a core.
func (t Thread) sound() bool {
	if t.Diameter == nil || (t.Pitch == nil) == (t.PerInch == nil) {
		return false
	}
	if t.PerInch != nil && t.PerInch.Sign() <= 0 || t.Pitch != nil && t.Pitch.Sign() <= 0 {
		return false
	}
	return t.core().Sign() > 0
}

// core returns the diameter of the circle that has the stress area.
func (t Thread) core() *big.Rat {
	depth := big.NewRat(9743, 10000)
	if t.PerInch != nil {
		depth.Quo(depth, t.PerInch)
	} else {
		depth.Mul(big.NewRat(9382, 10000), t.Pitch)
	}
	return depth.Sub(t.Diameter, depth)
}

// StressArea returns the tensile stress area, nil for no thread at all:
//
//	As = π/4·(d − 0.9382·P)²     mm², metric
//	As = 0.7854·(D − 0.9743/n)²  in², unified
//
// Sources: ISO 898-1; ASME B1.1 (both through public tables).
func (t Thread) StressArea() *big.Rat {
	if !t.sound() {
		return nil
	}
	c := t.core()
	c.Mul(c, c)
	if t.PerInch != nil {
		return c.Mul(c, big.NewRat(7854, 10000))
	}
	return c.Mul(c, new(big.Rat).Quo(halfTurn, big.NewRat(4, 1)))
}

// TighteningTorque returns T = K·d·F in N·m for a clamp force F in N; nil
// unless the nut factor is above zero and the thread is a sound one. K differs from source to source (for
// zinc alone from 0.20 to 0.295), so it is always stated.
func (t Thread) TighteningTorque(k, force *big.Rat) *big.Rat {
	d := t.kd(k)
	if d == nil {
		return nil
	}
	return d.Mul(d, force)
}

// ClampForce returns the force F = T/(K·d) in N that a torque in N·m makes,
// the inverse of TighteningTorque.
func (t Thread) ClampForce(k, torque *big.Rat) *big.Rat {
	d := t.kd(k)
	if d == nil {
		return nil
	}
	return d.Quo(torque, d)
}

// kd returns K·d in m, or nil.
func (t Thread) kd(k *big.Rat) *big.Rat {
	if k == nil || k.Sign() <= 0 || !t.sound() {
		return nil
	}
	u := millimeter
	if t.PerInch != nil {
		u = inch
	}
	d := quantity.Convert(t.Diameter, u, meter)
	return d.Mul(d, k)
}
