package deck

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/render"
)

// holdPoint builds the panel at which the work stops until somebody has signed.
func (b *builder) holdPoint(h *card.HoldPoint) []render.Element {
	hold := render.Hold{Title: wordHold, Who: plain(wordWho(h.Who)), Sees: plain(wordSees(h.Sees)), Boxes: []string{wordSignature, wordDate}}
	if h.Before != "" {
		hold.Before = plain(wordBefore(h.Before))
	}
	return []render.Element{b.technical(h.At, hold)}
}

// holdPointRows returns its row of the record.
func holdPointRows(h *card.HoldPoint) []recordRow {
	return []recordRow{{at: h.At, what: wordHoldRow(h.Sees), limits: h.Who, boxes: []string{wordDate}, kind: rowKind{initials: true}, hold: true}}
}
