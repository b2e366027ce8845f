package check

import (
	"regexp"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/unit"
)

var (
	turning = regexp.MustCompile(`(?i)\b(anti-?clockwise|counter-?clockwise|clockwise)\b`)
	// loosening a fastener correctly turns it the other way
	loosening = regexp.MustCompile(`(?i)\b(loosen|slacken|undo|unscrew|back (it )?off|remove)`)
	// turned matches what a sentence says is turned: "turn the hub".
	turned = regexp.MustCompile(`(?i)\b(?:turn|rotate|spin|roll)(?:ing)? (?:the|each|both) ([a-z -]+?) ?(?:anti|counter|clock)`)
)

// tightens reports whether a direction in the sentence is that of tightening
// the fastener, rather than of loosening it or of turning another part.
func tightens(sentence, fastener string) bool {
	if loosening.MatchString(sentence) {
		return false
	}
	m := turned.FindStringSubmatch(sentence)
	if m == nil {
		return true
	}
	name := strings.Fields(strings.ToLower(fastener))
	return slices.ContainsFunc(strings.Fields(strings.ToLower(m[1])), func(w string) bool {
		return slices.ContainsFunc(name, func(n string) bool { return strings.TrimSuffix(n, "s") == strings.TrimSuffix(w, "s") })
	})
}

// directions refuses a written direction that contradicts the hand of the
// fastener that the step tightens. The card draws the direction itself.
func directions(p *pass) {
	for _, s := range p.Steps() {
		hand := unit.Hand("")
		name, fastener, several := "", "", false
		for _, i := range s.Items {
			if t, ok := i.(*card.Torque); ok && t.Fastener != nil && t.Fastener.Hand != "" {
				several = several || hand != "" && hand != t.Fastener.Hand
				hand, name, fastener = t.Fastener.Hand, t.Fastener.ID, t.Fastener.Name
			}
		}
		if hand == "" || several {
			continue // with fasteners of both hands, words alone do not tell which is meant
		}
		for _, i := range p.instructions(s) {
			said := i.text.text[i.from:i.to]
			if !tightens(said, fastener) {
				continue
			}
			for _, at := range turning.FindAllStringIndex(said, -1) {
				word := strings.ToLower(said[at[0]:at[1]])
				if (word == "clockwise") == (hand == unit.LeftHand) {
					p.msgs.Report("direction-wrong", i.text.place(i.from+at[0], i.from+at[1]), "take the direction out: the card draws it from the fastener's hand",
						"`%s` has a %s-hand thread, and %s does not tighten it", name, hand, word)
				}
			}
		}
	}
}
