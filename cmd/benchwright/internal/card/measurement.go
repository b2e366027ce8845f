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

// scaled resolves a reading whose limits, of a kind, are multiplied by a factor, nil for
// one, to be what stands before the gauge.
func (r *resolver) scaled(m *procedure.Measurement, want quantity.Dimension, factor *big.Rat) *Measurement {
	shows, _ := tilted(factor, m.Tilt)
	var on shown
	if shows != nil {
		on = func(b quantity.Band, _ *shop.Gauge) (*quantity.Band, bool) {
			return new(bench.Scaled(b, shows, b.Unit)), true
		}
	}
	out := r.reading(m, want, on)
	if out.Gauge == nil {
		out.withoutGauge(on)
	}
	return out
}

// newReading begins a reading: the steps that its branches name are found when all
// steps are there.
func (r *resolver) newReading(m *procedure.Measurement) *Measurement {
	out := &Measurement{Measurement: m}
	r.branch(m.IfLow, func(to *Step) { out.LowGo = to })
	r.branch(m.IfHigh, func(to *Step) { out.HighGo = to })
	return out
}

// branch gives set the step that a branch names, once all steps are there.
func (r *resolver) branch(b procedure.Branch, set func(*Step)) {
	if b.Go.Name == "" {
		return
	}
	r.later = append(r.later, func() {
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
	return carried(&m.Gauge.Item, m.At)
}

func (m *Measurement) whole(c *Card) bool {
	switch {
	case m.Mismatch, !m.Limits.None && m.Limit == nil && m.Table == nil:
		return false
	case m.IfLow.Go.Name != "" && m.LowGo == nil, m.IfHigh.Go.Name != "" && m.HighGo == nil:
		return false
	case m.Gauge == nil:
		return c.Shop == nil || m.Measurement.Gauge.Name == ""
	}
	return !slices.ContainsFunc(m.Judged(), func(r MarkRow) bool { return r.Marks == nil }) &&
		(m.Measurement.Spread == nil || m.Spread != nil && m.Span() != nil)
}

// shown returns how a gauge shows a band, nil where it does so as written; ok is
// false where it cannot, which it has reported.
type shown func(quantity.Band, *shop.Gauge) (band *quantity.Band, ok bool)

// reading resolves a reading whose limits are of a kind. On is nil where the
// gauge shows all limits as they are written.
func (r *resolver) reading(m *procedure.Measurement, want quantity.Dimension, on shown) *Measurement {
	out := r.newReading(m)
	out.Limit = r.limit(&m.Limits, want)
	if want == quantity.None || want == quantity.Length {
		out.Table = r.table(m.Limits.Named)
	}
	r.toGauge(out, on)
	return out
}

// toGauge finds the gauge of a reading, and carries what limits it has to its
// marks.
func (r *resolver) toGauge(out *Measurement, on shown) {
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
	if on != nil && out.Limit != nil {
		var ok bool
		if out.Shown, ok = on(out.Limit.Band, gauge); !ok {
			out.withoutLimits()
			return
		}
		if spread != nil && spread.Unit.Dimension == out.Limit.Band.Unit.Dimension && out.Shown != nil {
			spread, _ = on(*spread, gauge)
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
	out.settle(s)
	out.rows(on, gauge, s)
	if e := m.Limits.Expect; e != nil {
		if marks, ok := e.Inward(gauge.Scale); ok {
			out.Expect = &marks
		}
	}
	if spread != nil && spread.High != nil {
		out.Spread = gauge.Scale.Floor(spread.In(gauge.Scale.Unit).High)
	}
}

// settle carries the limits to the gauge: as it shows them, narrowed by the
// shop's guard band, then inward to its marks. A block whose gauge shows
// something else than the limits say sets Shown and settles again.
func (m *Measurement) settle(s *shop.Shop) {
	m.Guarded, m.GuardTook, m.Marks = nil, false, nil
	if shown := m.OnGauge(); shown != nil && m.Gauge != nil {
		on := onGauge(0, *shown, m.Gauge, s)
		m.Guarded, m.GuardTook, m.Marks = on.Guarded, on.GuardTook, on.Marks
	}
}

// onGauge carries limits to a gauge, as settle does.
func onGauge(mark int, shown quantity.Band, g *shop.Gauge, s *shop.Shop) MarkRow {
	out := MarkRow{Mark: mark, Band: shown}
	marks, ok := shown.Inward(g.Scale)
	if s != nil && s.GuardBand != nil && g.Uncertainty != nil && ok {
		var guarded quantity.Band
		if guarded, ok = bench.Guard(shown, s.GuardBand, *g.Uncertainty); ok {
			out.Guarded = &guarded
			marks, ok = guarded.Inward(g.Scale)
		}
		out.GuardTook = !ok
	}
	if ok {
		out.Marks = &marks
	}
	return out
}

// rows carries limits that follow a mark to a gauge.
func (m *Measurement) rows(on shown, g *shop.Gauge, s *shop.Shop) {
	if m.Rows = nil; m.Table == nil {
		return
	}
	for _, mark := range m.Table.Marks() {
		b := m.Table.Band(mark)
		if on != nil {
			if as, ok := on(b, g); ok && as != nil {
				b = *as
			}
		}
		m.Rows = append(m.Rows, onGauge(mark, b, g, s))
	}
}

// withoutGauge puts limits that are not printed as they are written on a scale
// with the digits that they were typed with, or finer where no mark of it lies
// inside.
func (m *Measurement) withoutGauge(on shown) {
	g := &shop.Gauge{}
	var missed func() bool
	switch {
	case m.Table != nil:
		t := m.Table
		g.Scale = typedScale(t.Nominal.Unit, t.Nominal.Number, t.PerMark.Number, t.Tolerance.Number)
		missed = func() bool {
			m.rows(on, g, nil)
			return slices.ContainsFunc(m.Rows, func(r MarkRow) bool { return r.Marks == nil })
		}
	case m.Limit != nil && on != nil:
		g.Scale = typedScale(m.Limit.Band.Unit, m.Limit.Band.Numbers...)
		missed = func() bool {
			exact, _ := on(m.Limit.Band, g)
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

// typedScale is a scale whose step is the finest place of some numbers.
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

// withoutLimits leaves a reading whose limits cannot be told, which is
// reported.
func (m *Measurement) withoutLimits() {
	m.Limit, m.Shown, m.Marks, m.Table, m.Rows, m.Mismatch = nil, nil, nil, nil, nil, true
}

// tilted joins a factor, nil for one, with what a lever shows that is tilted;
// nil is one again. ok is false for an angle that no lever has.
func tilted(factor *big.Rat, tilt *quantity.Value) (shows *big.Rat, ok bool) {
	one := big.NewRat(1, 1)
	if shows = one; factor != nil {
		shows = factor
	}
	if tilt != nil {
		if shows, ok = bench.TiltedReading(shows, degrees(tilt)); !ok {
			return nil, false
		}
	}
	if shows.Cmp(one) == 0 {
		return nil, true
	}
	return shows, true
}

// table returns the table of marks that a limit of the unit is, nil for any other.
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

// gauge finds a gauge of the shop and puts it in the kit. It returns nil where
// there is none of the name, or where its scale is bad: both are reported.
func (r *resolver) gauge(n procedure.Named) (g *shop.Gauge, bad bool) {
	g, ok := r.card.Shop.Find(n.Name).(*shop.Gauge)
	switch {
	case !ok:
		r.unknown(diag.OnShop, "gauge-unknown", "gauge", n, gaugeIDs(r.card.Shop), "gauges in shop.yaml")
		return nil, false
	case g.Bad.IsSet():
		return nil, true
	}
	r.superseded(n, &g.Item)
	r.kit(&g.Item, g)
	return g, false
}

// gaugeOf finds a gauge that must read a kind of quantity, nil where it is not
// to be used, which is reported.
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
