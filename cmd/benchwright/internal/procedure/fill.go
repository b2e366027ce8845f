package procedure

// Fill is a quantity of fluid put in.
type Fill struct {
	Base
}

func (r *Reader) fill(b Base) Item { return &Fill{b} }
