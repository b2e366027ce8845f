package work

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

const (
	alongTheTurn = "along-the-turn"
	squareFlank  = "square-to-flank"
)

var lash = computation{
	name:  "lash",
	about: "backlash limits as the dial shows them, at its radius",
	asks: []ask{
		{name: "limits", example: "0.15 to 0.25 mm", about: "the backlash limits", must: true},
		{name: "limits-taken", example: alongTheTurn, about: "how they are meant: along-the-turn or square-to-flank", must: true},
		{name: "limits-at", example: "72 mm", about: "at which radius they hold; often the pitch radius", must: true},
		{name: "dial-stands", example: alongTheTurn, about: "how the dial stands: along-the-turn or square-to-flank", must: true},
		{name: "dial-at", example: "60 mm", about: "the radius at which its stem touches", must: true},
		{name: "pressure-angle", example: "20°", about: "the gears' pressure angle; needed where the two ways differ"},
		{name: "spiral", example: "35°", about: "their spiral angle; 0° for straight teeth"},
		{name: "marks", example: "0.01 mm", about: "how far the marks of the dial lie apart"},
		{name: "module", example: "4.5 mm", about: "the module, to compare with what is usual"},
	},
	example: `--limits "0.15 to 0.25 mm" --limits-taken along-the-turn --limits-at "72 mm" --dial-stands along-the-turn --dial-at "60 mm" --marks "0.01 mm"`,
	work:    lashSheet,
}

func lashSheet(a *answers) *sheet {
	limits := a.limits("limits", quantity.Length)
	stated := bench.LashPoint{Square: a.choice("limits-taken", alongTheTurn, squareFlank) == squareFlank}
	dial := bench.LashPoint{Square: a.choice("dial-stands", alongTheTurn, squareFlank) == squareFlank}
	at, to := a.above("limits-at", quantity.Length), a.above("dial-at", quantity.Length)
	stated.Radius, dial.Radius = at.Value, quantity.Convert(to.Value, to.Unit, at.Unit)
	pressure, spiral := new(big.Rat), new(big.Rat)
	if stated.Square != dial.Square {
		a.need("pressure-angle", "spiral")
		pressure, spiral = a.angle("pressure-angle"), a.angle("spiral")
	}
	scale := a.scale("marks", "", quantity.Length)
	if !a.has("marks") {
		scale.Unit = limits.Unit
	}
	module := a.above("module", quantity.Length)
	if !a.ok() {
		return nil
	}
	s := a.sheet("Backlash on the dial", "The other gear is locked; the dial stands on the one that is turned.")
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
		s.step("cos ", s.num(pressure), "° ", s.is(bench.Cos(pressure)), ", cos ", s.num(spiral), "° ", s.is(bench.Cos(spiral)))
	}
	s.step("f = ", put, " ", s.is(factor))
	in := limits.In(scale.Unit)
	exact, marks, ok := bench.OnDial(limits, factor, scale)
	for i, x := range []*big.Rat{in.Low, in.High} {
		if x != nil {
			s.step([]string{"low limit   ", "high limit  "}[i], s.num(x), " × ", s.num(factor), " ", s.in([]*big.Rat{exact.Low, exact.High}[i], scale.Unit))
		}
	}
	switch {
	case !a.has("marks"):
		s.result(s.bare(exact))
	case ok:
		s.marks("marks of the dial", scale)
		s.result(marks.Print(a.mark), " on the dial")
	default:
		s.marks("marks of the dial", scale)
		s.inward(exact, scale)
	}
	if a.has("module") {
		s.usualLash(limits, module)
	}
	s.source("Geometry: a turn moves each point by its radius; the flank stands at α and β to the turn.")
	return s
}

// usualLash compares limits with what is usual for a module.
func (s *sheet) usualLash(limits quantity.Band, module quantity.Value) {
	size := quantity.Convert(module.Value, module.Unit, mm)
	pitch := new(big.Rat).Quo(big.NewRat(254, 10), size)
	s.value("m", "module", module, mm)
	s.formula(local("diametral pitch = 25.4 / module in mm", s.mark))
	s.step("diametral pitch = ", s.num(big.NewRat(254, 10)), " / ", s.num(size), " ", s.is(pitch))
	low, high, ok := bench.UsualLash(pitch)
	if !ok {
		s.result("The table of usual backlash has rows for diametral pitch 4 to 8 alone: no comparison.")
		return
	}
	usual := quantity.Band{Low: low, High: high, Unit: inch}
	text := "usual is " + s.bare(usual) + " (" + s.bare(usual.In(mm)) + ")."
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
	degrees := quantity.Convert(v.Value, v.Unit, degree)
	if a.ok() && (degrees.Sign() < 0 || degrees.Cmp(big.NewRat(90, 1)) >= 0) {
		a.fail("%sthis angle is from 0° to below 90°: write it as in `%s`", option(name), a.ask(name).example)
	}
	return degrees
}
