package syntax

import (
	"fmt"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

// report writes a message as slug, line:column and the text underlined.
func report(d diag.Diagnostic) string {
	p := d.At.File.Position(d.At.Span.Start)
	return fmt.Sprintf("%s %d:%d [%s]", d.Slug, p.Line, p.Column, d.At.Text())
}

func reports(msgs *diag.List) string {
	var out []string
	for _, d := range msgs.Sorted() {
		out = append(out, report(d))
	}
	return strings.Join(out, "\n")
}

// Each slip gives exactly one message, at the place of the slip.
func TestYAMLSlips(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"tab as indent", "limits:\n\tband: 1 mm\n", "yaml-tab 2:1 [\t]"},
		{"tab behind blanks", "limits:\n  a: 1\n \tb: 2\n", "yaml-tab 3:2 [\t]"},
		{"tab before a list", "use:\n\t- a\n", "yaml-tab 2:1 [\t]"},
		{"tab in a folded text", "hazard: The socket\n\tcan jump.\n", "yaml-tab 2:1 [\t]"},
		{"tab in a deeper level", "a:\n  b:\n  \t c: 1\n", "yaml-tab 3:3 [\t]"},

		{"colon in a text", "hazard: Note: the socket can jump\n", "yaml-colon 1:13 [:]"},
		{"colon behind µ and —", "hazard: 5 µm — note: out\n", "yaml-colon 1:20 [:]"},
		{"colon at the end", "hazard: look for this:\n", "yaml-colon 1:22 [:]"},
		{"colon in the second line", "hazard: The socket\n  can jump now: out\n", "yaml-colon 2:15 [:]"},
		{"colon in an item", "- a\n", "yaml-malformed 1:1 [- a]"},
		{"colon in an item's value", "use:\n  - a: b: c\n", "yaml-colon 2:9 [:]"},
		{"colon in braces", "at: {a: b: c}\n", "yaml-colon 1:10 [:]"},

		{"bracket open at the end", "use: [a, b\n", "yaml-unclosed 1:6 [[]"},
		{"bracket open before a key", "use: [a, b\ngauge: x\n", "yaml-unclosed 1:6 [[]"},
		{"brace open before a key", "limits:\n  lash: {band: 1 mm\n  other: {band: 2 mm}\n", "yaml-unclosed 2:9 [{]"},
		{"inner brace open", "limits: {lash: {band: 1 mm}\ngauge: x\n", "yaml-unclosed 1:9 [{]"},
		{"bracket open in an item", "use:\n- [a, b\n- c\n", "yaml-unclosed 2:3 [[]"},
		{"wrong bracket", "use: [a, b}\ngauge: x\n", "yaml-unclosed 1:11 [}]"},
		{"bracket too many", "use: [a, b]]\ngauge: x\n", "yaml-quote 1:12 []]"},
		{"bracket alone", "use: ]\n", "yaml-quote 1:6 []]"},
		{"comment in brackets", "use: [drill #30, b]\ngauge: x\n", "yaml-unclosed 1:13 [#30, b]]"},
		{"double quote open", "hazard: \"The socket\ngauge: x\n", "yaml-unclosed 1:9 [\"]"},
		{"double quote open before another", "hazard: \"The socket\nresult: \"x\"\n", "yaml-unclosed 1:9 [\"]"},
		{"single quote open", "hazard: 'The socket\ngauge: x\n", "yaml-unclosed 1:9 [']"},
		{"quote in braces open", "a: {b: \"c}\nd: x\n", "yaml-unclosed 1:8 [\"]"},
		{"apostrophe in quotes", "hazard: 'don't do it'\n", "yaml-quote 1:14 [t do it']"},
		{"text behind a quote", "title: \"MD-48\" drive\n", "yaml-quote 1:16 [drive]"},
		{"text behind a bracket", "thread: [M8] bolt\n", "yaml-quote 1:14 [bolt]"},
		{"escape", "title: \"a\\d\"\n", "yaml-quote 1:10 [\\d]"},
		{"comma missing", "use: [\"a\" \"b\"]\n", "yaml-malformed 1:11 [\"b\"]"},

		{"at sign", "call: @foreman\n", "yaml-quote 1:7 [@]"},
		{"backtick", "hazard: `x` jumps\n", "yaml-quote 1:9 [`]"},
		{"backtick in an item", "a:\n  - x\n  - `y`\n", "yaml-quote 3:5 [`]"},
		{"at sign in brackets", "use: [a, @b]\n", "yaml-quote 1:10 [@]"},
		{"percent", "load: %20\n", "yaml-quote 1:7 [%]"},
		{"greater than", "lash: >0.5 mm\n", "yaml-quote 1:7 [>]"},
		{"at sign at a key", "a: 1\n@b: 2\n", "yaml-quote 2:1 [@]"},
		{"bold", "- **Why** x\n", "yaml-quote 1:3 [*]"},

		{"deeper under a value", "fastener: pinion-nut\n  limits: x\n", "yaml-indent 2:3 [limits:]"},
		{"between two levels", "limits:\n    a: 1\n  b: 2\n", "yaml-indent 3:3 [b:]"},
		{"further left", "  a: 1\n b: 2\n", "yaml-indent 2:2 [b:]"},
		{"deeper under brackets", "a: [x]\n  b: 2\n", "yaml-indent 2:3 [b:]"},
		{"deeper under a quote", "a: \"x\"\n  b: 2\n", "yaml-indent 2:3 [b:]"},
		{"item among keys", "a: 1\n- b\n", "yaml-indent 2:1 [-]"},
		{"key among items", "use:\n  - a\n  b: c\n", "yaml-indent 3:3 [b:]"},
		{"item too deep", "use:\n  - a\n    - b: 1\n", "yaml-indent 3:5 [-]"},

		{"no key", "fastener pinion-nut\nlimits: x\n", "yaml-malformed 1:1 [fastener pinion-nut]"},
		{"no key later", "fastener: x\nlimits y\ngauge: z\n", "yaml-malformed 2:1 [limits y]"},
		{"no blank", "fastener:pinion-nut\nlimits: x\n", "yaml-malformed 1:9 [:]"},
		{"no blank, alone", "fastener:pinion-nut\n", "yaml-malformed 1:9 [:]"},
		{"no blank later", "a: 1\nfastener:pinion-nut\n", "yaml-malformed 2:9 [:]"},
		{"no blank in braces", "a: {b:c}\n", "yaml-malformed 1:6 [:]"},
		{"only a word", "ring-retainer\n", "yaml-malformed 1:1 [ring-retainer]"},
		{"only a list", "- a\n- b\n", "yaml-malformed 1:1 [- a]"},
		{"list behind a key", "use: - a\n", "yaml-malformed 1:6 [-]"},
		{"key missing", ": x\n", "yaml-malformed 1:1 [:]"},

		{"duplicate key", "a: 1\nb: 2\na: 3\n", "yaml-duplicate-key 3:1 [a]"},
		{"duplicate key in braces", "µ: {a: 1, a: 3}\n", "yaml-duplicate-key 1:11 [a]"},
		{"duplicate key in quotes", "a: 1\n\"a\": 3\n", "yaml-duplicate-key 2:1 [\"a\"]"},
		{"anchor", "a: &x 1\n", "yaml-feature 1:4 [&x]"},
		{"anchor without value", "a: &x\n", "yaml-feature 1:4 [&x]"},
		{"alias", "a: &x 1\nb: *x\n", "yaml-feature 1:4 [&x]\nyaml-feature 2:4 [*x]"},
		{"alias to nothing", "b: *x\n", "yaml-quote 1:4 [*]"},
		{"alias to itself", "a: &x [*x]\n", "yaml-feature 1:4 [&x]"},
		{"tag", "a: !!str 1\n", "yaml-feature 1:4 [!!str]"},
		{"tag of no type", "a: ! 1\n", "yaml-feature 1:4 [!]"},
		{"merge key", "a: {<<: {b: 1}}\n", "yaml-feature 1:5 [<<]"},
		{"directive", "%YAML 1.1\n---\na: 1\n", "yaml-feature 1:1 [%YAML 1.1]"},
		{"second document", "a: 1\n---\nb: 2\n", "yaml-feature 2:1 [---]"},
		{"document end", "a: 1\n...\n", "yaml-feature 2:1 [...]"},
		{"question mark", "? a\n: b\n", "yaml-feature 1:1 [?]"},
		{"list as a key", "[a, b]: c\n", "yaml-malformed 1:1 [[]"},
		{"mapping as a key", "x: {{a: b}: c}\n", "yaml-malformed 1:5 [{]"},

		{"comma number", "at: {value: 0,15 mm}\n", "flow-comma 1:13 [0,15 mm]"},
		{"comma range", "at: {band: 0,10 to 0,20 mm, source: x}\n", "flow-comma 1:12 [0,10 to 0,20 mm]"},
		{"two comma numbers", "at: {a: 0,15 mm, b: 0,15 mm}\n", "flow-comma 1:9 [0,15 mm]\nflow-comma 1:21 [0,15 mm]"},
		{"comma in a list", "at: [max 0,15 mm, x]\n", "flow-comma 1:6 [max 0,15 mm]"},
		{"commas in a list", "at: [0,15, 0,20]\n", "flow-comma 1:6 [0,15]\nflow-comma 1:12 [0,20]"},
		{"comma behind a colon without blank", "at: {value:0,15 mm}\n", "yaml-malformed 1:11 [:]"},

		{"item folded", "a:\n  - µ b\n   - c\n", "text-folded 3:4 [-]"},
		{"item folded after a gap", "a:\n  - b\n\n     - c\n   - d\n", "text-folded 4:6 [-]"},
		{"item folded into a value", "a: b\n  - c\n", "text-folded 2:3 [-]"},

		{"text cut", "use: drill #30\n", "text-cut 1:12 [#30]"},
		{"text cut at a number", "use: bore # 3\n", "text-cut 1:11 [# 3]"},
		{"text cut to nothing", "number: #12\n", "text-cut 1:9 [#12]"},
		{"item cut", "use:\n  - bore µ #3\n", "text-cut 2:12 [#3]"},

		{"unknown to us", "a: \"\\xZZ\"\n", "yaml-malformed 1:1 [a: \"\\xZZ\"]"},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, ends := range []string{"\n", "\r\n"} {
				var msgs diag.List
				f := source.NewFile("f.yaml", []byte(strings.ReplaceAll(c.text, "\n", ends)))
				tree := ReadTree(f, &msgs)
				if got := strings.ReplaceAll(reports(&msgs), "\r", ""); got != c.want {
					t.Errorf("%q\ngot  %s\nwant %s", c.text, got, c.want)
				}
				if cut := strings.HasPrefix(c.want, "text-cut"); (tree != nil) != cut {
					t.Errorf("%q: tree %v", c.text, tree)
				}
			}
		})
	}
}

// What is no slip gives no message.
func TestYAMLWithoutSlip(t *testing.T) {
	for _, text := range []string{
		"", "\n\n", "# nothing\n", "---\na: 1\n", "# x\n---\n# y\na: 1\n",
		"benchwright: 1              # version of this language\ndecimal: point # or comma\n",
		"a: x#3\nb: \"x #3\"\nc: 'y' # z\n",
		"gears: {teeth: [16,32], more: [16, 32]}\n",
		"a: {b: \"0,15 mm\"}\nc: 0,15 mm\nd: [\"0,15 mm\", 1]\n",
		"pitch: {pinion: 36 mm,\n  gear: 72 mm} # two\n",
		"a:\tb\nc: d\te\n",
		"a: NO\nb: 012\nc: 2026-10-02\nd: 12:30\ne: 1_000\n",
		"use:\n- a\n- b\nnext: c\n",
		"a: |\n  # no comment\n  x: [\n\nb: >-\n  y\n",
		"a: http://x.example/y\nb: M24x1.5\nc: ±0.02 mm\n",
		"{a: 1, b: [2]}\n",
	} {
		var msgs diag.List
		tree := ReadTree(source.NewFile("f.yaml", []byte(text)), &msgs)
		if msgs.Len() != 0 || tree == nil || tree.Root.Kind != Mapping {
			t.Errorf("%q: %s, tree %v", text, reports(&msgs), tree)
		}
	}
}

// A text may go on in the next line, and in quotes or as a block it may have any
// dash.
func TestTextOfLines(t *testing.T) {
	msgs := &diag.List{}
	text := "a:\n  - b\n    -c and - d\n  - \"e\n    - f\"\n  - >\n    g\n    - h\n"
	tree := ReadTree(source.NewFile("a.yaml", []byte(text)), msgs)
	if tree == nil || msgs.Len() > 0 || len(tree.Root.Get("a").Items) != 3 {
		t.Errorf("%v", msgs.Sorted())
	}
}
