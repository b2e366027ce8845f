package compile

import (
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

// The pairs that manuals print, at every place where `also:` may stand: each
// gives its verdict there and once.
func TestAlsoEverywhere(t *testing.T) {
	for _, c := range []struct{ first, second, want, source string }{
		{"475 ±50 N·m", "350 ±37 lbf·ft", "", "US Army TM 5-3805-260-24 p. 3-243"},
		{"0.2 to 0.5 N·m", "2 to 4 lbf·in", "", "the same"},
		{"0.20 to 0.42 mm", ".008 to .017 in", "", "the same"},
		{"15 to 25 lbf·in", "1.7 to 2.8 N·m", "", "TM 5-2420-230-24-1"},
		{"0.006 to 0.007 in", "0.15 to 0.18 mm", "", "TM 10-3930-669-34 p. 10-29"},
		{"25 to 35 lbf·in", "3 to 4 N·m", "", "TM 9-2320-289-34 p. 6-119"},
		{"5 to 15 lbf·in", "1 to 2 N·m", "also-wider", "the same page"},
		{"max 0.005 in", "max 0.12 mm", "also-disagrees", "TM 9-2320-280-34 p. 19-12, as a maximum"},
		{"max 8 lbf·ft", "max 1.08 N·m", "also-disagrees", "made up: a lost digit"},
		{"8 lbf·ft", "1.08 N·m", "also-disagrees", "the same, bare"},
		{"52 H7", "2.0472 to 2.0484 in", "", "made up: the exact conversion, rounded"},
		{"52 H7", "2.047 to 2.050 in", "also-disagrees", "made up"},
	} {
		first, _ := quantity.ParseBand(c.first, quantity.Point)
		torque := strings.Contains(c.first, "N·m") || strings.Contains(c.first, "lbf")
		block := func(limits string) string {
			if torque {
				return "```torque\nfastener: pinion-nut\nthread: dry\n" + limits + "\n```\n"
			}
			return "```measurement\nof: Gap\ngauge: dial-indicator\nif-low: Note it.\nif-high: Note it.\n" + limits + "\n```\n"
		}
		pair := c.first + ", also: " + c.second
		lines := c.first + "\nalso: " + c.second
		for name, s := range map[string]sample{
			"band":       {"unit.yaml": "limits:\n  x: {band: " + pair + ", source: m}\n"},
			"by-variant": {"unit.yaml": "limits:\n  x: {source: m, by-variant: {late: {band: " + pair + "}}}\n"},
			"in place":   {"step": block("limits: " + lines + "\nsource: m")},
			"by name":    {"unit.yaml": "limits:\n  x: {band: " + c.first + ", source: m}\n", "step": block("limits: x\nalso: " + c.second)},
			"of a variant": {"unit.yaml": "limits:\n  x: {source: m, by-variant: {early: {band: " + c.first + "}, late: {band: " + c.first + "}}}\n",
				"step": block("limits: x\nalso: " + c.second)},
			"value": {"step": block("value: " + lines + "\nsource: m")},
		} {
			if name == "value" && !torque || name != "value" && first.Form == quantity.Bare {
				continue // a bare value stands nowhere else
			}
			var got []string
			for _, d := range messages(t, write(t, s.files(t)), Options{}) {
				if strings.HasPrefix(d.Slug, "also-") {
					got = append(got, d.Slug)
				}
			}
			var want []string
			if c.want != "" {
				want = []string{c.want}
			}
			if !slices.Equal(got, want) {
				t.Errorf("%s with %s (%s), %s: %q, want %q", c.first, c.second, c.source, name, got, want)
			}
		}
	}
}
