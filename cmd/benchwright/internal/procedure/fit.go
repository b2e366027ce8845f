package procedure

import (
	"math/big"
	"regexp"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/value"
)

// Fit is a part that is put in or drawn from its seat by heat, cold or force.
type Fit struct {
	Base
	Part                     Named
	Direction                Direction
	Mate                     Named // the part that it goes into or onto, or comes out of or off
	Diameter                 *quantity.Value
	Interference             *quantity.Band // on the diameter
	Tolerance                Named          // an ISO 286 fit, "50 H7/p6", instead of Diameter and Interference
	Source                   string         // source of Interference
	Clean, Oil, Sealant      string
	Orientation, Lip         string
	Seat                     Seat // "" if not stated, or if Depth is
	Depth                    *Measurement
	HomeSign                 string        // the sign that the part is fully seated
	Heat, Chill, Press, Pull *Method       // nil if not used
	Bad                      diag.Reported // a number was unreadable
}

// A Seat is how far a part goes in.
type Seat string

// The seats: against its shoulder, and level with the face.
const (
	Home  Seat = "home"
	Flush Seat = "flush"
)

// A Direction is the direction in which the part moves relative to its mate.
// Its values are the keys of the block.
type Direction string

// With Into and OutOf the part is the inner one, with Onto and Off the outer.
const (
	Into  Direction = "into"
	Onto  Direction = "onto"
	OutOf Direction = "out-of"
	Off   Direction = "off"
)

// In reports whether the part goes into its seat rather than out of it.
func (w Direction) In() bool { return w == Into || w == Onto }

// Inner reports whether the part sits inside its mate.
func (w Direction) Inner() bool { return w == Into || w == OutOf }

// A Method is heat, cold or force, with the measurement that controls it: a
// temperature, or the force of a press.
type Method struct {
	Measurement         // temperature or force to reach; its Base is that of the key
	With        []Named // tools
	// For heat and cold:
	Clearance *quantity.Value // between the parts, on the diameter
	Room      *quantity.Value // temperature of the other part
	InTheHeat []Named         // other parts that get as hot
	// For force:
	Friction       []*big.Rat // lowest and highest coefficient; a single one stands for both
	FrictionSource string
	Length         *quantity.Value // of the seat
	Outside        *quantity.Value // diameter of the outer part
	Bore           *quantity.Value // of the inner part; nil if it is solid
}

// singleTolerance matches a size with the tolerance of only one part.
var singleTolerance = regexp.MustCompile(`^[⌀Øø]? ?[0-9.,]+ ?[A-Za-z]{1,2} ?[0-9]{1,2}$`)

// isoFit matches an ISO 286 fit, which package card parses.
var isoFit = regexp.MustCompile(`[A-Za-z]{1,2}[0-9]{1,2} ?/ ?[A-Za-z]{1,2}[0-9]{1,2}$`)

func (r reader) fit(b Base) Item {
	n := b.Node
	f := &Fit{Base: b, Part: r.named(n.Get("part")), Source: r.Text(n.Get("source")),
		Clean: r.Text(n.Get("clean")), Oil: r.Text(n.Get("oil")), Sealant: r.Text(n.Get("sealant")),
		Orientation: r.Text(n.Get("orientation")), Lip: r.Text(n.Get("lip")), HomeSign: r.Text(n.Get("home"))}
	for _, w := range []Direction{Into, Onto, OutOf, Off} {
		field, ok := n.Field(string(w))
		switch {
		case !ok:
		case f.Direction != "":
			r.Refuse("key-unknown", b.At.File.At(field.KeySpan.Start, field.KeySpan.End), "keep the one that is meant",
				"`%s` does not belong beside `%s`", w, f.Direction)
		default:
			f.Direction, f.Mate = w, r.named(field.Value)
		}
	}
	numbers := r.forPart()
	f.Diameter = numbers.Value(n.Get("diameter"), quantity.Length)
	i := n.Get("interference")
	switch text := numbers.Text(i); {
	case isoFit.MatchString(text):
		f.Tolerance = r.named(i)
	case singleTolerance.MatchString(text):
		numbers.Refuse("quantity-malformed", i.Place(), "write both, the hole first, such as `52 N7/h6`", "`%s` is the tolerance of one part alone", i.Text)
	default:
		f.Interference = numbers.Band(i, quantity.Length)
	}
	f.Bad = numbers.Bad()
	if s := n.Get("seat"); s != nil && s.Kind == syntax.Mapping {
		d := r.measurement(r.subBase(b, "seat")).(*Measurement)
		d.Limits = r.forPart().requiredLimits(d.Base, "depth", quantity.Length)
		f.Depth = d
	} else {
		f.Seat = value.OneOf(r.Reader, s, Home, Flush)
	}
	f.Heat, f.Chill = r.warmth(b, "heat"), r.warmth(b, "chill")
	f.Press, f.Pull = r.force(b, "press"), r.force(b, "pull")
	return f
}

// subBase returns the base of a mapping inside a block, whose place is its
// key.
func (r reader) subBase(b Base, key string) Base {
	f, _ := b.Node.Field(key)
	return Base{At: b.At.File.At(f.KeySpan.Start, f.KeySpan.End), Only: b.Only, Node: f.Value}
}

// method reads what heat, cold and force have in common: limits, tools and
// gauge.
func (r reader) method(b Base, key string, kind quantity.Dimension) *Method {
	return &Method{Measurement: Measurement{Base: b, Limits: r.requiredLimits(b, key, kind), Gauge: r.named(b.Node.Get("gauge"))},
		With: r.names(b.Node.Get("with"))}
}

// requiredLimits reads limits for which `none` is not allowed.
func (r reader) requiredLimits(b Base, key string, kind quantity.Dimension) Limits {
	l := r.limits(b, key, kind)
	if l.None {
		l.None, l.Named = false, r.named(b.Node.Get(key))
	}
	return l
}

func (r reader) warmth(b Base, key string) *Method {
	n := r.Mapping(b.Node.Get(key))
	if n == nil {
		return nil
	}
	r = r.forPart()
	m := r.method(r.subBase(b, key), "to", quantity.Temperature)
	m.Clearance = r.Positive(n.Get("clearance"), quantity.Length, "room to spare is", "write how much larger the seat is to be, on the diameter, such as `0.02 mm`")
	m.Room, m.InTheHeat = r.Value(n.Get("room"), quantity.Temperature), r.names(n.Get("in-the-heat"))
	m.Limits.Bad = r.Bad()
	return m
}

func (r reader) force(b Base, key string) *Method {
	n := r.Mapping(b.Node.Get(key))
	if n == nil {
		return nil
	}
	r = r.forPart()
	m := r.method(r.subBase(b, key), "force", quantity.Force)
	for _, i := range r.Items(n.Get("friction")) {
		m.Friction = append(m.Friction, r.Number(i))
	}
	m.FrictionSource = r.Text(n.Get("friction-source"))
	m.Length = r.Positive(n.Get("length"), quantity.Length, "a seat is", "write how long it is, such as `18 mm`")
	m.Outside, m.Bore = r.Value(n.Get("outside"), quantity.Length), r.Value(n.Get("bore"), quantity.Length)
	m.Limits.Bad = r.Bad()
	return m
}
