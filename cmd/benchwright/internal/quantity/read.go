package quantity

import (
	"fmt"
	"math/big"
	"regexp"
	"strings"
	"unicode/utf8"

	"benchwright/cmd/benchwright/internal/diag"
)

// maxText is the maximum length of a quantity, in bytes.
const maxText = 200

// bandExamples is the fix if the text suggests no better one and any
// dimension will do.
const bandExamples = "write it as in `95 to 105 mm`, `100 ±5 mm`, `max 0.05 mm` or `at least 12 mm`"

// exampleValues has an example for each dimension, to show the form. Whole
// numbers read the same with either decimal mark.
var exampleValues = map[Dimension]string{Length: "60 mm", Angle: "30°", Mass: "2 kg", Force: "40 kN", Torque: "100 N·m", Pressure: "35 kPa",
	Volume: "2 L", Temperature: "20 °C", Time: "10 min", Proportion: "30 %", LeakRate: "10 Pa·L/s", Expansion: "12 ppm/°C"}

// formFix is the fix if the text suggests no better one: an example of a
// value, or of limits, of the dimension wanted.
func (r *reader) formFix() string {
	one, known := exampleValues[r.want]
	switch {
	case known && r.oneValue:
		return "write it as in `" + one + "`"
	case !known || r.want == Length:
		return bandExamples
	}
	u, _ := UnitOf(strings.TrimLeft(one, "0123456789 "))
	var forms []string
	for _, text := range []string{u.After("95 to 105"), u.After("100 ±5"), "max " + u.After("105"), "at least " + u.After("95")} {
		forms = append(forms, quoted(text))
	}
	return "write it as in " + diag.Series(forms, "or")
}

// A reader parses one quantity. It stops at the first problem, so that one
// slip gives one message.
type reader struct {
	text       string
	untyped    int // length of a prefix of text that the writer did not type
	mark       DecimalMark
	want       Dimension
	oneValue   bool // one value is wanted, not limits
	pos        int
	problem    *Problem
	lastNumber span   // the last number parsed
	units      []span // the units parsed, in order
	unit       Unit
}

type span struct{ start, end int }

func (r *reader) fail(slug string, start, end int, message, fix string) {
	if r.problem == nil {
		r.problem = &Problem{Slug: slug, Start: start, End: end, Message: message, Fix: fix}
	}
}

// malformed fails with formFix as the fix.
func (r *reader) malformed(start, end int, message string) {
	if r.problem == nil {
		r.fail("quantity-malformed", start, end, message, r.formFix())
		r.problem.ByExample = true
	}
}

// take skips s, if it is next.
func (r *reader) take(s string) bool {
	if strings.HasPrefix(r.text[r.pos:], s) {
		r.pos += len(s)
		return true
	}
	return false
}

const blanks = " \t\u00a0\u2009\u202f"

func (r *reader) skip() {
	r.pos = len(r.text) - len(strings.TrimLeft(r.text[r.pos:], blanks))
}

// rest returns the unparsed text, without blanks at its end.
func (r *reader) rest() string { return strings.TrimRight(r.text[r.pos:], blanks) }

// wordEnd returns the end of the word at start, at least one rune unless the
// text has ended.
func (r *reader) wordEnd(start int) int {
	if i := strings.IndexAny(r.text[start:], blanks); i > 0 {
		return start + i
	} else if i < 0 {
		return len(r.text)
	}
	return start
}

// withReplaced returns the typed text, in backticks, with the part from start
// to end replaced.
func (r *reader) withReplaced(start, end int, by string) string {
	return quoted(r.text[r.untyped:start] + by + r.text[end:])
}

// quoted returns s with plain blanks, in backticks.
func quoted(s string) string {
	return "`" + strings.ReplaceAll(strings.Trim(s, blanks), nbsp, " ") + "`"
}

// limitWords holds the words for a one-sided limit. Spelling is the accepted
// word to suggest instead, "" if the word itself is accepted.
var limitWords = []struct {
	word, spelling string
	form           Form
}{
	{"maximum", "", Max}, {"max.", "", Max}, {"max", "", Max}, {"at most", "", Max},
	{"minimum", "", Min}, {"min.", "", Min}, {"min", "", Min}, {"at least", "", Min},
	{"not more than", "max", Max}, {"no more than", "max", Max}, {"up to", "max", Max}, {"less than", "max", Max},
	{"under", "max", Max}, {"below", "max", Max}, {"≤", "max", Max}, {"<=", "max", Max}, {"<", "max", Max},
	{"not less than", "at least", Min}, {"more than", "at least", Min}, {"over", "at least", Min}, {"above", "at least", Min},
	{"≥", "at least", Min}, {">=", "at least", Min}, {">", "at least", Min},
}

// band parses the text as limits or a bare value, except for the last unit.
func (r *reader) band() (b Band) {
	r.skip()
	for _, s := range limitWords {
		start := r.pos
		if len(r.text)-start < len(s.word) || !strings.EqualFold(r.text[start:start+len(s.word)], s.word) {
			continue
		}
		r.pos += len(s.word)
		r.skip()
		if r.rest() != "" && !strings.ContainsRune("0123456789.,+-−–½¼¾⅛⅜⅝⅞", first(r.rest())) {
			r.pos = start
			break
		}
		if s.spelling != "" {
			r.fail("quantity-malformed", start, start+len(s.word), fmt.Sprintf("`%s` is not how limits are written", s.word),
				"write "+r.withReplaced(start, r.pos, s.spelling+" "))
			return b
		}
		n, ok := r.number()
		if !ok {
			return b
		}
		if s.form == Max {
			b.High = n.Value
		} else {
			b.Low = n.Value
		}
		b.Form, b.Numbers = s.form, []Number{n}
		r.lastUnit()
		return b
	}
	if c := first(r.rest()); c != '+' && c != '-' && c != '−' && c != '–' && c != '.' && c != ',' && (c < '0' || c > '9') && vulgarFractions[c] == "" {
		message := "a quantity begins with a number, `max` or `at least`"
		if r.oneValue && exampleValues[r.want] != "" {
			message = "a number is missing here"
		}
		r.malformed(r.pos, r.wordEnd(r.pos), message)
		return b
	}
	at := r.pos
	n, ok := r.number()
	if !ok {
		return b
	}
	if !r.firstUnit() {
		return b
	}
	r.skip()
	switch start := r.pos; {
	case r.takeWord("to"), r.takeDots(), r.take("–"):
		return r.rangeTo(at, n)
	case r.take("±"), r.take("+/-"), r.take("+/−"), r.take("+-"), r.take("+−"):
		return r.plusMinus(n)
	case deviations.MatchString(r.text[start:]):
		return r.deviations(n)
	case r.take("..."), r.take("…"), r.take("—"), r.take("-"), r.take("−"), r.take("\u2011"), r.take("~"):
		r.badJoiner(at, n, start)
		return b
	case strings.HasPrefix(r.text[start:], "+"):
		r.oneDeviation()
		return b
	}
	b.Form, b.Nominal, b.Numbers = Bare, &n, []Number{n}
	r.lastUnit()
	return b
}

func first(s string) rune {
	c, _ := utf8.DecodeRuneInString(s)
	return c
}

// takeWord skips w, if it is next as a whole word.
func (r *reader) takeWord(w string) bool {
	rest := r.text[r.pos:]
	if len(rest) <= len(w) || !strings.EqualFold(rest[:len(w)], w) {
		return false
	}
	if c := first(rest[len(w):]); c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' {
		return false
	}
	r.pos += len(w)
	return true
}

// takeDots skips two dots, but not three.
func (r *reader) takeDots() bool {
	return !strings.HasPrefix(r.text[r.pos:], "...") && r.take("..")
}

// rangeTo parses the high end of a range. Its joiner begins at offset at.
func (r *reader) rangeTo(at int, low Number) Band {
	r.skip()
	start := r.pos
	high, ok := r.number()
	if !ok {
		return Band{}
	}
	end := r.pos
	r.lastUnit()
	if r.problem == nil && low.Value.Cmp(high.Value) > 0 {
		r.fail("limits-reversed", at, end, fmt.Sprintf("the limits are reversed: %s is more than %s", low.Text, high.Text),
			"write "+quoted(r.text[:at]+high.Text+r.text[at+len(low.Text):start]+low.Text+r.text[end:]))
	}
	return Band{Form: Range, Low: low.Value, High: high.Value, Numbers: []Number{low, high}}
}

// plusMinus parses a symmetric tolerance of n.
func (r *reader) plusMinus(n Number) Band {
	r.skip()
	start := r.pos
	t, ok := r.number()
	if !ok {
		return Band{}
	}
	if t.Value.Sign() < 0 {
		r.fail("quantity-malformed", start, r.pos, "a tolerance to both sides takes no sign", "write "+r.withReplaced(start, r.pos, strings.TrimLeft(t.Text, "-−")))
		return Band{}
	}
	if r.percentTolerance() {
		half := times(n.Value, t.Value, ratio("1/100"))
		r.fail("quantity-malformed", start, len(r.text), "a tolerance has the same unit of measure as its value",
			"write "+quoted(r.unit.After(n.Text+" ±"+Format(half.Abs(half), half, r.mark))))
		return Band{}
	}
	r.lastUnit()
	return Band{
		Form: PlusMinus, Nominal: &n, Numbers: []Number{n, t},
		Low:  new(big.Rat).Sub(n.Value, t.Value),
		High: new(big.Rat).Add(n.Value, t.Value),
	}
}

// percentTolerance reports a tolerance in percent beside a unit, 100 N·m ±5 %
// or 100 ±5 % N·m, and whether there is one.
func (r *reader) percentTolerance() bool {
	after, found := strings.CutPrefix(strings.TrimLeft(r.rest(), blanks), "%")
	if found && len(r.units) == 0 {
		r.unit, found = UnitOf(after)
	}
	return found
}

// deviations matches the start of two signed tolerances: +5/-0, +5 -0.
var deviations = regexp.MustCompile(`^[+\-−][ \x{00A0}]?[0-9.,]+(?:(?:[- ][0-9]+)?/[0-9]+)?[ \x{00A0}]*(?:/[ \x{00A0}]*[+\-−]|[+\-−])[ \x{00A0}]?[0-9.,]`)

// deviations parses the two signed tolerances of n.
func (r *reader) deviations(n Number) Band {
	var d [2]Number
	for i := range d {
		var ok bool
		if d[i], ok = r.number(); !ok {
			return Band{}
		}
		if i == 0 {
			r.skip()
			r.take("/")
			r.skip()
		}
	}
	r.lastUnit()
	low, high := d[0].Value, d[1].Value
	if low.Cmp(high) > 0 {
		low, high = high, low
	}
	return Band{
		Form: PlusMinus, Nominal: &n, Numbers: []Number{n, d[0], d[1]},
		Low:  new(big.Rat).Add(n.Value, low),
		High: new(big.Rat).Add(n.Value, high),
	}
}

// oneDeviation reports a single signed tolerance.
func (r *reader) oneDeviation() {
	start := r.pos
	if d, ok := r.number(); ok {
		r.fail("quantity-malformed", start, r.pos, "a tolerance to one side names the other side too", "write "+r.withReplaced(start, r.pos, d.Text+"/-0"))
	}
}

// badJoiner reports a range, beginning at offset at, whose joiner at start is
// not an accepted one.
func (r *reader) badJoiner(at int, low Number, start int) {
	end := r.pos
	joiner := r.text[start:end]
	r.skip()
	from := r.pos
	high, ok := r.number()
	if !ok {
		return
	}
	fix := "write " + quoted(strings.TrimRight(r.text[:start], blanks)+" to "+r.text[from:])
	if one := big.NewRat(1, 1); low.Value.IsInt() && high.Fraction() && high.Value.Cmp(one) < 0 && strings.Contains(joiner, "-") {
		fix = "write " + quoted(r.text[:at]+low.Text+"-"+r.text[from:])
	}
	r.fail("range-hyphen", start, end, fmt.Sprintf("a range is not written with `%s`", joiner), fix)
}
