// Package shop holds the facts of a shop: units and paper, wrenches, gauges,
// tools and where they hang. It reads them from shop.yaml, or from the shop:
// mapping of a procedure without one.
package shop

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

type Shop struct {
	Name             string
	Decimal          quantity.DecimalMark
	Language         string   // "en"; the rules about words apply only to it
	Paper            string   // "A4"
	Distance         int      // reading distance in micrometers; 0 is the usual one for the paper
	TorqueTolerance  *big.Rat // for a bare torque value, 1/20 for 5 %; nil if not stated
	AvoidFirst       bool     // callouts print the command before the hazard
	MarksWarn        *big.Rat // warn of a gauge with fewer marks within the limits
	MarksError       *big.Rat // refuse a gauge with fewer marks within the limits
	UncertaintyRatio *big.Rat // refuse a gauge if limits ÷ uncertainty is less
	GuardBand        *big.Rat // narrow the limits by this fraction of the uncertainty; nil for no narrowing
	LiftLimit        *quantity.Value
	Atmosphere       *quantity.Value   // usual air pressure, absolute
	HazardRules      map[string]string // hazard id → local rule that replaces the built-in one
	Tools            []*Tool           // in the order of the file, without wrenches and gauges
	Wrenches         []*Wrench
	Gauges           []*Gauge
	Stock            []*Stock
	File             *source.File
	Root             *syntax.Node
}

// An Item is what tools, wrenches and gauges have in common.
type Item struct {
	ID         string
	Name       string
	Number     string // "" without one
	Location   string // where it hangs
	OldNumber  string // former number, still engraved on some
	ReplacedBy string // id of its replacement; "" while in use
	Hazards    []string
	Bad        diag.Reported // its scale was unreadable: rules skip it
	At         source.Place  // its key
	Node       *syntax.Node
}

// A Tool is neither set nor read.
type Tool struct {
	Item
	AcrossFlats *quantity.Value // of a wrench or socket, else nil
	RamDiameter *quantity.Value // of a press, else nil
}

// A Wrench is a torque wrench.
type Wrench struct {
	Item
	Scale        quantity.Scale  // its marks, from lowest to highest
	EngravedUnit string          // as engraved; "" for the unit of Scale
	Accuracy     *big.Rat        // fraction of the reading: 1/25 for ±4 %
	Length       *quantity.Value // from drive center to grip center; nil if not stated
	Due          string          // date of the next calibration, or ""
}

// A Gauge is any instrument that is read: indicator, micrometer, spring scale.
type Gauge struct {
	Item
	Scale        quantity.Scale // Step is the resolution
	EngravedUnit string
	Infrared     bool            // a thermometer that reads low on bare metal
	ZeroAnywhere bool            // it can be set to zero at any position
	Uncertainty  *quantity.Value // expanded, from the gauge's record; nil if not stated
	Due          string          // date of the next calibration, or ""
}

// A Stock is a kind of shim and its thicknesses.
type Stock struct {
	ID       string
	Name     string
	Location string
	Shims    []Shim        // as typed, thin to thick
	Bad      diag.Reported // a shim was unreadable
	At       source.Place
}

// A Shim is one thickness of a Stock.
type Shim struct {
	Thickness quantity.Value
	MaxCount  int // in one pack; 0 for any number
}

// Mark returns the decimal mark of the shop, the point for a nil shop.
func (s *Shop) Mark() quantity.DecimalMark {
	if s == nil || s.Decimal == 0 {
		return quantity.Point
	}
	return s.Decimal
}

// Find returns the *Tool, *Wrench or *Gauge with an id, or nil.
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

// Step returns one step of the last digit of the shim with the most digits, in
// the unit of the first shim: 0.01 for 0.5 and 0.12. It is nil if a shim has
// no typed digits or another unit.
func (s *Stock) Step() *big.Rat {
	var step *big.Rat
	for _, shim := range s.Shims {
		p := shim.Thickness.DigitStep()
		if p == nil || shim.Thickness.Unit.Symbol != s.Shims[0].Thickness.Unit.Symbol {
			return nil
		}
		if step == nil || p.Cmp(step) < 0 {
			step = p
		}
	}
	return step
}

// StockOf returns the stock with an id, or nil.
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

// StockIDs returns the ids of the stock, in the order of the file.
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
