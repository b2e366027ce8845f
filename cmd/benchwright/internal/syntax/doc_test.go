package syntax

import (
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

const front = "---\ncard: X-1\n---\n" // three lines

// Each slip gives exactly one message, at the place of the slip. The texts
// stand behind a front matter of three lines and, with a tilde before their
// name, behind "## S" and "### T" on lines 4 and 5.
func TestMarkdownSlips(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"heading one", "# Title\n## S\n", "heading-level 4:1 [#]"},
		{"heading one, then a step", "# S\n### T\n", "heading-level 4:1 [#]"},
		{"heading four", "## S\n### T\n#### U\n", "heading-level 6:1 [####]"},
		{"level skipped", "## S\n#### U\ntext\n", "heading-level 5:1 [####]"},
		{"blank missing behind two marks", "##S\n### T\n", "heading-level 4:1 [##]"},
		{"blank missing behind three marks", "## S\n###Check the belt\ntext\n", "heading-level 5:1 [###]"},
		{"blank missing behind four marks", "## S\n### T\n####U\n", "heading-level 6:1 [####]"},
		{"blank missing below text", "## S\n### T\ntext\n###U {#u}\n", "heading-level 7:1 [###]"},
		{"step without stage", "### T\n### U\n", "step-outside-stage 4:5 [T]"},
		{"underlined", "Stage µ\n---\n### T\n", "heading-underlined 4:1 [Stage µ]"},
		{"underlined twice", "Stage\n=====\n", "heading-underlined 4:1 [Stage]"},
		{"no title", "## {#id}\n", "heading-empty 4:1 [## {#id}]"},
		{"no title at all", "##\n", "heading-empty 4:1 [##]"},

		{"brace", "## S }\n", "heading-attributes 4:6 [}]"},
		{"brace not closed", "## S {#id\n", "heading-attributes 4:6 [{#id]"},
		{"two pairs of braces", "## S {#id} {only=a}\n", "heading-attributes 4:6 [{#id}]"},
		{"nothing in braces", "## S { }\n", "heading-attributes 4:6 [{ }]"},
		{"word in braces", "## S µ {id}\n", "heading-attributes 4:9 [id]"},
		{"class", "## S {.id}\n", "heading-attributes 4:7 [.id]"},
		{"id as a key", "## S {id=x}\n", "heading-attributes 4:7 [id]"},
		{"unknown attribute", "## S {#x onyl=late}\n", "heading-attributes 4:10 [onyl]"},
		{"only without quotes", "## S {only=a b}\n", "heading-attributes 4:14 [b]"},
		{"only not closed", "## S {only=\"a b}\n", "heading-attributes 4:12 [\"]"},
		{"only twice", "## S {only=a only=b}\n", "heading-attributes 4:14 [only]"},
		{"only empty", "## S {only=\"\"}\n", "heading-attributes 4:13 []"},
		{"only upper case", "## S {only=Late}\n", "id-malformed 4:12 [Late]"},
		{"second id", "## S {#a #b}\n", "heading-attributes 4:10 [#b]"},
		{"id upper case", "### T {#Ring_Retainer}\n", "step-outside-stage 4:5 [T]\nid-malformed 4:9 [Ring_Retainer]"},
		{"id of a digit", "## S {#1a}\n", "id-malformed 4:8 [1a]"},
		{"id with two dashes", "## S {#a--b}\n", "id-malformed 4:8 [a--b]"},
		{"id missing", "## S {#}\n", "id-malformed 4:7 [#]"},
		{"id too long", "## S {#a" + strings.Repeat("b", 40) + "}\n", "id-malformed 4:8 [a" + strings.Repeat("b", 40) + "]"},

		{"~fence not closed", "```tool\nuse: x\n", "fence-unclosed 6:1 [```tool]"},
		{"~fence not closed before a step", "```tool\nuse: x\n\nText.\n\n### U\n\n```tool\nuse: y\n```\n", "fence-unclosed 6:1 [```tool]"},
		{"~fence not closed before a block", "```tool\nuse: x\n\n```torque\nlimits: y\n```\n", "fence-unclosed 6:1 [```tool]"},
		{"~fence too short", "````tool\nuse: x\n```\n", "fence-unclosed 6:1 [````tool]"},
		{"~fence of two backticks", "``hold-point\nwho: x\n```\n", "block-info 6:1 [``hold-point]"},
		{"~fences of two backticks", "Text.\n``hold-point\nwho: x\n``\n\nText.\n", "block-info 7:1 [``hold-point]"},
		{"~fence without type", "```\ncode\n```\n", "block-info 6:1 [```]"},
		{"~fence with two words", "```tool x\nuse: y\n```\n", "block-info 6:4 [tool x]"},
		{"~fence indented", " ```tool\nuse: y\n ```\n", "block-place 6:2 [```tool]"},
		{"~fence in a list", "- a\n\n  ```tool\n  use: y\n  ```\n", "block-place 8:3 [```tool]"},
		{"~fence in a quote", "> ```tool\n> use: y\n> ```\n", "block-place 6:3 [```tool]"},
		{"~fence in a tip", "> **Tip** x\n>\n> ```tool\n> use: y\n> ```\n", "block-place 8:3 [```tool]"},
		{"~fence far in", "text\n\n    ```tool\n    use: y\n    ```\n", "block-place 8:5 [```tool]"},
		{"~fence far in below text", "text\n    ```tool\n    use: y\n    ```\n", "block-place 7:5 [```tool]"},
		{"~tab in a block", "```tool\nuse:\n\t- y\n```\n", "yaml-tab 8:1 [\t]"},
		{"~colon in a block", "```tool\nwhy: a µ: b\n```\n", "yaml-colon 7:9 [:]"},
		{"~word in a block", "```part\nring\n```\n", "yaml-malformed 7:1 [ring]"},

		{"~html block", "<div>\nx\n</div>\n", "raw-html 6:1 [<div>]"},
		{"~html comment", "<!-- x -->\n", "raw-html 6:1 [<!-- x -->]"},
		{"~html within", "a µ <b>bold</b> x\n", "raw-html 6:5 [<b>]"},
		{"~html in a list", "- <div>\n", "raw-html 6:3 [<div>]"},
		{"~rule", "a\n\n***\n", "markdown-refused 8:1 [***]"},
		{"~indented", "a\n\n    b\n    c\n", "markdown-refused 8:5 [b]"},
		{"~three lists", "- a\n  - b\n    - c\n      - d\n", "markdown-refused 8:5 [- c]"},
		{"~text behind a list", "- a\n  - b\n\n  c\n", "markdown-refused 9:3 [c]"},
		{"~two lists in an item", "- a\n  - b\n  1. c\n", "markdown-refused 8:3 [1. c]"},
		{"~table in a list", "- a\n\n  | b |\n  |---|\n", "markdown-refused 8:3 [| b |]"},
		{"~heading in a list", "- ## a\n", "markdown-refused 6:3 [## a]"},
		{"~quote in a list", "- a\n  > b\n", "markdown-refused 7:3 [> b]"},
		{"~item empty", "-\n- b\n", "markdown-refused 6:1 [-]"},
		{"~heading by a dash", "- a\n-\n- b\n", "markdown-refused 7:1 [-]"},
		{"~quote", "> Take care.\n", "note-kind 6:1 [> Take care.]"},
		{"~quote of another word", "> **Note** Take care.\n", "note-kind 6:1 [> **Note** Take care.]"},
		{"~list in a tip", "> **Tip**\n> - a\n", "markdown-refused 7:3 [- a]"},
		{"~tip alone", "> **Tip:**\n", "markdown-refused 6:1 [> **Tip:**]"},
		{"~two whys", "> **Why** a\n\nText.\n\n> **Why:** b\n", "why-twice 10:1 [> **Why:** b]"},
		{"~picture in a text", "see ![µ](a.png) here\n", "picture-place 6:5 [![µ](a.png)]"},
		{"~two pictures", "![a](a.png)\n![b](b.png)\n", "picture-place 6:1 [![a](a.png)]"},
		{"~picture of another kind", "![µ](a.gif)\n", "picture-kind 6:6 [a.gif]"},
		{"~picture without path", "![µ]()\n", "picture-kind 6:1 [![µ]()]"},
		{"~row too long", "| a | b |\n|---|---|\n| c | d | e |\n", "table-cells 8:1 [| c | d | e |]"},
		{"too many steps", "## S\n" + strings.Repeat("### T\n", 600), "too-large 505:5 [T]"},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := front
			if c.name[0] == '~' {
				text += "## S\n### T\n"
			}
			for _, ends := range []string{"\n", "\r\n"} {
				var msgs diag.List
				doc := ReadDoc(source.NewFile("f.md", []byte(strings.ReplaceAll(text+c.text, "\n", ends))), &msgs)
				if got := strings.ReplaceAll(reports(&msgs), "\r", ""); got != c.want {
					t.Errorf("%q\ngot  %s\nwant %s", c.text, got, c.want)
				}
				if doc == nil || doc.Front.Broken {
					t.Errorf("%q: doc %v", c.text, doc)
				}
			}
		})
	}
}

// The front matter's slips, each in a whole file.
func TestFrontMatterSlips(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", "front-matter-missing 1:1 []"},
		{"## S\n", "front-matter-missing 1:1 [## S]"},
		{"card: X-1\n---\n## S\n", "front-matter-missing 1:1 [card: X-1]"},
		{"\ufeff## S\n", "front-matter-missing 1:1 [## S]"},
		{"---\ncard: X-1\n\n## S\n\n### T\n\n```tool\nuse: x\n```\n", "front-matter-unclosed 1:1 [---]"},
		{"---\ncard: X-1\n", "front-matter-unclosed 1:1 [---]"},
		{"---\ncard: X-1\n## S\n### T\n```tool\nuse: x\n```\n---\n", "front-matter-unclosed 1:1 [---]\nmarkdown-refused 8:1 [---]"},
		{"\n---\ncard: X-1\n---\n## S\n", "front-matter-missing 1:1 []"},
		{"---\ncard: a: b\n---\n## S\n", "yaml-colon 2:8 [:]"},
	} {
		var msgs diag.List
		doc := ReadDoc(source.NewFile("f.md", []byte(c.text)), &msgs)
		if got := reports(&msgs); got != c.want {
			t.Errorf("%q\ngot  %s\nwant %s", c.text, got, c.want)
		}
		if doc == nil || !doc.Front.Broken || doc.Front.Root == nil {
			t.Errorf("%q: no broken front matter", c.text)
		} else if strings.Contains(c.text, "## S") && len(doc.Stages) != 1 {
			t.Errorf("%q: %d stages", c.text, len(doc.Stages))
		}
	}
}

// What is no text, and what is too large, in both kinds of file.
func TestIllegible(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"---\na: x\ry\n---\n", "text-malformed 2:5 [\r]"},
		{"---\na: µ\u0085y\n---\n", "text-malformed 2:5 [\u0085]"},
		{"---\na: µ\u2028y\n---\n", "text-malformed 2:5 [\u2028]"},
		{"---\na: µ\u2029y\u2029\n---\n", "text-malformed 2:5 [\u2029]"},
		{"---\na: µ\x00y\n---\n", "text-malformed 2:5 [\x00]"},
		{"---\na: µ\xb5y\n---\n", "text-malformed 2:5 [\xb5]"},
		{"---\na: µ\x07y\n---\n", "text-malformed 2:5 [\x07]"},
		{"\xff\xfe-\x00-\x00", "text-malformed 1:1 [\xff\xfe]"},
		{"---\na: " + strings.Repeat("x", 3000) + "\n---\n", "too-large 2:2049 [" + strings.Repeat("x", 955) + "]"},
		{strings.Repeat("---\n", 70000), "too-large 1:1 []"},
	} {
		for _, read := range []func(*source.File, *diag.List){
			func(f *source.File, msgs *diag.List) { ReadDoc(f, msgs) },
			func(f *source.File, msgs *diag.List) { ReadTree(f, msgs) },
		} {
			var msgs diag.List
			f := source.NewFile("f", []byte(c.text))
			read(f, &msgs)
			got := reports(&msgs)
			got = strings.ReplaceAll(got, "\nyaml-feature 3:1 [---]", "") // a front matter is not all of a YAML file
			if got != c.want {
				t.Errorf("%.40q\ngot  %.80s\nwant %.80s", c.text, got, c.want)
			}
		}
	}
}
