package deck

import (
	"math/big"
	"strconv"
	"testing"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/render"
)

// A unit that is not filled with air is filled with what its manual names.
func TestLeakTestNamesItsGas(t *testing.T) {
	for gas, want := range map[procedure.Fluid]string{procedure.Air: "Pump up to", procedure.Nitrogen: "Fill with nitrogen to"} {
		b := newBuilder(&card.Card{Procedure: &procedure.Procedure{}, Shop: &shop.Shop{}})
		length := quantity.Value{Number: quantity.Number{Text: "10"}}
		got := b.leakTest(&card.LeakTest{Measurement: &card.Measurement{Measurement: &procedure.Measurement{}},
			Block: &procedure.LeakTest{Fluid: gas, Allowed: &length, HoldTime: length}})
		if panel := got[0].Content.(render.Setting); panel.Label != want {
			t.Errorf("%s: %q, want %q", gas, panel.Label, want)
		}
	}
}

// Whatever the shop's temperatures, the table gives the reading of their
// difference, each start has one column, and the row without a change is marked.
func TestEndReadingsNeedNoSum(t *testing.T) {
	kPa, _ := quantity.UnitOf("kPa")
	for _, c := range []struct {
		unit      string
		low, high int64
		most      int64
		degree    *big.Rat
	}{{"°C", 15, 25, 5, nil}, {"°C", -4, 30, 5, nil}, {"°C", 20, 20, 5, nil}, {"°F", 59, 77, 9, big.NewRat(5, 9)}} {
		degrees, _ := quantity.UnitOf(c.unit)
		gauge := &shop.Gauge{Scale: quantity.Scale{Unit: kPa, Step: big.NewRat(1, 5)}}
		hold := bench.Hold{Gauge: gauge.Scale, Start: big.NewRat(35, 1), Atmosphere: big.NewRat(101, 1),
			Coldest: big.NewRat(15, 1), Warmest: big.NewRat(25, 1), Change: big.NewRat(2, 1), Degree: c.degree}
		rows, ok := hold.EndReadings(c.most)
		if !ok {
			t.Fatal("no rows")
		}
		test := &card.LeakTest{Measurement: &card.Measurement{Measurement: &procedure.Measurement{}, Gauge: gauge}, Block: &procedure.LeakTest{},
			Thermometer: &shop.Gauge{Scale: quantity.Scale{Unit: degrees, Step: big.NewRat(1, 1)}},
			Shop:        &quantity.Marks{Low: big.NewRat(c.low, 1), High: big.NewRat(c.high, 1)}, MaxDegrees: c.most, Rows: rows}
		b := newBuilder(&card.Card{Procedure: &procedure.Procedure{}, Shop: &shop.Shop{}})
		seen := map[int64]bool{}
		for _, table := range b.endReadings(test) {
			marked := -1
			for i, m := range table.table.Marked {
				if m {
					marked = i
				}
			}
			starts := temperatures(t, table.table.Rows[marked])
			for _, s := range starts {
				if seen[s] {
					t.Errorf("%s: %d stands in two columns", c.unit, s)
				}
				seen[s] = true
			}
			for _, row := range table.table.Rows {
				last := row[len(row)-1][0].Text
				for i, end := range temperatures(t, row) {
					want := gauge.Scale.Number(rows[c.most+end-starts[i]].Mark, quantity.Point)
					if last != want {
						t.Errorf("%s: from %d to %d: %s, want %s", c.unit, starts[i], end, last, want)
					}
				}
			}
		}
		for s := c.low; s <= c.high; s++ { // between two columns the colder one serves
			if !seen[s] && !seen[s-1] {
				t.Errorf("%s: no column for %d", c.unit, s)
			}
		}
	}
}

func temperatures(t *testing.T, row [][]render.Run) []int64 {
	t.Helper()
	var out []int64
	for _, cell := range row[1 : len(row)-1] {
		text, sign := []rune(cell[0].Text), int64(1)
		if text[0] == '−' {
			text, sign = text[1:], -1
		}
		n, err := strconv.ParseInt(string(text), 10, 64)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, sign*n)
	}
	return out
}
