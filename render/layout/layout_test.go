package layout

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"benchwright/render"
	"benchwright/render/sheet"
	"benchwright/render/specimen"
)

// texts returns what is printed on a sheet, in reading order.
func texts(s sheet.Sheet) []string {
	var all []string
	for _, op := range s.Ops {
		if g, is := op.(sheet.Glyphs); is {
			all = append(all, strings.TrimSpace(g.Text))
		}
	}
	return all
}

func shows(s sheet.Sheet, text string) bool {
	return strings.Contains(strings.Join(texts(s), " "), text)
}

// facesOf returns the faces on which the element with a reference stands.
func facesOf(sheets []sheet.Sheet, ref render.Ref) []int {
	var all []int
	for i, s := range sheets {
		for _, m := range s.Marks {
			if m.Ref == ref {
				all = append(all, i)
			}
		}
	}
	return all
}

func lines(n int, ref render.Ref) render.Element {
	return render.Element{Ref: ref, Content: render.Text{Runs: specimen.Runs(strings.Repeat("word ", 14*n))}}
}

func TestAStepIsNeverSplit(t *testing.T) {
	for height := 1; height < 15; height++ {
		var groups []render.Group
		for i := range 12 {
			g := specimen.Step(i+1, "", "Turn the ring")
			g.Elements[0].Ref = render.Ref(1 + i)
			g.Elements = append(g.Elements, lines(height, render.Ref(100+i)), lines(1, render.Ref(200+i)))
			groups = append(groups, g)
		}
		sheets, problems := Faces(render.Deck{Sections: []render.Section{{Name: "Steps", Groups: groups}}}, optionsFor("A5"))
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		for i := range 12 {
			head, first, last := facesOf(sheets, render.Ref(1+i)), facesOf(sheets, render.Ref(100+i)), facesOf(sheets, render.Ref(200+i))
			if len(head) != 1 || !slices.Equal(head, first) || !slices.Equal(first, last) {
				t.Errorf("step %d of height %d stands on faces %v, %v, %v", i+1, height, head, first, last)
			}
		}
	}
}

// A table that one face holds is not parted, whatever stands above it.
func TestATableIsNotParted(t *testing.T) {
	for above := 1; above < 9; above++ {
		var rows [][][]render.Run
		for i := range 12 {
			rows = append(rows, [][]render.Run{specimen.Runs(fmt.Sprint(i)), specimen.Runs("word")})
		}
		var groups []render.Group
		for i := range 3 {
			groups = append(groups, render.Group{Breaks: true, Elements: []render.Element{lines(above, render.Ref(10+i)), {Ref: render.Ref(1 + i), Content: render.Table{Head: rows[0], Rows: rows}}}})
		}
		sheets, problems := Faces(render.Deck{Sections: []render.Section{{Name: "Look-up", Groups: groups}}}, optionsFor("A5"))
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		for i := range 3 {
			if at := facesOf(sheets, render.Ref(1+i)); len(at) != 1 {
				t.Errorf("under %d lines: table %d stands on faces %v", above, i+1, at)
			}
		}
	}
}

func TestAStageNeverEndsItsFace(t *testing.T) {
	for fill := 1; fill < 26; fill++ {
		first := specimen.Step(1, "", "Turn")
		first.Elements = append(first.Elements, lines(fill%12, 10), lines(fill/2, 11))
		head := specimen.Stage("Output cartridge")
		head.Elements[0].Ref = 20
		second := specimen.Step(2, "", "Draw")
		second.Elements[0].Ref = 21
		second.Elements = append(second.Elements, lines(3, 22))
		sheets, _ := Faces(render.Deck{Sections: []render.Section{{Groups: []render.Group{first, head, second}}}}, optionsFor("A5"))
		if a, b := facesOf(sheets, 20), facesOf(sheets, 22); !slices.Equal(a, b) {
			t.Errorf("with %d lines before it the stage stands on %v, its step on %v", fill, a, b)
		}
	}
}

func TestListingsRunOnUnderTheirHead(t *testing.T) {
	for n := range 60 {
		var rows [][][]render.Run
		for i := range n {
			rows = append(rows, [][]render.Run{specimen.Runs(fmt.Sprintf("Tool-%d.", i)), specimen.Runs("T"), specimen.Runs("board")})
		}
		d := render.Deck{Sections: []render.Section{{Name: "Lay-out", Groups: []render.Group{{Elements: []render.Element{
			{Ref: 1, Content: render.Listing{Title: "Tools", None: "none", Columns: []string{"Name", "Number", "Place"}, Rows: rows}}}}}}},
			Words: render.Words{Continued: "(suite)"}}
		sheets, problems := Faces(d, optionsFor("A5"))
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		if n == 0 && !shows(sheets[0], "Tools none") {
			t.Errorf("an empty listing shows %q", texts(sheets[0]))
		}
		all := ""
		for i, s := range sheets {
			on := 0
			for _, text := range texts(s) {
				if strings.HasPrefix(text, "Tool-") {
					on++
				}
			}
			if n > 1 && on < 2 {
				t.Errorf("of %d rows %d stands alone on face %d", n, on, i+1)
			}
			if again := shows(s, "Tools (suite)"); again != (i > 0) || i > 0 && !shows(s, "Number") {
				t.Errorf("face %d of %d rows: %q", i+1, n, texts(s))
			}
			all += strings.Join(texts(s), " ")
		}
		for i := range n {
			if strings.Count(all, fmt.Sprintf("Tool-%d.", i)) != 1 {
				t.Errorf("row %d of %d is not there once", i, n)
			}
		}
	}
}

func TestRecordsRunOn(t *testing.T) {
	d := render.Deck{Running: render.Running{Boxes: []string{"Job", "Serial number"}}, Sections: []render.Section{specimen.Record()}}
	sheets, _ := Faces(d, optionsFor("A5"))
	if len(sheets) != 2 || sheets[0].Name != "Record" || sheets[1].Name != "Record" {
		t.Fatalf("%d faces, the first %q", len(sheets), sheets[0].Name)
	}
	for i, s := range sheets {
		if !shows(s, "Job Serial number") {
			t.Errorf("face %d does not ask for the job", i+1)
		}
	}
	if !shows(sheets[1], "Readings and settings (continued)") || !shows(sheets[1], "Instrument Initials") {
		t.Errorf("second face: %q", texts(sheets[1]))
	}
	if last := sheets[1]; !shows(last, "END OF CARD") || shows(sheets[0], "END OF CARD") {
		t.Error("the end does not stand on the last face alone")
	}
}

// The end never needs a face of its own.
func TestTheEndNeedsNoFace(t *testing.T) {
	for n := 1; n < 40; n++ {
		rows := make([]render.RecordRow, n)
		d := render.Deck{Sections: []render.Section{{Groups: []render.Group{
			{Elements: specimen.Elements(render.Records{Title: "Record", Step: "Step", What: "What", Tail: []string{"Initials"}, Rows: rows})},
			{Elements: specimen.Elements(render.End{Text: "END OF CARD"})}}}}}
		with, _ := Faces(d, optionsFor("A6"))
		d.Sections[0].Groups = d.Sections[0].Groups[:1]
		without, _ := Faces(d, optionsFor("A6"))
		if len(with) != len(without) || !shows(with[len(with)-1], "END OF CARD") {
			t.Errorf("%d rows: %d faces with the end, %d without", n, len(with), len(without))
		}
	}
}

func TestEveryFaceStandsAlone(t *testing.T) {
	d := specimen.Deck()
	sheets, _ := Faces(d, optionsFor("A5"))
	for i, s := range sheets {
		for _, want := range []string{"MD48-20", "Strip the drive to a bare housing", "MD-48 right-angle drive · early, mid", "revision B", "2026-10-02", "DRAFT", "Invented unit, not for real work", s.Name, fmt.Sprintf("Page %d of %d", i+1, len(sheets))} {
			if !shows(s, want) {
				t.Errorf("face %d does not say %q", i+1, want)
			}
		}
		for _, once := range []string{"MD48-20", "revision B", "2026-10-02", "DRAFT", fmt.Sprintf("Page %d of", i+1)} {
			if n := strings.Count(strings.Join(texts(s), " "), once); n != 1 {
				t.Errorf("face %d says %q %d times", i+1, once, n)
			}
		}
	}
	if sheets[0].Name != "Lay-out 1 of 2" || sheets[1].Name != "Steps 1–2 of 13" {
		t.Errorf("faces are named %q and %q", sheets[0].Name, sheets[1].Name)
	}
}

// A released card has the faces of its draft.
func TestTheWatchMovesNothing(t *testing.T) {
	d := specimen.Deck()
	with, _ := Faces(d, optionsFor("A5"))
	d.Running.Watch = ""
	without, _ := Faces(d, optionsFor("A5"))
	for i := range with {
		if fmt.Sprint(with[i].Bookmarks) != fmt.Sprint(without[i].Bookmarks) {
			t.Errorf("face %d: %v and %v", i+1, with[i].Bookmarks, without[i].Bookmarks)
		}
	}
}

func TestMarksFollowTheElements(t *testing.T) {
	d := specimen.Deck()
	sheets, _ := Faces(d, optionsFor("A5"))
	seen := 0
	for _, s := range sheets {
		at := 0
		for _, m := range s.Marks {
			if m.From < at || m.To <= m.From || m.To > len(s.Ops) {
				t.Errorf("mark %+v after %d of %d", m, at, len(s.Ops))
			}
			at = m.To
			seen++
		}
	}
	want := 0
	for _, s := range d.Sections {
		for _, g := range s.Groups {
			want += len(g.Elements)
		}
	}
	if seen < want {
		t.Errorf("%d marks for %d elements", seen, want)
	}
}

// Every element stands in one group of its face, in reading order, and what it
// draws stands in its area.
func TestGroupsHoldTheirElements(t *testing.T) {
	everyFace(t, func(t *testing.T, o Options, s sheet.Sheet) {
		at := 0
		for _, g := range s.Groups {
			if g.Name == "" || g.From < at || g.To <= g.From || g.H < 0 {
				t.Errorf("group %+v after %d", g, at)
			}
			at = g.To
		}
		for _, m := range s.Marks {
			held := 0
			for _, g := range s.Groups {
				if g.From <= m.From && m.To <= g.To {
					held++
					if m.X < g.X || m.X+m.W > g.X+g.W || m.Y < g.Y || m.Y+m.H > g.Y+g.H && m.Kind != "end" {
						t.Errorf("%+v reaches out of %+v", m, g)
					}
				}
			}
			if held != 1 {
				t.Errorf("%+v stands in %d groups", m, held)
			}
			for _, op := range s.Ops[m.From:m.To] {
				const stroke = 1000
				a, ok := covers(op)
				if ok && (a.y1 < m.Y-stroke || a.y2 > m.Y+m.H+stroke || a.x2 > m.X+m.W+stroke) {
					t.Errorf("%+v draws %+v", m, op)
				}
			}
		}
	})
}

func TestOutlineAndAnchors(t *testing.T) {
	sheets, _ := Faces(specimen.Deck(), optionsFor("A5"))
	var got []string
	anchors := map[string]int{}
	for i, s := range sheets {
		for _, b := range s.Bookmarks {
			got = append(got, fmt.Sprint(b.Level, " ", b.Text))
		}
		for _, a := range s.Anchors {
			anchors[a.Name] = i
		}
	}
	want := []string{"0 Lay-out", "0 Steps", "1 As found", "2 1 Wipe the housing and look for leaks", "2 2 Measure the backlash as found", "1 Output cartridge"}
	if !slices.Equal(got[:len(want)], want) {
		t.Errorf("outline %q, want %q", got[:len(want)], want)
	}
	if anchors["lash"] != 1 || anchors["pack"] != 6 {
		t.Errorf("anchors %v", anchors)
	}
	for _, s := range sheets {
		for i, op := range s.Ops {
			if l, is := op.(sheet.Link); is {
				g := s.Ops[i-1].(sheet.Glyphs)
				if l.To != "race" || !strings.HasPrefix(g.Text, "step\u00a07") || l.X != g.X || l.W != g.Width {
					t.Errorf("link %+v over %+v", l, g)
				}
			}
		}
	}
}

func TestProblems(t *testing.T) {
	tall := specimen.Step(1, "", "Turn")
	tall.Elements = append(tall.Elements, lines(40, 2))
	wide := [][]render.Run{}
	for range 14 {
		wide = append(wide, specimen.Runs("Whatsoever"))
	}
	for _, c := range []struct {
		name  string
		group render.Group
		want  render.Problem // Text: a part of it
	}{
		{"tall", tall, render.Problem{Kind: render.TooTall, Ref: 101}},
		{"tall, no reference of its own", render.Group{Elements: []render.Element{{Ref: 9, Content: render.Step{Number: 1, Title: specimen.Runs("Turn")}}, lines(40, 2)}}, render.Problem{Kind: render.TooTall, Ref: 9}},
		{"table", render.Group{Elements: []render.Element{{Ref: 5, Content: render.Table{Head: wide}}}}, render.Problem{Kind: render.TableTooWide, Ref: 5}},
		{"word", render.Group{Elements: []render.Element{{Ref: 6, Content: render.Text{Runs: specimen.Runs(strings.Repeat("x", 90))}}}}, render.Problem{Kind: render.WordTooWide, Ref: 6, Text: "xxx"}},
		{"figure", render.Group{Elements: []render.Element{{Ref: 7, Content: render.Setting{Value: strings.Repeat("100/", 20), Unit: "N·m"}}}}, render.Problem{Kind: render.WordTooWide, Ref: 7, Text: "100/100/"}},
		{"glyph", render.Group{Elements: []render.Element{{Ref: 8, Content: render.Setting{Value: "1⌁", Unit: "N·m"}}}}, render.Problem{Kind: render.MissingGlyph, Ref: 8, Text: "⌁"}},
		{"picture", render.Group{Elements: []render.Element{{Ref: 3, Content: render.Picture{Name: "bore.png", Data: []byte("GIF89a")}}}}, render.Problem{Kind: render.BadPicture, Ref: 3, Text: "bore.png"}},
		{"link", render.Group{Elements: []render.Element{{Ref: 4, Content: render.Text{Runs: []render.Run{{Text: "step 9", Link: "nowhere"}}}}}}, render.Problem{Kind: render.BadLink, Ref: 4, Text: "nowhere"}},
		{"plain http", render.Group{Elements: []render.Element{{Ref: 4, Content: render.Text{Runs: []render.Run{{Text: "there", Link: "http://example.org"}}}}}}, render.Problem{Kind: render.BadLink, Ref: 4, Text: "http://example.org"}},
		{"symbol", render.Group{Elements: []render.Element{{Ref: 2, Content: render.Callout{Word: "DANGER", Symbols: []string{"W999"}, Avoid: specimen.Runs("Stand clear.")}}}}, render.Problem{Kind: render.NoSymbol, Ref: 2, Text: "W999"}},
		{"record row", render.Group{Elements: []render.Element{{Ref: 2, Content: render.Records{Rows: []render.RecordRow{{Ref: 44, What: specimen.Runs("⌁")}}}}}}, render.Problem{Kind: render.MissingGlyph, Ref: 44, Text: "⌁"}},
	} {
		sheets, problems := Faces(render.Deck{Sections: []render.Section{{Groups: []render.Group{c.group}}}}, optionsFor("A5"))
		if len(sheets) == 0 {
			t.Errorf("%s: no sheets", c.name)
		}
		if len(problems) != 1 || problems[0].Kind != c.want.Kind || problems[0].Ref != c.want.Ref || !strings.Contains(problems[0].Text, c.want.Text) {
			t.Errorf("%s: %+v, want one like %+v", c.name, problems, c.want)
		}
		if k := c.want.Kind; k == render.TooTall || k == render.TableTooWide {
			if p := problems[0]; p.Size <= p.Room || p.Room/100_000 != 1 {
				t.Errorf("%s: %d µm of %d µm", c.name, p.Size, p.Room)
			}
		}
		for _, s := range sheets {
			for _, op := range s.Ops {
				if _, is := op.(sheet.Link); is {
					t.Errorf("%s: a link that leads nowhere is drawn", c.name)
				}
			}
		}
	}
}

// A deck of nothing, or of empty elements, is no reason to fall over.
func TestEmptyElements(t *testing.T) {
	empty := specimen.Elements(render.Stage{}, render.Step{}, render.Text{}, render.Text{Role: render.Tip}, render.List{}, render.List{Items: []render.Item{{Sub: &render.List{}}}}, render.Table{}, render.Table{Rows: [][][]render.Run{{}}},
		render.Listing{}, render.Facts{}, render.Facts{Rows: []render.Fact{{}}}, render.Callout{}, render.Callout{Signal: 9, Short: true}, render.Hazards{}, render.Hazards{Rows: []render.HazardRow{{}}},
		render.Tools{}, render.Tools{Rows: []render.ToolRow{{}}}, render.Setting{}, render.Cord{}, render.Indicator{}, render.Reading{}, render.Reading{Low: "1", Boxes: []string{""}}, render.Hold{}, render.Records{}, render.Records{Rows: []render.RecordRow{{Boxes: make([]string, 9), Tail: make([]bool, 9)}}}, render.End{}, nil)
	for _, o := range allOptions() {
		for _, d := range []render.Deck{{}, {Sections: []render.Section{{}}}, {Sections: []render.Section{{Groups: []render.Group{{Join: true}}}}},
			{Sections: []render.Section{{Groups: []render.Group{{Breaks: true, Elements: empty}, {Join: true, Elements: empty[:1]}}}}}} {
			sheets, _ := Faces(d, o)
			if len(sheets) < len(d.Sections) {
				t.Errorf("%d sheets for %d sections", len(sheets), len(d.Sections))
			}
		}
	}
}

// A reference to a face has its number, and a deck with another number of faces
// before it says the same.
func TestFaceOf(t *testing.T) {
	deck := func(steps int) render.Deck {
		var groups []render.Group
		for i := range steps {
			groups = append(groups, render.Group{Elements: []render.Element{lines(20, 1), {Content: render.Text{Runs: []render.Run{{Text: fmt.Sprintf("See face\u00a0%s. ", render.FaceOf), Link: "table"}, {Text: fmt.Sprint(i)}}}}}})
		}
		return render.Deck{Sections: []render.Section{{Name: "Steps", Groups: groups}, {Name: "Look-up", Groups: []render.Group{{Anchor: "table", Elements: []render.Element{lines(1, 2)}}}}}}
	}
	for _, n := range []int{1, 12, 120} {
		d := deck(n)
		sheets, problems := Faces(d, optionsFor("A5"))
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		if want := fmt.Sprintf("See face\u00a0%d.", len(sheets)); !shows(sheets[0], want) {
			t.Errorf("%d steps: %q, want %q", n, texts(sheets[0]), want)
		}
		if strings.Contains(render.Canonical(d), fmt.Sprint(len(sheets))+".") {
			t.Errorf("%d steps: the number of the face shows in what the deck says", n)
		}
	}
}

func TestAnAnchorStandsOnce(t *testing.T) {
	a, b := specimen.Step(1, "nut", "Turn"), specimen.Step(2, "nut", "Turn")
	b.Elements = append(b.Elements, render.Element{Content: render.Text{Runs: []render.Run{{Text: "step 1", Link: "nut"}}}})
	sheets, problems := Faces(render.Deck{Sections: []render.Section{{Groups: []render.Group{a}}, {Groups: []render.Group{b}}}}, optionsFor("A5"))
	var anchors []sheet.Anchor
	for _, s := range sheets {
		anchors = append(anchors, s.Anchors...)
	}
	if len(problems) > 0 || len(anchors) != 1 || anchors[0].Y != sheets[0].Bookmarks[0].Y {
		t.Errorf("%v: anchors %v", problems, anchors)
	}
}

// Pictures give way before a step is too tall.
func TestPicturesGiveWay(t *testing.T) {
	shown := func(n int) int {
		g := specimen.Step(1, "", "Draw", render.Picture{Name: "a.png", Data: specimen.Picture()})
		g.Elements = append(g.Elements, lines(n, 3))
		sheets, problems := Faces(render.Deck{Sections: []render.Section{{Groups: []render.Group{g}}}}, optionsFor("A5"))
		if len(problems) > 0 {
			return 0
		}
		for _, op := range sheets[0].Ops {
			if i, is := op.(sheet.Image); is {
				return i.H
			}
		}
		return -1
	}
	few, many, most := shown(3), shown(20), shown(60)
	if !(few > many && many > few/3 && most == 0) {
		t.Errorf("heights %d, %d, %d", few, many, most)
	}
}
