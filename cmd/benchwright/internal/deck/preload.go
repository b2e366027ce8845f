package deck

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/render"
)

// preload builds what a face says of a bearing preload, read as the pull of a cord.
func (b *builder) preload(i *card.Preload) []render.Element { return b.measurement(i.Measurement) }

// preloadTools returns what is taken in the hand for it.
func (b *builder) preloadTools(i *card.Preload) []render.ToolRow { return nil }

// preloadRows returns what it leaves on record.
func (b *builder) preloadRows(i *card.Preload) []recordRow { return b.measurementRows(i.Measurement) }
