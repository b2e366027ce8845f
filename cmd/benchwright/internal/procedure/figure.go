package procedure

// Figure is a picture with call-outs, or a computed figure.
type Figure struct {
	Base
}

func (r *Reader) figure(b Base) Item { return &Figure{b} }
