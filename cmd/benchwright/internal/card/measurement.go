package card

import (
	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
)

func (r *resolver) measurement(m *procedure.Measurement) *Measurement {
	return r.reading(m, quantity.None, nil)
}

// reading resolves a reading whose limits are of a kind. Shown, where it is not
// nil, returns how the gauge shows a band, nil where it does so as written; ok
// is false where it cannot, which it has reported.
func (r *resolver) reading(m *procedure.Measurement, want quantity.Dimension, shown func(quantity.Band, *shop.Gauge) (band *quantity.Band, ok bool)) *Measurement {
	out := &Measurement{Measurement: m}
	s := r.card.Shop
	out.Limit = r.limit(&m.Limits, want)
	if s == nil || m.Gauge.Name == "" {
		return out
	}
	gauge, ok := s.Find(m.Gauge.Name).(*shop.Gauge)
	if !ok {
		r.unknown("gauge-unknown", "gauge", m.Gauge, gaugeIDs(s), "gauges in shop.yaml")
		return out
	}
	if gauge.Bad {
		out.Mismatch = true
		return out
	}
	r.superseded(m.Gauge, &gauge.Item)
	out.Gauge = gauge
	r.kit(&gauge.Item, gauge)
	kind := gauge.Scale.Unit.Dimension
	spread := m.Spread
	if shown != nil && out.Limit != nil {
		var ok bool
		if out.Shown, ok = shown(out.Limit.Band, gauge); !ok {
			out.Limit, out.Mismatch = nil, true
			return out
		}
		if spread != nil && spread.Unit.Dimension != kind && out.Shown != nil {
			spread, _ = shown(*spread, gauge)
		}
	}
	bands := []*quantity.Band{m.Limits.Expect, spread, out.OnGauge()}
	for _, b := range bands {
		if b != nil && b.Unit.Dimension != kind {
			d := r.msgs.Report("unit-kind", m.Gauge.At, "name a gauge that reads "+b.Unit.Dimension.String(),
				"`%s` reads %s, and the limits are of %s", m.Gauge.Name, kind, b.Unit.Dimension)
			d.Label = gauge.Name
			out.Limit, out.Mismatch = nil, true
			return out
		}
	}
	out.settle(s)
	if e := m.Limits.Expect; e != nil {
		if marks, ok := e.Inward(gauge.Scale); ok {
			out.Expect = &marks
		}
	}
	if spread != nil && spread.High != nil {
		out.Spread = gauge.Scale.Floor(spread.In(gauge.Scale.Unit).High)
	}
	return out
}

// settle carries the limits to the gauge: as it shows them, narrowed by the
// shop's guard band, then inward to its marks. A block whose gauge shows
// something else than the limits say sets Shown and settles again.
func (m *Measurement) settle(s *shop.Shop) {
	m.Guarded, m.GuardTook, m.Marks = nil, false, nil
	shown := m.OnGauge()
	if shown == nil || m.Gauge == nil {
		return
	}
	marks, ok := shown.Inward(m.Gauge.Scale)
	if s != nil && s.GuardBand != nil && m.Gauge.Uncertainty != nil && ok {
		var guarded quantity.Band
		if guarded, ok = bench.Guard(*shown, s.GuardBand, *m.Gauge.Uncertainty); ok {
			m.Guarded = &guarded
			marks, ok = guarded.Inward(m.Gauge.Scale)
		}
		m.GuardTook = !ok
	}
	if ok {
		m.Marks = &marks
	}
}

func gaugeIDs(s *shop.Shop) []string {
	var out []string
	for _, g := range s.Gauges {
		out = append(out, g.ID)
	}
	return out
}

// branches finds the steps that if-low and if-high name.
func (r *resolver) branches() {
	steps := r.card.Steps()
	find := func(b procedure.Branch) *Step {
		if b.Go.Name == "" {
			return nil
		}
		if n, ok := r.number(b.Go); ok && n >= 1 && n <= len(steps) {
			return steps[n-1]
		}
		return nil
	}
	for _, s := range steps {
		for _, i := range s.Items {
			if m := ReadingOf(i); m != nil {
				m.LowGo, m.HighGo = find(m.IfLow), find(m.IfHigh)
			}
		}
	}
}
