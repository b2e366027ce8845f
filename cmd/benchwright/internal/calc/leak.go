package calc

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

var leak = computation{
	name:  "leak",
	about: "what leaked in a hold, the temperature taken out, and the leak rate",
	options: []option{
		{name: "start", example: "150 kPa", about: "pressure at the start, absolute", needed: true},
		{name: "start-at", example: "20 °C", about: "temperature at the start", needed: true},
		{name: "end", example: "148.0 kPa", about: "pressure at the end, absolute", needed: true},
		{name: "end-at", example: "18 °C", about: "temperature at the end", needed: true},
		{name: "referred-to", example: "20 °C", about: "the temperature for which the drop is stated", needed: true},
		{name: "atmosphere", example: "101.3 kPa", about: "air pressure at the site; where it is given, start and end are as the gauge shows them"},
		{name: "volume", example: "3.5 L", about: "volume under test, for the rate"},
		{name: "time", example: "10 min", about: "how long it was held, for the rate"},
	},
	example: `--start "150 kPa" --start-at "20 °C" --end "148.0 kPa" --end-at "18 °C" --referred-to "20 °C" --volume "3.5 L" --time "10 min"`,
	work:    leakSheet,
}

func leakSheet(a *answers) *sheet {
	start, end := a.value("start", quantity.Pressure), a.value("end", quantity.Pressure)
	u := start.Unit
	temperature := func(name string) *big.Rat {
		v := a.value(name, quantity.Temperature)
		return v.In(celsius).Value
	}
	t1, t2, to := temperature("start-at"), temperature("end-at"), temperature("referred-to")
	atmosphere := a.positive("atmosphere", quantity.Pressure)
	if a.has("volume") || a.has("time") {
		a.need("volume", "time")
	}
	volume, time := a.positive("volume", quantity.Volume), a.positive("time", quantity.Time)
	if !a.ok() {
		return nil
	}
	s := a.sheet("What leaked", "The drop by leaking alone, as it would be at one temperature.")
	s.formula("drop = P1 × T / T1 − P2 × T / T2, absolute", "T = t + 273.15")
	s.value("", "start", start, u)
	s.value("", "end", end, u)
	p1, p2 := start.Value, end.In(u).Value
	if a.has("atmosphere") {
		s.value("A", "air pressure, added", atmosphere, u)
		air := atmosphere.In(u).Value
		p1, p2 = s.absolute("P1", p1, air, u), s.absolute("P2", p2, air, u)
	}
	s.input("t1", "temperature at the start", s.amount(t1, celsius))
	s.input("t2", "temperature at the end", s.amount(t2, celsius))
	s.input("t", "referred to", s.amount(to, celsius))
	drop, ok := bench.RealDrop(p1, t1, p2, t2, to)
	if !ok {
		a.fail("such a hold cannot be: an absolute pressure is not below 0, a temperature is above absolute zero; give `--atmosphere` where the gauge shows less than the air outside")
		return nil
	}
	before := s.atTemperature("start: ", p1, t1, to, u)
	after := s.atTemperature("end:   ", p2, t2, to, u)
	s.step("drop = ", s.num(before), " − ", s.num(after), " ", s.equalsIn(drop, u))
	if drop.Sign() < 0 {
		s.result("It rose by ", s.rounded(new(big.Rat).Abs(drop), u), " at ", s.rounded(to, celsius), ": gas came in, as into a leaking vacuum.")
	} else {
		s.result("It fell by ", s.rounded(drop, u), " at ", s.rounded(to, celsius), ".")
	}
	if a.has("volume") {
		s.formula("Q = drop × V / time")
		s.value("V", "volume", volume, liter)
		s.value("", "time", time, second)
		pa := quantity.Convert(drop, u, pascal)
		rate, _ := bench.LeakRate(pa, volume.In(liter).Value, time.In(second).Value)
		s.step("Q = ", s.num(pa), " × ", s.num(volume.In(liter).Value), " / ", s.num(time.In(second).Value), " ", s.equals(rate), " Pa·L/s")
		s.result("Leak rate: ", s.rounded(rate, pascal), "·L/s.")
	}
	s.source(s.local(gasSource))
	return s
}

// absolute adds the air pressure to a reading.
func (s *sheet) absolute(symbol string, p, air *big.Rat, u quantity.Unit) *big.Rat {
	sum := new(big.Rat).Add(p, air)
	s.step(symbol, " = ", s.num(p), " + ", s.num(air), " ", s.equalsIn(sum, u))
	return sum
}

// atTemperature works out, as a step, what a pressure or a change of pressure at
// one temperature, °C, is at another.
func (s *sheet) atTemperature(what string, pressure, from, to *big.Rat, u quantity.Unit) *big.Rat {
	kelvin := func(t *big.Rat) string { return "(" + s.num(t) + s.local(" + 273.15)") }
	p, _ := bench.AtTemperature(pressure, from, to)
	s.step(what, s.num(pressure), " × ", kelvin(to), " / ", kelvin(from), " ", s.equalsIn(p, u))
	return p
}
