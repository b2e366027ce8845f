package check

import (
	"math/big"
	"slices"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
)

// marks checks that the gauge reaches the limits and has a mark inside them.
// Of limits that depend on an etched mark, it reports the first row that
// fails.
func marks(p *pass) {
	eachReading(p, func(i card.Item, m *card.Measurement) {
		if m.Gauge == nil || m.Gauge.Scale.Step == nil {
			return
		}
		for _, row := range m.LimitRows() {
			if row.Marks == nil {
				after := ""
				if row.GuardLeftNoMark {
					after = ": the shop's guard band leaves none"
				}
				p.msgs.Report("no-mark-in-limits", m.GaugePlace(), p.betterGauge(m, row.Band, row.GuardLeftNoMark)+otherDrum(i), "`%s` has no graduation inside %s%s", m.Gauge.ID, m.Written(row), after)
				return
			}
			if _, poured := i.(*card.Fill); !poured && !reaches(m.Gauge.Scale, row.Band) {
				fix := "name a gauge whose range holds the limits"
				if name := p.finestSuitable(row.Band, false); name != "" {
					fix = "write `" + m.GaugeKey() + ": " + name + "`"
				}
				p.msgs.Report("gauge-range", m.GaugePlace(), fix+otherDrum(i), "`%s` does not reach all of %s", m.Gauge.ID, m.Written(row))
				return
			}
		}
	})
}

// reaches reports whether both ends of the limits are on a scale.
func reaches(s quantity.Scale, b quantity.Band) bool {
	b = b.In(s.Unit)
	within := func(x *big.Rat) bool { return s.High == nil || x.Cmp(s.High) <= 0 }
	above := func(x *big.Rat) bool { return s.Low == nil || x.Cmp(s.Low) >= 0 }
	// For a one-sided limit, part of the scale must be on the allowed side.
	return (b.High == nil || within(b.High) && (b.Low != nil || above(b.High))) && (b.Low == nil || above(b.Low) && (b.High != nil || within(b.Low)))
}

// otherDrum suggests a drum that brings a pull onto the scale: a larger one
// reduces it.
func otherDrum(i card.Item) string {
	pre, ok := i.(*card.Preload)
	if !ok || pre.Block.Drum == nil {
		return ""
	}
	if high := pre.Shown.High; high != nil && pre.Gauge.Scale.High != nil && high.Cmp(pre.Gauge.Scale.High) > 0 {
		return ", or wind the cord on a larger drum"
	}
	return ", or wind the cord on a smaller drum"
}

// The gauge rule of a shop that states none: 5 and 2 marks are common
// practice, 4 to 1 is ANSI/NCSL Z540.3, 5.3.
var marksWarn, marksError, minRatio = big.NewRat(5, 1), big.NewRat(2, 1), big.NewRat(4, 1)

// gaugeRule returns the shop's rule, with defaults for what it does not state.
func (p *pass) gaugeRule() (warn, refuse, ratio *big.Rat) {
	or := func(stated, usual *big.Rat) *big.Rat {
		if stated != nil {
			return stated
		}
		return usual
	}
	return or(p.Shop.MarksWarn, marksWarn), or(p.Shop.MarksError, marksError), or(p.Shop.UncertaintyRatio, minRatio)
}

// gauges checks that a gauge is fine enough for its limits.
func gauges(p *pass) {
	eachReading(p, func(i card.Item, m *card.Measurement) {
		if m.Gauge == nil {
			if p.Shop != nil && m.GaugePlace() == m.At && !m.Limits.Bad.IsSet() && (m.Limit != nil || m.Table != nil || m.Limits.None) {
				p.msgs.Report("gauge-missing", m.At, "name the gauge with `gauge:`", "this measurement names no gauge, so its limits are not on the scale that is read")
			}
			return
		}
		rows := m.LimitRows()
		if len(rows) == 0 || slices.ContainsFunc(rows, func(r card.MarkRow) bool { return r.Marks == nil }) {
			return
		}
		row := rows[0] // all limits that depend on a mark are equally wide
		warn, refuse, least := p.gaugeRule()
		if n, ok := bench.MarksAcross(row.Band, m.Gauge.Scale); ok {
			slug := map[bench.Fitness]string{bench.Coarse: "gauge-coarse", bench.TooCoarse: "gauge-too-coarse"}[bench.JudgeMarks(n, warn, refuse)]
			if slug != "" {
				p.msgs.Report(slug, m.GaugePlace(), p.betterGauge(m, row.Band, false)+otherDrum(i), "%s is only %s graduations of `%s`", m.Written(row), oneDecimal(n), m.Gauge.ID)
			}
		}
		if u := m.Gauge.Uncertainty; u != nil {
			if ratio, ok := bench.UncertaintyRatio(row.Band, *u); ok && ratio.Cmp(least) < 0 {
				p.msgs.Report("gauge-uncertain", m.GaugePlace(), p.betterGauge(m, row.Band, true), "`%s` is too uncertain for %s: the ratio is %s to 1, and %s to 1 is the least",
					m.Gauge.ID, m.Written(row), oneDecimal(ratio), oneDecimal(least))
			}
		}
	})
}

// betterGauge returns the fix for an unsuitable gauge: the finest one in the shop
// that keeps every rule, else what to buy. Certain tells that the uncertainty
// was too large, so that a gauge without a stated uncertainty is no answer.
func (p *pass) betterGauge(m *card.Measurement, b quantity.Band, certain bool) string {
	if name := p.finestSuitable(b, certain); name != "" {
		return "write `" + m.GaugeKey() + ": " + name + "`"
	}
	width := b.Width()
	if width == nil || width.Sign() == 0 {
		return "no gauge in the shop will do"
	}
	step := func(parts *big.Rat) string {
		s := quantity.StepWithin(new(big.Rat).Quo(width, parts))
		return quantity.Scale{Unit: b.Unit.Difference(), Step: s}.Print(s, p.Shop.Mark())
	}
	warn, refuse, ratio := p.gaugeRule()
	fine := maxRat(warn, refuse, big.NewRat(2, 1))
	fix := "no gauge in the shop will do: take one with " + step(fine) + " graduations"
	if g := m.Gauge; g != nil && g.Scale.Unit.Dimension == b.Unit.Dimension && !reaches(g.Scale, b) {
		fix = "no gauge in the shop will do: take one whose range holds them"
		if n, ok := bench.MarksAcross(b, g.Scale); ok && bench.JudgeMarks(n, warn, refuse) != bench.Fine {
			fix += ", with " + step(fine) + " graduations"
		}
	}
	if certain { // from the ratio, and for a guard band that leaves half of the width
		sure := new(big.Rat).Mul(ratio, big.NewRat(2, 1))
		if w := p.Shop.GuardBand; w != nil {
			sure = maxRat(sure, new(big.Rat).Mul(w, big.NewRat(4, 1)))
		}
		if sure.Sign() > 0 {
			fix += " and an uncertainty of at most " + step(sure)
		}
	}
	return fix
}

func maxRat(first *big.Rat, others ...*big.Rat) *big.Rat {
	for _, o := range others {
		if o.Cmp(first) > 0 {
			first = o
		}
	}
	return first
}

// finestSuitable names the finest gauge of the shop that keeps every rule for
// limits as it shows them, or "".
func (p *pass) finestSuitable(b quantity.Band, certain bool) string {
	var scales []quantity.Scale
	var names []string
	for _, g := range p.Shop.Gauges {
		if p.keepsRules(g, b) && (!certain || g.Uncertainty != nil) {
			scales, names = append(scales, g.Scale), append(names, g.ID)
		}
	}
	if i := quantity.Finest(b, scales); i >= 0 {
		return names[i]
	}
	return ""
}

// keepsRules reports whether a gauge keeps every rule for limits as it shows
// them.
func (p *pass) keepsRules(g *shop.Gauge, b quantity.Band) bool {
	s := g.Scale
	if g.Bad.IsSet() || g.ReplacedBy != "" || s.Unit.Dimension != b.Unit.Dimension || !reaches(s, b) {
		return false
	}
	warn, refuse, least := p.gaugeRule()
	if n, ok := bench.MarksAcross(b, s); ok && bench.JudgeMarks(n, warn, refuse) != bench.Fine {
		return false
	}
	if u := g.Uncertainty; u != nil {
		if ratio, ok := bench.UncertaintyRatio(b, *u); ok && ratio.Cmp(least) < 0 {
			return false
		}
		if w := p.Shop.GuardBand; w != nil {
			guarded, ok := bench.Guard(b, w, *u)
			if !ok {
				return false
			}
			b = guarded
		}
	}
	_, ok := b.Inward(s)
	return ok
}

// oneDecimal prints a ratio with at most one decimal, rounded down, so that an
// insufficient one never reads as sufficient.
func oneDecimal(r *big.Rat) string {
	ten := new(big.Int).Quo(new(big.Int).Mul(r.Num(), big.NewInt(10)), r.Denom())
	down := new(big.Rat).SetFrac(ten, big.NewInt(10))
	if down.IsInt() {
		return down.Num().String()
	}
	return down.FloatString(1)
}
