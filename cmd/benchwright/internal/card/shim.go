package card

import (
	"math/big"
	"slices"
	"sync"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/unit"
)

// A Shim is a shim pack to be made, with its tables. Lengths are in Unit, that
// of the stock, except for the marks of the inputs.
type Shim struct {
	*procedure.Shim
	Pack       *unit.Pack  // nil if unknown, which is reported
	Other      *unit.Pack  // on the other side; nil if none or unknown
	Stock      *shop.Stock // nil if unknown, which is reported
	Unit       quantity.Unit
	Micrometer *shop.Gauge // nil if unknown, which is reported

	Inputs  []*ShimInput // the one to three readings that determine the pack; nil if one is unusable, which is reported
	Limit   *unit.LimitBand
	Limits  *quantity.Band // Limit as the gauge shows it
	Aim     *big.Rat       // target reading; nil without one
	Rate    *big.Rat       // change of the reading per length of shim, negative if more shim decreases it; nil if not known
	Stacks  *bench.Stacks
	Miss    *ShimMiss // why there are no tables
	InPlace *big.Rat  // the pack in place, if the card fixes it

	Rows   []ShimRow   // with one input: the pack for each of its marks
	Grid   *bench.Grid // with two inputs: the last but one down, the last across
	Chain  *ShimChain  // with three inputs: from the first two to a letter, which goes down in Grid
	Packs  []ShimPack  // all packs of the tables, thinnest first
	Worked *ShimWorked // the worked example
}

// A ShimPack is a pack and the micrometer readings allowed for it.
type ShimPack struct {
	bench.Pack
	Over *quantity.Marks // nil if no mark is left, which a rule reports
}

// A ShimRow is a row of the table for one input.
type ShimRow struct {
	Low, High *big.Rat
	ShimPack
	Other *ShimPack // for the other side; nil without one
}

// A ShimMiss is the first combination of inputs without a pack.
type ShimMiss struct {
	Fault bench.PackFault
	At    []*big.Rat // one mark for each input of the table; for a letter, the value it stands for
	Want  *big.Rat
	Count int
	Other bool // the missing pack is the one on the other side
	Large bool // the tables would be too large
}

// A ShimChain is the first of two grids: from two inputs to a letter.
type ShimChain struct {
	Letters []bench.Span
	Cells   [][]int // index of the letter, by mark of the first input, then of the second
}

// A ShimWorked is a worked example: the readings, the letter in between, and
// the pack.
type ShimWorked struct {
	At     []*big.Rat // one for each of Inputs
	Letter int        // of a chain
	Pack   *ShimPack  // nil for readings outside the tables, which a rule reports
	Other  *ShimPack
}

// shim resolves the names of a shim block. Its tables are computed when all
// steps exist.
func (r *resolver) shim(i *procedure.Shim) Item {
	out := &Shim{Shim: i, Pack: r.pack(i.Pack)}
	if i.Other != nil {
		out.Other = r.pack(i.Other.Pack)
	}
	if step := r.step; !i.Bad.IsSet() {
		r.deferred = append(r.deferred, func() {
			r.inputs(step, out)
			if out.Resolved() && r.findRates(out) {
				r.tables(out)
			}
		})
	}
	s := r.card.Shop
	if s == nil {
		r.msgs.Report("stock-unknown", i.Stock.At, "give the file a `shop:` with its `stock:`, or put it into a workspace", "without a shop there are no shims to make a pack from")
		return out
	}
	if out.Stock = s.StockOf(i.Stock.Name); out.Stock == nil {
		r.reportUnknown(diag.OnShop, "stock-unknown", "stock", i.Stock, s.StockIDs(), "stock in shop.yaml")
	} else if len(out.Stock.Shims) > 0 {
		out.Unit = out.Stock.Shims[0].Thickness.Unit
		r.addToKit(&shop.Item{ID: out.Stock.ID, Name: out.Stock.Name, Location: out.Stock.Location, At: out.Stock.At}, out.Stock)
	}
	switch g, _ := r.gauge(i.Micrometer); {
	case g == nil:
	case g.Scale.Unit.Dimension != quantity.Length:
		r.msgs.Report("measure-kind", i.Micrometer.At, "name a gauge that reads length", "`%s` reads %s, and a pack is a length", g.ID, g.Scale.Unit.Dimension)
	default:
		out.Micrometer = g
	}
	return out
}

// pack looks up a pack of the unit, nil if this variant lacks it, which is
// reported.
func (r *resolver) pack(n procedure.Named) *unit.Pack {
	u := r.card.Unit
	if u == nil {
		return nil
	}
	p := u.Pack(n.Name)
	switch {
	case p == nil:
		r.reportUnknown(diag.OnUnit, "pack-unknown", "pack", n, u.PackIDs(), "packs in the unit")
	case !appliesToVariant(p.Only, r.card.VariantID()):
		r.msgs.Report("pack-left-out", n.At, "limit this block to the variants that have it", "pack `%s` is left out here", n.Name)
		return nil
	}
	return p
}

// Resolved reports whether everything that the block names was found and read.
func (i *Shim) Resolved() bool {
	return !i.Bad.IsSet() && i.Pack != nil && i.Stock != nil && !i.Stock.Bad.IsSet() && len(i.Stock.Shims) > 0 && i.Micrometer != nil && i.Inputs != nil &&
		(i.Other != nil) == (i.Shim.Other != nil) && i.Within != nil && i.OverPack != nil
}

// length returns a length in the unit of the stock, nil for nil.
func (i *Shim) length(v *quantity.Value) *big.Rat {
	if v == nil {
		return nil
	}
	return quantity.Convert(v.Value, v.Unit, i.Unit)
}

// rate returns the change of the reading per length of shim, with its sign,
// nil if the unit does not state it.
func (r *resolver) rate(p *unit.Pack) *big.Rat {
	rate := p.Rate
	if p.RateFromGears {
		rate = TheoryRate(r.card.Unit, p)
	}
	if rate == nil || p.MoreShim.Sign() == 0 {
		return nil
	}
	return new(big.Rat).Mul(rate, big.NewRat(int64(p.MoreShim.Sign()), 1))
}

// TheoryRate returns the change of circumferential backlash at the pitch
// radius per length of shim, computed from the gears; nil if the unit lacks
// the data.
func TheoryRate(u *unit.Unit, p *unit.Pack) *big.Rat { return axialRate(u.Pair(p.Gears), p.MovesGear) }

// axialRate returns the theoretical rate for the member that moves, nil if the
// unit lacks the data. It holds for shafts at a right angle, where the numbers
// of teeth alone give the pitch angle.
func axialRate(g *unit.Pair, moves unit.Member) *big.Rat {
	if g == nil || moves == "" || g.PressureAngle == nil || g.Teeth[0] == 0 || g.Teeth[1] == 0 || !g.RightAngle() {
		return nil
	}
	b := bench.Bevel{Teeth: g.Teeth[0], Mate: g.Teeth[1], Pressure: inDegrees(g.PressureAngle), Spiral: new(big.Rat)}
	if moves == unit.LargeGear {
		b.Teeth, b.Mate = b.Mate, b.Teeth
	}
	if g.Spiral != nil {
		b.Spiral = inDegrees(g.Spiral)
	}
	return b.AxialRate()
}

// A stackKey identifies a set of stacks.
type stackKey struct {
	stock       *shop.Stock
	least, most int
}

// stacksOf returns the stacks that a stock can make, computed once for all
// cards; nil if there are too many.
func (l *Library) stacksOf(s *shop.Stock, least, most int) *bench.Stacks {
	made, _ := l.stacks.LoadOrStore(stackKey{s, least, most}, sync.OnceValue(func() *bench.Stacks {
		var all []bench.Thickness
		u := s.Shims[0].Thickness.Unit
		for _, shim := range s.Shims {
			t := shim.Thickness
			all = append(all, bench.Thickness{Value: quantity.Convert(t.Value, t.Unit, u), AtMost: shim.MaxCount})
		}
		stacks, ok := bench.NewStacks(all, least, most)
		if !ok {
			return nil
		}
		return stacks
	}))
	return made.(func() *bench.Stacks)()
}

// Readings returns none: the inputs are readings of other steps.
func (i *Shim) Readings() []*Measurement { return nil }

func (i *Shim) causes() []Cause {
	if i.Stock == nil {
		return nil
	}
	out := []Cause{{"sharp", i.KeyPlace("stock")}}
	if i.Micrometer != nil {
		out = append(out, toolCauses(&i.Micrometer.Item, i.At)...)
	}
	return out
}

// HasTables reports whether the tables and their worked example are there.
func (i *Shim) HasTables() bool { return len(i.Packs) > 0 && i.Worked != nil && i.Worked.Pack != nil }

func (i *Shim) complete(*Card) bool {
	return i.HasTables() && !slices.ContainsFunc(i.Packs, func(p ShimPack) bool { return p.Over == nil })
}
