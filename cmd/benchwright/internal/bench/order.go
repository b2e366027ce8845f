package bench

import (
	"math/big"
	"slices"

	"benchwright/cmd/benchwright/internal/quantity"
)

// Order returns the order in which n bolts on a circle are tightened, by their
// positions 1 to n, clockwise; nil for n below 1.
//
// For n divisible by 4 it is the cross pattern: groups of four a quarter turn
// apart, each bolt followed by the one opposite (ASME PCC-1 legacy pattern,
// secondary sources). For other even n it is opposite pairs, for odd n a star
// (both common practice). The groups, pairs or bolts themselves are taken half
// the way around from the last.
func Order(n int) []int {
	if n < 1 {
		return nil
	}
	offsets := []int{0}
	switch {
	case n%4 == 0:
		offsets = []int{0, n / 2, n / 4, n/2 + n/4}
	case n%2 == 0:
		offsets = []int{0, n / 2}
	}
	out := make([]int, 0, n)
	for _, start := range halfWay(n / len(offsets)) {
		for _, o := range offsets {
			out = append(out, start+o)
		}
	}
	return out
}

// A BoltPattern is how a set of fasteners stands.
type BoltPattern uint8

// The patterns. Positions count clockwise from the top of a circle, and from
// the top left of a rectangle, which is two equal rows; from the left in a row.
const (
	BoltCircle BoltPattern = iota
	BoltRectangle
	BoltRow
)

// ParseBoltPattern returns the pattern of a name: "circle", "rectangle", "row".
func ParseBoltPattern(name string) (p BoltPattern, ok bool) {
	switch name {
	case "circle":
		return BoltCircle, true
	case "rectangle":
		return BoltRectangle, true
	case "row":
		return BoltRow, true
	}
	return 0, false
}

// OrderOf returns the order in which n bolts of a pattern are tightened, by
// position; nil where the trade has no one order: a rectangle of other than
// four. Four at the corners go crosswise, as on a circle; a row goes from its
// middle outward, side by side (common practice).
func OrderOf(p BoltPattern, n int) []int {
	switch {
	case p == BoltRow && n > 0:
		out := make([]int, 0, n)
		for i := range n {
			step := (i + 1) / 2
			if i%2 == 1 {
				step = -step
			}
			out = append(out, n/2+1+step)
		}
		if n%2 == 0 { // of the middle two the left one first
			for i := range out {
				out[i] = n + 1 - out[i]
			}
		}
		return out
	case p == BoltCircle, p == BoltRectangle && n == 4:
		return Order(n)
	}
	return nil
}

// halfWay returns 1 to k in steps of half of k, rounded down, round and round;
// where the place is taken, the next one.
func halfWay(k int) []int {
	taken := make([]bool, k)
	out := make([]int, 0, k)
	for at := 0; len(out) < k; at = (at + k/2) % k {
		for taken[at] {
			at = (at + 1) % k
		}
		taken[at] = true
		out = append(out, at+1)
	}
	return out
}

// An OrderFault is what is wrong with an order written by hand. Each list
// rises; all are empty in a good order.
type OrderFault struct {
	Outside []int // positions that are not 1 to n
	Twice   []int // positions named more than once
	Missing []int // positions never named
}

// Good reports whether nothing is wrong.
func (f OrderFault) Good() bool {
	return len(f.Outside) == 0 && len(f.Twice) == 0 && len(f.Missing) == 0
}

// CheckOrder returns what is wrong with an order of n bolts written by hand,
// which must name each position once.
func CheckOrder(n int, order []int) OrderFault {
	var f OrderFault
	seen := make(map[int]int, len(order))
	for _, p := range order {
		seen[p]++
		if (p < 1 || p > n) && seen[p] == 1 {
			f.Outside = append(f.Outside, p)
		}
	}
	slices.Sort(f.Outside)
	for p := 1; p <= n; p++ {
		switch {
		case seen[p] == 0:
			f.Missing = append(f.Missing, p)
		case seen[p] > 1:
			f.Twice = append(f.Twice, p)
		}
	}
	return f
}

// A Pass is one round of tightening.
type Pass struct {
	Share   *big.Rat // of the setting, as stated: 1/2 for 50 %
	Setting *big.Rat // a mark of the wrench, in its unit
	Round   bool     // once around from bolt to bolt, not in the order
}

// A PassFault is why passes cannot be made.
type PassFault uint8

// The faults.
const (
	PassesGood  PassFault = iota
	PassesFall            // a share is not above the one before, or not above zero
	PassesShort           // the last share is not 100 %
	PassLow               // a pass lies below the wrench's lowest mark
	PassSame              // two passes fall on one mark of the wrench
	PassOff               // the setting is not a mark of the wrench
)

// Passes returns the passes in order on the marks of a wrench, and after them
// once around at the whole setting. The shares rise to 1. Each pass is the mark
// nearest to its share of the setting, the lower of two; the last is the
// setting itself. at is the index of the share at fault.
func Passes(setting *big.Rat, shares []*big.Rat, s quantity.Scale) (passes []Pass, fault PassFault, at int) {
	one := big.NewRat(1, 1)
	if s.Step == nil || s.Step.Sign() <= 0 || setting.Sign() <= 0 || s.Floor(setting).Cmp(setting) != 0 {
		return nil, PassOff, 0
	}
	low, high := s.Ends()
	if low != nil && setting.Cmp(low) < 0 || high != nil && setting.Cmp(high) > 0 {
		return nil, PassOff, 0
	}
	if len(shares) == 0 {
		return nil, PassesShort, 0
	}
	last := new(big.Rat)
	for i, share := range shares {
		if share.Cmp(last) <= 0 {
			return nil, PassesFall, i
		}
		last = share
	}
	if last.Cmp(one) != 0 {
		return nil, PassesShort, len(shares) - 1
	}
	before := new(big.Rat)
	for i, share := range shares {
		want := new(big.Rat).Mul(setting, share)
		mark := nearestMark(want, quantity.Marks{Scale: quantity.Scale{Unit: s.Unit, Step: s.Step}})
		switch {
		case mark.Sign() <= 0, low != nil && mark.Cmp(low) < 0:
			return nil, PassLow, i
		case mark.Cmp(before) <= 0:
			return nil, PassSame, i
		}
		before = mark
		passes = append(passes, Pass{Share: share, Setting: mark})
	}
	return append(passes, Pass{Share: one, Setting: before, Round: true}), PassesGood, 0
}
