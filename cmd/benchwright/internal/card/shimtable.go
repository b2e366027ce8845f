package card

import (
	"math/big"
	"slices"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/unit"
)

// The target size of a grid is what fits on two A5 faces. It is exceeded only
// if the packs would otherwise not be close enough.
const (
	gridRows     = 10
	gridCols     = 8
	maxGridCells = 700 // cells of one grid
)

// maxLetters is the number of letters in a chain: those that cannot be taken
// for a digit.
const maxLetters = 24

// tables computes the tables of a block with complete data.
func (r *resolver) tables(i *Shim) {
	if i.Stacks = r.lib.stacksOf(i.Stock, i.MinShims, i.MaxShims); i.Stacks == nil {
		return
	}
	rule := bench.PackRule{Stacks: i.Stacks, Within: i.length(i.Within), Over: i.length(i.OverPack), Round: i.length(i.RoundTo), Safe: side(i.Pack.SafeSide)}
	base := i.base()
	switch len(i.Inputs) {
	case 1:
		i.oneInput(base, rule)
	case 2:
		if i.RoundTo != nil {
			i.twoInputs(i.Inputs[0].Axis, i.Inputs[1].Axis, base, rule)
		}
	default:
		if i.RoundTo != nil {
			i.threeInputs(base, rule)
		}
	}
	if i.Miss == nil {
		i.workExample()
	}
}

func side(safe unit.Amount) bench.Side {
	if safe == unit.More {
		return bench.Thicker
	}
	return bench.Thinner
}

// base returns the wanted pack without the contribution of the inputs.
func (i *Shim) base() *big.Rat {
	out := new(big.Rat)
	if i.InPlace != nil {
		out.Set(i.InPlace)
	}
	if i.From.Aimless() {
		return out
	}
	rest := new(big.Rat).Set(i.Aim)
	for _, l := range i.From.Plus {
		if l.Fixed != nil {
			rest.Sub(rest, i.length(l.Fixed))
		}
	}
	for _, l := range i.From.Minus {
		if l.Fixed != nil {
			rest.Add(rest, i.length(l.Fixed))
		}
	}
	return out.Add(out, rest.Quo(rest, i.Rate))
}

// pack adds the micrometer limits to a pack.
func (i *Shim) pack(p bench.Pack) ShimPack {
	out := ShimPack{Pack: p}
	if over, ok := (quantity.Band{Low: p.From, High: p.To, Unit: i.Unit}).Inward(i.Micrometer.Scale); ok {
		out.Over = &over
	}
	return out
}

// oneInput makes the table for one input, and for the pack on the other side.
func (i *Shim) oneInput(base *big.Rat, rule bench.PackRule) {
	in := i.Inputs[0]
	rows, miss := bench.PackRows(in.Axis.Marks, func(mark *big.Rat) *big.Rat {
		want := new(big.Rat).Mul(mark, in.Axis.Rate)
		return want.Add(want, base)
	}, rule)
	if miss != nil {
		i.Miss = &ShimMiss{Fault: miss.Fault, At: []*big.Rat{miss.Mark}, Want: miss.Want, Count: miss.Count}
		return
	}
	var sum *big.Rat
	if i.Other != nil {
		sum = new(big.Rat).Add(i.InPlace, i.length(i.Shim.Other.WithPack))
	}
	for _, row := range rows {
		out := ShimRow{Low: row.Low, High: row.High, ShimPack: i.pack(row.Pack)}
		i.Packs = append(i.Packs, out.ShimPack)
		if sum != nil {
			rest := new(big.Rat).Sub(sum, row.Total)
			stack, ok := i.Stacks.Make(rest, new(big.Rat), side(i.Other.SafeSide))
			if !ok {
				if i.Miss == nil {
					i.Miss = &ShimMiss{Fault: bench.PackNone, At: []*big.Rat{row.Low}, Want: rest, Other: true}
					if rest.Sign() < 0 {
						i.Miss.Fault = bench.PackBelow
					}
				}
				i.Miss.Count++
				continue
			}
			other := i.pack(bench.Pack{Stack: stack, From: new(big.Rat).Sub(rest, rule.Over), To: new(big.Rat).Add(rest, rule.Over)})
			out.Other = &other
			i.Packs = append(i.Packs, other)
		}
		i.Rows = append(i.Rows, out)
	}
	i.sort()
}

// sort sorts the packs and drops duplicates. With a miss, it drops all tables.
func (i *Shim) sort() {
	if i.Miss != nil {
		i.Rows, i.Grid, i.Packs = nil, nil, nil
		return
	}
	slices.SortStableFunc(i.Packs, func(a, b ShimPack) int { return a.Total.Cmp(b.Total) })
	i.Packs = slices.CompactFunc(i.Packs, func(a, b ShimPack) bool { return a.Total.Cmp(b.Total) == 0 })
}

// twoInputs makes the grid for two inputs.
func (i *Shim) twoInputs(down, across bench.Axis, base *big.Rat, rule bench.PackRule) {
	grid, miss := bench.PackGrid(down, across, base, rule, gridRows, gridCols)
	switch {
	case miss != nil:
		i.Miss = &ShimMiss{Fault: miss.Fault, At: []*big.Rat{miss.Row, miss.Col}, Want: miss.Want, Count: miss.Count}
		return
	case len(grid.Rows)*len(grid.Cols) > maxGridCells:
		i.Miss = &ShimMiss{Large: true, Count: len(grid.Rows) * len(grid.Cols)}
		return
	}
	i.Grid = grid
	for _, p := range grid.Packs() {
		i.Packs = append(i.Packs, i.pack(p))
	}
	i.sort()
}

// threeInputs makes a chain of grids: two inputs give a letter, and the letter
// with the third gives the pack.
func (i *Shim) threeInputs(base *big.Rat, rule bench.PackRule) {
	a, b := i.Inputs[0].Axis, i.Inputs[1].Axis
	if cells := len(a.Marks) * len(b.Marks); cells > maxGridCells {
		i.Miss = &ShimMiss{Large: true, Count: cells}
		return
	}
	if i.twoInputs(bench.Sums(a, b), i.Inputs[2].Axis, base, rule); i.Miss != nil {
		return
	}
	if n := len(i.Grid.Rows); n > maxLetters {
		i.Miss = &ShimMiss{Large: true, Count: n}
		i.sort()
		return
	}
	i.Chain = &ShimChain{Letters: i.Grid.Rows}
	for _, x := range a.Marks {
		var line []int
		for _, y := range b.Marks {
			line = append(line, bench.SpanAt(i.Grid.Rows, a, b, x, y))
		}
		i.Chain.Cells = append(i.Chain.Cells, line)
	}
}

// workExample makes the worked example: the writer's, or one with marks from
// the middle of the tables.
func (i *Shim) workExample() {
	if len(i.Packs) == 0 {
		return
	}
	w := &ShimWorked{}
	for n, in := range i.Inputs {
		at := in.Axis.Marks[len(in.Axis.Marks)*(2-n%2)/3] // alternately two thirds and one third up
		if e := i.Example; e != nil {
			v := e.Reading
			if in.IsOldPack {
				v = e.OldPack
			}
			if v == nil || in.Measurement == nil {
				i.Worked = &ShimWorked{}
				return
			}
			at = quantity.Convert(v.Value, v.Unit, in.Scale.Unit)
		}
		w.At = append(w.At, at)
	}
	i.Worked = w
	var found *bench.Pack
	switch {
	case i.Rows != nil:
		for n := range i.Rows {
			if row := &i.Rows[n]; row.Low.Cmp(w.At[0]) <= 0 && w.At[0].Cmp(row.High) <= 0 {
				w.Pack, w.Other = &row.ShimPack, row.Other
			}
		}
		return
	case i.Chain != nil:
		a, b := i.Inputs[0].Axis, i.Inputs[1].Axis
		if w.Letter = bench.SpanAt(i.Chain.Letters, a, b, w.At[0], w.At[1]); w.Letter < 0 {
			return
		}
		found = i.Grid.At(i.Chain.Letters[w.Letter].Low, w.At[2])
	default:
		found = i.Grid.At(w.At[0], w.At[1])
	}
	for n := range i.Packs {
		if found != nil && i.Packs[n].Total.Cmp(found.Total) == 0 {
			w.Pack = &i.Packs[n]
		}
	}
}
