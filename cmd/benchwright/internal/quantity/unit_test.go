package quantity

import (
	"fmt"
	"math/big"
	"strings"
	"testing"
)

// in returns one of a unit in another.
func in(t *testing.T, x, from, to string) *big.Rat {
	t.Helper()
	y := Convert(ratio(x), unit(t, from), unit(t, to))
	if y == nil {
		t.Fatalf("%s %s has no value in %s", x, from, to)
	}
	return y
}

func unit(t testing.TB, spelling string) Unit {
	t.Helper()
	u, ok := UnitOf(spelling)
	if !ok {
		t.Fatalf("no unit of measure is called %q", spelling)
	}
	return u
}

// Exact values, from 1 in = 25.4 mm, 1 lb = 0.45359237 kg, g = 9.80665 m/s²,
// US gal = 231 in³, imperial gal = 4.54609 L.
func TestExactFactors(t *testing.T) {
	for _, c := range []struct{ from, to, want string }{
		{"lbf·ft", "N·m", "1.3558179483314004"},
		{"lbf·in", "N·m", "0.1129848290276167"},
		{"ozf·in", "N·m", "0.00706155181422604375"},
		{"kgf·m", "N·m", "9.80665"},
		{"kgf·cm", "N·m", "0.0980665"},
		{"kN·m", "N·m", "1000"},
		{"N·cm", "N·m", "0.01"},
		{"in", "mm", "25.4"},
		{"ft", "in", "12"},
		{"cm", "mm", "10"},
		{"m", "mm", "1000"},
		{"µm", "mm", "0.001"},
		{"thou", "in", "0.001"},
		{"lbf", "N", "4.4482216152605"},
		{"kgf", "N", "9.80665"},
		{"kN", "N", "1000"},
		{"ozf", "N", "0.27801385095378125"},
		{"lb", "kg", "0.45359237"},
		{"oz", "lb", "1/16"},
		{"t", "kg", "1000"},
		{"g", "kg", "0.001"},
		{"psi", "kPa", "8896443230521/1290320000000"},
		{"bar", "kPa", "100"},
		{"mbar", "kPa", "0.1"},
		{"MPa", "kPa", "1000"},
		{"Pa", "kPa", "0.001"},
		{"mbar·L/s", "Pa·L/s", "100"},
		{"Pa·m³/s", "Pa·L/s", "1000"},
		{"kgf/cm²", "kPa", "98.0665"},
		{"inHg (conventional)", "kPa", "3.386388640341"},
		{"US fl oz", "mL", "29.5735295625"},
		{"US qt", "mL", "946.352946"},
		{"US pt", "mL", "473.176473"},
		{"US gal", "L", "3.785411784"},
		{"imp pt", "mL", "568.26125"},
		{"imp gal", "L", "4.54609"},
		{"h", "s", "3600"},
		{"turn", "°", "360"},
		{"GPa", "MPa", "1000"},
		{"ppm/°F", "ppm/°C", "1.8"},
	} {
		if got := in(t, "1", c.from, c.to); got.Cmp(ratio(c.want)) != 0 {
			t.Errorf("1 %s = %s %s, want %s", c.from, got.RatString(), c.to, c.want)
		}
	}
}

// NIST Guide to the SI, SP 811, appendix B.8, the factors as rounded there.
func TestFactorsOfSP811(t *testing.T) {
	for _, c := range []struct{ from, to, want string }{
		{"lbf·ft", "N·m", "1.355818"},
		{"lbf·in", "N·m", "0.1129848"},
		{"ozf·in", "N·m", "0.007061552"},
		{"kgf·m", "N·m", "9.80665"},
		{"lbf", "N", "4.448222"},
		{"psi", "kPa", "6.894757"},
		{"inHg (conventional)", "kPa", "3.386389"},
		{"US fl oz", "mL", "29.57353"},
		{"US qt", "mL", "946.3529"},
		{"US pt", "mL", "473.1765"},
	} {
		_, decimals, _ := strings.Cut(c.want, ".")
		if got := in(t, "1", c.from, c.to).FloatString(len(decimals)); got != c.want {
			t.Errorf("1 %s = %s %s, SP 811 has %s", c.from, got, c.to, c.want)
		}
	}
}

// GNU units 2.22, as `units -d 15 -t 'lbf ft' 'N m'` prints them.
func TestFactorsOfGNUUnits(t *testing.T) {
	for _, c := range []struct{ from, to, want string }{
		{"lbf·ft", "N·m", "1.3558179483314"},
		{"lbf·in", "N·m", "0.112984829027617"},
		{"kgf·m", "N·m", "9.80665"},
		{"lbf", "N", "4.4482216152605"},
		{"oz", "g", "28.349523125"},
		{"psi", "kPa", "6.89475729316836"},
		{"kgf/cm²", "kPa", "98.0665"},
		{"inHg (conventional)", "kPa", "3.386388640341"},
		{"mmHg", "kPa", "0.133322387415"},
		{"US fl oz", "mL", "29.5735295625"},
		{"US qt", "mL", "946.352946"},
		{"US pt", "mL", "473.176473"},
		{"US gal", "mL", "3785.411784"},
		{"imp pt", "mL", "568.26125"},
		{"imp qt", "mL", "1136.5225"},
		{"imp gal", "mL", "4546.09"},
		{"imp fl oz", "mL", "28.4130625"},
	} {
		got, _ := new(big.Float).SetRat(in(t, "1", c.from, c.to)).Float64()
		if s := fmt.Sprintf("%.15g", got); s != c.want {
			t.Errorf("1 %s = %s %s, GNU units has %s", c.from, s, c.to, c.want)
		}
	}
}

// UCUM-LHC 7.1.10 and python3-pint 0.19.2, as they print them: both count in
// binary, so the last digits of some are their own. To 13 digits they are ours.
func TestFactorsOfOtherLibraries(t *testing.T) {
	for _, c := range []struct{ library, from, to, want string }{
		{"UCUM-LHC", "lbf·ft", "N·m", "1.3558179483314003"},
		{"UCUM-LHC", "lbf·in", "N·m", "0.1129848290276167"},
		{"UCUM-LHC", "lbf", "N", "4.4482216152605"},
		{"UCUM-LHC", "psi", "kPa", "6.894757293168359"},
		{"UCUM-LHC", "US qt", "mL", "946.3529460000004"},
		{"UCUM-LHC", "imp pt", "mL", "568.2612500000001"},
		{"pint", "lbf·ft", "N·m", "1.3558179483314001"},
		{"pint", "lbf·in", "N·m", "0.1129848290276167"},
		{"pint", "lbf", "N", "4.4482216152605005"},
		{"pint", "kgf·m", "N·m", "9.80665"},
		{"pint", "psi", "kPa", "6.894757293168364"},
		{"pint", "kgf/cm²", "kPa", "98.0665"},
		{"pint", "inHg (conventional)", "kPa", "3.386388640341"},
		{"pint", "mmHg", "kPa", "0.133322387415"},
		{"pint", "oz", "g", "28.349523125000005"},
		{"pint", "US qt", "mL", "946.3529459999997"},
		{"pint", "US pt", "mL", "473.1764729999999"},
		{"pint", "US fl oz", "mL", "29.573529562499992"},
		{"pint", "imp pt", "mL", "568.2612500000002"},
	} {
		got, want := in(t, "1", c.from, c.to), ratio(c.want)
		if off := per(new(big.Rat).Sub(got, want), want); off.Abs(off).Cmp(ratio("1e-13")) > 0 {
			t.Errorf("1 %s = %s %s, %s has %s", c.from, got.FloatString(16), c.to, c.library, c.want)
		}
	}
}

// Also published, but wrong: what two libraries give for a unit is not what its
// definition gives.
func TestFactorsThatAreWrong(t *testing.T) {
	for _, c := range []struct{ library, from, to, wrong, off string }{
		{"mathjs 15.2", "psi", "kPa", "6.89475729276459", "4e-10"},
		{"UCUM-LHC 7.1.10", "inHg (conventional)", "kPa", "3.3863788", "9e-6"},
	} {
		got, wrong := in(t, "1", c.from, c.to), ratio(c.wrong)
		if off := new(big.Rat).Sub(got, wrong); off.Cmp(ratio(c.off)) < 0 || off.Cmp(times(ratio(c.off), ratio("2"))) > 0 {
			t.Errorf("1 %s = %s %s, %s has %s: %s apart", c.from, got.FloatString(16), c.to, c.library, c.wrong, off.FloatString(12))
		}
	}
}

func TestTemperatures(t *testing.T) {
	for _, c := range []struct{ from, x, to, want string }{
		{"°F", "32", "°C", "0"}, // by definition
		{"°F", "212", "°C", "100"},
		{"°C", "-40", "°F", "-40"},
		{"°F", "250", "°C", "1090/9"}, // GNU units 2.22: 121.111111111111
	} {
		if got := in(t, c.x, c.from, c.to); got.Cmp(ratio(c.want)) != 0 {
			t.Errorf("%s %s = %s %s, want %s", c.x, c.from, got.RatString(), c.to, c.want)
		}
	}
	f, c := unit(t, "°F"), unit(t, "°C")
	if got := Convert(ratio("9"), f.Difference(), c.Difference()); got.Cmp(ratio("5")) != 0 {
		t.Errorf("a difference of 9 °F is %s °C, want 5", got.RatString())
	}
	if Convert(ratio("9"), f, c.Difference()) != nil {
		t.Error("a temperature was taken for a difference")
	}
	if mm := unit(t, "mm"); mm.Difference() != mm {
		t.Error("a difference of lengths is no length")
	}
}

// Every unit goes there and back exactly, and is found by its own symbol.
func TestUnitsThereAndBack(t *testing.T) {
	x := ratio("-123456789/1000")
	for d := Length; d <= MassFlow; d++ {
		all := Units(d)
		if len(all) == 0 || d.String() == "" {
			t.Errorf("dimension %d has no units or no name", d)
		}
		for _, u := range all {
			if found, ok := UnitOf(u.Symbol); d != TemperatureDifference && (!ok || found != u) {
				t.Errorf("%s is not found by its symbol", u.Symbol)
			}
			for _, v := range all {
				if back := Convert(Convert(x, u, v), v, u); back.Cmp(x) != 0 {
					t.Errorf("%s to %s and back gives %s", u.Symbol, v.Symbol, back.RatString())
				}
			}
		}
	}
	if s := Dimension(200).String(); s != "" {
		t.Errorf("an unknown dimension is called %q", s)
	}
}

func TestSpellings(t *testing.T) {
	for symbol, spellings := range map[string][]string{
		"N·m":                 {"N·m", "Nm", "N m", "N.m", "N-m", "N*m", "N⋅m", "N\u00a0m", "newton metres", "Newton-meter"},
		"lbf·ft":              {"lbf·ft", "lbf.ft", "lbf-ft", "ft-lb", "ft-lbs", "ft lb", "ft.lb", "ft. lbs.", "ftlb", "lb-ft", "lb ft", "ft·lbf", "ft-lbf", "FT-LB", "Ft-Lb", "foot-pounds", "pound-feet"},
		"lbf·in":              {"lbf·in", "in-lb", "in-lbs", "in lb", "in. lb.", "lb-in", "inch-pounds", "in·lbf", "IN-LBS"},
		"ozf·in":              {"ozf·in", "oz-in", "in-oz", "inch ounces"},
		"kgf·cm":              {"kgf·cm", "kgf cm", "kg-cm", "kg·cm", "kp·cm"},
		"kgf·m":               {"kgf·m", "kg-m", "m-kg", "kpm"},
		"mm":                  {"mm", "millimetres", "Millimeters"},
		"in":                  {"in", "in.", "inch", "inches", `"`, "″", "Inches"},
		"µm":                  {"µm", "μm", "um", "micron"},
		"thou":                {"thou"},
		"°":                   {"°", "deg", "degrees", "º"},
		"°C":                  {"°C", "° C", "C", "deg C", "degC", "℃", "ºC"},
		"°F":                  {"°F", "F", "deg. F"},
		"psi":                 {"psi", "PSI", "lbf/in²", "lb/in2", "lbf/in^2"},
		"kgf/cm²":             {"kgf/cm²", "kg/cm2", "kgf/cm^2", "kp/cm²"},
		"US qt":               {"US qt", "US quart", "U.S. qt", "qt US", "US liquid quart", "US-qt"},
		"imp pt":              {"imp pt", "imperial pint", "Imperial pints", "UK pint", "imp. pt."},
		"US fl oz":            {"US fl oz", "US fl. oz.", "US fluid ounces", "fl oz US"},
		"imp gal":             {"imp gal", "imperial gallons"},
		"L":                   {"L", "l", "litres", "liter"},
		"mL":                  {"mL", "ml", "cc", "cm³", "cm3"},
		"min":                 {"min", "minutes", "min."},
		"rev/min":             {"rev/min", "rpm", "r/min"},
		"%":                   {"%", "per cent"},
		"kPa":                 {"kPa"},
		"ppm/°C":              {"ppm/°C", "e-6/°C", "e-6 /°C", "× 10⁻⁶/°C", "µm/m·K"},
		"ppm/°F":              {"ppm/°F", "e-6/°F", "µin/in·°F"},
		"MPa":                 {"MPa", "N/mm²"},
		"inHg (conventional)": {"inHg (conventional)", "in Hg (conventional)", "conventional inHg"},
	} {
		for _, s := range spellings {
			if u, ok := UnitOf(s); !ok || u.Symbol != symbol {
				t.Errorf("%q is read as %q, want %s", s, u.Symbol, symbol)
			}
		}
	}
	for _, s := range []string{"", "·", "qt", "quart", "pint", "pt", "gal", "gallons", "fl oz", "inHg", "in Hg", "NM", "mPa", "m m", "k Pa", "lb", "foo"} {
		if u, ok := UnitOf(s); ok && u.Dimension != Mass {
			t.Errorf("%q is read as %s", s, u.Symbol)
		}
	}
}

// No spelling belongs to two units.
func TestSpellingsAreOfOneUnit(t *testing.T) {
	of := map[string]Unit{}
	for _, e := range entries() {
		if e.Dimension == TemperatureDifference && e.Symbol != "K" {
			continue
		}
		for _, s := range e.spellings {
			for _, k := range []string{key(s)} {
				if u, taken := of[k]; taken && u != e.Unit {
					t.Errorf("%q is %s and %s", s, u.Symbol, e.Symbol)
				}
				of[k] = e.Unit
			}
		}
	}
	for k, u := range lexiconOf().folded {
		for other, v := range of {
			if strings.ToLower(other) == k && v != u {
				t.Errorf("%q in small letters is %s and %s", other, u.Symbol, v.Symbol)
			}
		}
	}
}

// An instrument says its unit as the trade engraves it, and no other.
func TestEngraves(t *testing.T) {
	for _, c := range []struct {
		spelling, scale string
		want            bool
	}{
		{"ft-lb", "lbf·ft", true}, {"kg", "kgf", true}, {"lb", "lbf", true}, {"oz", "ozf", true}, {"g", "gf·cm", false},
		{"inHg", "inHg (conventional)", true}, {"gal", "US gal", true}, {"gal", "imp gal", true}, {"gpm", "US gal/min", true},
		{"mm/s", "mm/s rms", true}, {"in/s", "mm/s rms", false}, {"mm/s rms", "mm/s peak", false},
		{"kg", "N", false}, {"lb", "kgf", false}, {"ft-lb", "lbf·in", false}, {"qt", "US pt", false}, {"bananas", "mm", false}, {"", "mm", false},
	} {
		if got := Engraves(c.spelling, unit(t, c.scale)); got != c.want {
			t.Errorf("a scale in %s engraved %q: %t, want %t", c.scale, c.spelling, got, c.want)
		}
	}
}
