package procedure

import (
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
)

// Preload is a bearing preload, read as the pull of a cord that is wound on a
// drum, or on a torque gauge.
type Preload struct {
	Measurement
	Drum  *quantity.Value // radius without the cord; nil for a torque gauge
	Cord  *quantity.Value // thickness; nil for a torque gauge
	State *unit.State
}

func (r *Reader) preload(b Base) Item {
	n := b.Node
	p := &Preload{Measurement: r.reading(b, quantity.Torque, "scale"), State: r.values().State(n.Get("state"))}
	if p.Limits.None {
		r.Msgs.Report("limits-missing", p.Limits.At, "name a limit of the unit, or write the band with its `source:`", "a preload without limits says nothing")
		p.Limits.None, p.Limits.Bad = false, true
	}
	p.Drum, p.Cord = r.above(n.Get("drum"), quantity.Length, "a drum has a radius"), r.above(n.Get("cord"), quantity.Length, "a cord has a thickness")
	if p.Drum != nil && p.Cord != nil && p.Cord.In(p.Drum.Unit).Value.Cmp(p.Drum.Value) > 0 {
		r.Msgs.Report("quantity-malformed", n.Get("cord").Place(), "write its thickness, such as `3 mm`", "the cord is thicker than its drum is from the middle")
		return &Invalid{b, "preload"}
	}
	if n.Get("drum") != nil && (p.Drum == nil || p.Cord == nil) || p.State == nil {
		return &Invalid{b, "preload"}
	}
	return p
}

// above reads a value that must be above zero, nil where there is none or it is
// not, which is reported with what it is.
func (r *Reader) above(n *syntax.Node, kind quantity.Dimension, what string) *quantity.Value {
	v := r.values().Value(n, kind)
	if v != nil && v.Value.Sign() <= 0 {
		r.Msgs.Report("quantity-malformed", n.Place(), "write how much it is", "%s of more than nothing", what)
		return nil
	}
	return v
}
