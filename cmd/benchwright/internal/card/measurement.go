package card

import (
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
)

func (r *resolver) measurement(m *procedure.Measurement) *Measurement {
	out := &Measurement{Measurement: m}
	s := r.card.Shop
	out.Limit = r.limit(&m.Limits, 0)
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
	bands := []*quantity.Band{m.Limits.Expect, m.Spread}
	if out.Limit != nil {
		bands = append(bands, &out.Limit.Band)
	}
	for _, b := range bands {
		if b != nil && b.Unit.Dimension != kind {
			d := r.msgs.Report("unit-kind", m.Gauge.At, "name a gauge that reads "+b.Unit.Dimension.String(),
				"`%s` reads %s, and the limits are of %s", m.Gauge.Name, kind, b.Unit.Dimension)
			d.Label = gauge.Name
			out.Limit, out.Mismatch = nil, true
			return out
		}
	}
	if out.Limit != nil {
		if marks, ok := out.Limit.Band.Inward(gauge.Scale); ok {
			out.Marks = &marks
		}
	}
	if e := m.Limits.Expect; e != nil {
		if marks, ok := e.Inward(gauge.Scale); ok {
			out.Expect = &marks
		}
	}
	if sp := m.Spread; sp != nil && sp.High != nil {
		out.Spread = gauge.Scale.Floor(sp.In(gauge.Scale.Unit).High)
	}
	return out
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
