package deck

import (
	"fmt"

	"benchwright/cmd/benchwright/internal/source"
	"benchwright/render"
)

// wholeRows is how many rows of a table any face holds: such a table, as a
// figure, is of one piece.
const wholeRows = 6

// A captioned table is one of several that a step needs, with what to do in it.
type captioned struct {
	caption string // "" for none
	table   render.Table
}

// table places a table or a figure that a step needs: in the step, or on a
// look-up face with a reference to it in its place.
func (b *builder) table(at source.Place, title string, t render.Content) render.Element {
	b.tabled[b.step] = true
	if b.relief[b.step] == unrelieved {
		return b.technical(at, t)
	}
	what, runs := wordFigure, false
	switch t := t.(type) {
	case render.Table:
		what, runs = wordTable, len(t.Rows) > wholeRows
	case render.Contact:
		what = wordPictures
	}
	anchor := b.lookup(at, title)
	b.lookups = append(b.lookups, render.Group{Ref: b.ref(at), Breaks: runs, Elements: []render.Element{b.technical(at, t)}})
	return b.see(at, what, anchor)
}

// series places tables that are read one after the other.
func (b *builder) series(at source.Place, title string, list []captioned) []render.Element {
	b.tabled[b.step] = true
	caption := func(t captioned) render.Element {
		return b.technical(at, render.Text{Role: render.Instruction, Runs: strong(t.caption)})
	}
	if b.relief[b.step] == unrelieved {
		var out []render.Element
		for _, t := range list {
			if t.caption != "" {
				out = append(out, caption(t))
			}
			out = append(out, b.technical(at, t.table))
		}
		return out
	}
	anchor := b.lookup(at, title)
	for _, t := range list {
		if t.caption != "" {
			b.lookups = append(b.lookups, render.Group{Ref: b.ref(at), Join: true, Elements: []render.Element{caption(t)}})
		}
		b.lookups = append(b.lookups, render.Group{Ref: b.ref(at), Breaks: true, Elements: []render.Element{b.technical(at, t.table)}})
	}
	return []render.Element{b.see(at, wordTable, anchor)}
}

// lookup begins a table or a figure on the look-up faces and returns its anchor.
// The line that says which step it is for stays with it.
func (b *builder) lookup(at source.Place, title string) string {
	anchor := fmt.Sprintf("lookup-%d", len(b.lookups)+1)
	b.lookups = append(b.lookups, render.Group{Ref: b.ref(at), Bookmark: title, Anchor: anchor, Join: true, Elements: []render.Element{
		b.technical(at, render.Text{Role: render.Lead, Runs: plain(wordForStep(b.step, title))})}})
	return anchor
}

// see refers to what stands on a look-up face.
func (b *builder) see(at source.Place, what, anchor string) render.Element {
	return b.technical(at, render.Text{Role: render.Instruction, Runs: []render.Run{{Text: wordSee(what, b.step), Weight: render.Semibold, Link: anchor}}})
}
