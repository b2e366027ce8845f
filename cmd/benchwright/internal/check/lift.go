package check

import (
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/unit"
)

// liftedParts warns of a step whose words lift a heavy part without a callout.
// A callout for a hoist suffices, because then the part is not lifted by hand.
func liftedParts(p *pass) {
	if !p.english() {
		return
	}
	for _, s := range p.Steps() {
		covered := slices.ContainsFunc(s.Callouts, func(c *card.Callout) bool {
			return slices.Contains(c.IDs, "lift") || slices.Contains(c.IDs, "hanging")
		})
		part, at := p.liftedPart(s)
		if covered || part == nil {
			continue
		}
		h := p.Lifting(part)
		d := p.msgs.Report("hazard-uncovered", at, strings.ReplaceAll(paste(&h), "\u00a0", " "), "%s %s is heavier than one person lifts, and no callout of this step covers the hazard `lift`", part.Mass.Text, part.Mass.Unit.Symbol)
		d.Label = h.Name
	}
}

var (
	// lifters are verbs for lifting a part or setting it down.
	lifters = strings.Fields("carry lay lift lower move pull put raise set slide stand take")
	// aside are words that may stand between such a verb and the part: take
	// off the case.
	aside = strings.Fields("away back down off out up")
	// elsewhere are words after which the part is not the object that is
	// lifted, but a place, or the name of another thing.
	elsewhere = strings.Fields("about against and around at behind between by for from in into of off on onto or out over that to under until up with")
	// beyond are words that may follow the part: "lift the case off", but not
	// "lift the case cover".
	beyond = append(strings.Fields("aside flat here home level square there together upright when while"), append(aside, elsewhere...)...)
)

// liftedPart returns the first heavy part that the step lifts by its name, and
// its place; nil for none. To avoid false alarms, the verb must begin the
// sentence or follow its condition, and the part must be its object.
func (p *pass) liftedPart(s *card.Step) (*unit.Part, source.Place) {
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

// object returns the word that is name, if an instruction lifts it.
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
