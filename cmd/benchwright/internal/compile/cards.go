package compile

import (
	"bytes"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/check"
	"benchwright/cmd/benchwright/internal/deck"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/render"
)

// A Made is one deck, laid out and ready to be written.
type Made struct {
	Card     string // number
	Name     string // file name, "MD48-20.early+mid.pdf"
	Title    string
	Revision string
	Variants []string // ids of the variants that it serves, in the unit's order
	Info     render.Info
	Sheets   []render.Sheet // nil once it has been emitted
	Faces    int            // before they are put on larger sheets
	Strip    bool           // the record strip
}

// PDF returns the deck's bytes.
func (m *Made) PDF() ([]byte, error) {
	var b bytes.Buffer
	err := render.WritePDF(&b, m.Info, m.Sheets)
	return b.Bytes(), err
}

// procedure makes the cards of one procedure, one a variant, and the decks of
// those that say the same.
func (lib *Library) procedure(res *Result, o Options, msgs *diag.List) {
	p := res.Procedure
	own := lib.warned[p]
	u := lib.UnitOf(p)
	// Without its unit or its shop, where there is one and it could not be read,
	// what the card says cannot be judged.
	if f := lib.entries[p].Unit; u == nil && f != nil {
		res.Errors = max(1, lib.faults[f])
		msgs.Join(own)
		return
	}
	if lib.Shop == nil && !lib.Workspace.Alone {
		res.Errors = max(1, lib.faults[lib.Workspace.Shop])
		msgs.Join(own)
		return
	}
	if u == nil || lib.inline[p] == nil && p.Unit.Name != u.ID && u.ID != "" {
		lib.noUnit(p, u, own)
	}
	var cards []*card.Card
	var perVariant []*diag.List
	for _, v := range variants(p, u) {
		list := &diag.List{}
		c := card.Make(p, u, lib.Shop, v, lib.cards, list)
		check.Card(c, list)
		cards = append(cards, c)
		perVariant = append(perVariant, list)
		res.Steps = max(res.Steps, len(c.Steps()))
	}
	res.takes = takes(cards)
	check.Procedure(p, cards, lib.cards, lib.faults[p.File] == 0, own)
	made := lib.decks(p, cards, o, perVariant)
	merge(own, cards, perVariant)
	accept(p, own)
	lib.consequences(p, u, own)
	res.Errors, res.Warnings = own.Errors(), own.Len()-own.Errors()
	msgs.Join(own)
	// What was wrong while the files were read stops the card too: its numbers
	// cannot be trusted.
	res.Errors += lib.faults[p.File]
	if u != nil && u.File != p.File {
		res.Errors += lib.faults[u.File]
	}
	if lib.Workspace.Shop != nil {
		res.Errors += lib.faults[lib.Workspace.Shop]
	}
	if res.Errors > 0 {
		return
	}
	res.Decks = made
	for _, m := range made {
		if o.Emit != nil && res.Fault == nil {
			res.Fault = o.Emit(m)
		}
		m.Sheets = nil // a result stays as long as the run does
	}
}

// variants returns the variants that a procedure serves; one nil where the
// unit has none.
func variants(p *procedure.Procedure, u *unit.Unit) []*unit.Variant {
	if u == nil || len(u.Variants) == 0 {
		return []*unit.Variant{nil}
	}
	var out []*unit.Variant
	for _, v := range u.Variants {
		if p.Variants == nil || slices.ContainsFunc(p.Variants, func(n procedure.Named) bool { return n.Name == v.ID }) {
			out = append(out, v)
		}
	}
	if out == nil {
		return []*unit.Variant{nil} // only unknown names: reported when the card is made
	}
	return out
}

// noUnit reports a procedure whose unit is not there.
func (lib *Library) noUnit(p *procedure.Procedure, u *unit.Unit, msgs *diag.List) {
	if p.Unit.Name == "" {
		return // the schema has asked for it
	}
	var ids []string
	for _, other := range lib.units {
		ids = append(ids, other.ID)
	}
	slices.Sort(ids)
	if u != nil && !unit.WellFormed(u.ID) {
		return // which is reported, and may be what is wrong
	}
	if u != nil {
		d := msgs.Report("unit-mismatch", p.Unit.At, "write `unit: "+u.ID+"`, or move the procedure to the folder of its unit",
			"the unit of this folder is `%s`, not `%s`", u.ID, p.Unit.Name)
		d.Related = append(d.Related, diag.Related{At: u.Root.Get("unit").Place(), Message: "the unit is declared here"})
		return
	}
	if lib.Workspace.Alone {
		msgs.Report("unit-missing-facts", p.Unit.At, "give the unit's facts in place of its name: `unit:` with `unit`, `title` and the rest below it",
			"this procedure stands alone, and `%s` is only the name of a unit", p.Unit.Name)
		return
	}
	help := "put a unit.yaml with `unit: " + p.Unit.Name + "` in this folder or above it"
	if near := diag.Nearest(p.Unit.Name, ids); near != "" {
		help += ", or move the procedure to the folder of `" + near + "`"
	}
	msgs.Report("unit-unknown-here", p.Unit.At, help, "no unit.yaml stands in this folder or above it")
}

// merge adds the messages of a procedure's cards to out. What all variants
// have in common is said once; what only some have names them.
func merge(out *diag.List, cards []*card.Card, lists []*diag.List) {
	type key struct {
		slug, message, file string
		start, end          int
	}
	keyOf := func(d diag.Diagnostic) key {
		k := key{slug: d.Slug, message: d.Message, start: d.At.Span.Start, end: d.At.Span.End}
		if d.At.File != nil {
			k.file = d.At.File.Name
		}
		return k
	}
	in := map[key][]string{}
	for i, l := range lists {
		for _, d := range l.Sorted() {
			in[keyOf(d)] = append(in[keyOf(d)], cards[i].VariantID())
		}
	}
	said := map[key]bool{}
	for _, l := range lists {
		for _, d := range l.Sorted() {
			k := keyOf(d)
			if said[k] {
				continue
			}
			said[k] = true
			if v := in[k]; len(v) < len(cards) {
				d.Message += " in the " + strings.Join(v, " and ") + " variant"
				if len(v) > 1 {
					d.Message += "s"
				}
			}
			out.Add(d)
		}
	}
}

// decks builds and lays out the decks of a procedure's cards: those whose
// content is equal are one deck, and so are their strips.
func (lib *Library) decks(p *procedure.Procedure, cards []*card.Card, o Options, lists []*diag.List) []*Made {
	faces := lib.grouped(cards, lists, func(c *card.Card) *deck.Deck { return deck.Build(c, nil) })
	strips := lib.grouped(cards, lists, deck.Strip)
	var out []*Made
	for _, g := range faces {
		out = append(out, lib.layout(g, name(p, g.cards, len(faces), ""), false, o))
	}
	for _, g := range strips {
		out = append(out, lib.layout(g, name(p, g.cards, len(strips), ".record"), true, o))
	}
	return out
}

// A group is the cards of one procedure that have one deck.
type group struct {
	deck  *deck.Deck
	cards []*card.Card
	lists []*diag.List // of those cards: what the layout finds is wrong with each
}

// grouped builds the deck of each card and joins those that say the same.
func (lib *Library) grouped(cards []*card.Card, lists []*diag.List, build func(*card.Card) *deck.Deck) []*group {
	var out []*group
	byText := map[string]*group{}
	for i, c := range cards {
		d := build(c)
		text := render.Canonical(d.Deck)
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

// name returns a deck's file name: the card's number alone when one deck
// serves all variants, else with the variants, in the unit's order.
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

// layout lays a deck out and turns what render finds into messages.
func (lib *Library) layout(g *group, file string, strip bool, o Options) *Made {
	p := g.cards[0].Procedure
	m := &Made{Card: p.Number.Name, Title: p.Title.Name, Revision: p.Revision, Name: file, Strip: strip}
	for _, c := range g.cards {
		if c.Variant != nil {
			m.Variants = append(m.Variants, c.Variant.ID)
		}
	}
	options := render.Options{Paper: lib.paper(o), Plain: strip}
	if strip {
		options.Paper = stripPaper(options.Paper)
	}
	d := g.deck
	d.Running.Variant = deck.Variants(g.cards)
	sheets, problems := render.Layout(d.Deck, options)
	far := map[int]deck.Far{}
	for tooTall(g, d, problems, far) {
		d = deck.Build(g.cards[0], far)
		d.Running.Variant = deck.Variants(g.cards)
		sheets, problems = render.Layout(d.Deck, options)
	}
	found := &diag.List{}
	var err error
	for _, problem := range problems {
		lib.report(problem, p, d, found)
	}
	m.Info = render.Info{Title: d.Running.Number + " " + d.Running.Title, Author: d.Subject, Subject: d.Running.Unit, Language: d.Language}
	m.Sheets, m.Faces = sheets, len(sheets)
	if o.Sheet != "" && !strip {
		if m.Sheets, err = impose(sheets, o); err != nil {
			found.Report("sheet-too-small", p.Number.At, "choose a larger `--sheet`, or a smaller `--paper`", "the faces cannot be put on the sheet: %s", err)
		}
	}
	for _, l := range g.lists {
		l.Join(lib.own(p, l, found))
	}
	return m
}

// tooTall moves more of the steps that do not fit one face and have something to
// look up to a look-up face. It returns whether anything was left to move.
func tooTall(g *group, d *deck.Deck, problems []render.Problem, far map[int]deck.Far) (moved bool) {
	for _, problem := range problems {
		if problem.Kind != render.TooTall {
			continue
		}
		for _, s := range g.cards[0].Steps() {
			if s.HasTable() && s.Place(g.cards[0]) == d.Place(problem.Ref) {
				if next, ok := far[s.Number].Further(); ok {
					far[s.Number], moved = next, true
				}
			}
		}
	}
	return moved
}

// sheetOnly are papers too large for a face: they carry several.
var sheetOnly = []string{"A3"}

// Papers lists the names of face sizes.
func Papers() []string {
	var out []string
	for _, p := range render.Papers {
		if !slices.Contains(sheetOnly, p.Name) {
			out = append(out, p.Name)
		}
	}
	return out
}

// PaperOf returns the paper of a name, whatever its case.
func PaperOf(name string) (render.Paper, bool) {
	for _, p := range render.Papers {
		if strings.EqualFold(p.Name, name) {
			return p, true
		}
	}
	return render.Paper{}, false
}

func (lib *Library) paper(o Options) render.Paper {
	names := []string{o.Paper}
	if lib.Shop != nil {
		names = append(names, lib.Shop.Paper)
	}
	for _, n := range append(names, "A5") {
		if p, ok := PaperOf(n); ok {
			return p
		}
	}
	panic("the paper A5 is gone")
}

// stripPaper is what the record strip is printed on: Letter where the faces
// are of that family, else A4.
func stripPaper(face render.Paper) render.Paper {
	n := "A4"
	if strings.Contains(face.Name, "etter") {
		n = "Letter"
	}
	p, _ := PaperOf(n)
	return p
}
