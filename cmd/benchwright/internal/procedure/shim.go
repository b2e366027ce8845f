package procedure

// Shim is a shim pack to be made.
type Shim struct {
	Base
}

func (r *Reader) shim(b Base) Item { return &Shim{b} }
