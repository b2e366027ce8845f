// Package check holds the rules for a resolved card, one subject in each file.
// A rule reports and changes nothing. What is unreadable or unknown has
// already been reported, and rules skip it.
package check

import (
	"slices"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
)

// cardRules run once for each card, that is for each variant. The caller
// merges equal messages of several variants, so a message must not name the
// variant.
var cardRules = []func(*pass){
	limits, sources, secondUnits, toleranceCases, marks, gauges, wrenches, readings, spreads, branches,
	states, leakTests, fills, patterns,
	coveredHazards, liftedParts, idleCovers, contrarySymbols, directions, sizes, threads, reasons, assemblies,
	tightenSaid, showSaid, oilSaid,
	lashes, rates, tilts,
	orders, passes, sequences, sleeveReadings, yields, recordBoxes, strengths, tightness, torqueEnds,
	seats, heat, flames, thermometers,
	longSentences, twoActions, lateConditions, vagueWords,
	shims, shimWords,
	tableHoles,
}

// A pass is the run of the rules over one card.
type pass struct {
	*card.Card
	msgs  *diag.List
	known []string // names of several words; see names
}

// Card runs the rules for a card.
func Card(c *card.Card, msgs *diag.List) {
	p := &pass{Card: c, msgs: msgs}
	for _, rule := range cardRules {
		rule(p)
	}
}

// each calls f for every item of type T in the card's steps.
func each[T card.Item](p *pass, f func(*card.Step, T)) {
	for _, s := range p.Steps() {
		for _, i := range s.Items {
			if t, ok := i.(T); ok {
				f(s, t)
			}
		}
	}
}

// eachReading calls f for every reading in the card's steps, with its block.
func eachReading(p *pass, f func(card.Item, *card.Measurement)) {
	each(p, func(_ *card.Step, i card.Item) {
		for _, m := range i.Readings() {
			f(i, m)
		}
	})
}

// anyInvalid reports whether a block of one of the types was unreadable, which
// is reported. It may be the block that a rule looks for.
func (p *pass) anyInvalid(types ...string) bool {
	for _, s := range p.Steps() {
		for _, i := range s.Source.Items {
			if bad, ok := i.(*procedure.Invalid); ok && slices.Contains(types, bad.Type) {
				return true
			}
		}
	}
	return false
}

// Procedure runs the rules for a procedure as a whole. Whole tells that its
// file was read without errors; otherwise its steps may be among what was
// refused.
func Procedure(p *procedure.Procedure, cards []*card.Card, lib *card.Library, whole bool, msgs *diag.List) {
	uniqueSteps(p, msgs)
	order(p, lib, msgs)
	sameTightening(p, cards, lib, msgs)
	if whole {
		hasSteps(p, cards, msgs)
	}
}
