package sheet

import (
	"slices"
	"testing"
)

// The papers as Debian's paperconf has them, in mm, where half Letter is called
// statement; landscape is the same on its side. Two A5 side by side are 1 mm short of an A4: crop marks allow for it.
func TestPapers(t *testing.T) {
	want := map[string][2]float64{"A3": {297, 420}, "A4": {210, 297}, "A5": {148, 210}, "A6": {105, 148}, "Letter": {215.9, 279.4}, "half-Letter": {139.7, 215.9},
		"A4-landscape": {297, 210}, "Letter-landscape": {279.4, 215.9}, "A3-landscape": {420, 297}}
	if len(want) != len(Papers) {
		t.Errorf("%d papers, want %d", len(Papers), len(want))
	}
	for _, p := range Papers {
		if w := want[p.Name]; float64(p.Width) != w[0]*1000 || float64(p.Height) != w[1]*1000 {
			t.Errorf("%s is %d × %d µm, want %v mm", p.Name, p.Width, p.Height, w)
		}
	}
	of := func(name string) Paper {
		return Papers[slices.IndexFunc(Papers, func(p Paper) bool { return p.Name == name })]
	}
	if gap := of("A4").Height - 2*of("A5").Width; gap != 1000 {
		t.Errorf("two A5 leave %d µm of an A4", gap)
	}
}
