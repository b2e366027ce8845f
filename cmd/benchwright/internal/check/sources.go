package check

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/unit"
)

// sources asks for the source of a band written in a block. The limits of the
// unit are checked when they are read.
func sources(p *pass) {
	eachReading(p, func(_ card.Item, m *card.Measurement) {
		l := &m.Limits
		switch {
		case l.Band == nil || m.Limit == nil || l.Source != "" || m.Node.Get("source") != nil: // an empty source has been reported
		case l.Band.Unit.Dimension == quantity.Torque:
			p.msgs.Report("torque-source-missing", l.At, "add `source:` with the manual's title, issue and table, or `source: shop practice`", "this torque has no source")
		default:
			p.msgs.Report("source-missing", l.At, "add `source:` with the manual's title, issue and table, or `source: shop practice`", "these limits have no source")
		}
	})
	each(p, func(_ *card.Step, f *card.Fit) {
		if f.HasSize() && f.Source == "" && f.Node.Get("source") == nil {
			p.msgs.Report("source-missing", f.KeyPlace("interference"), "add `source:` with the manual's title, issue and table, or `source: shop practice`", "this interference has no source")
		}
	})
	each(p, func(_ *card.Step, t *card.Torque) {
		here := t.Limits.Band != nil || t.Value != nil && t.Limits.Named.Name == ""
		if here && t.Limit != nil && t.Limits.Source == "" && t.Node.Get("source") == nil {
			p.msgs.Report("torque-source-missing", t.Limit.At, "add `source:` with the manual's title, issue and table, or `source: shop practice`", "this torque has no source")
		} else if g := t.SecondTorque; g != nil && g.Limit != nil && g.Limit.Source == "" && t.Torque.SecondTorque.Band != nil {
			p.msgs.Report("torque-source-missing", g.StatedAt, "add `source:` with the manual's title, issue and table, or `source: shop practice`", "this torque has no source")
		}
	})
}

// secondUnits compares the second unit printed beside a block's limits or
// value. A unit's own limits are compared when they are read.
func secondUnits(p *pass) {
	mark := p.Shop.Mark()
	compare := func(l *procedure.Limits, found *unit.LimitBand, at source.Place) {
		switch {
		case l.Also == nil:
		case l.Band != nil:
			unit.CompareAlso(*l.Band, *l.Also, l.At, at, mark, p.msgs)
		case found != nil:
			unit.CompareAlso(found.Band, *l.Also, found.At, at, mark, p.msgs)
		}
	}
	eachReading(p, func(_ card.Item, m *card.Measurement) { compare(&m.Limits, m.Limit, m.KeyPlace("also")) })
	each(p, func(_ *card.Step, t *card.Torque) {
		if t.Value != nil && t.Limits.Also != nil {
			unit.CompareAlso(*t.Value, *t.Limits.Also, t.ValueAt, t.KeyPlace("also"), mark, p.msgs)
			return
		}
		compare(&t.Limits, t.Limit, t.KeyPlace("also"))
	})
}

func related(at source.Place, message string) diag.Related {
	return diag.Related{At: at, Message: message}
}
