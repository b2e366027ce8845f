package bench

import (
	"math/big"
)

// A PackRule is how packs are made up from a stock. All lengths are in the
// unit of the stock.
type PackRule struct {
	Stacks *Stacks
	Within *big.Rat // how far a finished pack may be from the one that is wanted
	Over   *big.Rat // how far a finished pack may measure from its stack: a part of Within
	Round  *big.Rat // packs are whole steps of this; nil for any stack
	Safe   Side
}

// A Pack is a stack to make and what it may measure when it is made, both ends
// included: at either end it is Within of every pack that it serves for.
type Pack struct {
	Stack
	From, To *big.Rat
}

// A PackFault is why no pack serves.
type PackFault uint8

// The faults.
const (
	PackGood    PackFault = iota
	PackNone              // the stock makes nothing near enough
	PackBelow             // the pack that is wanted is less than nothing
	PackSpread            // one pack cannot serve: Round and Over leave nothing of Within
	PackNothing           // there is nothing to serve for
)

// Serve returns the one pack that serves wherever a pack of low to high is
// wanted. With Round it is the nearest whole step to their middle (a tie goes
// to the safe side), exactly; else the stack of fewest shims near enough.
func (r PackRule) Serve(low, high *big.Rat) (Pack, PackFault) {
	target := new(big.Rat).Add(low, high)
	target.Quo(target, big.NewRat(2, 1))
	if r.Round != nil {
		target = r.step(target)
	}
	spread := new(big.Rat).Sub(target, low)
	if d := new(big.Rat).Sub(high, target); d.Cmp(spread) > 0 {
		spread = d
	}
	left := new(big.Rat).Sub(r.Within, spread)
	if left.Sub(left, r.Over).Sign() < 0 {
		return Pack{}, PackSpread
	}
	if r.Round != nil {
		left = new(big.Rat)
	}
	stack, ok := r.Stacks.Make(target, left, r.Safe)
	switch {
	case !ok && target.Sign() < 0:
		return Pack{}, PackBelow
	case !ok:
		return Pack{}, PackNone
	}
	return Pack{stack, new(big.Rat).Sub(stack.Total, r.Over), new(big.Rat).Add(stack.Total, r.Over)}, PackGood
}

// step returns the whole step of Round nearest to x.
func (r PackRule) step(x *big.Rat) *big.Rat {
	n := new(big.Rat).Quo(x, r.Round)
	n.Add(n, big.NewRat(1, 2)) // rounds half up
	down := new(big.Int).Div(n.Num(), n.Denom())
	if r.Safe == Thinner && n.IsInt() {
		down.Sub(down, big.NewInt(1))
	}
	return n.Mul(n.SetInt(down), r.Round)
}

// A PackRow is a row of a look-up table: the marks from Low to High, both
// included, and the pack to make there.
type PackRow struct {
	Low, High *big.Rat
	Pack
}

// A PackMiss is the first mark for which no pack can be made, and how many
// there are.
type PackMiss struct {
	Fault PackFault
	Mark  *big.Rat
	Want  *big.Rat // the pack that is wanted there
	Count int
}

// PackRows returns the table of the pack to make for each of the marks, which
// rise by one step of their scale: marks that follow each other and are served
// by the same stack share a row, so that each mark lies in one row and no
// other. Want says which pack is wanted at a mark; it rises or falls
// throughout. Where a mark has no pack the rows are nil and miss says which.
func PackRows(marks []*big.Rat, want func(mark *big.Rat) *big.Rat, r PackRule) (rows []PackRow, miss *PackMiss) {
	if len(marks) == 0 {
		return nil, &PackMiss{Fault: PackNothing}
	}
	wants := make([]*big.Rat, len(marks))
	for i, m := range marks {
		wants[i] = want(m)
	}
	for i := 0; i < len(marks); {
		j := i + 1
		for r.Round != nil && j < len(marks) && r.step(wants[j]).Cmp(r.step(wants[i])) == 0 {
			j++
		}
		p, fault := r.Serve(ordered(wants[i], wants[j-1]))
		switch last := len(rows) - 1; {
		case fault != PackGood:
			if miss == nil {
				miss = &PackMiss{Fault: fault, Mark: marks[i], Want: wants[i]}
			}
			miss.Count += j - i
		case last >= 0 && rows[last].Total.Cmp(p.Total) == 0:
			rows[last].High = marks[j-1]
		default:
			rows = append(rows, PackRow{marks[i], marks[j-1], p})
		}
		i = j
	}
	if miss != nil {
		return nil, miss
	}
	return rows, nil
}

func ordered(a, b *big.Rat) (low, high *big.Rat) {
	if a.Cmp(b) > 0 {
		return b, a
	}
	return a, b
}
