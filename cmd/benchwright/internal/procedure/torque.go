package procedure

import (
	"math/big"
	"strings"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/value"
)

// Torque is a fastener, or a set of them, tightened to a torque, and what
// follows the tightening.
type Torque struct {
	Base
	Fastener     Named
	Limits       Limits
	Value        *quantity.Band // a bare torque or one with ±, instead of limits
	ValueAt      source.Place
	Wrench       Named // the writer's choice; empty leaves the choice to the program
	Adapter      *Adapter
	Thread       Named          // its name is a Thread
	Passes       []Share        // nil if tightened in one pass
	Order        []int          // positions in the order of tightening, from 1; nil if not stated
	ThenTurn     *quantity.Band // an angle
	BackOff      *BackOff
	SecondTorque *Limits // the torque after backing off; nil without one
	Align        Align
	Until        Until
	While        string
	Lock         string
	Because      string // why limits with one end are enough
	Record       []string
}

// Align is the direction in which a castle nut may be turned to align its slot
// with the hole; "" if not stated.
type Align string

const (
	TightenOnly Align = "tighten only"
	LoosenOnly  Align = "loosen only"
)

// A Thread is the condition of a thread.
type Thread string

const (
	Dry          Thread = "dry"
	Oiled        Thread = "oiled"
	Threadlocker Thread = "threadlocker"
	AntiSeize    Thread = "anti-seize"
)

// An Adapter fits between wrench and fastener.
type Adapter struct {
	Tool   Named
	Length *quantity.Value
	Angle  *quantity.Value // nil for in line
	Bad    diag.Reported   // part of it was unreadable
}

// A Share is one pass, as a fraction of the torque: 3/10 for 30 %.
type Share struct {
	Part *big.Rat
	At   source.Place
}

// A BackOff is how far a fastener is backed off: by an angle, or until loose.
type BackOff struct {
	Angle *quantity.Band // nil for until loose
}

// An Until is the reading that ends the tightening against a crush sleeve.
type Until struct {
	Reading Named           // id of a step or limit
	Turn    *quantity.Value // angle to turn at a time; nil if not stated
}

func (r reader) torque(b Base) Item {
	n, limits := b.Node, r.forPart()
	t := &Torque{Base: b, Fastener: r.named(n.Get("fastener")), Limits: limits.limits(b, "limits", quantity.Torque), Wrench: r.named(n.Get("wrench")),
		Align: value.OneOf(r.Reader, n.Get("align"), TightenOnly, LoosenOnly), While: r.Text(n.Get("while")), Lock: r.Text(n.Get("lock")), Because: r.Text(n.Get("because")), Record: r.texts(n.Get("record"))}
	if thread := n.Get("thread"); thread != nil {
		t.Thread = Named{string(value.OneOf(r.Reader, thread, Dry, Oiled, Threadlocker, AntiSeize)), thread.Place()}
	}
	if v := n.Get("value"); v != nil {
		t.Value, t.ValueAt = limits.Band(v, quantity.Torque), v.Place()
		t.Limits.Bad = limits.Bad()
	}
	if a := n.Get("adapter"); a != nil {
		t.Adapter = r.forPart().adapter(a)
	}
	for _, s := range r.Items(n.Get("passes")) {
		t.Passes = append(t.Passes, Share{r.Percentage(s), s.Place()})
	}
	for _, p := range r.Items(n.Get("order")) {
		t.Order = append(t.Order, r.Count(p, 0))
	}
	if turn := n.Get("then-turn"); turn != nil {
		t.ThenTurn = r.turn(turn, "then-turn", true)
	}
	if off := n.Get("back-off"); off != nil {
		t.BackOff = &BackOff{}
		if strings.ToLower(r.Text(off)) != "until loose" && !r.RefuseWord(off, "write `until loose`, or an angle such as `30°`") {
			t.BackOff.Angle = r.turn(off, "back-off", false)
		}
	}
	if again := n.Get("again"); again != nil {
		t.SecondTorque = &Limits{At: again.Place(), Source: r.Text(n.Get("source"))}
		r.forPart().readLimits(t.SecondTorque, again, quantity.Torque)
	}
	if until := n.Get("until"); until != nil && until.Kind == syntax.Mapping {
		t.Until = Until{Reading: r.named(until.Get("reading"))}
		if turn := until.Get("turn"); turn != nil && r.turn(turn, "turn", true) != nil {
			t.Until.Turn = r.Value(turn, quantity.Angle)
		}
	} else {
		t.Until.Reading = r.named(until)
	}
	return t
}

// turn reads an angle to turn by, nil if it is not an angle. Unless whole is
// set, more than a full turn is reported.
func (r reader) turn(n *syntax.Node, key string, whole bool) *quantity.Band {
	b := r.Band(n, quantity.Angle)
	if b == nil {
		return nil
	}
	in := b.In(quantity.MustUnit("°"))
	for _, end := range []*big.Rat{in.Low, in.High, in.Target()} {
		switch {
		case end == nil:
		case end.Sign() <= 0:
			r.Refuse("quantity-malformed", n.Place(), "write how far to turn, such as `90°`", "`%s` must be greater than zero", key)
			return nil
		case whole && end.Cmp(big.NewRat(360, 1)) > 0:
			r.Refuse("quantity-malformed", n.Place(), "check it again: write how far to turn, such as `90°`", "`%s` is more than a whole turn", b.Written)
			return nil
		}
	}
	return b
}

func (r reader) adapter(n *syntax.Node) *Adapter {
	a := &Adapter{Tool: r.named(n.Get("tool")), Length: r.Value(n.Get("length"), quantity.Length), Angle: r.Value(n.Get("angle"), quantity.Angle)}
	r.Require(n, "tool", "length")
	if a.Length != nil && a.Length.Value.Sign() <= 0 {
		r.Refuse("quantity-malformed", n.Get("length").Place(), "write the distance from the center of the drive to the center of the fastener; `angle:` says where it points",
			"an adapter's length is above zero")
	}
	a.Bad = r.Bad()
	return a
}
