package deck

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/render"
)

// leakTest builds what a face says of a pressure or vacuum hold.
func (b *builder) leakTest(i *card.LeakTest) []render.Element { return b.measurement(i.Measurement) }

// leakTestTools returns what is taken in the hand for it.
func (b *builder) leakTestTools(i *card.LeakTest) []render.ToolRow { return nil }

// leakTestRows returns what it leaves on record.
func (b *builder) leakTestRows(i *card.LeakTest) []recordRow { return b.measurementRows(i.Measurement) }
