package deck

import (
	"strings"
	"testing"

	"benchwright/render"
)

// A step names a gauge and a wrench once, before it is needed: on the line of
// tools where words stand before the panel, else in the panel. Of several the
// panel says which.
func TestNamedOnce(t *testing.T) {
	const (
		torque = "```torque\nfastener: cover-bolts\nlimits: cover-torque\n```\n\n"
		other  = "```torque\nfastener: cap-bolts\nlimits: 76 to 84 N·m\nsource: manual\n```\n\n"
		gap    = "```measurement\nof: Gap\nlimits: 0.10 to 0.20 mm\nsource: manual\ngauge: dial-indicator\nif-low: Note it.\nif-high: Note it.\n```\n\n"
		pull   = "```measurement\nof: Pull\nlimits: 2 to 4 kgf\nsource: manual\ngauge: spring-scale\nif-low: Note it.\nif-high: Note it.\n```\n\n"
		use    = "```tool\nuse: socket-13\n```\n\n"
	)
	for _, c := range []struct{ items, want string }{
		{gap, "Gap: Take Dial indicator"},
		{"Push it in.\n\n" + gap, "Take Dial indicator; Gap:"},
		{gap + "Push it in.\n\n" + gap, "Gap: Take Dial indicator; Gap:"},
		{"Push it in.\n\n" + gap + pull, "Take Dial indicator, Take Spring scale; Gap: On the dial indicator; Pull: On the spring scale"},
		{gap + pull, "Gap: Take Dial indicator; Pull: Take Spring scale"},
		{use + torque, "Take Socket 13; Cover bolts, M8: Take Click wrench 30"},
		{use + "Oil the thread.\n\n" + torque, "Take Socket 13, Take Click wrench 30; Cover bolts, M8:"},
		{use + torque + gap, "Take Socket 13; Cover bolts, M8: Take Click wrench 30; Gap: Take Dial indicator"},
		{"Oil it.\n\n" + use + torque + other, "Take Socket 13, Take Click wrench 30, Take 1/2 in socket or wrench, Take Click wrench 120; Cover bolts, M8: On the click wrench 30; Cap bolts, 5/16-18 UNC: On the click wrench 120"},
	} {
		var got []string
		name := func(rows []render.ToolRow) string {
			var out []string
			for _, r := range rows {
				out = append(out, r.Verb+" "+r.Name)
			}
			return strings.Join(out, ", ")
		}
		for _, e := range deckOf(t, "### A\n\n"+c.items).Sections[1].Groups[1].Elements {
			switch c := e.Content.(type) {
			case render.Tools:
				got = append(got, name(c.Rows))
			case render.Reading:
				got = append(got, strings.TrimSpace(words(c.Title)+": "+name(c.Tools)))
			case render.Setting:
				got = append(got, strings.TrimSpace(words(c.Title)+": "+name(c.Tools)))
			}
		}
		if got := strings.ReplaceAll(strings.Join(got, "; "), nbsp, " "); got != c.want {
			t.Errorf("%q:\n%s\nwant\n%s", c.items, got, c.want)
		}
	}
}
