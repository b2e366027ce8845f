package compile

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/compare"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/workspace"
)

// One edit of the starter's files, what it reports, and in which class.
func TestSides(t *testing.T) {
	const starter = "../cli/starter"
	for _, c := range []struct {
		name          string
		file          string
		before, after string
		want          []string // each is in the report; none means no change
	}{
		{"a limit, from unit.yaml", "unit.yaml", "60 ±5 N·m", "70 ±5 N·m",
			[]string{"(feed-roller/unit.yaml)", "step 2,", "safety   set: 60 N·m → 70 N·m (17 % more)"}},
		{"the same limit in other words", "unit.yaml", "60 ±5 N·m", "55 to 65 N·m", nil},
		{"the same limit in another unit", "unit.yaml", "0.05 to 0.15 mm", "50 to 150 µm", nil},
		{"a band wider", "unit.yaml", "0.05 to 0.15 mm", "0.02 to 0.18 mm", []string{"step 1,", "step 3,", "safety   accept: 0.05 to 0.15 mm → 0.02 to 0.18 mm (wider)"}},
		{"a source", "unit.yaml", "60 ±5 N·m, source: example", "60 ±5 N·m, source: letter 3", []string{"safety   limits and source"}},
		{"a hand of thread", "unit.yaml", "hand: right", "hand: left", []string{"safety   direction: clockwise → counterclockwise"}},
		{"a thread condition", "end-play.md", "thread: dry", "thread: oiled", []string{"safety   condition:"}},
		{"a hazard of a tool, from shop.yaml", "shop.yaml", ", hazards: [bar]", "", []string{"(shop.yaml)", "safety   caution removed: WARNING", "safety   hazard: WARNING: Bars and holders"}},
		{"a tool's place", "shop.yaml", "place: drawer 1", "place: drawer 7", []string{"method   tool: ", "drawer 1 → ", "lay-out page"}},
		{"a branch", "end-play.md", "The bearings are worn.", "The bearings are new.", []string{"safety   above the limits"}},
		{"prose", "end-play.md", "Screw the new nut on by hand.", "Screw the nut on by hand.", []string{"0 safety, 0 method, 1 wording"}},
		{"a number in prose", "end-play.md", "Screw the new nut on by hand.", "Screw the new nut on by 3 mm.", []string{"safety   text"}},
		{"a rename", "end-play.md", "### Measure the end play once more", "### Take the end play again", []string{"step 3, Take the end play again", "0 safety, 1 method, 0 wording", "step renamed"}},
		{"an id keeps a step", "end-play.md", "### Tighten the new end nut {#end-nut}", "### Make the nut fast {#end-nut}", []string{"0 safety, 1 method, 0 wording", "step renamed"}},
		{"a step more", "end-play.md", "### Tighten the new", "### Wipe the shaft end\n\nWipe it.\n\n### Tighten the new",
			[]string{"method   step added: Wipe the shaft end", "0 safety, 1 method, 0 wording"}},
		{"how far the reader stands", "shop.yaml", "\ntools:", "\nreading-distance: 700 mm\n\ntools:",
			[]string{"method   reading distance: as usual for the page → 700 mm", "print again: FR-10 all ", "1 card changed: 0 safety, 1 method, 0 wording\nprint"}},
		{"the paper", "shop.yaml", "paper: A5", "paper: A4", []string{"method   page size: A5 → A4", "1 card changed: 0 safety, 1 method, 0 wording"}},
		{"what a callout says first", "shop.yaml", "\ntools:", "\ncallout-order: avoid-first\n\ntools:", []string{"wording  callouts say first: the hazard → how to avoid it"}},
		{"a line ending", "end-play.md", "\n", "\r\n", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			if err := os.CopyFS(dir, os.DirFS(starter)); err != nil {
				t.Fatal(err)
			}
			old := side(t, dir)
			name := filepath.Join(dir, c.file)
			if c.file != "shop.yaml" {
				name = filepath.Join(dir, "feed-roller", c.file)
			}
			text, err := os.ReadFile(name)
			if err != nil || !bytes.Contains(text, []byte(c.before)) {
				t.Fatalf("%s has no %q (%v)", c.file, c.before, err)
			}
			if err := os.WriteFile(name, bytes.ReplaceAll(text, []byte(c.before), []byte(c.after)), 0o666); err != nil {
				t.Fatal(err)
			}
			report(t, compare.Sides(old, side(t, dir)), c.want)
		})
	}
}

// A step that goes to another place is one move; a card that does not compile is
// said to, and so is one that is gone.
func TestSidesMove(t *testing.T) {
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../cli/starter")); err != nil {
		t.Fatal(err)
	}
	old := side(t, dir)
	name := filepath.Join(dir, "feed-roller/end-play.md")
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	at := strings.Index(string(text), "### Measure the end play once more")
	first := strings.Index(string(text), "### Tighten the new end nut")
	turned := string(text[:first]) + string(text[at:]) + "\n" + string(text[first:at])
	if err := os.WriteFile(name, []byte(turned), 0o666); err != nil {
		t.Fatal(err)
	}
	report(t, compare.Sides(old, side(t, dir)), []string{"step moved", "1 safety, 0 method, 0 wording"})
	if err := os.WriteFile(name, []byte(strings.Replace(string(text), "date: 2026-01-05\n", "date: 2026-01-05\nno-such: 1\n", 1)), 0o666); err != nil {
		t.Fatal(err)
	}
	r := compare.Sides(old, side(t, dir))
	report(t, r, []string{"the new side has 1 error and prints no card; it is compared as far as it can be read. feed-roller/end-play.md:7:1"})
	if len(r.Unsure()) != 1 {
		t.Error("a card that does not compile counts as compared")
	}
	if err := os.Remove(name); err != nil {
		t.Fatal(err)
	}
	report(t, compare.Sides(old, side(t, dir)), []string{"safety   card removed", "take off the bench: FR-10"})
}

func side(t testing.TB, dir string) []compare.Procedure {
	t.Helper()
	msgs := &diag.List{}
	spaces, err := workspace.Load(dir, []string{"."}, nil, msgs)
	if err != nil {
		t.Fatal(err)
	}
	return Resolve(spaces[0], msgs)
}

func report(t *testing.T, r *compare.Report, want []string) {
	t.Helper()
	var b bytes.Buffer
	if err := r.WriteText(&b, false); err != nil {
		t.Fatal(err)
	}
	if want == nil {
		want = []string{"no change in what the cards say"}
	}
	for _, line := range want {
		if !strings.Contains(b.String(), line) {
			t.Errorf("the report lacks %q:\n%s", line, b.String())
		}
	}
}
