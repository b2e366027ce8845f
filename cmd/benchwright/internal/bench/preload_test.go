package bench

import (
	"math/big"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

func value(t testing.TB, s string) quantity.Value {
	t.Helper()
	v, p := quantity.ParseValue(s, quantity.Point)
	if p != nil {
		t.Fatalf("%q: %s", s, p.Message)
	}
	return v
}

// near reports whether got rounds to want at the last digit of want.
func near(t testing.TB, got *big.Rat, want string, decimals int) bool {
	t.Helper()
	return got != nil && got.FloatString(decimals) == want
}

func TestTurningTorque(t *testing.T) {
	for _, c := range []struct {
		pull, drum, cord, unit, want string
		decimals                     int
		source                       string
	}{
		{"24 lbf", "8-5/16 in", "0 in", "lbf·ft", "16.6", 1, "TM 5-3805-257-14&P: hub radius 8-5/16 in × 24 lb ÷ 12"},
		{"3 lbf", "5 in", "0 in", "lbf·in", "15.000", 3, "T = F × R, TM 5-2420-230-24-1"},
		{"15 lbf", "1 in", "0 in", "N·m", "1.7", 1, "15 lbf·in (1.7 N·m), same manual"},
		{"25 lbf", "1 in", "0 in", "N·m", "2.8", 1, "25 lbf·in (2.8 N·m), same manual"},
	} {
		u, _ := quantity.UnitOf(c.unit)
		got := quantity.Convert(RotatingTorque(value(t, c.pull), value(t, c.drum), value(t, c.cord)), newtonMeter, u)
		if !near(t, got, c.want, c.decimals) {
			t.Errorf("%s at %s: %s, want %s (%s)", c.pull, c.drum, got.FloatString(5), c.want, c.source)
		}
	}
}

func TestTurningTorqueRefuses(t *testing.T) {
	for _, c := range [][3]string{{"-1 N", "40 mm", "3 mm"}, {"1 mm", "40 mm", "3 mm"}, {"1 N", "0 mm", "3 mm"}, {"1 N", "40 mm", "-1 mm"}, {"1 N", "4 kg", "3 mm"}, {"1 N", "40 mm", "3 s"}} {
		if got := RotatingTorque(value(t, c[0]), value(t, c[1]), value(t, c[2])); got != nil {
			t.Errorf("%v: %s", c, got)
		}
	}
	if got := RotatingTorque(value(t, "0 N"), value(t, "40 mm"), value(t, "0 mm")); got == nil || got.Sign() != 0 {
		t.Errorf("no pull: %v", got)
	}
}

func TestPull(t *testing.T) {
	for _, c := range []struct{ torque, drum, cord, span, marks, want string }{
		// 48.19 N with the half cord; 50 N, without it, would be 2.075 N·m.
		{"1.5 to 2.0 N·m", "40 mm", "3 mm", "0 to 100 N", "1 N", "37 to 48 N"},
		{"max 2.0 N·m", "40 mm", "3 mm", "0 to 100 N", "2 N", "max 48 N"},
		{"at least 2.0 N·m", "40 mm", "3 mm", "0 to 100 N", "1 N", "at least 49 N"},
		{"15 to 25 lbf·in", "2 in", "0 in", "0 to 50 lbf", "1/2 lbf", "7.5 to 12.5 lbf"}, // TM 5-2420-230-24-1
		{"1.7 to 1.71 N·m", "40 mm", "3 mm", "0 to 100 N", "5 N", ""},                    // between two marks
		{"2.0 N·m", "40 mm", "3 mm", "0 to 100 N", "1 N", ""},                            // no limits
		{"1 to 2 N·m", "0 mm", "3 mm", "0 to 100 N", "1 N", ""},
		{"1 to 2 N·m", "40 N", "3 mm", "0 to 100 N", "1 N", ""},
		{"1 to 2 N·m", "40 mm", "3 mm", "0 to 10 kg", "1 kg", ""}, // a mass is no pull
		{"1 to 2 N", "40 mm", "3 mm", "0 to 100 N", "1 N", ""},    // nor a pull a torque
		{"-1 to 2 N·m", "40 mm", "3 mm", "0 to 100 N", "1 N", ""},
		{"-2 to -1 N·m", "40 mm", "3 mm", "-100 to 100 N", "1 N", ""},
		{"0 to 2 N·m", "40 mm", "3 mm", "0 to 100 N", "1 N", "0 to 48 N"},
		{"1 to 2 N·m", "40 mm", "-3 mm", "0 to 100 N", "1 N", ""},
		{"1 to 2 N·m", "40 mm", "3 N", "0 to 100 N", "1 N", ""},
	} {
		_, m, ok := Pull(band(t, c.torque), value(t, c.drum), value(t, c.cord), scale(t, c.span, c.marks))
		got := ""
		if ok {
			got = strings.ReplaceAll(m.Print(quantity.Point), "\u00a0", " ")
		}
		if got != c.want {
			t.Errorf("%s on %s with %s: %q, want %q", c.torque, c.drum, c.cord, got, c.want)
		}
	}
	exact, _, _ := Pull(band(t, "1.0 to 2.0 N·m"), value(t, "40 mm"), value(t, "3 mm"), scale(t, "0 to 100 N", "1 N"))
	if !near(t, exact.High, "48.2", 1) {
		t.Errorf("2.0 N·m on 40 mm with 3 mm cord: %s N, want 48.2", exact.High.FloatString(3))
	}
	// Also published, but wrong: without half the cord, 50 N. They make 2.075 N·m.
	if got := RotatingTorque(value(t, "50 N"), value(t, "40 mm"), value(t, "3 mm")); got.Cmp(num(t, "2.075")) != 0 {
		t.Errorf("50 N on 40 mm with 3 mm cord make %s N·m, want 2.075", got.FloatString(4))
	}
}

func TestPullNeverOutside(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 8))
	s := scale(t, "0 to 60 lbf", "0.25 lbf")
	for range 300 {
		low := 1 + rng.IntN(400)
		b := band(t, "0."+strconv.Itoa(100+low)+" to 0."+strconv.Itoa(100+low+1+rng.IntN(300))+" N·m")
		drum, cord := value(t, strconv.Itoa(5+rng.IntN(90))+" mm"), value(t, strconv.Itoa(rng.IntN(5))+" mm")
		exact, m, ok := Pull(b, drum, cord, s)
		for i, end := range []*big.Rat{exact.Low, exact.High} {
			v := quantity.Value{Number: quantity.Number{Value: end}, Unit: s.Unit}
			if back := RotatingTorque(v, drum, cord); back.Cmp([]*big.Rat{b.Low, b.High}[i]) != 0 {
				t.Fatalf("%s on %s: back %s", b.Written, drum.Text, back)
			}
		}
		if ok && (m.Low.Cmp(exact.Low) < 0 || m.High.Cmp(exact.High) > 0) {
			t.Errorf("%s on %s: %s outside", b.Written, drum.Text, m.Print(quantity.Point))
		}
		// The torque that each mark makes lies inside the manual's limits, and a
		// larger drum never asks for a harder pull.
		if larger := value(t, "100 mm"); ok {
			for _, mark := range []*big.Rat{m.Low, m.High} {
				v := quantity.Value{Number: quantity.Number{Value: mark}, Unit: s.Unit}
				if back := RotatingTorque(v, drum, cord); back.Cmp(b.Low) < 0 || back.Cmp(b.High) > 0 {
					t.Errorf("%s lbf on %s is %s N·m, outside %s", mark.RatString(), drum.Text, back.FloatString(4), b.Written)
				}
			}
			if less, _, _ := Pull(b, larger, cord, s); less.High.Cmp(exact.High) >= 0 {
				t.Errorf("%s: a larger drum than %s does not ask for less pull", b.Written, drum.Text)
			}
		}
	}
}
