package check

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
)

// limits checks that every measurement and torque has limits in the card's
// variant.
func limits(p *pass) {
	eachReading(p, func(_ card.Item, m *card.Measurement) {
		l := &m.Limits
		if l.None {
			return // the schema asks for the reason and for what to expect
		}
		if m.Limit == nil && m.Table == nil && !m.Mismatch {
			p.noLimits(l, m.At, "measurement", "name a limit of the unit with `limits:`, or write the band with its `source:`; a reading that has none says `limits: none`")
		}
	})
	each(p, func(_ *card.Step, t *card.Torque) {
		if t.SecondTorque != nil && t.SecondTorque.Limit == nil {
			p.noLimits(t.Torque.SecondTorque, t.SecondTorque.StatedAt, "torque", "name a limit of the unit with `again:`, or write the band")
		}
		switch {
		case t.Until.Reading.Name != "" && t.Limit == nil && t.Value == nil && !t.Limits.Stated(): // the reading is its limit
		case t.Value != nil && (t.Limits.Named.Name != "" || t.Limits.Band != nil):
			p.msgs.Report("limits-twice", t.ValueAt, "keep `limits:` and take `value:` out", "this torque has both a value and limits")
		case t.Limit != nil || t.Value == nil:
			if t.Limit == nil {
				p.noLimits(&t.Limits, t.At, "torque", "name a limit of the unit with `limits:`, or write `value: 100 ±5 N·m` with its `source:`")
			}
		case p.Shop != nil:
			p.msgs.Report("torque-tolerance", t.ValueAt, "write the limits, such as `100 ±5 N·m`, or state `torque-tolerance: 5 %` in shop.yaml",
				"`%s` has no limits, and the shop states no tolerance for a bare torque", t.Value.Written).Basis = diag.OnShop
		default:
			p.msgs.Report("torque-tolerance", t.ValueAt, "write the limits, such as `100 ±5 N·m`", "`%s` has no limits", t.Value.Written)
		}
	})
}

// noLimits reports a block without limits: none stated, a bare value, or a
// named limit without a band for this variant.
func (p *pass) noLimits(l *procedure.Limits, at source.Place, what, fix string) {
	switch {
	case l.Bad.IsSet():
	case l.Band != nil && l.Band.Form == quantity.Bare:
		p.msgs.Report("limits-bare", l.At, "write a band, such as `"+l.Band.ExampleLimits(p.Shop.Mark())+"`", "`%s` is one value and no limits", l.Band.Written)
	case l.Named.Name != "":
		if p.Unit == nil {
			return
		}
		named := p.Unit.Limit(l.Named.Name)
		if named == nil || named.Bad.IsSet() || named.All != nil || named.ByVariant[p.VariantID()] != nil {
			return // unknown or of the wrong dimension, which is reported
		}
		if named.Table != nil {
			p.msgs.Report("measure-kind", l.At, "name a limit that has a band", "`%s` follows a mark etched on a part, and this %s cannot", named.ID, what)
			return
		}
		d := p.msgs.Report("limits-missing", l.At, "give `"+l.Named.Name+"` a band for it under `by-variant:`, or a `band:` for all", "this %s has no limits", what)
		d.Basis = diag.OnUnit
		d.Label = "`" + l.Named.Name + "` has no band here"
		d.Related = append(d.Related, related(named.At, "the limit is declared here"))
	default:
		p.msgs.Report("limits-missing", at, fix, "this %s has no limits", what)
	}
}
