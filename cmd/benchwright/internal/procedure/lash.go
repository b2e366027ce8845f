package procedure

import (
	"cmp"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/cmd/benchwright/internal/value"
)

type Lash struct {
	Measurement
	DialPlace  *unit.LashPlace // where the dial indicator is placed
	LimitPlace *unit.LashPlace // where limits written in this block hold; nil otherwise
	Gears      Named           // the gear pair; empty for the unit's only one
	NoFigure   bool
}

func (r reader) lash(b Base) Item {
	n := b.Node
	in := r.forPart()
	l := &Lash{Measurement: r.reading(b, quantity.Length, "gauge"), DialPlace: unit.ReadLashPlace(r.Reader, n), Gears: r.named(n.Get("gears")),
		NoFigure: value.OneOf(r.Reader, n.Get("figure"), "none") != ""}
	l.Of = cmp.Or(l.Of, "Backlash")
	if s := n.Get("holds"); s != nil {
		l.LimitPlace = unit.ReadLashPlace(in.Reader, s)
	}
	l.Limits.Bad = l.Limits.Bad.Or(in.Bad())
	return l
}
