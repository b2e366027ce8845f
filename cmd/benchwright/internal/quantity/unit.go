package quantity

import (
	"math/big"
	"strings"
	"sync"

	"benchwright/cmd/benchwright/internal/diag"
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

	foot       = times(ratio("12"), inch)      // mm
	ounce      = times(pound, ratio("1/16"))   // kg
	poundForce = times(pound, gravity)         // N
	ounceForce = times(ounce, gravity)         // N
	inchMeters = times(inch, ratio("1/1000"))  // m
	squareInch = times(inchMeters, inchMeters) // m²
	fahrenheit = ratio("5/9")                  // °C, for a temperature difference
	thousand   = ratio("1000")
)

func ratio(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic("quantity: not a number: " + s)
	}
	return r
}

func times(factors ...*big.Rat) *big.Rat {
	out := big.NewRat(1, 1)
	for _, f := range factors {
		out.Mul(out, f)
	}
	return out
}

func per(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }

// An entry is a unit and its spellings. A middle dot in a spelling stands for
// any joiner: a dot, a hyphen or a blank.
type entry struct {
	Unit
	spellings []string
}

// entries lists the units, the most used of each dimension first. Base units:
// mm, °, kg, N, N·m, Pa, mL, °C, s, 1, Pa·L/s, 1/°C, rev/min.
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
	add(Length, "thou", times(inch, ratio("1/1000")), "thousandths")

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

	add(Pressure, "kPa", thousand, "kilopascal", "kilopascals", "KPa")
	add(Pressure, "psi", per(poundForce, squareInch), "lbf/in²", "lb/in²", "lbf/in2", "lb/in2", "lbf/sq·in", "PSI")
	add(Pressure, "bar", ratio("100000"), "bars", "BAR")
	add(Pressure, "MPa", ratio("1000000"), "megapascal", "N/mm²", "N/mm2")
	add(Pressure, "GPa", ratio("1000000000"), "gigapascal", "kN/mm²", "kN/mm2")
	add(Pressure, "mbar", ratio("100"), "millibar", "millibars", "hPa")
	add(Pressure, "Pa", one, "pascal", "pascals")
	add(Pressure, "kgf/cm²", times(gravity, ratio("10000")), "kgf/cm2", "kg/cm²", "kg/cm2", "kp/cm²", "kp/cm2")
	add(Pressure, "inHg (conventional)", times(mercury, gravity, inchMeters), "in·Hg·(conventional)", "conventional·inHg", "inHg·conventional")
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

// A lexicon finds units by spelling.
type lexicon struct {
	units     map[string]Unit   // by key
	folded    map[string]Unit   // by lower-case key, for spellings in which case means nothing
	varieties map[string]string // key of a measure without system, such as pint → fix
	keys      []string          // keys of units in the order of entries, for nearest
}

var lexiconOf = sync.OnceValue(func() lexicon {
	l := lexicon{map[string]Unit{}, map[string]Unit{}, map[string]string{}, nil}
	for _, e := range entries() {
		if e.Dimension == TemperatureDifference && e.Symbol != "K" {
			continue // a ° is read as a temperature; Difference gives these units
		}
		for _, s := range e.spellings {
			k := key(s)
			l.units[k] = e.Unit
			if len(s) >= 5 && strings.ToLower(s) == s {
				l.folded[k] = e.Unit
			}
			l.keys = append(l.keys, k)
		}
	}
	for _, m := range []struct{ name, short string }{{"gallon", "gal"}, {"quart", "qt"}, {"pint", "pt"}, {"fluid ounce", "fl oz"}} {
		for _, s := range measures[m.name] {
			l.varieties[key(s)] = "US or imperial? write `US " + m.short + "` or `imp " + m.short + "`"
		}
	}
	for _, s := range []string{"inHg", "in·Hg", "″Hg", `"Hg`, "inches·of·mercury", "inch·of·mercury"} {
		l.varieties[key(s)] = "write `inHg (conventional)`, or the pressure in kPa"
	}
	return l
})

// key normalizes a spelling for lookup: one middle dot for each run of
// joiners, none at the ends, and one code point for each sign that has
// several.
func key(s string) string {
	var b strings.Builder
	joined := false
	for _, r := range s {
		switch r {
		case ' ', '\u00a0', '\u2009', '\u202f', '\t', '·', '⋅', '•', '∙', '×', '*', '.', '-', '‐', '\u2011':
			joined = b.Len() > 0
			continue
		case 'μ':
			r = 'µ'
		case 'º', '˚':
			r = '°'
		case '”', '“':
			r = '″'
		case '^':
			continue
		}
		if joined {
			b.WriteRune('·')
			joined = false
		}
		b.WriteRune(r)
	}
	return b.String()
}

// UnitOf returns the unit with a spelling: "Nm", "ft-lb", "US qt". A measure
// that differs between the US and imperial systems, such as "pint", is no unit
// by its bare name.
func UnitOf(spelling string) (Unit, bool) {
	if len(spelling) > maxText {
		return Unit{}, false
	}
	l, k := lexiconOf(), key(spelling)
	if u, ok := l.units[k]; ok {
		return u, true
	}
	u, ok := l.folded[strings.ToLower(k)]
	return u, ok
}

// MustUnit is UnitOf for spellings in the program's own code; it panics on an
// unknown one.
func MustUnit(spelling string) Unit {
	u, ok := UnitOf(spelling)
	if !ok {
		panic("quantity: no unit " + spelling)
	}
	return u
}

// Units returns the units of a dimension, the most used first.
func Units(d Dimension) []Unit {
	var out []Unit
	for _, e := range entries() {
		if e.Dimension == d {
			out = append(out, e.Unit)
		}
	}
	return out
}

// nearest returns the symbol of the unit of a dimension with the spelling
// nearest to spelling, "" if none is near.
func nearest(spelling string, d Dimension) string {
	l := lexiconOf()
	var keys []string
	for _, k := range l.keys {
		if d == None || l.units[k].Dimension == d {
			keys = append(keys, k)
		}
	}
	return l.units[diag.Nearest(key(spelling), keys)].Symbol
}

// Difference returns the unit of the difference of two values: for a
// temperature a unit of temperature difference (5 °F are 25/9 °C), else the
// unit itself.
func (u Unit) Difference() Unit {
	if u.Dimension != Temperature {
		return u
	}
	for _, d := range Units(TemperatureDifference) {
		if d.Symbol == u.Symbol {
			return d
		}
	}
	return u
}

// Convert returns x converted exactly, nil if the dimensions differ.
func Convert(x *big.Rat, from, to Unit) *big.Rat {
	if from.Dimension != to.Dimension || from.factor == nil || to.factor == nil {
		return nil
	}
	y := new(big.Rat).Mul(x, from.factor)
	if from.offset != nil {
		y.Add(y, from.offset)
	}
	if to.offset != nil {
		y.Sub(y, to.offset)
	}
	return y.Quo(y, to.factor)
}

// In returns v in another unit, exactly, as a computed value. A unit of
// another dimension gives a Value whose number is nil.
func (v Value) In(u Unit) Value {
	return Value{Number{Value: Convert(v.Value, v.Unit, u)}, u}
}

// In returns the band in another unit, exactly, as a computed band. A unit of
// another dimension gives the zero Band, which has no limits.
func (b Band) In(u Unit) Band {
	if b.Unit.Dimension != u.Dimension || b.Unit.factor == nil || u.factor == nil {
		return Band{}
	}
	move := func(x *big.Rat) *big.Rat {
		if x == nil {
			return nil
		}
		return Convert(x, b.Unit, u)
	}
	out := Band{Form: b.Form, Low: move(b.Low), High: move(b.High), Unit: u}
	if b.Nominal != nil {
		out.Nominal = &Number{Value: move(b.Nominal.Value)}
	}
	return out
}
