package quantity

import (
	"fmt"
	"math/big"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"
)

// maxText is the most bytes that a quantity has.
const maxText = 200

// asIn is the help where no better text can be guessed.
const asIn = "write it as in `95 to 105 mm`, `100 ±5 mm`, `max 0.05 mm` or `at least 12 mm`"

// A reader reads one quantity. It stops at the first problem: one slip gives
// one message.
type reader struct {
	text    string
	mark    Mark
	want    Dimension
	pos     int
	problem *Problem
	last    span   // where the last number stands
	units   []span // where a unit is spelled, in order
	unit    Unit
}

type span struct{ start, end int }

func (r *reader) fail(slug string, start, end int, message, help string) {
	if r.problem == nil {
		r.problem = &Problem{slug, start, end, message, help}
	}
}

// take moves past s if it stands here.
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

// rest returns what is left, without blanks at its end.
func (r *reader) rest() string { return strings.TrimRight(r.text[r.pos:], blanks) }

// wordEnd returns the end of the word at start, one rune at least if there is one.
func (r *reader) wordEnd(start int) int {
	if i := strings.IndexAny(r.text[start:], blanks); i > 0 {
		return start + i
	} else if i < 0 {
		return len(r.text)
	}
	return start
}

// fixed returns the whole text, quoted, with what stands from start to end
// replaced.
func (r *reader) fixed(start, end int, by string) string {
	return quoted(r.text[:start] + by + r.text[end:])
}

// quoted returns s as a writer would type it, between backticks.
func quoted(s string) string {
	return "`" + strings.ReplaceAll(strings.Trim(s, blanks), nbsp, " ") + "`"
}

// ParseBand reads a quantity as the trade writes it. Where it returns a
// problem the band is the zero Band.
func ParseBand(text string, mark Mark) (Band, *Problem) { return ParseBandOf(text, mark, None) }

// ParseBandOf reads a quantity that must be of a dimension: another is a
// unit-kind problem, and help names units of the right kind.
func ParseBandOf(text string, mark Mark, want Dimension) (Band, *Problem) {
	r := &reader{text: text, mark: mark, want: want}
	b := r.band()
	if r.problem != nil {
		return Band{}, r.problem
	}
	b.Unit, b.Written = r.unit, r.written()
	return b, nil
}

// ParseValue reads one number with its unit: "1.5 US qt", "2 h 30 min" (which
// is 150 min). Limits are a problem.
func ParseValue(text string, mark Mark) (Value, *Problem) { return ParseValueOf(text, mark, None) }

// ParseValueOf is to ParseValue as ParseBandOf is to ParseBand.
func ParseValueOf(text string, mark Mark, want Dimension) (Value, *Problem) {
	if v, ok := duration(text); ok && (want == None || want == Time) {
		return v, nil
	}
	b, p := ParseBandOf(text, mark, want)
	if p != nil {
		return Value{}, p
	}
	if b.Form != Bare {
		return Value{}, &Problem{"quantity-malformed", 0, len(text), "one value is wanted here, not limits",
			"write " + quoted(b.Unit.After(b.Numbers[0].Text))}
	}
	return Value{*b.Nominal, b.Unit}, nil
}

// ParseNumber reads a plain number without a unit.
func ParseNumber(text string, mark Mark) (Number, *Problem) {
	r := &reader{text: text, mark: mark}
	if !r.sound() {
		return Number{}, r.problem
	}
	r.skip()
	n, ok := r.number()
	if ok && r.rest() != "" {
		r.fail("quantity-malformed", r.pos, r.pos+len(r.rest()), "a plain number is wanted here", "write "+quoted(n.Text))
	}
	if r.problem != nil {
		return Number{}, r.problem
	}
	return n, nil
}

var durationForm = regexp.MustCompile(`^ *([0-9]{1,6}) *([a-z]+) +([0-9]{1,6}) *([a-z]+)(?: +([0-9]{1,6}) *([a-z]+))? *$`)

// duration reads a time in two or three parts, the largest first, as a value
// in the unit of its last part.
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

// sound refuses what is not one short line of text.
func (r *reader) sound() bool {
	bad := strings.IndexFunc(r.text, func(c rune) bool { return c < ' ' && c != '\t' || c == utf8.RuneError || c == 0x7f || c == 0x85 })
	switch {
	case len(r.text) > maxText:
		r.fail("quantity-malformed", 0, len(r.text), "this is too long for a quantity", asIn)
	case bad >= 0:
		_, size := utf8.DecodeRuneInString(r.text[bad:])
		r.fail("quantity-malformed", bad, bad+size, "a quantity is one line of plain text", asIn)
	case strings.Trim(r.text, blanks) == "":
		r.fail("quantity-malformed", 0, len(r.text), "a quantity is missing here", asIn)
	}
	return r.problem == nil
}

// sides holds the words before a limit to one side; those that map to another
// word are not ours.
var sides = []struct {
	word, ours string
	form       Form
}{
	{"maximum", "", Max}, {"max.", "", Max}, {"max", "", Max}, {"at most", "", Max},
	{"minimum", "", Min}, {"min.", "", Min}, {"min", "", Min}, {"at least", "", Min},
	{"not more than", "max", Max}, {"no more than", "max", Max}, {"up to", "max", Max}, {"less than", "max", Max},
	{"under", "max", Max}, {"below", "max", Max}, {"≤", "max", Max}, {"<=", "max", Max}, {"<", "max", Max},
	{"not less than", "at least", Min}, {"more than", "at least", Min}, {"over", "at least", Min}, {"above", "at least", Min},
	{"≥", "at least", Min}, {">=", "at least", Min}, {">", "at least", Min},
}

// band reads the whole text as limits or a bare value, all but its unit.
func (r *reader) band() (b Band) {
	if !r.sound() {
		return b
	}
	r.skip()
	for _, s := range sides {
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
		if s.ours != "" {
			r.fail("quantity-malformed", start, start+len(s.word), fmt.Sprintf("`%s` is not how a limit is written", s.word),
				"write "+r.fixed(start, r.pos, s.ours+" "))
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
	if c := first(r.rest()); c != '+' && c != '-' && c != '−' && c != '–' && c != '.' && c != ',' && (c < '0' || c > '9') && vulgar[c] == "" {
		r.fail("quantity-malformed", r.pos, r.wordEnd(r.pos), "a quantity begins with a number, `max` or `at least`", asIn)
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
		return r.toHigh(at, n)
	case r.take("±"), r.take("+/-"), r.take("+/−"), r.take("+-"), r.take("+−"):
		return r.plusMinus(n)
	case deviations.MatchString(r.text[start:]):
		return r.deviations(n)
	case r.take("..."), r.take("…"), r.take("—"), r.take("-"), r.take("−"), r.take("\u2011"), r.take("~"):
		r.hyphen(at, n, start)
		return b
	case strings.HasPrefix(r.text[start:], "+"):
		r.oneDeviation(n)
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

// takeWord moves past a word if it stands here alone.
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

// takeDots moves past two dots, not three.
func (r *reader) takeDots() bool {
	return !strings.HasPrefix(r.text[r.pos:], "...") && r.take("..")
}

// toHigh reads what follows the joiner of a range that begins at offset at.
func (r *reader) toHigh(at int, low Number) Band {
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

// plusMinus reads the tolerance to both sides of n.
func (r *reader) plusMinus(n Number) Band {
	r.skip()
	start := r.pos
	t, ok := r.number()
	if !ok {
		return Band{}
	}
	if t.Value.Sign() < 0 {
		r.fail("quantity-malformed", start, r.pos, "a tolerance to both sides has no sign", "write "+r.fixed(start, r.pos, strings.TrimLeft(t.Text, "-−")))
		return Band{}
	}
	if len(r.units) == 1 && strings.HasPrefix(strings.TrimLeft(r.text[r.pos:], blanks), "%") {
		half := times(n.Value, t.Value, ratio("1/100"))
		r.fail("quantity-malformed", start, len(r.text), "the tolerance of a limit is in the limit's own unit",
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

// deviations matches the start of two signed tolerances: +5/-0, +5 -0.
var deviations = regexp.MustCompile(`^[+\-−][ \x{00A0}]?[0-9.,]+(?:(?:[- ][0-9]+)?/[0-9]+)?[ \x{00A0}]*(?:/[ \x{00A0}]*[+\-−]|[+\-−])[ \x{00A0}]?[0-9.,]`)

// deviations reads the two signed tolerances of n.
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

// oneDeviation reports a tolerance to one side alone.
func (r *reader) oneDeviation(n Number) {
	start := r.pos
	if d, ok := r.number(); ok {
		r.fail("quantity-malformed", start, r.pos, "a tolerance to one side names the other side too", "write "+r.fixed(start, r.pos, d.Text+"/-0"))
	}
}

// hyphen reports a range that begins at offset at and is joined at start by
// something that is not ours.
func (r *reader) hyphen(at int, low Number, start int) {
	end := r.pos
	joiner := r.text[start:end]
	r.skip()
	from := r.pos
	high, ok := r.number()
	if !ok {
		return
	}
	help := "write " + quoted(strings.TrimRight(r.text[:start], blanks)+" to "+r.text[from:])
	if one := big.NewRat(1, 1); low.Value.IsInt() && high.Fraction() && high.Value.Cmp(one) < 0 && strings.Contains(joiner, "-") {
		help = "write " + quoted(r.text[:at]+low.Text+"-"+r.text[from:])
	}
	r.fail("range-hyphen", start, end, fmt.Sprintf("a range is not joined by `%s`", joiner), help)
}

// firstUnit reads a unit that stands before a joiner, if one does.
func (r *reader) firstUnit() bool {
	rest := r.rest()
	cut := len(rest)
	for _, joiner := range []string{" to ", "..", "…", "–", "—", "±", "+", " -", " −"} {
		if i := strings.Index(rest, joiner); i >= 0 {
			cut = min(cut, i)
		}
	}
	if cut == len(rest) || strings.Trim(rest[:cut], blanks) == "" {
		return true
	}
	if rest = strings.TrimRight(rest[:cut], blanks); strings.EqualFold(strings.TrimLeft(rest, blanks), "to") {
		return true
	}
	r.skip()
	u, ok := r.unitAt(r.text[r.pos : r.pos+len(strings.TrimLeft(rest, blanks))])
	r.unit = u
	return ok
}

// lastUnit reads the unit at the end, after the last number.
func (r *reader) lastUnit() {
	r.skip()
	name := r.rest()
	if name == "" {
		example := "mm"
		if r.want != None {
			example = Units(r.want)[0].Symbol
		}
		if len(r.units) > 0 {
			example = r.unit.Symbol
		}
		r.fail("unit-missing", r.last.start, r.last.end, "the unit is missing", "write it after the number, as in "+quoted(Unit{Symbol: example}.After(strings.Trim(r.text[:r.last.end], blanks))))
		return
	}
	u, ok := r.unitAt(name)
	if ok && len(r.units) == 2 && u.Symbol != r.unit.Symbol {
		s := r.units[1]
		r.fail("quantity-malformed", s.start, s.end, fmt.Sprintf("one quantity has one unit, not %s and %s", r.unit.Symbol, u.Symbol), "write both numbers in "+r.unit.Symbol)
		return
	}
	r.unit = u
}

// unitAt reads the unit name, which stands at the reader's place.
func (r *reader) unitAt(name string) (Unit, bool) {
	start := r.pos
	end := start + len(name)
	r.pos = end
	u, ok := UnitOf(name)
	if ok {
		if u.Dimension == Temperature && r.want == TemperatureDifference {
			u = u.Difference()
		}
		r.units = append(r.units, span{start, end})
		if r.want != None && u.Dimension != r.want {
			r.fail("unit-kind", start, end, fmt.Sprintf("%s is a unit of %s, not of %s", u.Symbol, u.Dimension, r.want), oneOf(r.want))
			return u, false
		}
		return u, true
	}
	lower := strings.ToLower(name)
	help := words().varieties[key(name)]
	if help == "" {
		help = words().varieties[key(lower)]
	}
	inner, isDual := strings.CutSuffix(name, ")")
	before, second, cut := strings.Cut(inner, "(")
	if !isDual || !cut {
		before, second = "", ""
	}
	switch {
	case help != "":
		r.fail("unit-varieties", start, end, fmt.Sprintf("`%s` has varieties that differ", name), help)
	case second != "" && strings.ContainsAny(second, "0123456789"):
		at := start + len(before)
		r.fail("quantity-malformed", at, end, "a second unit is not written in brackets", "write "+quoted(r.text[:at])+", and below it `also: "+strings.Trim(second, blanks)+"`")
	case strings.HasSuffix(lower, " max") || strings.HasSuffix(lower, " min"):
		word := map[string]string{"max": "max", "min": "at least"}[lower[len(lower)-3:]]
		r.fail("quantity-malformed", end-3, end, "the word of a limit stands before the number", "write "+quoted(word+" "+strings.Trim(r.text[:end-4], blanks)))
	case strings.ContainsAny(name, "0123456789±"):
		r.fail("quantity-malformed", start, end, fmt.Sprintf("`%s` is not a unit", name), asIn)
	default:
		help := "write it as in `95 to 105 N·m`, `0.15 to 0.25 mm` or `69 kPa`"
		if near := nearest(name, r.want); near != "" {
			help = "write " + r.fixed(start, end, near)
		} else if r.want != None {
			help = oneOf(r.want)
		}
		r.fail("unit-unknown", start, end, fmt.Sprintf("no unit is called `%s`", name), help)
	}
	return Unit{}, false
}

// oneOf is the help that names the units of a dimension.
func oneOf(d Dimension) string {
	var names []string
	for _, u := range Units(d) {
		names = append(names, u.Symbol)
	}
	if n := len(names) - 1; n > 0 {
		return "write it in " + strings.Join(names[:n], ", ") + " or " + names[n]
	}
	return "write it in " + strings.Join(names, "")
}

// written returns the text with every unit in our spelling and a no-break
// space before it.
func (r *reader) written() string {
	out := r.text
	for _, s := range slices.Backward(r.units) {
		out = r.unit.After(strings.TrimRight(out[:s.start], blanks)) + out[s.end:]
	}
	return strings.Trim(out, blanks)
}
