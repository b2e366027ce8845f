package bench

import "benchwright/cmd/benchwright/internal/quantity"

// The units in which the sums are done.
var (
	millimeter  = quantity.MustUnit("mm")
	meter       = quantity.MustUnit("m")
	inch        = quantity.MustUnit("in")
	newton      = quantity.MustUnit("N")
	poundForce  = quantity.MustUnit("lbf")
	newtonMeter = quantity.MustUnit("N·m")
	poundFoot   = quantity.MustUnit("lbf·ft")
	poundInch   = quantity.MustUnit("lbf·in")
	celsius     = quantity.MustUnit("°C")
)
