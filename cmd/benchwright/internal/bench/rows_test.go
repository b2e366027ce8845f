package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

func TestRows(t *testing.T) {
	cuts := []*big.Rat{num(t, "0.10"), num(t, "0.15"), num(t, "0.155"), num(t, "0.20"), num(t, "0.205")}
	mm := quantity.Scale{Unit: unit("mm"), Step: num(t, "0.01")}
	got := Rows(cuts, unit("mm"), mm)
	want := [][2]string{{"0.10", "0.15"}, {"", ""}, {"0.16", "0.20"}, {"", ""}}
	for i, w := range want {
		if w[0] == "" {
			if got[i].Low != nil {
				t.Errorf("row %d has marks", i)
			}
			continue
		}
		if got[i].Low == nil || got[i].Low.Cmp(num(t, w[0])) != 0 || got[i].High.Cmp(num(t, w[1])) != 0 {
			t.Errorf("row %d: %v", i, got[i])
		}
	}
	for _, bad := range [][]*big.Rat{nil, cuts[:1], {cuts[1], cuts[0]}, {cuts[0], cuts[0]}} {
		if Rows(bad, unit("mm"), mm) != nil {
			t.Errorf("%v made rows", bad)
		}
	}
	if Rows(cuts, unit("N"), mm) != nil {
		t.Error("newtons on a millimetre scale")
	}
}

// In either unit every mark of the span lies in exactly one row, and in the
// row whose cuts hold it.
func TestRowsHaveNoHoles(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 2))
	for range 100 {
		at := int64(rng.IntN(50))
		cuts := []*big.Rat{big.NewRat(at, 1000)}
		for range 2 + rng.IntN(8) {
			at += 1 + int64(rng.IntN(60))
			cuts = append(cuts, big.NewRat(at, 1000))
		}
		for _, s := range []quantity.Scale{{Unit: unit("mm"), Step: num(t, "0.01")}, {Unit: unit("in"), Step: num(t, "0.001")}} {
			rows := Rows(cuts, unit("mm"), s)
			if fault, i := CheckRows(rows, s.Step); fault != RowsGood {
				t.Fatalf("%v in %s: fault %d at row %d", cuts, s.Unit.Symbol, fault, i)
			}
			end := quantity.Convert(cuts[len(cuts)-1], unit("mm"), s.Unit)
			for m := s.Ceil(quantity.Convert(cuts[0], unit("mm"), s.Unit)); m.Cmp(end) <= 0; m = new(big.Rat).Add(m, s.Step) {
				in := 0
				for i, r := range rows {
					if r.Low == nil || m.Cmp(r.Low) < 0 || m.Cmp(r.High) > 0 {
						continue
					}
					in++
					back := quantity.Convert(m, s.Unit, unit("mm"))
					if back.Cmp(cuts[i]) < 0 || back.Cmp(cuts[i+1]) > 0 {
						t.Errorf("%s lies in row %d", back.FloatString(4), i)
					}
				}
				if in != 1 {
					t.Errorf("%s %s lies in %d rows", m.FloatString(3), s.Unit.Symbol, in)
				}
			}
		}
	}
}

func TestCheckRows(t *testing.T) {
	rows := func(list ...string) (out []Row) {
		for i := 0; i < len(list); i += 2 {
			out = append(out, Row{num(t, list[i]), num(t, list[i+1])})
		}
		return out
	}
	for _, c := range []struct {
		why   string
		rows  []Row
		fault RowFault
		at    int
	}{
		// Published, but wrong: a public truck manual has these rows beside each
		// other; an inch reader at 0.191 has no row.
		{"the inches of a truck manual", rows("0.180", "0.190", "0.192", "0.201"), RowHole, 1},
		{"its millimetres", rows("4.574", "4.843", "4.844", "5.113"), RowsGood, 0},
		{"mended", rows("0.180", "0.190", "0.191", "0.201"), RowsGood, 0},
		{"a mark in both", rows("0.180", "0.190", "0.190", "0.201"), RowOverlap, 1},
		{"falling", rows("0.191", "0.201", "0.180", "0.190"), RowOverlap, 1},
		{"backward", rows("0.180", "0.190", "0.201", "0.191"), RowBackward, 1},
		{"none", nil, RowsGood, 0},
	} {
		if fault, at := CheckRows(c.rows, num(t, "0.001")); fault != c.fault || at != c.at {
			t.Errorf("%s: fault %d at %d", c.why, fault, at)
		}
	}
}
