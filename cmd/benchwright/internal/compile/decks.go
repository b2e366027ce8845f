package compile

import (
	"bytes"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/deck"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/release"
	"benchwright/render"
	"benchwright/render/checkcode"
	"benchwright/render/layout"
	"benchwright/render/pdf"
	"benchwright/render/sheet"
)

// A Made is a deck that is laid out and ready to be written.
type Made struct {
	Card     string // card number
	Name     string // file name: "MD48-20.early+mid.pdf"
	Title    string
	Revision string
	Variants []string // ids of its variants, in the unit's order
	Info     pdf.Info
	Code     string         // check code of all that it says; of a strip, that of its deck
	Pages    []release.Page // its pages with their check codes; nil for a strip
	Sheets   []sheet.Sheet  // nil after Emit
	Faces    int            // before imposition on larger sheets
	Strip    bool           // it is the record strip
	deck     *deck.Deck
}

// PDF returns the deck as PDF bytes.
func (m *Made) PDF() ([]byte, error) {
	var b bytes.Buffer
	err := pdf.Write(&b, m.Info, m.Sheets)
	return b.Bytes(), err
}

// Only returns the deck with some of its pages alone, by their numbers. A link to
// a page that is left out is none.
func (m *Made) Only(pages []int) *Made {
	some := *m
	some.Sheets = nil
	anchors := map[string]bool{}
	for _, n := range pages {
		s := m.Sheets[n-1]
		for _, a := range s.Anchors {
			anchors[a.Name] = true
		}
		some.Sheets = append(some.Sheets, s)
	}
	for i, s := range some.Sheets {
		some.Sheets[i].Ops, some.Sheets[i].Marks, some.Sheets[i].Groups = nil, nil, nil
		for _, op := range s.Ops {
			if l, is := op.(sheet.Link); !is || anchors[l.To] || strings.HasPrefix(l.To, "https://") {
				some.Sheets[i].Ops = append(some.Sheets[i].Ops, op)
			}
		}
	}
	return &some
}

// decks builds and lays out the decks of a procedure's cards. Cards with equal
// content share a deck, and those of one deck with equal strips a strip.
func (lib *library) decks(f *procedureFile, cards []*card.Card, o Options, lists []*diag.List) []*Made {
	faces := groupCards(cards, lists, func(c *card.Card) *deck.Deck { return deck.Build(c, nil) }, nil)
	var out []*Made
	code := map[*card.Card]string{}
	for _, g := range faces {
		m := lib.layout(f, g, name(f.procedure, g.cards, len(faces), ""), "", o)
		for _, c := range g.cards {
			code[c] = m.Code
		}
		out = append(out, m)
	}
	strips := groupCards(cards, lists, deck.Strip, code)
	for _, g := range strips {
		out = append(out, lib.layout(f, g, name(f.procedure, g.cards, len(strips), ".record"), code[g.cards[0]], o))
	}
	return out
}

// A group is the cards of a procedure that share a deck.
type group struct {
	deck  *deck.Deck
	cards []*card.Card
	lists []*diag.List // the lists of those cards, for layout problems
}

// groupCards builds the deck of each card and groups cards with equal decks and one
// code.
func groupCards(cards []*card.Card, lists []*diag.List, build func(*card.Card) *deck.Deck, code map[*card.Card]string) []*group {
	var out []*group
	byText := map[string]*group{}
	for i, c := range cards {
		d := build(c)
		text := code[c] + render.Canonical(d.Deck)
		g := byText[text]
		if g == nil {
			g = &group{deck: d}
			byText[text] = g
			out = append(out, g)
		}
		g.cards, g.lists = append(g.cards, c), append(g.lists, lists[i])
	}
	return out
}

// name returns a deck's file name: the card number, and the variants in the
// unit's order unless one deck serves all.
func name(p *procedure.Procedure, cards []*card.Card, decks int, suffix string) string {
	n := p.Number.Name
	if decks > 1 {
		var ids []string
		for _, c := range cards {
			ids = append(ids, c.VariantID())
		}
		n += "." + strings.Join(ids, "+")
	}
	return n + suffix + ".pdf"
}

// layout lays out a deck, or the strip of the deck that has a code, and converts what
// render reports to messages.
func (lib *library) layout(f *procedureFile, g *group, file, of string, o Options) *Made {
	p, strip := f.procedure, of != ""
	m := &Made{Card: p.Number.Name, Title: p.Title.Name, Revision: p.Revision, Name: file, Code: of, Strip: strip}
	for _, c := range g.cards {
		if c.Variant != nil {
			m.Variants = append(m.Variants, c.Variant.ID)
		}
	}
	options := layout.Options{Paper: lib.paper(o), Plain: strip, Deck: of}
	if lib.shop != nil {
		options.Distance = lib.shop.Distance
	}
	if strip {
		options.Paper = stripPaper(options.Paper)
	}
	d := g.deck
	d.Running.Variant = deck.Variants(g.cards)
	if !strip { // before anything is moved to make room on this paper
		m.Code = string(checkcode.Whole(d.Deck))
	}
	sheets, problems := layout.Faces(d.Deck, options)
	relief := map[int]deck.Relief{}
	for relieve(g, d, problems, relief) {
		d = deck.Build(g.cards[0], relief)
		d.Running.Variant = deck.Variants(g.cards)
		sheets, problems = layout.Faces(d.Deck, options)
	}
	found := lib.findings(problems, f, d)
	m.Info = pdf.Info{Title: d.Running.Number + " " + d.Running.Title, Author: d.Subject, Subject: d.Running.Unit, Language: d.Language}
	m.Sheets, m.Faces, m.deck = sheets, len(sheets), d
	for i, s := range sheets {
		if !strip {
			m.Pages = append(m.Pages, release.Page{Number: i + 1, Shows: s.Name, Code: s.Code})
		}
	}
	var small error
	if o.Sheet != "" && !strip {
		m.Sheets, small = imposeFaces(sheets, o)
	}
	for _, l := range g.lists {
		l.Join(lib.unexplained(f, l, found))
		if small != nil {
			l.Report("sheet-too-small", p.Number.At, "choose a larger `--sheet`, or a smaller `--paper`", "the pages do not fit on the sheet: %s", small)
		}
	}
	return m
}

// relieve applies more relief to the steps that do not fit on one face. It
// returns false if none is left.
func relieve(g *group, d *deck.Deck, problems []render.Problem, relief map[int]deck.Relief) (more bool) {
	for _, problem := range problems {
		if problem.Kind != render.TooTall {
			continue
		}
		for _, s := range g.cards[0].Steps() {
			if s.Place(g.cards[0]) == d.Place(problem.Ref) {
				if next, ok := relief[s.Number].Next(d.HasTable(s.Number)); ok {
					relief[s.Number], more = next, true
				}
			}
		}
	}
	return more
}
