package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

// Where the cosine is not exact, the gain lies between its two bounds with the
// room that the cosine may be out, and limits are drawn in by the stricter
// one: also for an adapter that points back.
func TestAdapterBounds(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 1))
	off := big.NewRat(1, 1e18) // far more than Cos is out, far less than cosError
	for range 300 {
		length := quantity.Value{Number: quantity.Number{Value: big.NewRat(200+r.Int64N(800), 1)}, Unit: quantity.MustUnit("mm")}
		e := big.NewRat(1+r.Int64N(150), 1)
		angle := big.NewRat(1+r.Int64N(1798), 10)
		a := &Adapter{Length: quantity.Value{Number: quantity.Number{Value: e}, Unit: quantity.MustUnit("mm")}, Angle: angle}
		least, most, ok := a.gain(&length)
		if !ok {
			t.Fatalf("an adapter of %s on a wrench of %s has no gain", e, length.Value)
		}
		at := func(cos *big.Rat) *big.Rat {
			g := new(big.Rat).Quo(e, length.Value)
			return g.Mul(g, cos).Add(g, big.NewRat(1, 1))
		}
		cos := Cos(angle)
		if exactCos(angle) {
			off := new(big.Rat).Sub(most, least)
			if off.Sign() != 0 || least.Cmp(at(cos)) != 0 {
				t.Fatalf("at %s° the gain is %s to %s", angle, least, most)
			}
			continue
		}
		if least.Cmp(at(new(big.Rat).Sub(cos, off))) > 0 || most.Cmp(at(new(big.Rat).Add(cos, off))) < 0 {
			t.Fatalf("at %s° the gain is %s to %s, the cosine %s", angle, least.FloatString(20), most.FloatString(20), cos.FloatString(20))
		}
		b := quantity.Band{Form: quantity.Range, Unit: newtonMeter, Low: big.NewRat(50, 1), High: big.NewRat(60, 1)}
		s, ok := a.Setting(b, &length)
		if !ok || new(big.Rat).Mul(s.Low, least).Cmp(b.Low) != 0 || new(big.Rat).Mul(s.High, most).Cmp(b.High) != 0 {
			t.Fatalf("%s° sets %v to %v", angle, s.Low, s.High)
		}
	}
}

// The cosine falls from 1 at 0° to −1 at 180°, is the same on the other side
// and after every turn, and the negative half a turn on.
func TestCosProperties(t *testing.T) {
	one := big.NewRat(1, 1)
	last := big.NewRat(2, 1)
	for tenths := int64(0); tenths <= 1800; tenths += 7 {
		x := big.NewRat(tenths, 10)
		c := Cos(x)
		if new(big.Rat).Abs(c).Cmp(one) > 0 || c.Cmp(last) >= 0 {
			t.Fatalf("cos %s° is %s after %s", x.FloatString(1), c.FloatString(20), last.FloatString(20))
		}
		last = c
		turned := new(big.Rat).Add(x, big.NewRat(180, 1))
		if Cos(new(big.Rat).Neg(x)).Cmp(c) != 0 || Cos(new(big.Rat).Sub(x, big.NewRat(720, 1))).Cmp(c) != 0 || new(big.Rat).Neg(Cos(turned)).Cmp(c) != 0 {
			t.Fatalf("cos %s° is another on the other side", x.FloatString(1))
		}
	}
}

func TestAdapterTorqueRefuses(t *testing.T) {
	for _, c := range [][3]string{{"0", "5", "0"}, {"-1", "5", "0"}, {"10", "10", "180"}, {"10", "11", "180"}} {
		if x, ok := AdapterTorque(num(t, "100"), num(t, c[0]), num(t, c[1]), num(t, c[2])); ok {
			t.Errorf("L %s, E %s at %s° gives a torque of %s", c[0], c[1], c[2], x)
		}
	}
}
