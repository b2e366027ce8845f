package card

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
)

// The units of computations.
var (
	millimeter  = quantity.MustUnit("mm")
	degree      = quantity.MustUnit("°")
	newton      = quantity.MustUnit("N")
	kilonewton  = quantity.MustUnit("kN")
	pascal      = quantity.MustUnit("Pa")
	megapascal  = quantity.MustUnit("MPa")
	pascalLiter = quantity.MustUnit("Pa·L/s")
	liter       = quantity.MustUnit("L")
	second      = quantity.MustUnit("s")
	minute      = quantity.MustUnit("min")
	celsius     = quantity.MustUnit("°C")
	fahrenheit  = quantity.MustUnit("°F")
	perCelsius  = quantity.MustUnit("ppm/°C")
)

// wholeDegrees is the scale for a temperature without a thermometer.
var wholeDegrees = quantity.Scale{Unit: celsius, Step: big.NewRat(1, 1)}

// inMillimeters returns a length in mm.
func inMillimeters(v *quantity.Value) *big.Rat { return v.In(millimeter).Value }

// inDegrees returns an angle in degrees.
func inDegrees(v *quantity.Value) *big.Rat { return v.In(degree).Value }
