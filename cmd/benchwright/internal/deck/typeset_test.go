package deck

import (
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/render"
)

// Quotation marks are curved, across runs too; inch and foot marks are not.
func TestQuotes(t *testing.T) {
	for text, want := range map[string]string{
		`the tag "P".`: "the tag “P”.", `a finger's width`: "a finger’s width", `a 1/2" bolt, 3' long`: `a 1/2" bolt, 3' long`,
		`"tray 1" and "tray 2"`: "“tray 1” and “tray 2”", `the 'old' one`: "the ‘old’ one", `("S")`: "(“S”)", "plain": "plain", "": "",
	} {
		if got := typeset(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	got := runs([]syntax.Run{{Text: `Turn to "`}, {Text: "S", Style: syntax.Strong}, {Text: `". Not "`}, {Text: "a'", Style: syntax.Code}, {Text: `".`}})
	if s := words(got); s != "Turn to “S”. Not “a'”." {
		t.Errorf("%q", s)
	}
}

// Names keep their numbers, sources theirs, titles their articles.
func TestBound(t *testing.T) {
	shown := func(s string) string { return strings.ReplaceAll(s, nbsp, "_") }
	for name, want := range map[string]string{
		"Socket 24": "Socket_24", "Click wrench 120": "Click wrench_120", "Micrometer 25 to 50": "Micrometer_25_to_50",
		"Socket 1-1/8 in": "Socket_1-1/8_in", "Set-up pack 1.00 mm (P)": "Set-up_pack_1.00_mm_(P)", "13 mm socket": "13_mm_socket", "Four-lug socket": "Four\u2011lug_socket", "Brass drift": "Brass drift",
	} {
		if got := shown(bindName(name)); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
	for source, want := range map[string]string{
		"workshop manual issue 3, table 4-2": "workshop manual issue_3, table_4-2", "(manual, page 36)": "(manual, page_36)",
		"figure 4-6; chapter 4.": "figure_4-6; chapter_4.", "pages 12 to 15": "pages_12 to 15", "on the page": "on the page",
	} {
		if got := shown(bind(source)); got != want {
			t.Errorf("%q: %q, want %q", source, got, want)
		}
	}
	if got := shown(bindTitle([]render.Run{{Text: "Set the hub on a stand"}})[0].Text); got != "Set the_hub on a_stand" {
		t.Errorf("%q", got)
	}
}

// A name inside a line loses its capital, but not a symbol: D is another bore than d.
func TestLower(t *testing.T) {
	for name, want := range map[string]string{
		"Pinion nut": "pinion nut", "D": "D", "D of the bore": "D of the bore", "A bolt": "a bolt", "O-ring": "O-ring", "M8 bolts": "M8 bolts", "NPT plug": "NPT plug", "": "",
	} {
		if got := lower(name); got != want {
			t.Errorf("%q becomes %q, want %q", name, got, want)
		}
	}
}
