package procedure

// Preload is a bearing preload, read as the pull of a cord.
type Preload struct {
	Measurement
}

func (r *Reader) preload(b Base) Item { return &Preload{Measurement{Base: b}} }
