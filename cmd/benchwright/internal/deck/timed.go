package deck

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/render"
)

// timed builds what a face says of work that must be done before a time runs out.
func (b *builder) timed(i *card.Timed) []render.Element { return nil }

// timedTools returns what is taken in the hand for it.
func (b *builder) timedTools(i *card.Timed) []render.ToolRow { return nil }

// timedRows returns what it leaves on record.
func (b *builder) timedRows(i *card.Timed) []recordRow { return nil }
