package calc

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

var preload = computation{
	name:  "preload",
	about: "rotating torque as a pull on a cord, or the pull as a torque",
	options: []option{
		{name: "torque", example: "1.8 to 2.2 N·m", about: "the limits of the rotating torque, or one value"},
		{name: "pull", example: "48 N", about: "the steady pull on the spring scale, to be turned into a torque"},
		{name: "drum-radius", example: "40 mm", about: "radius on which the cord lies", needed: true},
		{name: "cord", example: "3 mm", about: "how thick the cord is", needed: true},
		{name: "marks", example: "1 N", about: "one graduation of the spring scale"},
		{name: "range", example: "0 to 100 N", about: "its lowest and highest graduation"},
	},
	example: `--torque "1.8 to 2.2 N·m" --drum-radius "40 mm" --cord "3 mm" --marks "1 N"`,
	work:    preloadSheet,
}

const preloadSource = "TM 5-2420-230-24-1: T = F × R. The half cord is the lever of a pull along the middle of the cord."

func preloadSheet(a *answers) *sheet {
	from := a.either(true, "torque", "pull")
	drum := a.positive("drum-radius", quantity.Length)
	cord := a.value("cord", quantity.Length)
	if a.ok() && cord.Value.Sign() < 0 {
		a.wrong("cord", "a cord is not thinner than nothing: write it as in `%s`", a.example("cord"))
	}
	torque := a.band("torque", quantity.Torque)
	pull := a.value("pull", quantity.Force)
	scale := a.scale(forceOf(torque.Unit))
	for _, x := range []*big.Rat{torque.Low, torque.Target(), pull.Value} {
		if a.ok() && x != nil && x.Sign() < 0 {
			a.wrong(from, "this is not below 0: write it as in `%s`", a.example(from))
		}
	}
	if !a.ok() {
		return nil
	}
	s := a.sheet("Preload as a pull", "A steady pull while it turns; ignore breakaway. One layer of cord, square to the shaft, the scale zeroed as it is held.")
	if from == "pull" {
		s.formula("T = F × R, R = radius + half the cord")
	} else {
		s.formula("F = T / R, R = radius + half the cord")
	}
	radius := bench.CordRadius(drum, cord)
	s.value("", "radius of the drum", drum, meter)
	s.value("", "cord", cord, meter)
	s.step("R = ", s.num(drum.In(meter).Value), " + ", s.num(cord.In(meter).Value), " / 2 ", s.equalsIn(radius, meter))
	if from == "pull" {
		s.value("F", "pull", pull, newton)
		t := bench.RotatingTorque(pull, drum, cord)
		s.step("T = ", s.num(pull.In(newton).Value), " × ", s.num(radius), " ", s.equalsIn(t, newtonMeter))
		text := s.rounded(t, newtonMeter)
		if pull.Unit.Symbol == poundForce.Symbol {
			text += " or " + s.rounded(quantity.Convert(t, newtonMeter, poundFoot), poundFoot)
		}
		s.result("The rotating torque is ", text, ".")
		s.source(preloadSource)
		return s
	}
	s.band("T", "rotating torque", torque, newtonMeter)
	limits := torque
	if torque.Form == quantity.Bare { // one value is worked like limits that meet in it
		limits.Form, limits.Low, limits.High = quantity.Range, torque.Nominal.Value, torque.Nominal.Value
	}
	exact, _, _ := bench.Pull(limits, drum, cord, scale)
	for _, l := range limitsOf(limits.In(newtonMeter), exact) {
		if torque.Form == quantity.Bare && !l.low {
			continue
		}
		text := s.num(l.given) + " / " + s.num(radius) + " " + s.equalsIn(quantity.Convert(l.worked, scale.Unit, newton), newton)
		if scale.Unit.Symbol != newton.Symbol {
			text += " " + s.equalsIn(l.worked, scale.Unit)
		}
		s.step("F = ", text)
	}
	if a.has("marks") {
		s.marks("graduations, spring scale", scale)
	}
	switch {
	case torque.Form == quantity.Bare:
		s.result(s.rounded(exact.Low, scale.Unit), " on the spring scale. one torque is not limits: the manual's limits decide which pull is good.")
	case !a.has("marks"):
		s.result(s.span(exact))
	default:
		s.inward(exact, scale, " on the spring scale")
	}
	s.source(preloadSource)
	return s
}

// forceOf returns the unit of force that goes with a unit of torque.
func forceOf(torque quantity.Unit) quantity.Unit {
	if torque.Symbol == poundFoot.Symbol || torque.Symbol == poundInch.Symbol {
		return poundForce
	}
	return newton
}
