package layout

import (
	"testing"

	"benchwright/render"
	"benchwright/render/sheet"
	"benchwright/render/specimen"
)

// markOf returns where the first element of a kind stands.
func markOf(t *testing.T, s sheet.Sheet, kind string) sheet.Mark {
	t.Helper()
	for _, m := range s.Marks {
		if m.Kind == kind {
			return m
		}
	}
	t.Fatalf("no %s", kind)
	return sheet.Mark{}
}

// Where a column is wide, a figure stands beside its panel, which is at the left
// whichever comes first; where it is not, one stands over the other.
func TestAFigureStandsBesideItsPanel(t *testing.T) {
	setting := render.Setting{Title: specimen.Runs("Cover bolts, M8"), Label: "Set", Value: "22", Unit: "N·m"}
	order := render.Order{Shape: render.Circle, Numbers: []int{1, 4, 2, 5, 3}, Lines: [][]render.Run{specimen.Runs("The numbers are the order.")}}
	reading := render.Reading{Title: specimen.Runs("Pull of the pinion"), Label: "Accept", Value: "2.0 to 3.4", Unit: "kg", Low: "2.0", High: "3.4", Boxes: []string{""}}
	cord := render.Cord{Drum: "radius 40 mm", Cord: "cord 3 mm", Pull: "2.0 to 3.4 kg", Lines: [][]render.Run{specimen.Runs("Zero the scale as you hold it.")}}
	for _, c := range []struct {
		paper         string
		first, second render.Content
		panel, figure string
		beside        bool
	}{
		{"A5", setting, order, "setting", "order", true},
		{"A5", cord, reading, "reading", "cord", true},
		{"A4", setting, order, "setting", "order", false},
		{"A4", cord, reading, "reading", "cord", false},
	} {
		d := render.Deck{Sections: []render.Section{{Groups: []render.Group{specimen.Step(1, "", "Tighten", c.first, c.second)}}}}
		sheets, problems := Faces(d, optionsFor(c.paper))
		if len(problems) > 0 {
			t.Errorf("%s, %s: %v", c.paper, c.figure, problems)
			continue
		}
		panel, figure := markOf(t, sheets[0], c.panel), markOf(t, sheets[0], c.figure)
		beside := figure.X >= panel.X+panel.W/2 && figure.Y == panel.Y
		if beside != c.beside {
			t.Errorf("%s: %s at %d, %d; %s at %d, %d; beside %t, want %t", c.paper, c.panel, panel.X, panel.Y, c.figure, figure.X, figure.Y, beside, c.beside)
		}
	}
}

// A figure that is wider than its column is a problem, never ink outside it.
func TestACordTooWide(t *testing.T) {
	cord := render.Cord{Drum: "radius 40 mm, as marked on the drum", Cord: "cord 3 mm", Pull: "between 2.0 and 3.4 kg on the spring scale, at every place round the shaft"}
	d := render.Deck{Sections: []render.Section{{Groups: []render.Group{specimen.Step(1, "", "Pull", cord)}}}}
	_, problems := Faces(d, optionsFor("A6"))
	if len(problems) != 1 || problems[0].Kind != render.FigureTooWide {
		t.Errorf("%v", problems)
	}
}
