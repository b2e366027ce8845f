package value

import (
	"math/big"
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// Band returns limits or a bare value of dimension want (quantity.None for
// any), nil when the value is absent or malformed.
func (r *Reader) Band(n *syntax.Node, want quantity.Dimension) *quantity.Band {
	return r.BandLike(n, want, quantity.None)
}

// BandLike is Band, but where the unit is missing its message suggests units
// of dimension like.
func (r *Reader) BandLike(n *syntax.Node, want, like quantity.Dimension) *quantity.Band {
	if r.Text(n) == "" {
		return nil
	}
	b, p := quantity.ParseBandOf(n.Text, r.Mark, want)
	if p != nil && p.Slug == "measure-missing" && like != quantity.None {
		_, p = quantity.ParseBandOf(n.Text, r.Mark, like)
	}
	if r.problem(n, 0, p) {
		return nil
	}
	return &b
}

// BandBefore is Band for the first part, text, of a scalar.
func (r *Reader) BandBefore(n *syntax.Node, text string, want quantity.Dimension) *quantity.Band {
	b, p := quantity.ParseBandOf(text, r.Mark, want)
	if r.problem(n, 0, p) {
		return nil
	}
	return &b
}

// Value returns one number with its unit, nil when it is absent or malformed.
func (r *Reader) Value(n *syntax.Node, want quantity.Dimension) *quantity.Value {
	if r.Text(n) == "" {
		return nil
	}
	return r.value(n, 0, want)
}

// value parses the scalar's text from byte start on.
func (r *Reader) value(n *syntax.Node, start int, want quantity.Dimension) *quantity.Value {
	v, p := quantity.ParseValueOf(n.Text[start:], r.Mark, want)
	if r.problem(n, start, p) {
		return nil
	}
	return &v
}

// Deviation returns a value that may have a ± before it: "±4 %", "4 %".
func (r *Reader) Deviation(n *syntax.Node, want quantity.Dimension) *quantity.Value {
	if r.Text(n) == "" {
		return nil
	}
	rest := n.Text
	for _, sign := range []string{"±", "+/-", "+-"} {
		if after, ok := strings.CutPrefix(rest, sign); ok {
			rest = strings.TrimLeft(after, " ")
		}
	}
	return r.value(n, len(n.Text)-len(rest), want)
}

// RefuseWord reports a word where a value, or one of the program's keywords,
// is expected; fix names both. It ignores text that looks like a value.
func (r *Reader) RefuseWord(n *syntax.Node, fix string) bool {
	text := r.Text(n)
	first, _ := utf8.DecodeRuneInString(text)
	if !unicode.IsLetter(first) || strings.ContainsAny(text, "0123456789") && strings.Contains(text, " ") {
		return false
	}
	r.Refuse("quantity-malformed", n.Place(), fix, "`%s` is not a value with its unit of measure", text)
	return true
}

// Positive returns a value above zero. It reports any other, with what as the
// subject and verb of the message ("a shim is") and the fix, and returns nil.
func (r *Reader) Positive(n *syntax.Node, want quantity.Dimension, what, fix string) *quantity.Value {
	v := r.Value(n, want)
	if v != nil && v.Value.Sign() <= 0 {
		r.Refuse("quantity-malformed", n.Place(), fix, "%s greater than zero", what)
		return nil
	}
	return v
}

// Percentage returns a percentage as a fraction of one: 1/25 for 4 %.
func (r *Reader) Percentage(n *syntax.Node) *big.Rat {
	v := r.Deviation(n, quantity.Proportion)
	if v == nil {
		return nil
	}
	return new(big.Rat).Quo(v.Value, big.NewRat(100, 1))
}

// Number returns a plain number, nil when it is absent or malformed.
func (r *Reader) Number(n *syntax.Node) *big.Rat {
	if r.Text(n) == "" {
		return nil
	}
	x, p := quantity.ParseNumber(n.Text, r.Mark)
	if r.problem(n, 0, p) {
		return nil
	}
	return x.Value
}

// problem reports p, found in the scalar's text from byte start on, and
// whether there is one.
func (r *Reader) problem(n *syntax.Node, start int, p *quantity.Problem) bool {
	if p == nil {
		return false
	}
	r.Refuse(p.Slug, source.Place{File: n.File, Span: n.Sub(start+p.Start, start+p.End)}, p.Fix, "%s", p.Message)
	return true
}

// markRange matches a range of whole numbers: "-5 to 5", "0..12".
var markRange = regexp.MustCompile(`^([-+−]?)([0-9]{1,2}) ?(?:to|\.\.|–) ?([-+−]?)([0-9]{1,2})$`)

// Marks returns the first and last mark of a range of marks, "-5 to 5"; both
// are 0 if it is absent or malformed.
func (r *Reader) Marks(n *syntax.Node) (first, last int) {
	text := r.Text(n)
	if text == "" {
		return 0, 0
	}
	span := markRange.FindStringSubmatch(text)
	if span == nil {
		r.RefuseOnce("value-kind", n, "write the lowest and the highest mark, as in `-5 to 5`", "`%s` is no span of marks", text)
		return 0, 0
	}
	first, last = signedDigits(span[1], span[2]), signedDigits(span[3], span[4])
	if first > last {
		r.Refuse("limits-reversed", Place(n), "write the lower mark first", "the marks are reversed: %d is more than %d", first, last)
	}
	return first, last
}

// signedDigits converts digits, negative after a minus sign.
func signedDigits(sign, digits string) int {
	n, _ := strconv.Atoi(digits) // cannot fail: one or two digits
	if sign == "-" || sign == "−" {
		return -n
	}
	return n
}

// Place returns the place of a scalar's text, without its quotes.
func Place(n *syntax.Node) source.Place {
	return source.Place{File: n.File, Span: n.Sub(0, len(n.Text))}
}
