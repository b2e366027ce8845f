package diag

import "strings"

// Series joins words with commas and a final conjunction: "a", "a and b", "a,
// b and c" for last "and".
func Series(words []string, last string) string {
	n := len(words) - 1
	if n < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:n], ", ") + " " + last + " " + words[n]
}
