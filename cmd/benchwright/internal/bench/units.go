package bench

import "benchwright/cmd/benchwright/internal/quantity"

// The units in which the sums are done.
var (
	millimetre  = quantity.MustUnit("mm")
	metre       = quantity.MustUnit("m")
	inch        = quantity.MustUnit("in")
	newton      = quantity.MustUnit("N")
	poundForce  = quantity.MustUnit("lbf")
	newtonMetre = quantity.MustUnit("N·m")
	poundFoot   = quantity.MustUnit("lbf·ft")
	poundInch   = quantity.MustUnit("lbf·in")
	celsius     = quantity.MustUnit("°C")
)
