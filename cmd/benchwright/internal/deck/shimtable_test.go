package deck

import (
	"math/big"
	"slices"
	"testing"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/render"
)

// Rows and columns of a grid that have the same answers are one, with a range.
func TestGridJoins(t *testing.T) {
	mm := quantity.MustUnit("mm")
	scale := quantity.Scale{Unit: mm, Step: big.NewRat(1, 100)}
	at := func(n int64) *big.Rat { return big.NewRat(n, 100) }
	in := &card.ShimInput{Measurement: &card.Measurement{Gauge: &shop.Gauge{Scale: scale}}, Scale: scale}
	g := &bench.Grid{}
	for n := range int64(3) {
		g.Rows = append(g.Rows, bench.Span{Low: at(10 + 2*n), High: at(11 + 2*n)})
		g.Cols = append(g.Cols, bench.Span{Low: at(30 + 2*n), High: at(31 + 2*n)})
	}
	for _, row := range [][]int64{{50, 50, 60}, {50, 50, 60}, {40, 40, 50}} {
		var cells []bench.Pack
		for _, n := range row {
			cells = append(cells, bench.Pack{Stack: bench.Stack{Total: at(n)}})
		}
		g.Cells = append(g.Cells, cells)
	}
	b := newBuilder(&card.Card{Procedure: &procedure.Procedure{}, Shop: &shop.Shop{}})
	i := &card.Shim{Stock: &shop.Stock{}, Inputs: []*card.ShimInput{in, in}, Grid: g}
	tables := b.grid("", i, false, in)
	if len(tables) != 1 {
		t.Fatalf("%d tables", len(tables))
	}
	var got []string
	for _, row := range append([][][]render.Run{tables[0].table.Head}, tables[0].table.Rows...) {
		got = append(got, joined(row))
	}
	want := []string{" | 0.30 to 0.33 | 0.34 to 0.35", "0.10 to 0.13 | 0.5 | 0.6", "0.14 to 0.15 | 0.4 | 0.5"}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
