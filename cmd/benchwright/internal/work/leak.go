package work

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

var leak = computation{
	name:  "leak",
	about: "what leaked in a hold, the temperature taken out, and the leak rate",
	asks: []ask{
		{name: "start", example: "150 kPa", about: "pressure at the start, absolute", must: true},
		{name: "start-at", example: "20 °C", about: "temperature at the start", must: true},
		{name: "end", example: "148.0 kPa", about: "pressure at the end, absolute", must: true},
		{name: "end-at", example: "18 °C", about: "temperature at the end", must: true},
		{name: "referred-to", example: "20 °C", about: "the temperature for which the drop is stated", must: true},
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
		return quantity.Convert(v.Value, v.Unit, celsius)
	}
	t1, t2, to := temperature("start-at"), temperature("end-at"), temperature("referred-to")
	atmosphere := a.above("atmosphere", quantity.Pressure)
	if a.has("volume") || a.has("time") {
		a.need("volume", "time")
	}
	volume, time := a.above("volume", quantity.Volume), a.above("time", quantity.Time)
	if !a.ok() {
		return nil
	}
	s := a.sheet("What leaked", "The drop by leaking alone, as it would be at one temperature.")
	s.formula("drop = P1 × T / T1 − P2 × T / T2, absolute", "T = t + 273.15")
	s.value("", "start", start, u)
	s.value("", "end", end, u)
	p1, p2 := start.Value, quantity.Convert(end.Value, end.Unit, u)
	if a.has("atmosphere") {
		s.value("A", "air pressure, added", atmosphere, u)
		air := quantity.Convert(atmosphere.Value, atmosphere.Unit, u)
		p1, p2 = s.absolute("P1", p1, air, u), s.absolute("P2", p2, air, u)
	}
	for _, t := range [][2]any{{"t1", t1}, {"t2", t2}, {"t", to}} {
		what := map[string]string{"t1": "temperature at the start", "t2": "temperature at the end", "t": "referred to"}[t[0].(string)]
		s.input(t[0].(string), what, s.amount(t[1].(*big.Rat), celsius))
	}
	drop, ok := bench.RealDrop(p1, t1, p2, t2, to)
	if !ok {
		a.fail("such a hold cannot be: an absolute pressure is not below 0, a temperature is above absolute zero; give `--atmosphere` where the gauge shows less than the air outside")
		return nil
	}
	zero := local("273.15", s.mark)
	kelvin := func(t *big.Rat) string { return "(" + s.num(t) + " + " + zero + ")" }
	before, _ := bench.AtTemperature(p1, t1, to)
	after, _ := bench.AtTemperature(p2, t2, to)
	s.step("start: ", s.num(p1), " × ", kelvin(to), " / ", kelvin(t1), " ", s.in(before, u))
	s.step("end:   ", s.num(p2), " × ", kelvin(to), " / ", kelvin(t2), " ", s.in(after, u))
	s.step("drop = ", s.num(before), " − ", s.num(after), " ", s.in(drop, u))
	if drop.Sign() < 0 {
		s.result("It rose by ", s.say(new(big.Rat).Abs(drop), u), " at ", s.say(to, celsius), ": gas came in, as into a leaking vacuum.")
	} else {
		s.result("It fell by ", s.say(drop, u), " at ", s.say(to, celsius), ".")
	}
	if a.has("volume") {
		s.formula("Q = drop × V / time")
		s.value("V", "volume", volume, litre)
		s.value("", "time", time, second)
		pa := quantity.Convert(drop, u, pascal)
		rate, _ := bench.LeakRate(pa, volume.In(litre).Value, time.In(second).Value)
		s.step("Q = ", s.num(pa), " × ", s.num(volume.In(litre).Value), " / ", s.num(time.In(second).Value), " ", s.is(rate), " Pa·L/s")
		s.result("Leak rate: ", s.say(rate, pascal), "·L/s.")
	}
	s.source(local(gasSource, s.mark))
	return s
}

// absolute adds the air pressure to a reading.
func (s *sheet) absolute(symbol string, p, air *big.Rat, u quantity.Unit) *big.Rat {
	sum := new(big.Rat).Add(p, air)
	s.step(symbol, " = ", s.num(p), " + ", s.num(air), " ", s.in(sum, u))
	return sum
}
