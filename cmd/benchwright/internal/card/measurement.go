package card

import (
	"math/big"
	"slices"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/unit"
)

// measurement resolves a plain reading. Its spread can be read from the lowest
// reading on; a backlash has a zero of its own, one of the two stops.
func (r *resolver) measurement(m *procedure.Measurement) *Measurement {
	out := r.scaled(m, quantity.None, nil)
	out.FromLowest = out.Spread != nil && out.Gauge.ZeroAnywhere
	return out
}

// scaled resolves a reading whose limits, of dimension want, are multiplied by
// factor to give what the gauge shows; a nil factor is one.
func (r *resolver) scaled(m *procedure.Measurement, want quantity.Dimension, factor *big.Rat) *Measurement {
	shows, _ := tilted(factor, m.Tilt)
	var convert conversion
	if shows != nil {
		convert = func(b quantity.Band, _ *shop.Gauge) (*quantity.Band, bool) {
			return new(bench.Scaled(b, shows, b.Unit)), true
		}
	}
	out := r.reading(m, want, convert)
	if out.Gauge == nil {
		out.withoutGauge(convert)
	}
	return out
}

// newReading begins a reading. The steps of its branches are resolved when all
// steps exist.
func (r *resolver) newReading(m *procedure.Measurement) *Measurement {
	out := &Measurement{Measurement: m}
	r.branch(m.IfLow, func(to *Step) { out.LowStep = to })
	r.branch(m.IfHigh, func(to *Step) { out.HighStep = to })
	return out
}

// branch passes the step that a branch names to set, when all steps exist.
func (r *resolver) branch(b procedure.Branch, set func(*Step)) {
	if b.Go.Name == "" {
		return
	}
	r.deferred = append(r.deferred, func() {
		steps := r.card.Steps()
		if n, ok := r.number(b.Go); ok && n >= 1 && n <= len(steps) {
			set(steps[n-1])
		}
	})
}

// Readings returns the reading itself.
func (m *Measurement) Readings() []*Measurement { return []*Measurement{m} }

func (m *Measurement) causes() []Cause {
	if m.Gauge == nil {
		return nil
	}
	return toolCauses(&m.Gauge.Item, m.At)
}

func (m *Measurement) complete(c *Card) bool {
	switch {
	case m.Mismatch, !m.Limits.None && m.Limit == nil && m.Table == nil:
		return false
	case m.IfLow.Go.Name != "" && m.LowStep == nil, m.IfHigh.Go.Name != "" && m.HighStep == nil:
		return false
	case m.Gauge == nil:
		return c.Shop == nil || m.Measurement.Gauge.Name == ""
	}
	return !slices.ContainsFunc(m.LimitRows(), func(r MarkRow) bool { return r.Marks == nil }) &&
		(m.Measurement.Spread == nil || m.Spread != nil && m.Span() != nil)
}

// A conversion returns a band as a gauge shows it, nil if that is as written.
// Ok is false if it cannot be converted, which it has reported.
type conversion func(quantity.Band, *shop.Gauge) (band *quantity.Band, ok bool)

// reading resolves a reading whose limits have dimension want. A nil convert
// means that the gauge shows all limits as written.
func (r *resolver) reading(m *procedure.Measurement, want quantity.Dimension, convert conversion) *Measurement {
	out := r.newReading(m)
	out.Limit = r.limit(&m.Limits, want)
	if want == quantity.None || want == quantity.Length {
		out.Table = r.table(m.Limits.Named)
	}
	r.toGauge(out, convert)
	return out
}

// toGauge looks up the gauge of a reading and puts its limits on the marks of
// the gauge.
func (r *resolver) toGauge(out *Measurement, convert conversion) {
	m, s := out.Measurement, r.card.Shop
	if s == nil || m.Gauge.Name == "" {
		return
	}
	gauge, bad := r.gauge(m.Gauge)
	out.Mismatch = out.Mismatch || bad
	if gauge == nil {
		return
	}
	out.Gauge = gauge
	kind := gauge.Scale.Unit.Dimension
	spread := m.Spread
	if convert != nil && out.Limit != nil {
		var ok bool
		if out.Shown, ok = convert(out.Limit.Band, gauge); !ok {
			out.withoutLimits()
			return
		}
		if spread != nil && spread.Unit.Dimension == out.Limit.Band.Unit.Dimension && out.Shown != nil {
			spread, _ = convert(*spread, gauge)
		}
	}
	bands := []*quantity.Band{m.Limits.Expect, spread, out.OnGauge()}
	if out.Table != nil {
		bands = append(bands, new(out.Table.Band(0)))
	}
	for _, b := range bands {
		if b != nil && b.Unit.Dimension != kind {
			d := r.msgs.Report("measure-kind", m.Gauge.At, "name a gauge that reads "+b.Unit.Dimension.String(),
				"`%s` reads %s, and the limits are of %s", m.Gauge.Name, kind, b.Unit.Dimension)
			d.Label = gauge.Name
			out.withoutLimits()
			return
		}
	}
	if m.Tilt != nil && kind != quantity.Length {
		d := r.msgs.Report("measure-kind", m.KeyPlace("tilt"), "take `tilt:` out, or name the lever indicator", "`%s` reads %s, and only a lever indicator is tilted", m.Gauge.Name, kind)
		d.Label = gauge.Name
	}
	out.toMarks(s)
	out.rows(convert, gauge, s)
	if e := m.Limits.Expect; e != nil {
		if marks, ok := e.Inward(gauge.Scale); ok {
			out.Expect = &marks
		}
	}
	if spread != nil && spread.High != nil {
		out.Spread = gauge.Scale.Floor(spread.In(gauge.Scale.Unit).High)
	}
}

// toMarks puts the limits on marks of the gauge: narrowed by the shop's guard
// band, then rounded inward. A block whose gauge shows another quantity sets
// Shown and calls toMarks again.
func (m *Measurement) toMarks(s *shop.Shop) {
	m.Guarded, m.GuardLeftNoMark, m.Marks = nil, false, nil
	if shown := m.OnGauge(); shown != nil && m.Gauge != nil {
		row := onGauge(0, *shown, m.Gauge, s)
		m.Guarded, m.GuardLeftNoMark, m.Marks = row.Guarded, row.GuardLeftNoMark, row.Marks
	}
}

// onGauge puts limits on marks of a gauge, as toMarks does.
func onGauge(mark int, shown quantity.Band, g *shop.Gauge, s *shop.Shop) MarkRow {
	out := MarkRow{Mark: mark, Band: shown}
	marks, ok := shown.Inward(g.Scale)
	if s != nil && s.GuardBand != nil && g.Uncertainty != nil && ok {
		var guarded quantity.Band
		if guarded, ok = bench.Guard(shown, s.GuardBand, *g.Uncertainty); ok {
			out.Guarded = &guarded
			marks, ok = guarded.Inward(g.Scale)
		}
		out.GuardLeftNoMark = !ok
	}
	if ok {
		out.Marks = &marks
	}
	return out
}

// rows puts limits that depend on an etched mark on marks of a gauge.
func (m *Measurement) rows(convert conversion, g *shop.Gauge, s *shop.Shop) {
	if m.Rows = nil; m.Table == nil {
		return
	}
	for _, mark := range m.Table.Marks() {
		b := m.Table.Band(mark)
		if convert != nil {
			if as, ok := convert(b, g); ok && as != nil {
				b = *as
			}
		}
		m.Rows = append(m.Rows, onGauge(mark, b, g, s))
	}
}

// withoutGauge rounds limits that are not printed as written to the digits
// they were typed with, or finer if no such step is inside.
func (m *Measurement) withoutGauge(convert conversion) {
	g := &shop.Gauge{}
	var missed func() bool
	switch {
	case m.Table != nil:
		t := m.Table
		g.Scale = typedScale(t.Nominal.Unit, t.Nominal.Number, t.PerMark.Number, t.Tolerance.Number)
		missed = func() bool {
			m.rows(convert, g, nil)
			return slices.ContainsFunc(m.Rows, func(r MarkRow) bool { return r.Marks == nil })
		}
	case m.Limit != nil && convert != nil:
		g.Scale = typedScale(m.Limit.Band.Unit, m.Limit.Band.Numbers...)
		missed = func() bool {
			exact, _ := convert(m.Limit.Band, g)
			marks, ok := exact.Inward(g.Scale)
			if ok {
				exact.Low, exact.High = marks.Low, marks.High
				m.Shown = exact
			}
			return !ok
		}
	default:
		return
	}
	for range 4 {
		if !missed() {
			return
		}
		g.Scale.Step = new(big.Rat).Quo(g.Scale.Step, big.NewRat(10, 1))
	}
}

// typedScale returns a scale with the finest step of some numbers.
func typedScale(u quantity.Unit, numbers ...quantity.Number) quantity.Scale {
	s := quantity.Scale{Unit: u, Step: big.NewRat(1, 1)}
	for _, n := range numbers {
		if p := n.DigitStep(); p != nil && p.Cmp(s.Step) < 0 {
			s.Step = p
		}
		s.Fractions = s.Fractions || n.Fraction()
	}
	return s
}

// withoutLimits marks a reading whose limits are unknown, which is reported.
func (m *Measurement) withoutLimits() {
	m.Limit, m.Shown, m.Marks, m.Table, m.Rows, m.Mismatch = nil, nil, nil, nil, nil, true
}

// tilted multiplies factor by what a tilted lever shows; nil is one, in and
// out. Ok is false for an angle that no lever can have.
func tilted(factor *big.Rat, tilt *quantity.Value) (shows *big.Rat, ok bool) {
	one := big.NewRat(1, 1)
	if shows = one; factor != nil {
		shows = factor
	}
	if tilt != nil {
		if shows, ok = bench.TiltedReading(shows, inDegrees(tilt)); !ok {
			return nil, false
		}
	}
	if shows.Cmp(one) == 0 {
		return nil, true
	}
	return shows, true
}

// table returns the table of a limit of the unit, nil if it has none.
func (r *resolver) table(limit procedure.Named) *unit.Table {
	u := r.card.Unit
	if u == nil || limit.Name == "" {
		return nil
	}
	if found := u.Limit(limit.Name); found != nil && !found.Bad.IsSet() && found.ForVariant(r.card.VariantID()) == nil {
		return found.Table
	}
	return nil
}

// gauge looks up a gauge and adds it to the kit. It returns nil for an unknown
// one, or one with a bad scale; both are reported.
func (r *resolver) gauge(n procedure.Named) (g *shop.Gauge, bad bool) {
	g, ok := r.card.Shop.Find(n.Name).(*shop.Gauge)
	switch {
	case !ok:
		r.reportUnknown(diag.OnShop, "gauge-unknown", "gauge", n, gaugeIDs(r.card.Shop), "gauges in shop.yaml")
		return nil, false
	case g.Bad.IsSet():
		return nil, true
	}
	r.reportReplaced(n, &g.Item)
	r.addToKit(&g.Item, g)
	return g, false
}

// gaugeOf looks up a gauge for a dimension, nil if it is unusable, which is
// reported.
func (r *resolver) gaugeOf(n procedure.Named, kind quantity.Dimension) *shop.Gauge {
	g, _ := r.gauge(n)
	if g == nil {
		return nil
	}
	if have := g.Scale.Unit.Dimension; have != kind {
		d := r.msgs.Report("measure-kind", n.At, "name a gauge that reads "+kind.String(), "`%s` reads %s, and %s is read here", n.Name, have, kind)
		d.Label = g.Name
		return nil
	}
	return g
}

func gaugeIDs(s *shop.Shop) []string {
	var out []string
	for _, g := range s.Gauges {
		out = append(out, g.ID)
	}
	return out
}
