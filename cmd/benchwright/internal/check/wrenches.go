package check

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
)

// wrenches checks that the shop has a wrench for each torque, and how well it
// suits.
func wrenches(p *pass) {
	if p.Shop == nil {
		noShop(p)
		return
	}
	each(p, func(_ *card.Step, t *card.Torque) {
		if t.Torque.Adapter != nil && t.Adapter == nil {
			return // its effect on the setting is unknown, which is reported
		}
		for _, g := range t.Tightenings() {
			switch {
			case g.Limit == nil:
			case g.Choice == nil:
				p.noWrench(t, g)
			default:
				p.wrenchSuits(g)
			}
		}
	})
}

// noWrench reports a torque that no wrench can be set to.
func (p *pass) noWrench(t *card.Torque, g *card.Tightening) {
	if slices.ContainsFunc(p.Shop.Wrenches, func(w *shop.Wrench) bool { return w.Bad.IsSet() }) {
		return // one whose bad scale is reported may suit
	}
	if t.Wrench.Name != "" && len(g.Refused) == 0 {
		return // it is not in the shop, which is reported
	}
	through := ""
	if a := t.Adapter; a != nil {
		through = " through `" + a.Tool.ID + "`"
	}
	if j, ok := p.tightnessOf(t, g); ok && j.Finding == bench.TightAbove || !positive(g.Limit.Band) {
		return // the number is wrong, which is reported; no wrench is missing
	}
	d := p.msgs.Report("wrench-none", g.StatedAt, p.wrenchToAdd(t, g), "no wrench in the shop can be set to %s%s", g.Limit.Band.Written, through)
	d.Basis = diag.OnShop
	if t.Wrench.Name != "" {
		d.At, d.Message = t.Wrench.At, fmt.Sprintf("`%s` cannot be set to %s%s", t.Wrench.Name, g.Limit.Band.Written, through)
		if g.Refused[0].Reason != bench.NoLength {
			d.Fix = "leave `wrench:` out and let the best one be chosen"
		}
	}
	d.Label = refusalSummary(g.Refused)
}

// wrenchSuits checks how well the chosen wrench suits the torque.
func (p *pass) wrenchSuits(g *card.Tightening) {
	if slices.ContainsFunc(p.Shop.Wrenches, func(w *shop.Wrench) bool { return w.Bad.IsSet() }) {
		return // one whose bad scale is reported may suit better
	}
	c := g.Choice
	w := c.Wrench
	switch {
	case c.Least == nil && w.Node.Get("accuracy") == nil: // else unreadable, which is reported
		p.msgs.Report("wrench-accuracy", g.StatedAt, "add `accuracy:` to the wrench, from its calibration record",
			"`%s` states no accuracy, so nothing shows that it stays inside %s", w.ID, g.Limit.Band.Written)
	case !c.Keeps && c.Least != nil:
		var out []string
		if c.Under != nil {
			out = append(out, p.amount(c.Under, w.Scale)+" under")
		}
		if c.Over != nil {
			out = append(out, p.amount(c.Over, w.Scale)+" over")
		}
		p.msgs.Report("wrench-accuracy", g.StatedAt, "use a wrench of better accuracy, or see whether the limits are meant so narrow",
			"`%s` set to %s may miss the limits by its own accuracy: %s", w.ID, w.Scale.Print(c.Setting, p.Shop.Mark()), strings.Join(out, ", "))
	}
	if c.LowInRange {
		p.msgs.Report("wrench-low", g.StatedAt, p.wrenchHolding("", g.Limit.Band, g.Refused), "`%s` is set below 20 %% of its range here", w.ID)
	}
}

// noShop warns, once, that a procedure without a shop has no wrench to set.
func noShop(p *pass) {
	warned := false
	each(p, func(_ *card.Step, t *card.Torque) {
		if a := t.Torque.Adapter; a != nil {
			p.msgs.Report("wrench-none", a.Tool.At, "give the file a `shop:` with the wrench and its `length:`, or put it in a workspace with a shop.yaml",
				"without a shop nothing says what to set on a wrench with an adapter")
		}
		if !warned {
			p.msgs.Report("no-wrench-list", t.At, "give the file a `shop:` with its wrenches, or put it in a workspace with a shop.yaml",
				"without a shop no wrench is chosen: the card prints the manual's band and a box to fill in")
		}
		warned = true
	})
}

// refusalSummary sums up in a few words why wrenches were refused.
func refusalSummary(refused []bench.Refusal) string {
	words := map[bench.Reason]string{bench.BelowScale: "does not go low enough", bench.AboveScale: "does not go high enough",
		bench.NoMark: "has no graduation inside the limits", bench.OtherKind: "does not measure torque", bench.Superseded: "is replaced",
		bench.NoLength: "states no length", bench.NoLever: "is not longer than the adapter"}
	var out []string
	for _, r := range refused {
		if len(out) == 4 {
			out = append(out, fmt.Sprintf("and %d more", len(refused)-4))
			break
		}
		out = append(out, r.Wrench.ID+" "+words[r.Reason])
	}
	return strings.Join(out, "; ")
}

// wrenchToAdd describes a wrench that would do. With an adapter, the setting
// depends on the length of the wrench; it is given for the wrench of the shop
// that comes nearest.
func (p *pass) wrenchToAdd(t *card.Torque, g *card.Tightening) string {
	a := t.Adapter
	if a == nil {
		return p.wrenchHolding("", g.Limit.Band, g.Refused)
	}
	var near *shop.Wrench
	for _, r := range g.Refused {
		if r.Wrench.Length != nil && (r.Reason == bench.NoMark || r.Reason == bench.AboveScale || r.Reason == bench.BelowScale) {
			if near == nil || r.Reason == bench.AboveScale && r.Wrench.Length.In(near.Length.Unit).Value.Cmp(near.Length.Value) > 0 {
				near = r.Wrench
			}
		}
	}
	if near == nil && slices.ContainsFunc(g.Refused, func(r bench.Refusal) bool { return r.Reason == bench.NoLever }) {
		return "check the adapter's `length:`: from the center of its drive to the center of the fastener"
	}
	if near == nil {
		return "add `length:` to the wrenches in shop.yaml: from the center of the drive to the center of the grip"
	}
	u := near.Scale.Unit
	set, _ := a.Adapter.Setting(g.Limit.Band.In(u), near.Length)
	if step := set.CoarsestStep(u); step != nil { // in round numbers that include all of it
		fine := quantity.Scale{Unit: u, Step: new(big.Rat).Mul(step, big.NewRat(1, 10))}
		set = quantity.Band{Unit: u, Low: fine.Floor(set.Low), High: fine.Ceil(set.High)}
	}
	return p.wrenchHolding(" as long as `"+near.ID+"`, "+near.Length.Unit.After(near.Length.Text)+",", set, g.Refused)
}

// wrenchHolding describes a wrench that can be set inside a band: a property
// that it must share, the range it must include, the fineness of its marks if
// the shop's wrenches lack that, and a common size.
func (p *pass) wrenchHolding(like string, b quantity.Band, refused []bench.Refusal) string {
	n := bench.NeedFor(b, b.Unit)
	if n.Step == nil || n.Low == nil || n.High == nil {
		return "add a wrench" + like + " that holds " + b.Range(p.Shop.Mark()) + " to the shop"
	}
	fix := "add a wrench" + like + " whose range holds " + b.Range(p.Shop.Mark())
	if slices.ContainsFunc(refused, func(r bench.Refusal) bool { return r.Reason == bench.NoMark }) {
		fix += ", with graduations of " + quantity.Scale{Unit: b.Unit, Step: n.Step}.Print(n.Step, p.Shop.Mark()) + " or finer"
	}
	if n.Longest == nil { // the torque is not above zero
		return fix
	}
	top := nextSize(n.High)
	bottom := new(big.Rat).Mul(top, big.NewRat(1, 5))
	if bottom.Cmp(n.Low) > 0 || top.Cmp(n.Longest) > 0 {
		return fix
	}
	return fix + ", such as one of " + quantity.Decimal(bottom, p.Shop.Mark()) + " to " + b.Unit.After(quantity.Decimal(top, p.Shop.Mark()))
}

// nextSize returns the least of 1, 2, 5, 10, 20, 50 … that is ≥ x > 0. Click
// wrenches range from a fifth of such a size up to it (common practice).
func nextSize(x *big.Rat) *big.Rat {
	s := big.NewRat(1, 1)
	for s.Cmp(x) >= 0 {
		s.Mul(s, big.NewRat(1, 10))
	}
	for {
		for _, part := range []int64{1, 2, 5} {
			if y := new(big.Rat).Mul(s, big.NewRat(part, 1)); y.Cmp(x) >= 0 {
				return y
			}
		}
		s.Mul(s, big.NewRat(10, 1))
	}
}

// amount prints a small quantity to two digits of the scale's step, rounded
// up.
func (p *pass) amount(v *big.Rat, s quantity.Scale) string {
	fine := quantity.Scale{Unit: s.Unit, Step: new(big.Rat).Mul(s.Step, big.NewRat(1, 10))}
	return fine.Print(fine.Ceil(v), p.Shop.Mark())
}
