package card

import "benchwright/cmd/benchwright/internal/procedure"

// A Fill is a quantity of fluid put in.
type Fill struct {
	*procedure.Fill
}

func (r *resolver) fill(i *procedure.Fill) Item { return &Fill{i} }
