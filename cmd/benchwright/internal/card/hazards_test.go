package card

import (
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/hazard"
)

const (
	useBar     = "```tool\nuse: breaker-bar\n```\n\n"
	useDrift   = "```tool\nuse: brass-drift\n```\n\n"
	ownBar     = "```caution\nlevel: warning\ncovers: [bar]\nhazard: The bar slips.\nresult: Crushed knuckles.\navoid: Lean on it.\n```\n\n"
	ownOther   = "```caution\nlevel: warning\nhazard: The case tips.\nresult: A crushed foot.\navoid: Hold it.\n```\n\n"
	ownNotice  = "```caution\nlevel: notice\nhazard: The seal tears.\navoid: Oil it.\n```\n\n"
	otherStage = "## More\n\n"
)

// Within a stage the first callout of a hazard is printed in full and later
// ones short; a new stage begins anew; a writer's own takes the place of ours.
func TestCallouts(t *testing.T) {
	for _, c := range []struct {
		name, steps string
		want        []string
	}{
		{"none", "### A\n\n", []string{""}},
		{"full, then short", "### A\n\n" + useBar + "### B\n\n" + useBar + "### C\n\n" + useBar, []string{"bar full", "bar short", "bar short"}},
		{"each hazard by itself", "### A\n\n" + useBar + "### B\n\n" + useDrift + useBar, []string{"bar full", "strike full, bar short"}},
		{"a stage begins anew", "### A\n\n" + useBar + otherStage + "### B\n\n" + useBar, []string{"bar full", "bar full"}},
		{"two tools of one hazard", "### A\n\n```tool\nuse: [breaker-bar, lug-socket]\n```\n", []string{"bar full"}},
		{"written takes its place", "### A\n\n" + useBar + ownBar, []string{"bar written"}},
		{"written covers its own step alone", "### A\n\n" + useBar + ownBar + "### B\n\n" + useBar, []string{"bar written", "bar full"}},
		{"written covers nothing", "### A\n\n" + useBar + ownOther, []string{" written, bar full"}},
		{"the gravest first", "### A\n\n" + ownNotice + useBar + ownOther, []string{" written, bar full,  written"}},
		{"a wrench has hazards", "### A\n\n" + block("torque", "fastener: pinion-nut\nwrench: tw-250\nlimits: nut-torque"), []string{"bar full"}},
		{"a gauge has hazards", "### A\n\n" + block("measurement", "of: Heat\ngauge: probe\nlimits: max 75 °C\nsource: manual"), []string{"hot full"}},
		{"an assembly has its tools' hazards",
			"### A\n\n```tool\nassemble: [push-bridge, push-screw]\nas: pusher\n```\n\n### B\n\n```tool\nuse: pusher\n```\n\n### C\n\n```tool\ntake-apart: pusher\n```\n",
			[]string{"press full", "press short", "press short"}},
		{"an assembly of an assembly",
			"### A\n\n```tool\nassemble: [lug-socket, breaker-bar]\nas: long-arm\n```\n\n### B\n\n```tool\nassemble: [long-arm, push-screw]\nas: rig-up\n```\n\n" + otherStage + "### C\n\n```tool\nuse: rig-up\n```\n",
			[]string{"bar full", "press full, bar short", "bar full, press full"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, messages := stepsOf(t, c.steps)
			clean(t, messages)
			var have []string
			for _, s := range got.Steps() {
				have = append(have, short(s))
			}
			for i := range have { // equals in weight stand in either order
				if sorted(have[i]) != sorted(c.want[i]) {
					t.Errorf("step %d: %q, want %q", i+1, have[i], c.want[i])
				}
			}
			if len(have) != len(c.want) {
				t.Errorf("%d steps", len(have))
			}
			for _, s := range got.Steps() {
				if !slices.IsSortedFunc(s.Callouts, func(a, b *Callout) int { return int(b.Signal) - int(a.Signal) }) {
					t.Errorf("step %d: the gravest does not stand first", s.Number)
				}
			}
		})
	}
}

// A writer's callout is read in full once a stage: the next with the same words is
// short, one that says anything else is not, nor the first of the next stage.
func TestWrittenAgain(t *testing.T) {
	other := strings.Replace(ownBar, "Lean on it.", "Pull it.", 1)
	got, messages := stepsOf(t, "### A\n\n"+useBar+ownBar+"### B\n\n"+useBar+ownBar+"### C\n\n"+useBar+other+otherStage+"### D\n\n"+useBar+ownBar)
	clean(t, messages)
	var have []bool
	for _, s := range got.Steps() {
		have = append(have, s.Callouts[0].Short)
	}
	if want := []bool{false, true, false, false}; !slices.Equal(have, want) {
		t.Errorf("short %v, want %v", have, want)
	}
}

func sorted(s string) string {
	parts := strings.Split(s, ", ")
	slices.Sort(parts)
	return strings.Join(parts, ", ")
}

// A callout says no weaker word than a hazard that it covers calls for; a
// stronger one may stand.
func TestWeakerWords(t *testing.T) {
	for _, id := range hazard.IDs() {
		h, _ := hazard.Find(id)
		for s := hazard.Notice; s <= hazard.Danger; s++ {
			own := block("caution", "level: "+s.String()+"\ncovers: ["+h.ID+"]\nhazard: It slips.\nresult: Cuts.\navoid: Hold it.")
			_, messages := stepsOf(t, "### A\n\n"+own)
			if weaker := s < h.Signal; weaker != (len(messages) == 1) || weaker && !strings.HasPrefix(messages[0], "caution-weaker: ") {
				t.Errorf("%s for %s: %q", s, h.ID, messages)
			}
		}
	}
}

// A callout has the symbols of what it covers, the writer's where there are
// some, the general one for a hazard to people, and none for the work's alone.
func TestSymbols(t *testing.T) {
	for _, c := range []struct{ yaml, want, slug string }{
		{"level: warning\ncovers: [bar]", "hazard", ""},
		{"level: warning\ncovers: [bar]\nsymbol: [M009]", "M009", ""},
		{"level: caution", "W001", ""},
		{"level: notice", "", ""},
		{"level: caution\nsymbol: [W999]", "W001", "symbol-unknown"},
		{"level: caution\ncovers: [barr]", "W001", "hazard-unknown"},
	} {
		got, messages := stepsOf(t, "### A\n\n"+block("caution", c.yaml+"\nhazard: It slips.\nresult: Cuts.\navoid: Hold it."))
		want := c.want
		if want == "hazard" {
			h, _ := hazard.Find("bar")
			want = strings.Join(h.Symbols, " ")
		}
		slug, _, _ := strings.Cut(strings.Join(messages, "\n"), ":")
		if have := strings.Join(got.Steps()[0].Callouts[0].Symbols, " "); have != want || slug != c.slug || len(messages) > 1 {
			t.Errorf("%q has %q, want %q; messages %q", c.yaml, have, want, messages)
		}
	}
}

// The lay-out page has one line a hazard with its steps, the gravest first,
// and the shop's own rule where it has one.
func TestHazardSummary(t *testing.T) {
	got, messages := stepsOf(t, "### A\n\n"+useBar+"### B\n\n"+ownNotice+"```tool\nuse: push-screw\n```\n\n### C\n\n"+useBar+ownOther)
	clean(t, messages)
	bar, _ := hazard.Find("bar")
	press, _ := hazard.Find("press")
	type line struct {
		text, rule string
		steps      []int
	}
	want := []line{{press.Name, "Shop rule 4, press work", []int{2}}, {"The case tips.", "", []int{3}}, {bar.Name, "", []int{1, 3}}}
	if len(got.Hazards) != len(want) {
		t.Fatalf("%d lines: %v", len(got.Hazards), got.Hazards)
	}
	for _, w := range want {
		if !slices.ContainsFunc(got.Hazards, func(h HazardUse) bool {
			return h.Text == w.text && h.Rule == w.rule && slices.Equal(h.Steps, w.steps)
		}) {
			t.Errorf("no line %v in %v", w, got.Hazards)
		}
	}
	if !slices.IsSortedFunc(got.Hazards, func(a, b HazardUse) int { return int(b.Signal) - int(a.Signal) }) {
		t.Error("the gravest does not stand first")
	}
}
