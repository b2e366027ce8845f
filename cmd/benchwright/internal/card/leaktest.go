package card

import "benchwright/cmd/benchwright/internal/procedure"

// A LeakTest is a pressure or vacuum hold.
type LeakTest struct {
	*Measurement
	Block *procedure.LeakTest
}

func (r *resolver) leakTest(i *procedure.LeakTest) Item {
	return &LeakTest{r.measurement(&i.Measurement), i}
}
