package checkcode

import (
	"crypto/sha256"
	"encoding/binary"
	"fmt"

	"benchwright/render"
)

// A Piece is an element on a face. One that continues on another face stands
// with the slice From:To of its Of slabs on this one.
type Piece struct {
	render.Element
	From, To, Of int
}

// Of returns the code of a face: of the card and variants that it serves, and of
// the pieces on it in reading order. Revision, dates and the numbers of faces are
// left out: a face that says the same in the next revision has the same code,
// and its laminate stays on the bench.
func Of(r render.Running, pieces []Piece) Code {
	technical := fmt.Appendf(nil, "face %q %q %q %q\n", r.Number, r.Unit, r.Variant, r.Watch)
	wording := fmt.Appendf(nil, "face %q %q\n", r.Title, r.Note)
	for _, p := range pieces {
		text := render.CanonicalElement(p.Element)
		if p.To-p.From < p.Of {
			text += fmt.Sprintf(" %d:%d", p.From, p.To)
		}
		if p.Class == render.Technical {
			technical = append(append(technical, text...), '\n')
		} else {
			wording = append(append(wording, text...), '\n')
		}
	}
	return encode(number(technical), number(wording))
}

// Whole returns the code of a deck, which does not depend on what stands on
// which face.
func Whole(d render.Deck) Code {
	var all []Piece
	for _, s := range d.Sections {
		for _, g := range s.Groups {
			for _, e := range g.Elements {
				all = append(all, Piece{Element: e})
			}
		}
	}
	return Of(d.Running, all)
}

// number returns the first bits of a hash.
func number(text []byte) uint32 {
	sum := sha256.Sum256(text)
	return binary.BigEndian.Uint32(sum[:])
}
