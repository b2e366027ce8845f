package card

import "benchwright/cmd/benchwright/internal/procedure"

// A Figure is a picture with call-outs, or a computed figure.
type Figure struct {
	*procedure.Figure
}

func (r *resolver) figure(i *procedure.Figure) Item { return &Figure{i} }
