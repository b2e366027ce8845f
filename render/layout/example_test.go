package layout_test

import (
	"fmt"
	"strings"

	"benchwright/render"
	"benchwright/render/layout"
	"benchwright/render/sheet"
)

// A step and a word that no face is wide enough for: the faces are made all the
// same, and the problem carries the reference of the word's element.
func ExampleFaces() {
	step := render.Group{Elements: []render.Element{
		{Ref: 1, Content: render.Step{Number: 1, Title: []render.Run{{Text: "Loosen the nut"}}}},
		{Ref: 2, Content: render.Text{Runs: []render.Run{{Text: strings.Repeat("x", 90)}}}},
	}}
	deck := render.Deck{
		Running:  render.Running{Number: "MD48-20", Title: "Strip the drive"},
		Sections: []render.Section{{Name: "Steps", Groups: []render.Group{step}}},
	}
	a5 := sheet.Paper{Name: "A5", Width: 148000, Height: 210000}
	faces, problems := layout.Faces(deck, layout.Options{Paper: a5})
	for _, f := range faces {
		fmt.Println(f.Name, f.Width, f.Height, f.Groups[0].Name)
	}
	for _, p := range problems {
		fmt.Println(p.Kind == render.WordTooWide, p.Ref, len(p.Text))
	}
	// Output:
	// Step 1 of 1 148000 210000 step 1
	// true 2 90
}
