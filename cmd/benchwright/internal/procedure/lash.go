package procedure

// Lash is a backlash reading, as the dial shows it where it stands.
type Lash struct {
	Measurement
}

func (r *Reader) lash(b Base) Item { return &Lash{Measurement{Base: b}} }
