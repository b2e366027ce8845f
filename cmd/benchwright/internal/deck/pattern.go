package deck

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/render"
)

// pattern builds what a face says of how a gear contact pattern reads and what each reading calls for.
func (b *builder) pattern(i *card.Pattern) []render.Element { return nil }

// patternTools returns what is taken in the hand for it.
func (b *builder) patternTools(i *card.Pattern) []render.ToolRow { return nil }

// patternRows returns what it leaves on record.
func (b *builder) patternRows(i *card.Pattern) []recordRow { return nil }
