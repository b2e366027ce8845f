package card

import (
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

// leakOf makes the leak test of a block on a gauge, with the keys that every
// such block has.
func leakOf(t *testing.T, gauge, keys string) *LeakTest {
	t.Helper()
	shopText := strings.Replace(testShop, "shop:", "atmosphere: 101.3 kPa\nshop:", 1) + "  g: {name: Gauge, " + gauge + "}\n  th: {name: Thermometer, resolution: 1 °C, range: 0 to 60 °C}\n  fth: {name: Thermometer, resolution: 1 °F, range: 32 to 120 °F}\n"
	yaml := "of: Test\nhold: 10 min\nsource: m\nif-leak: Mend it.\ngauge: g\n" + keys
	for _, rest := range []string{"temperature: 20 to 25 °C", "thermometer: th", "referred-to: start"} {
		if key, _, _ := strings.Cut(rest, ":"); !strings.Contains(keys, key+":") {
			yaml += "\n" + rest
		}
	}
	c, messages := cardOf(t, shopText, testUnit, testFront+"\n## Work\n\n### A\n\n"+block("leak-test", yaml), "")
	clean(t, messages)
	return c.Steps()[0].Items[0].(*LeakTest)
}

// The pressure that is stated stands on the gauge as that gauge counts: from
// the shop's air of 101.3 kPa, as the depth of a vacuum, or down from zero.
func TestLeakStart(t *testing.T) {
	const up, down = "resolution: 0.5 kPa, range: 0 to 100 kPa", "resolution: 0.5 kPa, range: -100 to 0 kPa"
	for _, c := range []struct{ gauge, start, more, want string }{
		{up, "pressure: 34 to 36 kPa gauge", "fluid: air", "35"},
		{up, "pressure: 34 to 36 kPa gauge", "fluid: air\nthermometer: fth", "35"},
		{up, "pressure: 34.3 to 36 kPa gauge", "fluid: air", "35"},          // 35.15
		{up, "pressure: 34.1 to 34.6 kPa gauge", "fluid: air", "69/2"},      // 34.35: 34.5 is nearer, 34 outside
		{up, "pressure: 34.9 to 35.4 kPa gauge", "fluid: air", "35"},        // 35.15: 35 is nearer
		{up, "pressure: 35.5 ±0.6 kPa gauge", "fluid: air", "71/2"},         // the nominal
		{up, "pressure: 35 +2/-0 kPa gauge", "fluid: air", "35"},            // not the middle
		{up, "pressure: 34.1 to 34.4 kPa gauge", "fluid: air", ""},          // no mark
		{up, "pressure: 35.25 kPa gauge", "fluid: air", ""},                 // nor here
		{up, "pressure: 35.5 kPa gauge", "fluid: air", "71/2"},              // a bare one is a mark
		{up, "pressure: 134.8 to 136.8 kPa absolute", "fluid: air", "69/2"}, // 33.5 to 35.5
		{up, "pressure: 5 psi gauge", "fluid: air", ""},                     // 34.47 kPa is no mark
		{up, "pressure: 4.9 to 5.1 psi gauge", "fluid: air", "69/2"},        // 33.78 to 35.16
		{up, "vacuum: 59 to 61 kPa gauge", "", "60"},
		{down, "vacuum: 59 to 61 kPa gauge", "", "-60"},
		{up, "vacuum: 39 to 41 kPa absolute", "", "123/2"},    // 61.3: 61.5 is nearer
		{down, "vacuum: 39 to 41 kPa absolute", "", "-123/2"}, // −61.3
	} {
		l := leakOf(t, c.gauge, c.start+"\nallowed: 2 kPa\n"+c.more)
		got := ""
		if l.Start != nil {
			got = l.Start.RatString()
		}
		if got != c.want || (l.Hold == nil) != (c.want == "") || l.Hold != nil && len(l.Rows) != int(2*l.MaxDegrees+1) {
			t.Errorf("%s on %s: %q, want %q; %d rows", c.start, c.gauge, got, c.want, len(l.Rows))
		}
	}
}

// A leak rate becomes the pressure that may be lost: 10 Pa·L/s from 3.5 L in
// 600 s are 1.714 kPa, recomputed; the unit is the gauge's.
func TestLeakAllowed(t *testing.T) {
	for _, c := range []struct{ gauge, allowed, want string }{
		{"resolution: 0.5 kPa, range: 0 to 100 kPa", "rate: 10 Pa·L/s\nvolume: 3.5 L", "1.714"},
		{"resolution: 5 mbar, range: 0 to 1000 mbar", "rate: 10 Pa·L/s\nvolume: 3500 mL", "17.143"},
		{"resolution: 0.5 kPa, range: 0 to 100 kPa", "allowed: 20 mbar", "2.000"},
		{"resolution: 0.1 psi, range: 0 to 15 psi", "allowed: 2.0 kPa", "0.290"},
	} {
		start := "pressure: 34 to 36 kPa gauge\nfluid: air\n"
		l := leakOf(t, c.gauge, start+c.allowed)
		if l.Hold == nil {
			t.Errorf("%s: no test", c.allowed)
			continue
		}
		if got := l.Hold.Change.FloatString(3); got != c.want {
			t.Errorf("%s on %s: %s, want %s", c.allowed, c.gauge, got, c.want)
		}
	}
}

// The shop, the reference and the atmosphere reach the computation as they are
// stated, in °C and in the gauge's unit; a thermometer in °F has nine degrees
// for five.
func TestLeakFacts(t *testing.T) {
	l := leakOf(t, "resolution: 0.1 psi, range: 0 to 15 psi", "pressure: 34 to 36 kPa gauge\nfluid: air\nallowed: 2 kPa\nreferred-to: 68 °F\ntemperature: 59 to 77 °F\nthermometer: fth")
	h := l.Hold
	if h == nil || h.Coldest.RatString() != "15" || h.Warmest.RatString() != "25" || h.Reference.RatString() != "20" ||
		h.Degree.RatString() != "5/9" || l.MaxDegrees != 9 || h.Atmosphere.FloatString(3) != "14.692" || h.Vacuum {
		t.Fatalf("%+v, %d degrees to each side", h, l.MaxDegrees)
	}
	if l.Shop == nil || strings.ReplaceAll(l.Shop.Print(quantity.Point), "\u00a0", " ") != "59 to 77 °F" {
		t.Errorf("the shop is %v", l.Shop)
	}
	// The same test in kPa and °C, mark by mark: what the psi gauge accepts the
	// manual does.
	same := leakOf(t, "resolution: 0.001 kPa, range: 0 to 100 kPa", "pressure: 35.163 kPa gauge\nfluid: air\nallowed: 2 kPa\nreferred-to: 20 °C\ntemperature: 15 to 25 °C")
	psi, kPa := l.Gauge.Scale.Unit, same.Gauge.Scale.Unit
	if start := quantity.Convert(l.Start, psi, kPa).FloatString(3); start != "35.163" {
		t.Fatalf("the start is %s kPa", start)
	}
	at := func(rows []bench.EndReading, shift string) bench.EndReading {
		for _, r := range rows {
			if r.Shift.RatString() == shift {
				return r
			}
		}
		t.Fatalf("no row at %s °C", shift)
		return bench.EndReading{}
	}
	for _, shift := range []string{"-5", "0", "5"} {
		a, b := quantity.Convert(at(l.Rows, shift).Limit, psi, kPa).FloatString(2), at(same.Rows, shift).Limit.FloatString(2)
		if a != b {
			t.Errorf("at %s °C: %s kPa by psi, %s by kPa", shift, a, b)
		}
	}
}
