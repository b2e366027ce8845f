package check

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
)

// readings checks that a spread has several readings, and that the one that is
// judged cannot hide a worse one.
func readings(p *pass) {
	eachReading(p, func(_ card.Item, m *card.Measurement) {
		switch {
		case m.Measurement.Spread != nil && m.Measurement.Spread.High == nil:
			p.msgs.Report("spread-alone", m.KeyPlace("spread"), "write it as in `max 0.05 mm`", "%s is not the most that a spread may be", m.Measurement.Spread.Written)
		case m.Spread != nil && m.Table != nil:
			p.msgs.Report("spread-alone", m.KeyPlace("spread"), "take `spread:` out, and ask for it in a block of its own", "limits that follow a mark leave no room for a spread")
		case len(m.Record) < 2 && m.Spread != nil:
			p.msgs.Report("spread-alone", m.KeyPlace("spread"), "list the readings under `record:`, or take `spread:` out", "a spread needs two readings or more")
		case m.Spread != nil && m.Marks != nil && m.Marks.High == nil:
			p.msgs.Report("spread-alone", m.KeyPlace("spread"), "write limits with a high end, or take `spread:` out", "limits without a high end leave no end to the table of the spread")
		}
		if m.Use == procedure.Lowest && m.Limit != nil && m.Limit.Band.Low == nil {
			p.msgs.Report("use-unsafe", m.KeyPlace("use"), "write `use: each`", "the lowest reading can lie inside %s while another lies above it", m.Limit.Band.Written)
		}
	})
}

// spreads warns of a spread that is wider than the limits: readings that differ
// so far cannot all lie inside them.
func spreads(p *pass) {
	eachReading(p, func(_ card.Item, m *card.Measurement) {
		spread := m.Measurement.Spread
		if spread == nil || spread.High == nil || m.Limit == nil {
			return
		}
		b := m.Limit.Band
		if b.Width() == nil || b.Unit.Dimension != spread.Unit.Dimension || b.Unit.Dimension == quantity.Temperature {
			return
		}
		if spread.In(b.Unit).High.Cmp(b.Width()) > 0 {
			p.msgs.Report("spread-wide", m.KeyPlace("spread"), "look both up again, the decimal point too", "%s lets the readings lie farther apart than the limits, %s", spread.Written, b.Written)
		}
	})
}

// branches checks that each side of a band leads somewhere.
func branches(p *pass) {
	eachReading(p, func(_ card.Item, m *card.Measurement) {
		bands := m.LimitRows()
		if len(bands) == 0 || m.Answered {
			return
		}
		side, key, band := "", "", bands[0].Band
		switch low, high := band.Low != nil && !m.IfLow.Stated(), band.High != nil && !m.IfHigh.Stated(); {
		case low && high:
			side, key = "below or above", "`if-low:` and `if-high:`"
		case low:
			side, key = "below", "`if-low:`"
		case high:
			side, key = "above", "`if-high:`"
		default:
			return
		}
		p.msgs.Report("branch-missing", m.At, "say what to do with "+key, "nothing says what to do when the reading is %s the limits", side)
	})
}
