// Package value reads the single values of a tree: texts, keywords, switches,
// counts, ids and quantities. Every value that is present and unreadable is
// reported, by the schema or here.
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

// A Reader reads the values of one thing: a block, its limits, a part. The
// first unreadable value marks the whole thing as bad, so callers need not
// check each value. An absent value reads as the zero value and is no error.
type Reader struct {
	Mark          quantity.DecimalMark
	Msgs          *diag.List
	SchemaRefused diag.Reported // set if the tree violated its schema, so that values of the wrong kind have been reported
	bad           diag.Reported
}

// ForPart returns a reader for another thing of the same tree, which is marked
// as bad on its own.
func (r *Reader) ForPart() *Reader {
	return &Reader{Mark: r.Mark, Msgs: r.Msgs, SchemaRefused: r.SchemaRefused}
}

// Bad returns the proof that an unreadable value was reported, unset if all
// could be read.
func (r *Reader) Bad() diag.Reported { return r.bad }

// Fail marks the thing as bad because of an error reported elsewhere.
func (r *Reader) Fail(why diag.Reported) { r.bad = r.bad.Or(why.Must()) }

// Refuse reports an error and marks the thing as bad.
func (r *Reader) Refuse(slug string, at source.Place, fix, format string, args ...any) *diag.Diagnostic {
	d := r.Msgs.Report(slug, at, fix, format, args...)
	r.Fail(d.Proof())
	return d
}

// RefuseOnce marks the thing as bad for an error that its schema catches too.
// It reports the error only if the schema did not.
func (r *Reader) RefuseOnce(slug string, n *syntax.Node, fix, format string, args ...any) {
	if r.SchemaRefused.IsSet() {
		r.Fail(r.SchemaRefused)
		return
	}
	r.Refuse(slug, n.Place(), fix, format, args...)
}

// Require reports the first missing key of a mapping, and whether all are
// there.
func (r *Reader) Require(n *syntax.Node, keys ...string) bool {
	if r.Mapping(n) == nil {
		return false
	}
	for _, key := range keys {
		if n.Get(key) == nil {
			r.RefuseOnce("key-missing", n, "add `"+key+":`", "`%s` is missing", key)
			return false
		}
	}
	return true
}

// Text returns a scalar with white space folded, "" if it is absent. It
// reports an empty scalar and anything that is not a scalar.
func (r *Reader) Text(n *syntax.Node) string {
	if n == nil {
		return ""
	}
	if n.Kind != syntax.Scalar {
		r.RefuseOnce("value-kind", n, "write it as one text", "a list or keys stand where one value belongs")
		return ""
	}
	text := strings.Join(strings.Fields(n.Text), " ")
	if text == "" || n.Null() {
		r.RefuseOnce("value-kind", n, "write it, or take its key out", "nothing is written here")
		return ""
	}
	return text
}

// Wording returns a text that must contain a letter.
func (r *Reader) Wording(n *syntax.Node, fix string) string {
	text := r.Text(n)
	if text != "" && !strings.ContainsFunc(text, unicode.IsLetter) {
		r.Refuse("value-kind", n.Place(), fix, "`%s` stands where words belong", text)
	}
	return text
}

// OneOf returns a scalar that must be one of words, "" if it is absent or not
// one of them.
func OneOf[W ~string](r *Reader, n *syntax.Node, words ...W) W {
	word := W(r.Text(n))
	if word == "" || slices.Contains(words, word) {
		return word
	}
	var have []string
	for _, w := range words {
		have = append(have, "`"+string(w)+"`")
	}
	r.RefuseOnce("value-unknown", n, "write "+diag.Series(have, "or"), "`%s` is none of the words that belong here", word)
	return ""
}

// Switch reports whether a key is switched on, by yes or true.
func (r *Reader) Switch(n *syntax.Node) bool {
	switch text := r.Text(n); strings.ToLower(text) {
	case "yes", "true":
		return true
	case "", "no", "false":
	default:
		r.RefuseOnce("value-unknown", n, "write `yes` or `no`", "`%s` is neither yes nor no", text)
	}
	return false
}

// maxCount is the limit of a Count.
const maxCount = 999999

// Count returns a whole number, otherwise if it is absent.
func (r *Reader) Count(n *syntax.Node, otherwise int) int {
	text := r.Text(n)
	if text == "" {
		return otherwise
	}
	c, err := strconv.Atoi(text)
	if err != nil || c < 1 || c > maxCount {
		r.RefuseOnce("value-kind", n, "write it in digits, such as `10`", "`%s` is not a whole number from 1 to %d", text, maxCount)
		return otherwise
	}
	return c
}

// Mapping returns n if it is a mapping, else nil.
func (r *Reader) Mapping(n *syntax.Node) *syntax.Node {
	if n == nil || n.Kind == syntax.Mapping {
		return n
	}
	r.RefuseOnce("value-kind", n, "write its keys below it", "keys belong here")
	return nil
}

// Fields returns the fields of a mapping.
func (r *Reader) Fields(n *syntax.Node) []syntax.Field {
	if n = r.Mapping(n); n == nil {
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
		r.RefuseOnce("value-kind", n, "write a list in brackets", "a list belongs here")
	}
	return n.Items
}

// Pair returns the items of a sequence that must have two.
func (r *Reader) Pair(n *syntax.Node, fix string) []*syntax.Node {
	if n == nil || n.Kind == syntax.Sequence && len(n.Items) == 2 {
		return r.Sequence(n)
	}
	r.RefuseOnce("value-kind", n, fix, "a list of two belongs here")
	return nil
}

// Items returns a sequence's items; a single value is a list of one.
func (r *Reader) Items(n *syntax.Node) []*syntax.Node {
	switch {
	case n == nil:
		return nil
	case n.Kind == syntax.Sequence:
		return n.Items
	}
	return []*syntax.Node{n}
}

// List returns the scalars of a list of names. A single name is a list of one,
// but one that contains a comma is reported: it lacks its brackets.
func (r *Reader) List(n *syntax.Node) []*syntax.Node {
	if n != nil && n.Kind == syntax.Scalar && strings.Contains(n.Text, ",") {
		r.RefuseOnce("value-kind", n, "write `["+n.Text+"]`", "a list stands in brackets")
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

// KnownName reports a name that is not in have, and whether it is. What is the
// kind of thing it should name ("part"), where the key that declares them.
func (r *Reader) KnownName(slug, what string, n *syntax.Node, have []string, where string) bool {
	name := r.Text(n)
	return name != "" && r.KnownKey(slug, what, syntax.Field{Key: name, KeySpan: n.Span, Value: n}, have, where)
}

// KnownKey is KnownName for a key.
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
