package quantity

import (
	"math/big"
	"math/rand/v2"
	"testing"
)

func band(t testing.TB, text string) Band {
	t.Helper()
	b, p := ParseBand(text, Point)
	if p != nil {
		t.Fatalf("%q: %s", text, p.Message)
	}
	return b
}

func TestAlso(t *testing.T) {
	for _, c := range []struct {
		first, second string
		want          Verdict
		source        string
	}{
		{"475 ±50 N·m", "350 ±37 lbf·ft", Agrees, "US Army TM 5-3805-260-24 p. 3-243"},
		{"0.2 to 0.5 N·m", "2 to 4 lbf·in", Agrees, "the same"},
		{"0.20 to 0.42 mm", ".008 to .017 in", Agrees, "the same"},
		{"15 to 25 lbf·in", "1.7 to 2.8 N·m", Agrees, "TM 5-2420-230-24-1"},
		{"0.006 to 0.007 in", "0.15 to 0.18 mm", Agrees, "TM 10-3930-669-34 p. 10-29"},
		{"25 to 35 lbf·in", "3 to 4 N·m", Agrees, "TM 9-2320-289-34 p. 6-119"},
		{"5 to 15 lbf·in", "1 to 2 N·m", Wider, "the same page"},
		{"0.005 in", "0.12 mm", Disagrees, "TM 9-2320-280-34 p. 19-12"},
		{"8 lbf·ft", "1.08 N·m", Disagrees, "made up: a lost digit"},
		{"366..475 N·m", "270..350 lbf·ft", Agrees, "made up, as are all below"},
		{"270..350 lbf·ft", "366..475 N·m", Agrees, ""},

		// Zeros before the decimal mark, to 2.5 % and no further.
		{"1000 psi", "7000 kPa", Agrees, "1.5 % off"},
		{"1000 psi", "6900 kPa", Agrees, ""},
		{"1000 psi", "6890 kPa", Agrees, ""},
		{"1000 psi", "6880 kPa", Disagrees, "not nearest at the tens"},
		{"100 lbf·ft", "140 N·m", Disagrees, "nearest at the tens, 3.3 % off"},
		{"1000 psi", "7000.0 kPa", Disagrees, "a decimal says that the zeros count"},
		{"194.81 mm", "190 mm", Agrees, "nearest at the tens, 2.47 % off"},
		{"194.90 mm", "190 mm", Disagrees, "nearest at the tens, 2.51 % off"},
		// Half way between two steps, either way.
		{"2.5 mm", "2 mm", Agrees, ""},
		{"2.5 mm", "3 mm", Agrees, ""},
		{"2.51 mm", "2 mm", Disagrees, ""},
		{"1.5 to 6.5 mm", "1 to 6 mm", Agrees, "past it by just a tenth"},
		{"1.5 to 6.5 mm", "2 to 7 mm", Agrees, "past it by just a tenth"},
		{"1.5 to 6.4 mm", "1 to 6 mm", Wider, "past it by a little more, at the low end"},
		{"0.51 to 25 mm", "0.02 to 1 in", Agrees, "exact 0.0201 to 0.984: each end to its own last digit"},
		{"10 mm", "0.39 in", Agrees, ""},
		{"2.54 mm", "0.1 in", Agrees, ""},
		{"12.7 mm", "1/2 in", Agrees, ""},
		{"25 mm", "1 in", Agrees, ""},
		{"211 mm", "8-5/16 in", Agrees, "exact 8.307, a sixteenth is its last digit"},
		{"211 mm", "8-3/8 in", Disagrees, ""},
		{"0.05 mm", "0.05 mm", Agrees, ""},
		// Forms.
		{"max 0.05 mm", "max 0.002 in", Agrees, "exact 0.00197: past it by 1.6 %"},
		{"max 0.05 mm", "max 0.0022 in", Disagrees, ""},
		{"max 0.51 N·m", "max 5 lbf·in", Wider, "exact 4.51: past it by 11 %"},
		{"at least 12 mm", "at least 0.47 in", Agrees, ""},
		{"at least 12 mm", "max 0.47 in", Disagrees, ""},
		{"at least 12 mm", "0.47 in", Disagrees, ""},
		{"95 to 105 N·m", "at least 70 lbf·ft", Disagrees, ""},
		{"95 to 105 N·m", "74 lbf·ft", Disagrees, ""},
		{"95 to 105 N·m", "95 to 105 mm", Disagrees, ""},
		// Nominal and tolerance, each rounded by itself.
		{"55 ±10 N·m", "41 ±7 lbf·ft", Agrees, "ends 34 to 48, exact 33.2 to 47.9"},
		{"100 ±5 N·m", "74 ±4 lbf·ft", Agrees, ""},
		{"100 ±5 N·m", "70 to 78 lbf·ft", Disagrees, "exact 70.07 to 77.44: 78 is no rounding of it"},
		{"100 ±1 N·m", "74 ±1 lbf·ft", Wider, "exact 73.0 to 74.5"},
		{"100 ±5 N·m", "74 ±5 lbf·ft", Disagrees, ""},
		{"100 +5/-0 N·m", "74 +4/-0 lbf·ft", Wider, "exact 73.76 to 77.44: past it by 15 %"},
		{"100 +10/-5 N·m", "74 -4/+7 lbf·ft", Agrees, ""},
		{"100 +10/-5 N·m", "74 +4/-7 lbf·ft", Disagrees, ""},
		{"100 +10/-5 N·m", "74 +7/-1 lbf·ft", Disagrees, "over is right, under is not"},
		{"100 +10/-5 N·m", "74 +1/-4 lbf·ft", Disagrees, "under is right, over is not"},
		{"95 to 110 N·m", "100 +10/-5 N·m", Agrees, "the ends are the same, though it aims lower"},
		{"100 +5/-0 N·m", "74 +4/-0.0 lbf·ft", Wider, "a tolerance of 0 is exact and counts for nothing"},
		{"100 to 105 N·m", "74 +3/-0.0 lbf·ft", Agrees, "nor does it make the ends finer"},
		{"100 +5/-0 N·m", "74.0 +3/-0 lbf·ft", Disagrees, "exact 73.76: a decimal is wrong"},
		// Temperatures have a zero of their own, their tolerances have none.
		{"120 °C", "248 °F", Agrees, ""},
		{"100 ±5 °C", "212 ±9 °F", Agrees, ""},
		{"100 ±5 °C", "212 ±41 °F", Disagrees, ""},
	} {
		if got := CompareAlso(band(t, c.first), band(t, c.second)); got != c.want {
			t.Errorf("%s with %s: verdict %d, want %d (%s)", c.first, c.second, got, c.want, c.source)
		}
	}
}

// How far the published pairs reach past each other, recomputed: what parts
// agreeing from wider is a tenth of the first band's width.
func TestAlsoExactEnds(t *testing.T) {
	for _, c := range []struct {
		first, second, low, high string
		decimals                 int
		past                     string // of the first band's width, in whole percent, at the end that is furthest past
	}{
		{"475 ±50 N·m", "350 ±37 lbf·ft", "313.46", "387.22", 2, "1"},
		{"25 to 35 lbf·in", "3 to 4 N·m", "2.82", "3.95", 2, "4"},
		{"5 to 15 lbf·in", "1 to 2 N·m", "0.565", "1.695", 3, "27"},
	} {
		second := band(t, c.second)
		exact := band(t, c.first).In(second.Unit)
		if low, high := exact.Low.FloatString(c.decimals), exact.High.FloatString(c.decimals); low != c.low || high != c.high {
			t.Errorf("%s is exactly %s to %s, want %s to %s", c.first, low, high, c.low, c.high)
		}
		past := new(big.Rat).Sub(exact.Low, second.Low)
		if over := new(big.Rat).Sub(second.High, exact.High); over.Cmp(past) > 0 {
			past = over
		}
		if got := times(per(past, exact.Width()), ratio("100")).FloatString(0); got != c.past {
			t.Errorf("%s reaches past %s by %s %%, want %s", c.second, c.first, got, c.past)
		}
	}
}

func TestRestate(t *testing.T) {
	for _, c := range []struct{ first, second, want string }{
		{"0.005 in", "0.12 mm", "0.13 mm"},
		{"8 lbf·ft", "1.08 N·m", "10.85 N·m"},
		{"475 ±50 N·m", "350 ±30 lbf·ft", "313 to 387 lbf·ft"},
		{"211 mm", "8-3/8 in", "8-1/4 in"},
		{"max 0.05 mm", "0.002 in", "max 0.002 in"},
		{"-18 °C", "5 °F", "−0 °F"},
	} {
		want := c.want
		if want == "−0 °F" {
			want = "0 °F" // −0.4 °F rounds to zero, which has no sign
		}
		if got := InUnitOf(band(t, c.first), band(t, c.second), Point); got != want {
			t.Errorf("%s with %s: should be %s, want %s", c.first, c.second, got, want)
		}
	}
}

// A band put into another unit by the exact conversion agrees with itself, and
// with nothing else, however near.
func TestAlsoOfComputedBands(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 500 {
		first := randomBand(r)
		units := Units(first.Unit.Dimension)
		second := first.In(units[r.IntN(len(units))])
		if got := CompareAlso(first, second); got != Agrees {
			t.Fatalf("%s is verdict %d in %s", first.Written, got, second.Unit.Symbol)
		}
		hair := ratio("1/1000000000")
		for _, end := range []**big.Rat{&second.Low, &second.High} {
			if was := *end; was != nil {
				*end = new(big.Rat).Add(was, hair)
				if got := CompareAlso(first, second); got != Disagrees {
					t.Fatalf("%s a hair off in %s: verdict %d", first.Written, second.Unit.Symbol, got)
				}
				*end = was
			}
		}
	}
}

// What a second unit should have said agrees with the first, always.
func TestRestatedAgrees(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	for range 3000 {
		first, second := randomBand(r), randomBand(r)
		if first.Unit.Dimension != second.Unit.Dimension {
			continue
		}
		text := InUnitOf(first, second, Point)
		again, p := ParseBand(text, Point)
		if p != nil {
			t.Fatalf("%s in the manner of %s is %q: %s", first.Written, second.Written, text, p.Message)
		}
		if CompareAlso(first, again) == Disagrees {
			t.Fatalf("%s does not agree with %s, made in the manner of %s", text, first.Written, second.Written)
		}
	}
}
