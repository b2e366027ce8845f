package check

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
)

// wrenches asks whether the shop has a wrench for each torque, and how well it
// suits.
func wrenches(p *pass) {
	if p.Shop == nil {
		noShop(p)
		return
	}
	each(p, func(_ *card.Step, t *card.Torque) {
		if t.Limit == nil {
			return
		}
		c := t.Choice
		if c == nil {
			if slices.ContainsFunc(p.Shop.Wrenches, func(w *shop.Wrench) bool { return w.Bad }) {
				return // it may be the one; its scale has been reported
			}
			if t.Wrench.Name == "" || len(t.Refused) > 0 {
				d := p.msgs.Report("wrench-none", t.Limits.At, p.need(t), "no wrench in the shop can be set to %s", t.Limit.Band.Written)
				if t.Wrench.Name != "" {
					d.At, d.Message = t.Wrench.At, fmt.Sprintf("`%s` cannot be set to %s", t.Wrench.Name, t.Limit.Band.Written)
					d.Help = "leave `wrench:` out and let the best one be chosen"
				}
				d.Label = why(t.Refused)
			}
			return
		}
		w := c.Wrench
		switch {
		case c.Least == nil && !w.Bad:
			p.msgs.Report("wrench-accuracy", t.Limits.At, "add `accuracy:` to the wrench, from its calibration record",
				"`%s` states no accuracy, so nothing shows that it keeps the torque inside %s", w.ID, t.Limit.Band.Written)
		case !c.Keeps && c.Least != nil:
			var out []string
			if c.Under != nil {
				out = append(out, p.amount(c.Under, w.Scale)+" under")
			}
			if c.Over != nil {
				out = append(out, p.amount(c.Over, w.Scale)+" over")
			}
			p.msgs.Report("wrench-accuracy", t.Limits.At, "use a wrench of better accuracy, or see whether the limits are meant so narrow",
				"`%s` at %s may be out by its own accuracy: %s", w.ID, w.Scale.Print(c.Setting, p.Shop.Mark()), strings.Join(out, ", "))
		}
		if c.Low {
			p.msgs.Report("wrench-low", t.Limits.At, p.need(t), "`%s` is set below 20 %% of its range here", w.ID)
		}
	})
}

// noShop warns once that a file which stands alone has nothing to set.
func noShop(p *pass) {
	warned := false
	each(p, func(_ *card.Step, t *card.Torque) {
		if !warned {
			p.msgs.Report("no-wrench-list", t.At, "give the file a `shop:` with its wrenches, or put it in a workspace with a shop.yaml",
				"without a shop no wrench is chosen: the card prints the manual's band and a box to fill in")
		}
		warned = true
	})
}

// why sums the refusals of wrenches up in a few words.
func why(refused []bench.Refusal) string {
	words := map[bench.Reason]string{bench.BelowScale: "begins too high", bench.AboveScale: "ends too low",
		bench.NoMark: "has no mark inside the limits", bench.OtherKind: "does not measure torque", bench.Superseded: "is replaced"}
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

// need describes a wrench that would do: what its range must hold, how fine its
// marks must be where that is what the shop's lack, and a size of which such
// wrenches are made.
func (p *pass) need(t *card.Torque) string {
	b := t.Limit.Band
	n := bench.NeedFor(b, b.Unit)
	if n.Step == nil || n.Low == nil || n.High == nil {
		return "add a wrench that holds " + b.Written + " to the shop"
	}
	help := "add a wrench whose range holds " + b.Range(p.Shop.Mark())
	if slices.ContainsFunc(t.Refused, func(r bench.Refusal) bool { return r.Reason == bench.NoMark }) {
		help += ", with marks of " + quantity.Scale{Unit: b.Unit, Step: n.Step}.Print(n.Step, p.Shop.Mark()) + " or finer"
	}
	if n.Longest == nil { // the torque is not above zero
		return help
	}
	top := size(n.High)
	bottom := new(big.Rat).Mul(top, big.NewRat(1, 5))
	if bottom.Cmp(n.Low) > 0 || top.Cmp(n.Longest) > 0 {
		return help
	}
	return help + ", such as one of " + quantity.Decimal(bottom, p.Shop.Mark()) + " to " + b.Unit.After(quantity.Decimal(top, p.Shop.Mark()))
}

// size returns the least of 1, 2, 5, 10, 20, 50 … that is not below x > 0. Click
// wrenches run from a fifth of such a size up to it (common practice).
func size(x *big.Rat) *big.Rat {
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

// amount prints a small quantity to two figures of the scale's step, rounded up.
func (p *pass) amount(v *big.Rat, s quantity.Scale) string {
	fine := quantity.Scale{Unit: s.Unit, Step: new(big.Rat).Mul(s.Step, big.NewRat(1, 10))}
	return fine.Print(fine.Ceil(v), p.Shop.Mark())
}
