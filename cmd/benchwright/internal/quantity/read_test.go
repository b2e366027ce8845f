package quantity

import (
	"strings"
	"testing"
)

// show prints a band so that a table can hold it: its exact limits, its
// nominal and its unit.
func show(b Band) string {
	side := func(name string, x interface{ RatString() string }, open bool) string {
		if open {
			return ""
		}
		return name + x.RatString() + " "
	}
	s := side("≥", b.Low, b.Low == nil) + side("≤", b.High, b.High == nil)
	if b.Nominal != nil {
		s += "=" + b.Nominal.Value.RatString() + " "
	}
	return s + b.Unit.Symbol
}

func TestParseBand(t *testing.T) {
	for _, c := range []struct {
		text    string
		form    Form
		want    string
		written string // with ~ for a no-break space
	}{
		{"95 to 105 N·m", Range, "≥95 ≤105 N·m", "95 to 105~N·m"},
		{"95..105 Nm", Range, "≥95 ≤105 N·m", "95..105~N·m"},
		{"95 .. 105 Nm", Range, "≥95 ≤105 N·m", "95 .. 105~N·m"},
		{"95–105 N m", Range, "≥95 ≤105 N·m", "95–105~N·m"},
		{"95 – 105N m", Range, "≥95 ≤105 N·m", "95 – 105~N·m"},
		{"  0.006 TO 0.010 in. ", Range, "≥3/500 ≤1/100 in", "0.006 TO 0.010~in"},
		{".008 to .017 in", Range, "≥1/125 ≤17/1000 in", ".008 to .017~in"},
		{"95 N·m to 105 Nm", Range, "≥95 ≤105 N·m", "95~N·m to 105~N·m"},
		{"-5 to +5 °C", Range, "≥-5 ≤5 °C", "-5 to +5~°C"},
		{"−5..−3 °C", Range, "≥-5 ≤-3 °C", "−5..−3~°C"},
		{"10 to 10 mm", Range, "≥10 ≤10 mm", "10 to 10~mm"},
		{"1-1/2 to 2-1/4 in", Range, "≥3/2 ≤9/4 in", "1-1/2 to 2-1/4~in"},
		{"100 ±5 N·m", PlusMinus, "≥95 ≤105 =100 N·m", "100 ±5~N·m"},
		{"100±5 ft-lb", PlusMinus, "≥95 ≤105 =100 lbf·ft", "100±5~lbf·ft"},
		{"100 +/- 5 N·m", PlusMinus, "≥95 ≤105 =100 N·m", "100 +/- 5~N·m"},
		{"100 +/−5 N·m", PlusMinus, "≥95 ≤105 =100 N·m", "100 +/−5~N·m"},
		{"100 +5/-0 N·m", PlusMinus, "≥100 ≤105 =100 N·m", "100 +5/-0~N·m"},
		{"100 +5 / −2 N·m", PlusMinus, "≥98 ≤105 =100 N·m", "100 +5 / −2~N·m"},
		{"100 -0/+5 N·m", PlusMinus, "≥100 ≤105 =100 N·m", "100 -0/+5~N·m"},
		{"100 +5 -2 N·m", PlusMinus, "≥98 ≤105 =100 N·m", "100 +5 -2~N·m"},
		{"50 +0.042/+0.026 mm", PlusMinus, "≥25013/500 ≤25021/500 =50 mm", "50 +0.042/+0.026~mm"},
		{"2 +1/16/-1/32 in", PlusMinus, "≥63/32 ≤33/16 =2 in", "2 +1/16/-1/32~in"},
		{"20° ±2°", PlusMinus, "≥18 ≤22 =20 °", "20° ±2°"},
		{"max 0.05 mm", Max, "≤1/20 mm", "max 0.05~mm"},
		{"max. 0.05 mm", Max, "≤1/20 mm", "max. 0.05~mm"},
		{"Maximum 0.05 mm", Max, "≤1/20 mm", "Maximum 0.05~mm"},
		{"at most 0.05 mm", Max, "≤1/20 mm", "at most 0.05~mm"},
		{"at least 12 mm", Min, "≥12 mm", "at least 12~mm"},
		{"min 12 mm", Min, "≥12 mm", "min 12~mm"},
		{"min 5 min", Min, "≥5 min", "min 5~min"},
		{"25 ft-lb", Bare, "=25 lbf·ft", "25~lbf·ft"},
		{"180 in-lb", Bare, "=180 lbf·in", "180~lbf·in"},
		{"8-5/16 in", Bare, "=133/16 in", "8-5/16~in"},
		{"8 5/16 in", Bare, "=133/16 in", "8 5/16~in"},
		{"8½ in", Bare, "=17/2 in", "8½~in"},
		{"5/16 in", Bare, "=5/16 in", "5/16~in"},
		{"-8-1/2 in", Bare, "=-17/2 in", "-8-1/2~in"},
		{"½ turn", Bare, "=1/2 turn", "½~turn"},
		{"8.5 kgf·cm", Bare, "=17/2 kgf·cm", "8.5~kgf·cm"},
		{"69 kPa", Bare, "=69 kPa", "69~kPa"},
		{"10 psi", Bare, "=10 psi", "10~psi"},
		{"120 °C", Bare, "=120 °C", "120~°C"},
		{"120C", Bare, "=120 °C", "120~°C"},
		{"1.5 US qt", Bare, "=3/2 US qt", "1.5~US qt"},
		{"90°", Bare, "=90 °", "90°"},
		{"90 deg", Bare, "=90 °", "90°"},
		{"0.150 mm", Bare, "=3/20 mm", "0.150~mm"},
		{"1.500 mm", Bare, "=3/2 mm", "1.500~mm"},
		{"4 %", Bare, "=1/25 %", ""},
	} {
		b, p := ParseBand(c.text, Point)
		if p != nil {
			t.Errorf("%q: %s: %s", c.text, p.Slug, p.Message)
			continue
		}
		if c.written == "" {
			continue
		}
		if got := show(b); b.Form != c.form || got != c.want {
			t.Errorf("%q is form %d, %s; want %d, %s", c.text, b.Form, got, c.form, c.want)
		}
		if want := strings.ReplaceAll(c.written, "~", nbsp); b.Written != want {
			t.Errorf("%q is written %q, want %q", c.text, b.Written, want)
		}
	}
}

func TestParseBandWithComma(t *testing.T) {
	for text, want := range map[string]string{
		"0,15 to 0,25 mm":  "≥3/20 ≤1/4 mm",
		"0,15..0,25 mm":    "≥3/20 ≤1/4 mm",
		"1,500 mm":         "=3/2 mm",
		"max ,5 mm":        "≤1/2 mm",
		"12,5 ±0,5 N·m":    "≥12 ≤13 =25/2 N·m",
		"10 +0,1/-0,05 mm": "≥199/20 ≤101/10 =10 mm",
	} {
		b, p := ParseBand(text, Comma)
		if p != nil {
			t.Errorf("%q: %s", text, p.Message)
		} else if got := show(b); got != want {
			t.Errorf("%q is %s, want %s", text, got, want)
		}
	}
}

// Each slip gives its message at the narrowest place, with a fix.
func TestProblems(t *testing.T) {
	for _, c := range []struct {
		mark            DecimalMark
		text            string // the place between « and »
		slug, says, fix string
	}{
		{Point, "95 to «105»", "measure-missing", "the unit of measure is missing", "write it after the number, as in `95 to 105 mm` or `95 to 105 N·m`"},
		{Point, "100 ±«5»", "measure-missing", "the unit of measure is missing", "write it after the number, as in `100 ±5 mm` or `100 ±5 N·m`"},
		{Point, "max «0.05»", "measure-missing", "the unit of measure is missing", "write it after the number, as in `max 0.05 mm` or `max 0.05 N·m`"},
		{Point, "95 N·m to «105»", "measure-missing", "the unit of measure is missing", "write it after the number, as in `95 N·m to 105 N·m`"},
		{Point, "4«O» to 50 N·m", "quantity-malformed", "there is a letter O in a number", "did you type the letter O for a zero? write `40 to 50 N·m`"},
		{Point, "40 to 5«O» N·m", "quantity-malformed", "there is a letter O in a number", "did you type the letter O for a zero? write `40 to 50 N·m`"},
		{Point, "«O».15 to 0.25 mm", "quantity-malformed", "there is a letter O in a number", "did you type the letter O for a zero? write `0.15 to 0.25 mm`"},
		{Point, "0.«O»5 mm", "quantity-malformed", "there is a letter O in a number", "did you type the letter O for a zero? write `0.05 mm`"},
		{Point, "1«OO» N·m", "quantity-malformed", "there is a letter O in a number", "did you type the letter O for a zero? write `100 N·m`"},
		{Point, "100 «NM»", "measure-unknown", "no unit of measure is called `NM`", "write `100 N·m`"},
		{Point, "100 «lb-fr»", "measure-unknown", "no unit of measure is called `lb-fr`", "write `100 lbf·ft`"},
		{Point, "5 «mPa»", "measure-unknown", "no unit of measure is called `mPa`", "write it as in `95 to 105 N·m`, `0.15 to 0.25 mm` or `69 kPa`"},
		{Point, "5 «xyzzy»", "measure-unknown", "no unit of measure is called `xyzzy`", "write it as in `95 to 105 N·m`, `0.15 to 0.25 mm` or `69 kPa`"},
		{Point, "1 «pint»", "measure-varieties", "`pint` has varieties that differ", "US or imperial? write `US pt` or `imp pt`"},
		{Point, "1.5 «Quarts»", "measure-varieties", "`Quarts` has varieties that differ", "US or imperial? write `US qt` or `imp qt`"},
		{Point, "2 «gal»", "measure-varieties", "`gal` has varieties that differ", "US or imperial? write `US gal` or `imp gal`"},
		{Point, "2 «fl. oz.»", "measure-varieties", "`fl. oz.` has varieties that differ", "US or imperial? write `US fl oz` or `imp fl oz`"},
		{Point, "20 «inHg»", "measure-varieties", "`inHg` has varieties that differ", "write `inHg (conventional)`, or the pressure in kPa"},
		{Point, "«105 to 95» N·m", "limits-reversed", "the limits are reversed: 105 is more than 95", "write `95 to 105 N·m`"},
		{Point, "«0.25..0.15» mm", "limits-reversed", "the limits are reversed: 0.25 is more than 0.15", "write `0.15..0.25 mm`"},
		{Point, "95«-»105 N·m", "range-hyphen", "a range is not written with `-`", "write `95 to 105 N·m`"},
		{Point, "95 «-» 105 N·m", "range-hyphen", "a range is not written with `-`", "write `95 to 105 N·m`"},
		{Point, "95«−»105 N·m", "range-hyphen", "a range is not written with `−`", "write `95 to 105 N·m`"},
		{Point, "95 N·m «-» 105 N·m", "range-hyphen", "a range is not written with `-`", "write `95 N·m to 105 N·m`"},
		{Point, "95«...»105 N·m", "range-hyphen", "a range is not written with `...`", "write `95 to 105 N·m`"},
		{Point, "95«—»105 N·m", "range-hyphen", "a range is not written with `—`", "write `95 to 105 N·m`"},
		{Point, "8 «-» 5/16 in", "range-hyphen", "a range is not written with `-`", "write `8-5/16 in`"},
		{Point, "5/16«-»3/8 in", "range-hyphen", "a range is not written with `-`", "write `5/16 to 3/8 in`"},
		{Point, "«0,15» to 0,25 mm", "decimal-mark", "the decimal mark of this shop is a point", "write `0.15 to 0.25 mm`"},
		{Comma, "«0.15» to 0.25 mm", "decimal-mark", "the decimal mark of this shop is a comma", "write `0,15 to 0,25 mm`"},
		{Point, "«0,150» mm", "decimal-mark", "the decimal mark of this shop is a point", "write `0.150 mm`"},
		{Point, "«1500,500» mm", "decimal-mark", "the decimal mark of this shop is a point", "write `1500.500 mm`"},
		{Point, "«1,500» N·m", "number-two-ways", "`1,500` can be read two ways", "write `1500 N·m` or `1.500 N·m`"},
		{Comma, "max «1.500» N·m", "number-two-ways", "`1.500` can be read two ways", "write `max 1500 N·m` or `max 1,500 N·m`"},
		{Point, "«1,500.25» mm", "number-two-ways", "a number has no separator between its thousands", "write `1500.25 mm`"},
		{Point, "«1.500,25» mm", "number-two-ways", "a number has no separator between its thousands", "write `1500.25 mm`"},
		{Point, "«1,500,000» mm", "number-two-ways", "a number has no separator between its thousands", "write `1500000 mm`"},
		{Point, "«1 500» N·m", "number-two-ways", "a number has no space between its thousands", "write `1500 N·m`"},
		{Point, "«1'500'000» mm", "number-two-ways", "a number has no space between its thousands", "write `1500000 mm`"},
		{Point, "«1.2.3» mm", "quantity-malformed", "`1.2.3` is not a number", bandExamples},
		{Point, "«5.» mm", "quantity-malformed", "a digit is missing after the decimal mark", "write `5 mm`"},
		{Point, "8-«16/0» in", "quantity-malformed", "a number cannot be divided by 0", "write a tolerance to one side as `+5/-0`"},
		{Point, "«8-17/16» in", "quantity-malformed", "the fraction of a mixed number must be less than one", "write `9-1/16 in`"},
		{Point, "«–»5 to 5 °C", "quantity-malformed", "a minus is written with a hyphen", "write `-5 to 5 °C`"},
		{Point, "100 «+5» N·m", "quantity-malformed", "a tolerance to one side names the other side too", "write `100 +5/-0 N·m`"},
		{Point, "100 ±«-5» N·m", "quantity-malformed", "a tolerance to both sides takes no sign", "write `100 ±5 N·m`"},
		{Point, "100 N·m ±«5 %»", "quantity-malformed", "a tolerance has the same unit of measure as its value", "write `100 ±5 N·m`"},
		{Point, "12.5 N·m ±«4 %»", "quantity-malformed", "a tolerance has the same unit of measure as its value", "write `12.5 ±0.5 N·m`"},
		{Point, "100 ±«5 % N·m»", "quantity-malformed", "a tolerance has the same unit of measure as its value", "write `100 ±5 N·m`"},
		{0, "«0,15» mm", "decimal-mark", "the decimal mark of this shop is a point", "write `0.15 mm`"},
		{Point, "50 to 60 «foo %»", "measure-unknown", "no unit of measure is called `foo %`", "write it as in `95 to 105 N·m`, `0.15 to 0.25 mm` or `69 kPa`"},
		{Point, "100 N·m «(74 lbf·ft)»", "quantity-malformed", "a second unit of measure is not written in parentheses", "write `100 N·m`, and below it `also: 74 lbf·ft`"},
		{Point, "95 N·m to 105 «ft-lb»", "quantity-malformed", "one quantity has one unit of measure, not N·m and lbf·ft", "write both numbers in N·m"},
		{Point, "0.05 mm «max»", "quantity-malformed", "`max` or `at least` goes before the number", "write `max 0.05 mm`"},
		{Point, "12 mm «min»", "quantity-malformed", "`max` or `at least` goes before the number", "write `at least 12 mm`"},
		{Point, "«<» 0.05 mm", "quantity-malformed", "`<` is not how limits are written", "write `max 0.05 mm`"},
		{Point, "«up to» 0.05 mm", "quantity-malformed", "`up to` is not how limits are written", "write `max 0.05 mm`"},
		{Point, "«approx» 5 mm", "quantity-malformed", "a quantity begins with a number, `max` or `at least`", bandExamples},
		{Point, "95 to «N·m»", "quantity-malformed", "a number is missing here", bandExamples},
		{Point, "95 «thru 105 N·m»", "quantity-malformed", "`thru 105 N·m` is not a unit of measure", bandExamples},
		{Point, "1«e5 mm»", "quantity-malformed", "`e5 mm` is not a unit of measure", bandExamples},
		{Point, "«1234567890123» mm", "quantity-malformed", "a number has at most 12 digits on a side", "round it to what the bench can read"},
		{Point, "«0.1234567890123» mm", "quantity-malformed", "a number has at most 12 digits on a side", "round it to what the bench can read"},
		{Point, "«»", "quantity-malformed", "a quantity is missing here", bandExamples},
		{Point, "max«»", "quantity-malformed", "a number is missing here", bandExamples},
		{Point, "5«\n»mm", "quantity-malformed", "a quantity is one line of plain text", bandExamples},
		{Point, "5 «\xff»mm", "quantity-malformed", "a quantity is one line of plain text", bandExamples},
		{Point, "«" + strings.Repeat("9 ", 101) + "»", "quantity-malformed", "this is too long for a quantity", bandExamples},
	} {
		start, end := strings.Index(c.text, "«"), strings.Index(c.text, "»")-len("«")
		text := strings.NewReplacer("«", "", "»", "").Replace(c.text)
		_, p := ParseBand(text, c.mark)
		if p == nil {
			t.Errorf("%q was read", text)
			continue
		}
		if p.Slug != c.slug || p.Message != c.says || p.Fix != c.fix {
			t.Errorf("%q:\n got %s: %s | %s\nwant %s: %s | %s", text, p.Slug, p.Message, p.Fix, c.slug, c.says, c.fix)
		}
		if p.Start != start || p.End != end {
			t.Errorf("%q: marked %q, want %q", text, text[p.Start:p.End], text[start:end])
		}
	}
}

func TestParseBandOf(t *testing.T) {
	for _, c := range []struct {
		text string
		want Dimension
		slug string
		fix  string
	}{
		{"95 to 105 N·m", Torque, "", ""},
		{"95 to 105", Torque, "measure-missing", "write it after the number, as in `95 to 105 N·m`"},
		{"95 to 105 mm", Torque, "measure-kind", "write it in N·m, lbf·ft, lbf·in, kgf·m, kgf·cm, ozf·in, N·cm, kN·m, mN·m, dN·m, daN·m or gf·cm"},
		{"100 xyzzy", Angle, "measure-unknown", "write it in ° or turn"},
		{"95 NM", Torque, "measure-unknown", "write `95 N·m`"},
		{"5 °C", TemperatureDifference, "", ""},
		{"4 mm", Proportion, "measure-kind", "write it in %"},
	} {
		b, p := ParseBandOf(c.text, Point, c.want)
		switch {
		case c.slug == "" && (p != nil || b.Unit.Dimension != c.want):
			t.Errorf("%q is not a %s: %v", c.text, c.want, p)
		case c.slug != "" && (p == nil || p.Slug != c.slug || p.Fix != c.fix):
			t.Errorf("%q: %+v, want %s: %s", c.text, p, c.slug, c.fix)
		}
	}
	_, p := ParseBandOf("95 mm", Point, Torque)
	if want := "mm measures length, not torque"; p == nil || p.Message != want || p.Start != 3 {
		t.Errorf("%+v, want %q at 3", p, want)
	}
}

func TestParseValue(t *testing.T) {
	for text, want := range map[string]string{
		"1.5 US qt":     "3/2 US qt",
		"8-5/16 in":     "133/16 in",
		"2 h 30 min":    "150 min",
		"1 min 30 s":    "90 s",
		"1 h 1 min 1 s": "3661 s",
		"45 min":        "45 min",
	} {
		v, p := ParseValue(text, Point)
		if p != nil {
			t.Errorf("%q: %s", text, p.Message)
		} else if got := v.Value.RatString() + " " + v.Unit.Symbol; got != want {
			t.Errorf("%q is %s, want %s", text, got, want)
		}
	}
	for text, slug := range map[string]string{
		"95 to 105 N·m": "quantity-malformed",
		"max 5 mm":      "quantity-malformed",
		"5":             "measure-missing",
		"30 min 2 h":    "quantity-malformed",
	} {
		if v, p := ParseValue(text, Point); p == nil || p.Slug != slug {
			t.Errorf("%q: %v %v, want %s", text, v, p, slug)
		}
	}
}

func TestParseNumber(t *testing.T) {
	if n, p := ParseNumber("0.180", Point); p != nil || n.Value.RatString() != "9/50" || n.Text != "0.180" {
		t.Errorf("0.180 is %v, %v", n, p)
	}
	for _, text := range []string{"", "x", "0.18 mm", "0,18", "1,500"} {
		if n, p := ParseNumber(text, Point); p == nil {
			t.Errorf("%q is read as %v", text, n)
		}
	}
}
