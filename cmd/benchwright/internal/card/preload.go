package card

import "benchwright/cmd/benchwright/internal/procedure"

// A Preload is a bearing preload, read as the pull of a cord.
type Preload struct {
	*Measurement
	Block *procedure.Preload
}

func (r *resolver) preload(i *procedure.Preload) Item {
	return &Preload{r.measurement(&i.Measurement), i}
}
