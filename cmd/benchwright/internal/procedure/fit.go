package procedure

import (
	"math/big"
	"regexp"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/value"
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
	Seat                     Seat // "" where not stated, or where Depth is
	Depth                    *Measurement
	Home                     string        // the sign that it is home
	Heat, Chill, Press, Pull *Means        // nil for what is not done
	Bad                      diag.Reported // a number could not be read
}

// A Seat is how far a part goes.
type Seat string

// The seats: against its shoulder, or level with the face.
const (
	Home  Seat = "home"
	Flush Seat = "flush"
)

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

func (r reader) fit(b Base) Item {
	n := b.Node
	f := &Fit{Base: b, Part: r.named(n.Get("part")), Source: r.Text(n.Get("source")),
		Clean: r.Text(n.Get("clean")), Oil: r.Text(n.Get("oil")), Sealant: r.Text(n.Get("sealant")),
		WayRound: r.Text(n.Get("way-round")), Lip: r.Text(n.Get("lip")), Home: r.Text(n.Get("home"))}
	for _, w := range []Way{Into, Onto, OutOf, Off} {
		field, ok := n.Field(string(w))
		switch {
		case !ok:
		case f.Way != "":
			r.Refuse("key-unknown", b.At.File.At(field.KeySpan.Start, field.KeySpan.End), "keep the one that is meant",
				"`%s` does not belong beside `%s`", w, f.Way)
		default:
			f.Way, f.Mate = w, r.named(field.Value)
		}
	}
	numbers := r.thing()
	f.Diameter = numbers.Value(n.Get("diameter"), quantity.Length)
	i := n.Get("interference")
	switch text := numbers.Text(i); {
	case isoFit.MatchString(text):
		f.Tolerance = r.named(i)
	case oneZone.MatchString(text):
		numbers.Refuse("quantity-malformed", i.Place(), "write both, the hole first, such as `52 N7/h6`", "`%s` is the tolerance of one part alone", i.Text)
	default:
		f.Interference = numbers.Band(i, quantity.Length)
	}
	f.Bad = numbers.Bad()
	if s := n.Get("seat"); s != nil && s.Kind == syntax.Mapping {
		d := r.measurement(r.below(b, "seat")).(*Measurement)
		d.Limits = r.thing().wanted(d.Base, "depth", quantity.Length)
		f.Depth = d
	} else {
		f.Seat = value.OneOf(r.Reader, s, Home, Flush)
	}
	f.Heat, f.Chill = r.warmth(b, "heat"), r.warmth(b, "chill")
	f.Press, f.Pull = r.force(b, "press"), r.force(b, "pull")
	return f
}

// below returns the base of a mapping inside a block: its place is its key.
func (r reader) below(b Base, key string) Base {
	f, _ := b.Node.Field(key)
	return Base{At: b.At.File.At(f.KeySpan.Start, f.KeySpan.End), Only: b.Only, Node: f.Value}
}

// means reads what heat, cold and force have in common: limits under a key of
// their own, tools and the gauge.
func (r reader) means(b Base, key string, kind quantity.Dimension) *Means {
	return &Means{Measurement: Measurement{Base: b, Limits: r.wanted(b, key, kind), Gauge: r.named(b.Node.Get("gauge"))},
		With: r.names(b.Node.Get("with"))}
}

// wanted reads limits where there is no doing without: `none` is a name that no
// limit has.
func (r reader) wanted(b Base, key string, kind quantity.Dimension) Limits {
	l := r.limits(b, key, kind)
	if l.None {
		l.None, l.Named = false, r.named(b.Node.Get(key))
	}
	return l
}

func (r reader) warmth(b Base, key string) *Means {
	n := r.Mapping(b.Node.Get(key))
	if n == nil {
		return nil
	}
	r = r.thing()
	m := r.means(r.below(b, key), "to", quantity.Temperature)
	m.Clearance = r.Positive(n.Get("clearance"), quantity.Length, "room to spare is", "write how much larger the seat is to be, on the diameter, such as `0.02 mm`")
	m.Room, m.InTheHeat = r.Value(n.Get("room"), quantity.Temperature), r.names(n.Get("in-the-heat"))
	m.Limits.Bad = r.Bad()
	return m
}

func (r reader) force(b Base, key string) *Means {
	n := r.Mapping(b.Node.Get(key))
	if n == nil {
		return nil
	}
	r = r.thing()
	m := r.means(r.below(b, key), "force", quantity.Force)
	for _, i := range r.Items(n.Get("friction")) {
		m.Friction = append(m.Friction, r.Number(i))
	}
	m.FrictionSource = r.Text(n.Get("friction-source"))
	m.Length = r.Positive(n.Get("length"), quantity.Length, "a seat is", "write how long it is, such as `18 mm`")
	m.Outside, m.Bore = r.Value(n.Get("outside"), quantity.Length), r.Value(n.Get("bore"), quantity.Length)
	m.Limits.Bad = r.Bad()
	return m
}
