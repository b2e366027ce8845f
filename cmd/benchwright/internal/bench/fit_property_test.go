package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"
)

// Of the force of a press: the gauge times the ram is the force, twice any of
// its causes is twice as much, and a shaft with a bore presses less than
// a solid one.
func TestPushProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 5))
	two := big.NewRat(2, 1)
	twice := func(x *big.Rat) *big.Rat { return new(big.Rat).Mul(x, two) }
	for range 300 {
		seat := 20 + r.Int64N(200)
		f := PressFit{
			Outer: big.NewRat(seat+5+r.Int64N(100), 1), Seat: big.NewRat(seat, 1), Bore: new(big.Rat),
			HubModulus: big.NewRat(70000+r.Int64N(140000), 1), ShaftModulus: big.NewRat(207000, 1),
			HubPoisson: big.NewRat(20+r.Int64N(15), 100), ShaftPoisson: big.NewRat(3, 10),
		}
		d, mu, length := big.NewRat(1+r.Int64N(200), 1000), big.NewRat(5+r.Int64N(20), 100), big.NewRat(5+r.Int64N(80), 1)
		force := func(d, mu, length *big.Rat) *big.Rat {
			x, ok := f.Force(d, mu, length)
			if !ok {
				t.Fatal("no force")
			}
			return x
		}
		whole := force(d, mu, length)
		for _, x := range []*big.Rat{force(twice(d), mu, length), force(d, twice(mu), length), force(d, mu, twice(length))} {
			if x.Cmp(twice(whole)) != 0 {
				t.Fatalf("twice the cause of %s is %s", whole.FloatString(1), x.FloatString(1))
			}
		}
		area := RamArea(big.NewRat(10+r.Int64N(100), 1))
		gauge, ok := RamPressure(whole, area)
		if !ok || new(big.Rat).Mul(gauge, area).Cmp(whole) != 0 {
			t.Fatalf("%s on %s is %v", whole.FloatString(1), area.FloatString(1), gauge)
		}
		bored := f
		bored.Bore = big.NewRat(1+r.Int64N(seat-2), 1)
		if less, _ := bored.Force(d, mu, length); less.Cmp(whole) >= 0 {
			t.Fatalf("a bore of %s in a seat of %d presses no less", bored.Bore, seat)
		}
	}
}

// A rise grows with interference and clearance and falls with expansion and
// diameter; a chilled part is as far below its room as a heated one above it.
func TestRiseProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 6))
	for range 300 {
		most, clearance := big.NewRat(1+r.Int64N(100), 1000), big.NewRat(r.Int64N(80), 1000)
		expansion, d := big.NewRat(50+r.Int64N(200), 10000000), big.NewRat(10+r.Int64N(300), 1)
		rise := func(m, c, e, d *big.Rat) *big.Rat {
			x, ok := TemperatureRise(m, c, e, d)
			if !ok {
				t.Fatal("no rise")
			}
			return x
		}
		more := func(x *big.Rat) *big.Rat { return new(big.Rat).Mul(x, big.NewRat(11, 10)) }
		at := rise(most, clearance, expansion, d)
		if rise(more(most), clearance, expansion, d).Cmp(at) <= 0 || clearance.Sign() > 0 && rise(most, more(clearance), expansion, d).Cmp(at) <= 0 ||
			rise(most, clearance, more(expansion), d).Cmp(at) >= 0 || rise(most, clearance, expansion, more(d)).Cmp(at) >= 0 {
			t.Fatalf("δ %s, room %s, α %s, d %s: %s", most, clearance, expansion, d, at)
		}
		room := big.NewRat(r.Int64N(40), 1)
		hot, ok := HeatBand(room, at, new(big.Rat).Add(room, at))
		if !ok || hot.Low.Cmp(hot.High) != 0 {
			t.Fatal("a cap that is just reached is refused")
		}
		cold := ChillBand(room, at)
		if sum := new(big.Rat).Add(cold.High, hot.Low); sum.Cmp(new(big.Rat).Add(room, room)) != 0 {
			t.Fatalf("heated to %s, chilled to %s, in a room of %s", hot.Low, cold.High, room)
		}
	}
}

// The lowest of random caps binds, wherever it stands, and exceeding it is
// found; no other cap is named.
func TestCapProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 7))
	for range 300 {
		var caps []Cap
		for range 1 + r.IntN(5) {
			caps = append(caps, Cap{"part", big.NewRat(60+r.Int64N(100), 1)})
		}
		at, _ := LowestCap(caps)
		low := caps[at]
		for _, c := range caps {
			if c.Highest.Cmp(low.Highest) < 0 {
				t.Fatalf("%s binds, and %s is lower", low.Highest, c.Highest)
			}
		}
	}
}
