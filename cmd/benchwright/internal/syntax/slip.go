package syntax

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"benchwright/cmd/benchwright/internal/source"
)

// This file refuses YAML features that procedures do not use: anchors,
// aliases, merge keys, tags, further documents, and keys that are not text.

const noFeature = "anchors, aliases, tags and directives are not used here"

// refuseDocuments refuses directives and a second document, which the library
// would drop silently. A --- line before the first content is allowed.
func (r *treeReader) refuseDocuments() {
	begun := false
	for i := r.span.Start; i < r.span.End; i = r.next(i) {
		line := bytes.TrimRight(r.text[i:r.next(i)], " \t\r\n")
		at := source.Span{Start: i, End: i + len(line)}
		switch {
		case len(line) == 0 || line[0] == '#':
		case line[0] == '%' && !begun:
			r.fail("yaml-feature", at, "take the line out", "%s", noFeature)
			return
		case string(line) == "---" && !begun:
			begun = true
		case string(line) == "---" || string(line) == "..." || bytes.HasPrefix(line, []byte("--- ")):
			r.fail("yaml-feature", at, "take the line out, or put what follows into a file of its own",
				"a second YAML document begins here")
			return
		default:
			begun = true
		}
	}
}

// next returns the start of the line after the one that holds i.
func (r *treeReader) next(i int) int {
	if j := bytes.IndexByte(r.text[i:r.span.End], '\n'); j >= 0 {
		return i + j + 1
	}
	return r.span.End
}

// word returns the span from i to the next blank, comma or bracket.
func (r *treeReader) word(i int) source.Span {
	end := i
	for end < r.span.End && !blank(r.text[end]) && (end == i || strings.IndexByte(",[]{}", r.text[end]) < 0) {
		end++
	}
	return source.Span{Start: i, End: end}
}

// refuseFeature reports an alias, anchor or tag of y, and whether there was
// one.
func (r *treeReader) refuseFeature(y *yaml.Node, start int) bool {
	at := r.word(start)
	word := string(r.text[at.Start:at.End])
	switch {
	case y.Kind == yaml.AliasNode:
		r.fail("yaml-feature", at, "write the value itself, or put quotes around a text that begins with `*`",
			"`%s` is a YAML alias: %s", word, noFeature)
	case strings.HasPrefix(word, "&") && !missing(y):
		r.fail("yaml-feature", at, "take it out, or put quotes around a text that begins with `&`",
			"`%s` is a YAML anchor: %s", word, noFeature)
	case y.Anchor != "":
		r.fail("yaml-feature", at, "take the anchor `&"+y.Anchor+"` out", "`&%s` is a YAML anchor: %s", y.Anchor, noFeature)
	case y.Style&yaml.TaggedStyle != 0 || strings.HasPrefix(word, "!") && !missing(y):
		r.fail("yaml-feature", at, "take it out, or put quotes around a text that begins with `!`",
			"`%s` is a YAML tag: %s", word, noFeature)
	default:
		return false
	}
	return true
}

// key converts a key. It returns false when it reported an error.
func (r *treeReader) key(y *yaml.Node, indent int) (*Node, bool) {
	start := r.at(y.Line, y.Column)
	at := r.word(start)
	before := start
	for before > r.span.Start && (r.text[before-1] == ' ' || r.text[before-1] == '\t') {
		before--
	}
	switch {
	case before > r.span.Start && r.text[before-1] == '?' && !missing(y):
		r.fail("yaml-feature", source.Span{Start: before - 1, End: before}, "write `key: value`", "a key is not written with `?`")
	case y.Kind == yaml.MappingNode || y.Kind == yaml.SequenceNode:
		r.fail("yaml-malformed", source.Span{Start: start, End: min(start+1, r.span.End)},
			"put quotes around a text that begins with a bracket", "a key is a word, not something in brackets")
	case missing(y):
		r.missingKey(start)
	case y.Tag == "!!merge":
		at.End = start + len("<<")
		r.fail("yaml-feature", at, "write the keys themselves", "`<<` is a YAML merge key, which is not used here")
	case !r.refuseFeature(y, start):
		n := &Node{File: r.file, Text: y.Value}
		n.Span = source.Span{Start: start, End: r.scalarEnd(y, start, indent)}
		return n, true
	}
	return nil, false
}

// missingKey reports a colon at i that has no key before it.
func (r *treeReader) missingKey(i int) {
	r.fail("yaml-malformed", source.Span{Start: i, End: min(i+1, r.span.End)}, "write the key before the colon", "a key is missing here")
}

var gluedKey = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9_-]*:[^\s:]`)

// notMapping reports a document that is not a mapping.
func (r *treeReader) notMapping(n *Node) {
	if n.Kind == Scalar && !n.Quoted && r.glued(n.Span) {
		return
	}
	at := n.Span
	at.End = min(at.End, r.lineEnd(at.Start))
	r.fail("yaml-malformed", at, "write keys and values, one `key: value` a line", "keys and values belong here")
}

// glued reports a key at span at that has no blank behind its colon, and
// whether there was one.
func (r *treeReader) glued(at source.Span) bool {
	text := r.text[at.Start:at.End]
	if !gluedKey.Match(text) {
		return false
	}
	i := at.Start + bytes.IndexByte(text, ':')
	r.fail("yaml-malformed", source.Span{Start: i, End: i + 1}, "write `"+string(r.text[at.Start:i])+": ` and the value",
		"a space is missing after the colon")
	return true
}

// lineEnd returns the end of the line that holds i, without trailing white
// space.
func (r *treeReader) lineEnd(i int) int {
	return i + len(bytes.TrimRight(r.text[i:r.next(i)], " \t\r\n"))
}

// warnCut warns of text behind a # that was probably not meant as a comment. A
// comment has a blank behind its #; "drill #30" and "mark # 3" were hardly
// meant as one.
func (r *treeReader) warnCut(n *Node) {
	i := n.Span.End
	for i < r.span.End && (r.text[i] == ' ' || r.text[i] == '\t') {
		i++
	}
	end := r.lineEnd(min(i, r.span.End))
	if i == n.Span.End || i >= end || r.text[i] != '#' || n.Quoted {
		return
	}
	rest := r.text[i+1 : end]
	noBlank := len(rest) > 0 && rest[0] != ' ' && rest[0] != '\t' && rest[0] != '#'
	number := i-n.Span.End == 1 && len(rest) > 1 && rest[0] == ' ' && digit(rest[1])
	if noBlank || number {
		r.msgs.Report("text-cut", source.Place{File: r.file, Span: source.Span{Start: i, End: end}},
			"put quotes around the text, or a space after the `#` of a comment", "YAML takes everything from ` #` on as a comment")
	}
}

// checkFolded reports a list item that YAML folded into the text above it
// because its dash is indented too far.
func (r *treeReader) checkFolded(n *Node) {
	if n.Quoted {
		return
	}
	for i := r.next(n.Span.Start); i < n.Span.End; i = r.next(i) {
		for i < n.Span.End && blank(r.text[i]) {
			i++
		}
		if i+1 < n.Span.End && r.text[i] == '-' && blank(r.text[i+1]) {
			r.fail("text-folded", source.Span{Start: i, End: i + 1}, "put the `-` under the one above, or quotes around the whole text",
				"this line belongs to the text above: its `-` stands too far to the right")
			return
		}
	}
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

var libraryLine = regexp.MustCompile(`line (\d+):`)

// explain reports why the library could not parse the document: the slip that
// slipFinder recognizes, else the line in the library's error, which may be
// one line too early.
func (r *treeReader) explain(err error) {
	s := &slipFinder{treeReader: r, lineStart: r.span.Start, awaitsValue: true, levels: []level{{column: -1}}}
	if s.find(); r.failed.IsSet() {
		return
	}
	at := r.span.Start
	if m := libraryLine.FindStringSubmatch(err.Error()); m != nil {
		n, _ := strconv.Atoi(m[1])
		at = r.at(n, 1)
	}
	for at < r.span.End && blank(r.text[at]) {
		at++
	}
	r.fail("yaml-malformed", source.Span{Start: at, End: r.lineEnd(min(at, r.span.End))},
		"look at the colons, indents, quotes and brackets of this line and the one above", "this YAML cannot be read")
}
