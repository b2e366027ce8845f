package layout

import (
	"testing"

	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
	"benchwright/render/specimen"
)

// Every picture has its letter, its box and its patch; on a gray printer the
// patch stands out from the tooth.
func TestContactRows(t *testing.T) {
	alone := specimen.Contact()
	alone.Rows[1].Do = alone.Rows[1].Do[:1] // its link leads nowhere here
	for _, o := range allOptions() {
		d := render.Deck{Sections: []render.Section{{Name: "Look-up", Groups: []render.Group{{Elements: specimen.Elements(render.Text{Role: render.Lead, Runs: specimen.Runs("For step 3")}, alone)}}}}}
		sheets, problems := Faces(d, o)
		if len(problems) > 0 {
			t.Errorf("%s: %+v", o.Paper.Name, problems)
		}
		boxes, patches, letters := 0, 0, ""
		for _, s := range sheets {
			for _, op := range s.Ops {
				switch op := op.(type) {
				case sheet.Rect:
					if op.Role == sheet.TickBox {
						boxes++
					}
				case sheet.Path:
					if op.Fill == compose.Accent {
						patches++
					}
				case sheet.Glyphs:
					if len(op.Text) == 1 && op.Color == compose.Accent {
						letters += op.Text
					}
				}
			}
		}
		if boxes != 5 || patches != 5 || letters != "ABCDE" {
			t.Errorf("%s: %d boxes, %d patches, letters %q", o.Paper.Name, boxes, patches, letters)
		}
	}
}

// A lead line stays with what it leads, and what runs on is kept whole where a
// face holds it.
func TestLeadStaysWithWhatItLeads(t *testing.T) {
	alone := specimen.Contact()
	alone.Rows[1].Do = alone.Rows[1].Do[:1] // its link leads nowhere here
	pictures := render.Group{Elements: specimen.Elements(render.Text{Role: render.Lead, Runs: specimen.Runs("For step 3")}, alone)}
	for _, o := range allOptions() {
		d := render.Deck{Sections: []render.Section{{Name: "Look-up", Groups: []render.Group{pictures, pictures, pictures}}}}
		sheets, problems := Faces(d, o)
		if len(problems) > 0 {
			t.Errorf("%s: %+v", o.Paper.Name, problems)
		}
		for i, s := range sheets {
			last := ""
			for _, m := range s.Marks {
				if g, is := s.Ops[m.From].(sheet.Glyphs); is {
					last = g.Text
				} else {
					last = ""
				}
			}
			if last == "For step 3" {
				t.Errorf("%s: face %d ends with a lead", o.Paper.Name, i+1)
			}
		}
		if want := map[string]int{"A5": 3, "half-Letter": 3}[o.Paper.Name]; want > 0 && len(sheets) != want {
			t.Errorf("%s: %d faces", o.Paper.Name, len(sheets))
		}
	}
}
