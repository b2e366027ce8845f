package card

import "benchwright/cmd/benchwright/internal/procedure"

// A Lash is a backlash reading, as the dial shows it where it stands.
type Lash struct {
	*Measurement
	Block *procedure.Lash
}

func (r *resolver) lash(i *procedure.Lash) Item { return &Lash{r.measurement(&i.Measurement), i} }
