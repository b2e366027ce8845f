package card

import (
	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
)

// A Preload is a bearing preload, read as the pull of a cord, or on a torque
// gauge if the block has no drum. Shown is the exact pull.
type Preload struct {
	*Measurement
	Block *procedure.Preload
}

func (r *resolver) preload(p *procedure.Preload) Item {
	if r.card.Shop == nil {
		// Without a gauge, no scale is assumed.
		r.reportUnknown(diag.OnShop, "gauge-unknown", "scale", p.Gauge, nil, "`gauges:` in a `shop:` of this file")
	}
	return &Preload{r.reading(&p.Measurement, quantity.Torque, func(b quantity.Band, g *shop.Gauge) (*quantity.Band, bool) { return r.pull(p, b, g) }), p}
}

// pull converts a rotating torque to what the block's scale shows.
func (r *resolver) pull(p *procedure.Preload, torque quantity.Band, g *shop.Gauge) (*quantity.Band, bool) {
	fix, kind := "", g.Scale.Unit.Dimension
	switch {
	case torque.High != nil && torque.High.Sign() <= 0:
		r.msgs.Report("quantity-malformed", p.Limits.At, "write the limits as the manual gives them", "a rotating torque must be greater than zero")
		return nil, false
	case p.Drum == nil && kind == quantity.Torque:
		return nil, true
	case p.Drum != nil && kind == quantity.Force:
		exact, _, _ := bench.Pull(torque, *p.Drum, *p.Cord, g.Scale)
		if exact.Low == nil && exact.High == nil {
			r.msgs.Report("quantity-malformed", p.Limits.At, "write the limits as the manual gives them", "a rotating torque cannot be below zero")
			return nil, false
		}
		return &exact, true
	case p.Drum != nil && kind == quantity.Mass:
		fix = "write its range and resolution as a force in shop.yaml, such as kgf, with `marked: " + g.Scale.Unit.Symbol + "`"
	case p.Drum != nil:
		fix = "name a spring scale, or take `drum:` and `cord:` out"
	case kind == quantity.Force:
		fix = "add `drum:` and `cord:`, the radius that the cord is wound on and its thickness"
	default:
		fix = "name a spring scale, and add `drum:` and `cord:`"
	}
	want := quantity.Torque
	if p.Drum != nil {
		want = quantity.Force
	}
	d := r.msgs.Report("measure-kind", p.Gauge.At, fix, "`%s` reads %s, and this preload is read as a %s", p.Gauge.Name, kind, want)
	d.Label = g.Name
	return nil, false
}
