// Package compare says what changed between two sides of a workspace, in what a
// card says and not in the lines of its files: two Cards → changes. It compares
// the decks that both sides build, so what it reports is what the reader of a
// card sees before and after, whichever file the change stands in.
package compare

import (
	"slices"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/source"
)

// A Class says what a change means at the bench.
type Class string

// The classes, the gravest first.
const (
	Safety  Class = "safety"  // a number that is set or accepted, a caution, a hold point, a direction
	Method  Class = "method"  // steps, tools, parts, what is written down
	Wording Class = "wording" // prose alone
)

// Classes lists the classes, the gravest first.
var Classes = []Class{Safety, Method, Wording}

// Reaches reports whether a change of this class is as grave as another, or
// graver.
func (c Class) Reaches(other Class) bool {
	return slices.Index(Classes, c) <= slices.Index(Classes, other)
}

// graver returns the graver of two classes.
func graver(x, y Class) Class {
	if y.Reaches(x) {
		return y
	}
	return x
}

// A Procedure is one procedure of one side.
type Procedure struct {
	Number string
	Title  string
	File   string            // its name below the workspace
	Rests  map[string]string // digests of all the files that its cards are made from; where they are the same on both sides, so are the cards
	Make   func() *Made
}

// Made is the cards of a procedure, as far as it could be read.
type Made struct {
	Cards   []*card.Card // one a variant; nil where none could be made
	Errors  int          // that keep it from being built
	First   string       // the first of them, with its place
	Library *card.Library
	// Pages lays out the pages as if they were of a revision and a date, by
	// variant; nil where there are no cards.
	Pages func(revision, date string) map[string][]Page
}

func (m *Made) variant(id string) *card.Card {
	for _, c := range m.Cards {
		if c.VariantID() == id {
			return c
		}
	}
	return nil
}

// A Change is one change in what a card says.
type Change struct {
	Class   Class
	Reaches []Reach // the variants that it reaches, in the unit's order; at least one
	Title   string  // of the step, the new one, else the old one; "" for what stands in no step
	Place   string  // where it stands if not in a step: "lay-out page"
	What    string  // "set", "caution removed", "step moved"
	Before  string  // as the reader sees it; "" where there was nothing
	After   string
	Note    string       // "5 % more, wider"; "" for nothing
	Causes  []string     // files that it comes from, by their names below the workspace
	At      source.Place // on the new side, else on the old one; the zero place if it is nowhere in particular
	Gone    bool         // At is on the old side
	Behind  bool         // no page shows it: the card rests on it

	key    across  // what makes it the same change in another variant
	lost   [2]bool // the whole element is not on the old, on the new side
	before source.Place
}

// A Reach is where a change stands in one variant.
type Reach struct {
	Variant  string // its id; "" where the unit has none
	Old, New Where
}

// Where is a step of one side and the pages, from 1, on which a change stands: 0
// and none where it stands in no step, or on no page.
type Where struct {
	Step  int
	Pages []int
}

// A Card is what changed on one card.
type Card struct {
	Number, Title string
	File          string   // of the procedure, on the new side if it is there
	Variants      []string // ids of all that it serves, on either side; nil where the unit has none
	Causes        []string // files of the card that differ, by their names below the workspace
	Changes       []Change
	Old, New      Side
	Print, Off    []Pages // pages of the new side to print again; of the old side to take off the bench
	Strip         bool    // the record strip says something else
	Revised       bool    // its revision was raised, or it needs none: a new card, one that is gone, one that was a draft
}

// Pages are pages of the card for some of its variants.
type Pages struct {
	Variants []string // nil where the unit has none
	Of       int      // how many pages there are in all; 0 where they could not be laid out
	Pages    []int
}

// A Side says how far one side of a card could be read.
type Side struct {
	There  bool
	Errors int
	First  string
}

// A Report is what changed between two sides.
type Report struct {
	Cards []Card // those with a change, and those that do not compile
}

// Count returns how many changes of a class there are.
func (r *Report) Count(class Class) int {
	n := 0
	for _, c := range r.Cards {
		for _, x := range c.Changes {
			if x.Class == class {
				n++
			}
		}
	}
	return n
}

// Unrevised returns the cards with a change of a class, or a graver one, on a page,
// whose revision was not raised.
func (r *Report) Unrevised(class Class) []string {
	var out []string
	for _, c := range r.Cards {
		if !c.Revised && slices.ContainsFunc(c.Changes, func(x Change) bool { return !x.Behind && x.Class.Reaches(class) }) {
			out = append(out, c.Number)
		}
	}
	return out
}

// Unsure returns the cards that do not compile on a side and in which no change
// was found though their files differ: what could not be read may hide one.
func (r *Report) Unsure() []string {
	var out []string
	for _, c := range r.Cards {
		if len(c.Changes) == 0 {
			out = append(out, c.Number)
		}
	}
	return out
}

// Of returns the part of a report that comes from one file, by the names that it
// has below the workspace on the two sides. A change that several files make only
// together counts for the first of them. Where others changed the card too, only
// the pages on which the file's own changes stand are named.
func (r *Report) Of(names ...string) *Report {
	out := &Report{}
	for _, c := range r.Cards {
		all := c.Changes
		c.Changes = nil
		for _, x := range all {
			if len(x.Causes) > 0 && slices.Contains(names, x.Causes[0]) {
				c.Changes = append(c.Changes, x)
			}
		}
		c.Causes = slices.DeleteFunc(slices.Clone(c.Causes), func(name string) bool { return !slices.Contains(names, name) })
		unread := len(all) == 0 && len(c.Causes) > 0
		if len(c.Changes) > 0 && len(c.Changes) < len(all) {
			c.narrow()
		}
		if len(c.Changes) > 0 || unread {
			out.Cards = append(out.Cards, c)
		}
	}
	return out
}
