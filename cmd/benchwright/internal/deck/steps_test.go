package deck

import (
	"testing"

	"benchwright/render"
)

// What leads past a step is read before its callouts and tools; what leads back, or
// stands later in the step, keeps its place.
func TestAWayPastAStepStandsFirst(t *testing.T) {
	const next = "\n\n### Hold the nut {#hold}\n\nHold it.\n"
	for _, c := range []struct {
		text string
		lead bool
	}{
		{"If the pull was inside, go to [step](#hold).\n\nTurn the nut.", true},
		{"Turn the nut.\n\nThen go to [step](#hold).", false},
		{"Turn the nut as in [step](#turn).\n\nHold it.", false},
		{"If the pull was inside, go to [step](#hold).", false}, // nothing stands below it
	} {
		d := deckOf(t, "### Turn the nut {#turn}\n\n```caution\nhazard: The bar can slip.\nresult: Crushed knuckles.\navoid: Pull the bar.\n```\n\n"+c.text+next)
		elements := d.Sections[1].Groups[1].Elements
		first, is := elements[1].Content.(render.Text)
		if lead := is && first.Role == render.Lead; lead != c.lead {
			t.Errorf("%q: first stands %T %+v, lead %t, want %t", c.text, elements[1].Content, first, lead, c.lead)
		}
	}
}
