package impose

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"benchwright/render"
	"benchwright/render/dump"
	"benchwright/render/sheet"
)

func paper(t *testing.T, name string) sheet.Paper {
	for _, p := range sheet.Papers {
		if p.Name == name {
			return p
		}
	}
	t.Fatalf("no paper %s", name)
	return sheet.Paper{}
}

// numbered are faces of which each carries its trim as a rectangle that no
// face would draw, and everything else that moves.
func numbered(w, h, n int) []sheet.Sheet {
	faces := make([]sheet.Sheet, n)
	for i := range faces {
		name := fmt.Sprint("face ", i+1)
		faces[i] = sheet.Sheet{
			Width: w, Height: h, Name: name,
			Bookmarks: []sheet.Bookmark{{Level: 0, Text: name, Y: 7000}, {Level: 1, Text: name + " step", Y: 8000}},
			Anchors:   []sheet.Anchor{{Name: name, Y: 9000}},
			Groups:    []sheet.Group{{Name: name, Area: sheet.Area{X: 10000, Y: 5000, W: 1, H: 2}, From: 1, To: 5}},
			Marks:     []sheet.Mark{{Ref: render.Ref(i + 1), Area: sheet.Area{X: 10000, Y: 6000}, From: 1, To: 2}},
			Ops: []sheet.Op{
				sheet.Rect{W: w, H: h, Fill: sheet.NoColor, Stroke: sheet.Color(i + 1), StrokeWidth: 1},
				sheet.Glyphs{X: 10000, Y: 20000, Size: 4000, Text: name},
				sheet.Line{X1: 10000, Y1: 30000, X2: w - 10000, Y2: 30000, Width: 100, Dash: 1000},
				sheet.Path{Segs: []sheet.Seg{{Verb: 'M', X: 10000, Y: 40000}, {Verb: 'C', X1: 1, Y1: 2, X2: 3, Y2: 4, X: 20000, Y: 40000}}, Fill: sheet.NoColor, Stroke: 1, StrokeWidth: 100},
				sheet.Link{X: 10000, Y: 50000, W: 1000, H: 1000, To: "face 1"},
			},
		}
	}
	return faces
}

// impositions are all that the papers allow; a name says which.
func impositions(t *testing.T) map[string]struct {
	face sheet.Paper
	o    Plan
} {
	all := map[string]struct {
		face sheet.Paper
		o    Plan
	}{}
	for _, face := range sheet.Papers {
		for _, on := range sheet.Papers {
			for _, up := range []int{1, 2, 4} {
				for _, flip := range []Flip{ShortEdge, LongEdge} {
					o := Plan{on, up, flip}
					if _, err := Sheets(numbered(face.Width, face.Height, 1), o); err == nil {
						all[fmt.Sprintf("%d × %s on %s, flip %d", up, face.Name, on.Name, flip)] = struct {
							face sheet.Paper
							o    Plan
						}{face, o}
					}
				}
			}
		}
	}
	for _, must := range []string{"2 × A5 on A4, flip 0", "2 × half-Letter on Letter, flip 1", "2 × A6 on A5, flip 0", "2 × A6 on A4, flip 0", "4 × A6 on A4, flip 1", "2 × A4 on A3, flip 0"} {
		if _, ok := all[must]; !ok {
			t.Errorf("%s does not fit", must)
		}
	}
	return all
}

type trim struct{ x, y, w, h int }

// trims finds where each face lies, by its number.
func trims(s sheet.Sheet) map[int]trim {
	found := map[int]trim{}
	for _, op := range s.Ops {
		if r, ok := op.(sheet.Rect); ok {
			found[int(r.Stroke)] = trim{r.X, r.Y, r.W, r.H}
		}
	}
	return found
}

// onPaper is where a point that is printed on a back comes to lie, seen
// through the paper from its front.
func onPaper(s sheet.Sheet, f Flip, x, y int) (int, int) {
	if s.Turned {
		x, y = s.Width-x, s.Height-y
	}
	if (f == ShortEdge) == (s.Width > s.Height) { // turned about the left or right edge
		return s.Width - x, y
	}
	return x, s.Height - y
}

// For every paper that holds the faces: each face stands once, front and back
// of a pouch lie back to back and both upright, nothing lies outside the
// sheet, no two faces overlap.
func TestImposeKeepsRegister(t *testing.T) {
	for name, c := range impositions(t) {
		for n := 1; n <= 2*c.o.Up+3; n++ {
			sheets, err := Sheets(numbered(c.face.Width, c.face.Height, n), c.o)
			if err != nil {
				t.Fatal(name, err)
			}
			if want := (n + 2*c.o.Up - 1) / (2 * c.o.Up) * 2; len(sheets) != want {
				t.Errorf("%s: %d faces give %d sides, want %d", name, n, len(sheets), want)
			}
			seen := map[int]bool{}
			for i := 0; i < len(sheets); i += 2 {
				front, back := trims(sheets[i]), trims(sheets[i+1])
				for number, a := range front {
					if number%2 != 1 || seen[number] {
						t.Errorf("%s: face %d on a front", name, number)
					}
					seen[number] = true
					b, ok := back[number+1]
					if !ok {
						if number != n {
							t.Errorf("%s: face %d has no back", name, number)
						}
						continue
					}
					seen[number+1] = true
					// The back's top left corner lies behind the front's top
					// right: the back is upright when the card is turned over.
					if x, y := onPaper(sheets[i+1], c.o.Flip, b.x, b.y); x != a.x+a.w || y != a.y {
						t.Errorf("%s: corner of %d lies at %d,%d, of %d at %d,%d", name, number, a.x+a.w, a.y, number+1, x, y)
					}
					if a.w != c.face.Width || a.h != c.face.Height || b.w != a.w || b.h != a.h {
						t.Errorf("%s: a trim is %v, its back %v", name, a, b)
					}
				}
			}
			if len(seen) != n {
				t.Errorf("%s: %d of %d faces are printed", name, len(seen), n)
			}
			for _, s := range sheets {
				checkInside(t, name, s)
			}
		}
	}
}

func checkInside(t *testing.T, name string, s sheet.Sheet) {
	t.Helper()
	var all []trim
	for _, a := range trims(s) {
		for _, b := range all {
			if a.x < b.x+b.w && b.x < a.x+a.w && a.y < b.y+b.h && b.y < a.y+a.h {
				t.Errorf("%s: faces at %v and %v overlap", name, a, b)
			}
		}
		all = append(all, a)
		if a.x < 0 || a.y < 0 || a.x+a.w > s.Width || a.y+a.h > s.Height {
			t.Errorf("%s: %v lies outside the sheet", name, a)
		}
	}
	for _, m := range crops(s) {
		if min(m.X1, m.X2, m.Y1, m.Y2) < 0 || max(m.X1, m.X2) > s.Width || max(m.Y1, m.Y2) > s.Height {
			t.Errorf("%s: crop mark %v lies outside the sheet", name, m)
		}
		for _, a := range all { // the live part begins 6 mm inside the trim
			if m.X1 > a.x && m.X1 < a.x+a.w && m.Y1 > a.y && m.Y1 < a.y+a.h && m.X1 != m.X2 && m.Y1 != m.Y2 {
				t.Errorf("%s: crop mark %v is neither upright nor level", name, m)
			}
			if max(m.X1, m.X2) > a.x+cropRoom && min(m.X1, m.X2) < a.x+a.w-cropRoom && max(m.Y1, m.Y2) > a.y+cropRoom && min(m.Y1, m.Y2) < a.y+a.h-cropRoom {
				t.Errorf("%s: crop mark %v crosses the live part of %v", name, m, a)
			}
		}
	}
}

func crops(s sheet.Sheet) []sheet.Line {
	var marks []sheet.Line
	for _, op := range s.Ops {
		if l, ok := op.(sheet.Line); ok && l.Dash == 0 {
			marks = append(marks, l)
		}
	}
	return marks
}

// Every trim edge is the sheet's own or has a mark at each of its two ends:
// outside the trim where there are 6 mm, else a tick inside the margin.
func TestImposeMarksEveryCut(t *testing.T) {
	for name, c := range impositions(t) {
		sheets, _ := Sheets(numbered(c.face.Width, c.face.Height, 2*c.o.Up), c.o)
		for _, s := range sheets {
			marks := crops(s)
			cutAt := map[int]int{} // x of upright cut lines to their marks
			for _, m := range marks {
				if m.X1 == m.X2 {
					cutAt[m.X1]++
				}
			}
			for _, a := range trims(s) {
				for _, x := range []int{a.x, a.x + a.w} {
					if own := x == 0 || x == s.Width; own != (cutAt[x] == 0) || !own && cutAt[x] != 2 {
						t.Errorf("%s: the trim edge at x %d of %d has %d marks", name, x, s.Width, cutAt[x])
					}
				}
			}
		}
	}
}

// The one that the design names: two A5 on an A4, which is 1 mm wider.
func TestTwoA5OnA4(t *testing.T) {
	sheets, err := Sheets(numbered(148000, 210000, 4), Plan{Paper: paper(t, "A4"), Up: 2, Flip: ShortEdge})
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	for i := range sheets {
		var keep []sheet.Op
		for _, op := range sheets[i].Ops {
			switch op := op.(type) {
			case sheet.Rect, sheet.Glyphs:
				keep = append(keep, op)
			case sheet.Line:
				if op.Dash == 0 {
					keep = append(keep, op)
				}
			}
		}
		sheets[i].Ops, sheets[i].Marks, sheets[i].Groups = keep, nil, nil
	}
	dump.Write(&b, sheets)
	const want = `sheet 297000×210000 "Sheet 1 front: face 1 | face 3"
bookmark 0 y 7000 order 1 "face 1"
bookmark 1 y 8000 order 1 "face 1 step"
bookmark 0 y 7000 order 3 "face 3"
bookmark 1 y 8000 order 3 "face 3 step"
anchor y 9000 "face 1"
anchor y 9000 "face 3"
rect 0,0 148000×210000 stroke 000001 1
text 10000,20000 regular 4000 w 0 "face 1"
rect 149000,0 148000×210000 stroke 000003 1
text 159000,20000 regular 4000 w 0 "face 3"
line 148000,3000 148000,6000 stroke 111111 150
line 148000,204000 148000,207000 stroke 111111 150
line 149000,3000 149000,6000 stroke 111111 150
line 149000,204000 149000,207000 stroke 111111 150

sheet 297000×210000 "Sheet 1 back: face 4 | face 2"
bookmark 0 y 7000 order 4 "face 4"
bookmark 1 y 8000 order 4 "face 4 step"
bookmark 0 y 7000 order 2 "face 2"
bookmark 1 y 8000 order 2 "face 2 step"
anchor y 9000 "face 4"
anchor y 9000 "face 2"
rect 0,0 148000×210000 stroke 000004 1
text 10000,20000 regular 4000 w 0 "face 4"
rect 149000,0 148000×210000 stroke 000002 1
text 159000,20000 regular 4000 w 0 "face 2"
line 148000,3000 148000,6000 stroke 111111 150
line 148000,204000 148000,207000 stroke 111111 150
line 149000,3000 149000,6000 stroke 111111 150
line 149000,204000 149000,207000 stroke 111111 150
`
	if b.String() != want {
		t.Errorf("got\n%s\nwant\n%s", b.String(), want)
	}
}

// Everything goes with its face; the faces themselves stay as they were.
func TestImposeCarriesAll(t *testing.T) {
	faces := numbered(105000, 148000, 3)
	sheets, err := Sheets(faces, Plan{Paper: paper(t, "A4"), Up: 2, Flip: LongEdge})
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(faces, numbered(105000, 148000, 3)) {
		t.Error("imposing changed the faces")
	}
	dx, dy := (297000-210000)/2+105000, (210000-148000)/2 // face 3, second on the front
	s := sheets[0]
	want := []sheet.Op{
		sheet.Rect{X: dx, Y: dy, W: 105000, H: 148000, Fill: sheet.NoColor, Stroke: 3, StrokeWidth: 1},
		sheet.Glyphs{X: dx + 10000, Y: dy + 20000, Size: 4000, Text: "face 3"},
		sheet.Line{X1: dx + 10000, Y1: dy + 30000, X2: dx + 95000, Y2: dy + 30000, Width: 100, Dash: 1000},
		sheet.Path{Segs: []sheet.Seg{{Verb: 'M', X1: dx, Y1: dy, X2: dx, Y2: dy, X: dx + 10000, Y: dy + 40000}, {Verb: 'C', X1: dx + 1, Y1: dy + 2, X2: dx + 3, Y2: dy + 4, X: dx + 20000, Y: dy + 40000}}, Fill: sheet.NoColor, Stroke: 1, StrokeWidth: 100},
		sheet.Link{X: dx + 10000, Y: dy + 50000, W: 1000, H: 1000, To: "face 1"},
	}
	if got := s.Ops[5:10]; fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("face 3\n%v\nwant\n%v", got, want)
	}
	at := func(x, y int) sheet.Area { return sheet.Area{X: x + 10000, Y: y + 6000} }
	if got := s.Marks; !slices.Equal(got, []sheet.Mark{{Ref: 1, Area: at(dx-105000, dy), From: 1, To: 2}, {Ref: 3, Area: at(dx, dy), From: 6, To: 7}}) {
		t.Errorf("marks %v", got)
	}
	if got, want := s.Groups[1], (sheet.Group{Name: "face 3", Area: sheet.Area{X: dx + 10000, Y: dy + 5000, W: 1, H: 2}, From: 6, To: 10}); len(s.Groups) != 2 || got != want {
		t.Errorf("group %v, want %v", got, want)
	}
	if !sheets[1].Turned || s.Turned {
		t.Error("a landscape sheet flipped on its long edge has its back turned")
	}
}

func TestImposeRefuses(t *testing.T) {
	for _, c := range []struct {
		faces []sheet.Sheet
		o     Plan
		want  string
	}{
		{numbered(148000, 210000, 2), Plan{Paper: paper(t, "Letter"), Up: 2}, "2 pages of 148 × 210 mm do not fit on Letter (215.9 × 279.4 mm)"},
		{numbered(148000, 210000, 2), Plan{Paper: paper(t, "A4")}, "0 pages"},
		{append(numbered(148000, 210000, 1), numbered(105000, 148000, 1)...), Plan{Paper: paper(t, "A3"), Up: 2}, "does not have the size and orientation"},
	} {
		if _, err := Sheets(c.faces, c.o); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("error %v, want %q", err, c.want)
		}
	}
	if sheets, err := Sheets(nil, Plan{Paper: paper(t, "A4"), Up: 2}); err != nil || sheets != nil {
		t.Errorf("no faces give %v, %v", sheets, err)
	}
}
