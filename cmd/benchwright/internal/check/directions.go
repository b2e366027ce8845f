package check

import (
	"regexp"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/unit"
)

var turning = regexp.MustCompile(`(?i)\b(anti-?clockwise|counter-?clockwise|clockwise)\b`)

// directions refuses a typed direction that disagrees with the hand of the
// fastener that the step tightens. The card draws the direction itself.
func directions(p *pass) {
	for _, s := range p.Steps() {
		hand := unit.Hand("")
		name, several := "", false
		for _, i := range s.Items {
			if t, ok := i.(*card.Torque); ok && t.Fastener != nil && t.Fastener.Hand != "" {
				several = several || hand != "" && hand != t.Fastener.Hand
				hand, name = t.Fastener.Hand, t.Fastener.ID
			}
		}
		if hand == "" || several {
			continue // of two hands in one step, words alone do not tell which is meant
		}
		for _, t := range p.texts(s) {
			for _, at := range turning.FindAllStringIndex(t.text, -1) {
				word := strings.ToLower(t.text[at[0]:at[1]])
				if (word == "clockwise") == (hand == unit.LeftHand) {
					p.msgs.Report("direction-wrong", t.place(at[0], at[1]), "take the direction out: the card draws it from the fastener's hand",
						"`%s` has a %s-hand thread, and %s does not tighten it", name, hand, word)
				}
			}
		}
	}
}
