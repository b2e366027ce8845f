package compile

import (
	"bytes"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/compare"
	"benchwright/cmd/benchwright/internal/deck"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/workspace"
	"benchwright/render"
	"benchwright/render/layout"
	"benchwright/render/pdf"
	"benchwright/render/sheet"
)

// ChangeCard returns a report as PDF, and how many pages it has: what sums it up,
// then each page of the new side on which something changed, with a bar at the
// changed steps and the old value struck through beside the new one. A card that
// does not compile has its changes in the summary alone.
func ChangeCard(w *workspace.Workspace, r *compare.Report) ([]byte, int, error) {
	sheets := changeSheets(w, r)
	for i := range sheets {
		sheets[i] = unlinked(sheets[i])
	}
	summary := r.Summary()
	var b bytes.Buffer
	err := pdf.Write(&b, pdf.Info{Title: summary.Running.Number, Subject: summary.Running.Title, Language: summary.Language}, sheets)
	return b.Bytes(), len(sheets), err
}

// changeSheets lays out the pages of a change card.
func changeSheets(w *workspace.Workspace, r *compare.Report) []sheet.Sheet {
	lib := read(w, &diag.List{})
	options := layout.Options{Paper: lib.paper(Options{}), Uncoded: true}
	if lib.shop != nil {
		options.Distance = lib.shop.Distance
	}
	sheets, _ := layout.Faces(r.Summary(), options)
	for _, c := range r.Cards {
		for _, f := range lib.procedures {
			if f.Named && f.procedure.Number.Name == c.Number && c.New.Errors == 0 {
				sheets = append(sheets, lib.changedFaces(f, c, options)...)
			}
		}
	}
	return sheets
}

// changedFaces lays out the faces of a card on which something changed.
func (lib *library) changedFaces(f *procedureFile, c compare.Card, options layout.Options) []sheet.Sheet {
	cards, _, lists, ok := lib.resolve(f, &diag.List{})
	if !ok {
		return nil
	}
	var out []sheet.Sheet
	for _, g := range groupCards(cards, lists, func(c *card.Card) *deck.Deck { return deck.Build(c, nil) }, nil) {
		d := c.Mark(lib.layout(f, g, "", "", Options{}).deck.Deck, g.cards[0].VariantID())
		sheets, problems := layout.Faces(d, options)
		if widen(d, problems) {
			sheets, _ = layout.Faces(d, options)
		}
		for _, s := range sheets {
			if slices.ContainsFunc(s.Marks, func(m sheet.Mark) bool { return m.Ref == compare.ChangedRef }) {
				out = append(out, s)
			}
		}
	}
	return out
}

// widen gives the steps that what changed made too tall for a column the width of
// the face, and reports whether there are any.
func widen(d render.Deck, problems []render.Problem) (any bool) {
	for _, s := range d.Sections {
		for i, g := range s.Groups {
			if !g.Wide && slices.ContainsFunc(problems, func(p render.Problem) bool { return p.Kind == render.TooTall && p.Ref == g.Ref }) {
				s.Groups[i].Wide, any = true, true
			}
		}
	}
	return any
}

// unlinked returns a sheet without links to other pages: they may not be there.
func unlinked(s sheet.Sheet) sheet.Sheet {
	var ops []sheet.Op
	for _, op := range s.Ops {
		if l, is := op.(sheet.Link); !is || strings.HasPrefix(l.To, "https://") {
			ops = append(ops, op)
		}
	}
	s.Ops, s.Anchors, s.Marks, s.Groups = ops, nil, nil, nil
	return s
}
