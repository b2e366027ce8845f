package deck

import (
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/render"
)

// panels returns the settings and orders of a deck.
func panels(d *Deck) (settings []render.Setting, orders []render.Order) {
	for _, s := range d.Sections {
		for _, g := range s.Groups {
			for _, e := range g.Elements {
				switch c := e.Content.(type) {
				case render.Setting:
					settings = append(settings, c)
				case render.Order:
					orders = append(orders, c)
				}
			}
		}
	}
	return settings, orders
}

func joined(lines [][]render.Run) string {
	var out []string
	for _, l := range lines {
		out = append(out, words(l))
	}
	return strings.Join(out, " | ")
}

// What the hands do stands in their order; the large figure is what is set, and
// what reaches the fastener stands below it.
func TestTorqueFaces(t *testing.T) {
	const torque = "### Step\n\n```torque\nfastener: cover-bolts\nlimits: cover-torque\n"
	const reading = "### Pull {#pull}\n\n```measurement\nof: Pull\nlimits: cover-torque\n```\n"
	for _, c := range []struct{ yaml, value, source, lines, actions string }{
		{"```\n", "22.0", "manual: 20 to 24 N·m (manual)", "", ""},
		{"while: turning the hub.\n```\n", "22.0", "manual: 20 to 24 N·m (manual)", "Tighten while turning the hub.", ""},
		{"lock: stake it\n```\n", "22.0", "manual: 20 to 24 N·m (manual)", "", "Tighten to the setting. | Lock it: stake it."},
		{"adapter: {tool: socket-13, length: 52 mm}\n```\n", "18.5", "22.2 N·m at the fastener; manual: 20 to 24 N·m (manual)",
			"With the socket 13, in line with the wrench. | Pull at the center of the grip.", ""},
		{"adapter: {tool: socket-13, length: 52 mm, angle: 90°}\n```\n", "22.0", "22.0 N·m at the fastener; manual: 20 to 24 N·m (manual)",
			"With the socket 13, at 90° to the wrench. | Pull at the center of the grip.", ""},
		{"adapter: {tool: socket-13, length: 52 mm, angle: 180°}\n```\n", "27.5", "22.0 N·m at the fastener; manual: 20 to 24 N·m (manual)",
			"With the socket 13, pointing back along the wrench. | Pull at the center of the grip.", ""},
		{"then-turn: 60°\nalign: tighten only\n```\n", "22.0", "manual: 20 to 24 N·m (manual)", "",
			"Tighten to the setting. | Paint a line across it. Turn it on by 60° (one flat of a hexagon). | Tighten until a slot lines up. Never loosen."},
		{"back-off: 30°\n```\n", "22.0", "manual: 20 to 24 N·m (manual)", "",
			"Tighten to the setting. | Back it off counterclockwise by 30° (half a flat of a hexagon)."},
		{"until: pull\n```\n" + reading, "22.0", "manual: 20 to 24 N·m (manual)", "",
			"Tighten to the setting. | Turn it on a little at a time. After each time take the reading of step 2. | Stop at 20 to 24 N·m. Never turn back. Above this, take it apart and fit a new sleeve."},
	} {
		settings, orders := panels(deckOf(t, torque+c.yaml))
		if len(settings) != 1 || len(orders) != 0 {
			t.Errorf("%q: %d panels, %d orders", c.yaml, len(settings), len(orders))
			continue
		}
		s := settings[0]
		got := strings.Join([]string{s.Value, words(s.Source), joined(s.Lines), joined(s.Actions)}, "\n")
		if want := strings.Join([]string{c.value, c.source, c.lines, c.actions}, "\n"); got != want {
			t.Errorf("%q says\n%s\nwant\n%s", c.yaml, got, want)
		}
	}
}

// A fastener that is tightened again has two panels, whose actions count on.
func TestTorqueAgain(t *testing.T) {
	settings, _ := panels(deckOf(t, "### Step\n\n```torque\nfastener: cover-bolts\nlimits: cover-torque\nback-off: until loose\nagain: 8 to 12 N·m\nsource: m\nrecord: [a, b]\n```\n"))
	if len(settings) != 2 || settings[0].Value != "22.0" || settings[1].Value != "10.0" || settings[1].First != 3 || settings[0].Boxes != nil || len(settings[1].Boxes) != 2 {
		t.Fatalf("%+v", settings)
	}
	if got := joined(settings[0].Actions) + " | " + joined(settings[1].Actions); got != "Tighten to the setting. | Back it off counterclockwise until it is loose. | Tighten again to this setting." {
		t.Error(got)
	}
}

// Passes are marks of the wrench; the figure has at each place its number in the
// order.
func TestPassesAndOrder(t *testing.T) {
	settings, orders := panels(deckOf(t, "### Step\n\n```torque\nfastener: pan-bolts\nlimits: cover-torque\npasses: [30 %, 70 %, 100 %]\norder: [2, 5, 1, 4, 3, 6]\n```\n"))
	if len(settings) != 1 || len(orders) != 1 {
		t.Fatalf("%d panels, %d orders", len(settings), len(orders))
	}
	var passes []string
	for _, p := range settings[0].Passes {
		passes = append(passes, strings.ReplaceAll(p.Label, nbsp, " ")+" "+p.Value)
	}
	if got := strings.Join(passes, ", "); got != "Pass 1 6.5, Pass 2 15.5, Pass 3 22.0, Once around 22.0" {
		t.Error(got)
	}
	if o := orders[0]; !slices.Equal(o.Numbers, []int{3, 1, 5, 4, 2, 6}) || o.Shape != render.Rectangle || words(settings[0].Actions[0]) != wordTightenPass+"." {
		t.Errorf("%+v", o)
	}
}

// The arrow shows tightening: where the step also loosens it says so, and the
// action that loosens goes the other way, by the hand of the thread.
func TestArrow(t *testing.T) {
	for _, c := range []struct{ hand, from, yaml, seen, action string }{
		{"right", "", "", "seen from the bolt head", ""},
		{"right", "input end", "back-off: until loose\n", "to tighten, seen from input end", "Back it off counterclockwise until it is loose."},
		{"left", "input end", "back-off: until loose\n", "to tighten, seen from input end", "Back it off clockwise until it is loose."},
		{"left", "", "align: loosen only\n", "to tighten, seen from the bolt head", "Loosen clockwise until a slot lines up. Never tighten."},
		{"right", "", "align: tighten only\n", "seen from the bolt head", "Tighten until a slot lines up. Never loosen."},
	} {
		f := &unit.Fastener{Name: "Nut", Hand: unit.Hand(c.hand), SeenFrom: c.from}
		item := &card.Torque{Torque: &procedure.Torque{}, Fastener: f}
		switch {
		case strings.HasPrefix(c.yaml, "back-off"):
			item.BackOff = &procedure.BackOff{}
		case strings.HasPrefix(c.yaml, "align: loosen"):
			item.Align = procedure.LoosenOnly
		case c.yaml != "":
			item.Align = procedure.TightenOnly
		}
		b := newBuilder(&card.Card{Procedure: &procedure.Procedure{}})
		s := b.torque(item)[0].Content.(render.Setting)
		if got := joined(append(s.Lines, s.Actions...)); s.SeenFrom != c.seen || !strings.HasSuffix(got, c.action) {
			t.Errorf("%+v: %q, %q", c, s.SeenFrom, got)
		}
	}
}
