package syntax

import (
	"fmt"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

func readGoodDoc(t *testing.T, text []byte) *Doc {
	t.Helper()
	var msgs diag.List
	doc := ReadDoc(source.NewFile("f.md", text), &msgs)
	if msgs.Len() > 0 || doc == nil {
		t.Fatalf("messages: %s", reports(&msgs))
	}
	return doc
}

// A sheet writes a Doc line by line, each thing with the source it is read
// from in [ ].
type sheet struct {
	f *source.File
	strings.Builder
}

func (s *sheet) at(span source.Span) string {
	return strings.ReplaceAll(strings.ReplaceAll(source.Place{File: s.f, Span: span}.Text(), "\r", ""), "\n", "⏎")
}

func (s *sheet) runs(indent string, runs []Run) {
	for _, r := range runs {
		fmt.Fprintf(s, "%s%s %q [%s]", indent, []string{"plain", "strong", "emphasis", "code"}[r.Style], r.Text, s.at(r.Span))
		if r.Link != "" {
			fmt.Fprintf(s, " to %s [%s]", r.Link, s.at(r.LinkSpan))
		}
		if r.LineBreak {
			s.WriteString(" break")
		}
		s.WriteString("\n")
	}
}

func (s *sheet) heading(what string, h Heading) {
	fmt.Fprintf(s, "%s %q [%s]", what, h.Text, s.at(h.Span))
	if h.ID != "" {
		fmt.Fprintf(s, " id %s [%s]", h.ID, s.at(h.IDSpan))
	}
	if h.Only != nil {
		fmt.Fprintf(s, " only %v [%s]", h.Only, s.at(h.OnlySpan))
	}
	s.WriteString("\n")
}

func (s *sheet) list(indent string, l *List) {
	fmt.Fprintf(s, "%slist ordered=%v [%s]\n", indent, l.Ordered, s.at(l.Span))
	for _, i := range l.Items {
		fmt.Fprintf(s, "%s item [%s]\n", indent, s.at(i.Span))
		s.runs(indent+"  ", i.Runs)
		if i.Sub != nil {
			s.list(indent+"  ", i.Sub)
		}
	}
}

func (s *sheet) content(content []Content) {
	for _, c := range content {
		switch c := c.(type) {
		case *Paragraph:
			fmt.Fprintf(s, " paragraph [%s]\n", s.at(c.Span))
			s.runs("  ", c.Runs)
		case *List:
			s.list(" ", c)
		case *Note:
			fmt.Fprintf(s, " note %d [%s]\n", c.Kind, s.at(c.Span))
			s.runs("  ", c.Runs)
		case *Picture:
			fmt.Fprintf(s, " picture %s [%s] %q %q [%s]\n", c.Path, s.at(c.PathSpan), c.Alt, c.Title, s.at(c.Span))
		case *Block:
			fmt.Fprintf(s, " block %s [%s] [%s]\n", c.Type, s.at(c.TypeSpan), s.at(c.Span))
			for _, f := range c.Tree.Root.Fields {
				fmt.Fprintf(s, "  %s [%s] = %q [%s]\n", f.Key, s.at(f.KeySpan), f.Value.Text, s.at(f.Value.Span))
			}
		case *Table:
			fmt.Fprintf(s, " table %v [%s]\n", c.Align, s.at(c.Span))
			for _, row := range append([][]Cell{c.Head}, c.Rows...) {
				for _, cell := range row {
					fmt.Fprintf(s, "  cell [%s]\n", s.at(cell.Span))
					s.runs("   ", cell.Runs)
				}
			}
		}
	}
}

func writeDoc(doc *Doc) string {
	s := &sheet{f: doc.File}
	for _, f := range doc.Front.Root.Fields {
		fmt.Fprintf(s, "%s [%s] = %q [%s]\n", f.Key, s.at(f.KeySpan), f.Value.Text, s.at(f.Value.Span))
	}
	s.content(doc.Lead)
	for _, stage := range doc.Stages {
		s.heading("stage", stage.Heading)
		s.content(stage.Content)
		for _, step := range stage.Steps {
			s.heading("step", step.Heading)
			s.content(step.Content)
		}
	}
	return s.String()
}

const spansDoc = `---
card: MD48-20
title: Strip — 5 µm
---
Lead — text.

## As found — µ {only=late}

Stage °.

### Measure *the* µ ## {#lash-found only="early late"}

Paint **four µ** at 5&nbsp;° on ` + "`the  output`" + ` — see [step \*x\*](#lash-found "t"),
   a quarter	turn.  
Lock <https://x.example/µ> or [ref][r], [](strip.md#id)\
end &mdash; *so* <m@x.example>.

[r]: other.md#y 'title'

` + "```lash" + `
limits: µ — x
	
at: '72 °' # —
` + "```" + `

1. One —
2. Two

   more µ
   - sub *a*
   - sub b
     over two lines

| — A | B |
|---|:-:|
| x \| y | ` + "`p \\| q`" + ` |
| z |

![alt *µ* t](figures/a%20b.PNG "Title")

> **Why:** because *it* works
> and more — µ.

> **Tip.**
> Tip text.

## Next
### Empty {#e}
~~~tool
~~~
`

const spansWant = `card [card] = "MD48-20" [MD48-20]
title [title] = "Strip — 5 µm" [Strip — 5 µm]
 paragraph [Lead — text.]
  plain "Lead — text." [Lead — text.]
stage "As found — µ" [As found — µ] only [late] [late]
 paragraph [Stage °.]
  plain "Stage °." [Stage °.]
step "Measure the µ ##" [Measure *the* µ ##] id lash-found [lash-found] only [early late] [early late]
 paragraph [Paint **four µ** at 5&nbsp;° on ` + "`the  output`" + ` — see [step \*x\*](#lash-found "t"),⏎   a quarter	turn.  ⏎Lock <https://x.example/µ> or [ref][r], [](strip.md#id)\⏎end &mdash; *so* <m@x.example>.]
  plain "Paint " [Paint ]
  strong "four µ" [four µ]
  plain " at 5\u00a0° on " [ at 5&nbsp;° on ]
  code "the output" [the  output]
  plain " — see " [ — see ]
  plain "step *x*" [step \*x\*] to #lash-found [#lash-found]
  plain ", a quarter turn. " [,⏎   a quarter	turn.] break
  plain "Lock " [Lock ]
  plain "https://x.example/µ" [https://x.example/µ] to https://x.example/µ [https://x.example/µ]
  plain " or " [ or ]
  plain "ref" [ref] to other.md#y [ref]
  plain ", " [, ]
  plain "" [[](strip.md#id)] to strip.md#id [strip.md#id]
  plain " " [] break
  plain "end — " [end &mdash; ]
  emphasis "so" [so]
  plain " " [ ]
  plain "m@x.example" [m@x.example] to mailto:m@x.example [m@x.example]
  plain "." [.]
 block lash [lash] [` + "```lash⏎limits: µ — x⏎	⏎at: '72 °' # —⏎```" + `]
  limits [limits] = "µ — x" [µ — x]
  at [at] = "72 °" ['72 °']
 list ordered=true [1. One —⏎2. Two⏎⏎   more µ⏎   - sub *a*⏎   - sub b⏎     over two lines]
  item [1. One —]
   plain "One —" [One —]
  item [2. Two⏎⏎   more µ⏎   - sub *a*⏎   - sub b⏎     over two lines]
   plain "Two more µ" [Two⏎⏎   more µ]
   list ordered=false [- sub *a*⏎   - sub b⏎     over two lines]
    item [- sub *a*]
     plain "sub " [sub ]
     emphasis "a" [a]
    item [- sub b⏎     over two lines]
     plain "sub b over two lines" [sub b⏎     over two lines]
 table [0 1] [| — A | B |⏎|---|:-:|⏎| x \| y | ` + "`p \\| q`" + ` |⏎| z |]
  cell [— A]
   plain "— A" [— A]
  cell [B]
   plain "B" [B]
  cell [x \| y]
   plain "x | y" [x \| y]
  cell [` + "`p \\| q`" + `]
   code "p | q" [p \| q]
  cell [z]
   plain "z" [z]
  cell []
 picture figures/a%20b.PNG [figures/a%20b.PNG] "alt µ t" "Title" [![alt *µ* t](figures/a%20b.PNG "Title")]
 note 1 [> **Why:** because *it* works⏎> and more — µ.]
  plain "because " [because ]
  emphasis "it" [it]
  plain " works and more — µ." [ works⏎> and more — µ.]
 note 0 [> **Tip.**⏎> Tip text.]
  plain "Tip text." [Tip text.]
stage "Next" [Next]
step "Empty" [Empty] id e [e]
 block tool [tool] [~~~tool⏎~~~]
`

// A procedure with everything in it, each thing where the source has it, in
// each form in which an editor may save it.
func TestDocSpans(t *testing.T) {
	for form, text := range inEachForm(spansDoc) {
		got := strings.Split(writeDoc(readGoodDoc(t, text)), "\n")
		want := strings.Split(spansWant, "\n")
		for i := range max(len(got), len(want)) {
			if i >= len(got) || i >= len(want) || got[i] != want[i] {
				t.Errorf("%s: line %d:\ngot  %s\nwant %s", form, i+1, got[min(i, len(got)-1)], want[min(i, len(want)-1)])
				break
			}
		}
	}
}

// A part of a run is found behind entities, escapes and folded lines.
func TestRunSub(t *testing.T) {
	for form, text := range inEachForm(front + "a\\*b &mdash; **c**  d\n   e&amp;f — g\n\n> **Tip:** h — i\n> j\n") {
		doc := readGoodDoc(t, text)
		runs := append(doc.Lead[0].(*Paragraph).Runs, doc.Lead[1].(*Note).Runs...)
		for _, part := range []struct{ text, want string }{
			{"a", "a"}, {"*", `\*`}, {"—", "&mdash;"}, {"e", "e"}, {"d e", "d\n   e"}, {"&", "&amp;"}, {"f — g", "f — g"},
			{"h", "h"}, {"i j", "i\n> j"}, {"j", "j"}, {"c", "c"},
		} {
			found := false
			for _, r := range runs {
				if i := strings.Index(r.Text, part.text); i >= 0 {
					found = true
					got := source.Place{File: doc.File, Span: r.Sub(i, i+len(part.text))}.Text()
					if strings.ReplaceAll(got, "\r", "") != part.want {
						t.Errorf("%s: %q is [%s], want [%s]", form, part.text, got, part.want)
					}
					break
				}
			}
			if !found {
				t.Errorf("%s: no %q", form, part.text)
			}
		}
	}
}

// Steps go on in their order after whatever was refused.
func TestDocGoesOn(t *testing.T) {
	var msgs diag.List
	doc := ReadDoc(source.NewFile("f.md", []byte(front+"## S\n### A\n```tool\nuse: x\n\n### B\n\n```tool\nuse: [\n```\n\n```tool\nuse: y\n```\n### C {#}\nText.\n")), &msgs)
	if got, want := reports(&msgs), "fence-unclosed 6:1 [```tool]\nyaml-unclosed 12:6 [[]\nid-malformed 18:8 [#]"; got != want {
		t.Errorf("messages:\n%s\nwant\n%s", got, want)
	}
	steps := doc.Stages[0].Steps
	if len(steps) != 3 || len(steps[0].Content) != 1 || len(steps[1].Content) != 2 || len(steps[2].Content) != 1 {
		t.Fatalf("steps %+v", steps)
	}
	for i, broken := range []bool{true, false} {
		if b := steps[1].Content[i].(*Block); (b.Tree == nil) != broken || b.Type != "tool" {
			t.Errorf("block %d: %+v", i, b)
		}
	}
	if b := steps[0].Content[0].(*Block); b.Tree != nil || b.Type != "tool" {
		t.Errorf("block not closed: %+v", b)
	}
}

// Inputs on which a parser's time grows with a square are refused or read at
// once.
func TestSlowInputs(t *testing.T) {
	lines := func(s string) string {
		line := strings.Repeat(s, 2000/len(s)) + "\n"
		return strings.Repeat(line, 250_000/len(line))
	}
	for _, c := range []struct{ text, slug string }{
		{"## " + strings.Repeat("a {", 5000) + "}\n", "too-large"}, // one heading of 15 KB
		{lines("_a*"), "too-large"},
		{lines("[a]("), "too-large"},
		{"- x\n" + lines("  `"), "too-large"},
		{"> **Tip** x\n" + lines("*a "), "too-large"},
		{lines("| a "), "too-large"},
		{lines("> "), ""},
		{lines("1. "), "markdown-refused"},
		{strings.Repeat("## a {b}\n", 20_000), "heading-attributes"},
		{strings.Repeat("```a\n```\n", 20_000), ""},
	} {
		var msgs diag.List
		ReadDoc(source.NewFile("f.md", []byte(front+c.text)), &msgs)
		if c.slug != "" && (msgs.Len() == 0 || msgs.Sorted()[0].Slug != c.slug) {
			t.Errorf("%.20q: %.200s", c.text, reports(&msgs))
		}
	}
}
