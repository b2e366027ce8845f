package bench

import (
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"
)

func thicknesses(t testing.TB, list string) (out []Thickness) {
	t.Helper()
	for f := range strings.FieldsSeq(list) {
		out = append(out, Thickness{Value: num(t, f)})
	}
	return out
}

func stacks(t testing.TB, stock []Thickness, least, most int) *Stacks {
	t.Helper()
	s, ok := NewStacks(stock, least, most)
	if !ok {
		t.Fatalf("no stacks of %v", stock)
	}
	return s
}

// text prints a stack as a sum: "0.40+0.18".
func (s Stack) text() string {
	var out []string
	for _, x := range s.Shims {
		out = append(out, x.FloatString(2))
	}
	return strings.Join(out, "+")
}

func TestShimChange(t *testing.T) {
	for _, c := range []struct{ aim, reading, rate, want string }{
		// Recomputed: 0.10/0.651.
		{"0.20", "0.30", "-0.651", "0.154"},
		{"0.20", "0.30", "0.651", "-0.154"},
		{"0.20", "0.20", "0.651", "0.000"},
	} {
		got, ok := ShimChange(num(t, c.aim), num(t, c.reading), num(t, c.rate))
		if !ok || !near(t, got, c.want, 3) {
			t.Errorf("%+v: %v", c, got)
		}
		back := new(big.Rat).Mul(got, num(t, c.rate))
		if back.Add(back, num(t, c.reading)).Cmp(num(t, c.aim)) != 0 {
			t.Errorf("%+v: reading + rate·change is %s", c, back)
		}
	}
	if _, ok := ShimChange(num(t, "0.2"), num(t, "0.3"), new(big.Rat)); ok {
		t.Error("a rate of 0")
	}
}

// TM 9-2320-280-34 p. 19-12 table 9-1: change = (old − new) × 0.001 in.
func TestMarkChange(t *testing.T) {
	for _, c := range []struct{ old, now, want string }{
		{"-3", "2", "-0.005"}, {"2", "-3", "0.005"}, {"1", "1", "0"},
	} {
		if got := MarkChange(num(t, c.old), num(t, c.now), num(t, "-0.001")); got.Cmp(num(t, c.want)) != 0 {
			t.Errorf("%s to %s: %s, want %s", c.old, c.now, got.FloatString(4), c.want)
		}
	}
}

const metricStock = "0.10 0.12 0.15 0.18 0.30 0.40 0.50"

// Worked out by hand and recomputed by exhaustive search.
func TestMake(t *testing.T) {
	for _, c := range []struct{ aim, within, want string }{
		{"0.76", "0", "0.40+0.18+0.18"},
		{"0.92", "0", "0.50+0.30+0.12"}, // or 0.40+0.40+0.12: the thickest single shim
		{"1.15", "0", "0.50+0.50+0.15"},
		{"0.53", "0", "0.18+0.15+0.10+0.10"},
		{"0.53", "0.01", "0.40+0.12"},
		{"0.77", "0", "0.50+0.15+0.12"},
		{"0.41", "0", ""}, // cannot be made
		{"0.41", "0.01", "0.40"},
		{"0.05", "0.01", ""},
		{"-0.2", "0.1", ""},
		{"1e30", "1", ""},
		{"0.76", "-1", ""},
	} {
		got, ok := stacks(t, thicknesses(t, metricStock), 1, 6).Make(num(t, c.aim), num(t, c.within), Thinner)
		if got.text() != c.want || ok != (c.want != "") {
			t.Errorf("%s within %s: %s, want %s", c.aim, c.within, got.text(), c.want)
		}
	}
}

func TestMakeSafeSide(t *testing.T) {
	s := stacks(t, thicknesses(t, "0.10 0.12"), 1, 3)
	for side, want := range map[Side]string{Thinner: "0.10", Thicker: "0.12"} {
		if got, _ := s.Make(num(t, "0.11"), num(t, "0.01"), side); got.text() != want {
			t.Errorf("side %d: %s, want %s", side, got.text(), want)
		}
	}
	// Nearness comes before the safe side.
	if got, _ := s.Make(num(t, "0.109"), num(t, "0.02"), Thicker); got.text() != "0.10" {
		t.Errorf("0.109: %s", got.text())
	}
}

func TestMakeCounts(t *testing.T) {
	stock := thicknesses(t, "0.10 0.30 0.50")
	stock[2].AtMost = 1
	for _, c := range []struct {
		least, most int
		aim, want   string
	}{
		{1, 6, "1.00", "0.50+0.30+0.10+0.10"}, // and not two of 0.50
		{1, 3, "1.00", ""},
		{2, 6, "0.50", "0.30+0.10+0.10"}, // and not one of 0.50
		{0, 2, "0.00", ""},
	} {
		got, ok := stacks(t, stock, c.least, c.most).Make(num(t, c.aim), new(big.Rat), Thinner)
		switch {
		case c.least == 0:
			if !ok || len(got.Shims) != 0 {
				t.Errorf("no shim at all: %s", got.text())
			}
		case got.text() != c.want:
			t.Errorf("%+v: %s", c, got.text())
		}
	}
	for _, c := range []struct {
		stock       string
		least, most int
	}{{"", 1, 2}, {"0.1", 2, 1}, {"0.1", -1, 1}, {"0.1", 0, 0}, {"0 0.1", 1, 2}, {"-0.1", 1, 2}, {"1e-40 1", 1, 2},
		{"0.10 0.127 0.1524 0.18 0.2032 0.254 0.30 0.35 0.4064 0.50 0.762 1.00", 1, 60},
		{"0.10 0.15 0.20 0.30 0.50 1.00", 1, 400}} { // few sums, and slow
		if _, ok := NewStacks(thicknesses(t, c.stock), c.least, c.most); ok {
			t.Errorf("%+v was taken", c)
		}
	}
}

func TestBesideAndBuy(t *testing.T) {
	for _, c := range []struct {
		most                   int
		aim, below, above, buy string
	}{
		{6, "0.41", "0.40", "0.30+0.12", "0.41"},
		{6, "0.05", "", "0.10", "0.05"},
		{2, "0.91", "0.50+0.40", "0.50+0.50", "0.41"}, // 0.50 + 0.41
		{2, "0.80", "0.50+0.30", "0.50+0.30", "0.50"}, // it can be made: both are it
		{6, "3.41", "0.50+0.50+0.50+0.50+0.50+0.50", "", "3.41"},
	} {
		s := stacks(t, thicknesses(t, metricStock), 1, c.most)
		below, above := s.Beside(num(t, c.aim))
		for i, st := range []*Stack{below, above} {
			got := ""
			if st != nil {
				got = st.text()
			}
			if want := []string{c.below, c.above}[i]; got != want {
				t.Errorf("beside %s: %q, want %q", c.aim, got, want)
			}
		}
		buy := s.Buy(num(t, c.aim))
		if buy == nil || buy.Cmp(num(t, c.buy)) != 0 {
			t.Errorf("buy for %s: %v, want %s", c.aim, buy, c.buy)
		}
	}
	if buy := stacks(t, thicknesses(t, metricStock), 1, 6).Buy(new(big.Rat)); buy != nil {
		t.Errorf("buy for nothing: %s", buy)
	}
}

func TestLayers(t *testing.T) {
	for _, c := range [][2]string{
		{"0.50 0.40 0.15 0.12", "0.50+0.15+0.12+0.40"},
		{"0.50 0.30 0.12", "0.50+0.12+0.30"},
		{"0.50", "0.50"},
	} {
		var s Stack
		for _, x := range thicknesses(t, c[0]) {
			s.Shims = append(s.Shims, x.Value)
		}
		if got := (Stack{Shims: s.Layers()}).text(); got != c[1] {
			t.Errorf("%s: %s, want %s", c[0], got, c[1])
		}
	}
}

// exhaust finds the stack by trying every one, in whole hundredths. It shares
// nothing with Make.
func exhaust(stock []Thickness, least, most int, aim, within int64, safe Side) (best []int64, ok bool) {
	unit := make([]int64, len(stock))
	for i, s := range stock {
		h := new(big.Rat).Mul(s.Value, big.NewRat(100, 1))
		unit[i] = h.Num().Int64()
	}
	var total int64
	abs := func(x int64) int64 { return max(x, -x) }
	sumOf := func(list []int64) (s int64) {
		for _, x := range list {
			s += x
		}
		return s
	}
	better := func(a, b []int64) bool {
		if len(a) != len(b) {
			return len(a) < len(b)
		}
		da, db := sumOf(a)-aim, sumOf(b)-aim
		if abs(da) != abs(db) {
			return abs(da) < abs(db)
		}
		if da != db {
			return (da > 0) == (safe == Thicker)
		}
		for i := range a {
			if a[i] != b[i] {
				return a[i] > b[i]
			}
		}
		return false
	}
	var try func(kind int, have []int64)
	try = func(kind int, have []int64) {
		if kind < 0 {
			if len(have) >= least && abs(total-aim) <= within && (!ok || better(have, best)) {
				best, ok = append([]int64(nil), have...), true
			}
			return
		}
		for n := 0; len(have)+n <= most && (stock[kind].AtMost == 0 || n <= stock[kind].AtMost); n++ {
			next := append([]int64(nil), have...)
			for range n {
				next = append(next, unit[kind])
			}
			total += int64(n) * unit[kind]
			try(kind-1, next)
			total -= int64(n) * unit[kind]
		}
	}
	try(len(stock)-1, nil)
	return best, ok
}

func TestMakeAgainstExhaustion(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 5))
	for range 300 {
		var stock []Thickness
		at := int64(4)
		for range 1 + rng.IntN(6) {
			at += 1 + int64(rng.IntN(12))
			stock = append(stock, Thickness{big.NewRat(at, 100), rng.IntN(4)})
		}
		least := rng.IntN(2)
		most := least + 1 + rng.IntN(4)
		aim, within, side := int64(rng.IntN(160)), int64(rng.IntN(3)), Side(rng.IntN(2))
		want, wantOK := exhaust(stock, least, most, aim, within, side)
		s := stacks(t, stock, least, most)
		got, ok := s.Make(big.NewRat(aim, 100), big.NewRat(within, 100), side)
		same := ok == wantOK && len(got.Shims) == len(want)
		for i := 0; same && i < len(want); i++ {
			same = got.Shims[i].Cmp(big.NewRat(want[i], 100)) == 0
		}
		if !same {
			t.Fatalf("%v, %d to %d shims, aim %d ±%d: %s, want %v", stock, least, most, aim, within, got.text(), want)
		}
		if ok {
			continue
		}
		// What is offered instead is true: no stack lies between the two, and
		// the thickness to buy makes the aim.
		below, above := s.Beside(big.NewRat(aim, 100))
		for d := within + 1; d < 400; d++ {
			if _, can := exhaust(stock, least, most, aim, d, side); can {
				far := big.NewRat(d, 100)
				hit := false
				for _, st := range []*Stack{below, above} {
					hit = hit || st != nil && new(big.Rat).Abs(new(big.Rat).Sub(st.Total, big.NewRat(aim, 100))).Cmp(far) == 0
				}
				if !hit {
					t.Fatalf("%v aim %d: neither beside is %d away", stock, aim, d)
				}
				break
			}
		}
		if buy := s.Buy(big.NewRat(aim, 100)); buy != nil {
			more := stacks(t, append(append([]Thickness(nil), stock...), Thickness{Value: buy}), least, most)
			if _, can := more.Make(big.NewRat(aim, 100), new(big.Rat), side); !can {
				t.Fatalf("%v aim %d: %s does not help", stock, aim, buy)
			}
		}
	}
}

// A table of 200 packs from 12 thicknesses with up to 6 shims each.
func BenchmarkMake200(b *testing.B) {
	stock := thicknesses(b, "0.10 0.12 0.15 0.18 0.20 0.25 0.30 0.35 0.40 0.50 0.75 1.00")
	for b.Loop() {
		s, _ := NewStacks(stock, 1, 6)
		for i := range int64(200) {
			s.Make(big.NewRat(40+2*i, 100), big.NewRat(1, 100), Thinner)
		}
	}
}

// The same of inch and metric shims together, where nearly no two stacks are
// equally thick.
func BenchmarkMake200Mixed(b *testing.B) {
	stock := thicknesses(b, "0.10 0.127 0.1524 0.18 0.2032 0.254 0.30 0.35 0.4064 0.50 0.762 1.00")
	for b.Loop() {
		s, _ := NewStacks(stock, 1, 6)
		for i := range int64(200) {
			s.Make(big.NewRat(40+2*i, 100), big.NewRat(1, 100), Thinner)
		}
	}
}
