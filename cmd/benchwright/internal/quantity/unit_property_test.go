package quantity

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"testing"
)

// Conversions of random values: there and back is the value; by way of a third
// unit is the straight way; more stays more; and a difference converts as the
// difference of what is converted.
func TestConvertProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for range 3000 {
		d := Length + Dimension(r.IntN(int(MassFlow-Length)+1))
		units := Units(d)
		pick := func() Unit { return units[r.IntN(len(units))] }
		a, b, c := pick(), pick(), pick()
		x := big.NewRat(r.Int64N(2_000_000)-1_000_000, 1+r.Int64N(2000))
		y := Convert(x, a, b)
		if back := Convert(y, b, a); back.Cmp(x) != 0 {
			t.Fatalf("%s %s is %s %s, and that is %s", x, a.Symbol, y, b.Symbol, back)
		}
		if via := Convert(y, b, c); via.Cmp(Convert(x, a, c)) != 0 {
			t.Fatalf("%s %s by %s to %s is not the straight way", x, a.Symbol, b.Symbol, c.Symbol)
		}
		more := new(big.Rat).Add(x, big.NewRat(1+r.Int64N(100), 1000))
		moved := Convert(more, a, b)
		if moved.Cmp(y) <= 0 {
			t.Fatalf("%s %s is less in %s than %s", more, a.Symbol, b.Symbol, x)
		}
		gap := Convert(new(big.Rat).Sub(more, x), a.Difference(), b.Difference())
		if moved.Sub(moved, y).Cmp(gap) != 0 {
			t.Fatalf("a gap of %s to %s: %s and %s", a.Symbol, b.Symbol, moved, gap)
		}
	}
}

// No unit converts to one of another kind.
func TestConvertKeepsKind(t *testing.T) {
	one := big.NewRat(1, 1)
	for d := Length; d <= MassFlow; d++ {
		for e := Length; e <= MassFlow; e++ {
			if got := Convert(one, Units(d)[0], Units(e)[0]); (got == nil) != (d != e) {
				t.Errorf("%s to %s: %v", d, e, got)
			}
		}
	}
}

// Floor and Ceil are the marks at either side of a value, the same on a mark,
// and never a step apart or more.
func TestMarksProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		s := Scale{Step: big.NewRat(1+r.Int64N(40), 1+r.Int64N(400))}
		x := big.NewRat(r.Int64N(200_000)-100_000, 1+r.Int64N(3000))
		low, high := s.Floor(x), s.Ceil(x)
		if !per(low, s.Step).IsInt() || !per(high, s.Step).IsInt() || low.Cmp(x) > 0 || high.Cmp(x) < 0 {
			t.Fatalf("%s on marks of %s: %s and %s", x, s.Step, low, high)
		}
		switch gap := new(big.Rat).Sub(high, low); {
		case per(x, s.Step).IsInt() && gap.Sign() != 0, !per(x, s.Step).IsInt() && gap.Cmp(s.Step) != 0:
			t.Fatalf("%s on marks of %s: %s and %s", x, s.Step, low, high)
		}
	}
}

// StepWithin is no more than it may be, and the next coarser one would be: its
// coarser neighbors are at most two and a half times it.
func TestStepWithinProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 3))
	steps := map[string]bool{}
	for e := -9; e <= 9; e++ {
		for _, f := range []int64{1, 2, 5} {
			steps[times(power(e), big.NewRat(f, 1)).RatString()] = true
		}
	}
	for range 2000 {
		most := big.NewRat(1+r.Int64N(1_000_000), 1+r.Int64N(10_000))
		got := StepWithin(most)
		if got.Cmp(most) > 0 || !steps[got.RatString()] {
			t.Fatalf("%s: a step of %s", most, got)
		}
		for _, by := range []string{"2", "5/2"} {
			if next := times(got, ratio(by)); steps[next.RatString()] && next.Cmp(most) <= 0 {
				t.Fatalf("%s: a step of %s, and %s would do", most, got, next)
			}
		}
	}
}

// What is printed of a mark reads as that mark again, with either decimal mark
// and as a fraction.
func TestPrintedReadsAgain(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 4))
	mm := unit(t, "mm")
	for range 2000 {
		s := Scale{Unit: mm, Step: ratio([]string{"1", "1/2", "1/10", "1/20", "1/1000", "1/64", "1/32", "5", "1/3"}[r.IntN(9)])}
		s.Fractions = r.IntN(3) == 0
		x := times(s.Step, big.NewRat(r.Int64N(4000)-2000, 1))
		for _, mark := range []DecimalMark{Point, Comma} {
			text := s.Print(x, mark)
			v, p := ParseValue(text, mark)
			if p != nil || v.Value.Cmp(x) != 0 || v.Unit != mm {
				t.Fatalf("%s on marks of %s is printed %q: %v, %v", x, s.Step, text, v.Value, p)
			}
		}
	}
}

// A second unit that is the first's conversion, each end rounded to nearest,
// agrees; one that is off by a whole last digit more than that does not.
func TestAlsoRoundsToNearest(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 5))
	pairs := [][2]string{{"N·m", "lbf·ft"}, {"lbf·in", "N·m"}, {"mm", "in"}, {"kPa", "psi"}}
	for range 1000 {
		p := pairs[r.IntN(len(pairs))]
		low := 1000 + r.Int64N(9000)
		first := band(t, fmt.Sprintf("%d.%d to %d.%d %s", low, 1+r.Int64N(9), low+10+r.Int64N(500), 1+r.Int64N(9), p[0]))
		exact := first.In(unit(t, p[1]))
		places := 2 + r.IntN(3)
		step := power(-places)
		nearest := func(x *big.Rat, more int64) string {
			n := times(round(per(x, step)), step)
			return n.Add(n, times(step, big.NewRat(more, 1))).FloatString(places)
		}
		write := func(a, b int64) Band {
			return band(t, nearest(exact.Low, a)+" to "+nearest(exact.High, b)+" "+p[1])
		}
		if got := CompareAlso(first, write(0, 0)); got == Disagrees {
			t.Fatalf("%s with %s: disagrees", first.Written, write(0, 0).Written)
		}
		for _, off := range [][2]int64{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
			second := write(off[0], off[1])
			half := func(x, y *big.Rat) bool { // just between two steps, where either is right
				d := new(big.Rat).Sub(x, y)
				return times(d.Abs(d), big.NewRat(2, 1)).Cmp(step) <= 0
			}
			if half(second.Low, exact.Low) && half(second.High, exact.High) {
				continue
			}
			if got := CompareAlso(first, second); got != Disagrees {
				t.Fatalf("%s with %s: verdict %d", first.Written, second.Written, got)
			}
		}
	}
}
