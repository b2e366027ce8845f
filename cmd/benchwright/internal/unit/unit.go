// Package unit holds the facts of one unit that is overhauled: its variants,
// parts, fasteners, shim packs, limits and jobs. It reads them from unit.yaml,
// or from the unit: mapping of a file that stands alone.
package unit

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/diag"
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
	Packs     []*Pack
	Gears     []*Pair
	Limits    []*Limit
	TestCap   *TestCap // nil where the unit states none
	DependsOn []*Dependency
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
	Kind        PartKind
	Material    Material
	MaxHeat     *quantity.Value // how hot it may get; nil where not stated
	HeatSource  string          // where that comes from
	HeatBecause string          // why it may be hotter than its like
	Only        []string
	At          source.Place
	Node        *syntax.Node
}

// A PartKind is what a part is, where that decides how it is fitted; "" for any
// other part.
type PartKind string

// The kinds of part that are fitted in a way of their own.
const (
	Bearing PartKind = "bearing" // a rolling bearing, or its cone with the rollers
	Race    PartKind = "race"    // of a tapered bearing: it has a thick edge and a thin one
	Seal    PartKind = "seal"    // a lip seal: its lip faces one way
)

// Rolling reports whether the part is a rolling bearing or one of its rings.
func (p *Part) Rolling() bool { return p.Kind == Bearing || p.Kind == Race }

// A Material is what a part is made of, as far as its fit is computed from it;
// nil where not stated.
type Material struct {
	Expansion *quantity.Value
	Modulus   *quantity.Value // of elasticity
	Poisson   *big.Rat
	Source    string
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
	Name            string // made from the id where none is written: "Pinion nut"
	Thread          string // "M24×1.5" as printed
	Class           string // property class, "8.8"
	Count           int
	Hand            Hand
	SeenFrom        string
	AcrossFlats     *quantity.Value // of a socket screw, its key
	Drive           Head
	Pattern         Pattern
	Duty            Duty
	NutFactor       *big.Rat
	NutFactorSource string
	Only            []string
	At              source.Place
	Node            *syntax.Node
}

// A Head is what a fastener is turned by; "" where not stated.
type Head string

// The heads. A special one stands in no table.
const (
	Hex     Head = "hex"
	Socket  Head = "socket"
	Special Head = "special"
)

// A Pattern is how the fasteners of a set lie; "" where not stated.
type Pattern string

// The patterns.
const (
	Circle    Pattern = "circle"
	Rectangle Pattern = "rectangle"
	Row       Pattern = "row"
)

// A Duty is what a fastener does; "" where not stated.
type Duty string

// The duties.
const (
	Clamp      Duty = "clamp"
	BearingNut Duty = "bearing-nut"
	Ring       Duty = "ring"
	Plug       Duty = "plug"
	Gasket     Duty = "gasket"
	ToYield    Duty = "to-yield"
)

var duties = []Duty{Clamp, BearingNut, Ring, Plug, Gasket, ToYield}

// A Limit is a named limit. It holds one band for all variants, or one a
// variant, or a table; a variant without any has none, which a block that uses
// it there is told.
type Limit struct {
	ID        string
	All       *LimitBand
	ByVariant map[string]*LimitBand
	Table     *Table
	State     *State        // in which a turning torque holds; nil where not stated
	Holds     *LashPlace    // where limits of backlash hold; nil where not stated
	Bad       diag.Reported // something of it could not be read: rules pass over it
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

// A Pack is a shim pack.
type Pack struct {
	ID       string
	Name     string
	Sits     string   // "behind the gear race"
	Between  []string // the two faces it lies between, the upper one first; nil where not stated
	Reading  string   // what is read to set it: "lash"
	MoreShim Effect   // what more of it does to the reading; "" where not stated
	Theory   bool     // the rate is computed from the gears
	Rate     *big.Rat // how far the reading moves for each unit of shim, above zero; nil where not stated
	Moves    Member   // which gear of the pair more shim moves; "" where not stated
	Gears    string   // id of the pair; "" where not stated
	SafeSide Amount
	Only     []string
	At       source.Place
	Node     *syntax.Node
}

// An Amount says on which side of its aim a pack is safe: with more shim or
// with less; "" where not stated.
type Amount string

// The amounts.
const (
	More Amount = "more"
	Less Amount = "less"
)

// An Effect is what a thicker pack does to the reading.
type Effect string

// The effects.
const (
	Opens  Effect = "opens"
	Closes Effect = "closes"
	Raises Effect = "raises"
	Lowers Effect = "lowers"
)

// Sign returns 1 where more shim makes the reading more, −1 where it makes it
// less, and 0 where nothing is stated.
func (e Effect) Sign() int {
	switch e {
	case Opens, Raises:
		return 1
	case Closes, Lowers:
		return -1
	}
	return 0
}

// A Member is one gear of a pair.
type Member string

// The members of a pair.
const (
	PinionGear Member = "pinion"
	LargeGear  Member = "gear"
)

// Other returns the gear that a member runs with.
func (m Member) Other() Member {
	if m == PinionGear {
		return LargeGear
	}
	return PinionGear
}

// A Pair is a pair of gears that run together.
type Pair struct {
	ID             string
	Name           string
	Teeth          [2]int // of pinion and gear; 0 where not stated
	Module         *quantity.Value
	DiametralPitch *big.Rat // teeth to an inch of pitch diameter
	PressureAngle  *quantity.Value
	Spiral         *quantity.Value // nil for straight teeth
	ShaftAngle     *quantity.Value
	PinionRadius   *quantity.Value // pitch radii
	GearRadius     *quantity.Value
	DriveSide      string            // which side of the gear's teeth drives: convex, concave, or words; "" where not stated
	Contact        map[Side]*Contact // how a contact pattern is corrected; nil where not stated
	ContactBad     diag.Reported     // a contact pattern could not be read: rules pass over it
	At             source.Place
	Node           *syntax.Node
}

// A TestCap is the highest pressure, above that of the shop's air, to which the
// unit may be filled with air or another gas for a test.
type TestCap struct {
	Gas    quantity.Value
	Source string
	At     source.Place
}

// RightAngle says whether the shafts are stated to stand at 90°.
func (p *Pair) RightAngle() bool {
	return p.ShaftAngle != nil && p.ShaftAngle.Value.Cmp(big.NewRat(90, 1)) == 0 && p.ShaftAngle.Unit.Symbol == "°"
}

// A Dependency says whose change makes the measurement of a limit void.
type Dependency struct {
	Limit string
	On    []string // ids of parts, packs, fasteners and limits
	At    source.Place
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

// Part returns the part of that id, or nil.
func (u *Unit) Part(id string) *Part { return find(u.Parts, id, (*Part).id) }

// Fastener returns the fastener of that id, or nil.
func (u *Unit) Fastener(id string) *Fastener { return find(u.Fasteners, id, (*Fastener).id) }

// Limit returns the limit of that id, or nil.
func (u *Unit) Limit(id string) *Limit { return find(u.Limits, id, (*Limit).id) }

// Variant returns the variant of that id, or nil.
func (u *Unit) Variant(id string) *Variant { return find(u.Variants, id, (*Variant).id) }

// Pack returns the shim pack of that id, or nil.
func (u *Unit) Pack(id string) *Pack { return find(u.Packs, id, (*Pack).id) }

// Pair returns the pair of gears of that id, or nil. "" is the only pair of a
// unit that has one.
func (u *Unit) Pair(id string) *Pair {
	if id == "" && len(u.Gears) == 1 {
		return u.Gears[0]
	}
	return find(u.Gears, id, (*Pair).id)
}

// PartIDs returns the ids of the parts in the order of the file; FastenerIDs and
// the others do the same for theirs.
func (u *Unit) PartIDs() []string     { return ids(u.Parts, (*Part).id) }
func (u *Unit) FastenerIDs() []string { return ids(u.Fasteners, (*Fastener).id) }
func (u *Unit) LimitIDs() []string    { return ids(u.Limits, (*Limit).id) }
func (u *Unit) VariantIDs() []string  { return ids(u.Variants, (*Variant).id) }
func (u *Unit) PackIDs() []string     { return ids(u.Packs, (*Pack).id) }
func (u *Unit) PairIDs() []string     { return ids(u.Gears, (*Pair).id) }

func (p *Part) id() string     { return p.ID }
func (f *Fastener) id() string { return f.ID }
func (l *Limit) id() string    { return l.ID }
func (v *Variant) id() string  { return v.ID }
func (p *Pack) id() string     { return p.ID }
func (g *Pair) id() string     { return g.ID }

func find[T any](things []*T, id string, of func(*T) string) *T {
	for _, t := range things {
		if of(t) == id {
			return t
		}
	}
	return nil
}

func ids[T any](things []*T, of func(*T) string) []string {
	out := make([]string, len(things))
	for i, t := range things {
		out[i] = of(t)
	}
	return out
}
