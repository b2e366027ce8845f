package deck

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/render"
)

// shim builds what a face says of a shim pack to be made.
func (b *builder) shim(i *card.Shim) []render.Element { return nil }

// shimTools returns what is taken in the hand for it.
func (b *builder) shimTools(i *card.Shim) []render.ToolRow { return nil }

// shimRows returns what it leaves on record.
func (b *builder) shimRows(i *card.Shim) []recordRow { return nil }
