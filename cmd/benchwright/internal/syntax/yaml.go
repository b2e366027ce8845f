package syntax

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

// ReadTree parses a YAML file. It returns nil if it reported an error.
func ReadTree(f *source.File, msgs *diag.List) *Tree {
	text, ok := legible(f, msgs)
	if !ok {
		return nil
	}
	tree, _ := readTree(f, text, source.Span{Start: markLen(text), End: len(text)}, msgs)
	return tree
}

// readTree parses the YAML at span, which must begin at the start of a line of
// text; text is the file as legible returns it. If it reported an error it
// returns nil and the proof.
func readTree(f *source.File, text []byte, span source.Span, msgs *diag.List) (*Tree, diag.Reported) {
	r := &treeReader{file: f, text: text, span: span, first: f.Position(span.Start).Line, msgs: msgs}
	tree := &Tree{File: f, Span: span}
	if len(bytes.TrimSpace(text[span.Start:span.End])) == 0 {
		tree.Root = r.empty()
		return tree, r.failed
	}
	if r.refuseDocuments(); r.failed.IsSet() {
		return nil, r.failed
	}
	doc, err := decode(text[span.Start:span.End])
	if err != nil {
		r.explain(err)
		return nil, r.failed
	}
	if doc == nil || len(doc.Content) == 0 {
		tree.Root = r.empty()
		return tree, r.failed
	}
	tree.Root = r.node(doc.Content[0], 1, -1)
	if !r.failed.IsSet() && tree.Root.Kind != Mapping {
		r.notMapping(tree.Root)
	}
	if r.failed.IsSet() {
		return nil, r.failed
	}
	return tree, r.failed
}

// decode returns the document node, nil for a document without content. The
// library silently stops at an early end of the document, so decode also makes
// sure that nothing follows. The library panics on a few malformed comments;
// that becomes an error.
func decode(text []byte) (doc *yaml.Node, err error) {
	defer func() {
		if p := recover(); p != nil {
			doc, err = nil, fmt.Errorf("%v", p)
		}
	}()
	d := yaml.NewDecoder(bytes.NewReader(plainBlankLines(text)))
	doc = new(yaml.Node)
	switch err := d.Decode(doc); {
	case errors.Is(err, io.EOF):
		return nil, nil
	case err != nil:
		return nil, err
	}
	switch err := d.Decode(new(yaml.Node)); {
	case err == nil:
		return nil, errors.New("content after the document")
	case !errors.Is(err, io.EOF):
		return nil, err
	}
	return doc, nil
}

// plainBlankLines returns the text with blanks instead of tabs in lines of
// only white space: the library refuses such tabs, and no one can see them.
func plainBlankLines(text []byte) []byte {
	if bytes.IndexByte(text, '\t') < 0 {
		return text
	}
	text = bytes.Clone(text)
	for line := range bytes.Lines(text) {
		if len(bytes.TrimSpace(line)) == 0 {
			for i, c := range line {
				if c == '\t' {
					line[i] = ' '
				}
			}
		}
	}
	return text
}

// A treeReader converts the nodes of one YAML document and finds their spans.
type treeReader struct {
	file  *source.File
	text  []byte      // the file as legible returns it
	span  source.Span // the document in the file
	first int         // number of its first line in the file, 1-based
	msgs  *diag.List

	failed          diag.Reported // the proof of the first error
	tooDeepReported bool          // the nesting error was reported

	// the position looked up last; nodes come in order, so the next is near
	line, column, offset int
}

func (r *treeReader) empty() *Node {
	return &Node{Kind: Mapping, File: r.file, Span: source.Span{Start: r.span.Start, End: r.span.Start}}
}

// fail reports an error.
func (r *treeReader) fail(slug string, at source.Span, fix, format string, args ...any) *diag.Diagnostic {
	d := r.msgs.Report(slug, source.Place{File: r.file, Span: at}, fix, format, args...)
	r.failed = r.failed.Or(d.Proof())
	return d
}

// at returns the file offset of a line and column of the document, both
// 1-based, the column in runes.
func (r *treeReader) at(line, column int) int {
	if line != r.line || column < r.column {
		r.line, r.column = line, 1
		r.offset = max(r.span.Start, min(r.file.LineSpan(r.first+line-1).Start, r.span.End))
	}
	for r.column < column && r.offset < r.span.End {
		_, size := utf8.DecodeRune(r.text[r.offset:r.span.End])
		r.offset += size
		r.column++
	}
	return r.offset
}

// node converts a library node. Indent is the 0-based column of the enclosing
// block collection, -1 outside any.
func (r *treeReader) node(y *yaml.Node, depth, indent int) *Node {
	start := r.at(y.Line, y.Column)
	n := &Node{File: r.file, Span: source.Span{Start: start, End: start}}
	if r.refuseFeature(y, start) {
		return n
	}
	flow := y.Style&yaml.FlowStyle != 0
	if y.Kind != yaml.ScalarNode {
		if depth > maxDepth {
			r.tooDeep(start)
			return n
		}
		if !flow {
			indent = y.Column - 1
		}
	}
	switch y.Kind {
	case yaml.MappingNode:
		n.Kind = Mapping
		r.mapping(n, y, depth, indent)
	case yaml.SequenceNode:
		n.Kind = Sequence
		for _, c := range y.Content {
			item := r.node(c, depth+1, indent)
			if missing(c) {
				r.warnCut(item)
			}
			n.Items = append(n.Items, item)
			n.Span.End = max(n.Span.End, item.Span.End)
		}
		if flow {
			n.Span.End = r.closing(start, n.Span.End, '[', ']')
			r.commaItems(n.Items)
		}
	default:
		n.Text = y.Value
		n.Quoted = y.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle|yaml.LiteralStyle|yaml.FoldedStyle) != 0
		n.Span.End = r.scalarEnd(y, start, indent)
		if !missing(y) {
			r.warnCut(n)
			r.checkFolded(n)
		}
		if len(n.Text) > maxValue && utf8.RuneCountInString(n.Text) > maxValue {
			r.fail("too-large", n.Span, "shorten it; what is to be read at length stands in the text of a step", "a value has at most %d characters", maxValue)
		}
	}
	return n
}

// mapping converts the keys and values of a mapping into n.
func (r *treeReader) mapping(n *Node, y *yaml.Node, depth, indent int) {
	var fields []Field
	for i := 0; i+1 < len(y.Content); i += 2 {
		key, ok := r.key(y.Content[i], indent)
		value := r.node(y.Content[i+1], depth+1, indent)
		if !ok {
			continue
		}
		if missing(y.Content[i+1]) {
			value.Span = r.afterKey(key.Span.End)
			r.warnCut(value)
		}
		n.Span.End = max(n.Span.End, key.Span.End, value.Span.End)
		fields = append(fields, Field{Key: key.Text, KeySpan: key.Span, Value: value})
	}
	if y.Style&yaml.FlowStyle != 0 {
		n.Span.End = r.closing(n.Span.Start, n.Span.End, '{', '}')
		fields = r.commaFields(fields)
	}
	seen := make(map[string]source.Span, len(fields))
	for _, f := range fields {
		if first, twice := seen[f.Key]; twice {
			d := r.fail("yaml-duplicate-key", f.KeySpan, "keep one of the two", "the key `%s` is written twice here", f.Key)
			d.Related = []diag.Related{{At: source.Place{File: r.file, Span: first}, Message: "it stands here already"}}
			continue
		}
		seen[f.Key] = f.KeySpan
		n.Fields = append(n.Fields, f)
	}
}

// tooDeep reports excessive nesting, once.
func (r *treeReader) tooDeep(at int) {
	if !r.tooDeepReported {
		r.tooDeepReported = true
		r.fail("too-large", source.Span{Start: at, End: min(at+1, r.span.End)}, "write it flatter",
			"this is nested more than %d deep", maxDepth)
	}
}

// missing reports whether a value was left empty.
func missing(y *yaml.Node) bool { return y.Kind == yaml.ScalarNode && y.Style == 0 && y.Value == "" }

// afterKey returns the empty span of the missing value of a key that ends at
// end: behind its colon, or behind the key without one.
func (r *treeReader) afterKey(end int) source.Span {
	i := end
	for i < r.span.End && blank(r.text[i]) {
		i++
	}
	if i < r.span.End && r.text[i] == ':' {
		end = i + 1
	}
	return source.Span{Start: end, End: end}
}

// scalarEnd returns the end offset of a scalar that begins at start.
func (r *treeReader) scalarEnd(y *yaml.Node, start, indent int) int {
	text := r.text[:r.span.End]
	switch {
	case y.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0:
		end, _ := quoteEnd(text, start)
		return end
	case y.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		return blockEnd(text, start, indent)
	}
	// A plain scalar consists of its words, with the white space between them
	// folded.
	at := start
	for word := range strings.FieldsFuncSeq(y.Value, func(c rune) bool { return c < 0x80 && blank(byte(c)) }) {
		for at < len(text) && blank(text[at]) {
			at++
		}
		if !bytes.HasPrefix(text[at:], []byte(word)) {
			return at // unreachable: the words come from the text
		}
		at += len(word)
	}
	return at
}

// quoteEnd returns the offset behind a quoted text that begins at start, and
// whether it is closed. If not, the offset is the end of text.
func quoteEnd(text []byte, start int) (end int, closed bool) {
	for i := start + 1; i < len(text); i++ {
		switch {
		case text[start] == '"' && text[i] == '\\':
			i++
		case text[i] != text[start]:
		case text[start] == '\'' && i+1 < len(text) && text[i+1] == '\'':
			i++
		default:
			return i + 1, true
		}
	}
	return len(text), false
}

// blockEnd returns the end of a block scalar whose header begins at start: the
// end of its last nonblank line, or of its header. Indent is the column of the
// enclosing collection.
func blockEnd(text []byte, start, indent int) int {
	i := start
	explicit := 0
	for i < len(text) && text[i] != '\n' && text[i] != '#' {
		if text[i] >= '1' && text[i] <= '9' {
			explicit = max(indent, 0) + int(text[i]-'0')
		}
		i++
	}
	end := i
	for end > start && blank(text[end-1]) {
		end--
	}
	for i < len(text) && text[i] != '\n' {
		i++
	}
	for inner := explicit; i < len(text); {
		i++ // skip the line feed
		line := i
		for i < len(text) && text[i] != '\n' {
			i++
		}
		content := bytes.TrimRight(text[line:i], " \t\r")
		width := len(content) - len(bytes.TrimLeft(content, " "))
		if len(content) == 0 {
			continue
		}
		if inner == 0 {
			inner = max(width, indent+1)
		}
		if width < inner {
			break
		}
		end = line + len(content)
	}
	return end
}

// closing returns the end of a flow collection that begins at start and whose
// last value ends at end. A single pair in [ ] is a mapping without brackets;
// it ends with its value.
func (r *treeReader) closing(start, end int, open, closer byte) int {
	if start >= r.span.End || r.text[start] != open {
		return end
	}
	for i := max(end, start+1); i < r.span.End; i++ {
		switch c := r.text[i]; {
		case c == closer:
			return i + 1
		case c == '#' && blank(r.text[i-1]):
			for i+1 < r.span.End && r.text[i+1] != '\n' {
				i++
			}
		case c != ',' && c != ':' && !blank(c):
			return end
		}
	}
	return end
}
