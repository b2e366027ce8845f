package compare

import (
	"fmt"
	"math/big"
	"regexp"
	"strings"
	"unicode/utf8"

	"benchwright/cmd/benchwright/internal/quantity"
)

// keyed returns a text as it is compared: runs of white space are one space,
// and a quantity is its exact limits in the base unit of its kind, so that
// another spelling is no change.
func keyed(text string, mark quantity.DecimalMark) string {
	if unit, alone := quantity.UnitOf(text); alone {
		return "⟨" + unit.Symbol + "⟩"
	}
	var out []string
	for _, p := range parts(text, mark) {
		if p.band == nil {
			out = append(out, p.text)
			continue
		}
		out = append(out, p.before+exact(*p.band)+p.behind)
	}
	return strings.Join(out, " ")
}

// quantities returns the quantities of a text, in their order.
func quantities(text string, mark quantity.DecimalMark) []quantity.Band {
	var out []quantity.Band
	for _, p := range parts(text, mark) {
		if p.band != nil {
			out = append(out, *p.band)
		}
	}
	return out
}

// A part of a text is a word, or a quantity of several.
type part struct {
	text           string
	band           *quantity.Band
	before, behind string // punctuation round the quantity
}

// longest is how many words a quantity has: "at least 9-1/2 to 10 in" and a sign.
const longest = 7

func parts(text string, mark quantity.DecimalMark) []part {
	words := strings.Fields(text)
	var out []part
	for i := 0; i < len(words); {
		n, p := 1, part{text: words[i]}
		if begins(words[i:]) {
			for j := min(i+longest, len(words)); j > i; j-- {
				inner := strings.Join(words[i:j], " ")
				bare := strings.TrimLeft(inner, "(“")
				before := inner[:len(inner)-len(bare)]
				core := strings.TrimRight(bare, ".,;:)!?”")
				if !ends(core) {
					continue
				}
				band, problem := quantity.ParseBand(core, mark)
				if problem == nil && band.Unit.Dimension != quantity.None {
					n, p = j-i, part{inner, &band, before, bare[len(core):]}
					break
				}
			}
		}
		out = append(out, p)
		i += n
	}
	return out
}

// begins reports whether a quantity may begin with these words.
func begins(words []string) bool {
	first := strings.TrimLeft(words[0], "(“±+-−⌀")
	if strings.ContainsAny(first, figures) {
		return true
	}
	switch strings.ToLower(first) {
	case "max", "min":
		return true
	case "at":
		return len(words) > 1 && (words[1] == "least" || words[1] == "most")
	}
	return false
}

const figures = "0123456789½¼¾⅛⅜⅝⅞"

// tolerance matches a quantity that ends in figures, such as 52 H7.
var tolerance = regexp.MustCompile(`[A-Za-z][0-9]+$`)

// ends says whether a quantity may end like a text: in the unit behind its last
// figure, or in a tolerance. To read a text that is none takes much longer.
func ends(text string) bool {
	at := strings.LastIndexAny(text, figures)
	if at < 0 {
		return false
	}
	if i := at - len("e-"); i >= 0 && text[i:at] == "e-" { // 12.0e-6 /°C: the power is part of the unit
		_, ok := quantity.UnitOf(text[i:])
		return ok
	}
	_, size := utf8.DecodeRuneInString(text[at:])
	unit := strings.TrimSpace(text[at+size:])
	if unit == "" {
		return tolerance.MatchString(text)
	}
	_, known := quantity.UnitOf(unit)
	return known
}

// exact writes a band's limits exactly, in the first unit of its kind.
func exact(b quantity.Band) string {
	in := b.In(quantity.Units(b.Unit.Dimension)[0])
	if in.Low == nil && in.High == nil && in.Nominal != nil {
		return fmt.Sprintf("⟨%s %s⟩", in.Nominal.Value.RatString(), in.Unit.Dimension)
	}
	return fmt.Sprintf("⟨%s…%s %s⟩", ratio(in.Low), ratio(in.High), in.Unit.Dimension)
}

// inBase writes a value exactly, in the first unit of its kind.
func inBase(v quantity.Value) string {
	return quantity.Convert(v.Value, v.Unit, quantity.Units(v.Unit.Dimension)[0]).RatString()
}

// ratio writes a number exactly, "" for none.
func ratio(x *big.Rat) string {
	if x == nil {
		return ""
	}
	return x.RatString()
}

// how says how a quantity changed: by how much, which way, and whether its
// limits are wider. It says nothing if the texts are not one quantity each.
func how(before, after string, old, new quantity.DecimalMark) string {
	x, y := quantities(before, old), quantities(after, new)
	if len(x) != 1 || len(y) != 1 {
		return ""
	}
	return larger(x[0], y[0])
}

func larger(a, b quantity.Band) string {
	if a.Unit.Dimension != b.Unit.Dimension {
		return ""
	}
	b = b.In(a.Unit)
	var out []string
	more := func(of string, x, y *big.Rat) {
		if x == nil || y == nil || x.Cmp(y) == 0 {
			return
		}
		way := "more"
		if x.Cmp(y) > 0 {
			way = "less"
		}
		by := share(x, y)
		if a.Unit.Dimension == quantity.Temperature { // its zero is no nothing
			d := new(big.Rat).Sub(y, x)
			by = strings.TrimSuffix(d.Abs(d).FloatString(1), ".0") + " " + a.Unit.Symbol
		}
		out = append(out, of+strings.TrimSpace(by+" "+way))
	}
	equal := func(x, y *big.Rat) bool { return x != nil && y != nil && x.Cmp(y) == 0 }
	two := a.Low != nil && a.High != nil && b.Low != nil && b.High != nil
	switch {
	case two && equal(a.Low, b.Low):
		more("upper limit ", a.High, b.High)
	case two && equal(a.High, b.High):
		more("lower limit ", a.Low, b.Low)
	default:
		more("", middle(a), middle(b))
	}
	switch open := func(x quantity.Band) [2]bool { return [2]bool{x.Low == nil, x.High == nil} }; {
	case a.Form == quantity.Bare || b.Form == quantity.Bare:
	case open(a) != open(b):
		out = append(out, "other side open")
	case two:
		switch a.Width().Cmp(b.Width()) {
		case -1:
			out = append(out, "wider")
		case 1:
			out = append(out, "narrower")
		}
	}
	return strings.Join(out, ", ")
}

// middle returns the one number that stands for a band, nil if both ends are
// open.
func middle(b quantity.Band) *big.Rat {
	switch {
	case b.Low != nil && b.High != nil:
		sum := new(big.Rat).Add(b.Low, b.High)
		return sum.Quo(sum, big.NewRat(2, 1))
	case b.High != nil:
		return b.High
	case b.Low != nil:
		return b.Low
	case b.Nominal != nil:
		return b.Nominal.Value
	}
	return nil
}

// share returns the change from x to y as a percentage of x, rounded; "" from
// zero.
func share(x, y *big.Rat) string {
	if x.Sign() == 0 {
		return ""
	}
	d := new(big.Rat).Sub(y, x)
	d.Quo(d, x).Abs(d).Mul(d, big.NewRat(100, 1))
	if d.Cmp(big.NewRat(1, 1)) < 0 {
		return "under 1 %"
	}
	return d.FloatString(0) + " %"
}
