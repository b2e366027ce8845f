package procedure

// LeakTest is a pressure or vacuum hold.
type LeakTest struct {
	Measurement
}

func (r *Reader) leakTest(b Base) Item { return &LeakTest{Measurement{Base: b}} }
