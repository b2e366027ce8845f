package syntax

import (
	"strings"
	"unicode"
)

// MaxID is the maximum length of an id, in characters.
const MaxID = 40

// WellFormed reports whether a text is a valid id:
// [a-z][a-z0-9]*(-[a-z0-9]+)*, at most MaxID characters.
func WellFormed(id string) bool {
	for i := 0; i < len(id); i++ {
		c := id[i]
		switch {
		case c >= 'a' && c <= 'z':
		case c >= '0' && c <= '9' && i > 0:
		case c == '-' && i > 0 && id[i-1] != '-' && i+1 < len(id):
		default:
			return false
		}
	}
	return id != "" && len(id) <= MaxID
}

// MeantID returns the id that was probably meant by text, "" if none can be
// derived.
func MeantID(text string) string {
	words := strings.FieldsFunc(strings.ToLower(text), func(c rune) bool {
		return unicode.IsSpace(c) || strings.ContainsRune("-_./:,", c)
	})
	if id := strings.Join(words, "-"); WellFormed(id) {
		return id
	}
	return ""
}
