package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

func compound(t testing.TB) PressFit {
	nu, e := num(t, "0.3"), num(t, "207000")
	return PressFit{num(t, "60"), num(t, "40"), num(t, "20"), e, e, nu, nu}
}

// interferenceFor returns the interference on the diameter, in mm, that gives
// a pressure in MPa, the inverse of Pressure.
func interferenceFor(f PressFit, pressure *big.Rat) (interference *big.Rat, ok bool) {
	give, ok := f.Compliance()
	if !ok || pressure.Sign() < 0 {
		return nil, false
	}
	return give.Mul(pressure, give), true
}

// Bhandari, Design of Machine Elements, ex. 22.6: tubes of 20/40/60 mm, E 207
// GPa, 100 MPa of hoop stress at the seat of the outer one. Of one material, so
// Poisson's ratio drops out.
func TestPressure(t *testing.T) {
	f := compound(t)
	p := new(big.Rat).Quo(num(t, "100"), LameRatio(f.Outer, f.Seat))
	if got := p.FloatString(2); got != "38.46" {
		t.Errorf("pressure %s MPa, want 38.46", got)
	}
	d, ok := interferenceFor(f, p)
	if !ok || d.FloatString(5) != "0.03171" {
		t.Errorf("interference %v mm, want 0.03171", d)
	}
	if got, _ := f.Pressure(num(t, "0.03171")); got.FloatString(2) != "38.46" {
		t.Errorf("0.03171 mm gives %s MPa, want 38.46", got.FloatString(2))
	}
	// A solid shaft in an unlimited hub of its own material: p = δ·E/(2·d) (from
	// memory); the hub is here a thousand seats wide.
	f.Bore, f.Outer = new(big.Rat), num(t, "40000")
	if got, _ := f.Pressure(num(t, "0.04")); got.FloatString(1) != "103.5" {
		t.Errorf("a solid shaft in a wide hub: %s MPa, want 103.5", got.FloatString(1))
	}
	for name, change := range map[string]func(*PressFit){
		"hub inside the seat": func(f *PressFit) { f.Outer = num(t, "40") },
		"bore of the seat":    func(f *PressFit) { f.Bore = num(t, "40") },
		"bore below zero":     func(f *PressFit) { f.Bore = num(t, "-1") },
		"no modulus":          func(f *PressFit) { f.HubModulus = new(big.Rat) },
		"a shaft without one": func(f *PressFit) { f.ShaftModulus = new(big.Rat) },
	} {
		f := compound(t)
		change(&f)
		if p, ok := f.Pressure(num(t, "0.03")); ok {
			t.Errorf("%s: %s", name, p)
		}
		if d, ok := interferenceFor(f, num(t, "30")); ok {
			t.Errorf("%s: %s", name, d)
		}
	}
	if d, ok := interferenceFor(compound(t), num(t, "-30")); ok {
		t.Errorf("a pull on the seat has an interference of %s", d)
	}
	p, _ = compound(t).Pressure(new(big.Rat))
	if d, ok := interferenceFor(compound(t), new(big.Rat)); !ok || p == nil || p.Sign() != 0 || d.Sign() != 0 {
		t.Errorf("no interference presses with %v, no pressure has %v", p, d)
	}
	if p, ok := compound(t).Pressure(num(t, "-0.01")); ok {
		t.Errorf("clearance presses with %s", p)
	}
}

// The same tubes pressed together over 50 mm: Force is PressForce of Pressure.
func TestForce(t *testing.T) {
	f, ok := compound(t).Force(num(t, "0.03171"), num(t, "0.1"), num(t, "50"))
	// Recomputed: 0.1 × 38.46 × π × 40 × 50 = 24 165 N, from the rounded 0.03171 24 166.
	if !ok || f.Cmp(num(t, "24160")) < 0 || f.Cmp(num(t, "24170")) > 0 {
		t.Errorf("%v N, want 24165", f)
	}
	if f, ok := compound(t).Force(num(t, "-0.01"), num(t, "0.1"), num(t, "50")); ok {
		t.Errorf("clearance presses with %s N", f)
	}
}

func TestPressForce(t *testing.T) {
	// Recomputed: 0.1 × 38.46 × π × 40 × 50 = 24 165 N.
	f := PressForce(num(t, "0.1"), num(t, "38.46"), num(t, "40"), num(t, "50"))
	if got := f.FloatString(0); got != "24165" {
		t.Errorf("%s N, want 24165", got)
	}
	// 24 165 N on a ram of 50 mm, 1963.5 mm²: 12.31 MPa.
	if got := RamArea(num(t, "50")).FloatString(1); got != "1963.5" {
		t.Errorf("area %s mm², want 1963.5", got)
	}
	if p, ok := RamPressure(f, RamArea(num(t, "50"))); !ok || p.FloatString(2) != "12.31" {
		t.Errorf("gauge %v MPa, want 12.31", p)
	}
	if p, ok := RamPressure(f, new(big.Rat)); ok {
		t.Errorf("no ram: %s", p)
	}
}

func TestTemperatureRise(t *testing.T) {
	for _, c := range []struct{ most, clearance, expansion, diameter, want, source string }{
		{"0.0010", "0.0020", "12.8e-6", "1.000", "234", "textbook: aluminum hub, inches, °F"},
		{"0.059", "0.050", "11.4e-6", "50", "191", "recomputed: 50 H7/s6, gray iron hub (Callister: 11.4), 0.050 mm to spare, °C"},
		{"-0.010", "0.005", "11.4e-6", "50", "0", "goes together cold"},
	} {
		got, ok := TemperatureRise(num(t, c.most), num(t, c.clearance), num(t, c.expansion), num(t, c.diameter))
		if !ok || got.FloatString(0) != c.want {
			t.Errorf("%s: %v, want %s", c.source, got, c.want)
		}
	}
	if r, ok := TemperatureRise(num(t, "0.01"), num(t, "0.01"), new(big.Rat), num(t, "50")); ok {
		t.Errorf("without expansion: %s", r)
	}
	if r, ok := TemperatureRise(num(t, "0.01"), num(t, "0.01"), num(t, "11.4e-6"), new(big.Rat)); ok {
		t.Errorf("without a diameter: %s", r)
	}
	// Also wrong: α of the housing alone where the race follows it. 356.0 with
	// steel at 12 (Callister: 21.5; steel from memory): 9.5 of 21.5 counts.
	alone, _ := TemperatureRise(num(t, "0.03"), num(t, "0.02"), num(t, "21.5e-6"), num(t, "52"))
	together, ok := RiseTogether(num(t, "0.03"), num(t, "0.02"), num(t, "21.5e-6"), num(t, "12e-6"), num(t, "52"))
	if !ok || alone.FloatString(0) != "45" || together.FloatString(0) != "101" {
		t.Errorf("alone %s, together %v; want 45 and 101", alone.FloatString(1), together)
	}
	if r, ok := RiseTogether(num(t, "0.03"), num(t, "0.02"), num(t, "11.4e-6"), num(t, "12e-6"), num(t, "52")); ok {
		t.Errorf("an outer part that expands less opens at %s", r)
	}
}

func TestHeatFast(t *testing.T) {
	for _, c := range []struct {
		outer, inner string
		want         bool
	}{
		{"21.5e-6", "12e-6", false},
		{"15e-6", "12e-6", false}, // just the 3 that parts them
		{"14.99999999e-6", "12e-6", true},
		{"11.4e-6", "12e-6", true}, // gray iron on steel
	} {
		if got := HeatFast(num(t, c.outer), num(t, c.inner)); got != c.want {
			t.Errorf("%s on %s: %v", c.outer, c.inner, got)
		}
	}
}

func TestCaps(t *testing.T) {
	caps := []Cap{{"paint", num(t, "150")}, {"bearing", BearingCap}, {"seal", num(t, "100")}, {"cage", num(t, "100")}}
	if at, ok := LowestCap(caps); !ok || caps[at].Why != "seal" {
		t.Errorf("the cap is that of the %q", caps[at].Why)
	}
	if _, ok := LowestCap(nil); ok {
		t.Error("a cap of nothing")
	}
	// MIL-HDBK-1164, table 17, has 200 to 250 °F, 93.3 to 121.1 °C; TM
	// 5-3810-307-24-1-1 not above 250 °F. Also published, but wrong: 275 °F, which
	// another manual allows, is 135 °C.
	for _, c := range []struct {
		heat string
		over bool
	}{{"200 °F", false}, {"248 °F", false}, {"250 °F", true}, {"275 °F", true}} {
		if over := value(t, c.heat).In(celsius).Value.Cmp(BearingCap) > 0; over != c.over {
			t.Errorf("a bearing at %s: over is %t", c.heat, over)
		}
	}
	if BearingCap.Cmp(value(t, "250 °F").In(celsius).Value) > 0 {
		t.Error("the cap of a bearing is above 250 °F")
	}
}

// Pressure and interference are inverse and rise together; a thicker hub
// presses harder; the rise opens just what is needed; two parts heated together
// want more than one alone.
func TestFitProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 2))
	for range 300 {
		seat := 20 + r.Int64N(200)
		f := PressFit{
			Outer: big.NewRat(seat+5+r.Int64N(100), 1), Seat: big.NewRat(seat, 1), Bore: big.NewRat(r.Int64N(seat-5), 1),
			HubModulus: big.NewRat(70000+r.Int64N(140000), 1), ShaftModulus: big.NewRat(207000, 1),
			HubPoisson: big.NewRat(20+r.Int64N(15), 100), ShaftPoisson: big.NewRat(3, 10),
		}
		d := big.NewRat(1+r.Int64N(200), 1000)
		p, ok := f.Pressure(d)
		if !ok || p.Sign() <= 0 {
			t.Fatal("no pressure")
		}
		if back, _ := interferenceFor(f, p); back.Cmp(d) != 0 {
			t.Fatalf("%s mm becomes %s", d, back)
		}
		if more, _ := f.Pressure(new(big.Rat).Add(d, big.NewRat(1, 1000))); more.Cmp(p) <= 0 {
			t.Fatal("more interference, no more pressure")
		}
		thicker := f
		thicker.Outer = new(big.Rat).Add(f.Outer, big.NewRat(1, 1))
		if more, _ := thicker.Pressure(d); more.Cmp(p) <= 0 {
			t.Fatal("a thicker hub presses no harder")
		}
		clearance := big.NewRat(r.Int64N(80), 1000)
		outer, inner := big.NewRat(110+r.Int64N(130), 10000000), big.NewRat(50+r.Int64N(50), 10000000)
		alone, _ := TemperatureRise(d, clearance, outer, f.Seat)
		if o := Opening(outer, f.Seat, alone); o.Cmp(new(big.Rat).Add(d, clearance)) != 0 {
			t.Fatalf("a rise of %s opens %s", alone, o)
		}
		if together, ok := RiseTogether(d, clearance, outer, inner, f.Seat); !ok || together.Cmp(alone) <= 0 {
			t.Fatal("two parts heated together open as soon as one alone")
		}
	}
}

func TestHeatBand(t *testing.T) {
	// Recomputed: 62 mm of gray iron (Callister: 11.4), 0.035 mm of interference
	// and 0.020 to spare: 77.8 °C above a room of 20 °C.
	rise, _ := TemperatureRise(num(t, "0.035"), num(t, "0.020"), num(t, "11.4e-6"), num(t, "62"))
	b, ok := HeatBand(num(t, "20"), rise, BearingCap)
	if !ok || b.Low.FloatString(1) != "97.8" || b.High != BearingCap {
		t.Errorf("%v to %v", b.Low, b.High)
	}
	if b, ok := HeatBand(num(t, "43"), rise, BearingCap); ok {
		t.Errorf("above the cap: %v", b.Low)
	}
	if c := ChillBand(num(t, "15"), num(t, "66")); c.Low != nil || c.High.Cmp(num(t, "-51")) != 0 {
		t.Errorf("chill to %v", c.High)
	}
}

// On any thermometer the range lies between what opens the seat and the cap.
func TestHeatBandProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 3))
	shown := 0
	for range 500 {
		cap := big.NewRat(80+r.Int64N(60), 1)
		rise, _ := TemperatureRise(big.NewRat(r.Int64N(60), 1000), big.NewRat(r.Int64N(40), 1000),
			big.NewRat(100+r.Int64N(140), 10000000), big.NewRat(20+r.Int64N(200), 1))
		room := big.NewRat(5+r.Int64N(35), 1)
		b, ok := HeatBand(room, rise, cap)
		if need := new(big.Rat).Add(room, rise); ok != (need.Cmp(cap) <= 0) {
			t.Fatalf("%s to %s: %v", need, cap, ok)
		}
		if !ok {
			continue
		}
		for _, symbol := range []string{"°C", "°F"} {
			u, _ := quantity.UnitOf(symbol)
			m, ok := b.Inward(quantity.Scale{Unit: u, Step: big.NewRat(1+r.Int64N(10), 2)})
			if !ok {
				continue
			}
			shown++
			low, high := quantity.Convert(m.Low, u, celsius), quantity.Convert(m.High, u, celsius)
			if low.Cmp(b.Low) < 0 || high.Cmp(cap) > 0 {
				t.Fatalf("%s to %s °C are read as %s to %s", b.Low, cap, low, high)
			}
		}
	}
	if shown < 200 {
		t.Errorf("only %d ranges were shown", shown)
	}
}
