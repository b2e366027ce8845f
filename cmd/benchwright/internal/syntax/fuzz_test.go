package syntax

import (
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

var yamlCorpus = []string{
	"a: 1\nb: [x, {y: z}]\nc: |\n  text — µ\n  more\nd: 'it''s'\n",
	"\ufeffa: \"\\u00b5 — \\\n  x\"\r\nb:\r\n- c: >-\r\n    folded\r\n    text\r\n- d\r\n",
	"a: {value: 0,15 mm}\n", "a: &x [*x]\n<<: 1\n", "? a\n: b\n", "a:\n\t- b\n", "a: [b\n", "a: 'b\n", "%YAML 1.2\n--- |\n x\n",
	"- - - a: b\n    c: d # e\n   f\n", "a: # 1\n  # 2\n  b: c # 3\n# 4\nd: e\n", "\"a\"  : 'b' #c\n\n\n#d", "{a: [b, {c: d, e}], f}\n",
	"a: |2-\n   x\n\n\n", "a: \u2028\x00\xff\n", "a: b: c\n", "!!map {a: b}\n", ": \n", "[a: b, c: d]: e\n", "a:\n  - b\n  c: d\n", "\"", "a: >\n\n\n  b\n \n  c\n",
}

var docCorpus = []string{
	front + "## S {#s only=\"a b\"}\n\nLead *a* **b** `c` &amp; \\* [d](#e \"f\") <https://g>\n\n### T\n\n```tool\nuse: [a, b]\n```\n\n1. x\n   - y\n\n> **Why:** z\n",
	"\ufeff---\r\na: 1\r\n---\r\n## S\r\n### T µ\r\n| a | b |\r\n|---|:-:|\r\n| x \\| y | `p \\| q` |\r\n\r\n![alt](a.png)\r\n",
	front + "## S\n### T\n- a\n\t- b\n\n\t\t```tool\n- <b>x</b>\n-\n> - c\n# U\n#### V {#}\nx\n===\n",
	front + "a  \nb\\\nc\n\n[r]: x 'y'\n\n[r] ![r] [](x) [![i](j.png)](k)\n", "---\na: 1\n## S\n", front + "```a\n```\n~~~b\n```\n", "\t\t>\t- \t`", front + "## a `b}` {#c}\n### \\{ \\} {x}\n###\n",
	front + "a&#8232;b&#0;c&#xD800; &nbsp;d\n\n1. a\n\n   b\n   1. c\n", front + "|a|\n|-|\n||\n|`|`|\n",
}

// The corpora are kept small; what a long run finds is added to them.

func FuzzReadTree(f *testing.F) {
	for _, s := range yamlCorpus {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		var msgs diag.List
		file := source.NewFile("f.yaml", []byte(text))
		tree := ReadTree(file, &msgs)
		checkMessages(t, file, &msgs)
		errors := 0
		for _, d := range msgs.Sorted() {
			if d.Slug != "text-cut" && d.Slug != "text-malformed" {
				errors++
			}
		}
		if msgs.Len() == 0 && tree == nil || tree != nil && errors > 0 {
			t.Errorf("tree %v with %s", tree, reports(&msgs))
		}
		checkTree(t, file, tree)
	})
}

func FuzzReadDoc(f *testing.F) {
	for _, s := range docCorpus {
		f.Add(s)
	}
	for _, s := range yamlCorpus {
		f.Add("---\n" + s + "---\n## S\n### T\n```tool\n" + s + "```\n")
	}
	f.Fuzz(func(t *testing.T, text string) {
		var msgs diag.List
		file := source.NewFile("f.md", []byte(text))
		doc := ReadDoc(file, &msgs)
		checkMessages(t, file, &msgs)
		if doc == nil {
			if msgs.Len() == 0 {
				t.Error("no doc and no message")
			}
			return
		}
		checkTree(t, file, doc.Front)
		checkContent(t, file, doc.Lead)
		for _, s := range doc.Stages {
			checkHeading(t, file, s.Heading)
			checkContent(t, file, s.Content)
			for _, p := range s.Steps {
				checkHeading(t, file, p.Heading)
				checkContent(t, file, p.Content)
			}
		}
	})
}

func within(t *testing.T, f *source.File, s source.Span) {
	t.Helper()
	if s.Start < 0 || s.End < s.Start || s.End > len(f.Text) {
		t.Errorf("span %v in a file of %d bytes", s, len(f.Text))
	}
}

func checkMessages(t *testing.T, f *source.File, msgs *diag.List) {
	t.Helper()
	for _, d := range msgs.Sorted() {
		within(t, f, d.At.Span)
		if d.Message == "" || strings.HasSuffix(d.Message, ".") {
			t.Errorf("message %q", d.Message)
		}
	}
}

func checkTree(t *testing.T, f *source.File, tree *Tree) {
	t.Helper()
	if tree == nil {
		return
	}
	within(t, f, tree.Span)
	if tree.Root == nil || tree.Root.Kind != Mapping {
		t.Error("the root is no mapping")
		return
	}
	checkNode(t, f, tree.Root)
}

func checkNode(t *testing.T, f *source.File, n *Node) {
	t.Helper()
	within(t, f, n.Span)
	n.Value()
	for _, x := range n.Fields {
		within(t, f, x.KeySpan)
		checkNode(t, f, x.Value)
	}
	for _, x := range n.Items {
		checkNode(t, f, x)
	}
	if n.Kind != Scalar {
		return
	}
	for _, c := range [][2]int{{-1, 1}, {0, len(n.Text)}, {1, len(n.Text) - 1}, {len(n.Text), len(n.Text) + 9}} {
		s := n.Sub(c[0], c[1])
		if s.Start < n.Span.Start || s.End > n.Span.End || s.Len() < 0 {
			t.Errorf("%q: part %v at %v, outside %v", n.Text, c, s, n.Span)
		}
	}
	if at := n.Place().Text(); !n.Quoted && !strings.Contains(at, "\n") && len(at) != len(n.Text) {
		t.Errorf("plain %q at %q", n.Text, at)
	}
}

func checkHeading(t *testing.T, f *source.File, h Heading) {
	t.Helper()
	within(t, f, h.Span)
	within(t, f, h.IDSpan)
	within(t, f, h.OnlySpan)
	checkRuns(t, f, h.Title)
}

func checkRuns(t *testing.T, f *source.File, runs []Run) {
	t.Helper()
	for _, r := range runs {
		within(t, f, r.Span)
		within(t, f, r.LinkSpan)
		for _, c := range [][2]int{{-1, 1}, {0, len(r.Text)}, {1, len(r.Text) - 1}, {len(r.Text), len(r.Text) + 9}} {
			s := r.Sub(c[0], c[1])
			if s.Start < r.Span.Start || s.End > r.Span.End || s.Len() < 0 {
				t.Errorf("%q: part %v at %v, outside %v", r.Text, c, s, r.Span)
			}
		}
	}
}

func checkList(t *testing.T, f *source.File, l *List) {
	t.Helper()
	within(t, f, l.Span)
	for _, i := range l.Items {
		within(t, f, i.Span)
		checkRuns(t, f, i.Runs)
		if i.Sub != nil {
			checkList(t, f, i.Sub)
		}
	}
}

func checkContent(t *testing.T, f *source.File, content []Content) {
	t.Helper()
	for _, c := range content {
		within(t, f, c.Place())
		switch c := c.(type) {
		case *Paragraph:
			checkRuns(t, f, c.Runs)
		case *List:
			checkList(t, f, c)
		case *Table:
			for _, row := range append(c.Rows, c.Head) {
				if len(row) != len(c.Align) {
					t.Errorf("a row of %d cells in a table of %d", len(row), len(c.Align))
				}
				for _, cell := range row {
					within(t, f, cell.Span)
					checkRuns(t, f, cell.Runs)
				}
			}
		case *Picture:
			within(t, f, c.PathSpan)
		case *Note:
			checkRuns(t, f, c.Runs)
		case *Block:
			within(t, f, c.TypeSpan)
			checkTree(t, f, c.Tree)
		}
	}
}
