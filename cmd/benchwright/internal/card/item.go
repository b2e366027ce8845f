package card

import "benchwright/cmd/benchwright/internal/source"

// An Item is one thing in a step, or before the first: prose, a picture or a
// block. It answers all of these, so that nothing is left out by silence.
type Item interface {
	Place() source.Place
	// Readings returns the readings that it takes, in the order of the hands: the
	// rules about limits, gauges and branches hold for all of them.
	Readings() []*Measurement
	// causes returns the hazards that its tools and its work carry.
	causes() []Cause
	// whole says whether all that it is to print was found and computed. What is
	// missing has been reported, or a rule will.
	whole(*Card) bool
}

// ReadingOf returns the reading that a block is, nil for one that takes none, or
// takes readings beside its work.
func ReadingOf(i Item) *Measurement {
	for _, m := range i.Readings() {
		if m.Place() == i.Place() {
			return m
		}
	}
	return nil
}

// Whole says whether all that an item of the card is to print is there.
func (c *Card) Whole(i Item) bool { return i.whole(c) }

// Lacking returns the first item that is not whole, nil where all are: a card
// without an error has none.
func (c *Card) Lacking() Item {
	all := c.Lead
	for _, st := range c.Stages {
		all = append(all[:len(all):len(all)], st.Items...)
		for _, s := range st.Steps {
			all = append(all, s.Items...)
		}
	}
	for _, i := range all {
		if !i.whole(c) {
			return i
		}
	}
	return nil
}
