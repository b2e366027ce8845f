package syntax

import (
	"bytes"
	"reflect"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

// in each form in which an editor may save it.
func inEachForm(text string) map[string][]byte {
	crlf := strings.ReplaceAll(text, "\n", "\r\n")
	return map[string][]byte{"LF": []byte(text), "CRLF": []byte(crlf), "BOM": []byte(byteOrderMark + text), "BOM CRLF": []byte(byteOrderMark + crlf)}
}

func readGood(t *testing.T, text []byte) *Tree {
	t.Helper()
	var msgs diag.List
	tree := ReadTree(source.NewFile("f.yaml", text), &msgs)
	if msgs.Len() > 0 || tree == nil {
		t.Fatalf("messages: %s", reports(&msgs))
	}
	return tree
}

const spansYAML = `# — µ °
title: "Strip — \"the\" drive"   # — note
'µ key': it''s 20° — 5 µm
at: {radius: 72 mm, µ: [ 'a µ' , b — c, ], open: , bare}
tabs:	a	b
list:
- — one
- key: two °
  other: |  # kept
    — line one

      line two

- >-
  folded µ
  text
-
  - deep — a
  - [x,
     'y — z']
long: first — line
  second µ line

  third ° line
none:
last: x`

// Every key and value is where the source has it, whatever stands before it
// in its line.
func TestTreeSpans(t *testing.T) {
	for form, text := range inEachForm(spansYAML) {
		tree := readGood(t, text)
		at := func(s source.Span) string {
			return strings.ReplaceAll(source.Place{File: tree.File, Span: s}.Text(), "\r", "")
		}
		for _, c := range []struct{ pointer, key, value, text string }{
			{"/title", "title", `"Strip — \"the\" drive"`, `Strip — "the" drive`},
			{"/µ key", "'µ key'", "it''s 20° — 5 µm", "it''s 20° — 5 µm"},
			{"/at", "at", "{radius: 72 mm, µ: [ 'a µ' , b — c, ], open: , bare}", ""},
			{"/at/radius", "radius", "72 mm", "72 mm"},
			{"/at/µ", "µ", "[ 'a µ' , b — c, ]", ""},
			{"/at/µ/0", "'a µ'", "'a µ'", "a µ"},
			{"/at/µ/1", "b — c", "b — c", "b — c"},
			{"/at/open", "open", "", ""},
			{"/at/bare", "bare", "", ""},
			{"/tabs", "tabs", "a\tb", "a\tb"},
			{"/list/0", "— one", "— one", "— one"},
			{"/list/1/key", "key", "two °", "two °"},
			{"/list/1/other", "other", "|  # kept\n    — line one\n\n      line two", "— line one\n\n  line two\n"},
			{"/list/2", ">-\n  folded µ\n  text", ">-\n  folded µ\n  text", "folded µ text"},
			{"/list/3", "- deep — a\n  - [x,\n     'y — z']", "- deep — a\n  - [x,\n     'y — z']", ""},
			{"/list/3/0", "deep — a", "deep — a", "deep — a"},
			{"/list/3/1/1", "'y — z'", "'y — z'", "y — z"},
			{"/long", "long", "first — line\n  second µ line\n\n  third ° line", "first — line second µ line\nthird ° line"},
			{"/none", "none", "", ""},
			{"/last", "last", "x", "x"},
		} {
			key, value, ok := tree.Find(way(c.pointer))
			if !ok || at(key) != c.key || at(value) != c.value {
				t.Errorf("%s: %s is [%s] [%s] %v, want [%s] [%s]", form, c.pointer, at(key), at(value), ok, c.key, c.value)
			}
			if n := node(tree, c.pointer); n == nil || n.Text != c.text {
				t.Errorf("%s: %s reads %+v, want %q", form, c.pointer, n, c.text)
			}
		}
	}
}

// way splits /at/µ/0 into its keys and indices.
func way(pointer string) []string { return strings.Split(pointer, "/")[1:] }

// node returns the node at such a path.
func node(tree *Tree, pointer string) *Node {
	_, at, _ := tree.Find(way(pointer))
	var find func(n *Node) *Node
	find = func(n *Node) *Node {
		for _, f := range n.Fields {
			if m := find(f.Value); m != nil {
				return m
			}
		}
		for _, i := range n.Items {
			if m := find(i); m != nil {
				return m
			}
		}
		if n.Span == at {
			return n
		}
		return nil
	}
	return find(tree.Root)
}

// A part of a text is found in quotes, over folded lines and in a block text.
func TestNodeSub(t *testing.T) {
	for form, text := range inEachForm(spansYAML) {
		tree := readGood(t, text)
		for _, c := range []struct{ pointer, part, want string }{
			{"/µ key", "20°", "20°"},
			{"/µ key", "it''s", "it''s"},
			{"/at/radius", "72 mm", "72 mm"},
			{"/at/µ/0", "µ", "µ"},
			{"/list/1/other", "line two", "line two"},
			{"/list/2", "folded µ text", "folded µ\n  text"},
			{"/list/2", "text", "text"},
			{"/long", "µ line\nthird", "µ line\n\n  third"},
			{"/title", "the", `"Strip — \"the\" drive"`},
		} {
			n := node(tree, c.pointer)
			i := strings.Index(n.Text, c.part)
			s := n.Sub(i, i+len(c.part))
			if got := strings.ReplaceAll(source.Place{File: n.File, Span: s}.Text(), "\r", ""); got != c.want {
				t.Errorf("%s: %q of %s is [%s], want [%s]", form, c.part, c.pointer, got, c.want)
			}
		}
	}
}

func TestNilNode(t *testing.T) {
	var n *Node
	if _, ok := n.Field("x"); ok || n.Get("x") != nil || n.Get("x").Get("y").Value() != nil ||
		n.Place() != (source.Place{}) || n.KeyPlace("x") != (source.Place{}) || n.Sub(0, 9) != (source.Span{}) {
		t.Error("a nil node has something")
	}
	var tree *Tree
	if _, _, ok := tree.Find([]string{"x"}); ok {
		t.Error("a nil tree has something")
	}
}

func TestPlaces(t *testing.T) {
	tree := readGood(t, []byte("a: {b: 1}\n"))
	a := tree.Root.Get("a")
	for _, c := range []struct {
		got  source.Place
		want string
	}{
		{a.Place(), "{b: 1}"}, {a.KeyPlace("b"), "b"}, {a.KeyPlace("c"), "{b: 1}"}, {a.Get("b").Place(), "1"},
	} {
		if c.got.Text() != c.want {
			t.Errorf("[%s], want [%s]", c.got.Text(), c.want)
		}
	}
}

func TestFind(t *testing.T) {
	tree := readGood(t, []byte("a/b: [x]\nc~d: 1\n5%: 2\n\"\": 3\n"))
	for _, c := range []struct {
		path []string
		want string
	}{
		{nil, "a/b: [x]\nc~d: 1\n5%: 2\n\"\": 3"}, {[]string{"a/b", "0"}, "x"}, {[]string{"c~d"}, "1"}, {[]string{"5%"}, "2"}, {[]string{""}, "3"},
	} {
		if _, v, ok := tree.Find(c.path); !ok || (source.Place{File: tree.File, Span: v}).Text() != c.want {
			t.Errorf("%q finds %v %v", c.path, v, ok)
		}
	}
	for _, path := range [][]string{{"x"}, {"0"}, {"a/b", "1"}, {"a/b", "-1"}, {"a/b", "x"}, {"c~d", "0"}} {
		if _, _, ok := tree.Find(path); ok {
			t.Errorf("%q finds something", path)
		}
	}
}

// Every scalar is the text that was typed, on one line. What YAML 1.2.2,
// section 10.3, makes numbers of has another text as a number; the words of
// nothing are nothing.
func TestValue(t *testing.T) {
	for text, want := range map[string]any{
		"": nil, "~": nil, "null": nil, "Null": nil, "nUll": "nUll", "'~'": "~",
		"true": "true", "False": "False", "yes": "yes", "NO": "NO", "on": "on",
		"0": "0", "-19": "-19", "+12": "+12", "012": "012", "0o14": "0o14", "0xC": "0xC",
		"0.": "0.", "-0.0": "-0.0", ".5": ".5", "+12e03": "+12e03", "-2E+05": "-2E+05", "1.10": "1.10",
		"5319E7": "5319E7", "1e999999999": "1e999999999", ".inf": ".inf", ".nan": ".nan", "1_000": "1_000", "12:30": "12:30",
		"2026-10-02": "2026-10-02", "0b1": "0b1", "'1'": "1", `"true"`: "true", "0.15 mm": "0.15 mm", "1,5": "1,5",
		"'  '": "", `" a\n b "`: "a b",
	} {
		if got := readGood(t, []byte("a: "+text+"\n")).Root.Get("a").Value(); got != want {
			t.Errorf("%q is %#v, want %#v", text, got, want)
		}
	}
	got := readGood(t, []byte("a: [1, {b: c}]\nd: |\n  5\ne: {}\nf: []\n")).Root.Value()
	want := map[string]any{"a": []any{"1", map[string]any{"b": "c"}}, "d": "5", "e": map[string]any{}, "f": []any{}}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got %#v", got)
	}
}

// Depth is answered with one message, in whatever way it is written.
func TestDeepYAML(t *testing.T) {
	var stairs bytes.Buffer
	for i := range 700 {
		stairs.WriteString(strings.Repeat(" ", i) + "k:\n")
	}
	for _, text := range []string{
		"a: " + strings.Repeat("[", 1000) + strings.Repeat("]", 1000) + "\n",
		"a: " + strings.Repeat("[", 1000) + "\n",
		strings.Repeat(strings.Repeat("[", 2000)+"\n", 100),
		"a: " + strings.Repeat("{b: ", 500) + strings.Repeat("}", 40) + "\n",
		strings.Repeat("- ", 1000) + "a\n",
		stairs.String(),
	} {
		var msgs diag.List
		if tree := ReadTree(source.NewFile("f.yaml", []byte(text)), &msgs); tree != nil || msgs.Len() != 1 || msgs.Sorted()[0].Slug != "too-large" {
			t.Errorf("%.20q: %s", text, reports(&msgs))
		}
	}
	good := strings.Repeat("[", maxDepth-1) + strings.Repeat("]", maxDepth-1)
	readGood(t, []byte("a: "+good+"\n"))
}
