package bench

import (
	"math/big"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

func flat(t testing.TB, s string) quantity.Value {
	t.Helper()
	v, p := quantity.ParseValue(s, quantity.Point)
	if p != nil {
		t.Fatalf("%q: %s", s, p.Message)
	}
	return v
}

func TestAcrossFlats(t *testing.T) {
	for _, c := range []struct {
		thread string
		drive  Drive
		want   string
		source string
	}{
		{"M6", Hex, "10 mm", "ISO 4014"},
		{"M8", Hex, "13 mm", "ISO 4014"},
		{"M10", Hex, "16 mm, 17 mm", "ISO 4014, older DIN 933"},
		{"M10×1.25", Hex, "16 mm, 17 mm", "fine thread, the same head"},
		{"M10x1.25", Hex, "16 mm, 17 mm", "fine thread, the same head"},
		{"M12", Hex, "18 mm, 19 mm", "ISO 4014, older DIN 933"},
		{"M16", Hex, "24 mm", "ISO 4014"},
		{"M20", Hex, "30 mm", "ISO 4014"},
		{"M24", Hex, "36 mm", "ISO 4014"},
		{"M6", Socket, "5 mm", "ISO 4762"},
		{"M8", Socket, "6 mm", "ISO 4762"},
		{"M10", Socket, "8 mm", "ISO 4762"},
		{"M12", Socket, "10 mm", "ISO 4762"},
		{"3/8-16 UNC", Hex, "9/16 in", "ASME B18.2.1"},
		{"1/2-13", Hex, "3/4 in", "ASME B18.2.1"},
		{`1/2"-20`, Hex, "3/4 in", "ASME B18.2.1"},
		{"3/8", Socket, "5/16 in", "ASME B18.3"},
		{"1-8", Hex, "1-1/2 in", "from memory"},
		{"1/2 in-13 UNC-2A", Hex, "3/4 in", "from memory"},
		{"M10 × 1,25 - 6g", Hex, "16 mm, 17 mm", "with a comma and a class"},
		{"1-1/8-7", Hex, "", "not the head of a 1-8"},
		{"1 1/8-7", Hex, "", "not the head of a 1-8"},
		{"3/8 BSW", Hex, "", "Whitworth heads differ"},
		{"3/8-18 NPT", Socket, "", "a pipe thread has no such head"},
		{"M10.5", Hex, "", "no such row"},
		{"M3.5", Hex, "", "no such row"},
		{"M18", Socket, "", "not known here"},
		{"10", Hex, "", "no thread"},
		{"", Hex, "", "no thread"},
	} {
		var got []string
		for _, f := range AcrossFlats(c.thread, c.drive) {
			got = append(got, f.Size.Text+" "+f.Size.Unit.Symbol)
		}
		if strings.Join(got, ", ") != c.want {
			t.Errorf("%s, drive %d (%s): %q, want %q", c.thread, c.drive, c.source, got, c.want)
		}
	}
}

func TestJudgeFlats(t *testing.T) {
	for _, c := range []struct {
		thread  string
		drive   Drive
		written string
		want    FlatVerdict
	}{
		{"M10", Hex, "16 mm", FlatListed},
		{"M10", Hex, "17 mm", FlatListed},
		{"M10", Hex, "1.6 cm", FlatListed},
		{"M10", Hex, "15 mm", FlatUnlisted},
		{"M10", Hex, "8 mm", FlatUnlisted}, // the key of its socket
		{"3/8-16", Hex, "9/16 in", FlatListed},
		{"3/8-16", Hex, "0.5625 in", FlatListed},
		// A metric tool is no substitute (common practice): 9/16 in is 14.29 mm,
		// 5/16 in 7.94 mm.
		{"3/8-16", Hex, "14 mm", FlatSubstitute},
		{"3/8-16", Hex, "14.29 mm", FlatSubstitute},
		{"3/8-16", Socket, "8 mm", FlatSubstitute},
		{"1/2-13", Hex, "19 mm", FlatSubstitute},
		{"M8", Hex, "1/2 in", FlatSubstitute},
		{"3/8-16", Hex, "1/2 in", FlatUnlisted},
		{"3/8-16", Hex, "13 mm", FlatUnlisted},
		{"M33", Hex, "50 mm", FlatUnknown},
		{"M10", Hex, "16 N·m", FlatUnknown},
	} {
		if got, _ := JudgeFlats(c.thread, c.drive, flat(t, c.written)); got != c.want {
			t.Errorf("%s with %s: %d, want %d", c.thread, c.written, got, c.want)
		}
	}
	if got, _ := JudgeFlats("M10", Hex, quantity.Value{}); got != FlatUnknown {
		t.Errorf("nothing written: %d", got)
	}
}

// 9/16 in is 14.29 mm and 5/16 in is 7.94 mm: each lies beside a metric tool
// that is no substitute, and no metric tool is it.
func TestInchFlatsInMillimeters(t *testing.T) {
	mm, _ := quantity.UnitOf("mm")
	// Half a millimeter is near, a hundredth more is not.
	if nine := flat(t, "9/16 in"); !NearlyFits(nine, flat(t, "13.7875 mm")) || NearlyFits(nine, flat(t, "13.77 mm")) || NearlyFits(nine, flat(t, "14 N")) || !NearlyFits(flat(t, "1.4 cm"), nine) {
		t.Error("half a millimeter from 9/16 in")
	}
	for _, c := range []struct {
		inch, want, beside string
	}{{"9/16 in", "14.29", "14 mm"}, {"5/16 in", "7.94", "8 mm"}, {"3/4 in", "19.05", "19 mm"}} {
		size := flat(t, c.inch)
		if got := size.In(mm).Value.FloatString(2); got != c.want {
			t.Errorf("%s is %s mm, want %s", c.inch, got, c.want)
		}
		if !NearlyFits(size, flat(t, c.beside)) || !NearlyFits(flat(t, c.beside), size) || NearlyFits(size, size) || NearlyFits(size, flat(t, "11 mm")) {
			t.Errorf("%s beside %s is not seen", c.inch, c.beside)
		}
	}
}

// Each row is readable and each of its tools is listed; flats and keys grow
// with the thread, a key is smaller than the thread and a hexagon larger.
func TestFlatsProperties(t *testing.T) {
	mm, _ := quantity.UnitOf("mm")
	last := map[string]*big.Rat{}
	for _, f := range flats {
		system := "inch"
		diameter := flat(t, strings.TrimPrefix(f.thread, "M")+" in")
		if strings.HasPrefix(f.thread, "M") {
			system, diameter = "metric", flat(t, f.thread[1:]+" mm")
		}
		for _, drive := range []Drive{Hex, Socket} {
			for _, k := range AcrossFlats(f.thread, drive) {
				if k.Size.Value == nil || k.Standard == "" {
					t.Fatalf("%s: a size that cannot be read", f.thread)
				}
				if v, _ := JudgeFlats(f.thread, drive, k.Size); v != FlatListed {
					t.Errorf("%s: %s is not listed", f.thread, k.Size.Text)
				}
				size := k.Size.In(mm).Value
				if (size.Cmp(diameter.In(mm).Value) > 0) != (drive == Hex) {
					t.Errorf("%s: drive %d of %s", f.thread, drive, k.Size.Text)
				}
				if k.Older {
					continue
				}
				series := system + string(rune('0'+drive))
				if last[series] != nil && size.Cmp(last[series]) < 0 {
					t.Errorf("%s: %s is smaller than that of the thread before", f.thread, k.Size.Text)
				}
				last[series] = size
			}
		}
	}
}
