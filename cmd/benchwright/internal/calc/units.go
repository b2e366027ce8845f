package calc

import "benchwright/cmd/benchwright/internal/quantity"

// The units in which the sums are done.
var (
	mm          = quantity.MustUnit("mm")
	inch        = quantity.MustUnit("in")
	meter       = quantity.MustUnit("m")
	degree      = quantity.MustUnit("°")
	newton      = quantity.MustUnit("N")
	kilonewton  = quantity.MustUnit("kN")
	poundForce  = quantity.MustUnit("lbf")
	newtonMeter = quantity.MustUnit("N·m")
	poundFoot   = quantity.MustUnit("lbf·ft")
	poundInch   = quantity.MustUnit("lbf·in")
	pascal      = quantity.MustUnit("Pa")
	megapascal  = quantity.MustUnit("MPa")
	liter       = quantity.MustUnit("L")
	second      = quantity.MustUnit("s")
	celsius     = quantity.MustUnit("°C")
	kelvin      = quantity.MustUnit("K")
	percent     = quantity.MustUnit("%")
	perCelsius  = quantity.MustUnit("ppm/°C")
)
