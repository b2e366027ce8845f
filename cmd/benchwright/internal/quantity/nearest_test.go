package quantity

import (
	"strings"
	"testing"
)

// A unit that was not known once, and whose mend was another size or kind.
func TestUnitsOfOtherBenches(t *testing.T) {
	for _, c := range []struct{ spelling, symbol, in, factor string }{
		{"N·mm", "mN·m", "N·m", "0.001"},
		{"Nmm", "mN·m", "N·m", "0.001"},
		{"mN·m", "mN·m", "N·m", "0.001"},
		{"dN·m", "dN·m", "N·m", "0.1"},
		{"daN·m", "daN·m", "N·m", "10"},
		{"gf·cm", "gf·cm", "kgf·cm", "0.001"},
		{"ksi", "ksi", "psi", "1000"},
		{"kgf/mm²", "kgf/mm²", "MPa", "9.80665"},
		{"mil", "thou", "mm", "0.0254"},
		{"L/min", "L/min", "mL/min", "1000"},
		{"inH2O (conventional)", "inH2O (conventional)", "Pa", "249.08891"},
	} {
		if u, ok := UnitOf(c.spelling); !ok || u.Symbol != c.symbol {
			t.Errorf("%q is read as %q, want %s", c.spelling, u.Symbol, c.symbol)
		}
		if got := in(t, "1", c.spelling, c.in); got.Cmp(ratio(c.factor)) != 0 {
			t.Errorf("1 %s = %s %s, want %s", c.spelling, got.RatString(), c.in, c.factor)
		}
	}
}

// NIST Guide to the SI, SP 811 (2008), appendix B.8, as rounded there: horsepower
// (550 ft·lbf/s), kilogram-force per square millimeter, ksi, inch per second, centistoke,
// gallon per minute, conventional inch and millimeter of water.
func TestFactorsOfElectricFlowAndVibration(t *testing.T) {
	for _, c := range []struct{ from, to, want string }{
		{"hp", "W", "745.6999"},
		{"kgf/mm²", "MPa", "9.80665"},
		{"ksi", "MPa", "6.894757"},
		{"in/s", "mm/s", "25.4"},
		{"US gal/min", "L/min", "3.785412"},
		{"inH2O (conventional)", "Pa", "249.0889"},
		{"mmH2O (conventional)", "Pa", "9.80665"},
		{"cSt", "mm²/s", "1"},
		{"oz-in", "mN·m", "7.061552"},
		{"thou", "mm", "0.0254"},
	} {
		_, decimals, _ := strings.Cut(c.want, ".")
		if got := in(t, "1", c.from, c.to).FloatString(len(decimals)); got != c.want {
			t.Errorf("1 %s = %s %s, SP 811 has %s", c.from, got, c.to, c.want)
		}
	}
	for _, c := range []struct{ from, to, want string }{ // by definition of the prefixes
		{"GΩ", "MΩ", "1000"}, {"MΩ", "Ω", "1000000"}, {"kΩ", "mΩ", "1000000"}, {"kV", "mV", "1000000"}, {"A", "mA", "1000"},
		{"kW", "W", "1000"}, {"kVA", "VA", "1000"}, {"m³/h", "L/min", "50/3"}, {"kg/h", "g/min", "50/3"},
		{"in/s rms", "mm/s rms", "25.4"}, {"in/s peak", "mm/s peak", "25.4"}, {"in³/rev", "cm³/rev", "16.387064"},
	} {
		if got := in(t, "1", c.from, c.to); got.Cmp(ratio(c.want)) != 0 {
			t.Errorf("1 %s = %s %s, want %s", c.from, got.RatString(), c.to, c.want)
		}
	}
	if Convert(ratio("1"), unit(t, "mm/s rms"), unit(t, "mm/s peak")) != nil {
		t.Error("rms was taken for peak")
	}
}

// A mend is the unit that was meant, or none: a slip in the case of a prefix, or two
// units as near as each other, is left to the writer.
func TestAMendChangesNoSize(t *testing.T) {
	for spelling, want := range map[string]string{
		"KG": "kg", "kpa": "kPa", "NM": "N·m", "KV": "kV", "ma": "mA", "DBA": "dB(A)", "LB-FT": "lbf·ft",
		"milimeters": "mm", "kilopascel": "kPa", "lb-fr": "lbf·ft", "kgf-cn": "kgf·cm", "horsepowr": "hp",
		"mpa": "", "mPa": "", "MM": "", "MV": "", "Mm": "", "mohms/km": "", "PN·m": "", "nN·m": "", "cf·cm": "", "tsi": "",
		"millimiters": "", // millimeters, or milliliters
		"L/mim":       "", "N·mn": "", "xyzzy": "", "kg/cm³": "", "µV": "", "nF": "", "dB": "", "mm/s²": "",
	} {
		if got := nearest(spelling, None); got != want {
			t.Errorf("the mend of %q is %q, want %q", spelling, got, want)
		}
	}
}

// Whatever is typed, its mend differs from it in case, in joiners or in one letter.
func FuzzNearest(f *testing.F) {
	f.Add("lb-fr")
	f.Add("milimeters")
	f.Fuzz(func(t *testing.T, s string) {
		if len(s) > maxText {
			return
		}
		if near := nearest(s, None); near != "" {
			if _, ok := UnitOf(near); !ok {
				t.Errorf("the mend of %q is %q, which is no unit", s, near)
			}
		}
	})
}
