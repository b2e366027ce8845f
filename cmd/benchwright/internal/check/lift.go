package check

import (
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/unit"
)

// liftedParts warns of a step whose words take a heavy part up with no callout
// about it. A callout for a hoist is one: what hangs is not lifted.
func liftedParts(p *pass) {
	if !p.english() {
		return
	}
	for _, s := range p.Steps() {
		covered := slices.ContainsFunc(s.Callouts, func(c *card.Callout) bool {
			return slices.Contains(c.IDs, "lift") || slices.Contains(c.IDs, "hanging")
		})
		part, at := p.takenUp(s)
		if covered || part == nil {
			continue
		}
		h := p.Lifting(part)
		d := p.msgs.Report("hazard-uncovered", at, strings.ReplaceAll(paste(&h), "\u00a0", " "), "%s %s is heavier than one person lifts, and no callout of this step covers the hazard `lift`", part.Mass.Text, part.Mass.Unit.Symbol)
		d.Label = h.Name
	}
}

var (
	// lifters are the verbs that take a part up, or set one down.
	lifters = strings.Fields("carry lay lift lower move pull put raise set slide stand take")
	// aside are the words of such a verb that come before the part: take off the case.
	aside = strings.Fields("away back down off out up")
	// elsewhere are the words after which the part is no longer what is lifted, but
	// where something else goes, or part of another thing's name.
	elsewhere = strings.Fields("about against and around at behind between by for from in into of off on onto or out over that to under until up with")
	// beyond are the words that follow the part where it is the whole name: lift
	// the case off, and not the case cover.
	beyond = append(strings.Fields("aside flat here home level square there together upright when while"), append(aside, elsewhere...)...)
)

// takenUp returns the first heavy part that a sentence of the step takes up by
// its name, and where; nil for none. It would rather miss one than cry wolf: the
// verb begins the sentence, or follows its condition, and the part is its object.
func (p *pass) takenUp(s *card.Step) (*unit.Part, source.Place) {
	if p.Unit == nil {
		return nil, source.Place{}
	}
	for _, part := range p.Unit.Parts {
		if !p.Heavy(part) {
			continue
		}
		for _, i := range p.instructions(s) {
			if w := object(i.words, strings.ToLower(part.Name)); w != nil {
				bare := strings.TrimRightFunc(i.text.text[w.from:w.to], isMark)
				return part, i.text.place(w.from, w.from+len(bare))
			}
		}
	}
	return nil, source.Place{}
}

// object returns the word that is a name, where it is what an instruction lifts.
func object(words []word, name string) *word {
	if len(words) > 0 && slices.Contains(conditions, words[0].text) {
		n := slices.IndexFunc(words, func(w word) bool { return w.comma })
		words = words[n+1:]
	}
	if len(words) == 0 || !slices.Contains(lifters, words[0].text) {
		return nil
	}
	words = words[1:]
	if len(words) > 0 && slices.Contains(aside, words[0].text) {
		words = words[1:]
	}
	for i := range words[:min(4, len(words))] {
		w := &words[i]
		switch {
		case w.text == name:
			if w.comma || i+1 == len(words) || slices.Contains(beyond, words[i+1].text) {
				return w
			}
			return nil
		case w.comma || slices.Contains(elsewhere, w.text):
			return nil
		}
	}
	return nil
}
