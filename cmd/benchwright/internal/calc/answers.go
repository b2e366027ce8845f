package calc

import (
	"fmt"
	"math/big"
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
)

// An option is one thing that a computation asks for.
type option struct {
	name     string // without its dashes; "" for the words before the first option
	example  string // of a value, as it is typed
	about    string
	needed   bool
	repeated bool // may be given several times
}

// label returns the option with its example, as help shows it:
// `--marks "0.01 mm"`.
func (q option) label() string {
	text := q.example
	if strings.ContainsAny(text, " ×*;") {
		text = `"` + text + `"`
	}
	if q.name == "" {
		return text
	}
	return "--" + q.name + " " + text
}

// answers are the options that were typed for a computation. Its readers note
// the first mistake and return something harmless, so a computation reads all
// its options and then looks at ok once.
type answers struct {
	computation
	mark  quantity.DecimalMark // how numbers are typed and printed
	given map[string][]string  // by option, the texts that were typed
	err   error                // the first mistake
}

// optionForm is a word that names an option; -0.05 is a number.
var optionForm = regexp.MustCompile(`^--?([A-Za-z][A-Za-z-]*)(?:=(.*))?$`)

// read takes the words apart. What stands behind an option belongs to it up
// to the next option, so that a quantity needs no quotes.
func (c computation) read(words []string) (*answers, error) {
	a := &answers{computation: c, given: map[string][]string{}}
	options := map[string]option{"decimal": decimalOption}
	var names []string
	for _, q := range c.options {
		options[q.name] = q
		if q.name != "" {
			names = append(names, q.name)
		}
	}
	for i := 0; i < len(words); {
		name, value := "", []string(nil)
		if m := optionForm.FindStringSubmatch(words[i]); m != nil {
			name = m[1]
			if strings.Contains(words[i], "=") {
				value = append(value, m[2])
			}
			i++
		}
		for ; i < len(words) && !optionForm.MatchString(words[i]); i++ {
			value = append(value, words[i])
		}
		q, known := options[name]
		text := strings.TrimSpace(strings.Join(value, " "))
		switch {
		case !known && name == "":
			return nil, fmt.Errorf("`%s` stands before the first option of `%s`: name what it is, as in `%s`", short(text), c.name, c.first())
		case !known:
			help := "`benchwright calc " + c.name + " --help` lists them"
			if near := diag.Nearest(name, names); near != "" {
				help = "did you mean `--" + near + "`?"
			}
			return nil, fmt.Errorf("`%s` has no option `--%s`: %s", c.name, short(name), help)
		case text == "":
			return nil, fmt.Errorf("`--%s` needs a value, as in `%s`", name, q.label())
		case len(a.given[name]) > 0 && !q.repeated:
			return nil, fmt.Errorf("`--%s` is given twice: give it once", name)
		}
		a.given[name] = append(a.given[name], text)
	}
	mark, err := markOf(a.text("decimal"))
	if err != nil {
		return nil, err
	}
	a.mark = mark
	return a, a.missing()
}

// first returns the first option as it is typed.
func (c computation) first() string {
	if len(c.options) == 0 {
		return "--help"
	}
	return c.options[0].label()
}

// missing names all that is needed and was not given, in one message.
func (a *answers) missing() error {
	var names []string
	for _, q := range a.options {
		if q.needed {
			names = append(names, q.name)
		}
	}
	a.need(names...)
	return a.err
}

// fail notes a mistake.
func (a *answers) fail(format string, args ...any) {
	if a.err == nil {
		a.err = fmt.Errorf(format, args...)
	}
}

// wrong notes a mistake in an option, which the message names first.
func (a *answers) wrong(name, format string, args ...any) {
	text := fmt.Sprintf(format, args...)
	if name != "" {
		text = "`--" + name + "`: " + text
	}
	a.fail("%s", text)
}

func (a *answers) ok() bool { return a.err == nil }

func (a *answers) has(name string) bool { return len(a.given[name]) > 0 }

// need refuses where one of these was not given, and names all that are missing.
func (a *answers) need(names ...string) {
	var missing []string
	for _, n := range names {
		if !a.has(n) {
			missing = append(missing, "`"+a.label(n)+"`")
		}
	}
	if len(missing) > 0 {
		a.fail("`%s` needs more: add %s", a.name, diag.Series(missing, "and"))
	}
}

// label returns an option with its example, in this shop's decimal mark.
func (a *answers) label(name string) string {
	if name == "class" { // the point of 8.8 is no decimal mark
		return a.option(name).label()
	}
	return local(a.option(name).label(), a.mark)
}

// example returns an option's example in this shop's decimal mark.
func (a *answers) example(name string) string { return local(a.option(name).example, a.mark) }

func (a *answers) option(name string) option {
	for _, q := range a.options {
		if q.name == name {
			return q
		}
	}
	return option{name: name}
}

// either returns which one of these options was given, "" for none; two are a
// mistake, and so is none where one is needed.
func (a *answers) either(needed bool, names ...string) string {
	var given, all []string
	for _, n := range names {
		if a.has(n) {
			given = append(given, n)
		}
		all = append(all, "`"+a.label(n)+"`")
	}
	switch {
	case len(given) > 1:
		a.fail("`--%s` and `--%s` exclude each other: give one of them", given[0], given[1])
	case len(given) == 1:
		return given[0]
	case needed:
		a.fail("`%s` needs one more: add %s", a.name, strings.Join(all, " or "))
	}
	return ""
}

// text returns an option's text as it was typed, "" where it was not given.
func (a *answers) text(name string) string {
	if len(a.given[name]) == 0 {
		return ""
	}
	return a.given[name][0]
}

// problem notes what is wrong with the quantity of an option.
func (a *answers) problem(name string, p *quantity.Problem) {
	if p.ByExample {
		p.Fix = "write it as in `" + a.example(name) + "`"
	}
	if p.Slug == "decimal-mark" {
		p.Fix += ", or add `--decimal " + map[quantity.DecimalMark]string{quantity.Point: "comma", quantity.Comma: "point"}[a.mark] + "`"
	}
	a.wrong(name, "%s: %s", p.Message, p.Fix)
}

// local puts a shop's decimal mark into a text of ours.
func local(text string, mark quantity.DecimalMark) string {
	if mark == quantity.Comma {
		return pointForm.ReplaceAllString(text, "$1,$2")
	}
	return text
}

var pointForm = regexp.MustCompile(`([0-9])\.([0-9])`)

// band reads limits or one value.
func (a *answers) band(name string, d quantity.Dimension) quantity.Band {
	if !a.has(name) {
		return quantity.Band{}
	}
	b, p := quantity.ParseBandOf(a.text(name), a.mark, d)
	if p != nil {
		a.problem(name, p)
	}
	return b
}

// limits reads a band that has at least one limit.
func (a *answers) limits(name string, d quantity.Dimension) quantity.Band {
	b := a.band(name, d)
	if a.ok() && a.has(name) && b.Form == quantity.Bare {
		a.wrong(name, "a single value is not limits: write `%s`", b.ExampleLimits(a.mark))
	}
	return b
}

// placeholder is a value that does no harm where none can be read.
func placeholder(d quantity.Dimension) quantity.Value {
	v := quantity.Value{Number: quantity.Number{Value: big.NewRat(1, 1)}}
	if us := quantity.Units(d); len(us) > 0 {
		v.Unit = us[0]
	}
	return v
}

// value reads one value.
func (a *answers) value(name string, d quantity.Dimension) quantity.Value {
	if !a.has(name) {
		return placeholder(d)
	}
	v, p := quantity.ParseValueOf(a.text(name), a.mark, d)
	if p != nil {
		a.problem(name, p)
		return placeholder(d)
	}
	return v
}

// positive reads a value that must be above zero.
func (a *answers) positive(name string, d quantity.Dimension) quantity.Value {
	v := a.value(name, d)
	if a.ok() && v.Value.Sign() <= 0 {
		a.wrong(name, "this must be above 0: write it as in `%s`", a.example(name))
		return placeholder(d)
	}
	return v
}

// positiveNumber reads a number without a unit that must be above zero; 1 where
// it was not given.
func (a *answers) positiveNumber(name string) quantity.Number {
	n := quantity.Number{Value: big.NewRat(1, 1)}
	if !a.has(name) {
		return n
	}
	got, p := quantity.ParseNumber(a.text(name), a.mark)
	switch {
	case p != nil:
		a.problem(name, p)
	case got.Value.Sign() <= 0:
		a.wrong(name, "this must be above 0: write it as in `%s`", a.example(name))
	default:
		return got
	}
	return n
}

// count reads a whole number from least to most; least where it was not given.
func (a *answers) count(name string, least, most int) int {
	n, err := strconv.Atoi(a.text(name))
	if a.has(name) && (err != nil || n < least || n > most) {
		a.wrong(name, "`%s` is not a whole number from %d to %d", short(a.text(name)), least, most)
		return least
	}
	return max(n, least)
}

// choice reads one of some words, "" where it was not given.
func (a *answers) choice(name string, words ...string) string {
	if !a.has(name) {
		return ""
	}
	for _, w := range words {
		if a.text(name) == w {
			return w
		}
	}
	help := "write `" + strings.Join(words, "` or `") + "`"
	if near := diag.Nearest(a.text(name), words); near != "" {
		help = "did you mean `" + near + "`?"
	}
	a.wrong(name, "`%s` is not one of its words: %s", short(a.text(name)), help)
	return words[0]
}

// scale reads an instrument from --marks and, where it is given, --range: in
// the unit of the marks, or with marks one u apart where none were given.
func (a *answers) scale(u quantity.Unit) quantity.Scale {
	s := quantity.Scale{Unit: u, Step: big.NewRat(1, 1)}
	if a.has("marks") {
		step := a.positive("marks", u.Dimension)
		s = quantity.Scale{Unit: step.Unit, Step: step.Value, Fractions: step.Fraction()}
	}
	if a.has("range") {
		if b := a.limits("range", u.Dimension); a.ok() {
			b = b.In(s.Unit)
			s.Low, s.High = b.Low, b.High
		}
	}
	return s
}

// short returns what was typed, for a message: one line, not endless.
func short(text string) string {
	text = strings.Map(func(r rune) rune {
		if r == utf8.RuneError || !unicode.IsPrint(r) {
			return '?'
		}
		return r
	}, strings.ToValidUTF8(text, "?"))
	if r := []rune(text); len(r) > 40 {
		text = string(r[:40]) + "…"
	}
	return text
}

// decimalOption is what every computation understands besides its own.
var decimalOption = option{name: "decimal", example: "comma", about: "how numbers are typed and printed: point (left out) or comma"}

// markOf reads the decimal mark.
func markOf(text string) (quantity.DecimalMark, error) {
	switch text {
	case "", "point":
		return quantity.Point, nil
	case "comma":
		return quantity.Comma, nil
	}
	return 0, fmt.Errorf("`%s` is not a decimal mark: write `--decimal point` or `--decimal comma`", short(text))
}
