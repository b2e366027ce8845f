// Package procedure converts a parsed file to a Procedure, with a Go type for
// each block type. Quantities are converted; names stay as written and are
// looked up later. An unreadable block becomes Invalid, which later stages
// skip, so that one slip gives one message.
package procedure

import (
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// A Named is a name, or another short text, and its place.
type Named struct {
	Name string
	At   source.Place
}

type Procedure struct {
	File        *source.File
	Doc         *syntax.Doc
	Number      Named
	Title       Named
	Unit        Named // its id; that of the inline unit if there is one
	InlineUnit  *syntax.Node
	Revision    string
	Date        string
	Kind        Kind
	Variants    []Named // nil for all
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
	Parts       []Named // ids of the parts to have ready
	StopPoints  []StopPoint
	Accept      []Accept
	Lead        []Item // prose before the first stage
	Stages      []*Stage
}

// A Kind is the kind of work that a card is for.
type Kind string

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
	After Named // id of a step
	Say   string
}

// An Accept is a warning that the writer accepts, with the reason.
type Accept struct {
	Slug    Named
	Step    Named // id of a step; empty for the whole card
	Because string
}

type Stage struct {
	syntax.Heading
	Items []Item
	Steps []*Step
}

// A Step is a numbered action.
type Step struct {
	syntax.Heading
	Items []Item
}

// An Item is an element of a step: *Prose or a block.
type Item interface {
	Place() source.Place
	// OnlyFor returns the variants to which the item applies, nil for all.
	OnlyFor() []Named
}

// Base is common to all items.
type Base struct {
	At   source.Place
	Only []Named
	Node *syntax.Node // mapping of the block; nil for prose
}

// Place returns the place of the block's type, or of the prose.
func (b *Base) Place() source.Place { return b.At }

// OnlyFor returns the variants to which the item applies, nil for all.
func (b *Base) OnlyFor() []Named { return b.Only }

// KeyPlace returns the place of the value of key, or of the block if it lacks
// the key.
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

// Invalid takes the place of an unreadable block.
type Invalid struct {
	Base
	Type string
	Why  diag.Reported
}

// invalid is the only function that makes an Invalid, because that needs the
// proof of a reported error.
func invalid(b Base, kind string, why diag.Reported) *Invalid {
	return &Invalid{b, kind, why.Must()}
}

// Tool lists the tools to take up, and what to do with them.
type Tool struct {
	Base
	Use          []Named
	Assemble     []Named
	AssemblyName Named // name of the assembly
	TakeApart    Named
	HoldStill    Named // what is held while something else turns
	With         Named
}

// Limits are the limits of a block: a named limit, a band written in place, or
// none, with what is expected instead.
type Limits struct {
	Named   Named
	Band    *quantity.Band
	Also    *quantity.Band
	Source  string
	None    bool
	Because string
	Expect  *quantity.Band
	At      source.Place  // place of the value; that of the block without one
	Bad     diag.Reported // part of them was unreadable
}

// Stated reports whether the block states limits, or that it has none.
func (l *Limits) Stated() bool { return l.Named.Name != "" || l.Band != nil || l.None || l.Bad.IsSet() }

// A Use is how several readings are judged.
type Use string

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
	Gauge   Named // under gauge:, or under another key of the block
	Record  []string
	Use     Use // "" for a single reading
	Spread  *quantity.Band
	IfLow   Branch
	IfHigh  Branch
	AsFound bool
	Tilt    *quantity.Value // angle between the lever of a test indicator and the surface; nil if not stated
}

// A Branch is what to do if a reading is outside one limit.
type Branch struct {
	Text string
	Go   Named // id of a step
	Back bool  // return afterward
	At   source.Place
}

// Stated reports whether the branch has any content.
func (b Branch) Stated() bool { return b.Text != "" || b.Go.Name != "" }

// Caution is a callout written by the writer.
type Caution struct {
	Base
	Level   Named
	Hazard  string
	Result  string
	Avoid   string
	Symbols []Named
	Covers  []Named
}

// HoldPoint stops the work until somebody has inspected and signed.
type HoldPoint struct {
	Base
	Who    string
	Sees   string
	Before string
}
