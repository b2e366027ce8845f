package layout

import (
	"fmt"
	"reflect"
	"strings"
	"testing"
	"unicode/utf8"

	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
	"benchwright/render/specimen"
	"benchwright/render/typeface"
)

// everyFace runs check on each face of the sample deck, on every paper and as
// a strip on plain paper.
func everyFace(t *testing.T, check func(t *testing.T, o Options, s sheet.Sheet)) {
	t.Helper()
	for _, o := range allOptions() {
		name := o.Paper.Name
		if o.Plain {
			name += " plain"
		}
		t.Run(name, func(t *testing.T) {
			sheets, _ := Faces(specimen.Deck(), o)
			for i, s := range sheets {
				if check(t, o, s); t.Failed() {
					t.Fatalf("on face %d", i+1)
				}
			}
		})
	}
}

func allOptions() []Options {
	var all []Options
	for _, p := range sheet.Papers {
		all = append(all, Options{Paper: p})
	}
	return append(all, Options{Paper: sheet.Papers[0], Plain: true}, Options{Paper: sheet.Papers[3], Plain: true})
}

func optionsFor(name string) Options {
	for _, p := range sheet.Papers {
		if p.Name == name {
			return Options{Paper: p}
		}
	}
	panic(name)
}

// An area that ink may cover.
type area struct{ x1, y1, x2, y2 int }

func (a area) apart(b area) int {
	return max(a.x1-b.x2, b.x1-a.x2, a.y1-b.y2, b.y1-a.y2)
}

func (a area) holds(b area) bool {
	return a.x1 <= b.x1 && a.y1 <= b.y1 && a.x2 >= b.x2 && a.y2 >= b.y2
}

// covers returns the most that op covers; of text, from the tops of its
// capitals to its descenders.
func covers(op sheet.Op) (area, bool) {
	switch o := op.(type) {
	case sheet.Glyphs:
		return area{o.X, o.Y - typeface.CapHeight(o.Font, o.Size), o.X + o.Width, o.Y + o.Size/5}, true
	case sheet.Rect:
		half := o.StrokeWidth / 2
		return area{o.X - half, o.Y - half, o.X + o.W + half, o.Y + o.H + half}, true
	case sheet.Line:
		half := o.Width / 2
		return area{min(o.X1, o.X2) - half, min(o.Y1, o.Y2) - half, max(o.X1, o.X2) + half, max(o.Y1, o.Y2) + half}, true
	case sheet.Path:
		a := area{1 << 30, 1 << 30, -1 << 30, -1 << 30}
		for _, s := range o.Segs {
			if s.Verb == 'Z' {
				continue
			}
			a = area{min(a.x1, s.X), min(a.y1, s.Y), max(a.x2, s.X), max(a.y2, s.Y)}
		}
		return a, true
	case sheet.Image:
		return area{o.X, o.Y, o.X + o.W, o.Y + o.H}, true
	case sheet.Drawing:
		return area{o.X, o.Y, o.X + o.W, o.Y + o.H}, true
	}
	return area{}, false
}

func TestNothingIsPrintedNearTheTrim(t *testing.T) { everyFace(t, insideTrim) }

func insideTrim(t *testing.T, o Options, s sheet.Sheet) {
	inside := area{compose.LeastTrim, compose.LeastTrim, s.Width - compose.LeastTrim, s.Height - compose.LeastTrim}
	for _, op := range s.Ops {
		a, is := covers(op)
		if is && !inside.holds(a) {
			t.Errorf("%+v covers %v of %v", op, a, inside)
		}
		// The hole through the film, in the middle of the top edge: 6 mm across and
		// as far from the trim again (common practice).
		hole := area{s.Width/2 - 3000, 0, s.Width/2 + 3000, 12000}
		if g, is := op.(sheet.Glyphs); is && !o.Plain && a.apart(hole) < 0 {
			t.Errorf("%q stands in the hole at the top edge", g.Text)
		}
		if d, is := op.(sheet.Drawing); is && !o.Plain && a.apart(hole) < 0 {
			t.Errorf("the drawing %q stands in the hole at the top edge", d.Name)
		}
	}
}

func TestTextIsTallEnough(t *testing.T) { everyFace(t, tallEnough) }

func tallEnough(t *testing.T, o Options, s sheet.Sheet) {
	for _, op := range s.Ops {
		if d, is := op.(sheet.Drawing); is {
			tallEnough(t, o, sheet.Sheet{Ops: d.Ops})
		}
		if g, is := op.(sheet.Glyphs); is && typeface.CapHeight(g.Font, g.Size) < o.style().Least {
			t.Errorf("%q has capitals of %d µm", g.Text, typeface.CapHeight(g.Font, g.Size))
		}
	}
}

func TestTextNeverOverlaps(t *testing.T) { everyFace(t, noOverlap) }

func noOverlap(t *testing.T, o Options, s sheet.Sheet) {
	var text []sheet.Glyphs
	for _, op := range s.Ops {
		if g, is := op.(sheet.Glyphs); is {
			text = append(text, g)
		}
	}
	for i, g := range text {
		a, _ := covers(g)
		for _, h := range text[:i] {
			if b, _ := covers(h); a.apart(b) < 0 {
				t.Errorf("%q stands on %q", g.Text, h.Text)
			}
		}
	}
	for i, op := range s.Ops {
		switch op.(type) {
		case sheet.Path, sheet.Image, sheet.Drawing: // symbols and arrows lie on one another, but on no text
			a, _ := covers(op)
			for _, g := range text {
				if b, _ := covers(g); a.apart(b) < 0 && !grounded(s.Ops[i:], b) {
					t.Errorf("a figure at %v stands on %q", a, g.Text)
				}
			}
		}
	}
}

// grounded reports whether text stands on a round ground of its own, as a
// number on a picture does.
func grounded(ops []sheet.Op, text area) bool {
	for _, op := range ops {
		if r, is := op.(sheet.Rect); is && r.Fill != sheet.NoColor && r.Radius > 0 && r.Radius == r.W/2 {
			if a, _ := covers(r); a.holds(text) {
				return true
			}
		}
	}
	return false
}

func TestTextKeepsOutOfBoxes(t *testing.T) { everyFace(t, outOfBoxes) }

func outOfBoxes(t *testing.T, o Options, s sheet.Sheet) {
	for _, op := range s.Ops {
		b, is := op.(sheet.Rect)
		if !is || b.Role != sheet.WriteBox && b.Role != sheet.TickBox {
			continue
		}
		box, _ := covers(b)
		for _, op := range s.Ops {
			if g, is := op.(sheet.Glyphs); is {
				if a, _ := covers(g); a.apart(box) < 0 {
					t.Errorf("%q stands in a box", g.Text)
				}
			}
		}
	}
}

// Boxes stand apart, beside one another and inside a panel.
func TestBoxesStandApart(t *testing.T) { everyFace(t, boxesApart) }

func boxesApart(t *testing.T, o Options, s sheet.Sheet) {
	var boxes []area
	for _, op := range s.Ops {
		r, is := op.(sheet.Rect)
		if !is || r.Role == sheet.Tint {
			continue
		}
		a, _ := covers(r)
		for _, b := range boxes {
			gap := a.apart(b)
			if b.holds(a) {
				gap = min(a.x1-b.x1, b.x2-a.x2, a.y1-b.y1, b.y2-a.y2)
			}
			if gap < compose.LeastBoxGap {
				t.Errorf("boxes %v and %v are %d µm apart", a, b, gap)
			}
		}
		boxes = append(boxes, a)
		if r.Role == sheet.WriteBox && (r.W < compose.LeastBoxWidth-r.StrokeWidth || r.H < compose.LeastBoxHeight-r.StrokeWidth) {
			t.Errorf("a box to write in is %d × %d µm", r.W, r.H)
		}
	}
}

// In the place of the code stands the face's code and nothing else; with a
// quiet zone of two modules and more it is read from a picture in package pdf.
func TestTheCodeStandsAlone(t *testing.T) { everyFace(t, codeAlone) }

func codeAlone(t *testing.T, o Options, s sheet.Sheet) {
	square, line := CodePlace(o)
	if square.W != compose.CodeSquare || square.H != compose.CodeSquare || line.H < o.style().Label.Lead {
		t.Errorf("%v and %v", square, line)
	}
	square = sheet.Rect{X: square.X - compose.CodeQuiet, Y: square.Y - compose.CodeQuiet, W: square.W + 2*compose.CodeQuiet, H: square.H + 2*compose.CodeQuiet}
	letters, drawings := 0, 0
	for i, r := range []sheet.Rect{line, square} {
		if o.Plain && i > 0 {
			continue // a strip is read by its letters alone
		}
		free, _ := covers(r)
		for _, op := range s.Ops {
			a, is := covers(op)
			if !is || a.apart(free) >= 0 {
				continue
			}
			if g, is := op.(sheet.Glyphs); is && i == 0 && g.Text == s.Code && s.Code != "" {
				letters++
				continue
			}
			if d, is := op.(sheet.Drawing); is && i == 1 && strings.HasSuffix(d.Alt, " "+s.Code) && d.W >= 14000 && d.W <= 18000 && d.W == d.H {
				drawings++
				continue
			}
			t.Errorf("%+v stands in the place of the code %v", op, free)
		}
	}
	if want := 1; !o.Plain && (letters != want || drawings != want) {
		t.Errorf("%d codes in letters and %d in squares", letters, drawings)
	}
}

// What changed keeps the rules of a face, and bears no code where it is no
// laminate.
func TestChangedText(t *testing.T) {
	for _, o := range allOptions() {
		o.Uncoded = true
		changed := render.Text{Role: render.Changed, Runs: []render.Run{{Text: "set: "}, {Text: "100 N·m", Struck: true}, {Text: " "}, {Text: "105 N·m", Weight: render.Bold},
			{Text: " (5 % more; from md-48/unit.yaml and from the shop's own list of wrenches)"}}}
		d := render.Deck{Sections: []render.Section{{Name: "Steps", Groups: []render.Group{{Elements: specimen.Elements(render.Step{Number: 1, Title: specimen.Runs("Turn")}, changed, changed)}}}}}
		sheets, problems := Faces(d, o)
		if len(problems) > 0 || len(sheets) != 1 || sheets[0].Code != "" {
			t.Fatal(o.Paper.Name, problems, len(sheets))
		}
		struck := 0
		for _, op := range sheets[0].Ops {
			if _, is := op.(sheet.Line); is {
				struck++
			}
			if d, is := op.(sheet.Drawing); is {
				t.Errorf("%s: %q is drawn", o.Paper.Name, d.Name)
			}
		}
		if struck < 2 {
			t.Errorf("%s: %d lines", o.Paper.Name, struck)
		}
		insideTrim(t, o, sheets[0])
		tallEnough(t, o, sheets[0])
		noOverlap(t, o, sheets[0])
		boxesApart(t, o, sheets[0])
	}
}

// Running text has at most 75 characters to a line on every paper, and room
// for 35.
func TestMeasure(t *testing.T) {
	prose := strings.Repeat("Hold the socket square in all four slots and turn the ring until it comes free of the housing. ", 8)
	for _, o := range allOptions() {
		d := render.Deck{Sections: []render.Section{{Name: "Steps", Groups: []render.Group{{Elements: specimen.Elements(render.Step{Number: 1, Title: specimen.Runs("Turn")}, render.Text{Runs: specimen.Runs(prose)})}}}}}
		sheets, problems := Faces(d, o)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		lines, chars := 0, 0
		for _, op := range sheets[0].Ops {
			g, is := op.(sheet.Glyphs)
			if !is || g.Size != o.style().Text.Size || g.Font != typeface.Regular {
				continue
			}
			n := utf8.RuneCountInString(g.Text)
			if n > 75 {
				t.Errorf("%s: %d characters: %q", o.Paper.Name, n, g.Text)
			}
			lines, chars = lines+1, chars+n
		}
		if lines < 9 {
			t.Fatalf("%s: %d lines", o.Paper.Name, lines)
		}
		if per := chars / lines; per < 35 {
			t.Errorf("%s: %d characters a line", o.Paper.Name, per)
		}
	}
}

// The figure is the largest text of its face, and an instruction never
// smaller than it must be.
func TestTheFigureIsTheLargest(t *testing.T) {
	for _, o := range allOptions() {
		if o.Plain {
			continue
		}
		least, figure := o.style().Distance/190, o.style().Distance/100
		d := render.Deck{Sections: []render.Section{specimen.Steps()}}
		sheets, _ := Faces(d, o)
		for _, s := range sheets {
			var biggest, big sheet.Glyphs
			for _, op := range s.Ops {
				g, is := op.(sheet.Glyphs)
				if is && g.Size > biggest.Size {
					biggest = g
				}
				switch {
				case is && (g.Text == "0.15 to 0.25" || g.Text == "100" || g.Text == "195 to 205"):
					big = g
				case is && strings.HasPrefix(g.Text, "Hold the socket"):
					if typeface.CapHeight(g.Font, g.Size) < least {
						t.Errorf("%s: an instruction of %d µm", o.Paper.Name, typeface.CapHeight(g.Font, g.Size))
					}
				}
			}
			if big.Size > 0 && (biggest != big && biggest.Size > big.Size || typeface.CapHeight(big.Font, big.Size) < figure) {
				t.Errorf("%s: %q is not the largest on its face: %q is", o.Paper.Name, big.Text, biggest.Text)
			}
		}
	}
}

// On a gray printer a signal panel differs from the others in its word, its
// border and its triangle.
func TestSignalPanelsDifferInGrey(t *testing.T) {
	seen := map[string]string{}
	words := []string{"DANGER", "WARNING", "CAUTION", "NOTICE"}
	for _, short := range []bool{false, true} {
		for i, word := range words {
			d := render.Deck{Sections: []render.Section{{Groups: []render.Group{{Elements: specimen.Elements(
				render.Callout{Signal: render.Signal(i), Word: word, Hazard: specimen.Runs("It turns."), Avoid: specimen.Runs("Stand clear."), Short: short})}}}}}
			sheets, _ := Faces(d, optionsFor("A5"))
			mark := sheets[0].Marks[0]
			border, triangle := "", false
			for _, op := range sheets[0].Ops[mark.From:mark.To] {
				switch o := op.(type) {
				case sheet.Rect:
					if o.Role == sheet.Ground && o.StrokeWidth > 0 {
						border = fmt.Sprint("solid ", o.StrokeWidth)
					}
				case sheet.Line:
					border = fmt.Sprint("dashed ", o.Width, " ", o.Dash > 0)
				case sheet.Path:
					triangle = true
				}
			}
			if border == "" || triangle != (render.Signal(i) != render.Notice) {
				t.Errorf("%s: border %q, triangle %v", word, border, triangle)
			}
			if other, twice := seen[border]; twice && other != word {
				t.Errorf("%s has the border of %s: %s", word, other, border)
			}
			seen[border] = word
		}
	}
}

func TestTheSameDeckGivesTheSameSheets(t *testing.T) {
	for _, o := range allOptions() {
		a, p := Faces(specimen.Deck(), o)
		b, q := Faces(specimen.Deck(), o)
		if !reflect.DeepEqual(a, b) || !reflect.DeepEqual(p, q) {
			t.Errorf("%s differs", o.Paper.Name)
		}
	}
}

func BenchmarkLayout(b *testing.B) {
	d, o := specimen.Deck(), optionsFor("A5")
	b.ReportAllocs()
	for b.Loop() {
		Faces(d, o)
	}
}
