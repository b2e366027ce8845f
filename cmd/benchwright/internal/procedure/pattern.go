package procedure

import (
	"strconv"

	"benchwright/cmd/benchwright/internal/unit"
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

func (r *Reader) pattern(b Base) Item {
	n := b.Node
	p := &Pattern{Base: b, Gears: named(n.Get("gears")), Side: unit.Side(text(n.Get("side"))), If: map[unit.Fault]Branch{},
		Then: text(n.Get("then")), AsFound: yes(n.Get("as-found"))}
	for _, f := range unit.Faults {
		p.If[f] = branch(n.Get(string(f)))
	}
	p.Again, _ = strconv.Atoi(text(n.Get("again"))) // the schema has asked for a whole number
	return p
}
