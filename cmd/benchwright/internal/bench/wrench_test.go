package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
)

// wrench returns a wrench of this range, marks and accuracy, "" for none stated.
func wrench(t testing.TB, id, span, marks, accuracy string) *shop.Wrench {
	t.Helper()
	w := &shop.Wrench{Item: shop.Item{ID: id}, Scale: scale(t, span, marks)}
	if accuracy != "" {
		w.Accuracy = num(t, accuracy)
	}
	return w
}

func TestChooseWrench(t *testing.T) {
	w := func(id, span, marks, accuracy string) *shop.Wrench { return wrench(t, id, span, marks, accuracy) }
	for _, c := range []struct {
		why     string
		limits  string
		shop    []*shop.Wrench
		id      string // of the wrench chosen
		setting string
		keeps   bool
		low     bool
	}{
		{"the nominal of a ±", "100 ±5 N·m", []*shop.Wrench{w("a", "20 to 120 N·m", "1 N·m", "0.04")}, "a", "100", true, false},
		{"the nominal where tolerances differ", "100 +8/-4 N·m", []*shop.Wrench{w("a", "20 to 120 N·m", "1 N·m", "0.04")}, "a", "100", true, false},
		{"the middle of a range", "100 to 108 N·m", []*shop.Wrench{w("a", "20 to 120 N·m", "1 N·m", "0.03")}, "a", "104", true, false},
		{"a nominal off the marks", "100 +5/-0 N·m", []*shop.Wrench{w("a", "20 to 160 N·m", "8 N·m", "0")}, "a", "104", true, false},
		{"a tie takes the lower mark", "95 to 106 N·m", []*shop.Wrench{w("a", "20 to 120 N·m", "1 N·m", "0.04")}, "a", "100", true, false},
		{"another unit", "100 ±5 N·m", []*shop.Wrench{w("a", "10 to 100 lbf·ft", "1 lbf·ft", "0.04")}, "a", "74", true, false},
		{"accuracy comes first", "100 ±5 N·m", []*shop.Wrench{w("a", "20 to 120 N·m", "1 N·m", "0.06"), w("b", "20 to 120 N·m", "5 N·m", "0.04")}, "b", "100", true, false},
		{"accuracy before the share of the range", "100 ±5 N·m", []*shop.Wrench{w("a", "20 to 120 N·m", "1 N·m", "0.06"), w("b", "50 to 1000 N·m", "5 N·m", "0.04")}, "b", "100", true, true},
		{"the share before the finer marks", "100 ±5 N·m", []*shop.Wrench{w("a", "50 to 1000 N·m", "1 N·m", "0.04"), w("b", "20 to 120 N·m", "5 N·m", "0.04")}, "b", "100", true, false},
		{"then the finer marks", "100 ±5 N·m", []*shop.Wrench{w("a", "20 to 120 N·m", "5 N·m", "0.04"), w("b", "20 to 120 N·m", "1 N·m", "0.04")}, "b", "100", true, false},
		{"finer marks over units", "100 ±5 N·m", []*shop.Wrench{w("a", "10 to 100 lbf·ft", "1 lbf·ft", "0.04"), w("b", "20 to 120 N·m", "1 N·m", "0.04")}, "b", "100", true, false},
		{"then the order of the list", "100 ±5 N·m", []*shop.Wrench{w("a", "20 to 120 N·m", "1 N·m", "0.04"), w("b", "20 to 120 N·m", "1 N·m", "0.02")}, "a", "100", true, false},
		{"20 % is enough", "24 ±2 N·m", []*shop.Wrench{w("a", "20 to 120 N·m", "1 N·m", "0.04")}, "a", "24", true, false},
		{"below 20 % is low", "23 ±2 N·m", []*shop.Wrench{w("a", "20 to 120 N·m", "1 N·m", "0.04")}, "a", "23", true, true},
		{"none keeps it inside", "100 ±1 N·m", []*shop.Wrench{w("a", "20 to 120 N·m", "1 N·m", "0.04")}, "a", "100", false, false},
		{"an accuracy not stated is not trusted", "100 ±5 N·m", []*shop.Wrench{w("a", "20 to 120 N·m", "1 N·m", ""), w("b", "20 to 120 N·m", "5 N·m", "0.04")}, "b", "100", true, false},
		{"the scale ends inside the limits", "110 to 140 N·m", []*shop.Wrench{w("a", "20 to 120 N·m", "1 N·m", "0.04")}, "a", "120", true, false},
		{"a maximum is drawn in by the accuracy", "max 100 N·m", []*shop.Wrench{w("a", "20 to 120 N·m", "1 N·m", "0.04")}, "a", "96", true, false},
		{"a minimum too", "at least 100 N·m", []*shop.Wrench{w("a", "20 to 120 N·m", "1 N·m", "0.04")}, "a", "105", true, false},
		{"a minimum at the end of the scale", "at least 118 N·m", []*shop.Wrench{w("a", "20 to 120 N·m", "1 N·m", "0.04")}, "a", "120", false, false},
	} {
		got, refused := ChooseWrench(band(t, c.limits), nil, c.shop)
		if got == nil {
			t.Errorf("%s: no wrench for %s", c.why, c.limits)
			continue
		}
		if len(refused) > 0 {
			t.Errorf("%s: %s was refused", c.why, refused[0].Wrench.ID)
		}
		if got.Wrench.ID != c.id || got.Setting.Cmp(num(t, c.setting)) != 0 || got.Keeps != c.keeps || got.LowInRange != c.low {
			t.Errorf("%s: %s on %s, keeps %v, low %v; want %s on %s, %v, %v",
				c.why, got.Setting.RatString(), got.Wrench.ID, got.Keeps, got.LowInRange, c.setting, c.id, c.keeps, c.low)
		}
	}
}

func TestHowFarOut(t *testing.T) {
	c, _ := ChooseWrench(band(t, "100 +3/-1 N·m"), nil, []*shop.Wrench{wrench(t, "a", "20 to 120 N·m", "1 N·m", "0.04")})
	for name, x := range map[string][2]*big.Rat{
		"least": {c.Least, num(t, "96")}, "most": {c.Most, num(t, "104")},
		"under": {c.Under, num(t, "3")}, "over": {c.Over, num(t, "1")},
	} {
		if x[0] == nil || x[0].Cmp(x[1]) != 0 {
			t.Errorf("%s is %v, want %s", name, x[0], x[1].RatString())
		}
	}
	if got := c.Marks.Print(quantity.Point); got != "99 to 103\u00a0N·m" {
		t.Errorf("the limits on the wrench are %q", got)
	}
	c, _ = ChooseWrench(band(t, "100 ±5 N·m"), nil, []*shop.Wrench{wrench(t, "a", "20 to 120 N·m", "1 N·m", "")})
	if c.Keeps || c.Least != nil || c.Under != nil || c.Over != nil {
		t.Error("a wrench without an accuracy says how far out it can be")
	}
}

func TestRefusedWrenches(t *testing.T) {
	old := wrench(t, "old", "20 to 120 N·m", "1 N·m", "0.04")
	old.ReplacedBy = "new"
	list := []*shop.Wrench{
		wrench(t, "big", "50 to 250 N·m", "5 N·m", "0.04"),
		wrench(t, "small", "2 to 10 N·m", "0.1 N·m", "0.06"),
		wrench(t, "coarse", "10 to 100 N·m", "10 N·m", "0.04"),
		wrench(t, "pull", "0 to 50 N", "1 N", "0.04"),
		old,
	}
	c, refused := ChooseWrench(band(t, "22 to 28 N·m"), nil, list)
	if c != nil {
		t.Errorf("%s was chosen", c.Wrench.ID)
	}
	want := []Reason{BelowScale, AboveScale, NoMark, OtherKind, Superseded}
	if len(refused) != len(want) {
		t.Fatalf("%d wrenches were refused, want %d", len(refused), len(want))
	}
	for i, r := range refused {
		if r.Wrench != list[i] || r.Reason != want[i] {
			t.Errorf("%s is refused for reason %d, want %s for %d", r.Wrench.ID, r.Reason, list[i].ID, want[i])
		}
	}
	// Limits that are open to one side too; those that just reach the scale are on it.
	for limits, want := range map[string]Reason{"max 15 N·m": BelowScale, "at least 130 N·m": AboveScale, "19.2 to 19.8 N·m": BelowScale, "120.2 to 121 N·m": AboveScale, "60.2 to 60.8 N·m": NoMark} {
		c, refused := ChooseWrench(band(t, limits), nil, []*shop.Wrench{wrench(t, "a", "20 to 120 N·m", "1 N·m", "0.04")})
		if c != nil || len(refused) != 1 || refused[0].Reason != want {
			t.Errorf("%s: %+v, refused %+v, want %d", limits, c, refused, want)
		}
	}
	for limits, want := range map[string]string{"max 20 N·m": "20", "at least 120 N·m": "120", "15 to 20 N·m": "20", "120 to 130 N·m": "120"} {
		c, _ := ChooseWrench(band(t, limits), nil, []*shop.Wrench{wrench(t, "a", "20 to 120 N·m", "1 N·m", "")})
		if c == nil || c.Setting.RatString() != want {
			t.Errorf("%s: %+v, want %s", limits, c, want)
		}
	}
	if c, refused := ChooseWrench(band(t, "25 N·m"), nil, list); c != nil || refused != nil {
		t.Error("a bare value chose or refused a wrench")
	}
	if c, refused := ChooseWrench(band(t, "22 to 28 N·m"), nil, nil); c != nil || refused != nil {
		t.Error("an empty shop chose or refused a wrench")
	}
}

func TestNeedFor(t *testing.T) {
	limits := band(t, "400 ±20 N·m")
	n := NeedFor(limits, limits.Unit)
	for name, x := range map[string][2]*big.Rat{
		"low": {n.Low, num(t, "380")}, "high": {n.High, num(t, "420")}, "longest": {n.Longest, num(t, "2000")},
		"step": {n.Step, num(t, "20")}, "accuracy": {n.Accuracy, num(t, "0.05")},
	} {
		if x[0] == nil || x[0].Cmp(x[1]) != 0 {
			t.Errorf("%s is %v, want %s", name, x[0], x[1].RatString())
		}
	}
}

// For random limits and shops: the setting is a mark, inside the limits and on
// the scale, and no mark inside them is nearer to the target; what is said to
// keep inside does; a wrench that would do as described is chosen and keeps.
func TestChoiceProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	units := quantity.Units(quantity.Torque)
	chosen := 0
	for range 5000 {
		nominal := quantity.Number{Value: big.NewRat(1+r.Int64N(4000), 10)}
		u := units[r.IntN(3)]
		b := quantity.Band{Form: quantity.PlusMinus, Nominal: &nominal, Unit: u}
		b.Low = new(big.Rat).Mul(nominal.Value, big.NewRat(80+r.Int64N(20), 100))
		b.High = new(big.Rat).Mul(nominal.Value, big.NewRat(101+r.Int64N(20), 100))
		var list []*shop.Wrench
		for range 1 + r.IntN(4) {
			step := big.NewRat(1, []int64{1, 2, 5, 10}[r.IntN(4)])
			low := new(big.Rat).Mul(step, big.NewRat(r.Int64N(200), 1))
			high := new(big.Rat).Add(low, new(big.Rat).Mul(step, big.NewRat(50+r.Int64N(500), 1)))
			list = append(list, &shop.Wrench{
				Scale:    quantity.Scale{Unit: units[r.IntN(3)], Low: low, High: high, Step: step},
				Accuracy: big.NewRat(1+r.Int64N(10), 100),
			})
		}
		c, refused := ChooseWrench(b, nil, list)
		if c == nil {
			if len(refused) != len(list) {
				t.Fatal("a wrench was neither chosen nor refused")
			}
			continue
		}
		chosen++
		s := c.Wrench.Scale
		exact := b.In(s.Unit)
		inside := func(x *big.Rat) bool {
			return x.Cmp(exact.Low) >= 0 && x.Cmp(exact.High) <= 0 && x.Cmp(s.Low) >= 0 && x.Cmp(s.High) <= 0
		}
		if !new(big.Rat).Quo(c.Setting, s.Step).IsInt() || !inside(c.Setting) {
			t.Fatalf("setting %s is no mark inside %s to %s", c.Setting, exact.Low, exact.High)
		}
		off := func(x *big.Rat) *big.Rat { d := new(big.Rat).Sub(x, exact.Nominal.Value); return d.Abs(d) }
		for _, d := range []int64{-1, 1} {
			next := new(big.Rat).Add(c.Setting, new(big.Rat).Mul(s.Step, big.NewRat(d, 1)))
			if cmp := off(next).Cmp(off(c.Setting)); inside(next) && (cmp < 0 || cmp == 0 && d < 0) {
				t.Fatalf("setting %s, but %s is nearer to %s", c.Setting, next, exact.Nominal.Value)
			}
		}
		if c.Keeps != (c.Least.Cmp(exact.Low) >= 0 && c.Most.Cmp(exact.High) <= 0) {
			t.Fatal("what keeps inside was misjudged")
		}
		for _, w := range list {
			if d, _ := ChooseWrench(b, nil, []*shop.Wrench{w}); d != nil && d.Keeps && !c.Keeps {
				t.Fatal("a wrench that keeps inside was passed over")
			}
		}
		if wide, _ := ChooseWrench(widened(b), nil, list); wide == nil || c.Keeps && !wide.Keeps {
			t.Fatal("wider limits lost the wrench")
		}
	}
	if chosen < 1000 {
		t.Errorf("only %d of the random shops had a wrench", chosen)
	}
}

// widened returns b with a tenth more room on both sides.
func widened(b quantity.Band) quantity.Band {
	b.Low = new(big.Rat).Mul(b.Low, big.NewRat(9, 10))
	b.High = new(big.Rat).Mul(b.High, big.NewRat(11, 10))
	return b
}
