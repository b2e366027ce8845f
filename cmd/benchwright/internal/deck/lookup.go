package deck

import (
	"fmt"

	"benchwright/cmd/benchwright/internal/source"
	"benchwright/render"
)

// wholeRows is the number of table rows that fit on any face. A table with no
// more, like a figure, is not divided.
const wholeRows = 6

// A captioned table is one of several in a step, with the instruction for it.
type captioned struct {
	caption string // or ""
	table   render.Table
}

// table places a table or figure in the step, or on a look-up face with a
// reference to it.
func (b *builder) table(at source.Place, title string, t render.Content) render.Element {
	b.hasTable[b.step] = true
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

// series places tables that are read one after the other. The step names one
// face for all of them.
func (b *builder) series(at source.Place, title string, list []captioned) []render.Element {
	b.hasTable[b.step] = true
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
	for i, t := range list {
		if t.caption != "" {
			b.lookups = append(b.lookups, render.Group{Ref: b.ref(at), Join: true, Elements: []render.Element{caption(t)}})
		}
		b.lookups = append(b.lookups, render.Group{Ref: b.ref(at), Breaks: true, With: i < len(list)-1, Elements: []render.Element{b.technical(at, t.table)}})
	}
	return []render.Element{b.see(at, wordTable, anchor)}
}

// lookup begins a table or figure on the look-up faces and returns its anchor.
// The line that names its step stays with it.
func (b *builder) lookup(at source.Place, title string) string {
	anchor := fmt.Sprintf("lookup-%d", len(b.lookups)+1)
	b.lookups = append(b.lookups, render.Group{Ref: b.ref(at), Bookmark: title, Anchor: anchor, Join: true, Elements: []render.Element{
		b.technical(at, render.Text{Role: render.Lead, Runs: plain(wordForStep(b.step, title))})}})
	return anchor
}

// see returns a reference to something on a look-up face.
func (b *builder) see(at source.Place, what, anchor string) render.Element {
	return b.technical(at, render.Text{Role: render.Instruction, Runs: []render.Run{{Text: wordSee(what, b.step), Weight: render.Semibold, Link: anchor}}})
}
