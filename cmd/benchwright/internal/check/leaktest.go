package check

import (
	"math/big"
	"slices"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
)

// leakTests checks that a hold test is possible, that the unit withstands its
// pressure, and that the gauge can tell a leak from a temperature change of
// the shop.
func leakTests(p *pass) {
	each(p, func(_ *card.Step, t *card.LeakTest) {
		if p.Shop == nil || t.Gauge == nil || t.Thermometer == nil {
			return
		}
		if p.Shop.Atmosphere == nil {
			if p.Shop.Root.Get("atmosphere") != nil {
				return // unreadable, which is reported
			}
			p.msgs.Report("atmosphere-missing", t.Block.StartAt, "add `atmosphere:` to shop.yaml, the usual air pressure at your height, such as `atmosphere: 101.3 kPa`",
				"a gauge counts from the air of the shop, and the shop does not state its pressure")
			return
		}
		if !t.Block.Vacuum && !p.testCap(t) {
			return
		}
		written, scale := t.Block.Start.Written+map[bool]string{true: " absolute", false: " gauge"}[t.Block.Absolute], t.Gauge.Scale
		switch {
		case !t.Block.Vacuum && t.PressureBand.Target().Sign() <= 0:
			p.msgs.Report("test-impossible", t.Block.StartAt, "look at the pressure, and at `atmosphere:` in shop.yaml", "%s is not above the air of this shop", written)
			return
		case t.Start == nil && t.PressureBand.Form == quantity.Bare:
			p.msgs.Report("no-mark-in-limits", t.GaugePlace(), "give the test pressure two ends, or name a gauge that has the mark", "`%s` has no mark at %s", t.Gauge.ID, written)
			return
		case t.Start == nil:
			p.msgs.Report("no-mark-in-limits", t.GaugePlace(), "name a gauge with finer marks", "`%s` has no mark inside %s", t.Gauge.ID, written)
			return
		case t.Shop == nil:
			p.msgs.Report("no-mark-in-limits", t.Block.Thermometer.At, "name a thermometer with finer marks", "`%s` has no mark inside %s", t.Thermometer.ID, t.Block.ShopTemperature.Written)
			return
		case t.Rows == nil:
			why, at := impossible(t, written)
			p.msgs.Report("test-impossible", at, "look at each number, and at `atmosphere:` in shop.yaml", "%s", why)
			return
		case !t.Block.Vacuum && t.Hold.Change.Cmp(t.Start) >= 0:
			p.msgs.Report("test-impossible", lossPlace(t), "write the pressure that may be lost, less than the test pressure", "more may be lost than the test pressure")
			return
		case !reaches(t.Thermometer.Scale, t.Block.ShopTemperature):
			p.msgs.Report("gauge-range", t.Block.Thermometer.At, "name a thermometer whose range holds the shop's temperatures", "`%s` does not reach all of %s", t.Thermometer.ID, t.Block.ShopTemperature.Written)
		}
		if slices.ContainsFunc(t.Rows, func(r bench.EndReading) bool { return r.Mark == nil }) {
			if top := t.Rows[len(t.Rows)-1].Limit; scale.High != nil && top.Cmp(scale.High) > 0 || scale.Low != nil && top.Cmp(scale.Low) < 0 {
				p.msgs.Report("no-mark-in-limits", t.GaugePlace(), "name a gauge whose range goes further", "`%s` does not reach the readings of a warmer shop", t.Gauge.ID)
				return
			}
			p.msgs.Report("no-mark-in-limits", t.GaugePlace(), "name a gauge with finer marks", "between a tight part and one that leaks, `%s` has no mark", t.Gauge.ID)
			return
		}
		warn, refuse, _ := p.gaugeRule()
		n := new(big.Rat).Quo(t.Hold.Change, scale.Step)
		if slug := map[bench.Fitness]string{bench.Coarse: "gauge-coarse", bench.TooCoarse: "gauge-too-coarse"}[bench.JudgeMarks(n, warn, refuse)]; slug != "" {
			p.msgs.Report(slug, t.GaugePlace(), "name a gauge with finer marks", "`%s` divides the pressure that may be lost into only %s marks", t.Gauge.ID, oneDecimal(n))
		}
		p.leakExample(t)
	})
}

// testCap checks that the unit withstands the high end of the test pressure.
func (p *pass) testCap(t *card.LeakTest) bool {
	if p.Unit == nil {
		return true
	}
	limit := p.Unit.TestCap
	if limit == nil && p.Unit.Root.Get("test-cap") != nil {
		return false // unreadable, which is reported
	}
	if limit == nil {
		p.msgs.Report("test-cap", t.Block.StartAt, "add `test-cap:` to the unit, such as `test-cap: {gas: 35 kPa, source: \"workshop manual, section 6\"}`",
			"the unit does not say to which pressure it may be filled with gas")
		return false
	}
	high := t.PressureBand.High
	if high == nil {
		high = t.PressureBand.Target()
	}
	if most := limit.Gas.In(t.PressureBand.Unit).Value; high.Cmp(most) > 0 {
		d := p.msgs.Report("test-cap", t.Block.StartAt, "test at "+limit.Gas.Unit.After(limit.Gas.Text)+" above the shop's air or less", "the test pressure is above the unit's cap of %s", limit.Gas.Unit.After(limit.Gas.Text))
		d.Related = append(d.Related, related(limit.At, "the cap stands here"))
		return false
	}
	return true
}

// lossPlace returns the place of the loss allowed.
func lossPlace(t *card.LeakTest) source.Place {
	if t.Block.Allowed == nil {
		return t.KeyPlace("rate")
	}
	return t.KeyPlace("allowed")
}

// impossible returns why a hold test has no table, and the place of the cause.
func impossible(t *card.LeakTest, written string) (why string, at source.Place) {
	h := t.Hold
	absolute := new(big.Rat).Add(h.Atmosphere, h.Start)
	if h.Vacuum && h.Start.Sign() > 0 {
		absolute.Sub(h.Atmosphere, h.Start)
	}
	switch {
	case h.Vacuum && (absolute.Sign() < 0 || absolute.Cmp(h.Atmosphere) >= 0):
		return written + " is no vacuum in this shop", t.Block.StartAt
	case !h.Vacuum && absolute.Cmp(h.Atmosphere) <= 0:
		return written + " is not above the air of this shop", t.Block.StartAt
	case !h.Vacuum && h.Change.Cmp(absolute) > 0:
		return "more may be lost than is there", lossPlace(t)
	}
	return "no shop is that cold", t.Block.ShopTemperatureAt
}

// leakExample recomputes the writer's example.
func (p *pass) leakExample(t *card.LeakTest) {
	e := t.Block.Example
	if e == nil {
		return
	}
	u := t.Thermometer.Scale.Unit
	shift := new(big.Rat).Sub(quantity.Convert(e.To.Value, e.To.Unit, u), quantity.Convert(e.From.Value, e.From.Unit, u))
	i := slices.IndexFunc(t.Rows, func(r bench.EndReading) bool {
		return quantity.Convert(shift, u.Difference(), celsius.Difference()).Cmp(r.Shift) == 0
	})
	if i < 0 {
		p.msgs.Report("example-wrong", t.Block.Example.At, "choose two temperatures that lie whole degrees apart, as the rows of the table do", "the table has no row for this example")
		return
	}
	if right := t.Rows[i].Mark; quantity.Convert(e.Reading.Value, e.Reading.Unit, t.Gauge.Scale.Unit).Cmp(right) != 0 {
		p.msgs.Report("example-wrong", e.At, "write the reading of the table, or look at the numbers of the test", "the example is wrong: the table says %s", t.Gauge.Scale.Print(right, p.Shop.Mark()))
	}
}

var celsius = quantity.MustUnit("°C")
