package procedure

// Timed is work that must be done before a time runs out.
type Timed struct {
	Base
}

func (r *Reader) timed(b Base) Item { return &Timed{b} }
