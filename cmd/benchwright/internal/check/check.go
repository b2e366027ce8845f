// Package check holds the rules that a resolved card must keep, one
// subject a file. A rule looks and reports; it changes nothing. What could not be read
// or found has been reported before, and rules pass over it.
package check

import (
	"slices"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
)

// cardRules are run once a card, that is once a variant. The caller joins what
// all variants have in common, so a rule's message must not name the variant.
var cardRules = []func(*pass){
	limits, sources, also, cases, marks, gauges, wrenches, readings, branches,
	states, leakTests, fills, patterns,
	coveredHazards, liftedParts, idleCovers, contrarySymbols, directions, sizes, threads, reasons, assemblies,
	lashes, rates, tilts,
	orders, passes, sequences, ends, tightness,
	seats, heat, flames, thermometers,
	longSentences, twoActions, lateConditions, vagueWords,
	shims, shimWords,
	tableHoles,
}

// A pass is one card under the rules.
type pass struct {
	*card.Card
	msgs  *diag.List
	known []string // names of several words, see names
}

// Card runs the rules about one card.
func Card(c *card.Card, msgs *diag.List) {
	p := &pass{Card: c, msgs: msgs}
	for _, rule := range cardRules {
		rule(p)
	}
}

// each calls f for every item of the card's steps that is a T.
func each[T card.Item](p *pass, f func(*card.Step, T)) {
	for _, s := range p.Steps() {
		for _, i := range s.Items {
			if t, ok := i.(T); ok {
				f(s, t)
			}
		}
	}
}

// eachReading calls f for every reading that the card's steps take, with the block
// that takes it.
func eachReading(p *pass, f func(card.Item, *card.Measurement)) {
	each(p, func(_ *card.Step, i card.Item) {
		for _, m := range i.Readings() {
			f(i, m)
		}
	})
}

// anyInvalid says whether a block of one of some types could not be read, which is
// reported: it may have been the one that a rule misses.
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

// Procedure runs the rules about a procedure as a whole. Whole says that its
// file was read without an error: what was refused may have been its steps.
func Procedure(p *procedure.Procedure, cards []*card.Card, lib *card.Library, whole bool, msgs *diag.List) {
	uniqueSteps(p, msgs)
	order(p, lib, msgs)
	if whole {
		hasSteps(p, cards, msgs)
	}
}
