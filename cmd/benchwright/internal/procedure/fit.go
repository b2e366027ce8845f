package procedure

// Fit is a part fitted or drawn by heat, cold or force.
type Fit struct {
	Base
}

func (r *Reader) fit(b Base) Item { return &Fit{b} }
