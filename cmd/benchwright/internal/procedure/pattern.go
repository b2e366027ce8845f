package procedure

import (
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/cmd/benchwright/internal/value"
)

// Pattern is a gear contact pattern that is painted, read and corrected.
type Pattern struct {
	Base
	Gears   Named // empty is the unit's only pair
	Side    unit.Side
	If      map[unit.Fault]Branch // what to do beside the unit's correction
	Again   int                   // how often at most; 0 where not stated
	Then    string                // what to do when it is not right after that
	AsFound bool                  // only recorded: nothing is corrected
}

func (r reader) pattern(b Base) Item {
	n := b.Node
	p := &Pattern{Base: b, Gears: r.named(n.Get("gears")), Side: value.OneOf(r.Reader, n.Get("side"), unit.Drive, unit.Coast), If: map[unit.Fault]Branch{},
		Then: r.Text(n.Get("then")), AsFound: r.Switch(n.Get("as-found")), Again: r.Count(n.Get("again"), 0)}
	for _, f := range unit.Faults {
		p.If[f] = r.branch(n.Get(string(f)))
	}
	return p
}
