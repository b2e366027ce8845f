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
