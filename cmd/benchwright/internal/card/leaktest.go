package card

import (
	"math/big"
	"slices"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
)

// A LeakTest is a pressure or vacuum hold test, computed as far as its data
// allows; rules report what is missing.
type LeakTest struct {
	*Measurement
	Block        *procedure.LeakTest
	Thermometer  *shop.Gauge
	PressureBand quantity.Band      // the test pressure as the gauge shows it
	Start        *big.Rat           // the mark to set; nil if the gauge has none inside PressureBand
	Shop         *quantity.Marks    // shop temperature at the start, on marks of the thermometer
	Hold         *bench.Hold        // nil without Start
	MaxDegrees   int64              // the table covers this many degrees of the thermometer to each side
	Rows         []bench.EndReading // nil if such a test is impossible
}

func (t *LeakTest) causes() []Cause {
	out := t.Measurement.causes()
	if !t.Block.Vacuum {
		out = append(out, Cause{"air-test", t.At})
	}
	return out
}

func (t *LeakTest) complete(*Card) bool {
	return len(t.Rows) > 0 && !slices.ContainsFunc(t.Rows, func(r bench.EndReading) bool { return r.Mark == nil })
}

func (r *resolver) leakTest(t *procedure.LeakTest) Item {
	out := &LeakTest{Measurement: r.newReading(&t.Measurement), Block: t}
	s := r.card.Shop
	if s == nil {
		r.reportUnknown(diag.OnShop, "gauge-unknown", "gauge", t.Gauge, nil, "`gauges:` in a `shop:` of this file")
		return out
	}
	out.Gauge = r.gaugeOf(t.Gauge, quantity.Pressure)
	out.Thermometer = r.gaugeOf(t.Thermometer, quantity.Temperature)
	if out.Gauge == nil || out.Thermometer == nil || s.Atmosphere == nil {
		return out
	}
	if m, ok := t.ShopTemperature.Inward(out.Thermometer.Scale); ok {
		out.Shop = &m
	}
	scale, u := out.Gauge.Scale, out.Gauge.Scale.Unit
	atmosphere := s.Atmosphere.In(u).Value
	out.PressureBand = startOn(t, scale, atmosphere)
	if out.Start = nearestMark(out.PressureBand, scale); out.Start == nil {
		return out
	}
	shop := t.ShopTemperature.In(celsius)
	h := &bench.Hold{Gauge: scale, Vacuum: t.Vacuum, Start: out.Start, Atmosphere: atmosphere, Coldest: shop.Low, Warmest: shop.High, Change: change(t, u)}
	if t.Reference != nil {
		h.Reference = t.Reference.In(celsius).Value
	}
	out.MaxDegrees = 5
	if out.Thermometer.Scale.Unit == fahrenheit {
		h.Degree, out.MaxDegrees = big.NewRat(5, 9), 9
	}
	out.Hold = h
	if out.Shop != nil { // else a rule reports that the thermometer cannot show it
		out.Rows, _ = h.EndReadings(out.MaxDegrees)
	}
	return out
}

// startOn returns the test pressure as the gauge shows it: relative to the
// shop's air pressure, and for a vacuum as depth or as a negative pressure,
// according to the scale.
func startOn(t *procedure.LeakTest, s quantity.Scale, atmosphere *big.Rat) quantity.Band {
	b := t.Start.In(s.Unit)
	down := t.Vacuum && s.Low != nil && s.Low.Sign() < 0
	if t.Absolute {
		b = shifted(b, new(big.Rat).Neg(atmosphere)) // negative for a vacuum, like on a scale that counts down
		if t.Vacuum && !down {
			b = negated(b)
		}
	} else if down {
		b = negated(b)
	}
	return b
}

// shifted returns the band moved by an amount.
func shifted(b quantity.Band, by *big.Rat) quantity.Band {
	return mapped(b, func(x *big.Rat) *big.Rat { return new(big.Rat).Add(x, by) })
}

// negated returns the band with its sign changed.
func negated(b quantity.Band) quantity.Band {
	b = mapped(b, func(x *big.Rat) *big.Rat { return new(big.Rat).Neg(x) })
	b.Low, b.High = b.High, b.Low
	return b
}

func mapped(b quantity.Band, f func(*big.Rat) *big.Rat) quantity.Band {
	out := quantity.Band{Form: b.Form, Unit: b.Unit, Written: b.Written}
	if b.Low != nil {
		out.Low = f(b.Low)
	}
	if b.High != nil {
		out.High = f(b.High)
	}
	if b.Nominal != nil {
		out.Nominal = &quantity.Number{Value: f(b.Nominal.Value)}
	}
	return out
}

// change returns the pressure loss allowed, in a unit.
func change(t *procedure.LeakTest, u quantity.Unit) *big.Rat {
	if t.Allowed != nil {
		return t.Allowed.In(u).Value
	}
	drop, _ := bench.LeakDrop(t.Rate.In(pascalLiter).Value, t.Volume.In(liter).Value, t.HoldTime.In(second).Value)
	return quantity.Convert(drop, pascal, u)
}

// nearestMark returns the mark inside the band nearest to its target, the
// lower of two; nil if there is none. A bare value must itself be a mark.
func nearestMark(b quantity.Band, s quantity.Scale) *big.Rat {
	aim := b.Target()
	if b.Form == quantity.Bare {
		b.Low, b.High = aim, aim
	}
	m, ok := b.Inward(s)
	if !ok || m.Low == nil || m.High == nil || m.Low.Cmp(m.High) > 0 {
		return nil
	}
	best := s.Floor(aim)
	if up := new(big.Rat).Add(best, s.Step); new(big.Rat).Sub(up, aim).Cmp(new(big.Rat).Sub(aim, best)) < 0 {
		best = up
	}
	switch {
	case best.Cmp(m.Low) < 0:
		return m.Low
	case best.Cmp(m.High) > 0:
		return m.High
	}
	return best
}
