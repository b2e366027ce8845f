package card

import (
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

// What bounds the readings is the limits, zero where they have no low side, or
// what is expected where there are none.
func TestSpan(t *testing.T) {
	for _, c := range []struct{ limits, low, high string }{
		{"limits: 0.15 to 0.25 mm\nsource: manual", "0.15", "0.25"},
		{"limits: max 0.05 mm\nsource: manual", "0.00", "0.05"},
		{"limits: at least 0.15 mm\nsource: manual", "none", "none"},
		{"limits: none\nbecause: It feeds a table.\nexpect: 0.30 to 0.38 mm", "0.30", "0.38"},
	} {
		got, messages := stepsOf(t, "### A\n\n"+block("measurement", "of: Gap\ngauge: dial-indicator\n"+c.limits))
		clean(t, messages)
		low, high := "none", "none"
		if span := measurementOf(t, got).Span(); span != nil {
			low, high = span.Ends(quantity.Point)
		}
		if low != c.low || high != c.high {
			t.Errorf("%s: %q to %q, want %q to %q", c.limits, low, high, c.low, c.high)
		}
	}
}
