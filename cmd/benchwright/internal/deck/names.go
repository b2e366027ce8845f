package deck

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// the puts a name into a sentence: "the pinion head bearing".
func the(name string) string {
	for _, article := range []string{"the ", "The ", "a ", "an "} {
		if strings.HasPrefix(name, article) {
			return lower(name)
		}
	}
	return "the " + lower(name)
}

// capital makes a name begin a line.
func capital(name string) string {
	_, n := utf8.DecodeRuneInString(name)
	return strings.ToUpper(name[:n]) + name[n:]
}

// together keeps a text on one line.
func together(text string) string { return strings.ReplaceAll(text, " ", nbsp) }

// lower puts a name inside a line: "Pinion nut" → "pinion nut". A name that
// begins with two capitals, with a capital alone (a letter on a drawing) or with a
// digit stays.
func lower(name string) string {
	r, n := utf8.DecodeRuneInString(name)
	next, _ := utf8.DecodeRuneInString(name[n:])
	if !unicode.IsUpper(r) || unicode.IsUpper(next) || unicode.IsDigit(next) || next == '-' || len(name) == n || next == ' ' && r != 'A' {
		return name
	}
	return strings.ToLower(name[:n]) + name[n:]
}

// sentence makes a sentence of a text, which may already end in a period.
func sentence(text string) string { return capital(strings.TrimSuffix(text, ".")) + "." }

// join lists names on one line, the first capitalized.
func join(names []string) string {
	s := ""
	for i, n := range names {
		if i > 0 {
			s, n = s+", ", lower(n)
		}
		s += n
	}
	return s
}
