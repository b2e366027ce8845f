package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"
)

// A gas warmed and cooled again is as before, by way of a third temperature
// too; warmer is never less. A tight part has no drop, and a drop is what was
// let out, wherever the shop was.
func TestGasProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 5))
	for range 500 {
		celsius := func() *big.Rat { return big.NewRat(r.Int64N(1000)-400, 10) }
		p := big.NewRat(1+r.Int64N(4000), 10)
		a, b, c := celsius(), celsius(), celsius()
		at := func(p, from, to *big.Rat) *big.Rat {
			q, ok := AtTemperature(p, from, to)
			if !ok {
				t.Fatalf("%s from %s to %s °C: refused", p, from, to)
			}
			return q
		}
		if back := at(at(p, a, b), b, a); back.Cmp(p) != 0 {
			t.Fatalf("%s from %s to %s °C and back: %s", p, a, b, back)
		}
		if via := at(at(p, a, b), b, c); via.Cmp(at(p, a, c)) != 0 {
			t.Fatalf("%s by %s °C: another pressure", p, b)
		}
		if (at(p, a, b).Cmp(p) > 0) != (b.Cmp(a) > 0) {
			t.Fatalf("%s from %s to %s °C: %s", p, a, b, at(p, a, b))
		}
		if drop, ok := RealDrop(p, a, at(p, a, b), b, c); !ok || drop.Sign() != 0 {
			t.Fatalf("a tight part dropped by %s", drop)
		}
		lost := new(big.Rat).Mul(at(p, a, c), big.NewRat(r.Int64N(100), 100))
		rest := at(new(big.Rat).Sub(at(p, a, c), lost), c, b)
		if drop, ok := RealDrop(p, a, rest, b, c); !ok || drop.Cmp(lost) != 0 {
			t.Fatalf("%s was lost, and %v is found", lost, drop)
		}
	}
}

// Rate and drop are inverse; the rate grows with drop and volume and falls with
// the time.
func TestLeakRateProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 6))
	one := big.NewRat(1, 1)
	for range 300 {
		drop, volume, time := big.NewRat(1+r.Int64N(5000), 1), big.NewRat(1+r.Int64N(200), 10), big.NewRat(1+r.Int64N(3600), 1)
		rate := func(d, v, s *big.Rat) *big.Rat { q, _ := LeakRate(d, v, s); return q }
		q := rate(drop, volume, time)
		if back, ok := LeakDrop(q, volume, time); !ok || back.Cmp(drop) != 0 {
			t.Fatalf("%s becomes %v", drop, back)
		}
		more := func(x *big.Rat) *big.Rat { return new(big.Rat).Add(x, one) }
		if rate(more(drop), volume, time).Cmp(q) <= 0 || rate(drop, more(volume), time).Cmp(q) <= 0 || rate(drop, volume, more(time)).Cmp(q) >= 0 {
			t.Fatalf("drop %s, volume %s, time %s: %s", drop, volume, time, q)
		}
	}
}

// The limit of a row is the strictest that any shop temperature at the start
// asks for, and no stricter: between the ends as well, where a leak that is
// referred to 20 °C has its turning point at 20 °C here. Shops are tried degree
// by degree, apart from the code.
func TestEndReadingsStrictest(t *testing.T) {
	for _, c := range []struct {
		start, reference string
		vacuum           bool
		slack            string // how much stricter than need be the limit may stand
	}{
		{"48.5", "", false, "0"},
		{"48.5", "20", false, "0.3"}, // 2.557 kPa times 30 of 293 degrees
		{"80", "", true, "0"}, {"80", "20", true, "0.3"},
		{"-80", "", true, "0"}, {"-80", "20", true, "0.3"},
	} {
		h := Hold{Gauge: scale(t, "-200 to 200 kPa", "0.001 kPa"), Vacuum: c.vacuum, Start: num(t, c.start), Atmosphere: num(t, "101.3"),
			Coldest: num(t, "5"), Warmest: num(t, "35"), Change: num(t, "2.557")}
		if c.reference != "" {
			h.Reference = num(t, c.reference)
		}
		rows, ok := h.EndReadings(5)
		if !ok {
			t.Fatalf("%+v: no table", c)
		}
		depth := c.vacuum && c.start[0] != '-'
		absolute := new(big.Rat).Add(h.Atmosphere, h.Start)
		if depth {
			absolute.Sub(h.Atmosphere, h.Start)
		}
		for _, row := range rows {
			if row.AtMost != (c.vacuum && !depth) {
				t.Fatalf("%+v: at most %v", c, row.AtMost)
			}
			stricter := func(a, b *big.Rat) bool { return (a.Cmp(b) > 0) != row.AtMost && a.Cmp(b) != 0 }
			var strictest *big.Rat
			for from := int64(5); from <= 35; from++ {
				begin := big.NewRat(from, 1)
				end := new(big.Rat).Add(begin, row.Shift)
				at := begin
				if h.Reference != nil {
					at = h.Reference
				}
				p, _ := AtTemperature(absolute, begin, end)
				leak, _ := AtTemperature(h.Change, at, end)
				if !c.vacuum {
					leak.Neg(leak)
				}
				p.Add(p, leak).Sub(p, h.Atmosphere)
				if depth {
					p.Neg(p)
				}
				if strictest == nil || stricter(p, strictest) {
					strictest = p
				}
			}
			gap := new(big.Rat).Sub(row.Limit, strictest)
			if stricter(strictest, row.Limit) || gap.Abs(gap).Cmp(num(t, c.slack)) > 0 {
				t.Errorf("%+v at %s °C: the limit is %s, some shop asks for %s", c, row.Shift.RatString(), row.Limit.FloatString(4), strictest.FloatString(4))
			}
		}
	}
}

// What holds at the edges: a perfect vacuum, no leak at all, a reading that is
// the last mark of the gauge or just what a tight part shows; and what is
// refused beyond them.
func TestEndReadingsEdges(t *testing.T) {
	hold := func(change func(*Hold)) Hold {
		h := Hold{Gauge: scale(t, "0 to 50 kPa", "1 kPa"), Start: num(t, "50"), Atmosphere: num(t, "100"),
			Coldest: num(t, "20"), Warmest: num(t, "20"), Change: num(t, "2")}
		change(&h)
		return h
	}
	deep := func(h *Hold) { h.Vacuum, h.Gauge, h.Start = true, scale(t, "-100 to 0 kPa", "1 kPa"), num(t, "-100") }
	for name, c := range map[string]struct {
		hold Hold
		want string // the mark at no shift; "" for none
	}{
		"no leak at all":              {hold(func(h *Hold) { h.Change = new(big.Rat) }), "50"},
		"the last mark":               {hold(func(h *Hold) { h.Gauge = scale(t, "0 to 48 kPa", "1 kPa") }), "48"},
		"above the last mark":         {hold(func(h *Hold) { h.Gauge = scale(t, "0 to 47 kPa", "1 kPa") }), ""},
		"the first mark":              {hold(func(h *Hold) { h.Gauge = scale(t, "48 to 60 kPa", "1 kPa") }), "48"},
		"below the first mark":        {hold(func(h *Hold) { h.Gauge = scale(t, "49 to 60 kPa", "1 kPa") }), ""},
		"all of it may go":            {hold(func(h *Hold) { h.Change, h.Gauge = num(t, "150"), scale(t, "-100 to 60 kPa", "1 kPa") }), "-100"},
		"a perfect vacuum":            {hold(deep), "-98"},
		"a perfect vacuum, no change": {hold(func(h *Hold) { deep(h); h.Change = new(big.Rat) }), "-100"},
		"no ends of the scale":        {hold(func(h *Hold) { h.Gauge.Low, h.Gauge.High = nil, nil }), "48"},
	} {
		rows, ok := c.hold.EndReadings(0)
		got := ""
		if ok && rows[0].Mark != nil {
			got = rows[0].Mark.RatString()
		}
		if !ok || got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
	for name, h := range map[string]Hold{
		"no marks":               hold(func(h *Hold) { h.Gauge.Step = nil }),
		"marks of no width":      hold(func(h *Hold) { h.Gauge.Step = new(big.Rat) }),
		"degrees of no width":    hold(func(h *Hold) { h.Degree = new(big.Rat) }),
		"the coldest is warmer":  hold(func(h *Hold) { h.Coldest = num(t, "21") }),
		"colder than cold":       hold(func(h *Hold) { h.Coldest = num(t, "-273.15") }),
		"referred to no warmth":  hold(func(h *Hold) { h.Reference = num(t, "-273.15") }),
		"no vacuum":              hold(func(h *Hold) { h.Vacuum, h.Start = true, new(big.Rat) }),
		"a vacuum as deep as it": hold(func(h *Hold) { h.Vacuum, h.Start = true, num(t, "101") }),
	} {
		if _, ok := h.EndReadings(0); ok {
			t.Errorf("%s: accepted", name)
		}
	}
	if _, ok := hold(func(*Hold) {}).EndReadings(-1); ok {
		t.Error("less than no rows")
	}
}
