// Package value reads the single values of a tree: texts, words of a list,
// switches, counts, ids and quantities. What is there and cannot be read is
// always said: by the schema, or here.
package value

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// A Reader reads the values of one thing: a block, its limits, a part. The first
// of them that cannot be read marks the thing as bad, so that nobody has to ask
// after each. A value that is not there reads as nothing, and is no fault.
type Reader struct {
	Mark    quantity.Mark
	Msgs    *diag.List
	Refused diag.Reported // the tree broke its schema: a value of the wrong kind has been reported
	bad     diag.Reported
}

// Thing returns a reader for another thing of the same tree, or for a part that
// may be bad alone.
func (r *Reader) Thing() *Reader { return &Reader{Mark: r.Mark, Msgs: r.Msgs, Refused: r.Refused} }

// Bad returns the proof that something of the thing could not be read, which was
// reported.
func (r *Reader) Bad() diag.Reported { return r.bad }

// Fail marks the thing as bad by what was reported elsewhere.
func (r *Reader) Fail(why diag.Reported) { r.bad = r.bad.Or(why.Must()) }

// Refuse reports an error and marks the thing as bad.
func (r *Reader) Refuse(slug string, at source.Place, fix, format string, args ...any) *diag.Diagnostic {
	d := r.Msgs.Report(slug, at, fix, format, args...)
	r.Fail(d.Proof())
	return d
}

// Wrong marks the thing as bad for what its schema forbids. It reports it where
// the schema let it pass.
func (r *Reader) Wrong(slug string, n *syntax.Node, fix, format string, args ...any) {
	if r.Refused.Is() {
		r.Fail(r.Refused)
		return
	}
	r.Refuse(slug, n.Place(), fix, format, args...)
}

// Need says whether a mapping has all of some keys.
func (r *Reader) Need(n *syntax.Node, keys ...string) bool {
	if r.Keys(n) == nil {
		return false
	}
	for _, key := range keys {
		if n.Get(key) == nil {
			r.Wrong("key-missing", n, "add `"+key+":`", "`%s` is missing", key)
			return false
		}
	}
	return true
}

// Text returns a scalar as one line, "" where there is none. One that says
// nothing is a slip, and so is anything but a scalar.
func (r *Reader) Text(n *syntax.Node) string {
	if n == nil {
		return ""
	}
	if n.Kind != syntax.Scalar {
		r.Wrong("value-kind", n, "write it as one text", "a list or keys stand where one value belongs")
		return ""
	}
	text := strings.Join(strings.Fields(n.Text), " ")
	if text == "" || n.Null() {
		r.Wrong("value-kind", n, "write it, or take its key out", "nothing is written here")
		return ""
	}
	return text
}

// Says returns a text that must hold a word, as "0" does not.
func (r *Reader) Says(n *syntax.Node, fix string) string {
	text := r.Text(n)
	if text != "" && !strings.ContainsFunc(text, unicode.IsLetter) {
		r.Refuse("value-kind", n.Place(), fix, "`%s` stands where words belong", text)
	}
	return text
}

// Word returns the one of words that a scalar is, "" where there is none.
func Word[W ~string](r *Reader, n *syntax.Node, words ...W) W {
	word := W(r.Text(n))
	if word == "" || slices.Contains(words, word) {
		return word
	}
	var have []string
	for _, w := range words {
		have = append(have, "`"+string(w)+"`")
	}
	r.Wrong("value-unknown", n, "write "+diag.Series(have, "or"), "`%s` is none of the words that belong here", word)
	return ""
}

// Yes says whether a key is switched on, as a writer or YAML says it.
func (r *Reader) Yes(n *syntax.Node) bool {
	switch text := r.Text(n); strings.ToLower(text) {
	case "yes", "true":
		return true
	case "", "no", "false":
	default:
		r.Wrong("value-unknown", n, "write `yes` or `no`", "`%s` is neither yes nor no", text)
	}
	return false
}

// mostCount is the highest number of like things.
const mostCount = 999999

// Count returns a whole number, the given one where none is written.
func (r *Reader) Count(n *syntax.Node, otherwise int) int {
	text := r.Text(n)
	if text == "" {
		return otherwise
	}
	c, err := strconv.Atoi(text)
	if err != nil || c < 1 || c > mostCount {
		r.Wrong("value-kind", n, "write it in digits, such as `10`", "`%s` is no whole number from 1 to %d", text, mostCount)
		return otherwise
	}
	return c
}

// Keys returns a value that has keys, nil where there is none.
func (r *Reader) Keys(n *syntax.Node) *syntax.Node {
	if n == nil || n.Kind == syntax.Mapping {
		return n
	}
	r.Wrong("value-kind", n, "write its keys below it", "keys belong here")
	return nil
}

// Fields returns the fields of a mapping.
func (r *Reader) Fields(n *syntax.Node) []syntax.Field {
	if n = r.Keys(n); n == nil {
		return nil
	}
	return n.Fields
}

// Sequence returns the items of a sequence.
func (r *Reader) Sequence(n *syntax.Node) []*syntax.Node {
	if n == nil {
		return nil
	}
	if n.Kind != syntax.Sequence {
		r.Wrong("value-kind", n, "write a list in brackets", "a list belongs here")
	}
	return n.Items
}

// Pair returns the items of a sequence of two.
func (r *Reader) Pair(n *syntax.Node, fix string) []*syntax.Node {
	if n == nil || n.Kind == syntax.Sequence && len(n.Items) == 2 {
		return r.Sequence(n)
	}
	r.Wrong("value-kind", n, fix, "a list of two belongs here")
	return nil
}

// Items returns a sequence's items; a value that stands alone is a list of one.
func (r *Reader) Items(n *syntax.Node) []*syntax.Node {
	switch {
	case n == nil:
		return nil
	case n.Kind == syntax.Sequence:
		return n.Items
	}
	return []*syntax.Node{n}
}

// List returns the scalars of a list of names; one that stands alone is a list
// of one, but for one with a comma in it, which lacks its brackets.
func (r *Reader) List(n *syntax.Node) []*syntax.Node {
	if n != nil && n.Kind == syntax.Scalar && strings.Contains(n.Text, ",") {
		r.Wrong("value-kind", n, "write `["+n.Text+"]`", "a list stands in brackets")
		return nil
	}
	var out []*syntax.Node
	for _, i := range r.Items(n) {
		if r.Text(i) != "" {
			out = append(out, i)
		}
	}
	return out
}

// Texts returns the texts of a list.
func (r *Reader) Texts(n *syntax.Node) []string {
	var out []string
	for _, i := range r.List(n) {
		out = append(out, r.Text(i))
	}
	return out
}

// Known reports a name that is none of have and returns whether it is one.
// What says what it should name ("part"), where the key that declares them.
func (r *Reader) Known(slug, what string, n *syntax.Node, have []string, where string) bool {
	name := r.Text(n)
	return name != "" && r.KnownKey(slug, what, syntax.Field{Key: name, KeySpan: n.Span, Value: n}, have, where)
}

// KnownKey does the same for a key that names something.
func (r *Reader) KnownKey(slug, what string, f syntax.Field, have []string, where string) bool {
	if slices.Contains(have, f.Key) {
		return true
	}
	at := r.Key(f)
	d := r.Refuse(slug, at, "declare it under `"+where+"`", "no %s is called `%s`", what, f.Key)
	if near := diag.Nearest(f.Key, have); near != "" {
		d.Fix, d.Edit = "write `"+near+"`", &diag.Edit{At: at, Text: near}
	}
	return false
}
