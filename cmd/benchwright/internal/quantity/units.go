package quantity

import (
	"math/big"
	"sync"
)

// The definitions behind every conversion factor: the international inch and
// pound (1959), standard gravity (3rd CGPM, 1901), the US gallon of 231 cubic
// inches, the imperial gallon (Weights and Measures Act 1985), the
// conventional density of mercury.
var (
	inch      = ratio("25.4")                              // mm
	pound     = ratio("0.45359237")                        // kg
	gravity   = ratio("9.80665")                           // m/s²
	gallonUS  = times(ratio("231/1000"), inch, inch, inch) // mL
	gallonImp = ratio("4546.09")                           // mL
	mercury   = ratio("13595.1")                           // kg/m³
	water     = ratio("1000")                              // kg/m³

	foot       = times(ratio("12"), inch)      // mm
	ounce      = times(pound, ratio("1/16"))   // kg
	poundForce = times(pound, gravity)         // N
	ounceForce = times(ounce, gravity)         // N
	inchMeters = times(inch, ratio("1/1000"))  // m
	squareInch = times(inchMeters, inchMeters) // m²
	fahrenheit = ratio("5/9")                  // °C, for a temperature difference
	thousand   = ratio("1000")
	million    = ratio("1000000")
	billion    = ratio("1000000000")
	thousandth = ratio("1/1000")
	millionth  = ratio("1/1000000")
)

// An entry is a unit and its spellings. A middle dot in a spelling stands for
// any joiner: a dot, a hyphen or a blank.
type entry struct {
	Unit
	spellings []string
}

// entries lists the units, the most used of each dimension first. Base units:
// mm, °, kg, N, N·m, Pa, mL, °C, s, 1, Pa·L/s, 1/°C, rev/min, V, A, Ω, F, W, VA,
// Hz, mL/s, mL/rev, mm/s, dB, mm²/s, g/s.
var entries = sync.OnceValue(func() []entry {
	var out []entry
	add := func(d Dimension, symbol string, factor *big.Rat, spellings ...string) {
		out = append(out, entry{Unit{symbol, d, factor, nil}, append(spellings, symbol)})
	}
	one := ratio("1")

	add(Length, "mm", one, "millimetre", "millimetres", "millimeter", "millimeters")
	add(Length, "in", inch, "inch", "inches", "″", `"`, "IN")
	add(Length, "µm", ratio("1/1000"), "um", "micron", "microns", "micrometre", "micrometres")
	add(Length, "cm", ratio("10"), "centimetre", "centimetres")
	add(Length, "m", thousand, "metre", "metres", "meter", "meters")
	add(Length, "ft", foot, "foot", "feet", "FT")
	add(Length, "thou", times(inch, ratio("1/1000")), "thousandths", "mil", "mils")

	add(Angle, "°", one, "deg", "degree", "degrees")
	add(Angle, "turn", ratio("360"), "turns", "rev", "revs", "revolution", "revolutions")

	add(Mass, "kg", one, "kgs", "kilo", "kilos", "kilogram", "kilograms")
	add(Mass, "g", ratio("1/1000"), "gram", "grams")
	add(Mass, "lb", pound, "lbs", "lbm", "pound", "pounds", "LB", "LBS")
	add(Mass, "oz", ounce, "ounce", "ounces", "OZ")
	add(Mass, "t", thousand, "tonne", "tonnes")

	add(Force, "N", one, "newton", "newtons", "Newton", "Newtons")
	add(Force, "lbf", poundForce, "pound·force", "pounds·force")
	add(Force, "kgf", gravity, "kp", "kilogram·force", "kilograms·force")
	add(Force, "kN", thousand, "kilonewton", "kilonewtons")
	add(Force, "ozf", ounceForce, "ounce·force")

	pounds := []string{"lbf", "lb", "lbs", "pound", "pounds", "pound·force"}
	add(Torque, "N·m", one, pairs([]string{"N", "newton", "Newton"}, []string{"m", "metre", "metres", "meter", "meters"}, false)...)
	add(Torque, "lbf·ft", times(poundForce, foot, ratio("1/1000")), pairs(pounds, []string{"ft", "foot", "feet"}, true)...)
	add(Torque, "lbf·in", times(poundForce, inchMeters), pairs(pounds, []string{"in", "inch", "inches"}, true)...)
	add(Torque, "kgf·m", gravity, pairs([]string{"kgf", "kg", "kp"}, []string{"m"}, true)...)
	add(Torque, "kgf·cm", times(gravity, ratio("1/100")), pairs([]string{"kgf", "kg", "kp"}, []string{"cm"}, true)...)
	add(Torque, "ozf·in", times(ounceForce, inchMeters), pairs([]string{"ozf", "oz", "ounce", "ounces"}, []string{"in", "inch", "inches"}, true)...)
	add(Torque, "N·cm", ratio("1/100"), "Ncm", "cN·m", "cNm")
	add(Torque, "kN·m", thousand, "kNm")
	add(Torque, "mN·m", thousandth, "mNm", "N·mm", "Nmm")
	add(Torque, "dN·m", ratio("1/10"), "dNm")
	add(Torque, "daN·m", ratio("10"), "daNm")
	add(Torque, "gf·cm", times(gravity, ratio("1/100000")), pairs([]string{"gf", "g", "gram", "grams", "gram·force"}, []string{"cm"}, true)...)

	add(Pressure, "kPa", thousand, "kilopascal", "kilopascals", "KPa")
	add(Pressure, "psi", per(poundForce, squareInch), "lbf/in²", "lb/in²", "lbf/in2", "lb/in2", "lbf/sq·in", "PSI")
	add(Pressure, "bar", ratio("100000"), "bars", "BAR")
	add(Pressure, "MPa", ratio("1000000"), "megapascal", "N/mm²", "N/mm2")
	add(Pressure, "GPa", ratio("1000000000"), "gigapascal", "kN/mm²", "kN/mm2")
	add(Pressure, "mbar", ratio("100"), "millibar", "millibars", "hPa")
	add(Pressure, "Pa", one, "pascal", "pascals")
	add(Pressure, "kgf/cm²", times(gravity, ratio("10000")), "kgf/cm2", "kg/cm²", "kg/cm2", "kp/cm²", "kp/cm2")
	add(Pressure, "inHg (conventional)", times(mercury, gravity, inchMeters), "in·Hg·(conventional)", "conventional·inHg", "inHg·conventional")
	add(Pressure, "ksi", times(thousand, per(poundForce, squareInch)), "kip/in²", "kip/in2", "KSI")
	add(Pressure, "kgf/mm²", times(gravity, million), "kgf/mm2", "kg/mm²", "kg/mm2", "kp/mm²", "kp/mm2")
	add(Pressure, "inH2O (conventional)", times(water, gravity, inchMeters), "in·H2O·(conventional)", "inH₂O (conventional)", "conventional·inH2O", "inH2O·conventional")
	add(Pressure, "mmH2O (conventional)", times(water, gravity, thousandth), "mm·H2O·(conventional)", "mmH₂O (conventional)", "conventional·mmH2O", "mmH2O·conventional")
	add(Pressure, "mmHg", times(mercury, gravity, ratio("1/1000")), "mm·Hg")

	add(Volume, "L", thousand, "l", "litre", "litres", "liter", "liters")
	add(Volume, "mL", one, "ml", "cc", "cm³", "cm3", "millilitre", "millilitres")
	for _, v := range []struct {
		symbol string
		names  []string
		gallon *big.Rat
		fluid  *big.Rat // fluid ounces to the gallon
	}{
		{"US", []string{"US", "U·S", "US·liquid", "US·liq", "American"}, gallonUS, ratio("1/128")},
		{"imp", []string{"imp", "Imp", "imperial", "Imperial", "UK"}, gallonImp, ratio("1/160")},
	} {
		add(Volume, v.symbol+" qt", times(v.gallon, ratio("1/4")), pairs(v.names, measures["quart"], true)...)
		add(Volume, v.symbol+" pt", times(v.gallon, ratio("1/8")), pairs(v.names, measures["pint"], true)...)
		add(Volume, v.symbol+" gal", v.gallon, pairs(v.names, measures["gallon"], true)...)
		add(Volume, v.symbol+" fl oz", times(v.gallon, v.fluid), pairs(v.names, measures["fluid ounce"], true)...)
	}

	add(Temperature, "°C", one, "C", "℃", "deg·C", "degC", "degrees·C", "°·C", "Celsius")
	add(Temperature, "°F", fahrenheit, "F", "℉", "deg·F", "degF", "degrees·F", "°·F", "Fahrenheit")
	out[len(out)-1].offset = times(ratio("-32"), fahrenheit)
	add(TemperatureDifference, "K", one, "kelvin")
	add(TemperatureDifference, "°C", one)
	add(TemperatureDifference, "°F", fahrenheit)

	add(Time, "min", ratio("60"), "minute", "minutes", "mins")
	add(Time, "s", one, "sec", "secs", "second", "seconds")
	add(Time, "h", ratio("3600"), "hr", "hrs", "hour", "hours")

	add(Proportion, "%", ratio("1/100"), "percent", "per·cent")

	add(LeakRate, "Pa·L/s", one, "Pa·l/s", "pascal·litres/second")
	add(LeakRate, "mbar·L/s", ratio("100"), "mbar·l/s", "millibar·litres/second")
	add(LeakRate, "Pa·m³/s", thousand, "Pa·m3/s")
	add(Expansion, "ppm/°C", ratio("1/1000000"), "ppm/K", "e-6/°C", "e-6 /°C", "e-6/K", "e-6 /K", "×10⁻⁶/°C", "×10⁻⁶/K", "µm/m/°C", "µm/m·°C", "µm/m·K")
	add(Expansion, "ppm/°F", times(ratio("1/1000000"), per(one, fahrenheit)), "e-6/°F", "e-6 /°F", "×10⁻⁶/°F", "µin/in/°F", "µin/in·°F")

	add(Speed, "rev/min", one, "rpm", "RPM", "r/min")

	add(Voltage, "V", one, "volt", "volts")
	add(Voltage, "mV", thousandth, "millivolt", "millivolts")
	add(Voltage, "kV", thousand, "kilovolt", "kilovolts")
	add(Current, "A", one, "amp", "amps", "ampere", "amperes")
	add(Current, "mA", thousandth, "milliamp", "milliamps", "milliampere", "milliamperes")
	add(Resistance, "Ω", one, "ohm", "ohms")
	add(Resistance, "mΩ", thousandth, "mohm", "milliohm", "milliohms")
	add(Resistance, "kΩ", thousand, "kohm", "kiloohm", "kiloohms", "kilohm", "kilohms")
	add(Resistance, "MΩ", million, "Mohm", "megaohm", "megaohms", "megohm", "megohms")
	add(Resistance, "GΩ", billion, "Gohm", "gigaohm", "gigaohms", "gigohm", "gigohms")
	add(Capacitance, "µF", millionth, "uF", "microfarad", "microfarads")
	add(Power, "kW", thousand, "kilowatt", "kilowatts")
	add(Power, "W", one, "watt", "watts")
	add(Power, "hp", times(ratio("550"), poundForce, foot, thousandth), "HP", "horsepower")
	add(ApparentPower, "VA", one, "V·A", "volt·ampere", "volt·amperes")
	add(ApparentPower, "kVA", thousand, "kilovolt·ampere", "kilovolt·amperes")
	add(Frequency, "Hz", one, "hertz")

	perMinute := ratio("1/60")
	add(Flow, "L/min", times(thousand, perMinute), "l/min", "lpm", "LPM", "litres/min", "liters/min", "litres/minute", "liters/minute")
	add(Flow, "mL/min", perMinute, "ml/min", "cc/min", "cm³/min", "cm3/min")
	add(Flow, "m³/h", per(million, ratio("3600")), "m3/h", "m³/hr", "m3/hr")
	add(Flow, "US gal/min", times(gallonUS, perMinute), "US·gpm", "US·GPM", "US·gallons/min", "US·gallons/minute", "gal/min·US")
	add(Flow, "imp gal/min", times(gallonImp, perMinute), "imp·gpm", "imp·GPM", "imperial·gallons/min", "imperial·gallons/minute", "gal/min·imp")
	add(Displacement, "cm³/rev", one, "cm3/rev", "cc/rev", "mL/rev", "ml/rev")
	add(Displacement, "in³/rev", times(inch, inch, inch, thousandth), "in3/rev", "cu·in/rev")
	for _, v := range []struct {
		d     Dimension
		words []string
	}{
		{Velocity, nil},
		{VibrationRMS, []string{"rms", "RMS", "r.m.s."}},
		{VibrationPeak, []string{"peak", "pk", "0-peak", "zero to peak"}},
	} {
		for _, u := range []struct {
			symbol string
			factor *big.Rat
		}{{"mm/s", one}, {"in/s", inch}} {
			if v.words == nil {
				add(v.d, u.symbol, u.factor)
				continue
			}
			var spellings []string
			for _, w := range v.words {
				spellings = append(spellings, u.symbol+"·"+w, u.symbol+"·("+w+")")
			}
			if u.symbol == "in/s" {
				for _, w := range v.words {
					spellings = append(spellings, "ips·"+w)
				}
			}
			add(v.d, u.symbol+" "+v.words[0], u.factor, spellings...)
		}
	}
	add(SoundLevel, "dB(A)", one, "dBA", "dB·A", "db(A)")
	add(Viscosity, "cSt", one, "mm²/s", "mm2/s", "centistoke", "centistokes")
	add(MassFlow, "g/min", perMinute, "grams/min", "grams/minute")
	add(MassFlow, "kg/h", per(thousand, ratio("3600")), "kg/hr")
	return out
})

// measures holds the spellings of the liquid measures that differ between the
// US and imperial systems.
var measures = map[string][]string{
	"gallon":      {"gal", "gals", "gallon", "gallons"},
	"quart":       {"qt", "qts", "quart", "quarts"},
	"pint":        {"pt", "pts", "pint", "pints"},
	"fluid ounce": {"fl·oz", "floz", "fluid·ounce", "fluid·ounces"},
}

// pairs joins every first to every second with a joiner, and without one if
// both are short; with bothOrders also the other way round.
func pairs(firsts, seconds []string, bothOrders bool) []string {
	var out []string
	join := func(a, b string) {
		out = append(out, a+"·"+b)
		if len(a) <= 3 && len(b) <= 3 {
			out = append(out, a+b)
		}
	}
	for _, a := range firsts {
		for _, b := range seconds {
			join(a, b)
			if bothOrders {
				join(b, a)
			}
		}
	}
	return out
}
