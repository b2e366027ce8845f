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
		p.loosenings(s)
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

var (
	loosened = regexp.MustCompile(`(?i)^(?:then )?(?:loosen|slacken|undo|unscrew|take off|remove) |^take .* off\b`)
	// unscrewing matches an order that turns what is loosened, if it names it or says "it".
	unscrewing = regexp.MustCompile(`(?i)^(?:then )?(?:loosen|slacken|undo|unscrew|turn|run)\b`)
	itself     = regexp.MustCompile(`(?i)^(?:then )?[a-z]+ (?:it|them|anti-?clockwise|counter-?clockwise|clockwise)\b`)
	// levering matches an order that moves the bar on what is loosened.
	levering = regexp.MustCompile(`(?i)^(?:pull|push|swing) the (?:bar|breaker bar|handle|wrench|ratchet)\b`)
)

// loosenings refuses a written direction that tightens the fastener that a step
// loosens: the one that its heading or the sentence names behind such a verb.
func (p *pass) loosenings(s *card.Step) {
	if p.Unit == nil || !p.english() {
		return
	}
	title := p.loosens(s.Source.Text)
	if has[*card.Torque](s, "torque") {
		title = nil // its own words may be about the tightening
	}
	for _, i := range p.instructions(s) {
		said := i.text.text[i.from:i.to]
		f := p.loosens(said)
		if f == nil && title != nil && (levering.MatchString(said) || unscrewing.MatchString(said) && (itself.MatchString(said) || names(strings.ToLower(said), title))) {
			f = title
		}
		if f == nil {
			continue
		}
		for _, at := range turning.FindAllStringIndex(said, -1) {
			word := strings.ToLower(said[at[0]:at[1]])
			if (word == "clockwise") == (f.Hand == unit.RightHand) {
				d := p.msgs.Report("direction-wrong", i.text.place(i.from+at[0], i.from+at[1]), "look up its hand again, and keep the one that is right",
					"`%s` has a %s-hand thread, and %s does not loosen it", f.ID, f.Hand, word)
				d.Related = append(d.Related, related(f.At, "the fastener is declared here"))
			}
		}
	}
}

// loosens returns the one fastener that a sentence orders to loosen, nil if it
// names none or several.
func (p *pass) loosens(said string) (found *unit.Fastener) {
	if !loosened.MatchString(said) {
		return nil
	}
	lower := strings.ToLower(said)
	for _, f := range p.Unit.Fasteners {
		if indexWord(lower, strings.ToLower(f.Name)) >= 0 {
			if found != nil && !strings.EqualFold(found.Name, f.Name) {
				return nil
			}
			found = f
		}
	}
	return found
}
