package check

import (
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

func TestTwoActions(t *testing.T) {
	two := func(word string) []string { return say("prose-two-actions [" + word + "]") }
	var trials []trial
	for _, c := range []struct {
		text string
		want []string
	}{
		{"Remove the nut and pull the flange off.", two("pull")},
		{"Remove the nut, then pull the flange off.", two("pull")},
		{"Remove the nut and bolt the plate on.", two("bolt")},
		{"Scrap the seal and look at the lip.", two("look")},
		{"Look at the lip and scrap the seal.", two("scrap")},
		{"Remove the nut and press the race out.", two("press")},
		{"Lift it off, and wipe.", two("wipe")},
		{"If the lip is torn, remove the seal and fit a new one.", two("fit")},
		{"Clean the seat and oil both lips.", two("oil")},
		{"Loosen the nut and mark its place.", two("mark")},
		// one action
		{"Put flange, key and bolt in tray 2.", nil},
		{"Put the flange and bolt in tray 2.", nil},
		{"Take the grease, oil, and paint.", nil},
		{"Put rags and scrap in the bin.", nil},
		{"Put the seal and file on the bench.", nil},
		{"Remove the plug and drain pan.", nil}, // a tool's name
		{"Keep grease and oil from the disc.", nil},
		{"Wipe the seat dry and free of oil.", nil},
		{"Wipe the seat clean and dry.", nil},
		{"Turn the hub and tighten the nut at the same time.", nil},
		{"Turn the hub and pull the cord while the scale moves.", nil},
		{"Remove the nut. Pull the flange off.", nil},
		{"Take the bolts and the washers off.", nil},
		{"The nut is loose and turns.", nil}, // no instruction
	} {
		trials = append(trials, trial{prose(c.text), c.want})
	}
	try(t, twoActions, trials)
}

func TestLateConditions(t *testing.T) {
	late := func(word string) []string { return say("prose-condition-late [" + word + "]") }
	var trials []trial
	for _, c := range []struct {
		text string
		want []string
	}{
		{"Stop the rig if it knocks.", late("if")},
		{"Close the valve when the needle moves.", late("when")},
		{"Renew the seal unless it is new.", late("unless")},
		{"If it knocks, stop the rig.", nil},
		{"When the needle moves, close the valve.", nil},
		{"Check if the lip is torn.", nil}, // a question
		{"Turn it until it stops.", nil},
		{"The rig stops if it knocks.", nil}, // no instruction
		{"Keep on.", nil},
	} {
		trials = append(trials, trial{prose(c.text), c.want})
	}
	try(t, lateConditions, trials)
}

func TestVagueWords(t *testing.T) {
	vague := func(word string) []string { return say("prose-vague [" + word + "]") }
	var trials []trial
	for _, c := range []struct {
		text string
		want []string
	}{
		{"Heat the race sufficiently.", vague("sufficiently")},
		{"Add oil as required.", vague("as required")},
		{"Tighten it Firmly.", vague("Firmly")},
		{"Turn it approximately once.", vague("approximately")},
		{"Turn it slowly, at 5 rpm.", nil},             // with a number
		{"Turn it slowly until the scale moves.", nil}, // with a sign
		{"Insufficiently heated races crack.", nil},    // another word
		{"Wipe it dry.", nil},
	} {
		trials = append(trials, trial{prose(c.text), c.want})
	}
	try(t, vagueWords, trials)
}

// An instruction has at most 20 words; one more is marked at the 21st.
func TestLongSentences(t *testing.T) {
	words := func(n int) string { return "Wipe " + strings.Repeat("a ", n-2) + "end" }
	try(t, longSentences, []trial{
		{prose(words(20) + "."), nil},
		{prose(words(21) + "."), say("prose-long [end]")},
		{prose(words(20) + ": " + words(20) + "."), nil},
		{prose(words(20) + " — " + words(20) + "."), nil},
		{prose(words(20) + "; " + words(20) + "."), nil},
		{prose("- " + words(21) + "\n- " + words(20)), say("prose-long [end]")},
		{prose("- a\n  - " + words(21)), say("prose-long [end]")},
		{"### " + words(21) + "\n\n", say("prose-long [end]")},
		{prose("> **Tip** " + words(40)), nil}, // no instruction
		{prose("> **Why** " + words(40)), nil},
		{prose("| a |\n|---|\n| " + words(40) + " |"), nil},
	})
}

// Counting: a number with its unit, an identifier, a hyphenated group and a
// name of parts or tools are one word each.
func TestWords(t *testing.T) {
	m := cardOf(t, testShop, testFront+prose("x"), "early")
	p := &pass{Card: m.card}
	for _, c := range []struct {
		text string
		want string
	}{
		{"Turn it 12 mm.", "turn it 12_mm"},
		{"Set 95 to 105 N·m here", "set 95 to 105_n·m here"},
		{"Heat to 80 °C, then wait", "heat to 80_°c then wait"},
		{"a right-angle drive", "a right-angle drive"},
		{"the MD-48 (early)", "the md-48 early"},
		{"fit the pinion nut now", "fit the pinion_nut now"},
		{"fit the Pinion head race", "fit the pinion_head_race"},
		{"fit the pinion nuts", "fit the pinion nuts"}, // another word
		{"use the breaker bar.", "use the breaker_bar"},
		{"", ""},
		{"… !", ""},
	} {
		var got []string
		for _, s := range sentences(text{text: c.text}, p.names()) {
			for _, w := range s.words {
				got = append(got, strings.ReplaceAll(strings.Trim(strings.ToLower(c.text[w.from:w.to]), ".,()"), " ", "_"))
			}
		}
		if have := strings.Join(got, " "); have != c.want {
			t.Errorf("%q: %q, want %q", c.text, have, c.want)
		}
	}
}

// A sentence ends at a mark with a blank behind it, not at a mark inside a
// number or a name.
func TestSentences(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"Lift it. Wipe it.", []string{"Lift it", "Wipe it"}},
		{"Read 0.15 mm. Note it: now", []string{"Read 0.15 mm", "Note it", "now"}},
		{"Lift it — slowly – now", []string{"Lift it", "slowly", "now"}},
		{"See table 4-2.", []string{"See table 4-2"}},
		{"Is it dry? Wipe it!", []string{"Is it dry", "Wipe it"}},
		{"...", nil},
	} {
		var got []string
		for _, s := range sentences(text{text: c.text}, nil) {
			got = append(got, c.text[s.from:s.to])
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

// A place in a text that emphasis divides is the place in the file; where
// escapes make that inexact it is the run.
func TestPlace(t *testing.T) {
	file := source.NewFile("a.md", []byte("Wipe **the** fl\\*ange"))
	at := func(s string) source.Span {
		i := strings.Index(string(file.Text), s)
		return source.Span{Start: i, End: i + len(s)}
	}
	x := textOf([]syntax.Run{{Text: "Wipe ", Span: at("Wipe ")}, {Text: "the", Span: at("the")}, {Text: " fl*ange", Span: at(" fl\\*ange")}}, file)
	for _, c := range []struct{ text, want string }{
		{"Wipe", "Wipe"}, {"the", "the"}, {"Wipe the", "Wipe **the"}, {"fl*ange", " fl\\*ange"},
	} {
		i := strings.Index(x.text, c.text)
		if got := x.place(i, i+len(c.text)).Text(); got != c.want {
			t.Errorf("%q stands at %q, want %q", c.text, got, c.want)
		}
	}
}
