package bench

import "math/big"

// A Row is what one row of a table holds on the marks of a scale, both ends
// belonging to it.
type Row struct{ Low, High *big.Rat }

// A RowFault is what is wrong between two rows that follow each other.
type RowFault uint8

// The faults.
const (
	RowsGood    RowFault = iota
	RowHole              // a mark lies in neither
	RowOverlap           // a mark lies in both, or the rows do not rise
	RowBackward          // a row's low end is above its high end
)

// CheckRows returns the first fault of a table, read on marks that are step
// apart, and the index of the row that has it, of two rows the second.
func CheckRows(rows []Row, step *big.Rat) (fault RowFault, at int) {
	for i, r := range rows {
		if r.Low.Cmp(r.High) > 0 {
			return RowBackward, i
		}
		if i == 0 {
			continue
		}
		last := rows[i-1].High
		if r.Low.Cmp(last) <= 0 {
			return RowOverlap, i
		}
		if r.Low.Cmp(new(big.Rat).Add(last, step)) > 0 {
			return RowHole, i
		}
	}
	return RowsGood, 0
}
