package deck

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/render"
)

// typeset sets curved quotation marks and the no-break spaces that bind needs.
func typeset(text string) string {
	var q quotes
	return bind(q.set(text))
}

// quotes curves straight quotation marks, across the runs of a text. An inch
// or foot mark behind a digit stays.
type quotes struct {
	before rune // last rune of the previous run
	open   bool // a double quotation mark is open, so the next one closes it, even behind a digit
}

func (q *quotes) set(text string) string {
	if !strings.ContainsAny(text, `"'`) {
		if text != "" {
			q.before, _ = utf8.DecodeLastRuneInString(text)
		}
		return text
	}
	var out strings.Builder
	for _, r := range text {
		begins := q.before == 0 || unicode.IsSpace(q.before) || strings.ContainsRune("([{–—“", q.before)
		switch measure := unicode.IsDigit(q.before); {
		case r == '"' && begins:
			r, q.open = '“', true
		case r == '"' && (q.open || !measure):
			r, q.open = '”', false
		case r == '\'' && begins:
			r = '‘'
		case r == '\'' && !measure:
			r = '’'
		}
		out.WriteRune(r)
		q.before = r
	}
	return out.String()
}

// numberedWords are words in a source that stay with their number.
var numberedWords = []string{"table", "page", "pages", "issue", "figure", "chapter", "section", "letter", "rule"}

// bind puts a no-break space between a number and its unit, and between a
// numberedWord and its number.
func bind(text string) string {
	return bindWords(text, func(last, w string) bool {
		return isNumber(last) && isUnit(w) || isNumber(strings.TrimRight(w, ".,;:)!?")) && slices.Contains(numberedWords, strings.ToLower(strings.TrimLeft(last, "(")))
	})
}

// bindName binds the numbers and sizes of a thing's name to its noun, too, and a
// compound to what it is of: "Micrometer 25 to 50", "13 mm socket", "Set-up pack".
func bindName(name string) string {
	name = hyphened.ReplaceAllString(typeset(name), "$1\u2011$2")
	return bindWords(name, func(last, w string) bool {
		return isNumber(w) || isUnit(last) || strings.ContainsAny(last, "-\u2011") || w == wordTo && isNumber(last)
	})
}

// hyphened is a hyphen at which a line could end: that of a name stays inside it.
var hyphened = regexp.MustCompile(`(\pL{3})-(\pL{3})`)

// bindTitle binds each article to its noun.
func bindTitle(title []render.Run) []render.Run {
	for i := range title {
		title[i].Text = bindWords(title[i].Text, func(last, _ string) bool {
			return slices.Contains([]string{"the", "a", "an"}, strings.ToLower(last))
		})
	}
	return title
}

// bindWords joins words of a text by no-break spaces where together says so.
func bindWords(text string, together func(last, next string) bool) string {
	words := strings.Split(text, " ")
	var out strings.Builder
	for i, w := range words {
		if i > 0 {
			last := words[i-1]
			if at := strings.LastIndex(last, nbsp); at >= 0 {
				last = last[at+len(nbsp):]
			}
			next, _, _ := strings.Cut(w, nbsp)
			if together(last, next) {
				out.WriteString(nbsp)
			} else {
				out.WriteByte(' ')
			}
		}
		out.WriteString(w)
	}
	return out.String()
}

func isNumber(word string) bool {
	word = strings.TrimLeft(word, "(±+-−")
	if word == "" || !strings.ContainsFunc(word, unicode.IsDigit) {
		return false
	}
	return strings.Trim(word, "0123456789.,/-–½¼¾⅛⅜⅝⅞") == ""
}

func isUnit(word string) bool {
	word = strings.TrimRight(word, ".,;:)!?")
	_, ok := quantity.UnitOf(word)
	return ok
}
