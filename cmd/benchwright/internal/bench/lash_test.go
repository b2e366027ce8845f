package bench

import (
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

func TestMeshRate(t *testing.T) {
	for _, c := range []struct{ angle, want string }{
		{"14.5", "1.933"}, {"20", "1.374"}, // published: Δa = 1.933 j and 1.374 j
	} {
		if got := new(big.Rat).Inv(MeshRate(num(t, c.angle))); !near(t, got, c.want, 3) {
			t.Errorf("%s°: %s, want %s", c.angle, got.FloatString(5), c.want)
		}
	}
	for _, bad := range []string{"0", "90", "-20", "120"} {
		if MeshRate(num(t, bad)) != nil {
			t.Errorf("a pressure angle of %s°", bad)
		}
	}
}

func TestAxialRate(t *testing.T) {
	for _, c := range []struct {
		teeth, mate int
		spiral      string
		want        string // recomputed from the formula with other tools; the form is from memory
	}{
		{20, 20, "0", "0.51473"},
		{20, 40, "0", "0.32554"},
		{40, 20, "0", "0.65109"},
		{20, 20, "60", "1.02946"}, // 4·tan 20°·sin 45°
	} {
		got := Bevel{c.teeth, c.mate, num(t, "20"), num(t, c.spiral)}.AxialRate()
		if !near(t, got, c.want, 5) {
			t.Errorf("%d/%d teeth: %s, want %s", c.teeth, c.mate, got.FloatString(7), c.want)
		}
	}
	for _, b := range []Bevel{
		{0, 20, num(t, "20"), num(t, "0")}, {20, -1, num(t, "20"), num(t, "0")},
		{20, 20, num(t, "0"), num(t, "0")}, {20, 20, num(t, "20"), num(t, "90")}, {20, 20, num(t, "20"), num(t, "-1")},
	} {
		if b.AxialRate() != nil {
			t.Errorf("%+v has a rate", b)
		}
	}
}

// With the squares of sin δ of pinion and gear adding up to 1, so do those of
// their rates to that of the mesh.
func TestAxialRateProperties(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 1))
	for range 50 {
		z, m := 8+rng.IntN(60), 8+rng.IntN(60)
		a := big.NewRat(int64(145+rng.IntN(110)), 10)
		p := Bevel{z, m, a, new(big.Rat)}.AxialRate()
		g := Bevel{m, z, a, new(big.Rat)}.AxialRate()
		mesh := MeshRate(a)
		diff := new(big.Rat).Add(p.Mul(p, p), g.Mul(g, g))
		diff.Sub(diff, mesh.Mul(mesh, mesh)).Abs(diff)
		if diff.Cmp(num(t, "1e-20")) > 0 {
			t.Errorf("%d/%d at %s°: off by %s", z, m, a.FloatString(1), diff.FloatString(25))
		}
		more := Bevel{z + 1, m, a, new(big.Rat)}.AxialRate()
		if more.Cmp(Bevel{z, m, a, new(big.Rat)}.AxialRate()) <= 0 {
			t.Errorf("%d/%d: not more with a tooth more", z, m)
		}
	}
}

func TestFarFromTheory(t *testing.T) {
	for _, c := range []struct {
		own, theory string
		far         bool
	}{
		{"2/3", "0.51473", false}, // 0.003 in of shim for 0.002 in of backlash: a published shop rule
		{"-0.65", "0.65109", false},
		{"1.5", "0.51473", true}, // the shop rule upside down
		{"0.2", "0.51473", true},
		{"0", "0.51473", true},
	} {
		if got := FarFromTheory(num(t, c.own), num(t, c.theory)); got != c.far {
			t.Errorf("%s beside %s: %v", c.own, c.theory, got)
		}
	}
}

func TestLashFactor(t *testing.T) {
	at := func(r string, square bool) LashPoint { return LashPoint{num(t, r), square} }
	zero, a, b := num(t, "0"), num(t, "20"), num(t, "35")
	for _, c := range []struct {
		stated, dial LashPoint
		want         string
	}{
		{at("50", false), at("50", true), "0.7698"}, // 23 % less
		{at("50", true), at("50", false), "1.2991"},
		{at("50", false), at("75", false), "1.5000"},
		{at("50", true), at("75", true), "1.5000"},
		{at("50", false), at("25", true), "0.3849"},
	} {
		got := LashFactor(c.stated, c.dial, a, b)
		if !near(t, got, c.want, 4) {
			t.Errorf("%v to %v: %s, want %s", c.stated, c.dial, got.FloatString(6), c.want)
		}
		back := LashFactor(c.dial, c.stated, a, b)
		if back.Mul(back, got).Cmp(big.NewRat(1, 1)) != 0 {
			t.Errorf("%v to %v and back: %s", c.stated, c.dial, back.FloatString(9))
		}
	}
	if LashFactor(at("0", false), at("5", false), a, b) != nil || LashFactor(at("5", false), at("0", false), a, b) != nil ||
		LashFactor(at("5", false), at("-5", false), a, b) != nil ||
		LashFactor(at("5", false), at("5", true), num(t, "90"), zero) != nil {
		t.Error("a factor of no sense")
	}
}

func TestOnDial(t *testing.T) {
	for _, c := range []struct{ limits, factor, span, marks, want string }{
		{"0.15 to 0.25 mm", "1", "0 to 10 mm", "0.01 mm", "0.15 to 0.25 mm"},
		{"0.15 to 0.25 mm", "0.7698", "0 to 10 mm", "0.01 mm", "0.12 to 0.19 mm"}, // 0.1155 to 0.1924
		{"0.15 to 0.25 mm", "1.5", "0 to 10 mm", "0.01 mm", "0.23 to 0.37 mm"},    // 0.225 to 0.375
		{"0.15 to 0.25 mm", "1", "0 to 0.1 in", "0.001 in", "0.006 to 0.009 in"},  // 0.0059 to 0.0098
		{"0.20 ±0.05 mm", "1", "0 to 10 mm", "0.01 mm", "0.15 to 0.25 mm"},
		{"max 0.25 mm", "0.5", "0 to 10 mm", "0.01 mm", "max 0.12 mm"},
		{"at least 0.25 mm", "0.5", "0 to 10 mm", "0.01 mm", "at least 0.13 mm"},
		{"0.21 to 0.24 mm", "1", "0 to 10 mm", "0.05 mm", ""},
		{"0.15 to 0.25 mm", "0", "0 to 10 mm", "0.01 mm", ""},
	} {
		_, m, ok := OnDial(band(t, c.limits), num(t, c.factor), scale(t, c.span, c.marks))
		got := ""
		if ok {
			got = strings.ReplaceAll(m.Print(quantity.Point), "\u00a0", " ")
		}
		if got != c.want {
			t.Errorf("%s × %s: %q, want %q", c.limits, c.factor, got, c.want)
		}
	}
}

// A scaled band keeps its aim.
func TestScaled(t *testing.T) {
	b := Scaled(band(t, "0.20 +0.05/-0.10 mm"), num(t, "1.5"), quantity.MustUnit("mm"))
	if b.Low.Cmp(num(t, "0.15")) != 0 || b.High.Cmp(num(t, "0.375")) != 0 || b.Target().Cmp(num(t, "0.30")) != 0 {
		t.Errorf("%s to %s, aiming at %s", b.Low, b.High, b.Target())
	}
}

// AGMA recommended backlash by diametral pitch, quality 7 to 13.
func TestUsualLash(t *testing.T) {
	for _, c := range []struct{ pitch, low, high string }{
		{"4.5", "0.006", "0.008"}, {"5.5", "0.005", "0.007"}, {"7", "0.004", "0.006"},
		{"4", "0.006", "0.008"}, {"5", "0.005", "0.008"}, {"6", "0.004", "0.007"}, {"8", "0.004", "0.006"},
		{"127/15", "", ""}, // module 3: 8.47
		{"3.99", "", ""},
	} {
		low, high, ok := UsualLash(num(t, c.pitch))
		if ok != (c.low != "") || ok && (low.Cmp(num(t, c.low)) != 0 || high.Cmp(num(t, c.high)) != 0) {
			t.Errorf("%s: %v to %v", c.pitch, low, high)
		}
	}
}

func TestJudgeLash(t *testing.T) {
	for _, c := range []struct {
		limits, pitch string
		want          LashFinding
	}{
		{"0.10 to 0.15 mm", "7", LashUsual},
		{"0.15 to 0.25 mm", "7", LashUsual}, // 0.0059 in is still within
		{"0.20 to 0.30 mm", "7", LashLarge},
		{"0.02 to 0.05 mm", "7", LashSmall},
		{"max 0.05 mm", "7", LashSmall},
		{"at least 0.05 mm", "7", LashUsual},
		{"0.005 in", "7", LashUsual},
		{"0.05 in", "7", LashLarge}, // a decimal point out of place
		{"0.05 in", "8.47", LashNoRow},
		{"5 N", "7", LashNoRow},
	} {
		if got := JudgeLash(band(t, c.limits), num(t, c.pitch)); got != c.want {
			t.Errorf("%s at %s: %d, want %d", c.limits, c.pitch, got, c.want)
		}
	}
}
