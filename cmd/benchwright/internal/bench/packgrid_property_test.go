package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"
)

// A grid is no larger than is asked for where the rule has room, and where it
// has none the axis that moves the pack more is cut finer, the other left.
func TestPackGridSize(t *testing.T) {
	s := stacks(t, thicknesses(t, metricStock), 1, 8)
	one := big.NewRat(1, 1)
	for _, c := range []struct {
		why        string
		rows, cols Axis
		within     string
		down, over int // spans
	}{
		{"three and four marks to a span", Axis{marksOf(80, 109), one}, Axis{marksOf(5, 24), num(t, "-1")}, "0.10", 10, 5},
		{"one mark more takes longer spans", Axis{marksOf(80, 110), one}, Axis{marksOf(5, 25), num(t, "-1")}, "0.10", 8, 5},
		{"fewer marks than spans", Axis{marksOf(80, 84), one}, Axis{marksOf(5, 7), num(t, "-1")}, "0.10", 5, 3},
		{"the rows move it more", Axis{marksOf(80, 109), one}, Axis{marksOf(5, 24), num(t, "-0.1")}, "0.008", 30, 5},
		{"the columns move it more", Axis{marksOf(80, 109), num(t, "0.1")}, Axis{marksOf(5, 24), num(t, "-1")}, "0.008", 10, 20},
	} {
		rule := PackRule{Stacks: s, Within: num(t, c.within), Over: new(big.Rat), Round: num(t, "0.01"), Safe: Thinner}
		base := num(t, "1.00")
		g, miss := PackGrid(c.rows, c.cols, base, rule, 10, 5)
		if miss != nil {
			t.Errorf("%s: %+v", c.why, miss)
			continue
		}
		if len(g.Rows) != c.down || len(g.Cols) != c.over || len(g.Cells) != c.down || len(g.Cells[0]) != c.over {
			t.Errorf("%s: %d × %d, want %d × %d", c.why, len(g.Rows), len(g.Cols), c.down, c.over)
		}
	}
}

// The first cell that has no pack is named by its lowest marks, with the pack
// that is wanted there, and all such cells are counted.
func TestPackGridMiss(t *testing.T) {
	s := stacks(t, thicknesses(t, "0.10"), 1, 3)
	rule := PackRule{Stacks: s, Within: num(t, "0.01"), Over: new(big.Rat), Round: num(t, "0.01"), Safe: Thinner}
	rows, cols := Axis{[]*big.Rat{num(t, "0.1"), num(t, "0.2")}, num(t, "1")}, Axis{[]*big.Rat{num(t, "0.1"), num(t, "0.2"), num(t, "0.3")}, num(t, "2")}
	// Wanted: 0.3 0.5 0.7 and 0.4 0.6 0.8; three shims make 0.3 at most.
	_, miss := PackGrid(rows, cols, new(big.Rat), rule, 9, 9)
	if miss == nil || miss.Fault != PackNone || miss.Row.Cmp(num(t, "0.1")) != 0 || miss.Col.Cmp(num(t, "0.2")) != 0 || miss.Want.Cmp(num(t, "0.5")) != 0 || miss.Count != 5 {
		t.Errorf("%+v", miss)
	}
}

// The middle of a chain stands for what both axes add, whatever their rates.
func TestSumsProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 9))
	for range 100 {
		axis := func() Axis {
			low := r.Int64N(50)
			return Axis{marksOf(low, low+r.Int64N(8)), big.NewRat(r.Int64N(40)-20, 10)}
		}
		a, b := axis(), axis()
		s := Sums(a, b)
		held := map[string]bool{}
		for i, m := range s.Marks {
			if i > 0 && m.Cmp(s.Marks[i-1]) <= 0 {
				t.Fatalf("%s after %s", m, s.Marks[i-1])
			}
			if s.share(m).Cmp(m) != 0 {
				t.Fatalf("%s stands for %s", m, s.share(m))
			}
			held[m.RatString()] = true
		}
		for _, x := range a.Marks {
			for _, y := range b.Marks {
				if sum := new(big.Rat).Add(a.share(x), b.share(y)); !held[sum.RatString()] {
					t.Fatalf("%s and %s: no mark for %s", x, y, sum)
				}
			}
		}
	}
}

// The order in which a shop lists its shims says nothing.
func TestStockInAnyOrder(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 10))
	sorted := thicknesses(t, metricStock)
	a := stacks(t, sorted, 1, 5)
	for range 30 {
		mixed := append([]Thickness(nil), sorted...)
		r.Shuffle(len(mixed), func(i, j int) { mixed[i], mixed[j] = mixed[j], mixed[i] })
		b := stacks(t, mixed, 1, 5)
		for hundredths := int64(10); hundredths < 200; hundredths += 3 {
			aim := big.NewRat(hundredths, 100)
			x, okX := a.Make(aim, num(t, "0.01"), Thicker)
			y, okY := b.Make(aim, num(t, "0.01"), Thicker)
			if okX != okY || x.text() != y.text() {
				t.Fatalf("%s: %s, and %s of %v", aim, x.text(), y.text(), mixed)
			}
		}
	}
}
