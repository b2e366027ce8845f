package bench

import (
	"math/big"
	"slices"
	"strconv"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

func order(t *testing.T, s string) []int {
	t.Helper()
	var out []int
	for f := range strings.SplitSeq(s, "-") {
		n, err := strconv.Atoi(f)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, n)
	}
	return out
}

func TestOrder(t *testing.T) {
	for _, c := range []struct {
		n            int
		want, source string
	}{
		{4, "1-3-2-4", "ASME PCC-1 legacy cross-pattern, secondary sources"},
		{8, "1-5-3-7-2-6-4-8", "as above"},
		{12, "1-7-4-10-2-8-5-11-3-9-6-12", "as above"},
		{16, "1-9-5-13-3-11-7-15-2-10-6-14-4-12-8-16", "as above"},
		{20, "1-11-6-16-3-13-8-18-5-15-10-20-2-12-7-17-4-14-9-19", "as above"},
		{24, "1-13-7-19-4-16-10-22-2-14-8-20-5-17-11-23-3-15-9-21-6-18-12-24", "as above"},
		{5, "1-3-5-2-4", "common practice"},
		{6, "1-4-2-5-3-6", "common practice"},
		{10, "1-6-3-8-5-10-2-7-4-9", "common practice"},
	} {
		if got := Order(c.n); !slices.Equal(got, order(t, c.want)) {
			t.Errorf("%d bolts: %v, want %s (%s)", c.n, got, c.want, c.source)
		}
	}
	if Order(0) != nil || Order(-3) != nil {
		t.Error("an order of no bolts")
	}
}

func TestOrderProperties(t *testing.T) {
	for n := 1; n <= 200; n++ {
		got := Order(n)
		if f := CheckOrder(n, got); !f.Good() || len(got) != n {
			t.Fatalf("%d bolts: %v is no permutation: %+v", n, got, f)
		}
		if n%2 == 0 {
			for i := 0; i < n; i += 2 {
				if (got[i+1]-got[i]+n)%n != n/2 {
					t.Errorf("%d bolts: %d and %d are not opposite", n, got[i], got[i+1])
				}
			}
		}
		if n%4 == 0 {
			for i := 0; i < n; i += 4 {
				four := slices.Sorted(slices.Values(got[i : i+4]))
				for j := 1; j < 4; j++ {
					if four[j]-four[j-1] != n/4 {
						t.Errorf("%d bolts: %v are not a quarter turn apart", n, four)
					}
				}
			}
		}
	}
}

func TestOrderOf(t *testing.T) {
	for _, c := range []struct {
		pattern string
		n       int
		want    string
	}{
		{"circle", 8, "1-5-3-7-2-6-4-8"},
		{"rectangle", 4, "1-3-2-4"},
		{"row", 1, "1"},
		{"row", 2, "1-2"},
		{"row", 3, "2-1-3"},
		{"row", 4, "2-3-1-4"},
		{"row", 5, "3-2-4-1-5"},
		{"row", 6, "3-4-2-5-1-6"},
	} {
		p, ok := ParseBoltPattern(c.pattern)
		if got := OrderOf(p, c.n); !ok || !slices.Equal(got, order(t, c.want)) {
			t.Errorf("%s of %d: %v, want %s", c.pattern, c.n, got, c.want)
		}
	}
	for _, n := range []int{0, 2, 3, 5, 6, 8, 10} {
		if got := OrderOf(BoltRectangle, n); got != nil {
			t.Errorf("a rectangle of %d: %v", n, got)
		}
	}
	for n := 1; n <= 40; n++ {
		if got := OrderOf(BoltRow, n); !CheckOrder(n, got).Good() || len(got) != n {
			t.Errorf("a row of %d: %v", n, got)
		}
	}
	if _, ok := ParseBoltPattern("star"); ok || OrderOf(BoltRow, 0) != nil {
		t.Error("an order of nothing")
	}
}

func TestCheckOrder(t *testing.T) {
	f := CheckOrder(6, []int{1, 4, 9, 2, 2, 0, 9})
	if !slices.Equal(f.Outside, []int{0, 9}) || !slices.Equal(f.Twice, []int{2}) || !slices.Equal(f.Missing, []int{3, 5, 6}) || f.Good() {
		t.Errorf("%+v", f)
	}
	if f := CheckOrder(6, []int{2, 5, 1, 4, 6, 3}); !f.Good() {
		t.Errorf("a good order: %+v", f)
	}
}

func TestPasses(t *testing.T) {
	s := scale(t, "20 to 120 N·m", "2 N·m")
	shares := func(list ...string) (out []*big.Rat) {
		for _, x := range list {
			out = append(out, num(t, x))
		}
		return out
	}
	for _, c := range []struct {
		setting string
		shares  []*big.Rat
		want    string
		fault   PassFault
		at      int
	}{
		{"100", shares("0.3", "0.7", "1"), "30 70 100 100", PassesGood, 0},
		{"94", shares("0.5", "1"), "46 94 94", PassesGood, 0}, // 47 lies half way: the lower
		{"96", shares("1"), "96 96", PassesGood, 0},
		{"100", shares("0.7", "0.3", "1"), "", PassesFall, 1},
		{"100", shares("0.5", "0.5", "1"), "", PassesFall, 1},
		{"100", shares("0", "1"), "", PassesFall, 0},
		{"100", shares("0.5", "0.9"), "", PassesShort, 1},
		{"100", shares("0.5", "1.1"), "", PassesShort, 1},
		{"100", nil, "", PassesShort, 0},
		{"50", shares("0.3", "1"), "", PassLow, 0},
		{"100", shares("0.99", "1"), "98 100 100", PassesGood, 0},
		{"100", shares("0.995", "1"), "", PassSame, 1},
		{"101", shares("1"), "", PassOff, 0},
		{"130", shares("1"), "", PassOff, 0},
		{"18", shares("1"), "", PassOff, 0},
		{"120", shares("1"), "120 120", PassesGood, 0}, // both ends of the scale are on it
		{"20", shares("1"), "20 20", PassesGood, 0},
		{"100", shares("0.2", "1"), "20 100 100", PassesGood, 0},
	} {
		got, fault, at := Passes(num(t, c.setting), c.shares, s)
		var text []string
		for i, p := range got {
			text = append(text, p.Setting.RatString())
			if p.Round != (i == len(got)-1) {
				t.Errorf("%s: pass %d once around: %v", c.setting, i, p.Round)
			}
		}
		if strings.Join(text, " ") != c.want || fault != c.fault || at != c.at {
			t.Errorf("%s %v: %v, fault %d at %d, want %s, %d at %d", c.setting, c.shares, text, fault, at, c.want, c.fault, c.at)
		}
	}
	for _, step := range []*big.Rat{nil, new(big.Rat), big.NewRat(-1, 1)} {
		if _, fault, _ := Passes(num(t, "100"), shares("1"), quantity.Scale{Unit: s.Unit, Step: step}); fault != PassOff {
			t.Errorf("marks of %v: fault %d", step, fault)
		}
	}
	if _, fault, _ := Passes(new(big.Rat), shares("1"), quantity.Scale{Unit: s.Unit, Step: s.Step}); fault != PassOff {
		t.Errorf("set to nothing: fault %d", fault)
	}
}
