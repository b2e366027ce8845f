package bench

import "testing"

func TestParseThread(t *testing.T) {
	for name, want := range map[string]Thread{
		"M8":               mm(t, "8", "1.25"),
		"M8×1":             mm(t, "8", "1"),
		"M24x1.5":          mm(t, "24", "1.5"),
		"M24 x 1,5":        mm(t, "24", "1.5"),
		"M12 8g":           mm(t, "12", "1.75"),
		"M10×1.25-6g":      mm(t, "10", "1.25"),
		"M2.5":             mm(t, "2.5", "0.45"),
		"M160×2":           mm(t, "160", "2"),
		"1/2-13":           un(t, "1/2", "13"),
		"1/2-13 UNC":       un(t, "1/2", "13"),
		"1/2 in-13":        un(t, "1/2", "13"),
		"1-8 UNC":          un(t, "1", "8"),
		"1-1/8-7 UNC":      un(t, "9/8", "7"),
		"#10-24":           un(t, "0.190", "24"), // the textbook's 0.190 in
		"1/4-28 UNF":       un(t, "1/4", "28"),
		"m8x1.25":          mm(t, "8", "1.25"),
		"M12-LH":           mm(t, "12", "1.75"),
		"3/8-16 UNC":       un(t, "3/8", "16"),
		"3/8\"-16":         un(t, "3/8", "16"),
		"1/2-13 UNC-2A LH": un(t, "1/2", "13"),
	} {
		got, ok := ParseThread(name)
		if !ok || got.StressArea().Cmp(want.StressArea()) != 0 || (got.Pitch == nil) != (want.Pitch == nil) {
			t.Errorf("%s is %v, %v", name, got, ok)
		}
	}
	for _, name := range []string{"", "M", "M9", "M160", "G 1/2", "1/2", "1/2 UNC", "Tr 20×4", "M0", "M8×9", "1/0-13", "0-13", "M99999999999999999999",
		"banana", "M12x17.5", "M24x15", "М12", "M12 banana", "M12×1.75×40", "1/4-18 NPT", "3/4-14 NPT", "1/2-20 UNC", "1/2-13 UNF", "1/4-2"} {
		if got, ok := ParseThread(name); ok {
			t.Errorf("%q is read as %v", name, got)
		}
	}
}

// The coarse pitches are those of the proof load table.
func TestCoarsePitches(t *testing.T) {
	for _, r := range isoProof {
		if coarse[r.diameter*10] != r.pitch {
			t.Errorf("M%d has a pitch of %d, want %d", r.diameter, coarse[r.diameter*10], r.pitch)
		}
	}
}

// A thread of another kind is known by its name, and nothing else is.
func TestOtherThread(t *testing.T) {
	for name, want := range map[string]bool{
		"G 1/2": true, "G1/4 A": true, "R 3/8": true, "1/4-18 NPT": true, "1/2 NPTF": true, "Tr 40×7": true, "3/8 BSP": true, "3/4 BSPT": true,
		"banana": false, "M12": false, "1/2-13 UNC": false, "m12": false, "G": false, "": false, "М12": false,
	} {
		if got := OtherThread(name); got != want {
			t.Errorf("%q: %t, want %t", name, got, want)
		}
	}
}
