package deck

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/render"
)

// fill builds what a face says of a quantity of fluid put in.
func (b *builder) fill(i *card.Fill) []render.Element { return nil }

// fillTools returns what is taken in the hand for it.
func (b *builder) fillTools(i *card.Fill) []render.ToolRow { return nil }

// fillRows returns what it leaves on record.
func (b *builder) fillRows(i *card.Fill) []recordRow { return nil }
