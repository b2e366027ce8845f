// Package shop holds a shop's own facts: units and paper, wrenches, gauges,
// tools and where they hang. It reads them from shop.yaml, or from the shop:
// mapping of a file that stands alone.
package shop

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// A Shop is one shop.
type Shop struct {
	Name            string
	Decimal         quantity.Mark
	Language        string   // "en"; rules about words hold for it alone
	Paper           string   // "A4"
	Distance        int      // from the reader's eye to a card, in micrometres; 0 is the usual one of its paper
	TorqueTolerance *big.Rat // for a bare torque value, 1/20 for 5 %; nil where the shop states none
	AvoidFirst      bool     // callouts print the command before the hazard
	MarksWarn       *big.Rat // gauge rule: warn under so many marks of the limits' width
	MarksError      *big.Rat // and refuse under so many
	UncertaintyTo   *big.Rat // refuse a gauge whose uncertainty goes fewer times than this into the limits
	GuardBand       *big.Rat // narrow the limits by this share of the uncertainty; nil leaves them
	LiftLimit       *quantity.Value
	Atmosphere      *quantity.Value   // usual air pressure, absolute
	HazardRules     map[string]string // hazard id → the local rule that replaces ours
	Tools           []*Tool           // in the file's order, wrenches and gauges apart
	Wrenches        []*Wrench
	Gauges          []*Gauge
	Stock           []*Stock
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
	Bad      diag.Reported // its scale could not be read: rules pass over it
	At       source.Place  // its key
	Node     *syntax.Node
}

// A Tool is a tool that is neither set nor read.
type Tool struct {
	Item
	AcrossFlats *quantity.Value // of a spanner or socket; nil for others
	Ram         *quantity.Value // diameter of a press's ram; nil for others
}

// A Wrench is a torque wrench.
type Wrench struct {
	Item
	Scale    quantity.Scale  // its marks, lowest and highest
	Marked   string          // the unit as engraved on it; "" is our spelling
	Accuracy *big.Rat        // of the reading, 1/25 for ±4 %
	Length   *quantity.Value // drive centre to grip centre; nil where not stated
	Due      string          // date of its next calibration, "" without one
}

// A Gauge is anything that is read: indicator, micrometer, spring scale.
type Gauge struct {
	Item
	Scale        quantity.Scale // Step is its resolution
	Marked       string
	Infrared     bool            // a thermometer that reads bare metal too low
	ZeroAnywhere bool            // it can be set to zero wherever it stands
	Uncertainty  *quantity.Value // expanded, as the gauge's record states it; nil where it does not
	Due          string          // date of its next calibration, "" without one
}

// A Stock is one kind of shim.
type Stock struct {
	ID    string
	Name  string
	Place string
	Shims []Shim        // as written, thin to thick
	Bad   diag.Reported // one of them could not be read
	At    source.Place
}

// A Shim is one thickness of a Stock.
type Shim struct {
	Thickness quantity.Value
	AtMost    int // in one pack; 0 is any number
}

// Mark returns the decimal mark that holds, the point where no shop states one.
func (s *Shop) Mark() quantity.Mark {
	if s == nil || s.Decimal == 0 {
		return quantity.Point
	}
	return s.Decimal
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

// Step returns what one step of the last digit is worth of the shim that is
// written with the most digits, in the unit of the first shim: 0.01 of 0.5 and
// 0.12; nil where one is written without digits or in another unit.
func (s *Stock) Step() *big.Rat {
	var step *big.Rat
	for _, shim := range s.Shims {
		p := shim.Thickness.Place()
		if p == nil || shim.Thickness.Unit.Symbol != s.Shims[0].Thickness.Unit.Symbol {
			return nil
		}
		if step == nil || p.Cmp(step) < 0 {
			step = p
		}
	}
	return step
}

// StockOf returns the stock of that id, or nil.
func (s *Shop) StockOf(id string) *Stock {
	if s == nil {
		return nil
	}
	for _, k := range s.Stock {
		if k.ID == id {
			return k
		}
	}
	return nil
}

// StockIDs returns the ids of the stock in the file's order.
func (s *Shop) StockIDs() []string {
	var out []string
	for _, k := range s.Stock {
		out = append(out, k.ID)
	}
	return out
}

// IDs returns the ids of all tools, wrenches and gauges, in that order.
func (s *Shop) IDs() []string {
	if s == nil {
		return nil
	}
	var out []string
	for _, t := range s.Tools {
		out = append(out, t.ID)
	}
	for _, w := range s.Wrenches {
		out = append(out, w.ID)
	}
	for _, g := range s.Gauges {
		out = append(out, g.ID)
	}
	return out
}
