package card

import (
	"slices"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/unit"
)

func (r *resolver) torque(t *procedure.Torque) Item {
	out := &Torque{Torque: t}
	c := r.card
	if c.Unit != nil && t.Fastener.Name != "" {
		out.Fastener = c.Unit.Fastener(t.Fastener.Name)
		if out.Fastener == nil {
			r.unknown("fastener-unknown", "fastener", t.Fastener, c.Unit.FastenerIDs(), "fasteners in the unit")
		} else if !in(out.Fastener.Only, c.VariantID()) {
			r.msgs.Report("fastener-left-out", t.Fastener.At, "limit this block to the variants that have it", "fastener `%s` is left out here", t.Fastener.Name)
		}
	}
	out.Limit = r.limit(&t.Limits, quantity.Torque)
	if t.Value != nil && out.Limit == nil {
		band := *t.Value
		if band.Form == quantity.Bare && c.Shop != nil && c.Shop.TorqueTolerance != nil {
			band = band.Within(c.Shop.TorqueTolerance)
			out.Assumed = true
		}
		if band.Form != quantity.Bare {
			out.Limit = &unit.LimitBand{Band: band, Source: t.Limits.Source, At: t.ValueAt}
		}
	}
	if f := out.Fastener; f != nil && f.AcrossFlats != nil {
		r.flats(*f.AcrossFlats, f.Name, f.Drive == "socket")
	}
	if out.Limit == nil || c.Shop == nil {
		return out
	}
	wrenches := c.Shop.Wrenches
	if t.Wrench.Name != "" {
		w, ok := c.Shop.Find(t.Wrench.Name).(*shop.Wrench)
		if !ok {
			r.unknown("wrench-unknown", "wrench", t.Wrench, wrenchIDs(c.Shop), "wrenches in shop.yaml")
			return out
		}
		r.superseded(t.Wrench, &w.Item)
		if next, ok := c.Shop.Find(w.Replaced).(*shop.Wrench); ok {
			w = next // the one that is still there to be set
		}
		wrenches = []*shop.Wrench{w}
	}
	out.Choice, out.Refused = bench.ChooseWrench(out.Limit.Band, wrenches)
	if out.Choice != nil {
		r.kit(&out.Choice.Wrench.Item, out.Choice.Wrench)
	}
	return out
}

func wrenchIDs(s *shop.Shop) []string {
	var out []string
	for _, w := range s.Wrenches {
		out = append(out, w.ID)
	}
	return out
}

// limit returns the band that a block's limits mean for this variant, nil
// where there is none. A named limit of another kind than want is reported.
func (r *resolver) limit(l *procedure.Limits, want quantity.Dimension) *unit.LimitBand {
	u := r.card.Unit
	switch {
	case l.Band != nil:
		if want != 0 && l.Band.Unit.Dimension != want {
			r.msgs.Report("unit-kind", l.At, "write it in a unit of "+want.String(), "`%s` is of %s, and %s belongs here", l.Band.Written, l.Band.Unit.Dimension, want)
			l.Bad = true
			return nil
		}
		if l.Band.Form == quantity.Bare {
			return nil
		}
		return &unit.LimitBand{Band: *l.Band, Also: l.Also, Source: l.Source, At: l.At}
	case l.Named.Name == "" || u == nil:
		return nil
	}
	found := u.Limit(l.Named.Name)
	if found == nil {
		if !l.Bad {
			r.unknown("limit-unknown", "limit", l.Named, u.LimitIDs(), "limits in the unit")
		}
		return nil
	}
	band := found.For(r.card.VariantID())
	if band != nil && want != 0 && band.Band.Unit.Dimension != want {
		r.msgs.Report("unit-kind", l.At, "name a limit of "+want.String(), "limit `%s` is of %s, and %s belongs here", l.Named.Name, band.Band.Unit.Dimension, want)
		return nil
	}
	return band
}

// flats notes a size across flats for the set-out face.
func (r *resolver) flats(size quantity.Value, what string, key bool) {
	n := 0
	if r.step != nil {
		n = r.step.Number
	}
	for i := range r.card.Flats {
		f := &r.card.Flats[i]
		if f.Size.Text == size.Text && f.Size.Unit.Symbol == size.Unit.Symbol && f.Key == key {
			if !slices.Contains(f.What, what) {
				f.What = append(f.What, what)
			}
			if !slices.Contains(f.Steps, n) {
				f.Steps = append(f.Steps, n)
			}
			return
		}
	}
	r.card.Flats = append(r.card.Flats, Flats{size, key, []string{what}, []int{n}})
}
