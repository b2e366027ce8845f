// Package card turns a procedure into cards: names become things, for one
// variant of the unit, and what needs computing is computed. A card says all
// that the apprentice will read, and does not yet say in which words.
package card

import (
	"fmt"
	"math/big"
	"sync"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/hazard"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
)

// A Card is one procedure for one variant, resolved and computed.
type Card struct {
	Procedure *procedure.Procedure
	Unit      *unit.Unit    // nil when it could not be found, which is reported
	Shop      *shop.Shop    // nil for a file alone that brings none
	Variant   *unit.Variant // nil where the unit has none
	Parts     []*unit.Part  // to have ready, renew-always first
	After     []*procedure.Procedure
	Lead      []Item
	Stages    []*Stage
	Kit       []*Kit      // every tool, wrench and gauge, in the order of first use
	Flats     []Flats     // sizes of hand tools
	Hazards   []HazardUse // of the whole card, the gravest first
	Stops     []Stop
	// Assemblies are the names that tool blocks of the procedure give with as:,
	// in any variant, and the tools that each is put together from in this one.
	Assemblies map[string][]*shop.Item
}

// A Job is an ordered set of cards done on one unit.
type Job struct {
	Unit    *unit.Unit
	Job     *unit.Job
	Variant *unit.Variant
	Cards   []*Card
}

// VariantID returns the id of the card's variant, "" where there is none.
func (c *Card) VariantID() string {
	if c.Variant == nil {
		return ""
	}
	return c.Variant.ID
}

// Steps returns the card's steps in order, through all stages.
func (c *Card) Steps() []*Step {
	var out []*Step
	for _, st := range c.Stages {
		out = append(out, st.Steps...)
	}
	return out
}

// A Stage is a stage as this variant has it; one without steps and items is
// left out.
type Stage struct {
	Source *procedure.Stage
	Title  []syntax.Run
	Items  []Item
	Steps  []*Step
}

// A Step is one step, numbered through the deck.
type Step struct {
	Number   int
	Source   *procedure.Step
	Title    []syntax.Run
	Callouts []*Callout
	Items    []Item
	Why      *Prose
}

// Place returns the place of the step's heading.
func (s *Step) Place(c *Card) source.Place {
	return c.Procedure.File.At(s.Source.Span.Start, s.Source.Span.End)
}

// Prose is text with its links resolved: a link to a step names the step.
type Prose struct {
	Source  *procedure.Prose
	Content syntax.Content // a copy where links were resolved
}

// Place returns where the prose stands.
func (p *Prose) Place() source.Place { return p.Source.At }

// A Picture is an image, read from the workspace.
type Picture struct {
	Source *procedure.Prose
	Name   string // path below the workspace
	Data   []byte // nil where it could not be read, which is reported
	Alt    string
	Title  string
}

// Place returns where the picture's path stands: it is the file that can be
// wrong.
func (p *Picture) Place() source.Place {
	at := p.Source.At
	if c, ok := p.Source.Content.(*syntax.Picture); ok {
		at.Span = c.PathSpan
	}
	return at
}

// Verb is what a tool line says to do with a tool.
type Verb uint8

// The verbs of tool lines.
const (
	Take Verb = iota
	Assemble
	TakeApart
	HoldStill
)

// A Tool is a tool block.
type Tool struct {
	*procedure.Tool
	Lines []ToolLine
}

// A ToolLine is one thing to do with one or more tools.
type ToolLine struct {
	Verb  Verb
	Tools []*shop.Item // in a shop, the tools; one that is an assembly has only a name
	As    string       // the assembly's name for Assemble
	Held  string       // what is held still
	Names []procedure.Named
}

// A Measurement is a reading with its limits on the gauge's marks.
type Measurement struct {
	*procedure.Measurement
	Limit      *unit.LimitBand // nil with "limits: none", or when missing, which a rule reports
	Shown      *quantity.Band  // the limits as the gauge shows them, where that is not as they are written; nil otherwise
	Guarded    *quantity.Band  // these narrowed by the shop's guard band; nil where it has none, or the gauge states no uncertainty
	Gauge      *shop.Gauge     // nil without one
	Marks      *quantity.Marks // the limits on the gauge's marks; nil without limits, gauge, or a mark between
	Expect     *quantity.Marks // the plausible span on the gauge's marks
	Table      *unit.Table     // limits that follow a mark, in place of Limit; nil otherwise
	Rows       []MarkRow       // of Table, from its first mark to its last
	Spread     *big.Rat        // on the gauge's marks; nil without one
	FromLowest bool            // the spread is read by a gauge that is zeroed at the lowest reading
	LowGo      *Step
	HighGo     *Step
	Mismatch   bool // limits and gauge do not go together, or limits cannot be told, which is reported

	// GuardTook says that a mark lies inside the limits, and none inside what the
	// guard band leaves of them.
	GuardTook bool
	Answered  bool // the card itself says what to do outside the limits
}

// Span returns the marks between which a reading may stand: the limits, of
// which those without a low side count from zero; without limits what is
// expected. It is nil where nothing bounds the readings above, or no gauge
// reads them.
func (m *Measurement) Span() *quantity.Marks {
	span := m.Marks
	if m.Limits.None {
		span = m.Expect
	}
	if span == nil || span.High == nil {
		return nil
	}
	out := *span
	if out.Low == nil {
		out.Low = new(big.Rat)
	}
	return &out
}

// A MarkRow is the limits of a part with one mark.
type MarkRow struct {
	Mark      int
	Band      quantity.Band   // as the gauge shows them, exactly
	Guarded   *quantity.Band  // as Measurement has it, as do the others
	Marks     *quantity.Marks // without a gauge, on the digits typed
	GuardTook bool
}

// Judged returns all limits of the reading as the gauge shows them, with their
// marks: those of each mark of its table, or the one band; none without limits.
func (m *Measurement) Judged() []MarkRow {
	if b := m.OnGauge(); b != nil {
		return []MarkRow{{0, *b, m.Guarded, m.Marks, m.GuardTook}}
	}
	return m.Rows
}

// Written returns the limits of a row as a message names them.
func (m *Measurement) Written(row MarkRow) string {
	switch {
	case m.Table != nil:
		return fmt.Sprintf("the limits of mark %+d", row.Mark)
	case m.Shown != nil:
		return m.Limit.Band.Written + " as the gauge shows it"
	}
	return m.Limit.Band.Written
}

// OnGauge returns the limits as the gauge shows them, nil without limits.
func (m *Measurement) OnGauge() *quantity.Band {
	switch {
	case m.Shown != nil:
		return m.Shown
	case m.Limit != nil:
		return &m.Limit.Band
	}
	return nil
}

// A HoldPoint stops the work until somebody has seen and signed.
type HoldPoint struct{ *procedure.HoldPoint }

// Readings returns none.
func (h *HoldPoint) Readings() []*Measurement { return nil }
func (h *HoldPoint) causes() []Cause          { return nil }
func (h *HoldPoint) whole(*Card) bool         { return true }

// A Callout is a hazard as a step shows it.
type Callout struct {
	Signal  hazard.Signal
	Symbols []string
	Hazard  string
	Result  string
	Avoid   string
	IDs     []string           // the hazards it speaks of; nil for a writer's own
	Written *procedure.Caution // nil for one that the compiler added
	Short   bool               // the hazard was printed in full before in this stage
	At      source.Place       // what caused it
}

// A HazardUse is a hazard and the steps in which it waits.
type HazardUse struct {
	Signal  hazard.Signal
	Symbols []string
	Text    string
	Rule    string // the shop's own rule for it; "" where it has none
	Steps   []int
}

// A Kit is one tool, wrench, gauge or stock of shims and the steps that use it.
type Kit struct {
	Item  *shop.Item
	Thing any // *shop.Tool, *shop.Wrench, *shop.Gauge or *shop.Stock; nil for a name without a shop
	Steps []int
}

// Flats is a size across flats that a hand tool must have.
type Flats struct {
	Size  quantity.Value
	Key   bool     // a hexagon key, for a socket screw
	What  []string // names of fasteners
	Steps []int
}

// A Stop is a step after which it is safe to stop.
type Stop struct {
	Step int
	Say  string
}

// Library is what a card may refer to beyond its own file.
type Library struct {
	Procedures []*procedure.Procedure
	Picture    func(from *source.File, path string) (name string, data []byte, err error)
	stacks     sync.Map // what each stock can make, by stackKey
}

// ByNumber returns the procedure with that card number, nil when there is none.
func (l *Library) ByNumber(number string) *procedure.Procedure {
	for _, p := range l.Procedures {
		if p.Number.Name == number {
			return p
		}
	}
	return nil
}

// ByFile returns the procedure in the file of that name.
func (l *Library) ByFile(name string) *procedure.Procedure {
	for _, p := range l.Procedures {
		if p.File.Name == name {
			return p
		}
	}
	return nil
}

// numbers lists the card numbers, for naming the nearest.
func (l *Library) numbers() []string {
	var out []string
	for _, p := range l.Procedures {
		out = append(out, p.Number.Name)
	}
	return out
}

// Make resolves a procedure for one variant.
func Make(p *procedure.Procedure, u *unit.Unit, s *shop.Shop, v *unit.Variant, lib *Library, msgs *diag.List) *Card {
	r := &resolver{card: &Card{Procedure: p, Unit: u, Shop: s, Variant: v}, lib: lib, msgs: msgs}
	r.run()
	return r.card
}

// GaugePlace returns where the block names its gauge, the block's place where it
// names none.
func (m *Measurement) GaugePlace() source.Place {
	if m.Measurement.Gauge.Name == "" {
		return m.At
	}
	return m.Measurement.Gauge.At
}

// GaugeKey returns the key under which the block names its gauge.
func (m *Measurement) GaugeKey() string {
	for _, f := range m.Node.Fields {
		if f.Value.Place() == m.Measurement.Gauge.At {
			return f.Key
		}
	}
	return "gauge"
}
