package work

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

// An ask is one thing that a computation asks for.
type ask struct {
	name    string // of its option; "" for the words before the first option
	example string // as it is typed
	about   string
	must    bool
	many    bool // may be given several times
}

// label returns the option as help shows it.
func (q ask) label() string {
	text := q.example
	if strings.ContainsAny(text, " ×*;") {
		text = `"` + text + `"`
	}
	if q.name == "" {
		return text
	}
	return "--" + q.name + " " + text
}

// answers are what was typed. Its readers note the first slip and return
// something harmless; ask for all, then look at ok.
type answers struct {
	computation
	mark  quantity.Mark
	given map[string][]string
	err   error
}

// optionForm is a word that names an option; -0.05 is a number.
var optionForm = regexp.MustCompile(`^--?([A-Za-z][A-Za-z-]*)(?:=(.*))?$`)

// read takes the words apart. What stands behind an option belongs to it up
// to the next option, so that a quantity needs no quotes.
func (c computation) read(words []string) (*answers, error) {
	a := &answers{computation: c, given: map[string][]string{}}
	asks := map[string]ask{"decimal": decimalAsk}
	var names []string
	for _, q := range c.asks {
		asks[q.name] = q
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
		q, known := asks[name]
		text := strings.TrimSpace(strings.Join(value, " "))
		switch {
		case !known && name == "":
			return nil, fmt.Errorf("`%s` stands before the first option of `%s`: name what it is, as in `%s`", short(text), c.name, c.first())
		case !known:
			help := "`benchwright work " + c.name + " --help` lists them"
			if near := diag.Nearest(name, names); near != "" {
				help = "did you mean `--" + near + "`?"
			}
			return nil, fmt.Errorf("`%s` has no option `--%s`: %s", c.name, short(name), help)
		case text == "":
			return nil, fmt.Errorf("`--%s` needs a value, as in `%s`", name, q.label())
		case len(a.given[name]) > 0 && !q.many:
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
	if len(c.asks) == 0 {
		return "--help"
	}
	return c.asks[0].label()
}

// missing names all that is needed and was not given, in one message.
func (a *answers) missing() error {
	var must []string
	for _, q := range a.asks {
		if q.must {
			must = append(must, q.name)
		}
	}
	a.need(must...)
	return a.err
}

// fail notes a slip.
func (a *answers) fail(format string, args ...any) {
	if a.err == nil {
		a.err = fmt.Errorf(format, args...)
	}
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

// label returns an option as it is typed in this shop.
func (a *answers) label(name string) string {
	if name == "class" { // the point of 8.8 is no decimal mark
		return a.ask(name).label()
	}
	return a.marked(a.ask(name).label())
}

func (a *answers) ask(name string) ask {
	for _, q := range a.asks {
		if q.name == name {
			return q
		}
	}
	return ask{name: name}
}

// only returns which of these was given, and refuses two and, where must is
// set, none.
func (a *answers) only(must bool, names ...string) string {
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
	case must:
		a.fail("`%s` needs one more: add %s", a.name, strings.Join(all, " or "))
	}
	return ""
}

func (a *answers) text(name string) string {
	if len(a.given[name]) == 0 {
		return ""
	}
	return a.given[name][0]
}

// option returns an option as a message names it.
func option(name string) string {
	if name == "" {
		return ""
	}
	return "`--" + name + "`: "
}

// problem notes what is wrong with a quantity.
func (a *answers) problem(name string, p *quantity.Problem) {
	help := p.Help
	if example := a.ask(name).example; p.ByExample {
		help = "write it as in `" + a.marked(example) + "`"
	}
	if p.Slug == "decimal-mark" {
		help += ", or add `--decimal " + map[quantity.Mark]string{quantity.Point: "comma", quantity.Comma: "point"}[a.mark] + "`"
	}
	a.fail("%s%s: %s", option(name), p.Message, help)
}

// marked puts this shop's decimal mark into an example.
func (a *answers) marked(text string) string {
	if a.mark == quantity.Comma {
		return pointForm.ReplaceAllString(text, "$1,$2")
	}
	return text
}

var pointForm = regexp.MustCompile(`([0-9])\.([0-9])`)

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

// limits reads a band that has at least one end.
func (a *answers) limits(name string, d quantity.Dimension) quantity.Band {
	b := a.band(name, d)
	if a.ok() && a.has(name) && b.Form == quantity.Bare {
		a.fail("%sone value is no limits: write `%s`", option(name), b.Limited(a.mark))
	}
	return b
}

// one is a value that is harmless where none can be read.
func one(d quantity.Dimension) quantity.Value {
	v := quantity.Value{Number: quantity.Number{Value: big.NewRat(1, 1)}}
	if us := quantity.Units(d); len(us) > 0 {
		v.Unit = us[0]
	}
	return v
}

func (a *answers) value(name string, d quantity.Dimension) quantity.Value {
	if !a.has(name) {
		return one(d)
	}
	v, p := quantity.ParseValueOf(a.text(name), a.mark, d)
	if p != nil {
		a.problem(name, p)
		return one(d)
	}
	return v
}

// above reads a value that must be above zero.
func (a *answers) above(name string, d quantity.Dimension) quantity.Value {
	v := a.value(name, d)
	if a.ok() && v.Value.Sign() <= 0 {
		a.fail("%sthis must be above 0: write it as in `%s`", option(name), a.marked(a.ask(name).example))
		return one(d)
	}
	return v
}

// number reads a plain number; above asks that it be above zero.
func (a *answers) number(name string, above bool) quantity.Number {
	n := quantity.Number{Value: big.NewRat(1, 1)}
	if !a.has(name) {
		return n
	}
	got, p := quantity.ParseNumber(a.text(name), a.mark)
	switch {
	case p != nil:
		a.problem(name, p)
	case above && got.Value.Sign() <= 0:
		a.fail("%sthis must be above 0: write it as in `%s`", option(name), a.marked(a.ask(name).example))
	default:
		return got
	}
	return n
}

// count reads a whole number from least to most.
func (a *answers) count(name string, least, most int) int {
	n, err := strconv.Atoi(a.text(name))
	if a.has(name) && (err != nil || n < least || n > most) {
		a.fail("%s`%s` is no whole number from %d to %d", option(name), short(a.text(name)), least, most)
		return least
	}
	return max(n, least)
}

// choice reads one of some words.
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
	a.fail("%s`%s` is not one of its words: %s", option(name), short(a.text(name)), help)
	return words[0]
}

// scale reads the marks of an instrument and, where it is given, its range.
func (a *answers) scale(marks, span string, d quantity.Dimension) quantity.Scale {
	step := a.above(marks, d)
	s := quantity.Scale{Unit: step.Unit, Step: step.Value, Fractions: step.Fraction()}
	if span != "" && a.has(span) {
		if b := a.limits(span, d); a.ok() {
			b = b.In(step.Unit)
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

// decimalAsk is what every computation understands besides its own.
var decimalAsk = ask{name: "decimal", example: "comma", about: "how numbers are typed and printed: point (left out) or comma"}

// markOf reads the decimal mark.
func markOf(text string) (quantity.Mark, error) {
	switch text {
	case "", "point":
		return quantity.Point, nil
	case "comma":
		return quantity.Comma, nil
	}
	return 0, fmt.Errorf("`%s` is no decimal mark: write `--decimal point` or `--decimal comma`", short(text))
}
