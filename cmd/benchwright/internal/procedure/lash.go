package procedure

import (
	"cmp"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/cmd/benchwright/internal/value"
)

// Lash is a backlash reading.
type Lash struct {
	Measurement
	Dial     *unit.LashPlace // where the dial stands
	Holds    *unit.LashPlace // where limits hold that are written here; nil otherwise
	Gears    Named           // the pair; empty for the only one of the unit
	NoFigure bool
}

func (r reader) lash(b Base) Item {
	n := b.Node
	in := r.thing()
	l := &Lash{Measurement: r.reading(b, quantity.Length, "gauge"), Dial: unit.ReadLashPlace(r.Reader, n), Gears: r.named(n.Get("gears")),
		NoFigure: value.OneOf(r.Reader, n.Get("figure"), "none") != ""}
	l.Of = cmp.Or(l.Of, "Backlash")
	if s := n.Get("holds"); s != nil {
		l.Holds = unit.ReadLashPlace(in.Reader, s)
	}
	l.Limits.Bad = l.Limits.Bad.Or(in.Bad())
	return l
}
