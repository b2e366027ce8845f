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

// isoProof lists the proof loads of ISO 898-1 for coarse threads, in N, of the
// classes 8.8, 10.9 and 12.9, by diameter in mm and pitch in hundredths of mm.
var isoProof = [...]struct{ diameter, pitch, p88, p109, p129 int64 }{
	{5, 80, 8230, 11800, 13800},
	{6, 100, 11600, 16700, 19500},
	{8, 125, 21200, 30400, 35500},
	{10, 150, 33700, 48100, 56300},
	{12, 175, 48900, 70000, 81800},
	{14, 200, 66700, 95500, 112000},
	{16, 200, 91000, 130000, 152000},
	{20, 250, 147000, 203000, 238000},
	{24, 300, 212000, 293000, 342000},
}

// ProofLoad returns the proof load in N of a thread in a property class of ISO
// 898-1 ("8.8", "10.9", "12.9", metric) or a grade of SAE J429 ("5", "8",
// unified), and whether it is a row of the table of ISO 898-1, which comes
// first. Elsewhere it is As·Sp with Sp
//
//	8.8: 580 MPa to 16 mm, 600 above; 10.9: 830; 12.9: 970
//	grade 5: 85 000 psi to 1 in; grade 8: 120 000 psi
//
// ok is false for another class, and outside the sizes of the standards: 1.6 to
// 39 mm, and 1/4 to 1 in for grade 5 and to 1-1/2 in for grade 8 (from memory).
func (t Thread) ProofLoad(class string) (proof *big.Rat, listed, ok bool) {
	area := t.StressArea()
	if area == nil {
		return nil, false, false
	}
	between := func(low, high *big.Rat) bool { return t.Diameter.Cmp(low) >= 0 && t.Diameter.Cmp(high) <= 0 }
	if t.PerInch != nil {
		quarter := big.NewRat(1, 4)
		switch {
		case class == "5" && between(quarter, big.NewRat(1, 1)):
			area.Mul(area, big.NewRat(85000, 1))
		case class == "8" && between(quarter, big.NewRat(3, 2)):
			area.Mul(area, big.NewRat(120000, 1))
		default:
			return nil, false, false
		}
		return quantity.Convert(area, poundForce, newton), false, true
	}
	if !between(big.NewRat(8, 5), big.NewRat(39, 1)) {
		return nil, false, false
	}
	for _, r := range isoProof {
		if t.Diameter.Cmp(big.NewRat(r.diameter, 1)) != 0 || t.Pitch.Cmp(big.NewRat(r.pitch, 100)) != 0 {
			continue
		}
		switch class {
		case "8.8":
			return big.NewRat(r.p88, 1), true, true
		case "10.9":
			return big.NewRat(r.p109, 1), true, true
		case "12.9":
			return big.NewRat(r.p129, 1), true, true
		}
	}
	var stress int64 // MPa, which is N/mm²
	switch class {
	case "8.8":
		stress = 580
		if t.Diameter.Cmp(big.NewRat(16, 1)) > 0 {
			stress = 600
		}
	case "10.9":
		stress = 830
	case "12.9":
		stress = 970
	default:
		return nil, false, false
	}
	return area.Mul(area, big.NewRat(stress, 1)), false, true
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
