package deck

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/render"
)

// lash builds what a face says of a backlash reading, as the dial shows it where it stands.
func (b *builder) lash(i *card.Lash) []render.Element { return b.measurement(i.Measurement) }

// lashTools returns what is taken in the hand for it.
func (b *builder) lashTools(i *card.Lash) []render.ToolRow { return nil }

// lashRows returns what it leaves on record.
func (b *builder) lashRows(i *card.Lash) []recordRow { return b.measurementRows(i.Measurement) }
