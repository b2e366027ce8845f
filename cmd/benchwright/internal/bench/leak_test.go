package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"
)

func TestRealDrop(t *testing.T) {
	for _, c := range []struct {
		p1, t1, p2, t2, reference string
		want                      string
		source                    string
	}{
		{"150", "20", "148", "18", "20", "0.983", "recomputed: 150 − 148 × 293.15 ÷ 291.15"},
		{"150", "20", "148", "18", "18", "0.977", "recomputed: 150 × 291.15 ÷ 293.15 − 148"},
		{"150", "20", "148", "20", "20", "2.000", "no change of temperature: the plain difference"},
		{"20", "20", "21", "20", "20", "-1.000", "a vacuum that leaks"},
	} {
		got, ok := RealDrop(num(t, c.p1), num(t, c.t1), num(t, c.p2), num(t, c.t2), num(t, c.reference))
		if !ok || got.FloatString(3) != c.want {
			t.Errorf("%s: %v, want %s", c.source, got, c.want)
		}
	}
	for _, c := range [][3]string{{"100", "-274", "20"}, {"100", "-273.15", "20"}, {"100", "20", "-273.15"}, {"-1", "20", "20"}} {
		if p, ok := AtTemperature(num(t, c[0]), num(t, c[1]), num(t, c[2])); ok {
			t.Errorf("%v gives %s", c, p)
		}
		for _, cold := range [2][2]string{{c[1], "20"}, {"20", c[1]}} {
			if d, ok := RealDrop(num(t, c[0]), num(t, cold[0]), num(t, "90"), num(t, cold[1]), num(t, c[2])); ok {
				t.Errorf("%v: a drop of %s", c, d)
			}
		}
	}
	if p, ok := AtTemperature(new(big.Rat), num(t, "20"), num(t, "30")); !ok || p.Sign() != 0 {
		t.Errorf("nothing becomes %v", p)
	}
}

func TestAtTemperature(t *testing.T) {
	// 1 °C at 100 kPa absolute and 293 K moves the reading 0.341 kPa: 100 ÷ 293.
	p, _ := AtTemperature(num(t, "100"), num(t, "19.85"), num(t, "20.85"))
	if got := p.Sub(p, num(t, "100")).FloatString(3); got != "0.341" {
		t.Errorf("one degree moves the reading %s kPa, want 0.341", got)
	}
	// Also published, but wrong: "273 K to 373 K doubles the pressure".
	p, _ = AtTemperature(num(t, "1"), num(t, "-0.15"), num(t, "99.85"))
	if got := p.FloatString(3); got != "1.366" {
		t.Errorf("273 K to 373 K multiplies the pressure by %s, want 1.366 and not 2", got)
	}
}

func TestLeakRate(t *testing.T) {
	q, ok := LeakRate(num(t, "2000"), num(t, "3.5"), num(t, "600")) // recomputed: 2.0 kPa × 3.5 L ÷ 600 s
	if !ok || q.FloatString(2) != "11.67" {
		t.Errorf("leak rate %v, want 11.67 Pa·L/s", q)
	}
	if back, _ := LeakDrop(q, num(t, "3.5"), num(t, "600")); back.Cmp(num(t, "2000")) != 0 {
		t.Errorf("the rate's drop is %s", back)
	}
	for _, c := range [][2]string{{"0", "600"}, {"3.5", "0"}, {"-1", "600"}, {"3.5", "-1"}} {
		if q, ok := LeakRate(num(t, "1"), num(t, c[0]), num(t, c[1])); ok {
			t.Errorf("%v gives a rate of %s", c, q)
		}
		if d, ok := LeakDrop(num(t, "1"), num(t, c[0]), num(t, c[1])); ok {
			t.Errorf("%v gives a drop of %s", c, d)
		}
	}
}

func TestEndReadings(t *testing.T) {
	hold := func(span, step, start, atmosphere, change string, vacuum bool) Hold {
		return Hold{Gauge: scale(t, span, step), Vacuum: vacuum, Start: num(t, start), Atmosphere: num(t, atmosphere),
			Coldest: num(t, "20"), Warmest: num(t, "20"), Change: num(t, change)}
	}
	for _, c := range []struct {
		name string
		hold Hold
		want [3]string // the marks at −5, 0 and +5 °C; "" where there is none
	}{
		// 151.3 × 288.15 ÷ 293.15 = 148.719; 149.3 → 146.754 − 101.3 = 45.454;
		// 149.3 × 298.15 ÷ 293.15 = 151.846 − 101.3 = 50.546. Recomputed by hand.
		{"pressure", hold("0 to 100 kPa", "0.5 kPa", "50", "101.3", "2", false), [3]string{"45.5", "48", "51"}},
		// Absolute 21.3, leaky 23.3: × 288.15 ÷ 293.15 = 22.903, depth 78.397;
		// 78; × 298.15 ÷ 293.15 = 23.697, depth 77.603.
		{"depth of a vacuum", hold("0 to 100 kPa", "0.5 kPa", "80", "101.3", "2", true), [3]string{"78.5", "78", "78"}},
		{"vacuum below zero", hold("-100 to 0 kPa", "0.5 kPa", "-80", "101.3", "2", true), [3]string{"-78.5", "-78", "-78"}},
		// At −5 °C tight is 47.419 and leaky 47.321: no whole mark between them;
		// at +5 °C 52.581 less 0.102.
		{"marks too coarse", hold("0 to 100 kPa", "1 kPa", "50", "101.3", "0.1", false), [3]string{"", "50", ""}},
		{"off the scale", hold("0 to 50 kPa", "0.5 kPa", "50", "101.3", "2", false), [3]string{"45.5", "48", ""}},
	} {
		rows, ok := c.hold.EndReadings(5)
		if !ok || len(rows) != 11 {
			t.Errorf("%s: %d rows", c.name, len(rows))
			continue
		}
		for i, want := range c.want {
			got := ""
			if m := rows[5*i].Mark; m != nil {
				got = m.FloatString(1)
			}
			if want != "" {
				want = num(t, want).FloatString(1)
			}
			if got != want {
				t.Errorf("%s at %s °C: %q, want %q", c.name, rows[5*i].Shift.RatString(), got, want)
			}
		}
	}
	for name, h := range map[string]Hold{
		"no atmosphere":           hold("0 to 100 kPa", "1 kPa", "50", "0", "2", false),
		"nothing in it":           hold("0 to 100 kPa", "1 kPa", "0", "101.3", "2", false),
		"pressure below zero":     hold("-100 to 0 kPa", "1 kPa", "-50", "101.3", "2", false),
		"deeper than no air":      hold("0 to 200 kPa", "1 kPa", "120", "101.3", "2", true),
		"change below zero":       hold("0 to 100 kPa", "1 kPa", "50", "101.3", "-2", false),
		"change beyond all of it": hold("0 to 100 kPa", "1 kPa", "50", "101.3", "200", false),
	} {
		if _, ok := h.EndReadings(5); ok {
			t.Errorf("%s: accepted", name)
		}
	}
}

// Whatever the shop's temperature, a reading on the accepted side of a mark is a
// leak of no more than is allowed, one that shows more is refused, and a tight
// part is accepted. The marks follow the temperature.
func TestEndReadingsProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 1))
	for n := range 400 {
		h := Hold{Gauge: scale(t, "-400 to 400 kPa", "0.5 kPa"), Atmosphere: big.NewRat(950+r.Int64N(80), 10),
			Change: big.NewRat(r.Int64N(50), 10), Coldest: big.NewRat(5+r.Int64N(20), 1)}
		h.Warmest = new(big.Rat).Add(h.Coldest, big.NewRat(r.Int64N(10), 1))
		h.Start = big.NewRat(10+r.Int64N(60), 1)
		h.Vacuum = r.IntN(2) == 0
		if h.Vacuum && r.IntN(2) == 0 {
			h.Start.Neg(h.Start)
		}
		if n%2 == 0 {
			h.Reference = big.NewRat(r.Int64N(40), 1)
		}
		if n%3 == 0 {
			h.Degree = big.NewRat(5, 9)
		}
		rows, ok := h.EndReadings(5)
		if !ok {
			t.Fatal("no table")
		}
		start, sign := h.absolute()
		var last *big.Rat
		for _, row := range rows {
			if row.Mark == nil {
				continue
			}
			accepts := func(reading *big.Rat) bool {
				if row.AtMost {
					return reading.Cmp(row.Mark) <= 0
				}
				return reading.Cmp(row.Mark) >= 0
			}
			inside := new(big.Rat).Sub(h.Warmest, h.Coldest)
			inside.Add(h.Coldest, inside.Mul(inside, big.NewRat(r.Int64N(100), 100)))
			for _, from := range []*big.Rat{h.Coldest, h.Warmest, inside} {
				to := new(big.Rat).Add(from, row.Shift)
				reference := from
				if h.Reference != nil {
					reference = h.Reference
				}
				// What leaks at the mark, referred to the same temperature.
				end := new(big.Rat).Set(row.Mark)
				if sign < 0 {
					end.Neg(end)
				}
				drop, _ := RealDrop(start, from, end.Add(end, h.Atmosphere), to, reference)
				if h.Vacuum {
					drop.Neg(drop)
				}
				if drop.Cmp(h.Change) > 0 {
					t.Fatalf("%s at %s °C from %s °C, start %s: leak of %s with %s allowed", row.Mark.RatString(), row.Shift.RatString(),
						from.RatString(), h.Start.RatString(), drop.FloatString(4), h.Change.FloatString(1))
				}
				// What the gauge shows of a part with a leak of its own.
				shows := func(leak *big.Rat) *big.Rat {
					p, _ := AtTemperature(start, from, reference)
					if h.Vacuum {
						p.Add(p, leak)
					} else {
						p.Sub(p, leak)
					}
					p, _ = AtTemperature(p, reference, to)
					p.Sub(p, h.Atmosphere)
					if sign < 0 {
						p.Neg(p)
					}
					return p
				}
				if !accepts(shows(new(big.Rat))) {
					t.Fatalf("start %s at %s °C, %s °C: a tight part is refused", h.Start, from, row.Shift)
				}
				over := new(big.Rat).Add(h.Change, big.NewRat(1+r.Int64N(500), 1000))
				if over.Cmp(start) < 0 && accepts(shows(over)) {
					t.Fatalf("start %s at %s °C, %s °C: a leak of %s is accepted, %s is allowed", h.Start, from, row.Shift, over, h.Change)
				}
			}
			if last != nil && sign > 0 != (row.Mark.Cmp(last) >= 0) && row.Mark.Cmp(last) != 0 {
				t.Fatalf("the marks do not follow the temperature: %s after %s", row.Mark, last)
			}
			last = row.Mark
		}
	}
}

// A change that the manual refers to 20 °C is worth 2 % less of pressure in a
// shop at 14 °C, and as much at 20 °C as one referred to the start.
func TestEndReadingsReferred(t *testing.T) {
	h := Hold{Gauge: scale(t, "0 to 100 kPa", "0.01 kPa"), Start: num(t, "50"), Atmosphere: num(t, "101.3"),
		Coldest: num(t, "14"), Warmest: num(t, "14"), Change: num(t, "2"), Reference: num(t, "20")}
	rows, _ := h.EndReadings(0)
	if got := rows[0].Limit.FloatString(4); got != "48.0409" { // 50 − 2 × 287.15 ÷ 293.15, by hand
		t.Errorf("the limit at 14 °C is %s", got)
	}
	h.Coldest, h.Warmest = num(t, "20"), num(t, "20")
	referred, _ := h.EndReadings(5)
	h.Reference = nil
	start, _ := h.EndReadings(5)
	for i := range start {
		if referred[i].Limit.Cmp(start[i].Limit) != 0 {
			t.Errorf("referred to the start's own temperature: %s and %s", referred[i].Limit, start[i].Limit)
		}
	}
	h.Degree = big.NewRat(5, 9)
	rows, _ = h.EndReadings(9)
	if rows[0].Shift.RatString() != "-5" || rows[9].Shift.Sign() != 0 || rows[18].Limit.Cmp(start[10].Limit) != 0 {
		t.Error("nine degrees Fahrenheit are not five Celsius")
	}
}

// The limit is what the strictest shop gives, and no stricter: recomputed for
// 25 kPa above 101.3 kPa, 2 kPa lost referred to 20 °C, a shop of 15 to 25 °C
// that becomes 2 °C colder, 126.3·(T − 2)/T − 2·(T − 2)/293.15 − 101.3 is at most
// 22.1711 kPa, at 15 °C.
func TestEndReadingOfTheStrictestShop(t *testing.T) {
	h := Hold{Gauge: scale(t, "0 to 60 kPa", "0.2 kPa"), Start: big.NewRat(25, 1), Atmosphere: big.NewRat(1013, 10),
		Coldest: big.NewRat(15, 1), Warmest: big.NewRat(25, 1), Change: big.NewRat(2, 1), Reference: big.NewRat(20, 1)}
	rows, ok := h.EndReadings(5)
	if !ok {
		t.Fatal("no rows")
	}
	if got := rows[3]; got.Limit.FloatString(4) != "22.1711" || got.Mark.FloatString(1) != "22.2" {
		t.Errorf("2 °C colder: limit %s, mark %s", got.Limit.FloatString(4), got.Mark.FloatString(1))
	}
}
