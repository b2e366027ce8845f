package bench

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
)

// zeroCelsius is 0 °C in kelvin, by definition of the Celsius scale.
var zeroCelsius = big.NewRat(27315, 100)

// AtTemperature returns the pressure of a closed volume of gas that is warmed
// or cooled from one temperature to another:
//
//	P₂ = P₁·T₂/T₁
//
// The pressures are absolute, in one unit, the temperatures in °C. ok is false
// where a temperature is not above absolute zero or the pressure is negative.
// Source: the gas law at constant volume.
func AtTemperature(pressure, from, to *big.Rat) (p *big.Rat, ok bool) {
	t1, t2 := kelvin(from), kelvin(to)
	if t1.Sign() <= 0 || t2.Sign() <= 0 || pressure.Sign() < 0 {
		return nil, false
	}
	p = new(big.Rat).Mul(pressure, t2)
	return p.Quo(p, t1), true
}

// RealDrop returns how far the pressure has fallen by leaking alone, between
// p1 at t1 and p2 at t2, as it would be at the temperature reference:
//
//	ΔP = p1·T/T₁ − p2·T/T₂
//
// The pressures are absolute, in one unit, the temperatures in °C. It is
// negative where gas has come in, as into a leaking vacuum.
func RealDrop(p1, t1, p2, t2, reference *big.Rat) (drop *big.Rat, ok bool) {
	before, ok1 := AtTemperature(p1, t1, reference)
	after, ok2 := AtTemperature(p2, t2, reference)
	if !ok1 || !ok2 {
		return nil, false
	}
	return before.Sub(before, after), true
}

// LeakRate returns Q = ΔP·V/t, in the unit of the drop times that of the volume
// over that of the time: Pa·L/s of pascals, liters and seconds. ok is false
// where the time or the volume is not above zero.
func LeakRate(drop, volume, time *big.Rat) (rate *big.Rat, ok bool) {
	if time.Sign() <= 0 || volume.Sign() <= 0 {
		return nil, false
	}
	q := new(big.Rat).Mul(drop, volume)
	return q.Quo(q, time), true
}

// LeakDrop returns the drop that a leak rate makes in a time, the inverse of
// LeakRate: ΔP = Q·t/V.
func LeakDrop(rate, volume, time *big.Rat) (drop *big.Rat, ok bool) {
	if time.Sign() <= 0 || volume.Sign() <= 0 {
		return nil, false
	}
	d := new(big.Rat).Mul(rate, time)
	return d.Quo(d, volume), true
}

// A Hold is a pressure or vacuum test: fill or draw to a reading, wait, read
// again. All pressures are in the unit of the gauge's scale, the temperatures in
// °C.
//
// Start is what the gauge shows at the start: above zero for pressure; for
// a vacuum above zero on a gauge that counts the depth of the vacuum, below zero
// on one that counts down from the atmosphere.
type Hold struct {
	Gauge            quantity.Scale
	Vacuum           bool
	Start            *big.Rat
	Atmosphere       *big.Rat // absolute, at the site; taken as steady during the hold
	Coldest, Warmest *big.Rat // between these the shop is at the start
	Change           *big.Rat // the most that the pressure may change by leaking, at the temperature Reference
	Reference        *big.Rat // nil for the temperature of the start, whatever it is
	Degree           *big.Rat // one degree of the thermometer, in °C; nil for 1
}

// An EndReading is one row of the table: what the gauge may show at the end.
type EndReading struct {
	Shift  *big.Rat // how much warmer the shop has become, °C
	Tight  *big.Rat // what it shows of a part that does not leak, at the shop temperature that brings it nearest to Limit
	Limit  *big.Rat // what it shows of one that leaks just as much as it may, at the strictest shop temperature
	Mark   *big.Rat // Limit rounded inward to a mark; nil where no mark is left between Tight and Limit on the scale
	AtMost bool     // the reading may be at most Mark; else at least
}

// EndReadings returns the allowed readings at the end, a row for each degree of
// the thermometer by which the shop has changed from −most to +most:
// so that a cold draft is no leak, and no leak hides in a draft. It holds
// for a part and its air that follow the shop. A reading that a row accepts
// means, wherever between Coldest and Warmest the shop was at the start, a leak
// of at most Change. ok is false where the atmosphere, the change or the
// temperatures cannot be, or a vacuum is deeper than the atmosphere allows.
func (h Hold) EndReadings(most int64) (rows []EndReading, ok bool) {
	absolute, sign := h.absolute()
	degree := h.Degree
	if degree == nil {
		degree = big.NewRat(1, 1)
	}
	reach := new(big.Rat).Mul(degree, big.NewRat(most, 1))
	switch {
	case h.Atmosphere.Sign() <= 0, h.Change.Sign() < 0, absolute.Sign() < 0, h.Start.Sign() == 0,
		!h.Vacuum && h.Start.Sign() < 0, h.Vacuum && absolute.Cmp(h.Atmosphere) >= 0,
		h.Gauge.Step == nil, h.Gauge.Step != nil && h.Gauge.Step.Sign() <= 0, degree.Sign() <= 0,
		h.Warmest.Cmp(h.Coldest) < 0, kelvin(h.Coldest).Cmp(reach) <= 0, most < 0,
		h.Reference != nil && kelvin(h.Reference).Sign() <= 0:
		return nil, false
	}
	for _, from := range []*big.Rat{h.Coldest, h.Warmest} {
		if !h.Vacuum && h.changed(from, from).Cmp(absolute) > 0 {
			return nil, false
		}
	}
	// A pressure gauge and one for the depth of a vacuum fall with a leak; one
	// that counts a vacuum down from zero rises.
	atMost := h.Vacuum && sign > 0
	for i := -most; i <= most; i++ {
		row := EndReading{Shift: new(big.Rat).Mul(degree, big.NewRat(i, 1)), AtMost: atMost}
		row.Limit = h.extreme(absolute, true, row.Shift, sign, !atMost)
		row.Tight = h.extreme(absolute, false, row.Shift, sign, atMost)
		row.Mark = h.mark(row)
		rows = append(rows, row)
	}
	return rows, true
}

func kelvin(celsius *big.Rat) *big.Rat { return new(big.Rat).Add(celsius, zeroCelsius) }

// changed returns the allowed change as it is at a temperature, the shop having
// been at from at the start.
func (h Hold) changed(from, to *big.Rat) *big.Rat {
	if h.Reference != nil {
		from = h.Reference
	}
	c := new(big.Rat).Mul(h.Change, kelvin(to))
	return c.Quo(c, kelvin(from))
}

// absolute returns the absolute pressure at the start, and −1 for a gauge that
// counts the depth of a vacuum, else 1.
func (h Hold) absolute() (p *big.Rat, sign int) {
	if h.Vacuum && h.Start.Sign() > 0 {
		return new(big.Rat).Sub(h.Atmosphere, h.Start), -1
	}
	return new(big.Rat).Add(h.Atmosphere, h.Start), 1
}

// extreme returns what the gauge shows after a shift of an absolute pressure at
// the start, less the allowed leak where there is one: the highest or the lowest
// that the shop's temperatures give. Pressure and leak are each steady in the
// temperature, so one of the two ends gives each, and their sum too, unless it
// turns between them: it may where a leak is referred to a temperature of its
// own, and what the two give apart is then a bound, stricter than it need be by
// less than the leak changes over the shop's range.
func (h Hold) extreme(absolute *big.Rat, leak bool, shift *big.Rat, sign int, highest bool) *big.Rat {
	highestAbsolute := highest == (sign > 0)
	var pressures, leaks, both []*big.Rat
	for _, from := range []*big.Rat{h.Coldest, h.Warmest} {
		to := new(big.Rat).Add(from, shift)
		p, _ := AtTemperature(absolute, from, to)
		c := new(big.Rat)
		if leak {
			c = h.changed(from, to)
		}
		if !h.Vacuum {
			c.Neg(c)
		}
		pressures, leaks, both = append(pressures, p), append(leaks, c), append(both, new(big.Rat).Add(p, c))
	}
	p := extremeOf(both, highestAbsolute)
	if leak && h.turns(absolute, shift) {
		p = new(big.Rat).Add(extremeOf(pressures, highestAbsolute), extremeOf(leaks, highestAbsolute))
	}
	p.Sub(p, h.Atmosphere)
	if sign < 0 {
		p.Neg(p)
	}
	return p
}

// turns reports whether the reading after a shift of s has its extreme between the
// shop's temperatures at the start. P(T + s)/T ∓ c(T + s)/R, of a leak c that is
// referred to R, turns where T² is ∓P·s·R/c.
func (h Hold) turns(absolute, shift *big.Rat) bool {
	if h.Reference == nil || h.Change.Sign() == 0 {
		return false
	}
	at := new(big.Rat).Mul(absolute, shift)
	at.Mul(at, kelvin(h.Reference)).Quo(at, h.Change)
	if !h.Vacuum {
		at.Neg(at)
	}
	square := func(t *big.Rat) *big.Rat { k := kelvin(t); return k.Mul(k, k) }
	return at.Cmp(square(h.Coldest)) > 0 && at.Cmp(square(h.Warmest)) < 0
}

// extremeOf returns the highest or the lowest of a list.
func extremeOf(list []*big.Rat, highest bool) *big.Rat {
	out := list[0]
	for _, x := range list[1:] {
		if (x.Cmp(out) > 0) == highest {
			out = x
		}
	}
	return out
}

// mark rounds the limit of a row inward, or returns nil.
func (h Hold) mark(row EndReading) *big.Rat {
	var m *big.Rat
	if row.AtMost {
		if m = h.Gauge.Floor(row.Limit); m.Cmp(row.Tight) < 0 {
			return nil
		}
	} else if m = h.Gauge.Ceil(row.Limit); m.Cmp(row.Tight) > 0 {
		return nil
	}
	low, high := h.Gauge.Ends()
	if low != nil && m.Cmp(low) < 0 || high != nil && m.Cmp(high) > 0 {
		return nil
	}
	return m
}
