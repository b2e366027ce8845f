package deck

import (
	"fmt"

	"benchwright/cmd/benchwright/internal/source"
	"benchwright/render"
)

// wholeRows is how many rows of a table any face holds: such a table, as a
// figure, is of one piece.
const wholeRows = 6

// table places a table or a figure that a step needs: in the step, or on a
// look-up face with a reference to it in its place.
func (b *builder) table(at source.Place, title string, t render.Content) render.Element {
	if !b.far[b.step] {
		return b.technical(at, t)
	}
	what, runs := wordFigure, false
	switch t := t.(type) {
	case render.Table:
		what, runs = wordTable, len(t.Rows) > wholeRows
	case render.Contact:
		what = wordPictures
	}
	anchor := fmt.Sprintf("lookup-%d", len(b.lookups)+1)
	b.lookups = append(b.lookups, render.Group{Ref: b.ref(at), Bookmark: title, Anchor: anchor, Breaks: runs, Elements: []render.Element{
		b.technical(at, render.Text{Role: render.Lead, Runs: plain(wordForStep(b.step, title))}),
		b.technical(at, t),
	}})
	return b.technical(at, render.Text{Role: render.Instruction, Runs: []render.Run{{Text: wordSee(what, b.step), Weight: render.Semibold, Link: anchor}}})
}
