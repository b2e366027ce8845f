package check

import (
	"fmt"
	"math/big"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/unit"
)

// orders checks that a set with a known pattern has a tightening order, and
// that an order written by hand names each position once.
func orders(p *pass) {
	each(p, func(s *card.Step, t *card.Torque) {
		f, written := t.Fastener, t.Torque.Order
		if f == nil {
			return
		}
		report := func(fix, message string, args ...any) {
			at := t.Torque.Fastener.At
			if len(written) > 0 {
				at = t.KeyPlace("order")
			}
			d := p.msgs.Report("tightening-order", at, fix, message, args...)
			d.Related = append(d.Related, related(f.At, "the fastener is declared here"))
		}
		switch {
		case !t.Set() && len(written) > 0:
			report("give the fastener its `count:` in unit.yaml, or take `order:` out", "`%s` is one fastener, and one has no order", f.ID)
		case !t.Set(), t.Order != nil && (t.Drawn() || pictured(s)):
		case t.Order != nil:
			report("say in unit.yaml how they stand, with `pattern:`, or put a picture with the numbers into the step", "nothing in this step shows which of `%s` the numbers mean", f.ID)
		case len(written) > 0:
			fault := bench.CheckOrder(f.Count, written)
			report(fmt.Sprintf("name each place from 1 to %d once", f.Count), "the order of `%s` %s", f.ID, orderFault(fault, f.Count))
		case f.Pattern == unit.Rectangle && f.Count > 2: // an unknown pattern has been reported
			report(fmt.Sprintf("write the order by hand, each place once, such as `order: [1, 2, … %d]`; places count clockwise from the top left", f.Count),
				"there is no one order for a %s of %d", f.Pattern, f.Count)
		}
	})
}

// pictured reports whether the step shows a picture.
func pictured(s *card.Step) bool {
	for _, i := range s.Items {
		switch i.(type) {
		case *card.Picture, *card.Figure:
			return true
		}
	}
	return false
}

// orderFault describes a fault of an order written by hand.
func orderFault(f bench.OrderFault, count int) string {
	var out []string
	add := func(what string, places []int) {
		if len(places) > 0 {
			out = append(out, what+" "+strings.Trim(strings.Join(strings.Fields(fmt.Sprint(places)), ", "), "[]"))
		}
	}
	add("leaves out", f.Missing)
	add("names twice", f.Twice)
	add(fmt.Sprintf("has only %d places and names", count), f.Outside)
	return strings.Join(out, ", ")
}

// passes checks that the passes of a set rise and can be set on the wrench.
func passes(p *pass) {
	each(p, func(_ *card.Step, t *card.Torque) {
		shares := t.Torque.Passes
		if len(shares) == 0 || t.Fastener == nil {
			return
		}
		report := func(fix, message string, args ...any) {
			p.msgs.Report("tightening-passes", shares[t.PassIndex].At, fix, message, args...)
		}
		if n := t.Fastener.Node.Get("count"); !t.Set() && n != nil && n.Text != "1" {
			return // unreadable, which is reported
		}
		if !t.Set() {
			report("give the fastener its `count:` in unit.yaml, or take `passes:` out", "`%s` is one fastener, and passes draw a set up evenly", t.Fastener.ID)
			return
		}
		if p.Shop == nil {
			report("give the file a `shop:` with its wrenches, or put it in a workspace with a shop.yaml", "without a wrench there are no marks to print the passes on")
			return
		}
		switch t.PassFault {
		case bench.PassesFall:
			report("write the shares from small to large, the last `100 %`", "each pass is tighter than the one before it")
		case bench.PassesShort:
			report("end with `100 %`", "the last pass is the whole torque")
		case bench.PassSame:
			report("take one of them out", "two passes are the same mark of `%s`", t.Choice.Wrench.ID)
		case bench.PassLow:
			c := t.Choice
			low, _ := c.Wrench.Scale.Ends()
			if low == nil { // its range is not stated
				low = c.Wrench.Scale.Step
			}
			least := quantity.Scale{Step: big.NewRat(5, 1)}.Ceil(new(big.Rat).Mul(new(big.Rat).Quo(low, c.Setting), big.NewRat(100, 1)))
			fix := "take a wrench that begins lower"
			if least.Cmp(big.NewRat(100, 1)) < 0 {
				fix = "begin with `" + least.RatString() + " %`, or take a wrench that begins lower"
			}
			report(fix, "this pass lies below the lowest mark of `%s`, %s", c.Wrench.ID, c.Wrench.Scale.Print(low, p.Shop.Mark()))
		}
	})
}

// yields asks for the turn of a fastener that is tightened to yield: its torque
// alone only seats it, and is compared with nothing.
func yields(p *pass) {
	turned := map[*unit.Fastener]bool{}
	each(p, func(_ *card.Step, t *card.Torque) {
		if t.ThenTurn != nil || t.Node.Get("then-turn") != nil {
			turned[t.Fastener] = true
		}
	})
	each(p, func(_ *card.Step, t *card.Torque) {
		f := t.Fastener
		if f == nil || f.Duty != unit.ToYield || turned[f] || t.BackOff != nil && t.SecondTorque == nil || p.anyInvalid("torque") {
			return
		}
		d := p.msgs.Report("turn-missing", t.Torque.Fastener.At, "add `then-turn:` with the manual's angle, or give the fastener the duty that it has", "`%s` is tightened to yield, and nothing says how far it is turned after the torque", f.ID)
		d.Related = append(d.Related, related(f.At, "the fastener is declared here"))
	})
}

// recordBoxes compares the boxes for a set with its count. A set may have a
// round of boxes for each pass or each torque.
func recordBoxes(p *pass) {
	each(p, func(_ *card.Step, t *card.Torque) {
		boxes := len(t.Record)
		if !t.Set() || boxes < 2 {
			return
		}
		for _, rounds := range []int{1, len(t.Torque.Passes), len(t.Tightenings())} {
			if boxes == rounds*t.Fastener.Count {
				return
			}
		}
		d := p.msgs.Report("record-count", t.KeyPlace("record"), "count them on the unit: give each its box, or correct `count:` in unit.yaml", "there are %d of `%s`, and %d boxes to write in", t.Fastener.Count, t.Fastener.ID, boxes)
		d.Related = append(d.Related, related(t.Fastener.At, "the fastener is declared here"))
	})
}

// sequences refuses actions of a block that cannot follow one another.
func sequences(p *pass) {
	each(p, func(s *card.Step, t *card.Torque) {
		report := func(key, fix, message string) {
			p.msgs.Report("torque-sequence", t.KeyPlace(key), fix, "%s", message)
		}
		until := t.Until.Reading.Name != ""
		slack := t.BackOff != nil && t.Torque.SecondTorque == nil
		switch {
		case until && t.BackOff != nil:
			report("back-off", "take `back-off:` out", "a crush sleeve is never slackened")
		case until && t.Align == procedure.LoosenOnly:
			report("align", "take `align:` out, or write `tighten only`", "a crush sleeve is never slackened")
		case until && t.ThenTurn != nil:
			report("then-turn", "take `then-turn:` or `until:` out", "the reading ends the tightening of a crush sleeve, and an angle would go past it")
		case slack && t.BackOff.Angle == nil && !p.tightenedAfter(s, t):
			report("back-off", "add `again:` with the torque that follows, or a later step that tightens it", "nothing says how tight it is made after it is loose")
		case slack && t.ThenTurn != nil:
			report("then-turn", "add `again:` with the torque before the turn, or take one of the two out", "it is backed off, and then turned on without a torque")
		}
	})
}

// tightenedAfter reports whether a later step tightens the same fastener.
func (p *pass) tightenedAfter(s *card.Step, t *card.Torque) bool {
	later := p.anyInvalid("torque")
	each(p, func(other *card.Step, u *card.Torque) {
		later = later || other.Number > s.Number && u.Fastener != nil && u.Fastener == t.Fastener
	})
	return later
}

// anyLimitUnknown reports whether the limits of some reading are unknown,
// which is reported. It may be the reading that ends a tightening.
func (p *pass) anyLimitUnknown() (found bool) {
	eachReading(p, func(_ card.Item, m *card.Measurement) {
		found = found || m.Limits.Stated() && !m.Limits.None && m.Limit == nil && m.Table == nil
	})
	return found
}

// sleeveReadings checks that a reading with limits ends the tightening against
// a crush sleeve.
func sleeveReadings(p *pass) {
	each(p, func(_ *card.Step, t *card.Torque) {
		e, n := t.End, t.Until.Reading
		switch {
		case e == nil:
		case e.Reading == nil && (p.anyInvalid("preload", "measurement", "lash") || p.anyLimitUnknown()):
		case e.Reading == nil && e.Step == nil:
			p.msgs.Report("until-unread", n.At, "add the step that measures it, with `limits: "+n.Name+"`", "no step of this card reads `%s`", n.Name)
		case e.Reading == nil:
			p.msgs.Report("until-unread", n.At, "name a step that measures the preload, or its limit", "step `%s` takes no reading", n.Name)
		case e.Reading.Limits.None:
			p.msgs.Report("until-unread", n.At, "give that reading its limits", "the reading of `%s` has no limits, so nothing says when to stop", n.Name)
		}
	})
}
