package quantity

import (
	"math/big"
	"regexp"
	"strings"
	"unicode/utf8"
)

// ParseBand parses limits or a bare value as written in the trade. With a
// problem, the band is the zero Band. A size with an ISO 286 tolerance, "52
// H7", gives the limits in the tables of that standard.
func ParseBand(text string, mark DecimalMark) (Band, *Problem) { return ParseBandOf(text, mark, None) }

// ParseBandOf is ParseBand for a required dimension. Another dimension is a
// measure-kind problem whose fix names units that fit.
func ParseBandOf(text string, mark DecimalMark, want Dimension) (Band, *Problem) {
	return (&reader{text: text, mark: mark, want: want}).read()
}

func (r *reader) read() (Band, *Problem) {
	if !r.checkText() {
		return Band{}, r.problem
	}
	if b, ok := r.tolerance(); ok {
		if r.problem != nil {
			return Band{}, r.problem
		}
		return b, nil
	}
	b := r.band()
	if r.problem != nil {
		return Band{}, r.problem
	}
	b.Unit, b.Written = r.unit, r.withUnitSymbols()
	return b, nil
}

// ParseValue parses one number with its unit: "1.5 US qt", "2 h 30 min" (which
// is 150 min). Limits are a problem.
func ParseValue(text string, mark DecimalMark) (Value, *Problem) {
	return ParseValueOf(text, mark, None)
}

// ParseValueOf is ParseValue for a required dimension.
func ParseValueOf(text string, mark DecimalMark, want Dimension) (Value, *Problem) {
	if v, ok := duration(text); ok && (want == None || want == Time) {
		return v, nil
	}
	return (&reader{text: text, mark: mark, want: want, oneValue: true}).readValue()
}

// ParseUnit parses the name of a unit of a dimension.
func ParseUnit(text string, want Dimension) (Unit, *Problem) {
	const unitPrefix = "1 " // units are parsed behind a number
	v, p := (&reader{text: unitPrefix + text, untyped: len(unitPrefix), want: want, oneValue: true}).readValue()
	return v.Unit, p
}

func (r *reader) readValue() (Value, *Problem) {
	b, p := r.read()
	if p != nil {
		return Value{}, p
	}
	if b.Form != Bare {
		return Value{}, &Problem{Slug: "quantity-malformed", End: len(r.text), Message: "one value is wanted here, not limits",
			Fix: "write " + quoted(b.Unit.After(b.Numbers[0].Text))}
	}
	return Value{*b.Nominal, b.Unit}, nil
}

// ParseNumber parses a plain number without a unit.
func ParseNumber(text string, mark DecimalMark) (Number, *Problem) {
	r := &reader{text: text, mark: mark}
	if !r.checkText() {
		return Number{}, r.problem
	}
	r.skip()
	n, ok := r.number()
	if r.skip(); ok && r.rest() != "" {
		fix := "write " + quoted(n.Text)
		switch c := first(r.rest()); {
		case r.rest() == "%": // such as 5 % of something
			part := new(big.Rat).Quo(n.Value, big.NewRat(100, 1))
			fix = "write " + quoted(Decimal(part, mark))
		case c == 'e' || c == 'E':
			fix = "write it out, without an `e`"
		}
		r.fail("quantity-malformed", r.pos, r.pos+len(r.rest()), "a plain number belongs here", fix)
	}
	if r.problem != nil {
		return Number{}, r.problem
	}
	return n, nil
}

var durationForm = regexp.MustCompile(`^ *([0-9]{1,6}) *([a-z]+) +([0-9]{1,6}) *([a-z]+)(?: +([0-9]{1,6}) *([a-z]+))? *$`)

// duration parses a time in two or three parts, largest first, as a value in
// the unit of the last part.
func duration(text string) (Value, bool) {
	m := durationForm.FindStringSubmatch(text)
	if m == nil {
		return Value{}, false
	}
	sum, last := new(big.Rat), Unit{}
	for i := 1; i < len(m) && m[i] != ""; i += 2 {
		u, ok := UnitOf(m[i+1])
		if !ok || u.Dimension != Time || i > 1 && u.factor.Cmp(last.factor) >= 0 {
			return Value{}, false
		}
		if i > 1 {
			sum = Convert(sum, last, u)
		}
		sum.Add(sum, ratio(m[i]))
		last = u
	}
	return Value{Number{sum, sum.RatString()}, last}, true
}

// letterO matches a capital O among the digits of a number.
var letterO = regexp.MustCompile(`[0-9][.,]?(O+)(?:[^\pL]|$)|(?:^|[^\pL])(O+)[.,]?[0-9]`)

// checkText refuses text that is not one short line, and a letter O typed for
// a zero.
func (r *reader) checkText() bool {
	bad := strings.IndexFunc(r.text, func(c rune) bool { return c < ' ' && c != '\t' || c == utf8.RuneError || c == 0x7f || c == 0x85 })
	switch {
	case len(r.text) > maxText:
		r.malformed(0, len(r.text), "this is too long for a quantity")
	case bad >= 0:
		_, size := utf8.DecodeRuneInString(r.text[bad:])
		r.malformed(bad, bad+size, "a quantity is one line of plain text")
	case strings.Trim(r.text, blanks) == "":
		r.malformed(0, len(r.text), "a quantity is missing here")
	}
	if m := letterO.FindStringSubmatchIndex(r.text); m != nil && r.problem == nil {
		start, end := max(m[2], m[4]), max(m[3], m[5])
		r.fail("quantity-malformed", start, end, "there is a letter O in a number",
			"did you type the letter O for a zero? write "+r.withReplaced(start, end, strings.Repeat("0", end-start)))
	}
	return r.problem == nil
}
