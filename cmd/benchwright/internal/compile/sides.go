package compile

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/check"
	"benchwright/cmd/benchwright/internal/compare"
	"benchwright/cmd/benchwright/internal/deck"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/workspace"
	"benchwright/render/sheet"
)

// Resolve reads a workspace and returns its named procedures to be compared:
// also those with errors, as far as they can be read. Their cards are made when
// the comparison asks for them.
func Resolve(w *workspace.Workspace, msgs *diag.List) []compare.Procedure {
	lib := read(w, msgs)
	around := first(msgs) // may stand in shop.yaml or unit.yaml
	var out []compare.Procedure
	for _, f := range lib.procedures {
		if !f.Named {
			continue
		}
		p := f.procedure
		out = append(out, compare.Procedure{Number: p.Number.Name, Title: p.Title.Name, File: f.File.Name, Rests: lib.rests(f),
			Make: func() *compare.Made {
				m := lib.side(f)
				if m.Errors > 0 && m.First == "" {
					m.First = around
				}
				return m
			}})
	}
	return out
}

// side makes the cards of one procedure. A panic leaves it without any.
func (lib *library) side(f *procedureFile) (out *compare.Made) {
	p := f.procedure
	out = &compare.Made{Errors: lib.errorsAround(f), Library: lib.cards}
	found := &diag.List{}
	defer func() {
		if r := recover(); r != nil {
			out.Cards, out.First = nil, fmt.Sprintf("benchwright itself failed on this card: %v", r)
			out.Errors++
		}
	}()
	found.Join(f.refused)
	out.Errors += f.errors - found.Errors() // a number that another card has, too
	cards, ids, perVariant, ok := lib.resolve(f, found)
	if !ok {
		out.Errors, out.First = max(out.Errors+found.Errors(), 1), first(found)
		return out
	}
	out.Cards = cards
	check.Procedure(p, out.Cards, lib.cards, f.errors == 0, found)
	found.Merge(ids, perVariant)
	out.Errors += found.Errors()
	if out.Errors > 0 {
		out.First = first(found)
	}
	out.Pages = func(revision, date string) map[string][]compare.Page { return lib.pages(f, cards, revision, date) }
	return out
}

// pages lays out the pages of a procedure's cards, by variant, as if they were of
// a revision and a date: one that differs in these alone is the same page. It
// returns nil where they cannot be laid out.
func (lib *library) pages(f *procedureFile, cards []*card.Card, revision, date string) (out map[string][]compare.Page) {
	defer func() {
		if recover() != nil {
			out = nil // the build of this card says what failed
		}
	}()
	p := *f.procedure
	p.Revision, p.Date = revision, date
	var all []*card.Card
	var lists []*diag.List
	for _, c := range cards {
		dated := *c
		dated.Procedure = &p
		all, lists = append(all, &dated), append(lists, &diag.List{})
	}
	out = map[string][]compare.Page{}
	for _, g := range groupCards(all, lists, func(c *card.Card) *deck.Deck { return deck.Build(c, nil) }, nil) {
		var pages []compare.Page
		m := lib.layout(f, g, "", "", Options{})
		for _, s := range m.Sheets {
			pages = append(pages, page(s, m.deck))
		}
		for _, c := range g.cards {
			out[c.VariantID()] = pages
		}
	}
	return out
}

// page reads a sheet: its words in head and foot, those between, and what stands on
// it.
func page(s sheet.Sheet, d *deck.Deck) compare.Page {
	out := compare.Page{Places: map[source.Place]bool{}}
	inside := make([]bool, len(s.Ops))
	for _, g := range s.Groups {
		var step int
		if n, _ := fmt.Sscanf(g.Name, "step %d", &step); n == 1 {
			out.Steps = append(out.Steps, step)
		}
		for i := g.From; i < g.To; i++ {
			inside[i] = true
		}
	}
	var head, body strings.Builder
	for i, op := range s.Ops {
		g, ok := op.(sheet.Glyphs)
		switch {
		case !ok || g.Text == s.Code: // which follows from the body
		case inside[i]:
			body.WriteString(g.Text + " ")
		default:
			head.WriteString(g.Text + " ")
		}
	}
	out.Head, out.Body = head.String(), body.String()
	for _, m := range s.Marks {
		out.Places[d.Place(m.Ref)] = true
		out.LayOut = out.LayOut || slices.Contains([]string{"facts", "hazards", "listing"}, m.Kind)
	}
	return out
}

// first returns the first error of a list, with its place.
func first(list *diag.List) string {
	for _, d := range list.Sorted() {
		if d.Severity() != diag.Error {
			continue
		}
		var b bytes.Buffer
		if err := diag.WriteText(&b, []diag.Diagnostic{d}, false); err != nil {
			return ""
		}
		line, _, _ := bytes.Cut(b.Bytes(), []byte("\n"))
		return string(line)
	}
	return ""
}
