package card

import "benchwright/cmd/benchwright/internal/procedure"

// A Shim is a shim pack to be made.
type Shim struct {
	*procedure.Shim
}

func (r *resolver) shim(i *procedure.Shim) Item { return &Shim{i} }
