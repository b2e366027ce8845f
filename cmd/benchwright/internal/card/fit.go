package card

import "benchwright/cmd/benchwright/internal/procedure"

// A Fit is a part fitted or drawn by heat, cold or force.
type Fit struct {
	*procedure.Fit
}

func (r *resolver) fit(i *procedure.Fit) Item { return &Fit{i} }
