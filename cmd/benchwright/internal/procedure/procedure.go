// Package procedure holds what a procedure says, one Go type a block type:
// quantities are read, names stand as they were written and are looked up
// later. What could not be read becomes Invalid, so that later rooms pass over
// it and one slip gives one message.
package procedure

import (
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// A Named is a name, or any short text, that a writer wrote at a place.
type Named struct {
	Name string
	At   source.Place
}

// A Procedure is one procedure file.
type Procedure struct {
	File        *source.File
	Doc         *syntax.Doc
	Number      Named
	Title       Named
	Unit        Named // the id; the inline unit's id when it has one
	InlineUnit  *syntax.Node
	Revision    string
	Date        string
	Kind        Kind
	Variants    []Named // nil is all
	After       []Named
	Reverses    Named
	Time        string
	People      string
	Skill       string
	Call        string
	Source      string
	Draft       bool
	Conditions  []Named
	Consumables []Named
	Parts       []Named // ids of parts to have ready
	StopPoints  []StopPoint
	Accept      []Accept
	Lead        []Item // prose before the first stage
	Stages      []*Stage
}

// A Kind is what a card is for.
type Kind string

// The kinds of card.
const (
	Inspect Kind = "inspect"
	Strip   Kind = "strip"
	SetUp   Kind = "set-up"
	Rebuild Kind = "rebuild"
	Test    Kind = "test"
	General Kind = "general"
)

var cardKinds = []Kind{Inspect, Strip, SetUp, Rebuild, Test, General}

// A StopPoint is a step after which it is safe to stop.
type StopPoint struct {
	After Named // a step's id
	Say   string
}

// An Accept is a warning that the writer has decided to live with.
type Accept struct {
	Slug    Named
	Step    Named // a step's id; empty for the whole card
	Because string
}

// A Stage is one part of the work.
type Stage struct {
	syntax.Heading
	Items []Item
	Steps []*Step
}

// A Step is one numbered action.
type Step struct {
	syntax.Heading
	Items []Item
}

// An Item is one thing in a step: *Prose or one of the block types.
type Item interface {
	Place() source.Place
	// Limited returns the variants that the item is limited to, nil for all.
	Limited() []Named
}

// Base is what every item has.
type Base struct {
	At   source.Place
	Only []Named
	Node *syntax.Node // the block's mapping; nil for prose
}

// Place returns where the block's type stands, or the prose.
func (b *Base) Place() source.Place { return b.At }

// Limited returns the variants that the item is limited to, nil for all.
func (b *Base) Limited() []Named { return b.Only }

// KeyPlace returns the place of the value under key, the whole block's where
// it has none.
func (b *Base) KeyPlace(key string) source.Place {
	if n := b.Node.Get(key); n != nil {
		return n.Place()
	}
	return b.At
}

// Prose is a paragraph, list, table, picture, tip or why.
type Prose struct {
	Base
	Content syntax.Content
}

// Invalid stands where a block could not be read.
type Invalid struct {
	Base
	Type string
	Why  diag.Reported
}

// invalid is the one maker of Invalid: without the proof that something was
// reported there is none.
func invalid(b Base, kind string, why diag.Reported) *Invalid {
	return &Invalid{b, kind, why.Must()}
}

// Tool says what to take in the hand.
type Tool struct {
	Base
	Use       []Named
	Assemble  []Named
	As        Named // what the assembly is called
	TakeApart Named
	HoldStill Named // what is held while something else turns
	With      Named
}

// Limits are how a block says its limits: by name, by a band in place, or
// none, with what is expected instead.
type Limits struct {
	Named   Named
	Band    *quantity.Band
	Also    *quantity.Band
	Source  string
	None    bool
	Because string
	Expect  *quantity.Band
	At      source.Place  // of the limits key's value; the block without one
	Bad     diag.Reported // something of them could not be read
}

// Stated says whether the block states limits in any way.
func (l *Limits) Stated() bool { return l.Named.Name != "" || l.Band != nil || l.None || l.Bad.IsSet() }

// A Use says what is done with several readings.
type Use string

// The uses.
const (
	Lowest  Use = "lowest"
	Each    Use = "each"
	Average Use = "average"
)

// Measurement is a reading with its limits.
type Measurement struct {
	Base
	Of      string
	Limits  Limits
	Gauge   Named // under gauge:, or the block's own word for it
	Record  []string
	Use     Use // "" for one reading
	Spread  *quantity.Band
	IfLow   Branch
	IfHigh  Branch
	AsFound bool
	Tilt    *quantity.Value // of a lever indicator's lever to the surface; nil where not stated
}

// A Branch is what to do on one side of a band.
type Branch struct {
	Text string
	Go   Named // a step's id
	Back bool  // and come back
	At   source.Place
}

// Stated says whether the branch says anything.
func (b Branch) Stated() bool { return b.Text != "" || b.Go.Name != "" }

// Caution is the writer's own callout.
type Caution struct {
	Base
	Level   Named
	Hazard  string
	Result  string
	Avoid   string
	Symbols []Named
	Covers  []Named
}

// HoldPoint stops the work until somebody has seen and signed.
type HoldPoint struct {
	Base
	Who    string
	Sees   string
	Before string
}
