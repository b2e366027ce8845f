package procedure

import (
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
)

// Preload is a bearing preload, read as the pull of a cord wound on a drum, or
// on a torque gauge.
type Preload struct {
	Measurement
	Drum  *quantity.Value // radius without the cord; nil for a torque gauge
	Cord  *quantity.Value // thickness; nil for a torque gauge
	State *unit.State
}

func (r reader) preload(b Base) Item {
	n := b.Node
	p := &Preload{Measurement: r.reading(b, quantity.Torque, "scale"), State: unit.ReadState(r.Reader, n.Get("state"))}
	r.Require(n, "state")
	if p.Limits.None {
		p.Limits.Bad = r.Msgs.Report("limits-missing", p.Limits.At, "name a limit of the unit, or write the band with its `source:`", "this preload has no limits").Proof()
		p.Limits.None = false
	}
	p.Drum, p.Cord = r.positive(n.Get("drum"), quantity.Length, "a drum has a radius"), r.positive(n.Get("cord"), quantity.Length, "a cord has a thickness")
	if n.Get("drum") != nil {
		r.Require(n, "cord")
	}
	if p.Drum != nil && p.Cord != nil && p.Cord.In(p.Drum.Unit).Value.Cmp(p.Drum.Value) > 0 {
		r.Refuse("quantity-malformed", n.Get("cord").Place(), "write its thickness, such as `3 mm`", "the cord is thicker than its drum is from the middle")
	}
	return p
}

// positive reads a value that must be above zero. It returns nil if it is
// absent, or if it is not positive, which it reports.
func (r reader) positive(n *syntax.Node, kind quantity.Dimension, what string) *quantity.Value {
	return r.Positive(n, kind, what+" of", "write how much it is")
}
