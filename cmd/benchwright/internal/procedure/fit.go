package procedure

import (
	"math/big"
	"regexp"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/syntax"
)

// Fit is a part that is put in its seat, or drawn from it, by heat, cold or
// force.
type Fit struct {
	Base
	Part                     Named
	Way                      Way
	Mate                     Named // what the part goes into or onto, or comes out of or off
	Diameter                 *quantity.Value
	Interference             *quantity.Band // on the diameter
	Tolerance                Named          // an ISO 286 fit in place of both: "50 H7/p6"
	Source                   string         // of the interference
	Clean, Oil, Sealant      string
	WayRound, Lip            string
	Seat                     string // home or flush; "" where not stated, or where Depth is
	Depth                    *Measurement
	Home                     string // the sign that it is home
	Heat, Chill, Press, Pull *Means // nil for what is not done
	Bad                      bool   // a number could not be read, which is reported
}

// A Way is which way a part goes, as its key says: into, onto, out-of or off.
type Way string

// The ways. Into and out of, the part is the inner one; onto and off, the outer.
const (
	Into  Way = "into"
	Onto  Way = "onto"
	OutOf Way = "out-of"
	Off   Way = "off"
)

// In reports whether the part goes in its seat, and does not leave it.
func (w Way) In() bool { return w == Into || w == Onto }

// Inner reports whether the part sits inside what it is fitted to.
func (w Way) Inner() bool { return w == Into || w == OutOf }

// Means is heat, cold or force, and the reading that shows it: a temperature,
// or the force of a press.
type Means struct {
	Measurement         // what to heat to, or how hard to press; its Base is the key's
	With        []Named // tools
	// Of heat and cold.
	Clearance *quantity.Value // room to spare on the diameter
	Room      *quantity.Value // temperature of the part that is not heated or chilled
	InTheHeat []Named         // other parts that get as hot
	// Of force.
	Friction       []*big.Rat // least and most; one stands for both
	FrictionSource string
	Length         *quantity.Value // of the seat
	Outside        *quantity.Value // diameter of the outer part
	Bore           *quantity.Value // of the inner part; nothing of a solid one
}

// oneZone matches a size with the tolerance of one part alone.
var oneZone = regexp.MustCompile(`^[⌀Øø]? ?[0-9.,]+ ?[A-Za-z]{1,2} ?[0-9]{1,2}$`)

// isoFit matches a fit after ISO 286, which is read later.
var isoFit = regexp.MustCompile(`[A-Za-z]{1,2}[0-9]{1,2} ?/ ?[A-Za-z]{1,2}[0-9]{1,2}$`)

func (r *Reader) fit(b Base) Item {
	n := b.Node
	f := &Fit{Base: b, Part: named(n.Get("part")), Source: text(n.Get("source")),
		Clean: text(n.Get("clean")), Oil: text(n.Get("oil")), Sealant: text(n.Get("sealant")),
		WayRound: text(n.Get("way-round")), Lip: text(n.Get("lip")), Home: text(n.Get("home"))}
	for _, w := range []Way{Into, Onto, OutOf, Off} {
		field, ok := n.Field(string(w))
		switch {
		case !ok:
		case f.Way != "":
			r.Msgs.Report("key-unknown", b.At.File.At(field.KeySpan.Start, field.KeySpan.End), "keep the one that is meant",
				"`%s` does not belong beside `%s`", w, f.Way)
		default:
			f.Way, f.Mate = w, named(field.Value)
		}
	}
	f.Diameter = r.length(n.Get("diameter"), &f.Bad)
	if i := n.Get("interference"); i != nil && i.Kind == syntax.Scalar && isoFit.MatchString(i.Text) {
		f.Tolerance = named(i)
	} else if i != nil && i.Kind == syntax.Scalar && oneZone.MatchString(i.Text) {
		r.Msgs.Report("quantity-malformed", i.Place(), "write both, the hole first, such as `52 N7/h6`", "`%s` is the tolerance of one part alone", i.Text)
		f.Bad = true
	} else if i != nil {
		f.Interference = r.band(i, quantity.Length)
		f.Bad = f.Bad || f.Interference == nil
	}
	if s := n.Get("seat"); s != nil && s.Kind == syntax.Mapping {
		d := r.measurement(r.below(b, "seat")).(*Measurement)
		d.Limits = r.wanted(d.Base, "depth", quantity.Length)
		f.Depth = d
	} else {
		f.Seat = text(s)
	}
	f.Heat, f.Chill = r.warmth(b, "heat"), r.warmth(b, "chill")
	f.Press, f.Pull = r.force(b, "press"), r.force(b, "pull")
	return f
}

// below returns the base of a mapping inside a block: its place is its key.
func (r *Reader) below(b Base, key string) Base {
	f, _ := b.Node.Field(key)
	return Base{At: b.At.File.At(f.KeySpan.Start, f.KeySpan.End), Only: b.Only, Node: f.Value}
}

// means reads what heat, cold and force have in common: limits under a key of
// their own, tools and the gauge. It returns nil where the key is not there.
func (r *Reader) means(b Base, key, limits string, kind quantity.Dimension) *Means {
	if b.Node.Get(key) == nil {
		return nil
	}
	in := r.below(b, key)
	return &Means{Measurement: Measurement{Base: in, Limits: r.wanted(in, limits, kind), Gauge: named(in.Node.Get("gauge"))},
		With: names(in.Node.Get("with"))}
}

// wanted reads limits where there is no doing without: `none` is a name that no
// limit has.
func (r *Reader) wanted(b Base, key string, kind quantity.Dimension) Limits {
	l := r.limitsAt(b, key, kind)
	if l.None {
		l.None, l.Named = false, named(b.Node.Get(key))
	}
	return l
}

func (r *Reader) warmth(b Base, key string) *Means {
	m := r.means(b, key, "to", quantity.Temperature)
	if m == nil {
		return nil
	}
	n, bad := m.Node, &m.Limits.Bad
	m.Clearance, m.Room = r.aboveNothing(n.Get("clearance"), "room to spare is", "write how much larger the seat is to be, on the diameter, such as `0.02 mm`", bad), r.value(n.Get("room"), quantity.Temperature, bad)
	m.InTheHeat = names(n.Get("in-the-heat"))
	return m
}

func (r *Reader) force(b Base, key string) *Means {
	m := r.means(b, key, "force", quantity.Force)
	if m == nil {
		return nil
	}
	n, bad := m.Node, &m.Limits.Bad
	for _, i := range items(n.Get("friction")) {
		x := r.values().Number(i)
		if x == nil {
			*bad = true
			continue
		}
		m.Friction = append(m.Friction, x)
	}
	m.FrictionSource = text(n.Get("friction-source"))
	m.Length, m.Outside, m.Bore = r.aboveNothing(n.Get("length"), "a seat is", "write how long it is, such as `18 mm`", bad), r.length(n.Get("outside"), bad), r.length(n.Get("bore"), bad)
	return m
}

// value reads one number with its unit, nil where there is none. One that
// cannot be read is reported and noted in bad.
func (r *Reader) value(n *syntax.Node, kind quantity.Dimension, bad *bool) *quantity.Value {
	v := r.values().Value(n, kind)
	*bad = *bad || n != nil && v == nil
	return v
}

// aboveNothing reads a length that is more than nothing, as value does.
func (r *Reader) aboveNothing(n *syntax.Node, what, mend string, bad *bool) *quantity.Value {
	v := r.values().Above(n, quantity.Length, what, mend)
	*bad = *bad || n != nil && v == nil
	return v
}

func (r *Reader) length(n *syntax.Node, bad *bool) *quantity.Value {
	return r.value(n, quantity.Length, bad)
}
