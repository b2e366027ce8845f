package bench

import (
	"math/big"
	"math/rand/v2"
	"slices"
	"testing"
)

// marksOf returns the marks from low to high in steps of a hundredth.
func marksOf(low, high int64) (out []*big.Rat) {
	for m := low; m <= high; m++ {
		out = append(out, big.NewRat(m, 100))
	}
	return out
}

// rowAt returns the row that holds a mark, nil where none does.
func rowAt(rows []PackRow, mark *big.Rat) *PackRow {
	i := slices.IndexFunc(rows, func(r PackRow) bool { return r.Low.Cmp(mark) <= 0 && mark.Cmp(r.High) <= 0 })
	if i < 0 {
		return nil
	}
	return &rows[i]
}

// wantedPack is the pack that brings a reading to its aim, where the
// reading was taken with the pack inPlace:
//
//	wanted = in place + (aim − reading)/rate
//
// all in one unit; ok is false for a rate of 0.
func wantedPack(inPlace, aim, reading, rate *big.Rat) (wanted *big.Rat, ok bool) {
	change, ok := ShimChange(aim, reading, rate)
	if !ok {
		return nil, false
	}
	return change.Add(change, inPlace), true
}

// setUp is the pack wanted where a reading was taken over a set-up pack.
func setUp(t *testing.T, inPlace, aim, rate string) func(*big.Rat) *big.Rat {
	return func(m *big.Rat) *big.Rat {
		w, ok := wantedPack(num(t, inPlace), num(t, aim), m, num(t, rate))
		if !ok {
			t.Fatal("no rate")
		}
		return w
	}
}

// Worked out by hand: gap 0.40 wanted, set-up pack 1.00, a thicker pack closes
// the gap by as much; packs in steps of 0.05.
func TestPackRows(t *testing.T) {
	rule := PackRule{Stacks: stacks(t, thicknesses(t, metricStock), 1, 4), Within: num(t, "0.03"), Over: num(t, "0.01"), Round: num(t, "0.05"), Safe: Thinner}
	rows, miss := PackRows(marksOf(18, 62), setUp(t, "1.00", "0.40", "-1"), rule)
	if miss != nil {
		t.Fatalf("%+v", miss)
	}
	want := [][3]string{
		{"0.18", "0.22", "0.50+0.30"}, {"0.23", "0.27", "0.40+0.30+0.15"}, {"0.28", "0.32", "0.50+0.40"},
		{"0.33", "0.37", "0.50+0.30+0.15"}, {"0.38", "0.42", "0.50+0.50"}, {"0.43", "0.47", "0.50+0.40+0.15"},
		{"0.48", "0.52", "0.50+0.50+0.10"}, {"0.53", "0.57", "0.50+0.50+0.15"}, {"0.58", "0.62", "0.50+0.40+0.30"},
	}
	if len(rows) != len(want) {
		t.Fatalf("%d rows, want %d", len(rows), len(want))
	}
	for i, w := range want {
		r := rows[i]
		if r.Low.Cmp(num(t, w[0])) != 0 || r.High.Cmp(num(t, w[1])) != 0 || r.text() != w[2] {
			t.Errorf("row %d: %s to %s: %s, want %v", i, r.Low.FloatString(2), r.High.FloatString(2), r.text(), w)
		}
		if d := new(big.Rat).Sub(r.To, r.Total); d.Cmp(rule.Over) != 0 {
			t.Errorf("row %d: may measure %s", i, r.To.FloatString(3))
		}
	}
	// 0.46 over the set-up pack is 0.06 too much: 1.05 from three shims.
	if r := rowAt(rows, num(t, "0.46")); r == nil || r.Total.Cmp(num(t, "1.05")) != 0 {
		t.Errorf("at 0.46: %v", r)
	}
	if rowAt(rows, num(t, "0.63")) != nil {
		t.Error("a row at 0.63")
	}
}

func TestPackMiss(t *testing.T) {
	s := stacks(t, thicknesses(t, "0.10 0.30"), 1, 2)
	for _, c := range []struct {
		why           string
		low, high     int64
		within, round string
		fault         PackFault
		mark          string
		count         int
	}{
		{"0.20 to 0.60 can be made, all within 0.10", 40, 80, "0.10", "", PackGood, "", 0},
		{"0.61 is too much", 39, 80, "0.10", "", PackGood, "", 0},
		{"0.71 and 0.72 are too much", 28, 80, "0.10", "", PackNone, "0.28", 2},
		{"0.38 and 0.42 are not within 0.01 of 0.40", 58, 62, "0.01", "", PackNone, "0.58", 2},
		{"less than nothing", 102, 104, "0.01", "", PackBelow, "1.02", 3},
		{"five marks to a pack, and only 0.01 for it", 58, 62, "0.01", "0.05", PackSpread, "0.58", 5},
		{"no marks", 5, 4, "0.01", "", PackNothing, "", 0},
	} {
		rule := PackRule{Stacks: s, Within: num(t, c.within), Over: new(big.Rat), Safe: Thinner}
		if c.round != "" {
			rule.Round = num(t, c.round)
		}
		rows, miss := PackRows(marksOf(c.low, c.high), setUp(t, "0.40", "0.60", "1"), rule)
		switch {
		case miss == nil:
			if c.fault != PackGood || rows == nil {
				t.Errorf("%s: no fault", c.why)
			}
		case miss.Fault != c.fault || miss.Count != c.count || c.mark != "" && miss.Mark.Cmp(num(t, c.mark)) != 0:
			t.Errorf("%s: %+v", c.why, miss)
		}
	}
	if _, ok := ShimChange(num(t, "0.2"), num(t, "0.3"), new(big.Rat)); ok {
		t.Error("a rate of 0")
	}
}

func TestPackStep(t *testing.T) {
	for _, c := range []struct {
		x, want string
		safe    Side
	}{
		{"0.975", "0.95", Thinner}, {"0.975", "1.00", Thicker}, {"0.98", "1.00", Thinner}, {"0.974", "0.95", Thicker},
		{"1.00", "1.00", Thinner}, {"1.00", "1.00", Thicker}, {"-0.02", "0.00", Thinner},
	} {
		r := PackRule{Round: num(t, "0.05"), Safe: c.safe}
		if got := r.step(num(t, c.x)); got.Cmp(num(t, c.want)) != 0 {
			t.Errorf("%s: %s, want %s", c.x, got.FloatString(3), c.want)
		}
	}
}

// For every mark of the span and every pack that the card accepts, the reading
// comes to the aim as nearly as the rule asks for; the rows cover the span; the
// packs rise or fall throughout.
func TestPackRowsProperties(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 4))
	s := stacks(t, thicknesses(t, metricStock), 1, 6)
	made := 0
	for range 200 {
		rate := big.NewRat(int64(30+rng.IntN(100)), 100)
		if rng.IntN(2) == 0 {
			rate.Neg(rate)
		}
		rule := PackRule{Stacks: s, Within: big.NewRat(int64(1+rng.IntN(5)), 100), Over: big.NewRat(int64(rng.IntN(2)), 100), Safe: Side(rng.IntN(2))}
		if rng.IntN(2) == 0 {
			rule.Round = big.NewRat(int64(1+rng.IntN(5)), 100)
		}
		aim := big.NewRat(int64(10+rng.IntN(30)), 100)
		inPlace := big.NewRat(int64(80+rng.IntN(60)), 100)
		low := int64(rng.IntN(30))
		marks := marksOf(low, low+int64(rng.IntN(40)))
		want := func(m *big.Rat) *big.Rat { w, _ := wantedPack(inPlace, aim, m, rate); return w }
		rows, miss := PackRows(marks, want, rule)
		if miss != nil {
			continue
		}
		made++
		var plain []Row
		for i, r := range rows {
			plain = append(plain, Row{r.Low, r.High})
			if i > 0 && (rows[i-1].Total.Cmp(r.Total) < 0) != (rate.Sign() < 0) {
				t.Fatalf("row %d does not follow: %s, %s", i, rows[i-1].Total.FloatString(3), r.Total.FloatString(3))
			}
		}
		if fault, at := CheckRows(plain, big.NewRat(1, 100)); fault != RowsGood || rows[0].Low.Cmp(marks[0]) != 0 || rows[len(rows)-1].High.Cmp(marks[len(marks)-1]) != 0 {
			t.Fatalf("rows: fault %d at %d", fault, at)
		}
		far := new(big.Rat).Abs(rate)
		far.Mul(far, rule.Within)
		for _, m := range marks {
			row := rowAt(rows, m)
			for _, pack := range []*big.Rat{row.From, row.Total, row.To} {
				after := new(big.Rat).Sub(pack, inPlace)
				after.Add(after.Mul(after, rate), m)
				if d := after.Sub(after, aim); d.Abs(d).Cmp(far) > 0 {
					t.Fatalf("reading %s, pack %s: %s off, at most %s", m.FloatString(2), pack.FloatString(3), d.FloatString(4), far.FloatString(4))
				}
			}
		}
	}
	if made < 40 {
		t.Errorf("only %d tables could be made", made)
	}
}
