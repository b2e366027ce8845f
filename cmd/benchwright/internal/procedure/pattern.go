package procedure

// Pattern is how a gear contact pattern reads and what each reading calls for.
type Pattern struct {
	Base
}

func (r *Reader) pattern(b Base) Item { return &Pattern{b} }
