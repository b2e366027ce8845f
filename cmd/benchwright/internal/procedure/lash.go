package procedure

import (
	"cmp"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
)

// Lash is a backlash reading.
type Lash struct {
	Measurement
	Dial     *unit.LashPlace // where the dial stands
	Holds    *unit.LashPlace // where limits hold that are written here; nil otherwise
	Gears    Named           // the pair; empty for the only one of the unit
	NoFigure bool
}

func (r *Reader) lash(b Base) Item {
	n := b.Node
	u := r.values()
	l := &Lash{Measurement: r.reading(b, quantity.Length, "gauge"), Dial: u.LashPlace(n), Gears: named(n.Get("gears")), NoFigure: text(n.Get("figure")) == "none"}
	if l.Dial == nil {
		return &Invalid{b, "lash"}
	}
	l.Of = cmp.Or(l.Of, "Backlash")
	if s := n.Get("holds"); s != nil && s.Kind == syntax.Mapping {
		l.Holds = u.LashPlace(s)
		l.Limits.Bad = l.Limits.Bad || l.Holds == nil
	}
	return l
}
