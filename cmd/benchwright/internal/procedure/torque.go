package procedure

import (
	"math/big"
	"strconv"
	"strings"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
)

// Torque is a fastener, or a set of them, tightened to a torque, and what the
// hands do after it.
type Torque struct {
	Base
	Fastener Named
	Limits   Limits
	Value    *quantity.Band // bare or with ±, in place of limits
	ValueAt  source.Place
	Wrench   Named // the writer's own choice; empty leaves it to the compiler
	Adapter  *Adapter
	Thread   Named          // dry, oiled, threadlocker, anti-seize
	Passes   []Share        // nil where it is tightened in one go
	Order    []int          // the places of a set in the order of tightening, counted from 1; nil where not written
	ThenTurn *quantity.Band // an angle
	BackOff  *BackOff
	Again    *Limits // the torque after it was backed off; nil where it stays so
	Align    string  // "tighten only", "loosen only"
	Until    Until
	While    string
	Lock     string
	Record   []string
}

// An Adapter stands between wrench and fastener.
type Adapter struct {
	Tool   Named
	Length *quantity.Value // nil where it could not be read
	Angle  *quantity.Value // nil in line
	Bad    bool            // something of it could not be read
}

// A Share is one pass: a part of the torque, 3/10 for 30 %.
type Share struct {
	Part *big.Rat
	At   source.Place
}

// A BackOff is how far a fastener is backed off: by an angle, or until it is
// loose.
type BackOff struct {
	By *quantity.Band // nil until loose
}

// An Until is the reading that ends the tightening of a crush sleeve.
type Until struct {
	Reading Named           // the id of a step or a limit
	Turn    *quantity.Value // at a time; nil where none is stated
}

func (r *Reader) torque(b Base) Item {
	n := b.Node
	t := &Torque{Base: b, Fastener: named(n.Get("fastener")), Limits: r.limits(b, quantity.Torque), Wrench: named(n.Get("wrench")),
		Thread: named(n.Get("thread")), Align: text(n.Get("align")), While: text(n.Get("while")), Lock: text(n.Get("lock")), Record: texts(n.Get("record"))}
	if v := n.Get("value"); v != nil {
		t.Value, t.ValueAt = r.band(v, quantity.Torque), v.Place()
		t.Limits.Bad = t.Limits.Bad || t.Value == nil
		t.Limits.Source = text(n.Get("source"))
	}
	if a := n.Get("adapter"); a != nil {
		t.Adapter = r.adapter(a)
	}
	for _, s := range items(n.Get("passes")) {
		part := r.values().Share(s)
		if part == nil {
			t.Passes = nil
			break
		}
		t.Passes = append(t.Passes, Share{part, s.Place()})
	}
	for _, p := range items(n.Get("order")) {
		if k, err := strconv.Atoi(text(p)); err == nil {
			t.Order = append(t.Order, k)
		}
	}
	if turn := n.Get("then-turn"); turn != nil {
		t.ThenTurn = r.turn(turn, "then-turn", true)
	}
	if off := n.Get("back-off"); off != nil {
		t.BackOff = &BackOff{}
		if strings.ToLower(text(off)) != "until loose" {
			if !r.values().Wordy(off, "write `until loose`, or an angle such as `30°`") {
				t.BackOff.By = r.turn(off, "back-off", false)
			}
			if t.BackOff.By == nil {
				t.BackOff = nil
			}
		}
	}
	if again := n.Get("again"); again != nil {
		t.Again = &Limits{At: again.Place(), Source: text(n.Get("source"))}
		r.stated(t.Again, again, quantity.Torque)
	}
	if until := n.Get("until"); until != nil {
		t.Until = Until{Reading: named(until)}
		if until.Kind == syntax.Mapping {
			turn := until.Get("turn")
			t.Until = Until{named(until.Get("reading")), r.values().Value(turn, quantity.Angle)}
			if t.Until.Turn != nil {
				r.turn(turn, "turn", true)
			}
		}
	}
	return t
}

// turn reads an angle to turn by under a key, nil for one that is none. One that
// is more than a whole turn, where that is too much, is a slip.
func (r *Reader) turn(n *syntax.Node, key string, whole bool) *quantity.Band {
	b := r.band(n, quantity.Angle)
	if b == nil {
		return nil
	}
	in := b.In(quantity.MustUnit("°"))
	for _, end := range []*big.Rat{in.Low, in.High, in.Target()} {
		switch {
		case end == nil:
		case end.Sign() <= 0:
			r.Msgs.Report("quantity-malformed", n.Place(), "write how far to turn, such as `90°`", "`%s` is more than nothing", key)
			return nil
		case whole && end.Cmp(big.NewRat(360, 1)) > 0:
			r.Msgs.Report("quantity-malformed", n.Place(), "look it up again: write how far to turn, such as `90°`", "`%s` is more than a whole turn", b.Written)
			return nil
		}
	}
	return b
}

func (r *Reader) adapter(n *syntax.Node) *Adapter {
	a := &Adapter{Tool: named(n.Get("tool")), Length: r.values().Value(n.Get("length"), quantity.Length), Angle: r.values().Value(n.Get("angle"), quantity.Angle)}
	a.Bad = a.Tool.Name == "" || a.Length == nil || a.Angle == nil && n.Get("angle") != nil
	if !a.Bad && a.Length.Value.Sign() <= 0 {
		r.Msgs.Report("quantity-malformed", n.Get("length").Place(), "write the distance from the centre of the drive to the centre of the fastener; `angle:` says where it points",
			"an adapter's length is above zero")
		a.Bad = true
	}
	return a
}

// values reads single values as the facts of a unit are read.
func (r *Reader) values() unit.Reader { return unit.Reader{Mark: r.Mark, Msgs: r.Msgs} }
