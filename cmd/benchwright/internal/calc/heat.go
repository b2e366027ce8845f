package calc

import (
	"math/big"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

var heat = computation{
	name:  "heat",
	about: "how hot a housing, or how cold a shaft, must be to go together",
	options: []option{
		{name: "fit", example: "50 H7/s6", about: "the fit, which gives seat and interference"},
		{name: "interference", example: "0.0010 in", about: "the interference on the diameter, instead of a fit"},
		{name: "seat", example: "1.000 in", about: "diameter of the seat, where no fit gives it"},
		{name: "clearance", example: "0.0020 in", about: "the room to spare that is wanted on the diameter", needed: true},
		{name: "expansion", example: "12.8 ppm/°F", about: "expansion of what is heated or chilled, millionths for each degree", needed: true},
		{name: "inner", example: "6.4 ppm/°F", about: "expansion of the inner part, where it sits inside while it is heated"},
		{name: "how", example: "heat", about: "heat the outer part or chill the inner one: heat or chill", needed: true},
		{name: "shop", example: "70 °F", about: "temperature of the other part", needed: true},
		{name: "marks", example: "5 °F", about: "one graduation of the thermometer; whole degrees when left out"},
		{name: "cap", example: "bearing 250 °F", about: "what must not be exceeded, and why; may be given several times", repeated: true},
	},
	example: `--interference "0.0010 in" --seat "1.000 in" --clearance "0.0020 in" --expansion "12.8 ppm/°F" --how heat --shop "70 °F"`,
	work:    heatSheet,
}

const heatSource = "Linear expansion. Published values for one material differ by 10 %: take its own source. A rolling bearing is not heated above 120 °C: MIL-HDBK-1164, table 17."

func heatSheet(a *answers) *sheet {
	seat, least, most := a.interference()
	clearance := a.value("clearance", quantity.Length)
	if a.ok() && clearance.Value.Sign() < 0 {
		a.wrong("clearance", "room to spare is not below 0: write it as in `%s`", local("0.05 mm", a.mark))
	}
	shop := a.value("shop", quantity.Temperature)
	u := shop.Unit
	expansion, inner := a.positive("expansion", quantity.Expansion), a.value("inner", quantity.Expansion)
	how := a.choice("how", "heat", "chill")
	if how == "chill" && a.has("inner") {
		a.fail("`--inner` is for parts that are heated together: leave it out with `--how chill`")
	}
	caps := a.caps("cap")
	scale := a.scale(u)
	if !a.ok() {
		return nil
	}
	s := a.sheet("Heating and chilling", "How far one part must be from the other's temperature to go over the seat with room to spare.")
	s.formula("Δt = (δ + c) / (α × d)")
	s.interferenceInput(a, seat, least, most)
	s.value("c", "room to spare", clearance, mm)
	s.expansion("α", "expansion", expansion)
	s.value("", "other part", shop, celsius)
	alpha := perDegree(expansion)
	c := clearance.In(mm).Value
	rise, ok := bench.TemperatureRise(most, c, alpha, seat)
	if a.has("inner") {
		s.formula("α is the difference of the two, because the inner part is heated too")
		s.expansion("α'", "expansion of the inner part", inner)
		rise, ok = bench.RiseTogether(most, c, alpha, perDegree(inner), seat)
		s.step("α = ", s.num(alpha), " − ", s.num(perDegree(inner)), " ", s.equals(new(big.Rat).Sub(alpha, perDegree(inner))), " for each °C")
		alpha = new(big.Rat).Sub(alpha, perDegree(inner))
	}
	s.source(heatSource)
	if !ok {
		s.refuse("The inner part expands as much or more: heated together they never come apart. Heat the outer part alone and fast, or press.")
		return s
	}
	s.step("Δt = (", s.num(most), s.plus(c), ") / (", s.num(alpha), " × ", s.num(seat), ") ", s.equalsIn(rise, celsius))
	degree := u.Difference()
	delta := quantity.Convert(rise, kelvin, degree)
	if degree.Symbol != "°C" {
		s.step("that is ", s.amount(delta, degree))
	}
	s.marks("graduations, thermometer", scale)
	s.temperature(shop, delta, how, scale, caps)
	if a.has("inner") && bench.HeatFast(perDegree(expansion), perDegree(inner)) {
		s.result("The two expand nearly alike: heat fast, pull at once.")
	}
	return s
}

// perDegree returns an expansion for each °C.
func perDegree(v quantity.Value) *big.Rat {
	return new(big.Rat).Quo(v.In(perCelsius).Value, big.NewRat(1000000, 1))
}

// expansion enters an expansion, with all its zeros.
func (s *sheet) expansion(symbol, what string, v quantity.Value) {
	text, exact := s.number(perDegree(v), 12, figures)
	sign := "≈ "
	if exact {
		sign = "= "
	}
	s.input(symbol, what, s.typed(v)+" "+sign+text+" for each °C")
}

// temperature gives the temperature to reach, on a mark, inside its caps.
func (s *sheet) temperature(shop quantity.Value, delta *big.Rat, how string, scale quantity.Scale, caps []bench.Cap) {
	u := shop.Unit
	if how == "chill" {
		to := new(big.Rat).Sub(shop.Value, delta)
		s.step("t = ", s.num(shop.Value), " − ", s.num(delta), " ", s.equalsIn(to, u))
		if quantity.Convert(to, u, celsius).Cmp(big.NewRat(-27315, 100)) <= 0 {
			s.refuse("That is colder than anything can be. Heat the outer part too, or press.")
			return
		}
		mark := scale.Floor(quantity.Convert(to, u, scale.Unit))
		s.result("Chill the inner part to ", scale.Print(mark, s.mark), " or below: a difference of ", s.rounded(delta, u), ".")
		return
	}
	to := new(big.Rat).Add(shop.Value, delta)
	s.step("t = ", s.num(shop.Value), " + ", s.num(delta), " ", s.equalsIn(to, u))
	mark := scale.Ceil(quantity.Convert(to, u, scale.Unit))
	for _, c := range caps {
		highest := quantity.Convert(c.Highest, celsius, u)
		s.input("", "cap", c.Why+" "+s.amount(highest, u))
		if strings.Contains(strings.ToLower(c.Why), "bearing") && c.Highest.Cmp(bench.BearingCap) > 0 {
			s.result("A rolling bearing is not heated above ", s.rounded(quantity.Convert(bench.BearingCap, celsius, u), u), " unless its own manual says so.")
		}
	}
	rise := s.rounded(delta, u)
	at, capped := bench.LowestCap(caps)
	if !capped {
		s.result("Heat the outer part to ", scale.Print(mark, s.mark), " or above: a rise of ", rise, ".")
		s.result("No cap was given: look up what bearing, seal and paint bear.")
		return
	}
	lowest := caps[at]
	limit := "the cap of the " + lowest.Why + ", " + s.rounded(quantity.Convert(lowest.Highest, celsius, u), u)
	room := quantity.Convert(shop.Value, u, celsius)
	band, ok := bench.HeatBand(room, new(big.Rat).Sub(quantity.Convert(to, u, celsius), room), lowest.Highest)
	if !ok {
		s.refuse("It would take ", scale.Print(mark, s.mark), ", above ", limit, ". Chill the inner part as well, or press.")
		return
	}
	marks, ok := band.Inward(scale)
	if !ok {
		s.refuse("No mark of the thermometer lies between ", s.rounded(to, u), " and ", limit, ".")
		return
	}
	s.result("Heat the outer part to ", marks.Print(s.mark), ": a rise of ", rise, " at the least, and within ", limit, ".")
}

// caps reads "seal 110 °C".
func (a *answers) caps(name string) []bench.Cap {
	var out []bench.Cap
	for _, text := range a.given[name] {
		at := strings.IndexAny(text, "-−0123456789")
		if at <= 0 || len(out) == 20 {
			a.wrong(name, "`%s` is no cap: write what it protects and the temperature, as in `%s`", short(text), a.example(name))
			return nil
		}
		v, p := quantity.ParseValueOf(text[at:], a.mark, quantity.Temperature)
		if p != nil {
			a.problem(name, p)
			return nil
		}
		out = append(out, bench.Cap{Why: short(strings.TrimSpace(text[:at])), Highest: v.In(celsius).Value})
	}
	return out
}
