package bench

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
)

// A Row is what one row of a table holds on the marks of a scale, both ends
// belonging to it; nil where no mark falls in it.
type Row struct{ Low, High *big.Rat }

// Rows returns a table's rows on the marks of a scale. The cuts rise; the
// first row runs from the first cut to the second, both included, each other
// from above its cut to the next. Every mark from the first cut to the last
// falls in one row and no other, on whatever scale, so the table has no hole
// and no overlap in either of two units. It is nil where there are not two
// cuts, they do not rise, or the units differ in kind.
func Rows(cuts []*big.Rat, u quantity.Unit, s quantity.Scale) []Row {
	if len(cuts) < 2 || u.Dimension != s.Unit.Dimension || s.Step == nil || s.Step.Sign() <= 0 {
		return nil
	}
	rows := make([]Row, 0, len(cuts)-1)
	low := s.Ceil(quantity.Convert(cuts[0], u, s.Unit))
	for i, c := range cuts[1:] {
		if c.Cmp(cuts[i]) <= 0 {
			return nil
		}
		high := s.Floor(quantity.Convert(c, u, s.Unit))
		if high.Cmp(low) < 0 {
			rows = append(rows, Row{})
			continue
		}
		rows = append(rows, Row{low, high})
		low = new(big.Rat).Add(high, s.Step)
	}
	return rows
}

// A RowFault is what is wrong between two rows that follow each other.
type RowFault uint8

// The faults.
const (
	RowsGood    RowFault = iota
	RowHole              // a mark lies in neither
	RowOverlap           // a mark lies in both, or the rows do not rise
	RowBackward          // a row's low end is above its high end
)

// CheckRows returns the first fault of a table written by hand, read on marks
// that are step apart, and the index of the row that has it, of two rows the
// second. Rows without marks are passed over.
func CheckRows(rows []Row, step *big.Rat) (fault RowFault, at int) {
	var last *big.Rat
	for i, r := range rows {
		if r.Low == nil || r.High == nil {
			continue
		}
		if r.Low.Cmp(r.High) > 0 {
			return RowBackward, i
		}
		if last != nil {
			if r.Low.Cmp(last) <= 0 {
				return RowOverlap, i
			}
			if r.Low.Cmp(new(big.Rat).Add(last, step)) > 0 {
				return RowHole, i
			}
		}
		last = r.High
	}
	return RowsGood, 0
}
