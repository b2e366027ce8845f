package card

import (
	"fmt"
	"os"
	"slices"
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
	factless := []string{"witness", "timed", "caution", "figure"} // they name nothing there, or a picture
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
		if c, messages := cardOf(t, shopFacts, unitFacts, text, ""); kind != "figure" && c.Lacking() != nil {
			t.Errorf("%s: a %T is not whole: %q", kind, c.Lacking(), messages)
		}
		if slices.Contains(factless, kind) {
			continue
		}
		c, messages := cardOf(t, shop, unit, text, "")
		if !lacks(c, kind) {
			t.Errorf("%s: it is whole though its facts are gone: %q", kind, messages)
		}
		if i := c.Lacking(); i == nil {
			t.Errorf("%s: nothing is said to be lacking", kind)
		}
	}
	for kind, step := range map[string]string{
		"timed":   block("timed", "within: 200 h\nfrom: it is on\nif-missed: Begin again."),
		"figure":  block("figure", "image: figures/none.png\nalt: a hole"),
		"picture": "![A hole](figures/none.png)\n",
	} {
		c, messages := stepsOf(t, "### A\n\n"+step)
		if c.Lacking() == nil || len(messages) != 1 {
			t.Errorf("%s: it is whole: %q", kind, messages)
		}
	}
}

// lacks says whether a block of that type is not whole.
func lacks(c *Card, kind string) bool {
	typed := "*card." + strings.ToUpper(kind[:1]) + strings.ReplaceAll(kind[1:], "-t", "T")
	for _, s := range c.Steps() {
		for _, i := range s.Items {
			if fmt.Sprintf("%T", i) == typed && !c.Whole(i) {
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
		if _, ok := c.Lacking().(*Picture); !ok {
			t.Errorf("%q: %T %q", text, c.Lacking(), messages)
		}
	}
}
