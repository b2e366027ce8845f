// Package shop holds a shop's own facts: units and paper, wrenches, gauges,
// tools and where they hang. It reads them from shop.yaml, or from the shop:
// mapping of a file that stands alone.
package shop

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// A Shop is one shop.
type Shop struct {
	Name            string
	Decimal         quantity.Mark
	Language        string   // "en"; rules about words hold for it alone
	Paper           string   // "A5"
	TorqueTolerance *big.Rat // for a bare torque value, 1/20 for 5 %; nil where the shop states none
	AvoidFirst      bool     // callouts print the command before the hazard
	MarksWarn       *big.Rat // gauge rule: warn under so many marks of the limits' width
	MarksError      *big.Rat // and refuse under so many
	LiftLimit       *quantity.Value
	HazardRules     map[string]string // hazard id → the local rule that replaces ours
	Tools           []*Tool           // in the file's order, wrenches and gauges apart
	Wrenches        []*Wrench
	Gauges          []*Gauge
	File            *source.File
	Root            *syntax.Node
}

// An Item is what every tool, wrench and gauge has.
type Item struct {
	ID       string
	Name     string
	Number   string // "" without one
	Place    string // where it hangs
	Old      string // the number it had before, still engraved on some
	Replaced string // id of the tool that takes its place; "" while it is current
	Hazards  []string
	At       source.Place // its key
	Node     *syntax.Node
}

// A Tool is a tool that is neither set nor read.
type Tool struct {
	Item
	AcrossFlats *quantity.Value // of a spanner or socket; nil for others
}

// A Wrench is a torque wrench.
type Wrench struct {
	Item
	Scale    quantity.Scale  // its marks, lowest and highest
	Marked   string          // the unit as engraved on it; "" is our spelling
	Accuracy *big.Rat        // of the reading, 1/25 for ±4 %
	Length   *quantity.Value // drive centre to grip centre; nil where not stated
}

// A Gauge is anything that is read: indicator, micrometer, spring scale.
type Gauge struct {
	Item
	Scale       quantity.Scale // Step is its resolution
	Marked      string
	Uncertainty *quantity.Value // expanded, as the gauge's record states it; nil where it does not
	Due         string          // date of its next calibration, "" without one
}

// Find returns the tool, wrench or gauge of that id as what it is, or nil.
func (s *Shop) Find(id string) any {
	if s == nil {
		return nil
	}
	for _, t := range s.Tools {
		if t.ID == id {
			return t
		}
	}
	for _, w := range s.Wrenches {
		if w.ID == id {
			return w
		}
	}
	for _, g := range s.Gauges {
		if g.ID == id {
			return g
		}
	}
	return nil
}
