package cli

import "benchwright/cmd/benchwright/internal/quantity"

// The units in which the sums are done.
var (
	mm          = named("mm")
	inch        = named("in")
	metre       = named("m")
	degree      = named("°")
	newton      = named("N")
	kilonewton  = named("kN")
	poundForce  = named("lbf")
	newtonMetre = named("N·m")
	poundFoot   = named("lbf·ft")
	poundInch   = named("lbf·in")
	pascal      = named("Pa")
	megapascal  = named("MPa")
	litre       = named("L")
	second      = named("s")
	celsius     = named("°C")
	kelvin      = named("K")
	perCelsius  = named("ppm/°C")
)

func named(symbol string) quantity.Unit {
	u, ok := quantity.UnitOf(symbol)
	if !ok {
		panic("cli: no unit " + symbol)
	}
	return u
}
