package deck

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/render"
)

// witness builds a hold point.
func (b *builder) witness(w *card.Witness) []render.Element {
	hold := render.Hold{Title: wordHold, Who: plain(wordWho(w.Who)), Sees: plain(wordSees(w.Sees)), Boxes: []string{wordSignature, wordDate}}
	if w.Before != "" {
		hold.Before = plain(wordBefore(w.Before))
	}
	return []render.Element{b.technical(w.At, hold)}
}

// witnessRows returns what it leaves on record.
func witnessRows(w *card.Witness) []recordRow {
	return []recordRow{{at: w.At, what: wordHoldRow(w.Sees), limits: w.Who, kind: rowKind{initials: true}, hold: true}}
}
