package check

import (
	"benchwright/cmd/benchwright/internal/card"
)

// fills checks that a quantity can be poured with its measure.
func fills(p *pass) {
	each(p, func(_ *card.Step, f *card.Fill) {
		switch {
		case f.Marks == nil:
			return // already reported
		case f.Limit.Band.Low == nil || f.Limit.Band.High == nil:
			p.msgs.Report("quantity-malformed", f.Limits.At, "write the least and the most, as in `1.2 to 1.3 L`", "a fill needs a least and a most")
		case f.Last == nil && f.Full >= card.MaxMeasures:
			p.msgs.Report("container-small", f.GaugePlace(), "name a larger container", "`%s` would be filled %d times for %s", f.Gauge.ID, f.Full+1, f.Limit.Band.Written)
		case f.Last == nil:
			p.msgs.Report("container-small", f.GaugePlace(), "name a larger container, or one with graduations further down", "%s cannot be poured with `%s`", f.Limit.Band.Written, f.Gauge.ID)
		}
	})
}
