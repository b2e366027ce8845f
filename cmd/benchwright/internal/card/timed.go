package card

import "benchwright/cmd/benchwright/internal/procedure"

// A Timed is work that must be done before a time runs out.
type Timed struct {
	*procedure.Timed
}

func (r *resolver) timed(i *procedure.Timed) Item { return &Timed{i} }
