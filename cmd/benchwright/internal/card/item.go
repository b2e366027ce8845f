package card

import (
	"slices"

	"benchwright/cmd/benchwright/internal/source"
)

// An Item is an element of a step, or of what precedes the steps: prose, a
// picture or a block. Every item must have all these methods, so that no case
// is forgotten.
type Item interface {
	Place() source.Place
	// Readings returns the readings it takes, in the order of the work. The
	// rules about limits, gauges and branches apply to all of them.
	Readings() []*Measurement
	// causes returns the hazards of its tools and its work.
	causes() []Cause
	// complete reports whether everything it prints was found and computed.
	// What is missing has been reported, or a rule will report it.
	complete(*Card) bool
}

// ReadingOf returns the reading of a block that is itself a reading, else nil.
func ReadingOf(i Item) *Measurement {
	for _, m := range i.Readings() {
		if m.Place() == i.Place() {
			return m
		}
	}
	return nil
}

// Complete reports whether everything that an item prints is there.
func (c *Card) Complete(i Item) bool { return i.complete(c) }

// Incomplete says whether an item of the step is incomplete.
func (c *Card) Incomplete(s *Step) bool {
	return slices.ContainsFunc(s.Items, func(i Item) bool { return !i.complete(c) })
}

// FirstIncomplete returns the first incomplete item, nil if there is none, as
// on every card without an error.
func (c *Card) FirstIncomplete() Item {
	all := c.Lead
	for _, st := range c.Stages {
		all = append(all[:len(all):len(all)], st.Items...)
		for _, s := range st.Steps {
			all = append(all, s.Items...)
		}
	}
	for _, i := range all {
		if !i.complete(c) {
			return i
		}
	}
	return nil
}
