package calc

import (
	"math/big"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

var press = computation{
	name:  "press",
	about: "interference fit: pressure on the seat, pressing force, press gauge",
	options: []option{
		{name: "fit", example: "50 H7/s6", about: "the fit, which gives seat and interference"},
		{name: "interference", example: "0.018 to 0.059 mm", about: "the interference on the diameter, instead of a fit"},
		{name: "seat", example: "50 mm", about: "diameter of the seat, where no fit gives it"},
		{name: "outside", example: "80 mm", about: "outside diameter of the hub", needed: true},
		{name: "bore", example: "0 mm", about: "bore of the shaft; 0 mm for a solid one", needed: true},
		{name: "hub-modulus", example: "207 GPa", about: "modulus of elasticity of the hub", needed: true},
		{name: "shaft-modulus", example: "207 GPa", about: "modulus of elasticity of the shaft", needed: true},
		{name: "hub-poisson", example: "0.3", about: "Poisson's ratio of the hub", needed: true},
		{name: "shaft-poisson", example: "0.3", about: "Poisson's ratio of the shaft", needed: true},
		{name: "friction", example: "0.15", about: "friction on the seat, for the force; the highest to expect"},
		{name: "length", example: "30 mm", about: "length of the seat, for the force"},
		{name: "ram", example: "60 mm", about: "diameter of the press's ram, for its gauge"},
	},
	example: `--fit "50 H7/s6" --outside "80 mm" --bore "0 mm" --hub-modulus "207 GPa" --shaft-modulus "207 GPa" --hub-poisson 0.3 --shaft-poisson 0.3 --friction 0.15 --length "30 mm" --ram "60 mm"`,
	work:    pressSheet,
}

const pressSource = "Thick cylinders after Lamé, as in Bhandari, Design of Machine Elements, ch. 22: hub and shaft elastic and as long as each other."

func pressSheet(a *answers) *sheet {
	seat, least, most := a.interference()
	outside := a.positive("outside", quantity.Length)
	bore := a.value("bore", quantity.Length)
	hub, shaft := a.positive("hub-modulus", quantity.Pressure), a.positive("shaft-modulus", quantity.Pressure)
	f := bench.PressFit{
		Outer: outside.In(mm).Value, Seat: seat, Bore: bore.In(mm).Value,
		HubModulus: hub.In(megapascal).Value, ShaftModulus: shaft.In(megapascal).Value,
		HubPoisson: a.poisson("hub-poisson"), ShaftPoisson: a.poisson("shaft-poisson"),
	}
	if a.has("friction") || a.has("length") || a.has("ram") {
		a.need("friction", "length")
	}
	friction := a.positiveNumber("friction").Value
	length, ram := a.positive("length", quantity.Length), a.positive("ram", quantity.Length)
	if a.ok() && (f.Bore.Sign() < 0 || f.Seat.Cmp(f.Bore) <= 0 || f.Outer.Cmp(f.Seat) <= 0) {
		a.fail("these diameters are not in order: the bore is smaller than the seat, the seat smaller than the outside; write all three as measured")
	}
	if !a.ok() {
		return nil
	}
	s := a.sheet("Interference fit", "Pressure on the seat, and the force that moves it at the end of the stroke.")
	s.formula("p = δ / (d × ((H + νh) / Eh + (W − νs) / Es))",
		"H = (D² + d²) / (D² − d²), W = (d² + b²) / (d² − b²)")
	s.interferenceInput(a, seat, least, most)
	s.value("D", "outside of the hub", outside, mm)
	s.value("b", "bore of the shaft", bore, mm)
	s.value("Eh", "modulus of the hub", hub, megapascal)
	s.value("Es", "modulus of the shaft", shaft, megapascal)
	s.input("νh, νs", "Poisson's ratios", s.num(f.HubPoisson)+", "+s.num(f.ShaftPoisson))
	if least.Sign() < 0 {
		least = new(big.Rat)
	}
	if most.Sign() <= 0 {
		s.refuse("This fit has no interference: nothing is pressed.")
		s.source(pressSource)
		return s
	}
	compliance, ok := f.Compliance()
	if !ok {
		s.refuse("A seat of these materials would not give at all: look at the moduli and Poisson's ratios.")
		return s
	}
	h, w := bench.LameRatio(f.Outer, f.Seat), bench.LameRatio(f.Seat, f.Bore)
	s.step("H = (", s.num(f.Outer), "² + ", s.num(f.Seat), "²) / (", s.num(f.Outer), "² − ", s.num(f.Seat), "²) ", s.equals(h))
	s.step("W = (", s.num(f.Seat), "² + ", s.num(f.Bore), "²) / (", s.num(f.Seat), "² − ", s.num(f.Bore), "²) ", s.equals(w))
	s.step("p = δ / (", s.num(f.Seat), " × ((", s.num(h), s.plus(f.HubPoisson), ") / ", s.num(f.HubModulus), " + (", s.num(w), " − ", s.num(f.ShaftPoisson), ") / ", s.num(f.ShaftModulus), "))")
	s.step("δ / p ", s.equals(compliance), " mm for each MPa")
	var pressures []*big.Rat
	for _, delta := range distinct(least, most) {
		p, _ := f.Pressure(delta)
		pressures = append(pressures, p)
		s.step("p = ", s.num(delta), " / ", s.num(compliance), " ", s.equalsIn(p, megapascal))
	}
	s.result("Pressure on the seat: ", s.fromTo(pressures, megapascal), ".")
	if a.has("length") {
		s.force(a, f, pressures, friction, length, ram)
	}
	s.source(pressSource)
	return s
}

// force adds the pressing force and what the gauge of the press shows.
func (s *sheet) force(a *answers, f bench.PressFit, pressures []*big.Rat, friction *big.Rat, length, ram quantity.Value) {
	s.formula("F = μ × p × π × d × L")
	s.input("μ", "friction on the seat", s.num(friction))
	s.value("L", "length of the seat", length, mm)
	long := length.In(mm).Value
	var forces, shown []*big.Rat
	var area *big.Rat
	for _, p := range pressures {
		force := bench.PressForce(friction, p, f.Seat, long)
		s.step("F = ", s.num(friction), " × ", s.num(p), " × π × ", s.num(f.Seat), " × ", s.num(long), " ", s.equalsIn(force, newton))
		forces = append(forces, quantity.Convert(force, newton, kilonewton))
		if a.has("ram") {
			area = bench.RamArea(ram.In(mm).Value)
			reading, _ := bench.RamPressure(force, area)
			shown = append(shown, reading)
		}
	}
	s.result("Pressing force at the end of the stroke: ", s.fromTo(forces, kilonewton), ".")
	if area == nil {
		return
	}
	s.formula("gauge = F / A, A = π / 4 × ram²")
	s.value("", "ram of the press", ram, mm)
	s.step("A = π / 4 × ", s.num(ram.In(mm).Value), "² ", s.equals(area), " mm²")
	for i, reading := range shown {
		s.step("gauge = ", s.num(quantity.Convert(forces[i], kilonewton, newton)), " / ", s.num(area), " ", s.equalsIn(reading, megapascal))
	}
	s.result("The gauge of the press shows ", s.fromTo(shown, megapascal), " then.")
}

// distinct returns both numbers, or one where they are the same.
func distinct(low, high *big.Rat) []*big.Rat {
	if low.Cmp(high) == 0 {
		return []*big.Rat{high}
	}
	return []*big.Rat{low, high}
}

// fromTo prints one number, or two as a span, for a result.
func (s *sheet) fromTo(x []*big.Rat, u quantity.Unit) string {
	last := s.rounded(x[len(x)-1], u)
	if len(x) == 1 {
		return last
	}
	first, _ := s.number(x[0], 3, 4)
	if rest, about := strings.CutPrefix(last, "≈\u00a0"); about {
		return "≈\u00a0" + first + " to " + rest
	}
	return first + " to " + last
}

// interference reads the seat and the interference on it, mm.
func (a *answers) interference() (seat, least, most *big.Rat) {
	thousand := big.NewRat(1000, 1)
	seat, least, most = big.NewRat(1, 1), new(big.Rat), new(big.Rat)
	if a.either(true, "fit", "interference") == "fit" {
		hole, shaft := a.fit("fit", a.text("fit"))
		if a.has("seat") {
			a.fail("`--fit` gives the seat: leave out `--seat`")
		}
		if a.ok() {
			low, high, _ := bench.Interference(hole, shaft)
			return hole.Size, low.Quo(low, thousand), high.Quo(high, thousand)
		}
		return seat, least, most
	}
	a.need("seat")
	seat = a.positive("seat", quantity.Length).In(mm).Value
	b := a.band("interference", quantity.Length)
	if !a.ok() {
		return seat, least, most
	}
	b = b.In(mm)
	switch {
	case b.Form == quantity.Bare:
		least, most = b.Nominal.Value, b.Nominal.Value
	case b.High == nil:
		a.wrong("interference", "the most is not known: write both ends, as in `0.018 to 0.059 mm`")
	default:
		most = b.High
		if b.Low != nil {
			least = b.Low
		}
	}
	return seat, least, most
}

// interferenceInput enters the seat and its interference.
func (s *sheet) interferenceInput(a *answers, seat, least, most *big.Rat) {
	if a.has("fit") {
		s.input("", "fit", a.text("fit"))
		s.source(sizeSource)
	}
	s.input("d", "diameter of the seat", s.amount(seat, mm))
	text := s.amount(most, mm)
	if least.Cmp(most) != 0 {
		text = s.num(least) + " to " + text
	}
	s.input("δ", "interference on it", text)
}

// poisson reads Poisson's ratio.
func (a *answers) poisson(name string) *big.Rat {
	n := a.positiveNumber(name)
	if a.ok() && a.has(name) && n.Value.Cmp(big.NewRat(1, 2)) > 0 {
		a.wrong(name, "Poisson's ratio is 0.5 at the most: write it as in `%s`", a.example(name))
	}
	return n.Value
}
