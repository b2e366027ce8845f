// Package deck converts a card to the elements of its faces: it chooses the
// words, the numbers and their order. Package render places them.
package deck

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/render"
)

// A Deck is the elements of a card, and the places that its references stand
// for.
type Deck struct {
	render.Deck
	Places   []source.Place // Places[ref-1]
	hasTable map[int]bool   // steps with a table of their own to look something up in
}

// HasTable reports whether a step has a table or figure that may be moved to a
// look-up face.
func (d *Deck) HasTable(step int) bool { return d.hasTable[step] }

// Place returns the place that a reference stands for.
func (d *Deck) Place(ref render.Ref) source.Place {
	if ref < 1 || int(ref) > len(d.Places) {
		return source.Place{}
	}
	return d.Places[ref-1]
}

// Relief is what is done for a step that does not fit on one face.
type Relief uint8

// Each value includes the ones before it.
const (
	unrelieved Relief = iota
	tablesGone        // its tables are moved to a look-up face
	figureGone        // a figure that only repeats the text is left out
	wholeWidth        // it takes the full width of a face
)

// Next returns the next relief, ok false if none is left. A step without a
// table goes straight to the full width.
func (r Relief) Next(table bool) (next Relief, ok bool) {
	if !table {
		return wholeWidth, r < wholeWidth
	}
	return r + 1, r < wholeWidth
}

// Build returns the laminated faces of a card. Relief is by step number.
func Build(c *card.Card, relief map[int]Relief) *Deck {
	b := newBuilder(c)
	b.relief = relief
	b.buildItems()
	b.setOut()
	b.steps()
	if len(b.lookups) > 0 {
		b.Sections = append(b.Sections, render.Section{Name: wordLookUp, Follows: true, Groups: b.lookups})
	}
	last := &b.Sections[len(b.Sections)-1]
	last.Groups = append(last.Groups, render.Group{Elements: []render.Element{{Class: render.Wording, Content: render.End{Text: wordEnd}}}})
	return b.Deck
}

type builder struct {
	*Deck
	card *card.Card
	refs map[source.Place]render.Ref

	step         int                   // number of the current step
	unnamedTools map[string]bool       // instruments of the step not named yet, by id
	contents     map[int][]itemContent // by step
	relief       map[int]Relief        // by step
	lookups      []render.Group        // tables moved to look-up faces
}

func newBuilder(c *card.Card) *builder {
	p := c.Procedure
	d := &Deck{hasTable: map[int]bool{}}
	d.Language = "en"
	if c.Shop != nil && c.Shop.Language != "" {
		d.Language = c.Shop.Language
	}
	d.Running = render.Running{Number: p.Number.Name, Title: typeset(p.Title.Name), Revision: p.Revision, Date: p.Date}
	if c.Shop != nil {
		d.Subject = c.Shop.Name
	}
	if c.Unit != nil {
		d.Running.Unit, d.Running.Note = typeset(c.Unit.Title), typeset(c.Unit.Note)
	}
	if p.Draft {
		d.Running.Watch = wordDraft
	}
	return &builder{Deck: d, card: c, refs: map[source.Place]render.Ref{}, contents: map[int][]itemContent{}}
}

// ref returns the reference for a place.
func (b *builder) ref(at source.Place) render.Ref {
	if at.File == nil {
		return 0
	}
	if r, ok := b.refs[at]; ok {
		return r
	}
	b.Places = append(b.Places, at)
	r := render.Ref(len(b.Places))
	b.refs[at] = r
	return r
}

func (b *builder) technical(at source.Place, c render.Content) render.Element {
	return render.Element{Class: render.Technical, Ref: b.ref(at), Content: c}
}

func (b *builder) wording(at source.Place, c render.Content) render.Element {
	return render.Element{Class: render.Wording, Ref: b.ref(at), Content: c}
}

func (b *builder) section(name string, groups ...render.Group) {
	b.Sections = append(b.Sections, render.Section{Name: name, Groups: groups})
}

// Variants returns the text for the variants of a face.
func Variants(cards []*card.Card) string {
	var names []string
	for _, c := range cards {
		if c.Variant != nil {
			names = append(names, c.Variant.Title)
		}
	}
	if len(cards) == 1 && len(names) == 1 && cards[0].Variant.Serials != "" {
		return wordSerials(names[0], cards[0].Variant.Serials)
	}
	return wordAnd(names)
}
