package check

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
)

// Every measurement and torque has limits, in each variant that its card is
// compiled for.
func TestLimits(t *testing.T) {
	missing := func(at string) []string { return say("limits-missing [" + at + "]") }
	for _, c := range []struct {
		name, steps string
		early, late []string
	}{
		{"named", block("measurement", "of: A\ngauge: dial-indicator\nlimits: lash"), nil, nil},
		{"in place", block("measurement", "of: A\ngauge: dial-indicator\nlimits: max 0.05 mm\nsource: manual"), nil, nil},
		{"none, and why", block("measurement", "of: A\ngauge: dial-indicator\nlimits: none\nbecause: a note\nexpect: 1 to 2 mm"), nil, nil},
		{"not stated", block("measurement", "of: A\ngauge: dial-indicator"), missing("measurement"), missing("measurement")},
		{"without a gauge", block("measurement", "of: A"), missing("measurement"), missing("measurement")},
		{"late alone has them", block("measurement", "of: A\ngauge: dial-indicator\nlimits: late-gap"), missing("late-gap"), nil},
		{"for late alone", block("measurement", "of: A\ngauge: dial-indicator\nlimits: late-gap\nonly: late"), nil, nil},
		{"early block, late limit", block("measurement", "of: A\ngauge: dial-indicator\nlimits: late-gap\nonly: early"), missing("late-gap"), nil},
		{"step for late", "### S {only=late}\n\n```measurement\nof: A\ngauge: dial-indicator\n```\n", nil, missing("measurement")},
		{"stage for late", "### S\n\nWipe it.\n\n## L {only=late}\n\n### S\n\n```measurement\nof: A\ngauge: dial-indicator\n```\n", nil, missing("measurement")},
		{"one value", block("measurement", "of: A\ngauge: dial-indicator\nlimits: 0.2 mm\nsource: manual"), say("limits-bare [0.2 mm]"), say("limits-bare [0.2 mm]")},
		{"two blocks", block("measurement", "of: A\ngauge: dial-indicator") + block("measurement", "of: B\ngauge: dial-indicator"),
			say("limits-missing [measurement]", "limits-missing [measurement]"), say("limits-missing [measurement]", "limits-missing [measurement]")},
		{"torque named", block("torque", "fastener: pinion-nut\nlimits: nut-torque"), nil, nil},
		{"torque not stated", block("torque", "fastener: pinion-nut"), missing("torque"), missing("torque")},
		{"torque for late alone", block("torque", "fastener: pinion-nut\nlimits: late-torque"), missing("late-torque"), nil},
		{"torque with tolerance", block("torque", "fastener: pinion-nut\nvalue: 100 N·m"), nil, nil},
		{"torque with both", block("torque", "fastener: pinion-nut\nvalue: 100 N·m\nlimits: nut-torque"), say("limits-twice [100 N·m]"), say("limits-twice [100 N·m]")},
		{"torque of one value", block("torque", "fastener: pinion-nut\nlimits: 100 N·m"), say("limits-bare [100 N·m]"), say("limits-bare [100 N·m]")},
	} {
		for variant, want := range map[string][]string{"early": c.early, "late": c.late} {
			if got := cardOf(t, testShop, testFront+c.steps, variant).found(limits); !slices.Equal(got, want) {
				t.Errorf("%s, %s: %q, want %q", c.name, variant, got, want)
			}
		}
	}
	// A bare torque needs the shop's word.
	for _, s := range []string{"", strings.Replace(testShop, "torque-tolerance: 5 %\n", "", 1)} {
		if got := cardOf(t, s, testFront+block("torque", "fastener: pinion-nut\nvalue: 100 N·m"), "early").found(limits); !slices.Equal(got, say("torque-tolerance [100 N·m]")) {
			t.Errorf("bare torque: %q", got)
		}
	}
}

// What could not be read or found has been reported: rules pass over it.
func TestLimitsPassOver(t *testing.T) {
	for _, yaml := range []string{
		"of: A\ngauge: dial-indicator\nlimits: lsah",
		"of: A\ngauge: dial-indicator\nlimits: 0.2 to mm",
		"of: A\ngauge: dial-indicator\nlimits: nut-torque",
		"of: A\ngauge: dial-indicator\nlimits: [a]",
	} {
		m := cardOf(t, testShop, testFront+block("measurement", yaml), "early")
		list := &diag.List{}
		Card(m.card, list)
		list.Keep(func(d diag.Diagnostic) bool { return d.Slug != "branch-missing" && d.Slug != "source-missing" })
		if list.Len() > 0 {
			t.Errorf("%q: a second message, %s", yaml, list.Sorted()[0].Message)
		}
	}
}

func TestSources(t *testing.T) {
	try(t, sources, []trial{
		{block("measurement", "of: A\nlimits: lash"), nil},
		{block("measurement", "of: A\nlimits: max 0.05 mm"), say("source-missing [max 0.05 mm]")},
		{block("measurement", "of: A\nlimits: max 0.05 mm\nsource: shop practice"), nil},
		{block("torque", "fastener: pinion-nut\nlimits: nut-torque"), nil},
		{block("torque", "fastener: pinion-nut\nlimits: 95 to 105 N·m"), say("torque-source-missing [95 to 105 N·m]")},
		{block("torque", "fastener: pinion-nut\nvalue: 100 ±5 N·m"), say("torque-source-missing [100 ±5 N·m]")},
		{block("torque", "fastener: pinion-nut\nvalue: 100 ±5 N·m\nsource: manual"), nil},
	})
}

// 95 to 105 N·m is 70.07 to 77.44 lbf·ft (1 lbf·ft = 1.3558179483314 N·m,
// NIST SP 811, 2008, appendix B.8).
func TestAlso(t *testing.T) {
	try(t, secondUnits, []trial{
		{block("torque", "fastener: pinion-nut\nlimits: 95 to 105 N·m\nalso: 70 to 77 lbf·ft\nsource: manual"), nil},
		{block("torque", "fastener: pinion-nut\nlimits: nut-torque\nalso: 70 to 77 lbf·ft"), nil},
		{block("torque", "fastener: pinion-nut\nlimits: 95 to 105 N·m\nalso: 80 to 90 lbf·ft\nsource: manual"), say("also-disagrees [80 to 90 lbf·ft]")},
		{block("torque", "fastener: pinion-nut\nvalue: 95 to 105 N·m\nalso: 80 to 90 lbf·ft\nsource: manual"), say("also-disagrees [80 to 90 lbf·ft]")},
		{block("measurement", "of: A\nlimits: lash\nalso: 0.5 to 0.6 in"), say("also-disagrees [0.5 to 0.6 in]")},
	})
}

func TestGauges(t *testing.T) {
	reading := func(gauge, limits string) string {
		return block("measurement", "of: A\ngauge: "+gauge+"\nlimits: "+limits+"\nsource: manual")
	}
	try(t, marks, []trial{
		{reading("dial-indicator", "0.15 to 0.25 mm"), nil},
		{reading("rule", "0.15 to 0.25 mm"), say("no-mark-in-limits [rule]")},
		{reading("dial-indicator", "9 to 11 mm"), say("gauge-range [dial-indicator]")},
		{reading("bore-gauge", "19 to 21 mm"), say("gauge-range [bore-gauge]")},
		{reading("dial-indicator", "max 0.05 mm"), nil},
	})
	// The limits' width is divided into 5 marks or more; under 2 is refused
	// (common practice).
	try(t, gauges, []trial{
		{reading("dial-indicator", "0.15 to 0.25 mm"), nil},
		{reading("calipers", "0.15 to 0.40 mm"), nil},
		{reading("calipers", "0.15 to 0.35 mm"), say("gauge-coarse [calipers]")},
		{reading("calipers", "0.15 to 0.24 mm"), say("gauge-too-coarse [calipers]")},
		{reading("bore-gauge", "22.00 to 22.16 mm"), nil},
		{reading("bore-gauge", "22.00 to 22.04 mm"), say("gauge-uncertain [bore-gauge]")},
		{block("measurement", "of: A\nlimits: lash"), say("gauge-missing [measurement]")},
		{reading("dial-indicator", "0.15 to 0.17 mm"), say("gauge-coarse [dial-indicator]")},     // 2 marks: worked by hand
		{reading("dial-indicator", "0.15 to 0.16 mm"), say("gauge-too-coarse [dial-indicator]")}, // 1 mark: likewise
		{reading("dial-indicator", "max 0.05 mm"), nil},                                          // counted from zero
		{reading("dial-indicator", "max 0.04 mm"), say("gauge-coarse [dial-indicator]")},
		{reading("dial-indicator", "max 0.01 mm"), say("gauge-too-coarse [dial-indicator]")},
		{reading("dial-indicator", "at least 0.03 mm"), nil}, // which has no ratio
		{reading("bore-gauge", "at least 22.03 mm"), nil},
		{reading("bore-gauge", "22.00 to 22.16 mm"), nil}, // 4 to 1
		{reading("bore-gauge", "22.000 to 22.159 mm"), say("gauge-uncertain [bore-gauge]")},
	})
}

// A gauge as the fix describes it gives no message, whatever the limits, the
// rule and the guard band.
func TestBetterGaugeDoes(t *testing.T) {
	r := rand.New(rand.NewPCG(10, 6))
	described := regexp.MustCompile(`(\S+ mm) graduations(?: and an uncertainty of at most (\S+ mm))?$`)
	for range 300 {
		rule := fmt.Sprintf("{warn: %d, error: %d, uncertainty-ratio: %d", 1+r.IntN(8), 1+r.IntN(4), 1+r.IntN(10))
		if r.IntN(2) == 0 {
			rule += fmt.Sprintf(", guard-band: %d.%d", r.IntN(3), 1+r.IntN(9))
		}
		low, width := r.IntN(400), 1+r.IntN(200)
		limits := fmt.Sprintf("0.%03d to 0.%03d mm", low, low+width)
		messages := func(gauge string) []diag.Diagnostic {
			shop := "shop: A\ngauge-rule: " + rule + "}\ngauges:\n  g: {" + gauge + "}\n"
			m := cardOf(t, shop, testFront+block("measurement", "of: A\ngauge: g\nlimits: "+limits+"\nsource: manual"), "early")
			list := &diag.List{}
			for _, rule := range []func(*pass){marks, gauges} {
				rule(&pass{Card: m.card, msgs: list})
			}
			return list.Sorted()
		}
		gauge := "resolution: 0.05 mm"
		if r.IntN(2) == 0 {
			gauge = fmt.Sprintf("resolution: 0.001 mm, uncertainty: 0.%03d mm", 1+r.IntN(100))
		}
		for round := 0; ; round++ {
			found := messages(gauge)
			if len(found) == 0 {
				break
			}
			if round == 2 {
				t.Fatalf("%s with %s: %s gives %q", limits, rule, gauge, found[0].Message)
			}
			m := described.FindStringSubmatch(found[0].Fix)
			if m == nil {
				t.Fatalf("%s with %s: %s", limits, rule, found[0].Fix)
			}
			gauge = "resolution: " + m[1]
			if m[2] != "" {
				gauge += ", uncertainty: " + m[2]
			}
		}
	}
}

// A capital is a hole, a small letter a shaft; words that name both, or neither,
// say nothing.
func TestCases(t *testing.T) {
	reading := func(of, limits string) string {
		return block("measurement", "of: "+of+"\ngauge: bore-gauge\nlimits: "+limits+"\nsource: manual")
	}
	try(t, toleranceCases, []trial{
		{reading("Bore of the housing", "52 H7"), nil},
		{reading("Bore of the housing", "52 h7"), say("tolerance-case [52 h7]")},
		{reading("Inside diameter", "⌀25 mm k6"), say("tolerance-case [⌀25 mm k6]")},
		{reading("Bearing journal", "25 K6"), say("tolerance-case [25 K6]")},
		{reading("Bearing journal", "25 k6"), nil},
		{reading("Bore for the shaft", "25 k6"), nil},
		{reading("Bearing seat", "25 K6"), nil},
		{reading("Borescope mark", "25 k6"), nil},
		{reading("Bore of the housing", "52.00 to 52.03 mm"), nil},
	})
}

// A shop has its own rule, and it holds in place of ours.
func TestGaugeRule(t *testing.T) {
	for _, c := range []struct{ rule, gauge, limits, want string }{
		{"{warn: 3, error: 1}", "dial-indicator", "0.15 to 0.18 mm", ""},
		{"{warn: 3, error: 1}", "dial-indicator", "0.15 to 0.16 mm", "gauge-coarse [dial-indicator]"},
		{"{warn: 10, error: 4}", "dial-indicator", "0.15 to 0.18 mm", "gauge-too-coarse [dial-indicator]"},
		{"{uncertainty-ratio: 10}", "bore-gauge", "22.00 to 22.39 mm", "gauge-uncertain [bore-gauge]"},
		{"{uncertainty-ratio: 10}", "bore-gauge", "22.00 to 22.40 mm", ""},
		{"{uncertainty-ratio: 2}", "bore-gauge", "22.00 to 22.08 mm", ""},
	} {
		m := cardOf(t, "gauge-rule: "+c.rule+"\n"+testShop, testFront+block("measurement", "of: A\ngauge: "+c.gauge+"\nlimits: "+c.limits+"\nsource: manual"), "early")
		if got := strings.Join(m.found(gauges), ", "); got != c.want {
			t.Errorf("%s: %s on the %s gives %q, want %q", c.rule, c.limits, c.gauge, got, c.want)
		}
	}
}

// The fix names the finest gauge of the shop that keeps every rule, else what
// to buy.
func TestBetterGauge(t *testing.T) {
	fine := "  fine: {name: Fine indicator, resolution: 0.002 mm, range: 0 to 1 mm}\n"
	sure := "  sure: {name: Checked indicator, resolution: 0.001 mm, range: 20 to 30 mm, uncertainty: 0.002 mm}\n"
	for _, c := range []struct{ head, gauges, gauge, limits, want string }{
		{"", fine, "dial-indicator", "0.15 to 0.17 mm", "write `gauge: fine`"},
		{"", fine, "rule", "0.15 to 0.17 mm", "write `gauge: fine`"},
		{"", fine, "dial-indicator", "1.15 to 1.17 mm", "no gauge in the shop will do: take one with 0.002 mm graduations"}, // out of its range
		{"", "", "dial-indicator", "0.15 to 0.17 mm", "no gauge in the shop will do: take one with 0.002 mm graduations"},
		{"gauge-rule: {warn: 2, error: 2}\n", "", "dial-indicator", "0.15 to 0.16 mm", "no gauge in the shop will do: take one with 0.005 mm graduations"},
		{"", "", "dial-indicator", "max 0.04 mm", "no gauge in the shop will do: take one with 0.005 mm graduations"},
		{"", sure, "bore-gauge", "22.00 to 22.04 mm", "write `gauge: sure`"},
		{"", "", "bore-gauge", "22.00 to 22.04 mm", "no gauge in the shop will do: take one with 0.005 mm graduations and an uncertainty of at most 0.005 mm"},
		{"gauge-rule: {guard-band: 1}\n", sure, "bore-gauge", "22.00 to 22.04 mm", "write `gauge: sure`"},
		{"", "", "rule", "at least 1000 mm", "no gauge in the shop will do"},
		{"", "", "dial-indicator", "9.0 to 11.0 mm", "write `gauge: calipers`"}, // out of its range
		{"", "", "rule", "290 to 310 mm", "name a gauge whose range holds the limits"},
		// A superseded one is no answer.
		{"", fine + "  old: {resolution: 0.001 mm, replaced-by: fine}\n", "dial-indicator", "0.15 to 0.17 mm", "write `gauge: fine`"},
	} {
		m := cardOf(t, c.head+testShop+c.gauges, testFront+block("measurement", "of: A\ngauge: "+c.gauge+"\nlimits: "+c.limits+"\nsource: manual"), "early")
		list := &diag.List{}
		for _, rule := range []func(*pass){marks, gauges} {
			rule(&pass{Card: m.card, msgs: list})
		}
		if list.Len() != 1 || list.Sorted()[0].Fix != c.want {
			t.Errorf("%s on the %s: %v, want %q", c.limits, c.gauge, list.Sorted(), c.want)
		}
	}
}

func TestReadings(t *testing.T) {
	spread := "of: A\ngauge: dial-indicator\nlimits: lash\nuse: each\nspread: max 0.05 mm"
	try(t, readings, []trial{
		{block("measurement", spread+"\nrecord: [a, b]"), nil},
		{block("measurement", spread+"\nrecord: [a]"), say("spread-alone [max 0.05 mm]")},
		{block("measurement", spread), say("spread-alone [max 0.05 mm]")},
		{block("measurement", strings.Replace(spread, "max 0.05 mm", "0.05 mm", 1)+"\nrecord: [a, b]"), say("spread-alone [0.05 mm]")},
		{block("measurement", "of: A\ngauge: dial-indicator\nlimits: lash"), nil},
	})
}

// The lowest of several readings says nothing of an upper limit.
func TestLowestReading(t *testing.T) {
	reading := func(limits, use string) string {
		return block("measurement", "of: A\ngauge: dial-indicator\nsource: manual\nrecord: [a, b]\nlimits: "+limits+"\nuse: "+use)
	}
	try(t, readings, []trial{
		{reading("max 0.05 mm", "lowest"), say("use-unsafe [lowest]")},
		{reading("max 0.05 mm", "each"), nil},
		{reading("at least 0.05 mm", "lowest"), nil},
		{reading("0.15 to 0.25 mm", "lowest"), nil},
	})
}

func TestBranches(t *testing.T) {
	lash := "of: A\ngauge: dial-indicator\nlimits: lash"
	one := func(limits string) string { return "of: A\ngauge: dial-indicator\nsource: manual\nlimits: " + limits }
	missing := say("branch-missing [measurement]")
	try(t, branches, []trial{
		{block("measurement", lash), missing},
		{block("measurement", lash+"\nif-low: Note it."), missing},
		{block("measurement", lash+"\nif-high: Note it."), missing},
		{block("measurement", lash+"\nif-low: Note it.\nif-high: Note it."), nil},
		{block("measurement", one("max 0.05 mm")), missing},
		{block("measurement", one("max 0.05 mm")+"\nif-high: Note it."), nil},
		{block("measurement", one("at least 1 mm")), missing},
		{block("measurement", one("at least 1 mm")+"\nif-low: Note it."), nil},
		{block("measurement", "of: A\nlimits: none\nbecause: a note\nexpect: 1 to 2 mm"), nil},
	})
}

func TestWrenches(t *testing.T) {
	torque := func(limits string) string {
		return block("torque", "fastener: pinion-nut\nsource: manual\nlimits: "+limits)
	}
	try(t, wrenches, []trial{
		{torque("95 to 105 N·m"), nil},
		{torque("1 to 2 N·m"), say("wrench-none [1 to 2 N·m]")},
		{torque("400 to 420 N·m"), say("wrench-none [400 to 420 N·m]")},
		{torque("99 to 101 N·m"), say("wrench-accuracy [99 to 101 N·m]")},   // ±4 % of 100 is ±4 N·m
		{torque("190 to 210 N·m"), say("wrench-accuracy [190 to 210 N·m]")}, // its accuracy is not known
		{torque("95 to 105 N·m") + torque("1 to 2 N·m"), say("wrench-none [1 to 2 N·m]")},
		{block("torque", "fastener: pinion-nut\nlimits: nut-torque\nwrench: tw-30"), say("wrench-none [tw-30]")},
	})
	two := block("torque", "fastener: pinion-nut\nlimits: nut-torque")
	if got := cardOf(t, "", testFront+two+two, "early").found(wrenches); !slices.Equal(got, say("no-wrench-list [torque]")) {
		t.Errorf("without a shop: %q", got)
	}
}

// A socket that is named beside a torque fits its fastener.
func TestSizes(t *testing.T) {
	step := func(fastener, tools string) string {
		return "### Step\n\n```tool\n" + tools + "\n```\n\n```torque\nfastener: " + fastener + "\nlimits: nut-torque\n```\n\n"
	}
	built := block("tool", "assemble: [socket-13, breaker-bar]\nas: long-bar")
	try(t, sizes, []trial{
		{step("cover-bolts", "use: socket-13"), nil},
		{step("cover-bolts", "use: socket-18"), say("tool-size [socket-18]")},
		{step("cover-bolts", "use: [socket-18, socket-13]"), nil},
		{step("cover-bolts", "use: breaker-bar"), nil},
		{step("cap-bolts", "use: socket-13"), say("tool-size [socket-13]")},
		{step("cap-bolts", "use: socket-half"), nil},
		{step("cap-bolts", "use: socket-127"), nil},                            // 1/2 in is 12.7 mm
		{step("plain-bolt", "use: socket-18"), nil},                            // its size is not known
		{step("cover-bolts", "hold-still: cover-bolts\nwith: socket-18"), nil}, // it holds another part
		{step("cover-bolts", "assemble: [socket-18, breaker-bar]\nas: long-bar"), say("tool-size [socket-18]")},
		{step("cover-bolts", "assemble: [socket-13, breaker-bar]\nas: long-bar"), nil},
		{built + step("cover-bolts", "use: [long-bar, socket-18]"), nil},
		{prose("Wipe it."), nil},
	})
}

// A torque says in which state its thread is.
func TestThreads(t *testing.T) {
	torque := "fastener: pinion-nut\nlimits: nut-torque"
	try(t, threads, []trial{
		{block("torque", torque), say("thread-missing [torque]")},
		{block("torque", torque+"\nthread: dry"), nil},
		{prose("Wipe it."), nil},
	})
}

// A right-hand thread is tightened clockwise, a left-hand one counterclockwise.
func TestDirections(t *testing.T) {
	step := func(text, fastener string) string {
		return "### Step\n\n" + text + "\n\n```torque\nfastener: " + fastener + "\nlimits: nut-torque\n```\n\n"
	}
	wrong := func(word string) []string { return say("direction-wrong [" + word + "]") }
	both := "### Step\n\nTurn it clockwise.\n\n```torque\nfastener: pinion-nut\nlimits: nut-torque\n```\n\n```torque\nfastener: ring\nlimits: nut-torque\n```\n\n"
	try(t, directions, []trial{
		{step("Turn it clockwise.", "pinion-nut"), nil},
		{step("Turn it anticlockwise.", "pinion-nut"), wrong("anticlockwise")},
		{step("Turn it anti-clockwise.", "pinion-nut"), wrong("anti-clockwise")},
		{step("Turn it Counterclockwise.", "pinion-nut"), wrong("Counterclockwise")},
		{step("Turn it clockwise.", "ring"), wrong("clockwise")},
		{step("Turn it anticlockwise.", "ring"), nil},
		{step("Turn it clockwise.", "plain-bolt"), nil}, // its hand is not known
		{prose("Turn it anticlockwise."), nil},          // nothing is tightened
		{step("Tighten it.", "pinion-nut"), nil},
		{both, nil},
		{both + step("Turn it anticlockwise.", "pinion-nut"), wrong("anticlockwise")}, // the next step is judged all the same
		{step("Loosen it a quarter turn anticlockwise. Tighten it again.", "pinion-nut"), nil},
		{step("Turn the hub anticlockwise while you tighten.", "pinion-nut"), nil},
		{step("Turn the pinion nut anticlockwise.", "pinion-nut"), wrong("anticlockwise")},
		{step("Turn the nut slowly anticlockwise.", "pinion-nut"), wrong("anticlockwise")},
		{step("Turn the hub. Then turn the nut anticlockwise.", "pinion-nut"), wrong("anticlockwise")},
		{step("Tighten the nut anticlockwise.", "pinion-nut"), wrong("anticlockwise")},
	})
}

func TestReasons(t *testing.T) {
	missing := say("why-missing [Step]")
	hold := "### Step\n\n```hold-point\nwho: shop lead\nsees: Nut staked\n```\n\n"
	lock := "### Step\n\n```torque\nfastener: pinion-nut\nlimits: nut-torque\nlock: stake it\n```\n\n"
	why := "> **Why** It cannot be taken back.\n\n"
	try(t, reasons, []trial{
		{hold, missing}, {hold + why, nil}, {lock, missing}, {lock + why, nil}, {prose("Wipe it."), nil},
		{block("torque", "fastener: pinion-nut\nlimits: nut-torque"), nil},
		{"### Step\n\n> **Tip** Go gently.\n\n```hold-point\nwho: shop lead\nsees: Nut staked\n```\n\n", missing},
	})
}

// An assembly of tools is there from the step that makes it to the one that
// takes it apart.
func TestAssemblies(t *testing.T) {
	build := block("tool", "assemble: [push-bridge, push-screw]\nas: pusher")
	use, apart := block("tool", "use: pusher"), block("tool", "take-apart: pusher")
	not, left := say("assembly-not-there [pusher]"), say("assembly-left [pusher]")
	try(t, assemblies, []trial{
		{build + use + apart, nil},
		{build + apart, nil},
		{build + use, left},
		{build + apart + use, not},
		{use + build + apart, not},
		{build + apart + apart, not},
		{build + apart + build + use + apart, nil},
		{build + block("tool", "hold-still: pinion-nut\nwith: pusher") + apart, nil},
		{block("tool", "hold-still: pinion-nut\nwith: pusher") + build + apart, not},
		{apart, not}, // nothing puts it together
		{block("tool", "use: breaker-bar"), nil},
		// put together in the late variant alone
		{block("tool", "assemble: [push-bridge, push-screw]\nas: pusher\nonly: late") + use + apart, append(not, not...)},
		// an assembly in an assembly
		{build + block("tool", "assemble: [pusher, breaker-bar]\nas: long-pusher") + block("tool", "take-apart: long-pusher") + apart, nil},
	})
}

func TestHazardWords(t *testing.T) {
	heat := "Play a torch over the race."
	caution := func(covers string) string {
		return "```caution\nlevel: danger\ncovers: [" + covers + "]\nhazard: It burns.\nresult: Burns.\navoid: Wear gloves.\n```\n\n"
	}
	m := cardOf(t, testShop, testFront+prose(heat), "early")
	got := m.found(coveredHazards)
	if len(got) != 1 || !strings.HasPrefix(got[0], "hazard-uncovered [") || !strings.Contains(got[0], "torch") {
		t.Errorf("%q gives %q", heat, got)
	}
	try(t, coveredHazards, []trial{
		{prose(heat) + caution("flame"), nil},
		{prose("Wipe it."), nil},
		{prose("> **Tip** " + heat), nil},
		{"### Step\n\nPull the breaker bar.\n\n```tool\nuse: breaker-bar\n```\n", nil}, // ours covers it
	})
	try(t, idleCovers, []trial{
		{prose(heat) + caution("flame"), nil},
		{prose("Wipe it.") + caution("flame"), say("covers-idle [flame]")},
		{"### Step\n\n```tool\nuse: breaker-bar\n```\n\n" + caution("bar"), nil},
		{"### Step\n\n```tool\nuse: breaker-bar\n```\n\n" + caution("bar, hot"), say("covers-idle [hot]")},
		{prose("Wipe it.") + strings.Replace(caution("x"), "covers: [x]\n", "", 1), nil},
	})
}

// Two symbols of a step that cannot both be obeyed are one message a step.
func TestContrarySymbols(t *testing.T) {
	own := func(symbols string) string {
		return "```caution\nlevel: warning\nsymbol: [" + symbols + "]\nhazard: It turns.\nresult: Cuts.\navoid: Keep clear.\n```\n\n"
	}
	no := "symbols-contradict [Step]"
	step := "### Step\n\n"
	try(t, contrarySymbols, []trial{
		{step + own("M009") + own("P028"), say(no)},
		{step + own("M009, P028"), say(no)},
		{step + own("P028, W001") + own("M004, M009") + own("M009"), say(no)},
		{step + own("M009") + own("M004"), nil},
		{step + own("M009") + step + own("P028"), nil},
		{step + own("M009, P028") + step + own("M009, P028"), say(no, no)},
	})
}

func TestSteps(t *testing.T) {
	for _, c := range []struct {
		steps string
		want  []string
	}{
		{"### A {#a}\n\nWipe it.\n\n### B {#b}\n\nWipe it.\n", nil},
		{"### A {#a}\n\nWipe it.\n\n### B {#a}\n\nWipe it.\n", say("step-id-twice [a]")},
		{"### A {#work}\n\nWipe it.\n\n## W {#work}\n\n### B\n\nWipe it.\n", say("step-id-twice [work]")},
		{"", say("steps-missing [Strip the drive]")},
		{"Only text.\n", say("steps-missing [Strip the drive]")},
		{"### A {only=late}\n\nWipe it.\n", nil}, // the other variant has it
	} {
		list := &diag.List{}
		early, late := cardOf(t, testShop, testFront+c.steps, "early"), cardOf(t, testShop, testFront+c.steps, "late")
		p := early.card.Procedure
		Procedure(p, []*card.Card{early.card, late.card}, early.lib, true, list)
		var got []string
		for _, d := range list.Sorted() {
			got = append(got, d.Slug+" ["+strings.TrimPrefix(d.At.Text(), "#")+"]")
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%q gives %q, want %q", c.steps, got, c.want)
		}
	}
}

// Cards that wait for each other are refused, however long the way around.
func TestOrder(t *testing.T) {
	for _, c := range []struct {
		after map[string]string
		want  int // cards that are told
	}{
		{map[string]string{"A": "", "B": "A", "C": "A B"}, 0},
		{map[string]string{"A": "A"}, 1},
		{map[string]string{"A": "B", "B": "A"}, 2},
		{map[string]string{"A": "B", "B": "C", "C": "A", "D": "A"}, 3},
		{map[string]string{"A": "X"}, 0},
	} {
		lib := &card.Library{}
		for _, n := range []string{"A", "B", "C", "D"} {
			if after, ok := c.after[n]; ok {
				p := &procedure.Procedure{Number: procedure.Named{Name: n}}
				for _, a := range strings.Fields(after) {
					p.After = append(p.After, procedure.Named{Name: a})
				}
				lib.Procedures = append(lib.Procedures, p)
			}
		}
		told := 0
		for _, p := range lib.Procedures {
			list := &diag.List{}
			order(p, lib, list)
			told += list.Len()
		}
		if told != c.want {
			t.Errorf("%v: %d cards are told, want %d", c.after, told, c.want)
		}
	}
}
