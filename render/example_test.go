package render_test

import (
	"fmt"

	"benchwright/render"
)

// Two decks that say the same have one text, however their words are cut.
func ExampleCanonical() {
	nut := render.Step{Number: 1, Title: []render.Run{{Text: "Loosen the "}, {Text: "nut"}}}
	fmt.Print(render.Canonical(render.Deck{
		Language: "en",
		Running:  render.Running{Number: "MD48-20", Title: "Strip the drive", Variant: "early"},
		Sections: []render.Section{{Name: "Steps", Groups: []render.Group{{Elements: []render.Element{{Ref: 7, Content: nut}}}}}},
	}))
	// Output:
	// T card number="MD48-20"
	// W card title="Strip the drive" language="en"
	// W words
	// T section name="Steps"
	// T group
	// T step number=1 title=["Loosen the nut"]
}
