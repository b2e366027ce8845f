package card

import "benchwright/cmd/benchwright/internal/procedure"

// A Pattern is how a gear contact pattern reads and what each reading calls for.
type Pattern struct {
	*procedure.Pattern
}

func (r *resolver) pattern(i *procedure.Pattern) Item { return &Pattern{i} }
