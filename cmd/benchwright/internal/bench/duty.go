package bench

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
)

// A Duty is what a fastener is there for.
type Duty uint8

// The duties.
const (
	Clamp Duty = iota
	BearingNut
	Ring
	Plug
	Gasket
	ToYield
)

var duties = map[string]Duty{"clamp": Clamp, "bearing-nut": BearingNut, "ring": Ring, "plug": Plug, "gasket": Gasket, "to-yield": ToYield}

// ParseDuty returns the duty of a name: "clamp", "bearing-nut", "ring", "plug",
// "gasket", "to-yield".
func ParseDuty(name string) (d Duty, ok bool) {
	d, ok = duties[name]
	return d, ok
}

// A TightnessFinding is how a torque looks beside the proof load.
type TightnessFinding uint8

// The findings, from good to bad.
const (
	TightOrdinary TightnessFinding = iota
	TightLow                       // a clamp that may be below 30 % of proof: a warning
	TightHigh                      // may be above 90 % of proof: a warning
	TightAbove                     // may be above proof: an error
)

// A Slip is a typo that would explain a torque: the same digits,
// meant otherwise.
type Slip struct {
	Meant  quantity.Band // ordinary for the fastener
	Places int           // places by which the decimal point is out, 1 where ten times as much is meant; 0 for a slip of the unit
}

// A Tightness is a torque beside the proof load of its fastener.
type Tightness struct {
	Finding     TightnessFinding
	Least, Most *big.Rat // of the clamp force, as a share of proof, at the limits; nil at an open side
	Slips       []Slip   // what would make it ordinary; none where it is ordinary already
}

// JudgeTorque compares a torque with the proof load, in N, of its fastener by
// its duty, with the stated nut factor: an error above proof, a warning above
// 90 %, and for a clamp alone below 30 %. The high limit is judged for the
// former and the low one for the latter, so a range is ordinary as a whole or
// not at all; where one is open the other stands for both, as a bare value does.
// A fastener tightened to yield has no such check. ok is false where nothing can
// be judged: no torque, nut factor, thread or proof load.
//
// The slips are lbf·ft for lbf·in, N·m for lbf·ft and either the other way
// round; and, only where none of these explains it, a decimal point one place
// out.
func JudgeTorque(torque quantity.Band, duty Duty, t Thread, k, proof *big.Rat) (j Tightness, ok bool) {
	if duty == ToYield || proof == nil || proof.Sign() <= 0 || torque.Unit.Dimension != quantity.Torque || t.kd(k) == nil {
		return Tightness{}, false
	}
	j = tightness(torque, duty, t, k, proof)
	if j.Least == nil && j.Most == nil {
		return Tightness{}, false
	}
	if j.Finding == TightOrdinary {
		return j, true
	}
	ordinary := func(meant quantity.Band) bool {
		return tightness(meant, duty, t, k, proof).Finding == TightOrdinary
	}
	for _, u := range mistaken(torque.Unit.Symbol) {
		if meant := mistyped(torque, big.NewRat(1, 1), u); ordinary(meant) {
			j.Slips = append(j.Slips, Slip{Meant: meant})
		}
	}
	if len(j.Slips) > 0 {
		return j, true
	}
	places, by := -1, big.NewRat(1, 10)
	if j.Finding == TightLow {
		places, by = 1, big.NewRat(10, 1)
	}
	if meant := mistyped(torque, by, torque.Unit); ordinary(meant) {
		j.Slips = append(j.Slips, Slip{meant, places})
	}
	return j, true
}

// tightness judges one torque.
func tightness(torque quantity.Band, duty Duty, t Thread, k, proof *big.Rat) (j Tightness) {
	low, high := torque.Low, torque.High
	if low == nil && high == nil && torque.Nominal != nil {
		low, high = torque.Nominal.Value, torque.Nominal.Value
	}
	share := func(x *big.Rat) *big.Rat {
		if x == nil {
			return nil
		}
		f := t.ClampForce(k, quantity.Convert(x, torque.Unit, newtonMeter))
		return f.Quo(f, proof)
	}
	j.Least, j.Most = share(low), share(high)
	top := j.Most
	if top == nil {
		top = j.Least
	}
	switch {
	case top == nil:
	case top.Cmp(big.NewRat(1, 1)) > 0:
		j.Finding = TightAbove
	case top.Cmp(big.NewRat(9, 10)) > 0:
		j.Finding = TightHigh
	case duty == Clamp && j.Least != nil && j.Least.Cmp(big.NewRat(3, 10)) < 0,
		duty == Clamp && j.Least == nil && top.Cmp(big.NewRat(3, 10)) < 0:
		j.Finding = TightLow
	}
	return j
}

// mistaken returns the units that are written for one another.
func mistaken(symbol string) []quantity.Unit {
	switch symbol {
	case "lbf·ft":
		return []quantity.Unit{poundInch, newtonMeter}
	case "lbf·in", "N·m":
		return []quantity.Unit{poundFoot}
	}
	return nil
}

// mistyped returns limits with the digits they have, times by, in another unit:
// what was meant where the unit or the decimal point is wrong.
func mistyped(b quantity.Band, by *big.Rat, u quantity.Unit) quantity.Band {
	b.Unit = u
	return Scaled(b, by, u)
}
