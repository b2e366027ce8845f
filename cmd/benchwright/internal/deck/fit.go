package deck

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/render"
)

// fit builds what a face says of a part fitted or drawn by heat, cold or force.
func (b *builder) fit(i *card.Fit) []render.Element { return nil }

// fitTools returns what is taken in the hand for it.
func (b *builder) fitTools(i *card.Fit) []render.ToolRow { return nil }

// fitRows returns what it leaves on record.
func (b *builder) fitRows(i *card.Fit) []recordRow { return nil }
