package layout

import (
	"fmt"
	"strings"
	"testing"

	"benchwright/render"
	"benchwright/render/specimen"
)

// A list of the lay-out page is not parted where a face holds all lists whole, and
// each signal word stands on it once.
func TestListsAreWhole(t *testing.T) {
	var tools [][][]render.Run
	for i := range 14 {
		tools = append(tools, [][]render.Run{specimen.Runs(fmt.Sprintf("Board %d", i)), specimen.Runs("dial indicator")})
	}
	row := func(s render.Signal, word, text string) render.HazardRow {
		return render.HazardRow{Signal: s, Word: word, Symbols: []string{"W001"}, Text: specimen.Runs(text), Steps: "step 3"}
	}
	d := render.Deck{Sections: []render.Section{{Name: "Lay-out", Small: true, Groups: []render.Group{{Breaks: true, Elements: []render.Element{
		{Ref: 1, Content: render.Hazards{Title: "Hazards", Rows: []render.HazardRow{row(render.Warning, "WARNING", "Bars"), row(render.Warning, "WARNING", "Hot parts"), row(render.Caution, "CAUTION", "Sharp edges")}}},
		{Ref: 2, Content: render.Listing{Title: "To wear", Rows: [][][]render.Run{{specimen.Runs("Eye protection")}, {specimen.Runs("Gloves")}}, Signs: []string{"M004", "M009"}}},
		{Ref: 3, Content: render.Listing{Title: "Tools", Columns: []string{"Place", "Name"}, Rows: tools}},
		{Ref: 4, Content: render.Listing{Title: "Consumables", None: "none"}},
	}}}}}}
	sheets, problems := Faces(d, optionsFor("A4"))
	if len(sheets) != 1 || len(problems) > 0 {
		t.Fatalf("%d faces, %v", len(sheets), problems)
	}
	if shows(sheets[0], "(continued)") {
		t.Error("a list is parted")
	}
	all := strings.Join(texts(sheets[0]), " ")
	if strings.Count(all, "WARNING") != 1 || strings.Count(all, "CAUTION") != 1 || !strings.Contains(all, "Hot parts") {
		t.Errorf("%q", all)
	}
}
