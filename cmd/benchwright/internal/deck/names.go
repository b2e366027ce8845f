package deck

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// the writes a name inside a sentence: "the pinion head bearing".
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

// lower makes a name fit inside a line: "Pinion nut" → "pinion nut"; a name
// that begins with two capitals or a figure stays.
func lower(name string) string {
	r, n := utf8.DecodeRuneInString(name)
	next, _ := utf8.DecodeRuneInString(name[n:])
	if !unicode.IsUpper(r) || unicode.IsUpper(next) || unicode.IsDigit(next) || next == '-' {
		return name
	}
	return strings.ToLower(name[:n]) + name[n:]
}

// sentence ends a writer's words as a sentence: they may have their full stop.
func sentence(text string) string { return capital(strings.TrimSuffix(text, ".")) + "." }

// join lists names in one line, the first as it begins one.
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
