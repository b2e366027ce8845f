package check

import (
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/unit"
)

// lies says where a wrong pattern lies.
var lies = map[unit.Fault]string{unit.High: "high", unit.Low: "low", unit.Toe: "at the toe", unit.Heel: "at the heel"}

// patterns asks that every picture of a contact pattern leads somewhere, and
// that correcting it comes to an end.
func patterns(p *pass) {
	each(p, func(_ *card.Step, c *card.Pattern) {
		if c.AsFound {
			return
		}
		var keys, where []string
		for _, f := range unit.Faults {
			if !c.If[f].Stated() {
				keys, where = append(keys, "`"+string(f)+": {go: STEP}`"), append(where, lies[f])
			}
		}
		switch {
		case len(keys) > 0:
			p.msgs.Report("branch-missing", c.At, "add "+strings.Join(keys, ", "), "nothing says where to go when the pattern is %s", either(where))
		case c.Again == 0:
			p.msgs.Report("branch-missing", c.At, "add `again: 3` and `then:` with what to do when it is still wrong", "nothing says how often at most the pattern is corrected")
		}
	})
}

// either joins words by commas and an or.
func either(words []string) string {
	n := len(words) - 1
	if n == 0 {
		return words[0]
	}
	return strings.Join(words[:n], ", ") + " or " + words[n]
}
