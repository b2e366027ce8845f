// Package unit holds the facts of one unit that is overhauled: its variants,
// parts, fasteners, shim packs, limits and jobs. It reads them from unit.yaml,
// or from the unit: mapping of a file that stands alone.
package unit

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// A Unit is one drive, hub or pump that procedures are about.
type Unit struct {
	ID        string
	Title     string
	Note      string // one line printed on every face, such as that the unit is invented
	Variants  []*Variant
	Parts     []*Part
	Fasteners []*Fastener
	Limits    []*Limit
	Jobs      []*Job
	File      *source.File
	Root      *syntax.Node
}

// A Variant is one build of a unit.
type Variant struct {
	ID      string
	Serials string // "1 to 3999"
	Title   string
	At      source.Place
}

// A Part is one part or set of like parts.
type Part struct {
	ID          string
	Name        string
	Number      string
	Count       int  // 1 when not stated
	Renew       bool // renew: always
	MatchedWith string
	Mass        *quantity.Value
	Tray        string
	Only        []string
	At          source.Place
	Node        *syntax.Node
}

// A Hand is the hand of a thread.
type Hand string

// The hands of a thread. A right-hand thread is tightened clockwise as seen
// from its head or nut.
const (
	RightHand Hand = "right"
	LeftHand  Hand = "left"
)

// A Fastener is one fastener or set of like fasteners.
type Fastener struct {
	ID              string
	Name            string // "" makes it from the id: "pinion nut"
	Thread          string // "M24×1.5" as printed
	Class           string // property class, "8.8"
	Count           int
	Hand            Hand
	SeenFrom        string
	AcrossFlats     *quantity.Value
	Pattern         string // circle, …
	Duty            string // clamp, bearing-nut, ring, plug, gasket, to-yield
	NutFactor       *big.Rat
	NutFactorSource string
	Only            []string
	At              source.Place
	Node            *syntax.Node
}

// A Limit is a named limit. It holds one band for all variants, or one a
// variant; a variant without either has none, which a block that uses it there
// is told.
type Limit struct {
	ID        string
	All       *LimitBand
	ByVariant map[string]*LimitBand
	At        source.Place
	Node      *syntax.Node
}

// A LimitBand is a band and where it comes from.
type LimitBand struct {
	Band   quantity.Band
	Also   *quantity.Band
	Source string
	At     source.Place // of the band
}

// For returns the limit's band for a variant ("" where the unit has none), nil
// when it has none.
func (l *Limit) For(variant string) *LimitBand {
	if b := l.ByVariant[variant]; b != nil {
		return b
	}
	return l.All
}

// A Job is an ordered set of cards done on one unit.
type Job struct {
	ID    string
	Title string
	Cards []CardRef
	At    source.Place
}

// A CardRef names a card at a place.
type CardRef struct {
	Number string
	At     source.Place
}
