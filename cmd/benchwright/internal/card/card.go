// Package card resolves procedures to cards: for one variant of the unit,
// names are looked up and values computed. A card holds everything that is
// printed, but not yet its wording.
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

// A Card is a procedure for one variant, resolved and computed.
type Card struct {
	Procedure *procedure.Procedure
	Unit      *unit.Unit    // nil if not found, which is reported
	Shop      *shop.Shop    // nil for a procedure without a shop
	Variant   *unit.Variant // nil if the unit has none
	Parts     []*unit.Part  // to have ready; parts that are always replaced come first
	After     []*procedure.Procedure
	Lead      []Item
	Stages    []*Stage
	Kit       []*Kit      // every tool, wrench and gauge, in the order of first use
	Flats     []Flats     // sizes of hand tools
	Hazards   []HazardUse // of the whole card, most severe first
	Stops     []Stop
	// Assemblies maps the name of each assembly that a tool block of the
	// procedure makes, in any variant, to its tools in this variant.
	Assemblies map[string][]*shop.Item
}

// A Job is an ordered set of cards for work on one unit.
type Job struct {
	Unit    *unit.Unit
	Job     *unit.Job
	Variant *unit.Variant
	Cards   []*Card
}

// VariantID returns the id of the card's variant, "" without one.
func (c *Card) VariantID() string {
	if c.Variant == nil {
		return ""
	}
	return c.Variant.ID
}

// Steps returns the steps of all stages, in order.
func (c *Card) Steps() []*Step {
	var out []*Step
	for _, st := range c.Stages {
		out = append(out, st.Steps...)
	}
	return out
}

// A Stage is a stage for this variant. Stages without steps and items are left
// out.
type Stage struct {
	Source *procedure.Stage
	Title  []syntax.Run
	Items  []Item
	Steps  []*Step
}

// A Step is a step, numbered through the card.
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

// Prose is text with its links resolved: a link to a step gives its number.
type Prose struct {
	Source  *procedure.Prose
	Content syntax.Content // a copy if links were resolved
}

func (p *Prose) Place() source.Place { return p.Source.At }

// A Picture is an image file of the workspace.
type Picture struct {
	Source *procedure.Prose
	Name   string // path below the workspace
	Data   []byte // nil if unreadable, which is reported
	Alt    string
	Title  string
}

// Place returns the place of the picture's path.
func (p *Picture) Place() source.Place {
	at := p.Source.At
	if c, ok := p.Source.Content.(*syntax.Picture); ok {
		at.Span = c.PathSpan
	}
	return at
}

// Verb is what a tool line says to do with a tool.
type Verb uint8

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

// A ToolLine is one action with one or more tools.
type ToolLine struct {
	Verb  Verb
	Tools []*shop.Item // assemblies, and tools without a shop, have only a name
	As    string       // for Assemble, the assembly's name
	Held  string       // what is held still
	Names []procedure.Named
}

// A Measurement is a reading with its limits on the marks of the gauge.
type Measurement struct {
	*procedure.Measurement
	Limit      *unit.LimitBand // nil with "limits: none", or if missing, which a rule reports
	Shown      *quantity.Band  // the limits as the gauge shows them; nil if that is as written
	Guarded    *quantity.Band  // these limits, narrowed by the shop's guard band; nil without a guard band or uncertainty
	Gauge      *shop.Gauge     // nil without one
	Marks      *quantity.Marks // the limits on marks of the gauge; nil without limits, gauge, or a mark inside
	Expect     *quantity.Marks // the plausible range, on marks of the gauge
	Table      *unit.Table     // limits that depend on an etched mark, instead of Limit; else nil
	Rows       []MarkRow       // of Table, from first to last mark
	Spread     *big.Rat        // on marks of the gauge; nil without one
	FromLowest bool            // the spread is read by a gauge that is zeroed at the lowest reading
	LowStep    *Step
	HighStep   *Step
	Mismatch   bool // limits and gauge do not match, or the limits are unknown, which is reported

	// GuardLeftNoMark is set if a mark is inside the limits but none inside
	// the limits narrowed by the guard band.
	GuardLeftNoMark bool
	Answered        bool // the card itself says what to do outside the limits
}

// Span returns the range of readings to prepare for: the limits, from zero if
// they have no low side, or without limits the expected range. It is nil
// without an upper bound or a gauge.
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

// A MarkRow is the limits for one etched mark.
type MarkRow struct {
	Mark            int
	Band            quantity.Band   // as the gauge shows them, exactly
	Guarded         *quantity.Band  // like the fields of Measurement, as is GuardLeftNoMark
	Marks           *quantity.Marks // without a gauge, rounded to the digits typed
	GuardLeftNoMark bool
}

// LimitRows returns all limits of the reading: those of each mark of its
// table, or the single band; none without limits.
func (m *Measurement) LimitRows() []MarkRow {
	if b := m.OnGauge(); b != nil {
		return []MarkRow{{0, *b, m.Guarded, m.Marks, m.GuardLeftNoMark}}
	}
	return m.Rows
}

// Written returns the limits of a row as messages name them.
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

// A HoldPoint stops the work until somebody has inspected and signed.
type HoldPoint struct{ *procedure.HoldPoint }

func (h *HoldPoint) Readings() []*Measurement { return nil }
func (h *HoldPoint) causes() []Cause          { return nil }
func (h *HoldPoint) complete(*Card) bool      { return true }

// A Callout is a hazard in a step.
type Callout struct {
	Signal  hazard.Signal
	Symbols []string
	Hazard  string
	Result  string
	Avoid   string
	IDs     []string           // its hazards; nil for a callout of the writer
	Written *procedure.Caution // nil for a callout added by the program
	Short   bool               // already printed in full in this stage
	At      source.Place       // what caused it
}

// A HazardUse is a hazard and the numbers of its steps.
type HazardUse struct {
	Signal  hazard.Signal
	Symbols []string
	Text    string
	Rule    string // the shop's rule for it, or ""
	Steps   []int
}

// A Kit is a tool, wrench, gauge or shim stock, and the steps that use it.
type Kit struct {
	Item  *shop.Item
	Thing any // *shop.Tool, *shop.Wrench, *shop.Gauge or *shop.Stock; nil without a shop
	Steps []int
}

// Flats is a size across flats that needs a hand tool.
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

// Library is what a card can refer to outside its own file.
type Library struct {
	Procedures []*procedure.Procedure
	Picture    func(from *source.File, path string) (name string, data []byte, err error)
	stacks     sync.Map // possible stacks of each stock, by stackKey
}

// ByNumber returns the procedure with a card number, or nil.
func (l *Library) ByNumber(number string) *procedure.Procedure {
	for _, p := range l.Procedures {
		if p.Number.Name == number {
			return p
		}
	}
	return nil
}

// ByFile returns the procedure in the file with a name, or nil.
func (l *Library) ByFile(name string) *procedure.Procedure {
	for _, p := range l.Procedures {
		if p.File.Name == name {
			return p
		}
	}
	return nil
}

// numbers returns all card numbers.
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

// GaugePlace returns the place of the gauge's name, or of the block without
// one.
func (m *Measurement) GaugePlace() source.Place {
	if m.Measurement.Gauge.Name == "" {
		return m.At
	}
	return m.Measurement.Gauge.At
}

// GaugeKey returns the key of the block that names the gauge.
func (m *Measurement) GaugeKey() string {
	for _, f := range m.Node.Fields {
		if f.Value.Place() == m.Measurement.Gauge.At {
			return f.Key
		}
	}
	return "gauge"
}
