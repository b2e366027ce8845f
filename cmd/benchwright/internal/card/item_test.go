package card

import (
	"os"
	"strings"
	"testing"
)

// The example of each block in procedures/README.md is whole with the facts of
// its shop and its unit, and is not without them, which is what a card that
// lacks something is known by.
func TestWhole(t *testing.T) {
	page, err := os.ReadFile("../../../../procedures/README.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, section := range strings.Split(string(page), "\n## ")[1:] {
		kind, _, _ := strings.Cut(section, "\n")
		shop, unit := "benchwright: 1\nshop: A\n", "unit: winch\ntitle: Winch head\n"
		shopFacts, unitFacts, steps := shop, unit, ""
		for i, fence := range strings.Split(section, "\n```") {
			if facts, ok := strings.CutPrefix(fence, "yaml\n# shop.yaml\n"); ok && i > 0 {
				shopFacts += facts + "\n"
			}
			if facts, ok := strings.CutPrefix(fence, "yaml\n# unit.yaml\n"); ok && i > 0 {
				unitFacts += facts + "\n"
			}
		}
		if _, rest, ok := strings.Cut(section, "````markdown\n"); ok {
			steps, _, _ = strings.Cut(rest, "\n````")
		}
		text := testFront + "\n## Work\n\n" + steps + "\n"
		if c, messages := cardOf(t, shopFacts, unitFacts, text, ""); c.FirstIncomplete() != nil {
			t.Errorf("%s: a %T is not whole: %q", kind, c.FirstIncomplete(), messages)
		}
		if shopFacts == shop && unitFacts == unit {
			continue // it names nothing there
		}
		c, messages := cardOf(t, shop, unit, text, "")
		if !lacks(c, kind) {
			t.Errorf("%s: it is whole though its facts are gone: %q", kind, messages)
		}
		if i := c.FirstIncomplete(); i == nil {
			t.Errorf("%s: nothing is said to be lacking", kind)
		}
	}
	const gauges = "benchwright: 1\nshop: A\ngauges:\n  can: {name: Oil can, range: 0 to 2 L, resolution: 0.02 L}\n" +
		"  gauge: {name: Gauge, range: 0 to 60 kPa, resolution: 0.2 kPa}\n  probe: {name: Probe, range: 0 to 50 °C, resolution: 1 °C}\n"
	for _, c := range []struct {
		step     string
		messages int // a rule reports the others
	}{
		{block("timed", "within: 200 h\nfrom: it is on\nif-missed: Begin again."), 1},
		{block("figure", "image: figures/none.png\nalt: a hole"), 1},
		{"![A hole](figures/none.png)\n", 1},
		{block("fill", "fluid: gear oil\nquantity: 18 to 20 L\nsource: manual\ninto: the hole\nmeasure: can"), 0}, // ten times
		{block("leak-test", "of: Case\npressure: 35 kPa gauge\nfluid: air\nhold: 10 min\nallowed: 2 kPa\nreferred-to: start\ntemperature: 15 to 25 °C\n"+
			"gauge: gauge\nthermometer: probe\nsource: manual\nif-leak: Find it."), 0}, // in no atmosphere
	} {
		got, messages := cardOf(t, gauges, testUnit, testFront+"\n## Work\n\n### A\n\n"+c.step, "")
		if got.FirstIncomplete() == nil || len(messages) != c.messages {
			t.Errorf("%s is whole: %q", c.step, messages)
		}
	}
}

// lacks reports whether a block of a type is not whole. The type is what stands
// at the block's place.
func lacks(c *Card, kind string) bool {
	for _, s := range c.Steps() {
		for _, i := range s.Items {
			if i.Place().Text() == kind && !c.Complete(i) {
				return true
			}
		}
	}
	return false
}

// Every item of a step is asked, and those before the first step.
func TestLackingLooksEverywhere(t *testing.T) {
	const gone = "![A hole](figures/none.png)\n\n"
	for _, text := range []string{
		gone + "## Work\n\n### A\n\nWipe it.\n",
		"## Work\n\n" + gone + "### A\n\nWipe it.\n",
		"## Work\n\n### A\n\nWipe it.\n\n### B\n\n" + gone,
	} {
		c, messages := cardOf(t, testShop, testUnit, testFront+"\n"+text, "")
		if _, ok := c.FirstIncomplete().(*Picture); !ok {
			t.Errorf("%q: %T %q", text, c.FirstIncomplete(), messages)
		}
	}
}
