// Package unit holds the facts of the unit being overhauled: its variants,
// parts, fasteners, shim packs, limits and jobs. It reads them from unit.yaml,
// or from the unit: mapping of a procedure without one.
package unit

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// A Unit is a drive, hub or pump that procedures are written for.
type Unit struct {
	ID        string
	Title     string
	Note      string // a line printed on every face, such as that the unit is invented
	Variants  []*Variant
	Parts     []*Part
	Fasteners []*Fastener
	Packs     []*Pack
	Gears     []*Pair
	Limits    []*Limit
	TestCap   *TestCap // nil if not stated
	DependsOn []*Dependency
	Jobs      []*Job
	File      *source.File
	Root      *syntax.Node
}

// A Variant is one build of a unit.
type Variant struct {
	ID      string
	Serials string // range of serial numbers: "1 to 3999"
	Title   string
	At      source.Place

	serialsAt source.Place
}

// A Part is a part or a set of identical parts.
type Part struct {
	ID          string
	Name        string
	Number      string
	Count       int  // 1 if not stated
	Renew       bool // always replaced by a new one
	MatchedWith string
	Mass        *quantity.Value
	Tray        string
	Kind        PartKind
	Material    Material
	MaxHeat     *quantity.Value // maximum temperature; nil if not stated
	HeatSource  string          // the source of MaxHeat
	HeatBecause string          // why it may exceed the usual maximum
	Only        []string
	At          source.Place
	Node        *syntax.Node
}

// A PartKind is the kind of a part that is fitted in a special way; "" for
// other parts.
type PartKind string

const (
	Bearing PartKind = "bearing" // a rolling bearing, or its cone with the rollers
	Race    PartKind = "race"    // of a tapered bearing: it has a thick edge and a thin one
	Seal    PartKind = "seal"    // a lip seal, whose lip faces one way
)

// Rolling reports whether the part is a rolling bearing or a ring of one.
func (p *Part) Rolling() bool { return p.Kind == Bearing || p.Kind == Race }

// A Material holds the properties of a part's material that its fit is
// computed from; nil if not stated.
type Material struct {
	Expansion *quantity.Value
	Modulus   *quantity.Value // of elasticity
	Poisson   *big.Rat
	Source    string
}

// A Hand is the hand of a thread.
type Hand string

// A right-hand thread is tightened clockwise as seen from its head or nut.
const (
	RightHand Hand = "right"
	LeftHand  Hand = "left"
)

// A Fastener is a fastener or a set of identical fasteners.
type Fastener struct {
	ID              string
	Name            string // derived from the id if not stated: "Pinion nut"
	Thread          string // as printed: "M24×1.5"
	Class           string // property class: "8.8"
	Count           int
	Hand            Hand
	SeenFrom        string
	AcrossFlats     *quantity.Value // for a socket screw, that of its key
	Drive           Head
	Pattern         Pattern
	Duty            Duty
	NutFactor       *big.Rat
	NutFactorSource string
	Only            []string
	At              source.Place
	Node            *syntax.Node
}

// A Head is the shape that a fastener is turned by; "" if not stated.
type Head string

// A special head is in no table of sizes.
const (
	Hex     Head = "hex"
	Socket  Head = "socket"
	Special Head = "special"
)

// A Pattern is the layout of the fasteners of a set; "" if not stated.
type Pattern string

const (
	Circle    Pattern = "circle"
	Rectangle Pattern = "rectangle"
	Row       Pattern = "row"
)

// A Duty is the function of a fastener; "" if not stated.
type Duty string

const (
	Clamp      Duty = "clamp"
	BearingNut Duty = "bearing-nut"
	Ring       Duty = "ring"
	Plug       Duty = "plug"
	Gasket     Duty = "gasket"
	ToYield    Duty = "to-yield"
)

var duties = []Duty{Clamp, BearingNut, Ring, Plug, Gasket, ToYield}

// A Limit is a named limit. It has one band for all variants, or one for each,
// or a table. A variant without any has no limit; a block that uses it there
// is reported.
type Limit struct {
	ID        string
	All       *LimitBand
	ByVariant map[string]*LimitBand
	Table     *Table
	State     *State        // in which a rotating torque holds; nil if not stated
	LashPlace *LashPlace    // at which a backlash holds; nil if not stated
	Bad       diag.Reported // part of it was unreadable: rules skip it
	At        source.Place
	Node      *syntax.Node
}

// A LimitBand is a band and its source.
type LimitBand struct {
	Band   quantity.Band
	Also   *quantity.Band
	Source string
	At     source.Place // place of the band
}

// ForVariant returns the band for a variant, nil without one. The variant is
// "" if the unit has none.
func (l *Limit) ForVariant(variant string) *LimitBand {
	if b := l.ByVariant[variant]; b != nil {
		return b
	}
	return l.All
}

// A Pack is a shim pack.
type Pack struct {
	ID            string
	Name          string
	Location      string   // "behind the gear race"
	Between       []string // the two faces that it separates, the upper one first; nil if not stated
	Reading       string   // the reading that it adjusts: "lash"
	MoreShim      Effect   // effect of more shim on the reading; "" if not stated
	RateFromGears bool     // Rate is to be computed from the gears
	Rate          *big.Rat // change of the reading per unit of shim, positive; nil if not stated
	MovesGear     Member   // the gear that more shim moves; "" if not stated
	Gears         string   // id of the gear pair; "" if not stated
	SafeSide      Amount
	Only          []string
	At            source.Place
	Node          *syntax.Node
}

// An Amount tells on which side of the target a pack errs safely: with more
// shim or with less; "" if not stated.
type Amount string

const (
	More Amount = "more"
	Less Amount = "less"
)

// An Effect is the effect of a thicker pack on the reading.
type Effect string

const (
	Opens  Effect = "opens"
	Closes Effect = "closes"
	Raises Effect = "raises"
	Lowers Effect = "lowers"
)

// Sign returns 1 if more shim increases the reading, −1 if it decreases it, 0
// if not stated.
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

const (
	PinionGear Member = "pinion"
	LargeGear  Member = "gear"
)

// Other returns the mating gear.
func (m Member) Other() Member {
	if m == PinionGear {
		return LargeGear
	}
	return PinionGear
}

// A Pair is a pair of meshing gears.
type Pair struct {
	ID             string
	Name           string
	Teeth          [2]int // of pinion and gear; 0 if not stated
	Module         *quantity.Value
	DiametralPitch *big.Rat // teeth per inch of pitch diameter
	PressureAngle  *quantity.Value
	Spiral         *quantity.Value // spiral angle; nil for straight teeth
	ShaftAngle     *quantity.Value
	PinionRadius   *quantity.Value // pitch radius; GearRadius likewise
	GearRadius     *quantity.Value
	DriveSide      string            // which flank of the gear drives: convex, concave, or free words; "" if not stated
	Contact        map[Side]*Contact // how contact patterns are corrected; nil if not stated
	ContactBad     diag.Reported     // a contact pattern was unreadable: rules skip it
	At             source.Place
	Node           *syntax.Node
}

// A TestCap is the highest gauge pressure to which the unit may be filled with
// air or another gas for a test.
type TestCap struct {
	Gas    quantity.Value
	Source string
	At     source.Place
}

// RightAngle reports whether the shafts are stated to be at 90°.
func (p *Pair) RightAngle() bool {
	return p.ShaftAngle != nil && p.ShaftAngle.Value.Cmp(big.NewRat(90, 1)) == 0 && p.ShaftAngle.Unit.Symbol == "°"
}

// A Dependency lists what voids the measurement of a limit when it is changed.
type Dependency struct {
	Limit    string
	VoidedBy []string // ids of parts, packs, fasteners and limits
	At       source.Place
}

// A Job is an ordered set of cards for work on one unit.
type Job struct {
	ID    string
	Title string
	Cards []CardRef
	At    source.Place
}

// A CardRef is a reference to a card.
type CardRef struct {
	Number string
	At     source.Place
}

// Part returns the part with an id, or nil.
func (u *Unit) Part(id string) *Part { return find(u.Parts, id, (*Part).id) }

func (u *Unit) Fastener(id string) *Fastener { return find(u.Fasteners, id, (*Fastener).id) }

func (u *Unit) Limit(id string) *Limit { return find(u.Limits, id, (*Limit).id) }

func (u *Unit) Variant(id string) *Variant { return find(u.Variants, id, (*Variant).id) }

func (u *Unit) Pack(id string) *Pack { return find(u.Packs, id, (*Pack).id) }

// Pair returns the gear pair with an id, or nil. The id "" gives the only pair
// of a unit that has one.
func (u *Unit) Pair(id string) *Pair {
	if id == "" && len(u.Gears) == 1 {
		return u.Gears[0]
	}
	return find(u.Gears, id, (*Pair).id)
}

// PartIDs and the methods below return the ids of one kind of thing, in the
// order of the file.
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
