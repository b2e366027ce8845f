package deck

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/render"
)

// figure builds what a face says of a picture with call-outs, or a computed figure.
func (b *builder) figure(i *card.Figure) []render.Element { return nil }

// figureTools returns what is taken in the hand for it.
func (b *builder) figureTools(i *card.Figure) []render.ToolRow { return nil }

// figureRows returns what it leaves on record.
func (b *builder) figureRows(i *card.Figure) []recordRow { return nil }
