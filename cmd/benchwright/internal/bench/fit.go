package bench

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
)

// A PressFit is a hub on a shaft, both taken as thick cylinders as long as each
// other and elastic. Diameters are in mm, with Bore 0 for a solid shaft;
// moduli of elasticity are in MPa.
type PressFit struct {
	Outer, Seat, Bore        *big.Rat // diameters: outside of the hub, of the seat, inside of the shaft
	HubModulus, ShaftModulus *big.Rat
	HubPoisson, ShaftPoisson *big.Rat
}

// Pressure returns the pressure on the seat, in MPa, that an interference on
// the diameter gives, in mm:
//
//	p = δ / (d·(((D²+d²)/(D²−d²)+ν_h)/E_h + ((d²+d_i²)/(d²−d_i²)−ν_s)/E_s))
//
// Exactly. ok is false where the diameters are not in order or a modulus is not
// above zero. A negative interference, which is clearance, has no pressure: ok
// is false. Source: the thick cylinder of Lamé, as Bhandari, Design of Machine
// Elements, ch. 22.
func (f PressFit) Pressure(interference *big.Rat) (p *big.Rat, ok bool) {
	compliance, ok := f.Compliance()
	if !ok || interference.Sign() < 0 {
		return nil, false
	}
	return compliance.Quo(interference, compliance), true
}

// Compliance returns δ/p: the mm of interference on the diameter that give 1 MPa
// on the seat. ok is false where the diameters are not in order, a modulus is not
// above zero, or the sum is not.
func (f PressFit) Compliance() (*big.Rat, bool) {
	if f.Bore.Sign() < 0 || f.Seat.Cmp(f.Bore) <= 0 || f.Outer.Cmp(f.Seat) <= 0 ||
		f.HubModulus.Sign() <= 0 || f.ShaftModulus.Sign() <= 0 {
		return nil, false
	}
	hub := LameRatio(f.Outer, f.Seat)
	hub.Add(hub, f.HubPoisson).Quo(hub, f.HubModulus)
	shaft := LameRatio(f.Seat, f.Bore)
	shaft.Sub(shaft, f.ShaftPoisson).Quo(shaft, f.ShaftModulus)
	sum := hub.Add(hub, shaft)
	sum.Mul(sum, f.Seat)
	return sum, sum.Sign() > 0
}

// LameRatio returns (a²+b²)/(a²−b²), the hoop stress at the seat of a thick cylinder
// over the pressure on it: a is its outer diameter, b its inner one, in one unit.
func LameRatio(a, b *big.Rat) *big.Rat {
	x, y := new(big.Rat).Mul(a, a), new(big.Rat).Mul(b, b)
	sum := new(big.Rat).Add(x, y)
	return sum.Quo(sum, x.Sub(x, y))
}

// PressForce returns F = μ·p·π·d·L, the force in N that moves a seat of
// diameter d and length L, in mm, under a pressure in MPa. At the end of the
// stroke L is the whole length. Friction is stated by the writer; the highest
// value gives the force to expect of the press. To 40 decimals of π.
func PressForce(friction, pressure, diameter, length *big.Rat) *big.Rat {
	f := new(big.Rat).Mul(friction, pressure)
	f.Mul(f, halfTurn).Mul(f, diameter)
	return f.Mul(f, length)
}

// Force returns the force in N that presses the parts together over a length in
// mm with an interference on the diameter, in mm: PressForce of its Pressure. ok
// is false as for Pressure.
func (f PressFit) Force(interference, friction, length *big.Rat) (force *big.Rat, ok bool) {
	p, ok := f.Pressure(interference)
	if !ok {
		return nil, false
	}
	return PressForce(friction, p, f.Seat, length), true
}

// RamArea returns the area in mm² of a ram of a diameter in mm.
func RamArea(diameter *big.Rat) *big.Rat {
	a := new(big.Rat).Mul(diameter, diameter)
	return a.Mul(a, halfTurn).Quo(a, big.NewRat(4, 1))
}

// RamPressure returns what the gauge of a press shows, in MPa, while its ram of
// an area in mm² pushes with a force in N: F/A. ok is false where the area is
// not above zero.
func RamPressure(force, area *big.Rat) (pressure *big.Rat, ok bool) {
	if area.Sign() <= 0 {
		return nil, false
	}
	return new(big.Rat).Quo(force, area), true
}

// TemperatureRise returns how much hotter than its partner a part must be to go
// over a seat with room to spare:
//
//	ΔT = (δ_max + clearance)/(α·d)
//
// δ_max is the most interference that the limits allow, clearance the room to
// spare, both on the diameter d and in its unit; α is the expansion of the part
// that is heated, per degree, and the rise is in that degree. For chilling, α
// is that of the inner part and the result a fall. ok is false where α or d is
// not above zero. A fit that goes together cold has a rise of 0. Source:
// linear expansion.
func TemperatureRise(most, clearance, expansion, diameter *big.Rat) (rise *big.Rat, ok bool) {
	if expansion.Sign() <= 0 || diameter.Sign() <= 0 {
		return nil, false
	}
	need := new(big.Rat).Add(most, clearance)
	if need.Sign() <= 0 {
		return new(big.Rat), true
	}
	return need.Quo(need, new(big.Rat).Mul(expansion, diameter)), true
}

// RiseTogether returns the rise for two parts that are heated together, because
// the inner sits in the outer and follows it: only the difference of their
// expansions opens the seat. ok is false where the outer does not expand more.
func RiseTogether(most, clearance, outer, inner, diameter *big.Rat) (rise *big.Rat, ok bool) {
	return TemperatureRise(most, clearance, new(big.Rat).Sub(outer, inner), diameter)
}

// Opening returns how far the seat opens on the diameter, α·d·ΔT: what a rise
// of TemperatureRise takes up.
func Opening(expansion, diameter, rise *big.Rat) *big.Rat {
	o := new(big.Rat).Mul(expansion, diameter)
	return o.Mul(o, rise)
}

// HeatBand returns the temperatures, in °C, at which a heated part goes over its
// seat: from what opens it, room + rise, up to its cap. ok is false where that
// is above the cap. Room is how warm the part that is not heated may be.
func HeatBand(room, rise, cap *big.Rat) (b quantity.Band, ok bool) {
	need := new(big.Rat).Add(room, rise)
	if need.Cmp(cap) > 0 {
		return b, false
	}
	return quantity.Band{Form: quantity.Range, Low: need, High: cap, Unit: celsius}, true
}

// ChillBand returns the temperatures, in °C, at which a chilled part goes into
// its seat: room − fall and colder. Room is how cold the part that is not
// chilled may be.
func ChillBand(room, fall *big.Rat) quantity.Band {
	return quantity.Band{Form: quantity.Max, High: new(big.Rat).Sub(room, fall), Unit: celsius}
}

// ChillFloor is the temperature in °C under which nothing is chilled in a shop:
// liquid nitrogen boils at 77.36 K (CRC Handbook of Chemistry and Physics, from
// memory), which is -195.79 °C.
var ChillFloor = big.NewRat(-196, 1)

// closeExpansion is the difference of expansions, per °C, under which parts
// that are heated together hardly come apart (common practice).
var closeExpansion = big.NewRat(3, 1000000)

// HeatFast reports whether two expansions, per °C, are so close that the outer
// part must be heated fast and the inner one pulled at once, before it follows.
func HeatFast(outer, inner *big.Rat) bool {
	return new(big.Rat).Sub(outer, inner).Cmp(closeExpansion) < 0
}

// BearingCap is the temperature in °C above which a rolling bearing is not
// heated. MIL-HDBK-1164 table 17: 200 to 250 °F; TM 5-3810-307-24-1-1: not above
// 250 °F, which is 121 °C. Another manual allows 275 °F: it takes a reason and
// a source.
var BearingCap = big.NewRat(120, 1)

// A Cap is a temperature in °C that must not be exceeded, and why: "seal".
type Cap struct {
	Why     string
	Highest *big.Rat
}

// LowestCap returns which of the caps binds, the first of equals; ok is false
// where there is none.
func LowestCap(caps []Cap) (at int, ok bool) {
	for i, c := range caps {
		if c.Highest.Cmp(caps[at].Highest) < 0 {
			at = i
		}
	}
	return at, len(caps) > 0
}
