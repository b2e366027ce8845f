package card

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

// The guard band narrows what is accepted by w × U at each end (after
// ISO 14253-1), and then inward to the marks.
func TestGuardBand(t *testing.T) {
	reading := func(rule, uncertainty, limits string) (*Measurement, []string) {
		s := strings.Replace(testShop, "resolution: 0.01 mm", "resolution: 0.01 mm"+uncertainty, 1)
		c, messages := cardOf(t, rule+s, testUnit, testFront+"\n## Work\n\n### A\n\n"+block("measurement", "of: Gap\ngauge: dial-indicator\nlimits: "+limits+"\nsource: manual"), "")
		return measurementOf(t, c), messages
	}
	const one, iso = "gauge-rule: {guard-band: 1}\n", "gauge-rule: {guard-band: 0.825}\n"
	const u = ", uncertainty: 0.01 mm"
	for _, c := range []struct{ rule, uncertainty, limits, low, high string }{
		{one, u, "0.15 to 0.25 mm", "0.16", "0.24"}, // worked by hand
		{iso, u, "0.15 to 0.25 mm", "0.16", "0.24"}, // 0.15825 to 0.24175
		{iso, ", uncertainty: 0.02 mm", "0.15 to 0.25 mm", "0.17", "0.23"},
		{one, ", uncertainty: ±0.01 mm", "0.15 to 0.25 mm", "0.16", "0.24"},
		{one, u, "max 0.05 mm", "", "0.04"},
		{one, u, "at least 0.05 mm", "0.06", ""},
		{one, "", "0.15 to 0.25 mm", "0.15", "0.25"}, // nothing to narrow it by
		{"", u, "0.15 to 0.25 mm", "0.15", "0.25"},   // nor a rule
		{one, u, "0.15 to 0.17 mm", "0.16", "0.16"},
		{one, u, "0.15 to 0.16 mm", "taken", "taken"},
		{one, u, "0.155 to 0.175 mm", "taken", "taken"}, // 0.165 alone is left, and no mark
		{one, u, "0.151 to 0.159 mm", "none", "none"},   // there was none before
		{one, ", uncertainty: 0.0004 in", "0.15 to 0.25 mm", "0.17", "0.23"},
	} {
		m, messages := reading(c.rule, c.uncertainty, c.limits)
		clean(t, messages)
		low, high := "none", "none"
		switch {
		case m.GuardLeftNoMark:
			low, high = "taken", "taken"
		case m.Marks != nil:
			low, high = m.Marks.Ends(quantity.Point)
		}
		if low != c.low || high != c.high {
			t.Errorf("%s with %s%s: %q to %q, want %q to %q", c.limits, c.rule, c.uncertainty, low, high, c.low, c.high)
		}
	}
	for _, s := range []string{"0", "-1"} {
		if _, messages := reading("gauge-rule: {guard-band: "+s+"}\n", u, "0.15 to 0.25 mm"); len(messages) != 1 {
			t.Errorf("guard-band %s: %q", s, messages)
		}
		if _, messages := reading(one, ", uncertainty: "+s+" mm", "0.15 to 0.25 mm"); len(messages) != 1 {
			t.Errorf("uncertainty %s: %q", s, messages)
		}
	}
}

// Whatever the gauge shows, its uncertainty and the shop's rule: a mark that the
// card accepts lies inside the limits by w × U or more, and the mark beyond it
// does not.
func TestGuardBandProperty(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 10))
	for range 400 {
		step, u, w := big.NewRat(int64(1+r.IntN(20)), 1000), big.NewRat(int64(1+r.IntN(30)), 1000), big.NewRat(int64(1+r.IntN(2000)), 1000)
		low := big.NewRat(int64(r.IntN(500)), 1000)
		high := new(big.Rat).Add(low, big.NewRat(int64(1+r.IntN(300)), 1000))
		s := fmt.Sprintf("shop: A\ngauge-rule: {guard-band: %s}\ngauges:\n  g: {resolution: %s mm, uncertainty: %s mm}\n", w.FloatString(3), step.FloatString(3), u.FloatString(3))
		c, messages := cardOf(t, s, testUnit, testFront+"\n## Work\n\n### A\n\n"+
			block("measurement", fmt.Sprintf("of: Gap\ngauge: g\nlimits: %s to %s mm\nsource: manual", low.FloatString(3), high.FloatString(3))), "")
		clean(t, messages)
		m := measurementOf(t, c)
		wu := new(big.Rat).Mul(w, u)
		from, to := new(big.Rat).Add(low, wu), new(big.Rat).Sub(high, wu)
		first := m.Gauge.Scale.Ceil(from)
		if m.Marks == nil {
			if first.Cmp(to) <= 0 {
				t.Fatalf("%s: a mark inside %s to %s was not seen", s, from.FloatString(4), to.FloatString(4))
			}
			continue
		}
		if m.Marks.Low.Cmp(first) != 0 || m.Marks.High.Cmp(m.Gauge.Scale.Floor(to)) != 0 || first.Cmp(to) > 0 {
			t.Fatalf("%s: %s to %s accepts %s", s, low.FloatString(3), high.FloatString(3), m.Marks.Print(quantity.Point))
		}
	}
}
