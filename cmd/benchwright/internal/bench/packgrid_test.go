package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"
)

// TM 9-2320-280-34 p. 19-12 table 9-1: change = (old − new) × 0.001 in; old −3,
// new +2 takes 0.005 in out of a pack of 0.050 in.
func TestPackGridOfMarks(t *testing.T) {
	var marks []*big.Rat
	for m := int64(-5); m <= 5; m++ {
		marks = append(marks, big.NewRat(m, 1))
	}
	step := num(t, "0.001")
	old, now := Axis{marks, step}, Axis{marks, new(big.Rat).Neg(step)}
	rule := PackRule{Stacks: stacks(t, thicknesses(t, "0.002 0.003 0.005 0.010 0.020"), 1, 7), Within: num(t, "0.0005"), Over: num(t, "0.0005"), Round: step, Safe: Thinner}
	g, miss := PackGrid(old, now, num(t, "0.050"), rule, 20, 20)
	if miss != nil {
		t.Fatalf("%+v", miss)
	}
	for _, c := range []struct{ old, now, want string }{{"-3", "2", "0.045"}, {"2", "-3", "0.055"}, {"1", "1", "0.050"}} {
		if p := g.At(num(t, c.old), num(t, c.now)); p == nil || p.Total.Cmp(num(t, c.want)) != 0 {
			t.Errorf("%s to %s: %+v, want %s", c.old, c.now, p, c.want)
		}
	}
	if g.At(num(t, "6"), num(t, "0")) != nil {
		t.Error("a pack for mark 6")
	}
	if n := len(g.Packs()); n != 21 {
		t.Errorf("%d packs, want 21", n)
	}
	if _, miss := PackGrid(old, Axis{nil, step}, step, rule, 9, 9); miss == nil || miss.Fault != PackNothing {
		t.Error("a grid of nothing")
	}
	if _, miss := PackGrid(old, now, num(t, "0.005"), rule, 20, 20); miss == nil || miss.Fault == PackGood || miss.Count == 0 {
		t.Errorf("a pack of less than nothing: %+v", miss)
	}
}

// Every pair of marks lies in one cell, and whatever the micrometer accepts
// there is within the rule's distance of the pack that is wanted.
func TestPackGridProperties(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 8))
	s := stacks(t, thicknesses(t, metricStock), 1, 6)
	made := 0
	for range 60 {
		sign := func() *big.Rat { return big.NewRat(int64(1-2*rng.IntN(2)), 1) }
		rows := Axis{marksOf(80, 80+int64(rng.IntN(30))), big.NewRat(1, 1)}
		cols := Axis{marksOf(5, 5+int64(rng.IntN(30))), new(big.Rat).Quo(sign(), big.NewRat(int64(50+rng.IntN(80)), 100))}
		rule := PackRule{Stacks: s, Within: big.NewRat(int64(3+rng.IntN(6)), 100), Over: big.NewRat(1, 100), Round: big.NewRat(int64(1+rng.IntN(4)), 100), Safe: Side(rng.IntN(2))}
		base := big.NewRat(int64(rng.IntN(40)), 100)
		g, miss := PackGrid(rows, cols, base, rule, 10, 5)
		if miss != nil {
			continue
		}
		made++
		for _, r := range rows.Marks {
			for _, c := range cols.Marks {
				p := g.At(r, c)
				if p == nil {
					t.Fatalf("no cell for %s, %s", r.FloatString(2), c.FloatString(2))
				}
				want := new(big.Rat).Add(base, new(big.Rat).Add(rows.share(r), cols.share(c)))
				for _, end := range []*big.Rat{p.From, p.To} {
					if d := new(big.Rat).Sub(end, want); d.Abs(d).Cmp(rule.Within) > 0 {
						t.Fatalf("%s, %s: %s where %s is wanted", r.FloatString(2), c.FloatString(2), end.FloatString(3), want.FloatString(3))
					}
				}
			}
		}
	}
	if made < 20 {
		t.Errorf("only %d grids could be made", made)
	}
}

// The middle of a chain gives what both axes give.
func TestSums(t *testing.T) {
	a, b := Axis{marksOf(1, 4), big.NewRat(1, 1)}, Axis{marksOf(2, 6), big.NewRat(-1, 1)}
	s := Sums(a, b)
	if len(s.Marks) != 8 || s.Marks[0].Cmp(num(t, "-0.05")) != 0 || s.Marks[7].Cmp(num(t, "0.02")) != 0 {
		t.Fatalf("%v", s.Marks)
	}
	spans := s.spans(3)
	for _, x := range a.Marks {
		for _, y := range b.Marks {
			i := SpanAt(spans, a, b, x, y)
			if d := new(big.Rat).Sub(x, y); i < 0 || d.Cmp(spans[i].Low) < 0 || d.Cmp(spans[i].High) > 0 {
				t.Errorf("%s − %s lies in span %d", x.FloatString(2), y.FloatString(2), i)
			}
		}
	}
}
