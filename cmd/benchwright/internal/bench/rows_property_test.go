package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"
)

// Rows that follow one another mark by mark are good; one end moved by a mark
// is a hole or an overlap, found at its row.
func TestCheckRowsProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 4))
	step := num(t, "0.001")
	for range 500 {
		var rows []Row
		at := r.Int64N(300)
		for range 2 + r.IntN(8) {
			high := at + 1 + r.Int64N(20)
			rows = append(rows, Row{big.NewRat(at, 1000), big.NewRat(high, 1000)})
			at = high + 1
		}
		if fault, i := CheckRows(rows, step); fault != RowsGood {
			t.Fatalf("%v: fault %d at %d", rows, fault, i)
		}
		i := 1 + r.IntN(len(rows)-1)
		end, was := rows[i-1].High, RowHole
		if r.IntN(2) == 0 {
			end, was = new(big.Rat).Add(end, step), RowOverlap
		} else {
			end = new(big.Rat).Sub(end, step)
		}
		rows[i-1].High = end
		if fault, at := CheckRows(rows, step); fault != was || at != i {
			t.Fatalf("%v: fault %d at %d, want %d at %d", rows, fault, at, was, i)
		}
	}
}
