package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"
)

func TestSetAdapter(t *testing.T) {
	for _, c := range []struct {
		torque, length, extension, angle string
		want                             string // as rounded in the source
		source                           string
	}{
		{"100", "12", "6", "0", "66.7", "NAVEDTRA 14315 ch. 3, lbf·in"},
		{"300", "10", "4", "0", "214", "TM 1-1500-204-23-9 fig. 8-16, lbf·in"},
		{"100", "12", "6", "90", "100", "NAVEDTRA 14008: at 90° the value does not change"},
		{"135", "10", "1.5", "180", "158.8", "shortening adapter, recomputed: 135 × 10 ÷ 8.5"},
		{"100", "12", "0", "37", "100", "no extension, no change"},
	} {
		s, ok := SetAdapter(num(t, c.torque), num(t, c.length), num(t, c.extension), num(t, c.angle))
		if !ok {
			t.Errorf("%s: no setting", c.source)
			continue
		}
		decimals := 0
		if c.want[len(c.want)-2] == '.' {
			decimals = 1
		}
		if got := s.FloatString(decimals); got != c.want {
			t.Errorf("%s: set %s, want %s", c.source, got, c.want)
		}
	}
	for _, c := range [][3]string{{"10", "10", "180"}, {"10", "11", "180"}, {"0", "5", "0"}, {"-1", "5", "0"}} {
		if s, ok := SetAdapter(num(t, "100"), num(t, c[0]), num(t, c[1]), num(t, c[2])); ok {
			t.Errorf("L %s, E %s at %s° gives a setting of %s", c[0], c[1], c[2], s)
		}
	}
}

// The torque that a setting gives is the torque that it was made for; the
// setting falls as the adapter grows longer, in line, and rises with the angle.
func TestAdapterProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for range 500 {
		torque := big.NewRat(1+r.Int64N(5000), 10)
		length := big.NewRat(100+r.Int64N(900), 1)
		extension := big.NewRat(1+r.Int64N(90), 1)
		angle := big.NewRat(r.Int64N(1790), 10)
		s, ok := SetAdapter(torque, length, extension, angle)
		if !ok {
			t.Fatal("no setting for an adapter shorter than the wrench")
		}
		if back, _ := AdapterTorque(s, length, extension, angle); back.Cmp(torque) != 0 {
			t.Fatalf("%s at the fastener becomes %s", torque, back)
		}
		longer, _ := SetAdapter(torque, length, new(big.Rat).Add(extension, big.NewRat(1, 1)), new(big.Rat))
		inLine, _ := SetAdapter(torque, length, extension, new(big.Rat))
		if longer.Cmp(inLine) >= 0 {
			t.Fatalf("a longer adapter raises the setting from %s to %s", inLine, longer)
		}
		more, _ := SetAdapter(torque, length, extension, new(big.Rat).Add(angle, big.NewRat(1, 10)))
		if more.Cmp(s) <= 0 {
			t.Fatalf("a wider angle lowers the setting from %s to %s", s, more)
		}
	}
}

func TestCos(t *testing.T) {
	for degrees, want := range map[string]string{ // exact
		"0": "1", "60": "1/2", "90": "0", "120": "-1/2", "180": "-1", "240": "-1/2",
		"270": "0", "300": "1/2", "360": "1", "-60": "1/2", "-90": "0", "720": "1", "780": "1/2",
	} {
		if got := Cos(num(t, degrees)); got.Cmp(num(t, want)) != 0 {
			t.Errorf("cos %s° is %s, want %s", degrees, got.RatString(), want)
		}
	}
	precision := num(t, "1/1000000000000000000000000")
	near := func(what string, a, b *big.Rat) {
		t.Helper()
		if d := new(big.Rat).Sub(a, b); d.Abs(d).Cmp(precision) > 0 {
			t.Errorf("%s: %s and %s", what, a.FloatString(30), b.FloatString(30))
		}
	}
	// From memory, and by squaring: cos² 45° = 1/2, cos² 30° = 3/4.
	near("cos 45°", Cos(num(t, "45")), num(t, "0.707106781186547524400844362105"))
	near("cos 30°", Cos(num(t, "30")), num(t, "0.866025403784438646763723170753"))
	square := func(x *big.Rat) *big.Rat { return new(big.Rat).Mul(x, x) }
	half := num(t, "1/2")
	near("cos² 45°", square(Cos(num(t, "45"))), half)
	near("cos² 150°", square(Cos(num(t, "150"))), num(t, "3/4"))
	// cos² x = (1 + cos 2x)/2, cos² x + cos² (90° − x) = 1.
	for tenths := int64(-3700); tenths < 3700; tenths += 37 {
		x := big.NewRat(tenths, 10)
		twice := Cos(new(big.Rat).Add(x, x))
		near("half angle of "+x.FloatString(1), square(Cos(x)), twice.Add(twice, big.NewRat(1, 1)).Mul(twice, half))
		other := square(Cos(new(big.Rat).Sub(big.NewRat(90, 1), x)))
		near("right angle of "+x.FloatString(1), other.Add(other, square(Cos(x))), big.NewRat(1, 1))
	}
}
