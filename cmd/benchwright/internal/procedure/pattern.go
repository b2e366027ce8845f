package procedure

import (
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/cmd/benchwright/internal/value"
)

// Pattern is a gear contact pattern that is painted, read and corrected.
type Pattern struct {
	Base
	Gears      Named // empty for the unit's only pair
	Side       unit.Side
	Branches   map[unit.Fault]Branch // what to do in addition to the unit's correction
	MaxRepeats int                   // maximum number of repeats; 0 if not stated
	Then       string                // what to do if it is still wrong after that
	AsFound    bool                  // record only, correct nothing
}

func (r reader) pattern(b Base) Item {
	n := b.Node
	p := &Pattern{Base: b, Gears: r.named(n.Get("gears")), Side: value.OneOf(r.Reader, n.Get("side"), unit.Drive, unit.Coast), Branches: map[unit.Fault]Branch{},
		Then: r.Text(n.Get("then")), AsFound: r.Switch(n.Get("as-found")), MaxRepeats: r.Count(n.Get("again"), 0)}
	for _, f := range unit.Faults {
		p.Branches[f] = r.branch(n.Get(string(f)))
	}
	return p
}
