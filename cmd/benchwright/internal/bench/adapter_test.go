package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
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

// through returns an adapter of this length and angle.
func through(t testing.TB, length, angle string) *Adapter {
	t.Helper()
	return &Adapter{Length: value(t, length), Angle: num(t, angle)}
}

// long returns a wrench that states its length.
func long(t testing.TB, w *shop.Wrench, length string) *shop.Wrench {
	t.Helper()
	v := value(t, length)
	w.Length = &v
	return w
}

func TestChooseWrenchThroughAdapter(t *testing.T) {
	for _, c := range []struct {
		limits, length, extension, angle string
		setting, torque                  string // torque to three decimals
		source                           string
	}{
		{"100 ±5 lbf·in", "12 in", "6 in", "0", "67", "100.500", "NAVEDTRA 14315 ch. 3, on marks of 1: 66.7"},
		{"300 ±10 lbf·in", "10 in", "4 in", "0", "214", "299.600", "TM 1-1500-204-23-9 fig. 8-16"},
		{"100 ±5 lbf·in", "12 in", "6 in", "90", "100", "100.000", "NAVEDTRA 14008: at 90° the value does not change"},
		{"135 ±5 lbf·in", "10 in", "1.5 in", "180", "159", "135.150", "shortening adapter, recomputed: 158.8"},
		{"135 ±5 lbf·in", "254 mm", "1.5 in", "180", "159", "135.150", "the lengths in two units"},
	} {
		w := long(t, wrench(t, "a", "30 to 400 lbf·in", "1 lbf·in", "0.03"), c.length)
		got, refused := ChooseWrench(band(t, c.limits), through(t, c.extension, c.angle), []*shop.Wrench{w})
		if got == nil {
			t.Errorf("%s: refused %v", c.source, refused)
			continue
		}
		if got.Setting.RatString() != c.setting || got.Torque.FloatString(3) != c.torque || !got.Keeps {
			t.Errorf("%s: set %s gives %s, keeps %v, want %s, %s", c.source, got.Setting.RatString(), got.Torque.FloatString(3), got.Keeps, c.setting, c.torque)
		}
	}
}

// What cannot be set through an adapter says why; a wrench without a length is
// passed over where another has one.
func TestAdapterRefuses(t *testing.T) {
	none := wrench(t, "a", "20 to 120 N·m", "1 N·m", "0.04")
	short := long(t, wrench(t, "b", "20 to 120 N·m", "1 N·m", "0.04"), "60 mm")
	high := long(t, wrench(t, "c", "80 to 120 N·m", "1 N·m", "0.04"), "400 mm")
	low := long(t, wrench(t, "d", "20 to 60 N·m", "1 N·m", "0.04"), "400 mm")
	coarse := long(t, wrench(t, "e", "20 to 120 N·m", "20 N·m", "0.04"), "400 mm")
	good := long(t, wrench(t, "f", "20 to 120 N·m", "1 N·m", "0.04"), "400 mm")
	limits := band(t, "80 ±4 N·m")
	c, refused := ChooseWrench(limits, through(t, "60 mm", "180"), []*shop.Wrench{none, short, low})
	want := []Reason{NoLength, NoLever, AboveScale} // 94 N·m on the long one
	if c != nil || len(refused) != 3 {
		t.Fatalf("%+v, %d refused", c, len(refused))
	}
	for i, r := range refused {
		if r.Reason != want[i] {
			t.Errorf("%s for reason %d, want %d", r.Wrench.ID, r.Reason, want[i])
		}
	}
	c, refused = ChooseWrench(limits, through(t, "60 mm", "0"), []*shop.Wrench{none, high, coarse, good}) // 70 N·m
	if c == nil || c.Wrench != good || c.Setting.RatString() != "70" || len(refused) != 3 || refused[1].Reason != BelowScale || refused[2].Reason != NoMark {
		t.Errorf("%+v, %+v", c, refused)
	}
}

// For random wrenches and adapters: the setting is a mark on the scale, the
// torque that it gives at the fastener lies inside the limits, no mark that does
// is nearer to the target, and the setting is the inverse of that torque.
func TestAdapterChoiceProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 16))
	newton, _ := quantity.UnitOf("N·m")
	mm, _ := quantity.UnitOf("mm")
	chosen := 0
	for range 3000 {
		target := big.NewRat(200+r.Int64N(3000), 10)
		b := quantity.Band{Form: quantity.PlusMinus, Nominal: &quantity.Number{Value: target}, Unit: newton}
		b.Low = new(big.Rat).Mul(target, big.NewRat(90+r.Int64N(10), 100))
		b.High = new(big.Rat).Mul(target, big.NewRat(101+r.Int64N(10), 100))
		length := big.NewRat(200+r.Int64N(800), 1)
		a := &Adapter{quantity.Value{Number: quantity.Number{Value: big.NewRat(1+r.Int64N(190), 1)}, Unit: mm}, big.NewRat(r.Int64N(1801), 10)}
		w := &shop.Wrench{Scale: quantity.Scale{Unit: newton, Low: big.NewRat(10, 1), High: big.NewRat(400, 1), Step: big.NewRat(1, []int64{1, 2, 4}[r.IntN(3)])},
			Length: &quantity.Value{Number: quantity.Number{Value: length}, Unit: mm}}
		c, _ := ChooseWrench(b, a, []*shop.Wrench{w})
		if c == nil {
			continue
		}
		chosen++
		at := func(setting *big.Rat) *big.Rat {
			x, _ := AdapterTorque(setting, length, a.Length.Value, a.Angle)
			return x
		}
		inside := func(x *big.Rat) bool { return x.Cmp(b.Low) >= 0 && x.Cmp(b.High) <= 0 }
		if !new(big.Rat).Quo(c.Setting, w.Scale.Step).IsInt() || c.Setting.Cmp(w.Scale.Low) < 0 || c.Setting.Cmp(w.Scale.High) > 0 || !inside(at(c.Setting)) {
			t.Fatalf("%s gives %s outside %s to %s", c.Setting, at(c.Setting), b.Low, b.High)
		}
		near := func(x, y *big.Rat) bool {
			return new(big.Rat).Abs(new(big.Rat).Sub(x, y)).Cmp(big.NewRat(1, 1e9)) < 0
		}
		if !near(c.Torque, at(c.Setting)) {
			t.Fatalf("%s is said to give %s, not %s", c.Setting, c.Torque, at(c.Setting))
		}
		if s, _ := SetAdapter(c.Torque, length, a.Length.Value, a.Angle); !near(s, c.Setting) {
			t.Fatalf("%s is set for %s, and not %s", c.Setting, c.Torque, s)
		}
		off := func(setting *big.Rat) *big.Rat { d := new(big.Rat).Sub(at(setting), target); return d.Abs(d) }
		for _, d := range []int64{-1, 1} {
			next := new(big.Rat).Add(c.Setting, new(big.Rat).Mul(w.Scale.Step, big.NewRat(d, 1)))
			if next.Cmp(w.Scale.Low) >= 0 && next.Cmp(w.Scale.High) <= 0 && inside(at(next)) && off(next).Cmp(new(big.Rat).Sub(off(c.Setting), big.NewRat(1, 1e9))) < 0 {
				t.Fatalf("%s gives %s, but %s is nearer to %s", c.Setting, at(c.Setting), next, target)
			}
		}
	}
	if chosen < 1000 {
		t.Errorf("only %d of the random wrenches could be set", chosen)
	}
}
