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

// Band returns limits or a bare value of a dimension (quantity.None for any),
// nil when there is none or it is malformed.
func (r *Reader) Band(n *syntax.Node, want quantity.Dimension) *quantity.Band {
	return r.BandLike(n, want, quantity.None)
}

// BandLike is Band where a fix had best name a unit of a dimension that is not
// asked for.
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

// BandBefore reads the beginning of a scalar that says more behind it.
func (r *Reader) BandBefore(n *syntax.Node, text string, want quantity.Dimension) *quantity.Band {
	b, p := quantity.ParseBandOf(text, r.Mark, want)
	if r.problem(n, 0, p) {
		return nil
	}
	return &b
}

// Value returns one number with its unit, as Band does.
func (r *Reader) Value(n *syntax.Node, want quantity.Dimension) *quantity.Value {
	if r.Text(n) == "" {
		return nil
	}
	return r.value(n, 0, want)
}

// value reads what of a scalar begins at byte cut.
func (r *Reader) value(n *syntax.Node, cut int, want quantity.Dimension) *quantity.Value {
	v, p := quantity.ParseValueOf(n.Text[cut:], r.Mark, want)
	if r.problem(n, cut, p) {
		return nil
	}
	return &v
}

// Either returns a value that may be written with ± before it, as deviations
// are: "±4 %", "4 %".
func (r *Reader) Either(n *syntax.Node, want quantity.Dimension) *quantity.Value {
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

// Wordy reports a word or a name where a value belongs, or one word of ours: the
// fix says both. What it leaves is for the reader of the value to judge.
func (r *Reader) Wordy(n *syntax.Node, fix string) bool {
	text := r.Text(n)
	first, _ := utf8.DecodeRuneInString(text)
	if !unicode.IsLetter(first) || strings.ContainsAny(text, "0123456789") && strings.Contains(text, " ") {
		return false
	}
	r.Refuse("quantity-malformed", n.Place(), fix, "`%s` is not a value with its unit of measure", text)
	return true
}

// Above returns a value that is more than nothing, nil for one that is not,
// which is reported with what it is: "a shim is". The fix says what to write.
func (r *Reader) Above(n *syntax.Node, want quantity.Dimension, what, fix string) *quantity.Value {
	v := r.Value(n, want)
	if v != nil && v.Value.Sign() <= 0 {
		r.Refuse("quantity-malformed", n.Place(), fix, "%s more than nothing", what)
		return nil
	}
	return v
}

// Share returns a percentage as a part of one: 1/25 for 4 %.
func (r *Reader) Share(n *syntax.Node) *big.Rat {
	v := r.Either(n, quantity.Proportion)
	if v == nil {
		return nil
	}
	return new(big.Rat).Quo(v.Value, big.NewRat(100, 1))
}

// Number returns a plain number, nil when there is none or it is malformed.
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

// problem reports what is wrong with a quantity that begins at byte cut of a
// scalar, if anything is.
func (r *Reader) problem(n *syntax.Node, cut int, p *quantity.Problem) bool {
	if p == nil {
		return false
	}
	r.Refuse(p.Slug, source.Place{File: n.File, Span: n.Sub(cut+p.Start, cut+p.End)}, p.Fix, "%s", p.Message)
	return true
}

// fromTo reads two whole numbers: "-5 to 5", "0..12".
var fromTo = regexp.MustCompile(`^([-+−]?)([0-9]{1,2}) ?(?:to|\.\.|–) ?([-+−]?)([0-9]{1,2})$`)

// Marks returns the first and the last mark of a span of marks, "-5 to 5"; both
// are 0 where there is none.
func (r *Reader) Marks(n *syntax.Node) (first, last int) {
	text := r.Text(n)
	if text == "" {
		return 0, 0
	}
	span := fromTo.FindStringSubmatch(text)
	if span == nil {
		r.Wrong("value-kind", n, "write the lowest and the highest mark, as in `-5 to 5`", "`%s` is no span of marks", text)
		return 0, 0
	}
	first, last = whole(span[1], span[2]), whole(span[3], span[4])
	if first > last {
		r.Refuse("limits-reversed", Place(n), "write the lower mark first", "the marks are reversed: %d is more than %d", first, last)
	}
	return first, last
}

// whole returns a number of digits alone, below zero after a minus.
func whole(sign, digits string) int {
	n, _ := strconv.Atoi(digits) // one or two digits
	if sign == "-" || sign == "−" {
		return -n
	}
	return n
}

// Place is the part of a value's place that a message about its content points
// at: quotes around it are left out.
func Place(n *syntax.Node) source.Place {
	return source.Place{File: n.File, Span: n.Sub(0, len(n.Text))}
}
