package quantity

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"
)

func TestInward(t *testing.T) {
	for _, c := range []struct {
		band, unit, low, high, step string
		want                        string
	}{
		{"100 ±5 N·m", "N·m", "20", "120", "1", "95 to 105 N·m"},
		{"100 ±5 N·m", "lbf·ft", "10", "100", "1", "71 to 77 lbf·ft"},     // exact 70.07 to 77.44
		{"350 ±37 lbf·ft", "N·m", "", "", "1", "425 to 524 N·m"},          // exact 424.4 to 524.7
		{"0.006 to 0.010 in", "mm", "0", "10", "0.01", "0.16 to 0.25 mm"}, // exact 0.1524 to 0.254
		{"0.15 to 0.25 mm", "mm", "0", "10", "0.01", "0.15 to 0.25 mm"},
		{"0.15 to 0.25 mm", "in", "", "", "0.001", "0.006 to 0.009 in"},
		{"0.15 to 0.16 mm", "in", "", "", "0.001", "0.006 to 0.006 in"}, // exact 0.0059 to 0.0063
		{"0.13 to 0.14 mm", "in", "", "", "0.001", ""},                  // exact 0.0051 to 0.0055
		{"max 0.05 mm", "mm", "0", "10", "0.02", "max 0.04 mm"},
		{"at least 12 mm", "in", "", "", "1/64", "at least 0.484375 in"}, // 31/64
		{"max 15 mm", "mm", "0", "10", "0.01", "max 10.00 mm"},
		{"at least 12 mm", "mm", "0", "10", "0.01", ""},
		{"10 to 50 N·m", "N·m", "20", "120", "1", "20 to 50 N·m"},
		{"10 to 15 N·m", "N·m", "20", "120", "1", ""},
		{"-5 to 5 °C", "°F", "", "", "1", "23 to 41 °F"},
		{"-7.4 to -2.6 mm", "mm", "", "", "0.5", "−7.0 to −3.0 mm"},
		{"100 N·m", "N·m", "20", "120", "1", ""},
		{"95 to 105 N·m", "mm", "", "", "1", ""},
		{"95 to 105 N·m", "N·m", "", "", "0", ""},
	} {
		m, ok := band(t, c.band).Inward(scale(t, c.unit, c.low, c.high, c.step))
		got := strings.ReplaceAll(m.Print(Point), nbsp, " ")
		if ok != (c.want != "") || got != c.want {
			t.Errorf("%s on marks of %s %s: %q, want %q", c.band, c.step, c.unit, got, c.want)
		}
	}
}

func scale(t testing.TB, u, low, high, step string) Scale {
	t.Helper()
	s := Scale{Unit: unit(t, u), Step: ratio(step)}
	if low != "" {
		s.Low = ratio(low)
	}
	if high != "" {
		s.High = ratio(high)
	}
	return s
}

// Converted limits are never outside the original, and they are the widest
// such on that scale.
func TestInwardIsInsideAndWidest(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	kept, none := 0, 0
	for range 20000 {
		b := randomBand(r)
		s := randomScale(r, b)
		m, ok := b.Inward(s)
		if b.Form == Bare {
			if ok {
				t.Fatalf("%s has limits", b.Written)
			}
			continue
		}
		say := func() string {
			return fmt.Sprintf("%s on marks of %s %s from %v to %v: %s", b.Written, s.Step.RatString(), s.Unit.Symbol, s.Low, s.High, m.Print(Point))
		}
		// allowed reports whether x is a reading that band and scale allow.
		allowed := func(x *big.Rat) bool {
			y := Convert(x, s.Unit, b.Unit)
			return (b.Low == nil || y.Cmp(b.Low) >= 0) && (b.High == nil || y.Cmp(b.High) <= 0) &&
				(s.Low == nil || x.Cmp(s.Low) >= 0) && (s.High == nil || x.Cmp(s.High) <= 0)
		}
		if !ok {
			none++
			// The marks around each limit, and the scale's ends, show that none is allowed.
			c := b.In(s.Unit)
			for _, x := range []*big.Rat{c.Low, c.High, s.Low, s.High} {
				if x != nil && (allowed(s.Floor(x)) || allowed(s.Ceil(x))) {
					t.Fatalf("%s: a mark was lost", say())
				}
			}
			continue
		}
		kept++
		for _, e := range []struct {
			mark, limit *big.Rat
			out         int64
		}{{m.Low, b.Low, -1}, {m.High, b.High, 1}} {
			if (e.mark == nil) != (e.limit == nil) {
				t.Fatalf("%s: a side was opened or closed", say())
			}
			if e.mark == nil {
				continue
			}
			if !new(big.Rat).Quo(e.mark, s.Step).IsInt() {
				t.Fatalf("%s: not on a mark", say())
			}
			if !allowed(e.mark) {
				t.Fatalf("%s: outside", say())
			}
			next := new(big.Rat).Add(e.mark, times(s.Step, big.NewRat(e.out, 1)))
			if allowed(next) {
				t.Fatalf("%s: could be wider", say())
			}
		}
	}
	if kept < 3000 || none < 300 {
		t.Errorf("%d bands kept marks and %d lost them: too few to tell", kept, none)
	}
}

// randomBand returns a band of any form and unit, read from text.
func randomBand(r *rand.Rand) Band {
	for {
		d := []Dimension{Length, Torque, Pressure, Volume, Temperature, Force}[r.IntN(6)]
		units := Units(d)
		number := func() string {
			switch r.IntN(4) {
			case 0:
				return fmt.Sprint(r.IntN(500))
			case 1:
				return fmt.Sprintf("%d-%d/16", 1+r.IntN(9), 1+2*r.IntN(8))
			}
			return fmt.Sprintf("%d.%0*d", r.IntN(200), 1+r.IntN(3), r.IntN(10))
		}
		form := []string{"%s to %s", "%s ±%s", "%s +%s/-0", "max %s", "at least %s", "%s"}[r.IntN(6)]
		text := strings.Replace(form, "%s", number(), 1)
		text = strings.Replace(text, "%s", number(), 1)
		if b, p := ParseBand(text+" "+units[r.IntN(len(units))].Symbol, Point); p == nil {
			return b
		}
	}
}

// randomScale returns a scale that can measure b, often one on which it lies.
func randomScale(r *rand.Rand, b Band) Scale {
	units := Units(b.Unit.Dimension)
	s := Scale{Unit: units[r.IntN(len(units))]}
	steps := []string{"1", "2", "5", "1/2", "1/10", "1/20", "1/100", "1/64", "1/3", "1/1000"}
	s.Step = ratio(steps[r.IntN(len(steps))])
	if r.IntN(3) == 0 { // of the band's own size
		c := b.In(s.Unit)
		for _, x := range []*big.Rat{c.High, c.Low} {
			if x != nil && x.Sign() != 0 {
				s.Step = times(new(big.Rat).Abs(x), big.NewRat(1, int64(1+r.IntN(60))))
				break
			}
		}
	}
	if r.IntN(2) == 0 {
		s.Low = times(s.Step, big.NewRat(int64(r.IntN(100)), 2))
	}
	if r.IntN(2) == 0 {
		s.High = times(s.Step, big.NewRat(int64(50+r.IntN(400)), 2))
	}
	return s
}

func TestFinest(t *testing.T) {
	b := band(t, "0.151 to 0.156 mm")
	scales := []Scale{
		scale(t, "mm", "0", "10", "0.01"),
		scale(t, "mm", "0", "25", "0.002"),
		scale(t, "in", "0", "1", "0.0001"),
		scale(t, "mm", "50", "75", "0.001"),
		scale(t, "N·m", "", "", "1"),
	}
	if got := Finest(b, scales); got != 1 {
		t.Errorf("the finest scale is number %d, want 1", got)
	}
	if got := Finest(b, scales[:1]); got != -1 {
		t.Errorf("scale %d has a mark inside %s", got, b.Written)
	}
}

func TestCoarsestStep(t *testing.T) {
	for _, c := range []struct{ band, unit, want string }{
		{"0.151 to 0.156 mm", "mm", "1/200"},
		{"0.15 to 0.25 mm", "mm", "1/10"},
		{"0.15 to 0.25 mm", "in", "1/500"}, // the width is 0.0039 in
		{"95 to 105 N·m", "N·m", "10"},
		{"50 to 350 N·m", "N·m", "200"},
		{"max 5 mm", "mm", ""},
		{"at least 5 mm", "mm", ""},
		{"5 mm", "mm", ""},
		{"5 to 5 mm", "mm", ""},
	} {
		got := ""
		s := band(t, c.band).CoarsestStep(unit(t, c.unit))
		if s != nil {
			got = s.RatString()
		}
		if got != c.want {
			t.Errorf("%s needs marks of %s %s, want %s", c.band, got, c.unit, c.want)
		}
	}
}

// Same reports whether two bands mean the same: the same limits and the same
// aim, exactly, in whatever units and words. 100 ±5 N·m is 95 to 105 N·m, but
// 100 +5/-0 N·m is not 100 to 105 N·m, which aims higher.
func (b Band) Same(o Band) bool {
	if b.Unit.Dimension != o.Unit.Dimension {
		return false
	}
	c := o.In(b.Unit)
	return (b.Form == Bare) == (o.Form == Bare) &&
		equal(b.Low, c.Low) && equal(b.High, c.High) && equal(b.Target(), c.Target())
}

func equal(a, b *big.Rat) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.Cmp(b) == 0
}

func TestSame(t *testing.T) {
	for _, c := range []struct {
		a, b string
		same bool
	}{
		{"95 to 105 N·m", "95..105 Nm", true},
		{"100 ±5 N·m", "95 to 105 N·m", true},
		{"100 +5/-0 N·m", "100 to 105 N·m", false}, // it aims lower
		{"0.150 to 0.250 mm", "0.15 to 0.25 mm", true},
		{"1 to 2 in", "25.4 to 50.8 mm", true},
		{"1 to 2 in", "25 to 51 mm", false},
		{"1/2 in", "0.5 in", true},
		{"100 °C", "212 °F", true},
		{"max 5 mm", "at most 5 mm", true},
		{"max 5 mm", "0 to 5 mm", false}, // −1 mm is inside the first alone
		{"max 5 mm", "at least 5 mm", false},
		{"5 mm", "5 to 5 mm", false},
		{"5 mm", "5 N·m", false},
		{"12 lbf·in", "1 lbf·ft", true},
	} {
		a, b := band(t, c.a), band(t, c.b)
		if a.Same(b) != c.same || b.Same(a) != c.same {
			t.Errorf("%s is %s: %v, want %v", c.a, c.b, a.Same(b), c.same)
		}
	}
}

// A band stays the same in whatever unit it is put.
func TestSameInEveryUnit(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 8))
	for range 500 {
		b := randomBand(r)
		for _, u := range Units(b.Unit.Dimension) {
			if !b.Same(b.In(u)) {
				t.Fatalf("%s is another in %s", b.Written, u.Symbol)
			}
		}
	}
}

func TestWithTolerance(t *testing.T) {
	b := band(t, "100 N·m").WithTolerance(ratio("1/20"))
	if !b.Same(band(t, "100 ±5 N·m")) {
		t.Errorf("100 N·m within 5 %% is %s", b.Range(Point))
	}
	if b := band(t, "-8 °C").WithTolerance(ratio("1/20")); !b.Same(band(t, "-8 ±0.4 °C")) {
		t.Errorf("-8 °C within 5 %% is %s", b.Range(Point))
	}
	if b := band(t, "max 5 mm"); !b.WithTolerance(ratio("1/20")).Same(b) {
		t.Error("limits took a tolerance")
	}
}
