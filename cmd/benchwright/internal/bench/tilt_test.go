package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"
)

func TestTrueMovement(t *testing.T) {
	for _, c := range [][3]string{ // reading, angle, movement as the published factors round it (common practice)
		{"1", "0", "1.00"},
		{"1", "10", "0.98"},
		{"1", "20", "0.94"},
		{"1", "30", "0.87"},
		{"1", "60", "0.50"}, // exact
		{"-0.4", "60", "-0.20"},
	} {
		got, ok := TrueMovement(num(t, c[0]), num(t, c[1]))
		if !ok || got.FloatString(2) != c[2] {
			t.Errorf("%s at %s° is %v, want %s", c[0], c[1], got, c[2])
		}
	}
	for _, angle := range []string{"-1", "90", "91", "180", "360"} {
		if got, ok := TrueMovement(num(t, "1"), num(t, angle)); ok {
			t.Errorf("a lever at %s° measures %s", angle, got)
		}
		if got, ok := TiltedReading(num(t, "1"), num(t, angle)); ok {
			t.Errorf("a lever at %s° shows %s", angle, got)
		}
	}
}

// A reading leads back to its movement; the lever never shows too little, and
// the more the wider its angle.
func TestTiltProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 1))
	for range 300 {
		movement := big.NewRat(1+r.Int64N(500), 1000)
		angle := big.NewRat(r.Int64N(880), 10)
		shown, ok := TiltedReading(movement, angle)
		if !ok {
			t.Fatalf("no reading at %s°", angle.FloatString(1))
		}
		if back, _ := TrueMovement(shown, angle); back.Cmp(movement) != 0 {
			t.Fatalf("%s becomes %s", movement, back)
		}
		if shown.Cmp(movement) < 0 {
			t.Fatalf("a lever at %s° shows too little", angle.FloatString(1))
		}
		if more, _ := TiltedReading(movement, new(big.Rat).Add(angle, big.NewRat(1, 10))); more.Cmp(shown) <= 0 {
			t.Fatalf("a wider angle than %s° does not show more", angle.FloatString(1))
		}
	}
}
