package calc

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

// mostDegrees is how far a shop changes its temperature during a test.
const mostDegrees = 20

var hold = computation{
	name:  "hold",
	about: "pressure or vacuum hold: allowed readings at the end, by temperature",
	options: []option{
		{name: "pressure", example: "70 kPa", about: "what the gauge shows at the start, above the air outside"},
		{name: "vacuum", example: "60 kPa", about: "what a vacuum gauge shows at the start; below 0 where it counts down"},
		{name: "atmosphere", example: "101.3 kPa", about: "air pressure at the site, absolute", needed: true},
		{name: "allowed", example: "2 kPa", about: "the most that it may change by leaking", needed: true},
		{name: "temperature", example: "15 to 25 °C", about: "between what temperatures the shop is at the start", needed: true},
		{name: "marks", example: "0.5 kPa", about: "one graduation of the gauge", needed: true},
		{name: "range", example: "0 to 100 kPa", about: "its lowest and highest graduation"},
		{name: "degrees", example: "5", about: "how far the shop may warm or cool meanwhile; whole degrees", needed: true},
		{name: "referred-to", example: "20 °C", about: "the temperature for which the change is stated; that of the start when left out"},
	},
	example: `--pressure "70 kPa" --atmosphere "101.3 kPa" --allowed "2 kPa" --temperature "15 to 25 °C" --marks "0.5 kPa" --degrees 5`,
	work:    holdSheet,
}

const gasSource = "The gas law at constant volume, P1 / T1 = P2 / T2, absolute pressures and temperatures; 0 °C is 273.15 K by definition."

func holdSheet(a *answers) *sheet {
	from := a.either(true, "pressure", "vacuum")
	scale := a.scale(pascal)
	u := scale.Unit
	start := a.value(from, quantity.Pressure)
	atmosphere := a.positive("atmosphere", quantity.Pressure)
	change := a.positive("allowed", quantity.Pressure)
	shop := a.band("temperature", quantity.Temperature)
	degrees := a.count("degrees", 0, mostDegrees)
	in := shop.In(celsius)
	h := bench.Hold{
		Gauge: scale, Vacuum: from == "vacuum", Start: start.In(u).Value,
		Atmosphere: atmosphere.In(u).Value, Change: change.In(u).Value,
		Coldest: in.Low, Warmest: in.High,
	}
	if a.has("referred-to") {
		v := a.value("referred-to", quantity.Temperature)
		h.Reference = v.In(celsius).Value
	}
	switch {
	case !a.ok():
		return nil
	case shop.Form == quantity.Bare:
		h.Coldest, h.Warmest = in.Nominal.Value, in.Nominal.Value
	case h.Coldest == nil || h.Warmest == nil:
		a.wrong("temperature", "both ends are needed: write it as in `%s`", a.example("temperature"))
		return nil
	}
	degree := shop.Unit.Difference()
	h.Degree = quantity.Convert(big.NewRat(1, 1), degree, kelvin)
	rows, ok := h.EndReadings(int64(degrees))
	if !ok {
		a.fail("such a test cannot be: a pressure is above 0, a vacuum is less deep than the air outside, the change no more than what is there, and the shop above absolute zero; look at each number")
		return nil
	}
	s := a.sheet("Pressure or vacuum hold", "The allowed reading at the end for each change of the shop's temperature, so that a cold draft is not a leak and a leak is not a draft. The part and its air follow the shop.")
	s.formula("P2 = P1 × (t2 + 273.15) / (t1 + 273.15), absolute")
	s.value("", "gauge at the start", start, u)
	s.value("A", "air pressure outside", atmosphere, u)
	s.value("", "change allowed", change, u)
	s.band("t1", "shop at the start", shop, celsius)
	if h.Reference != nil {
		s.input("", "change stated for", s.amount(h.Reference, celsius))
	}
	s.marks("graduations, gauge", scale)
	s.holdSteps(h, rows[0], u)
	word := "at least"
	if rows[0].AtMost {
		word = "at most"
	}
	s.table = [][]string{{"shop at the end, " + degree.Symbol, "tight part", "limit", word}}
	none := false
	for _, r := range rows {
		mark := "none"
		if r.Mark != nil {
			mark = scale.Number(r.Mark, s.mark)
		} else {
			none = true
		}
		s.table = append(s.table, []string{s.signed(quantity.Convert(r.Shift, kelvin, degree)), s.num(r.Tight), s.num(r.Limit), mark})
	}
	if none {
		s.refuse("At the rows marked none no mark is left between a tight part and the limit. Take a gauge with finer marks, hold the shop's temperature, or allow more change.")
	} else {
		s.result("Readings at the end, in ", u.Symbol, ", on the marks of the gauge in the last column.")
	}
	s.source(s.local(gasSource))
	return s
}

// holdSteps works the coldest row out, as an example of all.
func (s *sheet) holdSteps(h bench.Hold, first bench.EndReading, u quantity.Unit) {
	depth := h.Vacuum && h.Start.Sign() > 0 // the gauge counts the depth of the vacuum
	full, sum := new(big.Rat).Add(h.Atmosphere, h.Start), s.num(h.Atmosphere)+s.plus(h.Start)
	if depth {
		full.Sub(h.Atmosphere, h.Start)
		sum = s.num(h.Atmosphere) + " − " + s.num(h.Start)
	}
	s.step("P1 = ", sum, " ", s.equalsIn(full, u), " absolute")
	s.step("The first row, worked out:")
	// A leak lowers a pressure and raises what is left in a vacuum; the strict
	// row is the one that leaves the least of the change.
	strict := func(a, b *big.Rat, most bool) bool { return a == nil || (b.Cmp(a) > 0) == most && b.Cmp(a) != 0 }
	var pressure, change, both *big.Rat
	for _, from := range distinct(h.Coldest, h.Warmest) {
		to, at := new(big.Rat).Add(from, first.Shift), from
		if h.Reference != nil {
			at = h.Reference
		}
		p := s.atTemperature("from "+s.num(from)+" to "+s.num(to)+" °C: ", full, from, to, u)
		c := s.atTemperature("the change there: ", h.Change, at, to, u)
		left := new(big.Rat).Sub(p, c)
		if h.Vacuum {
			left.Add(p, c)
		}
		if h.Reference == nil {
			if strict(both, left, !h.Vacuum) {
				both, pressure, change = left, p, c
			}
			continue
		}
		if strict(pressure, p, !h.Vacuum) {
			pressure = p
		}
		if strict(change, c, false) {
			change = c
		}
	}
	// What is left is small beside its terms: they have more figures, so that it adds up.
	term := func(x *big.Rat) string { text, _ := s.number(x, figures, figures+3); return text }
	text := term(pressure) + " − " + term(change) + " − " + term(h.Atmosphere)
	switch {
	case depth:
		text = term(h.Atmosphere) + " − " + term(pressure) + " − " + term(change)
	case h.Vacuum:
		text = term(pressure) + " + " + term(change) + " − " + term(h.Atmosphere)
	}
	s.step("the strictest on the gauge: ", text, " ", s.equalsIn(first.Limit, u))
}
