package unit

import (
	"math/big"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// A Reader reads single values of a Tree: texts, ids and quantities. It
// reports a quantity or an id that is malformed and a name that names nothing.
// A value of the wrong kind, such as a list where a text belongs, it passes
// over in silence: the schema has reported it. The shop's facts are read with
// it too.
type Reader struct {
	Mark quantity.Mark
	Msgs *diag.List
}

// Text returns a scalar as one line, "" for anything else, and for YAML's null.
func (r Reader) Text(n *syntax.Node) string {
	if n == nil || n.Kind != syntax.Scalar || n.Null() {
		return ""
	}
	return strings.Join(strings.Fields(n.Text), " ")
}

// Yes says whether a key is switched on, as a writer or YAML says it.
func (r Reader) Yes(n *syntax.Node) bool { t := r.Text(n); return t == "yes" || t == "true" }

// Fields returns the fields of a mapping, none for anything else.
func (r Reader) Fields(n *syntax.Node) []syntax.Field {
	if n == nil {
		return nil
	}
	return n.Fields
}

// List returns the scalars of a list; one that stands alone is a list of one,
// but for one with a comma in it, which lacks its brackets: the schema has
// reported it.
func (r Reader) List(n *syntax.Node) []*syntax.Node {
	if n == nil {
		return nil
	}
	items := n.Items
	if n.Kind == syntax.Scalar && !strings.Contains(n.Text, ",") {
		items = []*syntax.Node{n}
	}
	var out []*syntax.Node
	for _, i := range items {
		if r.Text(i) != "" {
			out = append(out, i)
		}
	}
	return out
}

// Texts returns the texts of a list.
func (r Reader) Texts(n *syntax.Node) []string {
	var out []string
	for _, i := range r.List(n) {
		out = append(out, r.Text(i))
	}
	return out
}

// mostCount is the highest number of like things: the schema refuses a higher one.
const mostCount = 999999

// Count returns a whole number, the given one where none is written or it is one
// that the schema has refused.
func (r Reader) Count(n *syntax.Node, otherwise int) int {
	if c, err := strconv.Atoi(r.Text(n)); err == nil && c > 0 && c <= mostCount {
		return c
	}
	return otherwise
}

// Band returns limits or a bare value of a dimension (quantity.None for any),
// nil when there is none or it is malformed.
func (r Reader) Band(n *syntax.Node, want quantity.Dimension) *quantity.Band {
	if r.Text(n) == "" {
		return nil
	}
	b, p := quantity.ParseBandOf(n.Text, r.Mark, want)
	if r.problem(n, 0, p) {
		return nil
	}
	return &b
}

// Value returns one number with its unit, as Band does.
func (r Reader) Value(n *syntax.Node, want quantity.Dimension) *quantity.Value {
	if r.Text(n) == "" {
		return nil
	}
	v, p := quantity.ParseValueOf(n.Text, r.Mark, want)
	if r.problem(n, 0, p) {
		return nil
	}
	return &v
}

// Either returns a value that may be written with ± before it, as deviations
// are: "±4 %", "4 %".
func (r Reader) Either(n *syntax.Node, want quantity.Dimension) *quantity.Value {
	if r.Text(n) == "" {
		return nil
	}
	text, cut := n.Text, 0
	for _, sign := range []string{"±", "+/-", "+-"} {
		if rest, ok := strings.CutPrefix(text, sign); ok {
			rest = strings.TrimLeft(rest, " ")
			text, cut = rest, len(text)-len(rest)
		}
	}
	v, p := quantity.ParseValueOf(text, r.Mark, want)
	if r.problem(n, cut, p) {
		return nil
	}
	return &v
}

// Wordy reports a word or a name where a value belongs, or one word of ours: the
// mend says both.
func (r Reader) Wordy(n *syntax.Node, mend string) bool {
	text := r.Text(n)
	first, _ := utf8.DecodeRuneInString(text)
	if !unicode.IsLetter(first) || strings.ContainsAny(text, "0123456789") && strings.Contains(text, " ") {
		return false
	}
	r.Msgs.Report("quantity-malformed", n.Place(), mend, "`%s` is no value with its unit", text)
	return true
}

// Above returns a value that is more than nothing, nil for one that is not,
// which is reported with what it is: "a shim is". The mend says what to write.
func (r Reader) Above(n *syntax.Node, want quantity.Dimension, what, mend string) *quantity.Value {
	v := r.Value(n, want)
	if v != nil && v.Value.Sign() <= 0 {
		r.Msgs.Report("quantity-malformed", n.Place(), mend, "%s more than nothing", what)
		return nil
	}
	return v
}

// Share returns a percentage as a part of one: 1/25 for 4 %.
func (r Reader) Share(n *syntax.Node) *big.Rat {
	v := r.Either(n, quantity.Proportion)
	if v == nil {
		return nil
	}
	return new(big.Rat).Quo(v.Value, big.NewRat(100, 1))
}

// Number returns a plain number, nil when there is none or it is malformed.
func (r Reader) Number(n *syntax.Node) *big.Rat {
	if r.Text(n) == "" {
		return nil
	}
	x, p := quantity.ParseNumber(n.Text, r.Mark)
	if r.problem(n, 0, p) {
		return nil
	}
	return x.Value
}

// problem reports what is wrong with a quantity that begins at byte cut of a
// scalar, if anything is.
func (r Reader) problem(n *syntax.Node, cut int, p *quantity.Problem) bool {
	if p == nil {
		return false
	}
	span := n.Sub(cut+p.Start, cut+p.End)
	r.Msgs.Report(p.Slug, source.Place{File: n.File, Span: span}, p.Help, "%s", p.Message)
	return true
}

// Known reports a name that is none of have and returns whether it is one.
// What says what it should name ("part"), where the key that declares them.
func (r Reader) Known(slug, what string, n *syntax.Node, have []string, where string) bool {
	return r.known(slug, what, r.Text(n), n.Place(), have, where)
}

func (r Reader) known(slug, what, name string, at source.Place, have []string, where string) bool {
	for _, h := range have {
		if h == name {
			return true
		}
	}
	d := r.Msgs.Report(slug, at, "declare it under `"+where+"`", "no %s is called `%s`", what, name)
	if near := diag.Nearest(name, have); near != "" {
		d.Help, d.Fix = "write `"+near+"`", &diag.Fix{At: at, Text: near}
	}
	return false
}

// CompareAlso reports a band that does not agree with the first one, which a
// manual prints beside it, or that reaches past it.
func (r Reader) CompareAlso(first, second quantity.Band, firstAt, secondAt source.Place) {
	var d *diag.Diagnostic
	if a, b := first.Unit.Dimension, second.Unit.Dimension; a != b {
		d = r.Msgs.Report("unit-kind", secondAt, "write it in a unit of "+a.String(), "%s is of %s, and the first is of %s", second.Written, b, a)
		d.Related = append(d.Related, diag.Related{At: firstAt, Message: "it is compared with this"})
		return
	}
	switch quantity.Also(first, second) {
	case quantity.Disagrees:
		d = r.Msgs.Report("also-disagrees", secondAt, "look both up again: "+first.Written+" is "+quantity.Restate(first, second, r.Mark),
			"%s is not %s", second.Written, first.Written)
	case quantity.Wider:
		d = r.Msgs.Report("also-wider", secondAt, "nothing to mend if both stand so in the source: the cards use the first alone",
			"%s reaches past %s", second.Written, first.Written)
	default:
		return
	}
	d.Related = append(d.Related, diag.Related{At: firstAt, Message: "it is compared with this"})
}
