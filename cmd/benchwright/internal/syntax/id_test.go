package syntax

import (
	"strings"
	"testing"
)

func TestWellFormed(t *testing.T) {
	for text, want := range map[string]bool{
		"lash": true, "output-lash-2": true, "a": true, "": false, "2a": false, "Lash": false, "a--b": false, "a-": false, "-a": false,
		"a b": false, "a_b": false, "0.2 mm": false, strings.Repeat("a", 40): true, strings.Repeat("a", 41): false,
	} {
		if WellFormed(text) != want {
			t.Errorf("%q: %v", text, !want)
		}
	}
}
