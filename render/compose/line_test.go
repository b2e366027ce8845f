package compose

import (
	"math/rand/v2"
	"strings"
	"testing"

	"benchwright/render"
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

func bench() *Compositor {
	c := &Compositor{Style: NewStyle(sheet.Papers[0], 0, false), Say: render.Words{}.WithDefaults()}
	c.Column = 128000
	c.Width, c.Tallest = c.Column, 150000
	return c
}

// text returns the text of a paragraph, line by line.
func (p Para) text() []string {
	var all []string
	for _, line := range p.Lines {
		var b strings.Builder
		for _, s := range line {
			b.WriteString(s.Text)
		}
		all = append(all, b.String())
	}
	return all
}

func TestWhereLinesBreak(t *testing.T) {
	for _, c := range []struct {
		runs []render.Run
		want []string // at the narrowest
	}{
		{Says("one two"), []string{"one", "two"}},
		{Says("  one \t\n two  "), []string{"one", "two"}},
		{Says("100\u00a0N·m and 0.15 to 0.25\u202fmm"), []string{"100\u00a0N·m", "and", "0.15", "to", "0.25\u00a0mm"}},
		{Says("right-angle drive MD-48"), []string{"right-", "angle", "drive", "MD-48"}},
		{Says("−5 to 0.15–0.25"), []string{"−5", "to", "0.15–0.25"}},
		{Says("open—or closed; clean/dry; 1/2"), []string{"open—", "or", "closed;", "clean/", "dry;", "1/2"}},
		{[]render.Run{{Text: "the "}, {Text: "lug-socket-four", Code: true}, {Text: ", now"}}, []string{"the", "lug-socket-four,", "now"}},
		{[]render.Run{{Text: "bold"}, {Text: "er", Weight: render.Bold}, {Text: " text"}}, []string{"bolder", "text"}},
		{Says("⌀ 25"), []string{"Ø", "25"}},
		{nil, nil},
		{Says("   "), nil},
	} {
		comp := bench()
		widest, _ := comp.Extent(c.runs, comp.Text)
		got := comp.Set(c.runs, comp.Text, widest, 0).text()
		// Short words share a line even at the narrowest: break them all.
		var words []string
		for _, w := range comp.parse(c.runs, typeface.Regular) {
			words = append(words, w.String())
		}
		if strings.Join(words, "|") != strings.Join(c.want, "|") {
			t.Errorf("%v breaks into %q, want %q", c.runs, words, c.want)
		}
		joined := strings.ReplaceAll(strings.Join(got, ""), " ", "")
		if want := strings.ReplaceAll(strings.Join(c.want, ""), " ", ""); joined != want {
			t.Errorf("%v is set as %q", c.runs, got)
		}
		if len(comp.Problems) > 0 {
			t.Errorf("%v: %v", c.runs, comp.Problems)
		}
	}
}

// Whatever the text and the measure, no line is wider than the measure,
// nothing is lost, and a no-break space never stands at an end.
func TestSetLosesNothing(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	parts := []string{"a", "nut", "housing", "right-angle", "0.15\u00a0to\u00a00.25\u00a0mm", "100\u00a0N·m", "retainer,", "—", "seen", "W"}
	for range 2000 {
		var runs []render.Run
		var want strings.Builder
		for range 1 + rnd.IntN(12) {
			run := render.Run{Text: parts[rnd.IntN(len(parts))], Weight: render.Weight(rnd.IntN(3)), Code: rnd.IntN(8) == 0}
			if rnd.IntN(4) > 0 {
				run.Text += " "
			}
			runs = append(runs, run)
			want.WriteString(run.Text)
		}
		c := bench()
		width := 20000 + rnd.IntN(100000)
		p := c.Set(runs, c.Text, width, rnd.IntN(2)*5000)
		squeeze := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		if got := squeeze(strings.Join(p.text(), "")); got != squeeze(want.String()) {
			t.Fatalf("%q became %q", want.String(), p.text())
		}
		for i, line := range p.Lines {
			if len(line) == 0 {
				continue
			}
			if end := line[len(line)-1].x + line[len(line)-1].W; end > width+1 {
				t.Fatalf("a line of %q ends at %d of %d", p.text(), end, width)
			}
			text := p.text()[i]
			if text != strings.Trim(text, "\u00a0 ") && len(c.Problems) == 0 {
				t.Fatalf("a line begins or ends with a space: %q", text)
			}
			for j := 1; j < len(line); j++ {
				if line[j].x < line[j-1].x+line[j-1].W {
					t.Fatalf("spans overlap in %q", text)
				}
			}
		}
	}
}

func TestAWordWiderThanTheMeasure(t *testing.T) {
	c := bench()
	c.Ref = 7
	word := strings.Repeat("ab", 60)
	p := c.Set(Says("see "+word+" there"), c.Text, 50000, 0)
	if got := strings.Join(p.text(), ""); strings.Count(got, "ab") != 60 {
		t.Errorf("letters are lost: %q", p.text())
	}
	if want := (render.Problem{Kind: render.WordTooWide, Ref: 7, Text: word}); len(c.Problems) != 1 || c.Problems[0] != want {
		t.Errorf("problems %+v, want one, %+v", c.Problems, want)
	}
}

func TestMissingGlyphsAreReportedOnceAndLeftOut(t *testing.T) {
	c := bench()
	c.Ref = 3
	p := c.Set(Says("a⌁b⌁ \U0001F527 中"), c.Text, 50000, 0)
	if got := strings.Join(p.text(), "|"); got != "ab" {
		t.Errorf("set as %q", got)
	}
	want := []render.Problem{{Kind: render.MissingGlyph, Ref: 3, Text: "⌁"}, {Kind: render.MissingGlyph, Ref: 3, Text: "\U0001F527"}, {Kind: render.MissingGlyph, Ref: 3, Text: "中"}}
	if len(c.Problems) != 3 || c.Problems[0] != want[0] || c.Problems[1] != want[1] || c.Problems[2] != want[2] {
		t.Errorf("problems %+v, want %+v", c.Problems, want)
	}
}

// Copied text keeps the space between two looks.
func TestSpacesBetweenLooks(t *testing.T) {
	c := bench()
	runs := []render.Run{{Text: "set"}, {Text: " "}, {Text: "ft-lb", Code: true}, {Text: " on "}, {Text: "step 7", Link: "x"}, {Text: " now"}}
	p := c.Set(runs, c.Text, 120000, 0)
	if got := strings.Join(p.text(), "|"); got != "set ft-lb on step 7 now" {
		t.Errorf("set as %q", got)
	}
	for _, s := range p.Lines[0] {
		if !s.plain() && s.Text != strings.TrimSpace(s.Text) {
			t.Errorf("%q carries the space", s.Text)
		}
		if got := typeface.Width(s.Font, c.Text.Size, s.Text); got-s.W > 1 || s.W-got > 1 {
			t.Errorf("%q is %d wide, measured %d", s.Text, got, s.W)
		}
	}
}

func TestBalancedTitles(t *testing.T) {
	c := bench()
	runs := Says("Wipe the housing and look for leaks all round it")
	width := c.Set(runs, c.Style.Title, 500000, 0).Width
	p := c.Balanced(runs, c.Style.Title, width-2000)
	if len(p.Lines) != 2 || p.Width > width*2/3 {
		t.Errorf("set as %q, %d of %d", p.text(), p.Width, width)
	}
}
