package bench

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
)

// leastShare is the part of a wrench's highest mark below which its setting is
// not trusted without a warning. ISO 6789:2003 tests a wrench at 20, 60 and
// 100 % of its maximum (secondary source); the 2017 edition starts at the
// lowest mark, so a lower setting is a warning and no error.
var leastShare = big.NewRat(1, 5)

// A Choice is a wrench and what to set on it. All numbers are in the unit of
// the wrench's scale.
type Choice struct {
	Wrench      *shop.Wrench
	Setting     *big.Rat       // a mark of the wrench inside Marks
	Marks       quantity.Marks // the settings inside the limits, on the wrench's marks
	Torque      *big.Rat       // what the setting gives at the fastener: the setting itself without an adapter
	Least, Most *big.Rat       // the torque that the fastener may get: Torque × (1 ∓ accuracy); nil where no accuracy is stated
	Keeps       bool           // Least and Most are known and lie inside the limits
	Under, Over *big.Rat       // how far Least lies below the low limit and Most above the high one; nil where they do not
	LowInRange  bool           // the setting is below 20 % of the wrench's highest mark
}

// A Reason is why a wrench cannot be used.
type Reason uint8

// The reasons.
const (
	BelowScale Reason = iota // the limits end below the lowest mark
	AboveScale               // the limits begin above the highest mark
	NoMark                   // the limits lie between two marks
	OtherKind                // the scale is not one of torque
	Superseded               // another wrench has taken its place
	NoLength                 // it goes through an adapter, and the wrench states no length
	NoLever                  // the adapter is as long as the wrench: nobody means that
)

// A Refusal is a wrench that cannot be set inside the limits.
type Refusal struct {
	Wrench *shop.Wrench
	Reason Reason
}

// ChooseWrench returns the wrench to take for a torque and its setting, and
// the wrenches that cannot be set to it, in the order of the list. The choice
// is nil when no wrench can, and when limits has none: a bare value takes its
// tolerance first. Limits are at the fastener; through is the adapter that
// stands between, or nil.
//
// The target is the nominal of limits that were written with ±, else their
// middle. The setting is the mark nearest to it that lies inside the limits; a
// tie takes the lower. Limits that are open to one side have no middle: the
// target is the limit itself, drawn in by the accuracy. Among the wrenches the
// first are those whose accuracy at the setting keeps the torque inside the
// limits; then those set within 20 to 100 % of their highest mark; then those
// of finer marks; then the order of the list. A wrench without a stated
// accuracy is not known to keep inside.
func ChooseWrench(limits quantity.Band, through *Adapter, wrenches []*shop.Wrench) (*Choice, []Refusal) {
	var best *Choice
	var refused []Refusal
	if limits.Low == nil && limits.High == nil {
		return nil, nil
	}
	for _, w := range wrenches {
		c, reason := setOn(limits, through, w)
		switch {
		case c == nil:
			refused = append(refused, Refusal{w, reason})
		case best == nil || c.better(best):
			best = c
		}
	}
	return best, refused
}

// setOn returns the choice of one wrench, or nil and why it cannot be set.
func setOn(limits quantity.Band, through *Adapter, w *shop.Wrench) (*Choice, Reason) {
	switch {
	case w.ReplacedBy != "":
		return nil, Superseded
	case w.Scale.Unit.Dimension != limits.Unit.Dimension:
		return nil, OtherKind
	case through != nil && w.Length == nil:
		return nil, NoLength
	}
	fastener := limits.In(w.Scale.Unit)
	exact, ok := through.Setting(fastener, w.Length)
	if !ok || through != nil && through.Length.In(w.Length.Unit).Value.Cmp(w.Length.Value) >= 0 {
		return nil, NoLever
	}
	marks, ok := exact.Inward(w.Scale)
	if !ok {
		switch {
		case w.Scale.Low != nil && exact.High != nil && exact.High.Cmp(w.Scale.Low) < 0:
			return nil, BelowScale
		case w.Scale.High != nil && exact.Low != nil && exact.Low.Cmp(w.Scale.High) > 0:
			return nil, AboveScale
		}
		return nil, NoMark
	}
	less, more := big.NewRat(1, 1), big.NewRat(1, 1)
	if w.Accuracy != nil {
		less.Sub(less, w.Accuracy)
		more.Add(more, w.Accuracy)
	}
	target := exact.Target()
	switch {
	case target != nil:
	case exact.High != nil:
		target = w.Scale.Floor(new(big.Rat).Quo(exact.High, more))
	case less.Sign() > 0:
		target = w.Scale.Ceil(new(big.Rat).Quo(exact.Low, less))
	default:
		target = exact.Low
	}
	c := &Choice{Wrench: w, Marks: marks, Setting: nearestMark(target, marks)}
	least, most, _ := through.gain(w.Length)
	c.Torque = new(big.Rat).Mul(c.Setting, least)
	if w.Accuracy != nil {
		c.Least = less.Mul(less, c.Torque)
		c.Most = more.Mul(more, new(big.Rat).Mul(c.Setting, most))
		if fastener.Low != nil {
			c.Under = excess(fastener.Low, c.Least)
		}
		if fastener.High != nil {
			c.Over = excess(c.Most, fastener.High)
		}
		c.Keeps = c.Under == nil && c.Over == nil
	}
	if w.Scale.High != nil {
		c.LowInRange = c.Setting.Cmp(new(big.Rat).Mul(w.Scale.High, leastShare)) < 0
	}
	return c, 0
}

// excess returns how far a lies above b, or nil.
func excess(a, b *big.Rat) *big.Rat {
	if a.Cmp(b) <= 0 {
		return nil
	}
	return new(big.Rat).Sub(a, b)
}

// nearestMark returns the mark inside m that is nearest to target, the lower
// of two.
func nearestMark(target *big.Rat, m quantity.Marks) *big.Rat {
	down, up := m.Scale.Floor(target), m.Scale.Ceil(target)
	mark := down
	if new(big.Rat).Sub(up, target).Cmp(new(big.Rat).Sub(target, down)) < 0 {
		mark = up
	}
	low, high := m.Scale.Ends()
	for _, l := range []*big.Rat{low, m.Low} {
		if l != nil && mark.Cmp(l) < 0 {
			mark = l
		}
	}
	for _, h := range []*big.Rat{high, m.High} {
		if h != nil && mark.Cmp(h) > 0 {
			mark = h
		}
	}
	return mark
}

// better reports whether c is to be taken rather than d, which stands before
// it in the list.
func (c *Choice) better(d *Choice) bool {
	if c.Keeps != d.Keeps {
		return c.Keeps
	}
	if c.LowInRange != d.LowInRange {
		return d.LowInRange
	}
	step := quantity.Convert(c.Wrench.Scale.Step, c.Wrench.Scale.Unit, d.Wrench.Scale.Unit)
	return step.Cmp(d.Wrench.Scale.Step) < 0
}

// A Need describes a wrench that would do, where the shop has none. All numbers
// are in Unit; a nil one is not known.
type Need struct {
	Unit      quantity.Unit
	Low, High *big.Rat // the scale must hold these limits
	Longest   *big.Rat // its highest mark may be at most this, five times the target
	Step      *big.Rat // marks as fine as this always have one inside the limits
	Accuracy  *big.Rat // of the reading: what keeps the torque inside when set to the target
}

// NeedFor returns what a wrench must have for a torque with these limits, in
// unit u, which must be one of torque.
func NeedFor(limits quantity.Band, u quantity.Unit) Need {
	exact := limits.In(u)
	n := Need{Unit: u, Low: exact.Low, High: exact.High, Step: limits.CoarsestStep(u)}
	if t := exact.Target(); t != nil && t.Sign() > 0 {
		n.Longest = new(big.Rat).Quo(t, leastShare)
		if n.Low != nil && n.High != nil {
			room := new(big.Rat).Sub(t, n.Low)
			if other := new(big.Rat).Sub(n.High, t); other.Cmp(room) < 0 {
				room = other
			}
			n.Accuracy = room.Quo(room, t)
		}
	}
	return n
}
