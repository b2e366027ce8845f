package card

import (
	"math/big"
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

func torqueOf(t *testing.T, c *Card) *Torque {
	t.Helper()
	return c.Steps()[0].Items[0].(*Torque)
}

func measurementOf(t *testing.T, c *Card) *Measurement {
	t.Helper()
	return c.Steps()[0].Items[0].(*Measurement)
}

// The wrench that is chosen can be set to a mark inside the limits; the
// writer's own is taken where it can.
func TestWrench(t *testing.T) {
	for _, c := range []struct {
		yaml, wrench, setting string
		refused               []string // "id: reason"
	}{
		{"fastener: pinion-nut\nlimits: nut-torque", "tw-120", "100", nil},
		{"fastener: cover-bolts\nlimits: cover-torque", "tw-30", "22", nil},
		{"fastener: pinion-nut\nwrench: tw-250\nlimits: nut-torque", "tw-250", "100", nil},
		{"fastener: pinion-nut\nvalue: 22 N·m", "tw-30", "22", nil},                 // the shop's tolerance
		{"fastener: pinion-nut\nlimits: 51 to 54 N·m\nwrench: tw-250", "", "", nil}, // no mark between
		{"fastener: pinion-nut\nlimits: 300 to 320 N·m", "", "", nil},               // above all scales
		{"fastener: pinion-nut\nlimits: 1 to 2 N·m", "", "", nil},                   // below all scales
	} {
		got, messages := stepsOf(t, "### A\n\n"+block("torque", c.yaml))
		clean(t, messages)
		x := torqueOf(t, got)
		wrench, setting := "", ""
		if x.Choice != nil {
			wrench, setting = x.Choice.Wrench.ID, x.Choice.Setting.RatString()
		}
		if wrench != c.wrench || setting != c.setting {
			t.Errorf("%q: %s at %s, want %s at %s", c.yaml, wrench, setting, c.wrench, c.setting)
		}
		if x.Choice == nil && len(x.Refused) == 0 {
			t.Errorf("%q: no wrench, and none refused", c.yaml)
		}
		if x.Choice != nil && (x.Choice.Setting.Cmp(x.Limit.Band.In(x.Choice.Wrench.Scale.Unit).Low) < 0 || x.Choice.Setting.Cmp(x.Limit.Band.In(x.Choice.Wrench.Scale.Unit).High) > 0) {
			t.Errorf("%q: %s lies outside %s", c.yaml, setting, x.Limit.Band.Written)
		}
	}
	got, _ := stepsOf(t, "### A\n\n"+block("torque", "fastener: pinion-nut\nlimits: 51 to 54 N·m\nwrench: tw-250"))
	if r := torqueOf(t, got).Refused; len(r) != 1 || r[0].Reason != bench.NoMark {
		t.Errorf("refused %v", r)
	}
	got, messages := stepsOf(t, "### A\n\n"+block("torque", "fastener: pinion-nut\nwrench: dial-indicator\nlimits: nut-torque"))
	if torqueOf(t, got).Choice != nil || len(messages) != 1 || !strings.HasPrefix(messages[0], "wrench-unknown: ") {
		t.Errorf("a gauge is no wrench: %q", messages)
	}
}

// A bare torque takes the shop's tolerance, and says so; limits are never
// assumed for what states them, nor without a shop's word.
func TestTolerance(t *testing.T) {
	got, messages := stepsOf(t, "### A\n\n"+block("torque", "fastener: pinion-nut\nvalue: 100 N·m"))
	clean(t, messages)
	if x := torqueOf(t, got); !x.Assumed || x.Limit.Band.Low.RatString() != "95" || x.Limit.Band.High.RatString() != "105" {
		t.Errorf("assumed %v, %v", x.Assumed, x.Limit)
	}
	got, _ = stepsOf(t, "### A\n\n"+block("torque", "fastener: pinion-nut\nvalue: 100 ±2 N·m"))
	if x := torqueOf(t, got); x.Assumed || x.Limit.Band.Low.RatString() != "98" {
		t.Errorf("stated limits are taken as they are: %v", x.Limit)
	}
	bare := strings.Replace(testShop, "torque-tolerance: 5 %\n", "", 1)
	for _, s := range []string{"", bare} {
		got, _ = cardOf(t, s, testUnit, testFront+"\n## Work\n\n### A\n\n"+block("torque", "fastener: pinion-nut\nvalue: 100 N·m"), "")
		if x := torqueOf(t, got); x.Assumed || x.Limit != nil || x.Choice != nil {
			t.Errorf("limits from nowhere: %v", x.Limit)
		}
	}
}

// Limits go to the gauge's marks inward: never a mark outside, and always the
// outermost inside.
func TestLimitsInward(t *testing.T) {
	for _, c := range []struct{ limits, gauge, low, high string }{
		{"0.15 to 0.25 mm", "dial-indicator", "0.15", "0.25"},
		{"0.004 to 0.008 in", "dial-indicator", "0.11", "0.20"}, // 0.1016 to 0.2032 mm
		{"0.15 to 0.25 mm", "feelers", "0.006", "0.009"},        // 0.00590… to 0.00984… in
		{"max 0.05 mm", "dial-indicator", "", "0.05"},
		{"max 0.059 mm", "dial-indicator", "", "0.05"},
		{"at least 0.151 mm", "dial-indicator", "0.16", ""},
		{"0.1512 to 0.1588 mm", "dial-indicator", "none", "none"},
	} {
		got, messages := stepsOf(t, "### A\n\n"+block("measurement", "of: Gap\ngauge: "+c.gauge+"\nlimits: "+c.limits+"\nsource: manual"))
		clean(t, messages)
		m := measurementOf(t, got)
		low, high := "none", "none"
		if m.Marks != nil {
			low, high = m.Marks.Ends(quantity.Point)
		}
		if low != c.low || high != c.high {
			t.Errorf("%s on the %s: %q to %q, want %q to %q", c.limits, c.gauge, low, high, c.low, c.high)
		}
	}
	// What may lie apart is rounded down, as is every other upper limit.
	got, messages := stepsOf(t, "### A\n\n"+block("measurement", "of: Gap\ngauge: dial-indicator\nlimits: 0.15 to 0.25 mm\nsource: manual\nrecord: [a, b]\nuse: each\nspread: max 0.059 mm"))
	clean(t, messages)
	if s := measurementOf(t, got).Spread; s == nil || s.Cmp(big.NewRat(5, 100)) != 0 {
		t.Errorf("spread %v", s)
	}
}

// Each variant has its own limits; a limit that has none for a variant leaves
// the block without, which a rule reports.
func TestLimitsOfVariants(t *testing.T) {
	text := testFront + "\n## Work\n\n### A\n\n" + block("measurement", "of: Lash\ngauge: dial-indicator\nlimits: lash") +
		"### B\n\n" + block("measurement", "of: Gap\ngauge: dial-indicator\nlimits: late-gap")
	for _, c := range []struct{ variant, lash, gap string }{
		{"early", "0.15 to 0.25 mm", ""},
		{"late", "0.10 to 0.20 mm", "0.30 to 0.45 mm"},
	} {
		got, messages := cardOf(t, testShop, testUnit, text, c.variant)
		clean(t, messages)
		var have []string
		for _, s := range got.Steps() {
			m := s.Items[0].(*Measurement)
			if m.Limit == nil {
				have = append(have, "")
			} else {
				have = append(have, strings.ReplaceAll(m.Limit.Band.Written, "\u00a0", " "))
			}
		}
		if !slices.Equal(have, []string{c.lash, c.gap}) {
			t.Errorf("%s: %q", c.variant, have)
		}
	}
}

// A limit or gauge of another kind is one message, and no number is printed.
func TestKinds(t *testing.T) {
	for _, c := range []struct{ kind, yaml string }{
		{"measurement", "of: Gap\ngauge: probe\nlimits: lash"},
		{"measurement", "of: Gap\ngauge: dial-indicator\nlimits: max 75 °C\nsource: manual"},
		{"torque", "fastener: pinion-nut\nlimits: lash"},
		{"torque", "fastener: pinion-nut\nlimits: 1 to 2 mm\nsource: manual"},
	} {
		got, messages := stepsOf(t, "### A\n\n"+block(c.kind, c.yaml))
		if len(messages) != 1 || !strings.HasPrefix(messages[0], "measure-kind: ") {
			t.Errorf("%q: %q", c.yaml, messages)
		}
		switch i := got.Steps()[0].Items[0].(type) {
		case *Measurement:
			if i.Limit != nil || i.Marks != nil {
				t.Errorf("%q has limits", c.yaml)
			}
		case *Torque:
			if i.Limit != nil || i.Choice != nil {
				t.Errorf("%q has limits", c.yaml)
			}
		}
	}
}
