package bench

import (
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

func TestGauge(t *testing.T) {
	dial := scale(t, "0 to 10 mm", "0.01 mm")
	for _, c := range []struct {
		limits string
		marks  string // "" where the limits have no width
		want   Fitness
	}{
		{"0.15 to 0.25 mm", "10", Fine},
		{"0.15 to 0.17 mm", "2", Coarse},    // worked by hand
		{"0.15 to 0.16 mm", "1", TooCoarse}, // worked by hand
		{"0.15 to 0.20 mm", "5", Fine},
		{"0.15 to 0.199 mm", "49/10", Coarse},
		{"max 0.05 mm", "5", Fine}, // counted from zero
		{"max 0.04 mm", "4", Coarse},
		{"max 0.01 mm", "1", TooCoarse},
		{"0.006 to 0.010 in", "254/25", Fine},
		{"at least 12 mm", "", Fine},
		{"12 mm", "", Fine},
		{"95 to 105 N·m", "", Fine},
	} {
		marks, ok := MarksAcross(band(t, c.limits), dial)
		if ok != (c.marks != "") {
			t.Errorf("%s: marks counted %v", c.limits, ok)
			continue
		}
		if !ok {
			continue
		}
		if marks.RatString() != c.marks {
			t.Errorf("%s is %s marks wide, want %s", c.limits, marks.RatString(), c.marks)
		}
		if got := JudgeMarks(marks, big.NewRat(5, 1), big.NewRat(2, 1)); got != c.want {
			t.Errorf("%s is of fitness %d, want %d", c.limits, got, c.want)
		}
	}
	for _, step := range []*big.Rat{nil, new(big.Rat), big.NewRat(-1, 100)} {
		bad := dial
		bad.Step = step
		if n, ok := MarksAcross(band(t, "0.15 to 0.25 mm"), bad); ok {
			t.Errorf("%s marks of %v", n, step)
		}
	}
	if JudgeMarks(big.NewRat(1, 1), nil, nil) != Fine {
		t.Error("a rule that the shop does not have was applied")
	}
}

func uncertainty(t *testing.T, s string) quantity.Value {
	t.Helper()
	v, p := quantity.ParseValue(s, quantity.Point)
	if p != nil {
		t.Fatal(p.Message)
	}
	return v
}

func TestGuard(t *testing.T) {
	for _, c := range []struct{ limits, w, u, want string }{
		{"0.15 to 0.25 mm", "1", "0.01 mm", "0.16 to 0.24 mm"}, // worked by hand
		{"0.15 to 0.25 mm", "0.825", "0.01 mm", "0.15825 to 0.24175 mm"},
		{"max 0.05 mm", "1", "10 µm", "max 0.04 mm"},
		{"at least 12 mm", "1", "0.01 mm", "at least 12.01 mm"},
		{"0.15 to 0.16 mm", "1", "0.01 mm", ""},
		{"100 to 120 °C", "1", "9 °F", "105 to 115 °C"},
		{"0.15 mm", "1", "0.01 mm", ""},
		{"0.15 to 0.25 mm", "1", "1 N·m", ""},
	} {
		got, ok := Guard(band(t, c.limits), num(t, c.w), uncertainty(t, c.u))
		text := strings.ReplaceAll(got.Range(quantity.Point), "\u00a0", " ") // exact: a computed band has all its decimals
		if ok != (c.want != "") {
			t.Errorf("%s guarded by %s × %s: something is left: %v", c.limits, c.w, c.u, ok)
		} else if ok && text != c.want {
			t.Errorf("%s guarded by %s × %s is %s, want %s", c.limits, c.w, c.u, text, c.want)
		}
	}
}

func TestUncertaintyRatio(t *testing.T) {
	for _, c := range []struct{ limits, u, want string }{
		{"0.15 to 0.25 mm", "0.01 mm", "5"},
		{"0.15 to 0.23 mm", "10 µm", "4"},
		{"max 0.05 mm", "0.01 mm", "5/2"},
		{"100 to 120 °C", "9 °F", "2"},
		{"at least 12 mm", "0.01 mm", ""},
		{"0.15 to 0.25 mm", "0 mm", ""},
	} {
		got, ok := UncertaintyRatio(band(t, c.limits), uncertainty(t, c.u))
		if ok != (c.want != "") || ok && got.RatString() != c.want {
			t.Errorf("%s to an uncertainty of %s is %v, want %s", c.limits, c.u, got, c.want)
		}
	}
}

// Wider limits are never judged worse, and guarded limits lie inside.
func TestGaugeProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 9))
	dial := scale(t, "0 to 10 mm", "0.01 mm")
	warn, refuse := big.NewRat(5, 1), big.NewRat(2, 1)
	u := uncertainty(t, "0.007 mm")
	for range 500 {
		b := quantity.Band{Unit: dial.Unit, Low: big.NewRat(r.Int64N(100), 1000)}
		b.High = new(big.Rat).Add(b.Low, big.NewRat(r.Int64N(100), 1000))
		wide := b
		wide.High = new(big.Rat).Add(b.High, big.NewRat(r.Int64N(20), 1000))
		m, _ := MarksAcross(b, dial)
		n, _ := MarksAcross(wide, dial)
		if JudgeMarks(n, warn, refuse) > JudgeMarks(m, warn, refuse) {
			t.Fatalf("%s is worse than %s", wide.Range(quantity.Point), b.Range(quantity.Point))
		}
		if g, ok := Guard(b, big.NewRat(1, 1), u); ok && (g.Low.Cmp(b.Low) < 0 || g.High.Cmp(b.High) > 0 || g.Low.Cmp(g.High) > 0) {
			t.Fatalf("%s guarded is %s", b.Range(quantity.Point), g.Range(quantity.Point))
		}
	}
}
