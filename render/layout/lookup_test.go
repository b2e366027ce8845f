package layout

import (
	"fmt"
	"strings"
	"testing"

	"benchwright/render"
	"benchwright/render/sheet"
	"benchwright/render/specimen"
)

// tableOf is a table of two columns of numbers.
func tableOf(rows int) render.Table {
	t := render.Table{Large: true, Head: [][]render.Run{specimen.Runs("Lowest"), specimen.Runs("Highest")}}
	for i := range rows {
		t.Rows = append(t.Rows, [][]render.Run{specimen.Runs(fmt.Sprintf("%d.50", 8+i)), specimen.Runs(fmt.Sprintf("−%d.5", i))})
	}
	return t
}

// wordy is a table whose columns are too wide for bands.
func wordy(rows int) render.Table {
	t := render.Table{Head: [][]render.Run{specimen.Runs("What is seen"), specimen.Runs("What to do")}}
	for range rows {
		t.Rows = append(t.Rows, [][]render.Run{specimen.Runs("a wet rim at the seal"), specimen.Runs("look again after the second run")})
	}
	return t
}

// The tables that a step names stand on one face, wherever one holds them, and on
// the last face in columns as tall as each other.
func TestTablesOfAStepStandOnOneFace(t *testing.T) {
	for _, paper := range []string{"A4", "A4-landscape", "A5", "A3-landscape"} {
		for before := range 9 {
			first := render.Group{Elements: []render.Element{lines(before+1, 1)}}
			one := render.Group{Breaks: true, With: true, Elements: []render.Element{{Ref: 2, Content: wordy(9)}}}
			two := render.Group{Breaks: true, Elements: []render.Element{{Ref: 3, Content: wordy(9)}}}
			sheets, problems := Faces(render.Deck{Sections: []render.Section{
				{Name: "Steps", Groups: []render.Group{first}}, {Name: "Look-up", Follows: true, Groups: []render.Group{one, two}}}}, optionsFor(paper))
			if len(problems) > 0 {
				t.Fatal(problems)
			}
			if a, b := facesOf(sheets, 2), facesOf(sheets, 3); len(a) != 1 || len(b) != 1 || a[0] != b[0] {
				t.Errorf("%s, %d lines before: the tables stand on faces %v and %v", paper, before+1, a, b)
			}
		}
	}
}

func TestTablesOfTheLastFaceStandSideBySide(t *testing.T) {
	full := render.Group{Elements: []render.Element{{Content: render.Picture{Name: "a.png", Data: specimen.Picture(), Alt: "a"}}, lines(9, 1)}}
	one := render.Group{Breaks: true, With: true, Elements: []render.Element{{Ref: 2, Content: wordy(9)}}}
	two := render.Group{Breaks: true, Elements: []render.Element{{Ref: 3, Content: wordy(9)}}}
	sheets, _ := Faces(render.Deck{Sections: []render.Section{
		{Name: "Steps", Groups: []render.Group{full, full, full, full}}, {Name: "Look-up", Follows: true, Groups: []render.Group{one, two}}}}, optionsFor("A4"))
	var tables []sheet.Mark
	for _, m := range sheets[len(sheets)-1].Marks {
		if m.Ref == 2 || m.Ref == 3 {
			tables = append(tables, m)
		}
	}
	if len(tables) != 2 || tables[0].Y != tables[1].Y || tables[0].X >= tables[1].X {
		t.Errorf("%+v", tables)
	}
}

// A table of more rows than a column takes the width of the face once, under one
// line of heads.
func TestALongTableTakesTheWidth(t *testing.T) {
	deck := render.Deck{Sections: []render.Section{{Name: "Steps", Groups: []render.Group{{Elements: []render.Element{lines(1, 1)}}}},
		{Name: "Look-up", Follows: true, Groups: []render.Group{{Breaks: true, Elements: []render.Element{{Ref: 2, Content: tableOf(120)}}}}}}}
	sheets, problems := Faces(deck, optionsFor("A4"))
	if at := facesOf(sheets, 2); len(problems) > 0 || len(at) != 1 {
		t.Fatalf("on faces %v: %v", at, problems)
	}
	last := sheets[len(sheets)-1]
	heads := map[int]int{}
	for _, op := range last.Ops {
		if g, is := op.(sheet.Glyphs); is && strings.TrimSpace(g.Text) == "Lowest" {
			heads[g.Y]++
		}
	}
	if len(heads) != 1 {
		t.Errorf("heads at %v", heads)
	}
}

// Decimal marks stand one over the other.
func TestDecimalMarksAreInLine(t *testing.T) {
	sheets, _ := Faces(render.Deck{Sections: []render.Section{{Groups: []render.Group{{Elements: []render.Element{{Ref: 2, Content: tableOf(4)}}}}}}}, optionsFor("A5"))
	ends := map[string]int{}
	for _, op := range sheets[0].Ops {
		if g, is := op.(sheet.Glyphs); is && strings.HasSuffix(g.Text, ".50") {
			ends[g.Text] = g.X + g.Width
		}
	}
	if len(ends) != 4 || ends["8.50"] != ends["10.50"] || ends["9.50"] != ends["11.50"] {
		t.Errorf("the numbers end at %v", ends)
	}
}

// No rule stands beside an empty column.
func TestNoRuleBesideAnEmptyColumn(t *testing.T) {
	for n, want := range map[int]int{1: 0, 3: 1} {
		var groups []render.Group
		for range n {
			groups = append(groups, render.Group{Elements: []render.Element{lines(18, 0)}})
		}
		sheets, _ := Faces(render.Deck{Sections: []render.Section{{Groups: groups}}}, optionsFor("A4"))
		rules := 0
		for _, op := range sheets[0].Ops {
			if l, is := op.(sheet.Line); is && l.X1 == l.X2 {
				rules++
			}
		}
		if rules != want {
			t.Errorf("%d groups: %d rules, want %d", n, rules, want)
		}
	}
}
