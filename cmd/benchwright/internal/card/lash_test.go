package card

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

const lashUnit = `unit: md-48
title: MD-48 right-angle drive
gears:
  bevel: {teeth: [16, 32], module: 4.5 mm, pressure-angle: 20°, spiral: 35°, shaft-angle: 90°, pitch-radius: {pinion: 36 mm, gear: 72 mm}}
limits:
  lash: {band: 0.15 to 0.25 mm, source: manual, holds: {measured: tangent, at: pitch-radius, turned: gear}}
  normal: {band: 0.15 to 0.25 mm, source: manual, holds: {measured: normal-to-flank, at: 72 mm, turned: gear}}
  bare: {band: 0.15 to 0.25 mm, source: manual}
  inch: {band: 0.006 to 0.010 in, source: manual, holds: {measured: tangent, at: pitch-radius, turned: pinion}}
`

// lashOf makes the lash block of one step.
func lashOf(t *testing.T, shopText, yaml string) (*Lash, []string) {
	t.Helper()
	c, messages := cardOf(t, shopText, lashUnit, testFront+"\n## Work\n\n### A\n\n"+block("lash", yaml), "")
	return c.Steps()[0].Items[0].(*Lash), messages
}

// The limits stand on the dial as it shows them there, rounded inward. The
// factors are worked by hand: square to the flank 0.7698 (23 % less at 20° and
// 35°), along with the radius, tilted 1/cos.
func TestLashOnTheDial(t *testing.T) {
	for _, c := range []struct{ limits, measured, at, turned, more, low, high string }{
		{"lash", "tangent", "72 mm", "gear", "", "0.15", "0.25"},
		{"lash", "tangent", "pitch-radius", "gear", "", "0.15", "0.25"},
		{"lash", "tangent", "pitch-radius", "pinion", "", "0.15", "0.25"}, // at the pitch radii it is the same
		{"lash", "normal-to-flank", "72 mm", "gear", "", "0.12", "0.19"},  // 0.1155 to 0.1924
		{"normal", "tangent", "72 mm", "gear", "", "0.20", "0.32"},        // 0.1949 to 0.3248
		{"normal", "normal-to-flank", "pitch-radius", "gear", "", "0.15", "0.25"},
		{"lash", "tangent", "108 mm", "gear", "", "0.23", "0.37"},           // ×1.5
		{"lash", "tangent", "18 mm", "pinion", "", "0.08", "0.12"},          // ×0.5
		{"lash", "tangent", "5.669 in", "gear", "", "0.30", "0.49"},         // 143.9926 mm: ×1.9999
		{"inch", "tangent", "36 mm", "pinion", "", "0.16", "0.25"},          // 0.1524 to 0.254
		{"lash", "tangent", "72 mm", "gear", "60°", "0.30", "0.50"},         // cos 60° is 1/2
		{"lash", "tangent", "144 mm", "pinion", "", "0.60", "1.00"},         // ×4
		{"lash", "normal-to-flank", "36 mm", "gear", "60°", "0.12", "0.19"}, // ×1/2 ×2
		{"lash", "tangent", "72 mm", "gear", "0.5 turn", "", ""},            // no lever stands so
		{"0.15 to 0.25 mm", "tangent", "72 mm", "gear", "", "", "mm"},       // in place, see below
	} {
		yaml := "limits: " + c.limits + "\ngauge: dial-indicator\nmeasured: " + c.measured + "\nat: " + c.at + "\nturned: " + c.turned
		if c.high == "mm" {
			yaml += "\nsource: manual\nholds: {measured: tangent, at: 36 mm, turned: gear}"
			c.low, c.high = "0.30", "0.50"
		}
		if c.more != "" {
			yaml += "\ntilt: " + c.more
		}
		l, messages := lashOf(t, testShop, yaml)
		clean(t, messages)
		if c.high == "" {
			continue // a rule refuses it
		}
		if low, high := l.Marks.Ends(quantity.Point); low != c.low || high != c.high {
			t.Errorf("%s %s at %s: %s to %s, want %s to %s", c.limits, c.measured, c.at, low, high, c.low, c.high)
		}
	}
}

// On one member the radii alone tell, and a pair that does not say its pitch
// radii is asked for them only from one member to the other, or where a limit
// holds at them.
func TestLashOnOneMember(t *testing.T) {
	bare := strings.Replace(lashUnit, ", pitch-radius: {pinion: 36 mm, gear: 72 mm}", "", 1)
	for _, c := range []struct{ at, turned, low, high string }{
		{"36 mm", "gear", "0.08", "0.12"}, // half of 72 mm
		{"72 mm", "gear", "0.15", "0.25"},
		{"72 mm", "pinion", "", ""},
		{"pitch-radius", "gear", "", ""},
	} {
		card, messages := cardOf(t, testShop, bare, testFront+"\n## Work\n\n### A\n\n"+
			block("lash", "limits: 0.15 to 0.25 mm\nsource: m\nholds: {measured: tangent, at: 72 mm, turned: gear}\ngauge: dial-indicator\nmeasured: tangent\nat: "+c.at+"\nturned: "+c.turned), "")
		l := card.Steps()[0].Items[0].(*Lash)
		if c.low == "" {
			if l.Marks != nil || len(messages) != 1 || !strings.HasPrefix(messages[0], "key-missing: ") {
				t.Errorf("%s on the %s: %v, %q", c.at, c.turned, l.Marks, messages)
			}
			continue
		}
		clean(t, messages)
		if low, high := l.Marks.Ends(quantity.Point); low != c.low || high != c.high {
			t.Errorf("%s on the %s: %s to %s, want %s to %s", c.at, c.turned, low, high, c.low, c.high)
		}
	}
}

// Without a gauge the limits keep the digits that they were typed with.
func TestLashWithoutAGauge(t *testing.T) {
	l, messages := lashOf(t, "", "limits: lash\nmeasured: normal-to-flank\nat: 72 mm\nturned: gear")
	clean(t, messages)
	if got := strings.ReplaceAll(l.Shown.Range(quantity.Point), "\u00a0", " "); got != "0.12 to 0.19 mm" {
		t.Errorf("shown %s", got)
	}
}

// What is missing is asked for, once, and nothing is assumed in its place.
func TestLashLacks(t *testing.T) {
	l, messages := lashOf(t, testShop, "limits: bare\ngauge: dial-indicator\nmeasured: tangent\nat: 72 mm\nturned: gear")
	if len(messages) != 1 || !strings.HasPrefix(messages[0], "key-missing: ") || l.Limit != nil || l.Marks != nil || !l.Mismatch {
		t.Errorf("%q, %v", messages, l.Marks)
	}
	l, messages = lashOf(t, testShop, "limits: none\nbecause: it feeds the shims\nexpect: 0.1 to 0.6 mm\ngauge: dial-indicator\nmeasured: tangent\nat: 144 mm\nturned: gear")
	clean(t, messages)
	if l.PerPitch == nil || l.PerPitch.RatString() != "2" || l.Limit != nil || l.Expect == nil {
		t.Errorf("a reading without limits: %v", l.PerPitch)
	}
}

// No reading that the card accepts lies outside what the manual states: each
// end, taken back, lies inside, and one mark further out does not.
func TestLashStaysInside(t *testing.T) {
	rng := rand.New(rand.NewPCG(48, 6))
	step := big.NewRat(1, 100)
	for i := range 60 {
		radius, tilt := 20+rng.IntN(180), rng.IntN(60)
		measured := []string{"tangent", "normal-to-flank"}[i%2]
		l, messages := lashOf(t, testShop, fmt.Sprintf("limits: lash\ngauge: dial-indicator\nmeasured: %s\nat: %d mm\nturned: gear\ntilt: %d°", measured, radius, tilt))
		clean(t, messages)
		low, high := l.Limit.Band.Low, l.Limit.Band.High
		back := func(x *big.Rat) *big.Rat { return new(big.Rat).Quo(x, l.PerPitch) }
		if l.Marks == nil {
			continue // they may be too narrow for the dial there
		}
		if back(l.Marks.Low).Cmp(low) < 0 || back(l.Marks.High).Cmp(high) > 0 {
			t.Errorf("%s at %d mm, tilted %d°: %v to %v accepts what the manual does not", measured, radius, tilt, l.Marks.Low, l.Marks.High)
		}
		if back(new(big.Rat).Sub(l.Marks.Low, step)).Cmp(low) >= 0 || back(new(big.Rat).Add(l.Marks.High, step)).Cmp(high) <= 0 {
			t.Errorf("%s at %d mm, tilted %d°: not the widest", measured, radius, tilt)
		}
		want := float64(radius) / 72 / math.Cos(float64(tilt)*math.Pi/180)
		if measured == "normal-to-flank" {
			want *= math.Cos(20*math.Pi/180) * math.Cos(35*math.Pi/180)
		}
		if got, _ := l.PerPitch.Float64(); math.Abs(got-want) > 1e-9 {
			t.Errorf("%s at %d mm, tilted %d°: factor %g, want %g", measured, radius, tilt, got, want)
		}
		// Further out the dial shows more.
		out, _ := lashOf(t, testShop, fmt.Sprintf("limits: lash\ngauge: dial-indicator\nmeasured: %s\nat: %d mm\nturned: gear\ntilt: %d°", measured, radius+1, tilt))
		if out.PerPitch.Cmp(l.PerPitch) <= 0 || out.Marks.Low.Cmp(l.Marks.Low) < 0 || out.Marks.High.Cmp(l.Marks.High) < 0 {
			t.Errorf("%s at %d mm: less than at %d mm", measured, radius+1, radius)
		}
	}
}

// The rows of a marked part stay inside what the mark allows, and are the
// widest such.
func TestTableByMark(t *testing.T) {
	unitText := func(step, tolerance, sense string) string {
		return "unit: md-48\ntitle: D\nlimits:\n  head: {table-by: pinion-mark, nominal: 6.003 mm, per-mark: " + step + ", tolerance: " + tolerance + ", plus-mark-means: " + sense + ", marks: -4 to 4, source: m}\n"
	}
	for _, step := range []string{"0.01 mm", "0.007 mm", "0.001 in"} {
		for _, tolerance := range []string{"0.02 mm", "0.0333 mm", "0.002 in"} {
			for _, gauge := range []string{"dial-indicator", "none"} {
				for _, sense := range []string{"longer", "shorter"} {
					yaml := "of: Head\nlimits: head"
					if gauge != "none" {
						yaml += "\ngauge: " + gauge
					}
					c, messages := cardOf(t, testShop, unitText(step, tolerance, sense), testFront+"\n## Work\n\n### A\n\n"+block("measurement", yaml), "")
					clean(t, messages)
					m := measurementOf(t, c)
					if len(m.Rows) != 9 || m.Limit != nil {
						t.Fatalf("%d rows", len(m.Rows))
					}
					for _, row := range m.Rows {
						exact := m.Table.Band(row.Mark)
						s := row.Marks.Scale.Step
						low, high := row.Marks.Low, row.Marks.High
						if low.Cmp(exact.Low) < 0 || high.Cmp(exact.High) > 0 {
							t.Errorf("mark %d of %s ±%s: %v to %v lies outside", row.Mark, step, tolerance, low, high)
						}
						if new(big.Rat).Sub(low, s).Cmp(exact.Low) >= 0 || new(big.Rat).Add(high, s).Cmp(exact.High) <= 0 {
							t.Errorf("mark %d of %s ±%s: %v to %v is not the widest", row.Mark, step, tolerance, low, high)
						}
					}
				}
			}
		}
	}
}

// A tilted lever shows too much, so its limits lie further out; what it accepts
// is inside.
func TestTilt(t *testing.T) {
	for _, c := range []struct{ tilt, low, high string }{
		{"0°", "0.15", "0.25"}, {"20°", "0.16", "0.26"}, // 0.1596 to 0.2660: published factor 0.94
		{"10°", "0.16", "0.25"}, {"30°", "0.18", "0.28"}, {"60°", "0.30", "0.50"}, // 0.98, 0.87; exactly 1/2
	} {
		got, messages := stepsOf(t, "### A\n\n"+block("measurement", "of: Run-out\ngauge: dial-indicator\nlimits: 0.15 to 0.25 mm\nsource: m\ntilt: "+c.tilt))
		clean(t, messages)
		m := measurementOf(t, got)
		if low, high := m.Marks.Ends(quantity.Point); low != c.low || high != c.high {
			t.Errorf("tilted %s: %s to %s, want %s to %s", c.tilt, low, high, c.low, c.high)
		}
	}
}

// A pack is made for the same backlash wherever the dial stands: at twice the
// radius the readings, the aim and the rate are all twice as much.
func TestShimsFromALashElsewhere(t *testing.T) {
	shopText := testShop + "stock:\n  steel: {place: here, shims: [0.10 mm, 0.12 mm, 0.15 mm, 0.18 mm, 0.30 mm, 0.40 mm, 0.50 mm]}\n"
	unitText := lashUnit + "packs:\n  gear-pack: {reading: lash, more-shim: opens, rate: RATE, moves: gear, safe-side: more}\n"
	packs := func(rate, at, span string) map[string]string {
		text := testFront + "\n## Work\n\n### A {#a}\n\n" +
			block("lash", "limits: none\nbecause: it feeds the table\nexpect: "+span+"\ngauge: dial-indicator\nmeasured: tangent\nat: "+at+"\nturned: gear") +
			"\n### B\n\n" + block("shim", "pack: gear-pack\nstock: steel\naim: lash\nfrom: {reading: a, with-pack: 1.00 mm}\nwithin: 0.03 mm\nover-pack: ±0.01 mm\nat-most: 4\nmicrometer: dial-indicator")
		c, messages := cardOf(t, shopText, strings.Replace(unitText, "RATE", rate, 1), text, "")
		clean(t, messages)
		i := c.Steps()[1].Items[0].(*Shim)
		out := map[string]string{}
		for _, row := range i.Rows {
			for m := new(big.Rat).Set(row.Low); m.Cmp(row.High) <= 0; m = new(big.Rat).Add(m, big.NewRat(1, 100)) {
				out[m.FloatString(2)] = row.Total.FloatString(3)
			}
		}
		if len(out) == 0 {
			t.Fatalf("no rows at %s: %+v", at, i.Miss)
		}
		return out
	}
	for _, rate := range []string{"theory", "0.7"} {
		near, far := packs(rate, "72 mm", "0.05 to 0.40 mm"), packs(rate, "144 mm", "0.10 to 0.80 mm")
		for reading, pack := range near {
			x, _ := new(big.Rat).SetString(reading)
			twice := x.Add(x, x).FloatString(2)
			a, _ := new(big.Rat).SetString(pack)
			b, ok := new(big.Rat).SetString(far[twice])
			if !ok {
				t.Errorf("%s: no pack for %s at twice the radius", rate, twice)
				continue
			}
			// A row may stand for several readings: each pack lies within 0.03 mm
			// of the same want.
			if d := a.Sub(a, b).Abs(a); d.Cmp(big.NewRat(6, 100)) > 0 {
				t.Errorf("%s: %s reads %s here and %s there, packs %s and %s", rate, reading, reading, twice, pack, far[twice])
			}
		}
	}
}
