package bench

import (
	"math/big"
	"slices"
)

// ShimChange returns by how much a pack is to grow (below zero: shrink) so
// that a reading comes to its aim:
//
//	change = (aim − reading)/rate
//
// rate is how far the reading moves for each length of shim that is added, below
// zero where more shim makes it less; all lengths are in one unit, and so reading + rate·change = aim. ok is false for a
// rate of 0.
func ShimChange(aim, reading, rate *big.Rat) (change *big.Rat, ok bool) {
	if rate.Sign() == 0 {
		return nil, false
	}
	c := new(big.Rat).Sub(aim, reading)
	return c.Quo(c, rate), true
}

// MarkChange returns by how much a pack is to grow when a part etched old is
// replaced by one etched now: (now − old) × step, step below zero where the
// manual has (old − new). Source: TM 9-2320-280-34 p. 19-12 table 9-1, whose
// step is −0.001 in.
func MarkChange(old, now, step *big.Rat) *big.Rat {
	c := new(big.Rat).Sub(now, old)
	return c.Mul(c, step)
}

// A Side is the side to which a shim pack errs more safely.
type Side uint8

// The sides.
const (
	Thinner Side = iota
	Thicker
)

// A Thickness is one thickness of shim and how many of it one pack may hold,
// 0 for any number.
type Thickness struct {
	Value  *big.Rat
	AtMost int
}

// A Stack is a pack of shims to make, in the unit of the stock.
type Stack struct {
	Shims []*big.Rat // thickest first
	Total *big.Rat
}

// Layers returns the shims in the order in which they are laid: thin ones
// between thick ones.
func (s Stack) Layers() []*big.Rat {
	out := make([]*big.Rat, len(s.Shims))
	for i, shim := range s.Shims {
		if i%2 == 0 {
			out[i/2] = shim
		} else {
			out[len(out)-1-i/2] = shim
		}
	}
	return out
}

// Stacks holds every total that a stock of shims can make. It is made once for
// a table and asked for each row.
type Stacks struct {
	stock       []Thickness // thin to thick
	grain       []int64     // their thicknesses in whole parts of 1/scale
	scale       *big.Int
	least, most int
	layers      []map[sum]int // by kind of shim: how many of it the best stack takes, thinner kinds making the rest
	totals      [][]int64     // by number of shims, rising
}

// A sum is a number of shims and what they add up to.
type sum struct {
	count int
	total int64
}

// NewStacks returns what a stock can make with least to most shims in a pack.
// ok is false where the stock is empty, a thickness is not above zero, most is
// below least or 1 or above 1000, the thicknesses have no common divisor that is
// reasonably coarse, or there are more than mostSums sums to hold or mostSteps
// steps to take.
func NewStacks(stock []Thickness, least, most int) (stacks *Stacks, ok bool) {
	if len(stock) == 0 || least < 0 || most < 1 || least > most || most > 1000 {
		return nil, false
	}
	s := &Stacks{stock: slices.Clone(stock), scale: big.NewInt(1), least: least, most: most}
	slices.SortStableFunc(s.stock, func(a, b Thickness) int { return a.Value.Cmp(b.Value) })
	for _, t := range s.stock {
		if t.Value.Sign() <= 0 || t.AtMost < 0 {
			return nil, false
		}
		d := t.Value.Denom()
		common := new(big.Int).GCD(nil, nil, s.scale, d)
		s.scale.Mul(s.scale, new(big.Int).Quo(d, common))
	}
	for _, t := range s.stock {
		g := new(big.Int).Mul(t.Value.Num(), s.scale)
		g.Quo(g, t.Value.Denom())
		if g.BitLen() > 50 {
			return nil, false
		}
		s.grain = append(s.grain, g.Int64())
	}
	if !s.fill() {
		return nil, false
	}
	return s, true
}

// mostSums bounds the memory and time that a stock may take. Twelve kinds of
// inch and metric shims with six to a pack make at most 18 564 sums.
const mostSums = 500_000

// mostSteps bounds the time alone: many shims to a pack, of few different sums,
// are as slow.
const mostSteps = 3_000_000

// fill works out all totals, kind by kind from thin to thick, so that the
// largest count of the last kind is the stack with the thickest shims. It gives up
// above mostSums and mostSteps.
func (s *Stacks) fill() bool {
	before := map[sum]int{{}: 0}
	steps := 0
	for i, g := range s.grain {
		limit := s.most
		if n := s.stock[i].AtMost; n > 0 && n < limit {
			limit = n
		}
		layer := make(map[sum]int, 2*len(before))
		for at := range before {
			for n := 0; n <= limit && at.count+n <= s.most; n++ {
				steps++
				to := sum{at.count + n, at.total + int64(n)*g}
				if had, ok := layer[to]; !ok || n > had {
					layer[to] = n
				}
			}
			if len(layer) > mostSums || steps > mostSteps {
				return false
			}
		}
		s.layers = append(s.layers, layer)
		before = layer
	}
	s.totals = make([][]int64, s.most+1)
	for at := range before {
		s.totals[at.count] = append(s.totals[at.count], at.total)
	}
	for _, t := range s.totals {
		slices.Sort(t)
	}
	return true
}

// Make returns the stack that comes within a distance of the aim: the one of
// fewest shims; of these the nearest; of two as near the one to the safe side;
// then the one with the thickest single shim (and then the next thickest). ok
// is false where the stock cannot make it; see Beside and Buy.
func (s *Stacks) Make(aim, within *big.Rat, safe Side) (stack Stack, ok bool) {
	if within.Sign() < 0 {
		return Stack{}, false
	}
	for n := s.least; n <= s.most; n++ {
		best, distance := s.nearest(n, aim, safe)
		if distance != nil && distance.Cmp(within) <= 0 {
			return s.stack(best), true
		}
	}
	return Stack{}, false
}

// nearest returns the total of n shims that is nearest to aim and how far it
// is, nil where n shims make nothing.
func (s *Stacks) nearest(n int, aim *big.Rat, safe Side) (best sum, distance *big.Rat) {
	i, totals := s.split(n, aim), s.totals[n]
	if i > 0 {
		best = sum{n, totals[i-1]}
		distance = new(big.Rat).Sub(aim, s.rat(totals[i-1]))
	}
	if i < len(totals) {
		up := new(big.Rat).Sub(s.rat(totals[i]), aim)
		if distance == nil || up.Cmp(distance) < 0 || up.Cmp(distance) == 0 && safe == Thicker {
			best, distance = sum{n, totals[i]}, up
		}
	}
	return best, distance
}

// split returns how many of the totals of n shims do not exceed the aim.
func (s *Stacks) split(n int, aim *big.Rat) int {
	grain := new(big.Int).Mul(aim.Num(), s.scale)
	grain.Div(grain, aim.Denom()) // rounds down: the denominator is above zero
	if !grain.IsInt64() {
		if grain.Sign() < 0 {
			return 0
		}
		return len(s.totals[n])
	}
	i, _ := slices.BinarySearch(s.totals[n], grain.Int64()+1)
	return i
}

// rat returns whole parts as a thickness.
func (s *Stacks) rat(grains int64) *big.Rat {
	return new(big.Rat).SetFrac(big.NewInt(grains), s.scale)
}

// stack returns the shims of a sum that can be made.
func (s *Stacks) stack(at sum) Stack {
	out := Stack{Total: s.rat(at.total)}
	for i := len(s.layers) - 1; i >= 0; i-- {
		n := s.layers[i][at]
		for range n {
			out.Shims = append(out.Shims, s.stock[i].Value)
		}
		at.count -= n
		at.total -= int64(n) * s.grain[i]
	}
	return out
}

// Beside returns the two stacks nearest to the aim, one not above it and one
// not below it, each with the fewest shims that make its total; nil where there
// is none on that side.
func (s *Stacks) Beside(aim *big.Rat) (below, above *Stack) {
	var down, up *sum
	for n := s.least; n <= s.most; n++ {
		i, totals := s.split(n, aim), s.totals[n]
		if i > 0 && (down == nil || totals[i-1] > down.total) {
			down = &sum{n, totals[i-1]}
		}
		if i > 0 && s.rat(totals[i-1]).Cmp(aim) == 0 {
			i--
		}
		if i < len(totals) && (up == nil || totals[i] < up.total) {
			up = &sum{n, totals[i]}
		}
	}
	for _, side := range []struct {
		at *sum
		to **Stack
	}{{down, &below}, {up, &above}} {
		if side.at != nil {
			st := s.stack(*side.at)
			*side.to = &st
		}
	}
	return below, above
}

// Buy returns the one thickness that would let the stock make the aim exactly,
// nil where none would. It is as thick as the stock's shims are, if such a one
// will do, in the pack of fewest shims, and then the thickest; else the
// thickest of the pack of fewest shims.
func (s *Stacks) Buy(aim *big.Rat) *big.Rat {
	thin, thick := s.stock[0].Value, s.stock[len(s.stock)-1].Value
	var other *big.Rat
	for n := max(s.least-1, 0); n < s.most; n++ {
		for _, total := range s.totals[n] {
			rest := new(big.Rat).Sub(aim, s.rat(total))
			if rest.Sign() <= 0 {
				break
			}
			if other == nil {
				other = rest
			}
			if rest.Cmp(thin) >= 0 && rest.Cmp(thick) <= 0 {
				return rest
			}
		}
	}
	return other
}
