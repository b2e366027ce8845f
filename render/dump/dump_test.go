package dump

import (
	"strings"
	"testing"

	"benchwright/render"
	"benchwright/render/sheet"
	"benchwright/render/specimen"
	"benchwright/render/symbol"
)

const specimenDump = `sheet 105000×148000 "Specimen 1 of 2"
bookmark 0 y 10000 "Specimen – °µΩ"
bookmark 2 y 30000 "Zażółć"
anchor y 10000 "top"
step 7 at 10000,10000 size 85000×25000, 4 ops
  step technical at 0,0 size 85000×22000, 3 ops
    text 0,6000 bold 6000 111111 w 0 "Pinion nut, M24×1.5"
    text wording at 0,10000 size 85000×5000, 1 ops
      text 0,4000 regular 4000 111111 w 0 "· × ± ° µ Ω Ø ≤ ≥ − – — … ′ ″ ½ ¼ ⅛ → ↑ ↓ ☐ ☑ ✓ Δ α δ ² ³"
    text 0,21000 semibold 4000 111111 w 0 "100 N·m, 0.15–0.25 mm, (a\\b) Ελλάδα Кириллица ő"
  rect 0,26000 40000×15000 radius 3000 fill FFF2CC stroke 111111 600
tick-box 55000,36000 8000×8000 stroke 0B5FA5 400
write-box 70000,36000 20000×8000 fill DDDDDD
line 10000,56000 95000,56000 stroke 111111 300
line 10000,59000 95000,59000 stroke 0B5FA5 500 dash 2000
path fill F9A800 stroke 111111 800 M 10000,80000 C 20000,55000 30000,95000 40000,70000 L 45000,80000 Z
image 55000,64000 30000×20000 JPEG 60×40 "photo.jpg" alt "colors"
image 55000,90000 30000×15000 PNG 60×30 "sketch.png" alt ""
image 10000,90000 30000×20000 JPEG 60×40 "photo.jpg" alt ""
text 10000,120000 regular 4000 111111 w 0 "see the second sheet, or example.org"
link 10000,116000 30000×5000 "second"
link 45000,116000 30000×5000 "https://example.org/a_(b)"

sheet 148000×105000 "Specimen 2 of 2"
bookmark 1 y 50000 "Second"
anchor y 50000 "second"
text 10000,50000 regular 5000 111111 w 0 "Back to the top"
link 10000,45000 30000×6000 "top"
`

func TestDump(t *testing.T) {
	sheets := specimen.Sheets()
	var b strings.Builder
	if err := Write(&b, sheets); err != nil {
		t.Fatal(err)
	}
	if b.String() != specimenDump {
		t.Errorf("dump\n%s\nwant\n%s", b.String(), specimenDump)
	}
	if sheets[0].Marks[0].Ref++; strings.Contains(b.String(), "ref") {
		t.Error("the dump shows references")
	}
	var again strings.Builder
	if Write(&again, sheets); again.String() != b.String() {
		t.Error("a reference changes the dump")
	}
}

// What a drawing holds stands under it.
func TestDumpOfDrawing(t *testing.T) {
	segs := []sheet.Seg{{Verb: 'M', X: 1, Y: 2}, {Verb: 'L', X: 3, Y: 4}}
	var b strings.Builder
	Write(&b, []sheet.Sheet{{Ops: []sheet.Op{sheet.Drawing{X: 1, Y: 2, W: 30, H: 40, Name: "a.svg", Alt: "a cut", Ops: []sheet.Op{
		sheet.Path{Segs: segs, Fill: 0xFF, EvenOdd: true, Stroke: 0, StrokeWidth: 5, Butt: true, Miter: true, Dash: [4]int{1, 2, 3, 4}},
		sheet.Glyphs{X: 5, Y: 6, Width: 7, Size: 8, Text: "1"},
	}}}, Marks: []sheet.Mark{{From: 0, To: 1}}}})
	want := `sheet 0×0 ""
technical at 0,0 size 0×0, 1 ops
  drawing 1,2 30×40 "a.svg" alt "a cut"
    path fill 0000FF stroke 000000 5 even-odd butt miter dash 1 2 3 4 M 0,0 L 2,2
    text 4,4 regular 8 w 7 "1"
`
	if b.String() != want {
		t.Errorf("dump\n%s\nwant\n%s", b.String(), want)
	}
}

// Long paths are named by a sum: the same shape one micrometer on is another.
func TestDumpOfSymbol(t *testing.T) {
	lines := map[string]bool{}
	for x := range 3 {
		ops, _ := symbol.Draw("W012", x, 0, 10000)
		var b strings.Builder
		Write(&b, []sheet.Sheet{{Ops: ops}})
		lines[b.String()] = true
		if long := len(b.String()); long > 60*(len(ops)+1)+100 {
			t.Errorf("%d bytes for %d operations", long, len(ops))
		}
	}
	if len(lines) != 3 {
		t.Error("a moved symbol has the same dump")
	}
}

// Marks that overlap, reach past the end or hold nothing do not confuse it.
func TestDumpOfOddMarks(t *testing.T) {
	var b strings.Builder
	Write(&b, []sheet.Sheet{{
		Ops:   []sheet.Op{sheet.Link{To: "a"}, sheet.Link{To: "b"}, nil},
		Marks: []sheet.Mark{{From: 2, To: 9}, {From: 0, To: 2}, {From: 1, To: 3, Class: render.Wording}, {From: 3, To: 3}},
	}})
	want := `sheet 0×0 ""
technical at 0,0 size 0×0, 2 ops
  link 0,0 0×0 "a"
  wording at 0,0 size 0×0, 2 ops
    link 0,0 0×0 "b"
  technical at 0,0 size 0×0, 7 ops
    unknown <nil>
  technical at 0,0 size 0×0, 0 ops
`
	if b.String() != want {
		t.Errorf("dump\n%s\nwant\n%s", b.String(), want)
	}
}

// What is moved down as a whole rewrites the line that says where it begins, and
// no other.
func TestDumpOfMovedGroup(t *testing.T) {
	lines := func(down int) []string {
		s := specimen.Sheets()[0]
		s.Bookmarks, s.Anchors = nil, nil
		for i := range s.Ops {
			if i < s.Groups[0].To {
				s.Ops[i] = sheet.Moved(s.Ops[i], 0, down)
			}
		}
		s.Groups[0].Y += down
		for i := range s.Marks {
			s.Marks[i].Y += down
		}
		var b strings.Builder
		Write(&b, []sheet.Sheet{s})
		return strings.Split(b.String(), "\n")
	}
	was, is := lines(0), lines(7000)
	var changed []string
	for i := range was {
		if was[i] != is[i] {
			changed = append(changed, is[i])
		}
	}
	if len(changed) != 1 || !strings.HasPrefix(changed[0], "step 7 at 10000,17000 ") {
		t.Errorf("changed lines %q", changed)
	}
}
