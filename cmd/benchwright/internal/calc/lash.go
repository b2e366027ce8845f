package calc

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

const (
	tangent       = "tangent"
	normalToFlank = "normal-to-flank"
)

var lash = computation{
	name:  "lash",
	about: "backlash limits as the dial shows them, at its radius",
	options: []option{
		{name: "limits", example: "0.15 to 0.25 mm", about: "the backlash limits", needed: true},
		{name: "limits-taken", example: tangent, about: "how they are meant: tangent or normal-to-flank", needed: true},
		{name: "limits-at", example: "72 mm", about: "at which radius they hold; often the pitch radius", needed: true},
		{name: "dial-stands", example: tangent, about: "how the stem stands: tangent or normal-to-flank", needed: true},
		{name: "dial-at", example: "60 mm", about: "the radius at which its stem touches", needed: true},
		{name: "pressure-angle", example: "20°", about: "the gears' pressure angle; needed where the two ways differ"},
		{name: "spiral", example: "35°", about: "their spiral angle; 0° for straight teeth"},
		{name: "marks", example: "0.01 mm", about: "one graduation of the dial"},
		{name: "module", example: "4.5 mm", about: "the module, to compare with what is usual"},
	},
	example: `--limits "0.15 to 0.25 mm" --limits-taken tangent --limits-at "72 mm" --dial-stands tangent --dial-at "60 mm" --marks "0.01 mm"`,
	work:    lashSheet,
}

func lashSheet(a *answers) *sheet {
	limits := a.limits("limits", quantity.Length)
	stated := bench.LashPoint{Square: a.choice("limits-taken", tangent, normalToFlank) == normalToFlank}
	dial := bench.LashPoint{Square: a.choice("dial-stands", tangent, normalToFlank) == normalToFlank}
	at, to := a.positive("limits-at", quantity.Length), a.positive("dial-at", quantity.Length)
	stated.Radius, dial.Radius = at.Value, to.In(at.Unit).Value
	pressure, spiral := new(big.Rat), new(big.Rat)
	if stated.Square != dial.Square {
		a.need("pressure-angle", "spiral")
		pressure, spiral = a.angle("pressure-angle"), a.angle("spiral")
	}
	scale := a.scale(limits.Unit)
	module := a.positive("module", quantity.Length)
	if !a.ok() {
		return nil
	}
	s := a.sheet("Backlash on the indicator", "The other gear is locked; the indicator is on the one that is turned.")
	factor := bench.LashFactor(stated, dial, pressure, spiral)
	s.band("j", "backlash limits", limits, scale.Unit)
	s.value("r", "radius where they hold", at, at.Unit)
	s.value("r'", "radius of the dial", to, at.Unit)
	put := s.num(dial.Radius) + " / " + s.num(stated.Radius)
	flank := "cos " + s.num(pressure) + "° × cos " + s.num(spiral) + "°"
	switch {
	case stated.Square == dial.Square:
		s.formula("f = r' / r")
	case dial.Square:
		s.formula("f = r' / r × cos α × cos β")
		put += " × " + flank
	default:
		s.formula("f = r' / r / (cos α × cos β)")
		put += " / (" + flank + ")"
	}
	s.formula("on the dial = j × f")
	if stated.Square != dial.Square {
		s.input("α", "pressure angle", s.num(pressure)+"°")
		s.input("β", "spiral angle", s.num(spiral)+"°")
		s.step("cos ", s.num(pressure), "° ", s.equals(bench.Cos(pressure)), ", cos ", s.num(spiral), "° ", s.equals(bench.Cos(spiral)))
	}
	s.step("f = ", put, " ", s.equals(factor))
	exact, _, _ := bench.OnDial(limits, factor, scale)
	for _, l := range limitsOf(limits.In(scale.Unit), exact) {
		s.step(l.name("  "), s.num(l.given), " × ", s.num(factor), " ", s.equalsIn(l.worked, scale.Unit))
	}
	if a.has("marks") {
		s.marks("graduations, dial", scale)
		s.inward(exact, scale, " on the dial")
	} else {
		s.result(s.span(exact))
	}
	if a.has("module") {
		s.usualLash(limits, module)
	}
	s.source("Geometry: a turn moves each point by its radius; the flank stands at α and β to the turn.")
	return s
}

// usualLash compares limits with what is usual for a module.
func (s *sheet) usualLash(limits quantity.Band, module quantity.Value) {
	size := module.In(mm).Value
	pitch := new(big.Rat).Quo(big.NewRat(254, 10), size)
	s.value("m", "module", module, mm)
	s.formula(s.local("diametral pitch = 25.4 / module in mm"))
	s.step("diametral pitch = ", s.num(big.NewRat(254, 10)), " / ", s.num(size), " ", s.equals(pitch))
	low, high, ok := bench.UsualLash(pitch)
	if !ok {
		s.result("The table of usual backlash has rows for diametral pitch 4 to 8 alone: no comparison.")
		return
	}
	usual := quantity.Band{Low: low, High: high, Unit: inch}
	text := "usual is " + s.span(usual) + " (" + s.span(usual.In(mm)) + ")."
	switch bench.JudgeLash(limits, pitch) {
	case bench.LashSmall:
		s.result("These limits are unusually small: ", text)
	case bench.LashLarge:
		s.result("These limits are unusually large: ", text)
	default:
		s.result("These limits are ordinary: ", text)
	}
	s.source("AGMA recommended backlash by diametral pitch, quality 7 to 13.")
}

// angle reads an angle from 0° to below 90°.
func (a *answers) angle(name string) *big.Rat {
	v := a.value(name, quantity.Angle)
	degrees := v.In(degree).Value
	if a.ok() && (degrees.Sign() < 0 || degrees.Cmp(big.NewRat(90, 1)) >= 0) {
		a.wrong(name, "this angle is from 0° to below 90°: write it as in `%s`", a.example(name))
	}
	return degrees
}
