package check

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/quantity"
)

// marks asks whether any mark of the gauge lies inside the limits, and whether
// the gauge reaches them.
func marks(p *pass) {
	eachReading(p, func(_ *card.Step, m *card.Measurement) {
		if m.Limit == nil || m.Gauge == nil || m.Gauge.Scale.Step == nil {
			return
		}
		s := m.Gauge.Scale
		if m.Marks == nil {
			p.msgs.Report("no-mark-in-limits", m.GaugePlace(), p.finer(*m.OnGauge()), "`%s` has no mark inside %s", m.Gauge.ID, m.Limit.Band.Written)
			return
		}
		band := m.OnGauge().In(s.Unit)
		if band.High != nil && s.High != nil && band.High.Cmp(s.High) > 0 || band.Low != nil && s.Low != nil && band.Low.Cmp(s.Low) < 0 {
			p.msgs.Report("gauge-range", m.GaugePlace(), "name a gauge whose range holds the limits", "`%s` does not reach all of %s", m.Gauge.ID, m.Limit.Band.Written)
		}
	})
}

// finer names the finest scale in the shop that would do, or what to buy.
func (p *pass) finer(b quantity.Band) string {
	var scales []quantity.Scale
	var names []string
	for _, g := range p.Shop.Gauges {
		if g.Scale.Step != nil && g.Scale.Unit.Dimension == b.Unit.Dimension {
			scales, names = append(scales, g.Scale), append(names, g.ID)
		}
	}
	if i := quantity.Finest(b, scales); i >= 0 {
		return "write `gauge: " + names[i] + "`"
	}
	if step := b.CoarsestStep(b.Unit); step != nil {
		return "no gauge in the shop is fine enough: one with marks of " + quantity.Scale{Unit: b.Unit, Step: step}.Print(step, p.Shop.Mark()) + " would do"
	}
	return "no gauge in the shop is fine enough"
}

// The gauge rule of a shop that states none (common practice).
var marksWarn, marksRefuse = big.NewRat(5, 1), big.NewRat(2, 1)

// gauges asks whether a gauge is fine enough for its limits.
func gauges(p *pass) {
	eachReading(p, func(_ *card.Step, m *card.Measurement) {
		if m.Gauge == nil {
			if p.Shop != nil && m.GaugePlace() == m.At && !m.Limits.Bad {
				p.msgs.Report("gauge-missing", m.At, "name the gauge with `gauge:`", "this measurement names no gauge, so its limits are not on the scale that is read")
			}
			return
		}
		if m.Limit == nil || m.Marks == nil {
			return
		}
		warn, refuse := marksWarn, marksRefuse
		if p.Shop.MarksWarn != nil {
			warn = p.Shop.MarksWarn
		}
		if p.Shop.MarksError != nil {
			refuse = p.Shop.MarksError
		}
		if n, ok := bench.MarksAcross(*m.OnGauge(), m.Gauge.Scale); ok {
			slug := map[bench.Fitness]string{bench.Coarse: "gauge-coarse", bench.TooCoarse: "gauge-too-coarse"}[bench.JudgeMarks(n, warn, refuse)]
			if slug != "" {
				p.msgs.Report(slug, m.GaugePlace(), "take a gauge with finer marks", "`%s` divides %s into only %s marks", m.Gauge.ID, m.Limit.Band.Written, short(n))
			}
		}
		if u := m.Gauge.Uncertainty; u != nil {
			if ratio, ok := bench.UncertaintyRatio(*m.OnGauge(), *u); ok && ratio.Cmp(big.NewRat(4, 1)) < 0 {
				p.msgs.Report("gauge-uncertain", m.GaugePlace(), "take a gauge whose uncertainty is smaller", "`%s` is too uncertain for %s: the ratio is %s to 1, and 4 to 1 is the least", m.Gauge.ID, m.Limit.Band.Written, short(ratio))
			}
		}
	})
}

// short writes a ratio to at most one decimal, rounded down, so that what is
// too little never reads as enough.
func short(r *big.Rat) string {
	ten := new(big.Int).Quo(new(big.Int).Mul(r.Num(), big.NewInt(10)), r.Denom())
	down := new(big.Rat).SetFrac(ten, big.NewInt(10))
	if down.IsInt() {
		return down.Num().String()
	}
	return down.FloatString(1)
}
