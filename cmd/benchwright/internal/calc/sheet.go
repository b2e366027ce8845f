package calc

import (
	"math/big"
	"strings"
	"unicode/utf8"

	"benchwright/cmd/benchwright/internal/quantity"
)

// A sheet is a computation worked out, section by section, as plain text.
type sheet struct {
	mark       quantity.DecimalMark
	title      string
	about      string
	formulas   []string
	inputs     [][3]string // symbol, what it is, value
	steps      []string
	results    []string
	table      [][]string // below the results, its first row the heads
	sources    []string
	impossible bool // the answer is that it cannot be done
}

// sheet begins a sheet.
func (a *answers) sheet(title, about string) *sheet {
	return &sheet{mark: a.mark, title: title, about: about}
}

func (s *sheet) formula(lines ...string) { s.formulas = append(s.formulas, lines...) }
func (s *sheet) input(symbol, what, text string) {
	s.inputs = append(s.inputs, [3]string{symbol, what, text})
}
func (s *sheet) step(parts ...string)   { s.steps = append(s.steps, strings.Join(parts, "")) }
func (s *sheet) result(parts ...string) { s.results = append(s.results, strings.Join(parts, "")) }
func (s *sheet) source(texts ...string) { s.sources = append(s.sources, texts...) }

// local puts the shop's decimal mark into a text of ours.
func (s *sheet) local(text string) string { return local(text, s.mark) }

// refuse is a result that says that it cannot be done.
func (s *sheet) refuse(parts ...string) {
	s.impossible = true
	s.result(parts...)
}

// Lines are as wide as a terminal is at the least.
const lineWidth = 80

// text returns the sheet as it is printed.
func (s *sheet) text() string {
	var b strings.Builder
	b.WriteString(s.title + "\n")
	b.WriteString(hanging("  ", s.about))
	section := func(head string, lines []string) {
		if len(lines) == 0 {
			return
		}
		b.WriteString("\n" + head + "\n")
		for _, l := range lines {
			b.WriteString(hanging("  ", l))
		}
	}
	section("Formula", s.formulas)
	var widths [2]int
	for _, in := range s.inputs {
		for i := range widths {
			widths[i] = max(widths[i], runes(in[i]))
		}
	}
	if len(s.inputs) > 0 {
		b.WriteString("\nInputs\n")
	}
	for _, in := range s.inputs {
		lead := "  "
		for i, w := range widths {
			if w > 0 {
				lead += in[i] + strings.Repeat(" ", w-runes(in[i])+2)
			}
		}
		b.WriteString(hanging(lead, in[2]))
	}
	section("Steps", s.steps)
	section("Result", s.results)
	b.WriteString(columns(s.table))
	section("Source", s.sources)
	return strings.ReplaceAll(b.String(), "\u00a0", " ")
}

// columns sets a table, its numbers to the right.
func columns(rows [][]string) string {
	if len(rows) == 0 {
		return ""
	}
	widths := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], runes(cell))
		}
	}
	var b strings.Builder
	b.WriteString("\n")
	for _, row := range rows {
		line := " "
		for i, cell := range row {
			line += " " + strings.Repeat(" ", widths[i]-runes(cell)) + cell + " "
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return b.String()
}

// hanging sets a text behind a lead, its further lines under its first.
func hanging(lead, text string) string {
	var b strings.Builder
	indent := strings.Repeat(" ", runes(lead))
	line, empty := lead, true
	for _, word := range strings.Split(text, " ") {
		if !empty && runes(line)+1+runes(word) > lineWidth {
			b.WriteString(strings.TrimRight(line, " ") + "\n")
			line, empty = indent, true
		}
		if !empty {
			line += " "
		}
		line += word
		empty = false
	}
	b.WriteString(strings.TrimRight(line, " ") + "\n")
	return b.String()
}

func runes(s string) int { return utf8.RuneCountInString(s) }

// A number in a step is exact where six decimals or six figures are enough, and
// else is rounded to six figures; is says which.
const figures = 6

// num prints a number.
func (s *sheet) num(x *big.Rat) string {
	text, _ := s.number(x, figures, figures)
	return text
}

// is prints a number as the outcome of a sum: "= 18" or "≈ 66.6667".
func (s *sheet) equals(x *big.Rat) string {
	text, exact := s.number(x, figures, figures)
	if exact {
		return "= " + text
	}
	return "≈ " + text
}

// in prints an outcome with its unit.
func (s *sheet) equalsIn(x *big.Rat, u quantity.Unit) string { return u.After(s.equals(x)) }

// amount prints a number with its unit.
func (s *sheet) amount(x *big.Rat, u quantity.Unit) string { return u.After(s.num(x)) }

// say prints an amount in a result, where four figures are enough: "0.05 mm",
// "≈ 0.1536 mm".
func (s *sheet) rounded(x *big.Rat, u quantity.Unit) string {
	text, exact := s.number(x, 3, 4)
	if !exact {
		text = "≈\u00a0" + text
	}
	return u.After(text)
}

// number prints x exactly if places decimals or so many figures are enough,
// else rounded to the figures.
func (s *sheet) number(x *big.Rat, places, figures int) (text string, exact bool) {
	size, n := new(big.Rat).Abs(x), figures-1
	for ten := big.NewRat(10, 1); n > 0 && size.Cmp(ten) >= 0; n-- {
		size.Quo(size, ten)
	}
	for unit := big.NewRat(1, 1); n < 40 && size.Cmp(unit) < 0; n++ {
		size.Mul(size, big.NewRat(10, 1))
	}
	if d, finite := x.FloatPrec(); finite && d <= max(n, places) {
		return quantity.Decimal(x, s.mark), true
	}
	step := new(big.Rat).SetFrac(big.NewInt(1), new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(n)), nil))
	return quantity.Format(x, step, s.mark), false
}

// typed prints a value as it was typed, its unit in our spelling.
func (s *sheet) typed(v quantity.Value) string {
	if v.Text == "" {
		return s.amount(v.Value, v.Unit)
	}
	return v.Unit.After(minus(v.Text))
}

func minus(text string) string {
	if rest, below := strings.CutPrefix(text, "-"); below {
		return "−" + rest
	}
	return text
}

// value enters a value, and what it is in the unit of the sum.
func (s *sheet) value(symbol, what string, v quantity.Value, u quantity.Unit) {
	text := s.typed(v)
	if v.Unit.Symbol != u.Symbol || v.Fraction() {
		text += " " + s.equalsLong(v.In(u).Value, u)
	}
	s.input(symbol, what, text)
}

// long prints an outcome with all its decimals, if they are not too many.
func (s *sheet) equalsLong(x *big.Rat, u quantity.Unit) string {
	text, exact := s.number(x, 16, figures)
	if exact {
		return "= " + u.After(text)
	}
	return "≈ " + u.After(text)
}

// band enters a band, and what it is in the unit of the sum.
func (s *sheet) band(symbol, what string, b quantity.Band, u quantity.Unit) {
	text := b.Written
	if b.Unit.Symbol != u.Symbol || b.Form == quantity.PlusMinus {
		text += " " + s.equalsBand(b.In(u))
	}
	s.input(symbol, what, text)
}

// between prints a computed band as an outcome: "= 95 to 105 N·m".
func (s *sheet) equalsBand(b quantity.Band) string {
	exact := true
	print := func(x *big.Rat) string {
		text, ok := s.number(x, figures, figures)
		exact = exact && ok
		return text
	}
	var text string
	switch {
	case b.Low != nil && b.High != nil:
		text = print(b.Low) + " to " + b.Unit.After(print(b.High))
	case b.High != nil:
		text = "max " + b.Unit.After(print(b.High))
	case b.Low != nil:
		text = "at least " + b.Unit.After(print(b.Low))
	case b.Nominal != nil:
		text = b.Unit.After(print(b.Nominal.Value))
	}
	if exact {
		return "= " + text
	}
	return "≈ " + text
}

// bare prints a computed band for a result: "95 to 105 N·m", "≈ 40.5659 to
// 47.9415 lbf·ft".
func (s *sheet) span(b quantity.Band) string { return strings.TrimPrefix(s.equalsBand(b), "= ") }

// marks enters the marks of an instrument.
func (s *sheet) marks(what string, scale quantity.Scale) {
	text := scale.Print(scale.Step, s.mark) + " apart"
	if scale.Low != nil || scale.High != nil {
		text += ", " + s.span(quantity.Band{Low: scale.Low, High: scale.High, Unit: scale.Unit})
	}
	s.input("", what, text)
}

// A limit is one limit of a band beside what is worked out from it.
type limit struct {
	low           bool
	given, worked *big.Rat
}

// limitsOf pairs the limits that two bands have, the low one first.
func limitsOf(given, worked quantity.Band) []limit {
	var out []limit
	if given.Low != nil {
		out = append(out, limit{true, given.Low, worked.Low})
	}
	if given.High != nil {
		out = append(out, limit{false, given.High, worked.High})
	}
	return out
}

// name returns what stands before a limit's step: "low limit" or "high limit"
// with a mark behind it, both as wide as each other.
func (l limit) name(mark string) string {
	if l.low {
		return "low limit" + mark + " "
	}
	return "high limit" + mark
}
