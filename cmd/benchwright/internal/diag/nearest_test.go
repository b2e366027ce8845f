package diag

import (
	"strings"
	"testing"
)

func TestNearest(t *testing.T) {
	for _, c := range []struct{ word, names, want string }{
		{"output-lsh", "output-lash output-end-play", "output-lash"},
		{"lash-otuput", "output-lash", ""},               // words in another order are not a typo
		{"guage", "gauge", "gauge"},                      // neighbors swapped: one edit
		{"hihg", "high low", "high"},                     // four letters, one edit
		{"Pinion-Nut", "pinion-nut", "pinion-nut"},       // capitals are no edit
		{"pinion_nut", "pinion-nut", "pinion-nut"},       // one sign
		{"pinnion-nutt", "pinion-nut", "pinion-nut"},     // two edits in twelve
		{"as", "use", ""},                                // too short to guess
		{"as", "at", ""},                                 // two letters allow none
		{"use", "uses", "uses"},                          // three allow one
		{"bar", "ber bor", "ber"},                        // a tie goes to the first
		{"bar", "bar ber", "bar"},                        // itself is nearest
		{"µm", "mm", ""},                                 // runes are counted, not bytes
		{"größe", "grosse größen", "größen"},             // as here
		{"", "a b", ""},                                  // nothing is near nothing
		{"tool", "", ""},                                 // no names
		{"measurment", "measurement", "measurement"},     // a letter left out
		{"torqueue", "torque tool", "torque"},            // two too many
		{"completely-else", "output-lash", ""},           // far off
		{"md48-20", "MD48-10 MD48-20 MD48-2", "MD48-20"}, // the nearest of several
	} {
		if got := Nearest(c.word, strings.Fields(c.names)); got != c.want {
			t.Errorf("nearest to %q of %q is %q, want %q", c.word, c.names, got, c.want)
		}
	}
	// Long names cost no more than they must, and never panic.
	long := strings.Repeat("x", 2000)
	if got := Nearest(long, []string{long + "y"}); got != long+"y" {
		t.Error("a long name is not found")
	}
}
