package card

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
)

// The units in which numbers are worked out.
var (
	millimetre  = quantity.MustUnit("mm")
	degree      = quantity.MustUnit("°")
	newton      = quantity.MustUnit("N")
	kilonewton  = quantity.MustUnit("kN")
	pascal      = quantity.MustUnit("Pa")
	megapascal  = quantity.MustUnit("MPa")
	pascalLitre = quantity.MustUnit("Pa·L/s")
	litre       = quantity.MustUnit("L")
	second      = quantity.MustUnit("s")
	minute      = quantity.MustUnit("min")
	celsius     = quantity.MustUnit("°C")
	fahrenheit  = quantity.MustUnit("°F")
	perCelsius  = quantity.MustUnit("ppm/°C")
)

// wholeDegrees is the scale on which a temperature is said where no thermometer
// is named.
var wholeDegrees = quantity.Scale{Unit: celsius, Step: big.NewRat(1, 1)}

// millimetres returns a length in mm.
func millimetres(v *quantity.Value) *big.Rat { return v.In(millimetre).Value }

// degrees returns an angle in degrees.
func degrees(v *quantity.Value) *big.Rat { return v.In(degree).Value }
