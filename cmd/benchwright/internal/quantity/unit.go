package quantity

import (
	"math/big"
	"strings"
	"sync"

	"benchwright/cmd/benchwright/internal/diag"
)

// The definitions from which every factor is made: the international inch and
// pound (1959), standard gravity (3rd CGPM, 1901), the US gallon of 231 cubic
// inches, the imperial gallon (Weights and Measures Act 1985), the conventional
// density of mercury.
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
	inchMetres = times(inch, ratio("1/1000"))  // m
	inchSquare = times(inchMetres, inchMetres) // m²
	fahrenheit = ratio("5/9")                  // °C, of a difference
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

// An entry is a unit and how the trade spells it. In a spelling a middle dot
// stands for any joiner: a dot, a hyphen, a blank.
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
	add(Torque, "lbf·in", times(poundForce, inchMetres), pairs(pounds, []string{"in", "inch", "inches"}, true)...)
	add(Torque, "kgf·m", gravity, pairs([]string{"kgf", "kg", "kp"}, []string{"m"}, true)...)
	add(Torque, "kgf·cm", times(gravity, ratio("1/100")), pairs([]string{"kgf", "kg", "kp"}, []string{"cm"}, true)...)
	add(Torque, "ozf·in", times(ounceForce, inchMetres), pairs([]string{"ozf", "oz", "ounce", "ounces"}, []string{"in", "inch", "inches"}, true)...)
	add(Torque, "N·cm", ratio("1/100"), "Ncm", "cN·m", "cNm")
	add(Torque, "kN·m", thousand, "kNm")

	add(Pressure, "kPa", thousand, "kilopascal", "kilopascals", "KPa")
	add(Pressure, "psi", per(poundForce, inchSquare), "lbf/in²", "lb/in²", "lbf/in2", "lb/in2", "lbf/sq·in", "PSI")
	add(Pressure, "bar", ratio("100000"), "bars", "BAR")
	add(Pressure, "MPa", ratio("1000000"), "megapascal", "N/mm²", "N/mm2")
	add(Pressure, "GPa", ratio("1000000000"), "gigapascal", "kN/mm²", "kN/mm2")
	add(Pressure, "mbar", ratio("100"), "millibar", "millibars", "hPa")
	add(Pressure, "Pa", one, "pascal", "pascals")
	add(Pressure, "kgf/cm²", times(gravity, ratio("10000")), "kgf/cm2", "kg/cm²", "kg/cm2", "kp/cm²", "kp/cm2")
	add(Pressure, "inHg (conventional)", times(mercury, gravity, inchMetres), "in·Hg·(conventional)", "conventional·inHg", "inHg·conventional")
	add(Pressure, "mmHg", times(mercury, gravity, ratio("1/1000")), "mm·Hg")

	add(Volume, "L", thousand, "l", "litre", "litres", "liter", "liters")
	add(Volume, "mL", one, "ml", "cc", "cm³", "cm3", "millilitre", "millilitres")
	for _, v := range []struct {
		symbol string
		names  []string
		gallon *big.Rat
		fluid  *big.Rat // ounces to the gallon
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

// measures holds the names of the liquid measures that differ between the US
// and the imperial system.
var measures = map[string][]string{
	"gallon":      {"gal", "gals", "gallon", "gallons"},
	"quart":       {"qt", "qts", "quart", "quarts"},
	"pint":        {"pt", "pts", "pint", "pints"},
	"fluid ounce": {"fl·oz", "floz", "fluid·ounce", "fluid·ounces"},
}

// pairs returns every first joined to every second, with a joiner and without
// one where both are short, and the other way round too where that is usual.
func pairs(firsts, seconds []string, either bool) []string {
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
			if either {
				join(b, a)
			}
		}
	}
	return out
}

// A lexicon finds units by their spelling.
type lexicon struct {
	units     map[string]Unit   // by key
	folded    map[string]Unit   // by key in small letters, where size means nothing
	varieties map[string]string // key of a bare measure → its fix
	keys      []string          // of units, in the order of entries, for the nearest one
}

var words = sync.OnceValue(func() lexicon {
	l := lexicon{map[string]Unit{}, map[string]Unit{}, map[string]string{}, nil}
	for _, e := range entries() {
		if e.Dimension == TemperatureDifference && e.Symbol != "K" {
			continue // ° read as temperatures; Difference makes these
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

// key brings a spelling to the form in which it is looked up: one middle dot
// for every run of joiners, none at the ends, one code point for each sign
// that has several.
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

// UnitOf returns the unit that the trade spells so: "Nm", "ft-lb", "US qt". It
// knows no unit by the bare name of one that has varieties, such as "pint".
func UnitOf(spelling string) (Unit, bool) {
	if len(spelling) > maxText {
		return Unit{}, false
	}
	l, k := words(), key(spelling)
	if u, ok := l.units[k]; ok {
		return u, true
	}
	u, ok := l.folded[strings.ToLower(k)]
	return u, ok
}

// MustUnit is UnitOf for a spelling that the program itself has: it panics on
// one that is no unit. It is no way to read what somebody wrote.
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

// nearest returns the symbol of the unit of a dimension whose spelling is
// nearest, or "".
func nearest(spelling string, d Dimension) string {
	l := words()
	var keys []string
	for _, k := range l.keys {
		if d == None || l.units[k].Dimension == d {
			keys = append(keys, k)
		}
	}
	return l.units[diag.Nearest(key(spelling), keys)].Symbol
}

// Difference returns the unit of a difference between two values: of a
// temperature that of a temperature difference (5 °F are 25/9 °C), of all
// others the unit itself.
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

// Convert returns x of one unit in another, exactly, or nil when they measure
// different things.
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

// In returns v in another unit, exactly, its digits no longer as typed. A unit
// of another dimension gives a Value without a number.
func (v Value) In(u Unit) Value {
	return Value{Number{Value: Convert(v.Value, v.Unit, u)}, u}
}

// In returns the band in another unit, exactly, as a computed one. A unit of
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
