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
// of the stock, but for the marks of the inputs.
type Shim struct {
	*procedure.Shim
	Pack       *unit.Pack  // nil when unknown, which is reported
	Other      *unit.Pack  // on the other side; nil for none, or when unknown
	Stock      *shop.Stock // nil when unknown, which is reported
	Unit       quantity.Unit
	Micrometer *shop.Gauge // nil when unknown, which is reported

	Inputs  []*ShimInput // what is read to find the pack, one to three; nil when one cannot be used, which is reported
	Limit   *unit.LimitBand
	Limits  *quantity.Band // Limit as the gauge shows it
	Aim     *big.Rat       // of the reading; nil when there is none
	Rate    *big.Rat       // of the reading for each length of shim, below zero where more shim makes it less; nil when not known
	Stacks  *bench.Stacks
	Miss    *ShimMiss // why there are no tables
	InPlace *big.Rat  // the pack in place, where the card fixes it

	Rows   []ShimRow   // of one input: the pack for each of its marks
	Grid   *bench.Grid // of two: down the last but one of Inputs, across the last
	Chain  *ShimChain  // of three: the first two first, whose letter then goes down in Grid
	Packs  []ShimPack  // every pack of the tables, the thinnest first
	Worked *ShimWorked // the worked line
}

// A ShimPack is a pack and what the micrometer may show over it.
type ShimPack struct {
	bench.Pack
	Over *quantity.Marks // nil where no mark is left, which a rule reports
}

// A ShimRow is a row of the table of one input.
type ShimRow struct {
	Low, High *big.Rat
	ShimPack
	Other   *ShimPack // for the other side; nil without one
	InPlace bool      // the pack is as thick as the one in place
}

// A ShimMiss is the first marks of the inputs for which there is no pack.
type ShimMiss struct {
	Fault bench.PackFault
	At    []*big.Rat // one for each input of the table; a letter's is what it stands for
	Want  *big.Rat
	Count int
	Other bool // it is the pack on the other side
	Large bool // the tables would be too large
}

// A ShimChain is the first of two grids: from two inputs to a letter.
type ShimChain struct {
	Letters []bench.Span
	Cells   [][]int // index of the letter, by mark of the first input, then of the second
}

// A ShimWorked is a worked line: what is read, the letter between, and the pack.
type ShimWorked struct {
	At     []*big.Rat // one for each of Inputs
	Letter int        // of a chain
	Pack   *ShimPack  // nil for readings that the tables do not hold, which a rule reports
	Other  *ShimPack
}

// shim looks up what a shim block names. Its tables wait until all steps are
// there.
func (r *resolver) shim(i *procedure.Shim) Item {
	out := &Shim{Shim: i, Pack: r.pack(i.Pack)}
	if i.Other != nil {
		out.Other = r.pack(i.Other.Pack)
	}
	if step := r.step; !i.Bad.IsSet() {
		r.later = append(r.later, func() {
			r.inputs(step, out)
			if out.Known() && r.wanted(out) {
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
		r.unknown(diag.OnShop, "stock-unknown", "stock", i.Stock, s.StockIDs(), "stock in shop.yaml")
	} else if len(out.Stock.Shims) > 0 {
		out.Unit = out.Stock.Shims[0].Thickness.Unit
		r.kit(&shop.Item{ID: out.Stock.ID, Name: out.Stock.Name, Location: out.Stock.Location, At: out.Stock.At}, out.Stock)
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

// pack finds a pack of the unit, nil for one that this variant does not have,
// which is reported.
func (r *resolver) pack(n procedure.Named) *unit.Pack {
	u := r.card.Unit
	if u == nil {
		return nil
	}
	p := u.Pack(n.Name)
	switch {
	case p == nil:
		r.unknown(diag.OnUnit, "pack-unknown", "pack", n, u.PackIDs(), "packs in the unit")
	case !isFor(p.Only, r.card.VariantID()):
		r.msgs.Report("pack-left-out", n.At, "limit this block to the variants that have it", "pack `%s` is left out here", n.Name)
		return nil
	}
	return p
}

// Known says whether all that the block names was found and read.
func (i *Shim) Known() bool {
	return !i.Bad.IsSet() && i.Pack != nil && i.Stock != nil && !i.Stock.Bad.IsSet() && len(i.Stock.Shims) > 0 && i.Micrometer != nil && i.Inputs != nil &&
		(i.Other != nil) == (i.Shim.Other != nil) && i.Within != nil && i.OverPack != nil
}

// length returns a length in the unit of the stock, nil for none.
func (i *Shim) length(v *quantity.Value) *big.Rat {
	if v == nil {
		return nil
	}
	return quantity.Convert(v.Value, v.Unit, i.Unit)
}

// rate returns how far a reading moves for each length of shim, with its sign,
// nil when the unit does not say.
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

// TheoryRate returns how much backlash a pack opens or closes for each length of
// shim, along the turn at the pitch radius, nil where the unit lacks what it
// takes.
func TheoryRate(u *unit.Unit, p *unit.Pack) *big.Rat { return axialRate(u.Pair(p.Gears), p.MovesGear) }

// axialRate is the theory's rate for the member of a pair that moves, nil where
// the unit lacks what it takes. It is that of shafts at a right angle: the teeth
// alone give the pitch angle there.
func axialRate(g *unit.Pair, moves unit.Member) *big.Rat {
	if g == nil || moves == "" || g.PressureAngle == nil || g.Teeth[0] == 0 || g.Teeth[1] == 0 || !g.RightAngle() {
		return nil
	}
	b := bench.Bevel{Teeth: g.Teeth[0], Mate: g.Teeth[1], Pressure: degrees(g.PressureAngle), Spiral: new(big.Rat)}
	if moves == unit.LargeGear {
		b.Teeth, b.Mate = b.Mate, b.Teeth
	}
	if g.Spiral != nil {
		b.Spiral = degrees(g.Spiral)
	}
	return b.AxialRate()
}

// A stackKey names one set of stacks.
type stackKey struct {
	stock       *shop.Stock
	least, most int
}

// stacksOf returns what a stock can make, computed once for all cards; nil
// where there is too much of it.
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
		out = append(out, carried(&i.Micrometer.Item, i.At)...)
	}
	return out
}

// Made says whether the tables and their worked line are there.
func (i *Shim) Made() bool { return len(i.Packs) > 0 && i.Worked != nil && i.Worked.Pack != nil }

func (i *Shim) whole(*Card) bool {
	return i.Made() && !slices.ContainsFunc(i.Packs, func(p ShimPack) bool { return p.Over == nil })
}
