package diag

import "strings"

// Series joins words as a sentence does: "a", "a and b", "a, b and c", with
// the last link that is given.
func Series(words []string, last string) string {
	n := len(words) - 1
	if n < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:n], ", ") + " " + last + " " + words[n]
}
