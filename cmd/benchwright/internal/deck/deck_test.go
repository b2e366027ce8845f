package deck

import (
	"os"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/render"
)

const (
	testShop = `shop: Fallow Lane Drive Works
hazard-rules: {bar: "Shop rule 9, bars"}
tools:
  breaker-bar: {name: Breaker bar, hazards: [bar]}
  socket-13: {name: Socket 13, place: rack A, across-flats: 13 mm}
  socket-half: {name: Socket 1/2 in, across-flats: 1/2 in}
  socket-127: {name: Socket 12.7, across-flats: 12.7 mm}
wrenches:
  tw-30: {name: Click wrench 30, range: 6 to 30 N·m, marks: 0.5 N·m, accuracy: 4 %, length: 260 mm}
  tw-120: {name: Click wrench 120, range: 40 to 120 N·m, marks: 1 N·m, accuracy: 4 %, length: 400 mm}
gauges:
  dial-indicator: {name: Dial indicator, resolution: 0.01 mm, range: 0 to 10 mm}
  lever: {name: Lever indicator, resolution: 0.02 mm, range: 0 to 10 mm, zero: anywhere}
  spring-scale: {name: Spring scale, resolution: 0.1 kgf, range: 0 to 10 kgf}
`
	testUnit = `unit: md-48
title: MD-48 right-angle drive
fasteners:
  cover-bolts: {name: Cover bolts, thread: M8, across-flats: 13 mm}
  pan-bolts: {name: Pan bolts, thread: M8, count: 6, pattern: rectangle}
  cap-bolts: {name: Cap bolts, thread: 5/16-18 UNC, across-flats: 1/2 in}
limits:
  cover-torque: {band: 20 to 24 N·m, source: manual}
`
	testFront = "---\ncard: MD48-20\ntitle: Strip the drive\nunit: md-48\nrevision: A\ndate: 2026-10-02\n---\n\n## Work\n\n"
)

// deckOf builds the deck of steps.
func deckOf(t *testing.T, steps string) *Deck {
	t.Helper()
	return Build(cardIn(t, steps), nil)
}

// cardIn returns the card of some steps, which have no message.
func cardIn(t *testing.T, steps string) *card.Card {
	t.Helper()
	msgs := &diag.List{}
	s := shop.Read(syntax.ReadTree(source.NewFile("shop.yaml", []byte(testShop)), msgs), msgs)
	u := unit.Read(syntax.ReadTree(source.NewFile("unit.yaml", []byte(testUnit)), msgs), quantity.Point, msgs)
	reader := procedure.Reader{Mark: quantity.Point, Msgs: msgs}
	p := reader.Read(syntax.ReadDoc(source.NewFile("strip.md", []byte(testFront+steps)), msgs))
	lib := &card.Library{Procedures: []*procedure.Procedure{p},
		Picture: func(*source.File, string) (string, []byte, error) { return "", nil, os.ErrNotExist }}
	c := card.Make(p, u, s, nil, lib, msgs)
	if msgs.Len() > 0 {
		t.Fatal(msgs.Sorted()[0].Message)
	}
	return c
}

func words(runs []render.Run) string {
	var b strings.Builder
	for _, r := range runs {
		b.WriteString(r.Text)
	}
	return strings.ReplaceAll(b.String(), nbsp, " ")
}

// toolNames lists the tools of each step.
func toolNames(d *Deck) []string {
	var out []string
	for _, s := range d.Sections {
		for _, g := range s.Groups {
			for _, e := range g.Elements {
				if tools, ok := e.Content.(render.Tools); ok {
					var names []string
					for _, r := range tools.Rows {
						names = append(names, strings.ReplaceAll(strings.TrimSpace(r.Name+" "+r.Note), nbsp, " "))
					}
					out = append(out, strings.Join(names, ", "))
				}
			}
		}
	}
	return out
}

// A size is named beside a torque where no tool of the step has it: a socket
// in hand says it already.
func TestSizeBesideItsSocket(t *testing.T) {
	const (
		cover = "```torque\nfastener: cover-bolts\nlimits: cover-torque\n```\n\n"
		inch  = "```torque\nfastener: cap-bolts\nlimits: cover-torque\n```\n\n"
	)
	use := func(yaml string) string { return "```tool\n" + yaml + "\n```\n\n" }
	for _, c := range []struct{ steps, want string }{
		{"### A\n\n" + cover, "13 mm socket or wrench"},
		{"### A\n\n" + use("use: socket-13") + cover, "Socket 13"},
		{"### A\n\n" + cover + use("use: socket-13"), "Socket 13"},
		{"### A\n\n" + use("use: breaker-bar") + cover, "Breaker bar, 13 mm socket or wrench"},
		{"### A\n\n" + use("use: socket-13") + inch, "Socket 13, 1/2 in socket or wrench"},
		{"### A\n\n" + use("use: socket-half") + inch, "Socket 1/2 in"},
		{"### A\n\n" + use("use: socket-127") + inch, "Socket 12.7"}, // 1/2 in is 12.7 mm
		{"### A\n\n" + use("hold-still: cover-bolts\nwith: socket-13") + cover,
			"Socket 13 on cover bolts, 13 mm socket or wrench"}, // it is not free
		{"### A\n\n" + use("assemble: [socket-13, breaker-bar]\nas: long-bar") + cover, "Socket 13, Breaker bar = Long bar"},
	} {
		d := deckOf(t, c.steps)
		if got := strings.Join(toolNames(d), "; "); got != c.want {
			t.Errorf("%q: %q, want %q", c.steps, got, c.want)
		}
	}
	// The step that uses what an earlier one put together, too.
	d := deckOf(t, "### A\n\n"+use("assemble: [socket-13, breaker-bar]\nas: long-bar")+"### B\n\n"+use("use: long-bar")+cover)
	if got := toolNames(d); len(got) != 2 || got[1] != "Long bar" {
		t.Errorf("%q", got)
	}
}

// The lay-out page gives the shop's own rule beside the hazard.
func TestShopRule(t *testing.T) {
	d := deckOf(t, "### A\n\n```tool\nuse: breaker-bar\n```\n")
	for _, e := range d.Sections[0].Groups[0].Elements {
		if h, ok := e.Content.(render.Hazards); ok {
			if got := words(h.Rows[0].Text); len(h.Rows) != 1 || !strings.HasSuffix(got, " (Shop rule 9, bars)") {
				t.Errorf("%q", got)
			}
			return
		}
	}
	t.Error("the lay-out page has no hazards")
}

// What a list has nothing of, it says: silence could be an oversight.
func TestListOrNone(t *testing.T) {
	d := deckOf(t, "### A\n\nWipe it.\n")
	seen := map[string]bool{}
	for _, e := range d.Sections[0].Groups[0].Elements {
		switch c := e.Content.(type) {
		case render.Listing:
			seen[c.Title] = len(c.Rows) == 0 && c.None == wordNone
		case render.Hazards:
			seen[c.Title] = len(c.Rows) == 0 && c.None == wordNone
		}
	}
	for _, title := range []string{wordHazards, wordConditions, wordTools, wordParts, wordConsumables, wordStops} {
		if !seen[title] {
			t.Errorf("%s does not say %s", title, wordNone)
		}
	}
}

// A list of steps is short and in order.
func TestStepLists(t *testing.T) {
	for _, c := range []struct {
		steps []int
		want  string
	}{
		{nil, ""}, {[]int{0}, ""}, {[]int{3}, "step 3"}, {[]int{3, 3}, "step 3"}, {[]int{4, 3}, "steps 3, 4"},
		{[]int{3, 7, 8, 9}, "steps 3, 7–9"}, {[]int{1, 2, 4, 5, 6, 9}, "steps 1, 2, 4–6, 9"},
	} {
		if got := strings.ReplaceAll(steps(c.steps), nbsp, " "); got != c.want {
			t.Errorf("%v: %q, want %q", c.steps, got, c.want)
		}
	}
}

// A value and its unit are never parted.
func TestBind(t *testing.T) {
	for text, want := range map[string]string{
		"Heat to 80 °C now": "Heat to 80\u00a0°C now", "0.15 to 0.25 mm.": "0.15 to 0.25\u00a0mm.", "two mm": "two mm",
		"step 3 is dry": "step 3 is dry", "1/2 in socket": "1/2\u00a0in socket", "": "", "(±5 N·m)": "(±5\u00a0N·m)",
	} {
		if got := bind(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// What the card's own words tell to take stands on the lay-out page, and gloves
// are named by what they must stand.
func TestImplied(t *testing.T) {
	b := newBuilder(&card.Card{Procedure: &procedure.Procedure{Consumables: []procedure.Named{{Name: "Paint pen, white"}}}, Stages: []*card.Stage{{Steps: []*card.Step{
		{Number: 3, Items: []card.Item{&card.Torque{Torque: &procedure.Torque{ThenTurn: &quantity.Band{}}, Fastener: &unit.Fastener{Pattern: "circle"}, Order: []int{1, 2}}}},
		{Number: 4, Items: []card.Item{&card.Timed{Timed: &procedure.Timed{Within: &quantity.Value{}}}}, Callouts: []*card.Callout{{Symbols: []string{"M009"}, IDs: []string{"sharp"}}}},
		{Number: 5, Callouts: []*card.Callout{{Symbols: []string{"W017", "M009"}, IDs: []string{"hot"}}}},
	}}}})
	b.buildItems()
	consumables, tools := b.implied()
	said := func(rows [][][]render.Run) string {
		var out []string
		for _, row := range rows {
			for _, cell := range row {
				out = append(out, words(cell))
			}
		}
		return strings.Join(out, "|")
	}
	if got := said(consumables) + ";" + strings.Join(tools, "|"); got != "Chalk;Clock" {
		t.Errorf("%q", got)
	}
	if got := said(b.wear().Rows); got != "Gloves|Heat-proof gloves" {
		t.Errorf("%q", got)
	}
}

// What is whole and says nothing is a fault of ours, and so is what no face
// knows.
func TestSilence(t *testing.T) {
	empty := &card.Tool{Tool: &procedure.Tool{}, Lines: []card.ToolLine{{}}}
	for what, c := range map[string]struct {
		item   card.Item
		panics bool
	}{
		"whole and silent": {empty, true},
		"not whole":        {&card.Tool{Tool: &procedure.Tool{}}, false},
		"none":             {nil, true},
	} {
		func() {
			defer func() {
				if got := recover() != nil; got != c.panics {
					t.Errorf("%s: panics %v", what, got)
				}
			}()
			newBuilder(&card.Card{Procedure: &procedure.Procedure{}}).build(c.item, nil)
		}()
	}
}

// The lay-out page lists what warns, never what to wear: a hazard without a
// triangle has the general one. What parts two names never begins a line.
func TestSetOutSigns(t *testing.T) {
	for codes, want := range map[string]string{"M004": "W001", "W017 M009": "W017", "W089 P028 M021": "W089"} {
		if got := strings.Join(triangles(strings.Fields(codes)), " "); got != want {
			t.Errorf("%s: %s, want %s", codes, got, want)
		}
	}
	if !strings.HasPrefix(wordApart, nbsp) {
		t.Errorf("%q may begin a line", wordApart)
	}
}
