package work

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

var preload = computation{
	name:  "preload",
	about: "turning torque as a pull on a cord, or the pull as a torque",
	asks: []ask{
		{name: "torque", example: "1.8 to 2.2 N·m", about: "the limits of the turning torque, or one value"},
		{name: "pull", example: "48 N", about: "the steady pull on the spring scale, to be turned into a torque"},
		{name: "drum-radius", example: "40 mm", about: "radius on which the cord lies", must: true},
		{name: "cord", example: "3 mm", about: "how thick the cord is", must: true},
		{name: "marks", example: "1 N", about: "how far the marks of the spring scale lie apart"},
		{name: "range", example: "0 to 100 N", about: "its lowest and highest mark"},
	},
	example: `--torque "1.8 to 2.2 N·m" --drum-radius "40 mm" --cord "3 mm" --marks "1 N"`,
	work:    preloadSheet,
}

const preloadSource = "TM 5-2420-230-24-1: T = F × R. The half cord is the lever of a pull along the middle of the cord."

func preloadSheet(a *answers) *sheet {
	from := a.only(true, "torque", "pull")
	drum := a.above("drum-radius", quantity.Length)
	cord := a.value("cord", quantity.Length)
	if a.ok() && cord.Value.Sign() < 0 {
		a.fail("%sa cord is not thinner than nothing: write it as in `%s`", option("cord"), a.ask("cord").example)
	}
	torque := a.band("torque", quantity.Torque)
	pull := a.value("pull", quantity.Force)
	scale := a.scale("marks", "range", quantity.Force)
	for _, x := range []*big.Rat{torque.Low, torque.Target(), pull.Value} {
		if a.ok() && x != nil && x.Sign() < 0 {
			a.fail("%sthis is not below 0: write it as in `%s`", option(from), a.marked(a.ask(from).example))
		}
	}
	if !a.ok() {
		return nil
	}
	s := a.sheet("Preload as a pull", "A steady pull while it turns, not the pull that starts it: one layer of cord, square to the shaft, the scale zeroed as it is held.")
	if from == "pull" {
		s.formula("T = F × R, R = radius + half the cord")
	} else {
		s.formula("F = T / R, R = radius + half the cord")
	}
	radius := bench.CordRadius(drum, cord)
	s.value("", "radius of the drum", drum, metre)
	s.value("", "cord", cord, metre)
	s.step("R = ", s.num(drum.In(metre).Value), " + ", s.num(cord.In(metre).Value), " / 2 ", s.in(radius, metre))
	if from == "pull" {
		s.value("F", "pull", pull, newton)
		t := bench.TurningTorque(pull, drum, cord)
		s.step("T = ", s.num(pull.In(newton).Value), " × ", s.num(radius), " ", s.in(t, newtonMetre))
		text := s.say(t, newtonMetre)
		if pull.Unit.Symbol == poundForce.Symbol {
			text += " or " + s.say(quantity.Convert(t, newtonMetre, poundFoot), poundFoot)
		}
		s.result("The turning torque is ", text, ".")
		s.source(preloadSource)
		return s
	}
	s.band("T", "turning torque", torque, newtonMetre)
	limits := torque
	if torque.Form == quantity.Bare { // one value is worked like limits that meet in it
		limits.Form, limits.Low, limits.High = quantity.Range, torque.Nominal.Value, torque.Nominal.Value
	}
	if !a.has("marks") {
		scale.Unit = newton
		if torque.Unit.Symbol == poundFoot.Symbol || torque.Unit.Symbol == poundInch.Symbol {
			scale.Unit = poundForce
		}
	}
	exact, marks, ok := bench.Pull(limits, drum, cord, scale)
	in := limits.In(newtonMetre)
	for i, x := range []*big.Rat{in.Low, in.High} {
		if f := []*big.Rat{exact.Low, exact.High}[i]; x != nil && (i == 0 || torque.Form != quantity.Bare) {
			text := s.num(x) + " / " + s.num(radius) + " " + s.in(quantity.Convert(f, scale.Unit, newton), newton)
			if scale.Unit.Symbol != newton.Symbol {
				text += " " + s.in(f, scale.Unit)
			}
			s.step("F = ", text)
		}
	}
	if a.has("marks") {
		s.marks("marks of the spring scale", scale)
	}
	switch {
	case torque.Form == quantity.Bare:
		s.result(s.say(exact.Low, scale.Unit), " on the spring scale. One torque is no limits: the manual's limits decide which pull is good.")
	case !a.has("marks"):
		s.result(s.bare(exact))
	case ok:
		s.result(marks.Print(a.mark), " on the spring scale")
	default:
		s.inward(exact, scale)
	}
	s.source(preloadSource)
	return s
}
