package card

import (
	"math/big"
	"slices"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/unit"
)

// A Torque is a fastener, or a set of them, tightened with a wrench of the
// shop.
type Torque struct {
	*procedure.Torque
	Tightening
	Fastener     *unit.Fastener // nil if unknown, which is reported
	Adapter      *Adapter       // nil without one, or if it was unreadable
	SecondTorque *Tightening    // after backing off; nil without one
	Order        []int          // of a set, by position; nil if there is nothing to say
	Passes       []bench.Pass   // on marks of the wrench; nil without any
	PassFault    bench.PassFault
	PassIndex    int  // index of the wrong share
	End          *End // what ends the tightening against a crush sleeve; nil if none, or unknown, which is reported
}

// A Tightening is a torque and the wrench chosen for it.
type Tightening struct {
	Limit    *unit.LimitBand // nil if there is none, which a rule reports
	Assumed  bool            // the band comes from the shop's tolerance for bare values
	Choice   *bench.Choice   // nil without limits or a shop
	Refused  []bench.Refusal // wrenches that cannot be set to it
	StatedAt source.Place    // where the block states the torque
}

// Tightenings returns the torques of the block, in the order of the work.
func (t *Torque) Tightenings() []*Tightening {
	out := []*Tightening{&t.Tightening}
	if t.SecondTorque != nil {
		out = append(out, t.SecondTorque)
	}
	return out
}

// Set reports whether it is a set of more than one fastener.
func (t *Torque) Set() bool { return t.Fastener != nil && t.Fastener.Count > 1 }

func (r *resolver) torque(t *procedure.Torque) Item {
	out := &Torque{Torque: t}
	c, step := r.card, r.step
	if n := t.Until.Reading; n.Name != "" {
		r.deferred = append(r.deferred, func() { out.End = r.end(step, n) })
	}
	if c.Unit != nil && t.Fastener.Name != "" {
		out.Fastener = c.Unit.Fastener(t.Fastener.Name)
		if out.Fastener == nil {
			r.reportUnknown(diag.OnUnit, "fastener-unknown", "fastener", t.Fastener, c.Unit.FastenerIDs(), "fasteners in the unit")
		} else if !appliesToVariant(out.Fastener.Only, c.VariantID()) {
			r.msgs.Report("fastener-left-out", t.Fastener.At, "limit this block to the variants that have it", "fastener `%s` is left out here", t.Fastener.Name)
		}
	}
	out.Limit, out.StatedAt = r.limit(&t.Limits, quantity.Torque), t.Limits.At
	if t.Value != nil && out.Limit == nil {
		band := *t.Value
		out.StatedAt = t.ValueAt
		if band.Form == quantity.Bare && c.Shop != nil && c.Shop.TorqueTolerance != nil {
			band = band.WithTolerance(c.Shop.TorqueTolerance)
			out.Assumed = true
		}
		if band.Form != quantity.Bare {
			out.Limit = &unit.LimitBand{Band: band, Source: t.Limits.Source, At: t.ValueAt}
		}
	}
	if f := out.Fastener; f != nil && f.AcrossFlats != nil {
		r.flats(*f.AcrossFlats, f.Name, f.Drive == unit.Socket)
	}
	out.Order = order(out)
	if t.Adapter != nil {
		out.Adapter = r.adapter(t.Adapter)
	}
	if t.SecondTorque != nil {
		out.SecondTorque = &Tightening{Limit: r.limit(t.SecondTorque, quantity.Torque), StatedAt: t.SecondTorque.At}
	}
	if t.Adapter != nil && out.Adapter == nil {
		return out // its effect on the setting is not known
	}
	if wrenches, ok := r.wrenches(t); ok {
		for _, g := range out.Tightenings() {
			r.choose(g, out.Adapter, wrenches)
		}
	}
	if choice := out.Choice; choice != nil && len(t.Passes) > 0 {
		var shares []*big.Rat
		for _, s := range t.Passes {
			shares = append(shares, s.Part)
		}
		out.Passes, out.PassFault, out.PassIndex = bench.Passes(choice.Setting, shares, choice.Wrench.Scale)
	}
	return out
}

// wrenches returns the wrenches to choose from: all of the shop's, or the one
// chosen by the writer. Ok is false without a shop, or if that one is not in
// it, which is reported.
func (r *resolver) wrenches(t *procedure.Torque) (list []*shop.Wrench, ok bool) {
	s := r.card.Shop
	switch {
	case s == nil:
		return nil, false
	case t.Wrench.Name == "":
		return s.Wrenches, true
	}
	w, ok := s.Find(t.Wrench.Name).(*shop.Wrench)
	if !ok {
		r.reportUnknown(diag.OnShop, "wrench-unknown", "wrench", t.Wrench, wrenchIDs(s), "wrenches in shop.yaml")
		return nil, false
	}
	r.reportReplaced(t.Wrench, &w.Item)
	if next, ok := s.Find(w.ReplacedBy).(*shop.Wrench); ok {
		w = next // its replacement
	}
	return []*shop.Wrench{w}, true
}

// choose chooses the wrench for a torque and computes its setting.
func (r *resolver) choose(g *Tightening, a *Adapter, wrenches []*shop.Wrench) {
	if g.Limit == nil {
		return
	}
	var through *bench.Adapter
	if a != nil {
		through = &a.Adapter
	}
	g.Choice, g.Refused = bench.ChooseWrench(g.Limit.Band, through, wrenches)
	if g.Choice != nil {
		r.addToKit(&g.Choice.Wrench.Item, g.Choice.Wrench)
	}
}

// Readings returns none: a wrench is set, not read.
func (t *Torque) Readings() []*Measurement { return nil }

func (t *Torque) causes() []Cause {
	var out []Cause
	if t.Adapter != nil {
		out = toolCauses(t.Adapter.Tool, t.At)
	}
	for _, g := range t.Tightenings() {
		if g.Choice != nil {
			out = append(out, toolCauses(&g.Choice.Wrench.Item, t.At)...)
		}
	}
	return out
}

func (t *Torque) complete(c *Card) bool {
	until := t.Until.Reading.Name != ""
	if t.Fastener == nil || (t.Torque.Adapter != nil) != (t.Adapter != nil) || until && (t.End == nil || t.End.Reading == nil) {
		return false
	}
	for _, g := range t.Tightenings() {
		if g.Limit == nil && !(until && g == &t.Tightening) || g.Limit != nil && g.Choice == nil && c.Shop != nil {
			return false
		}
	}
	return t.PassFault == bench.PassesGood
}

func wrenchIDs(s *shop.Shop) []string {
	var out []string
	for _, w := range s.Wrenches {
		out = append(out, w.ID)
	}
	return out
}

// limit returns the band of a block's limits for this variant, nil if there is
// none. The dimension of a band written in place was checked when it was read.
func (r *resolver) limit(l *procedure.Limits, want quantity.Dimension) *unit.LimitBand {
	switch {
	case l.Band == nil:
		return r.namedLimit(l.Named, want)
	case l.Band.Form == quantity.Bare:
		return nil
	}
	return &unit.LimitBand{Band: *l.Band, Also: l.Also, Source: l.Source, At: l.At}
}

// namedLimit returns the band of a named limit for this variant, nil if there
// is none. It reports an unknown name, and a limit of another dimension than
// want.
func (r *resolver) namedLimit(n procedure.Named, want quantity.Dimension) *unit.LimitBand {
	u := r.card.Unit
	if n.Name == "" || u == nil {
		return nil
	}
	found := u.Limit(n.Name)
	if found == nil {
		r.reportUnknown(diag.OnUnit, "limit-unknown", "limit", n, u.LimitIDs(), "limits in the unit")
		return nil
	}
	band := found.ForVariant(r.card.VariantID())
	if band != nil && want != quantity.None && band.Band.Unit.Dimension != want {
		r.msgs.Report("measure-kind", n.At, "name a limit for "+want.String(), "limit `%s` is for %s, and %s belongs here", n.Name, band.Band.Unit.Dimension, want)
		return nil
	}
	return band
}

// flats records a size across flats for the lay-out page.
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
