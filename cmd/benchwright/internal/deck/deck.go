// Package deck turns a card into the elements of its faces: which words, which
// numbers, in which order. It decides what is said; render decides where it
// stands.
package deck

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/render"
)

// A Deck is a card's elements and the places that its references stand for.
type Deck struct {
	render.Deck
	Places []source.Place // Places[ref-1]
	tabled map[int]bool   // steps that look something up in a table of theirs
}

// HasTable says whether a step has a table or a figure that may stand on a
// look-up face.
func (d *Deck) HasTable(step int) bool { return d.tabled[step] }

// Place returns the place that a reference stands for.
func (d *Deck) Place(ref render.Ref) source.Place {
	if ref < 1 || int(ref) > len(d.Places) {
		return source.Place{}
	}
	return d.Places[ref-1]
}

// Relief is what is done for a step that does not fit one face.
type Relief uint8

// What may be done, the least first.
const (
	unrelieved Relief = iota
	tablesGone        // its tables stand on a look-up face
	figureGone        // and a figure that only shows what the words say is left out
	wholeWidth        // and it takes all columns of a face
)

// Next returns what else may be done, ok false where nothing is left. A step
// without a table has nothing to move: it takes all columns at once.
func (r Relief) Next(table bool) (next Relief, ok bool) {
	if !table {
		return wholeWidth, r < wholeWidth
	}
	return r + 1, r < wholeWidth
}

// Build returns the deck of laminated faces of a card, with what is done
// for some of its steps by their numbers.
func Build(c *card.Card, relief map[int]Relief) *Deck {
	b := newBuilder(c)
	b.relief = relief
	b.sayAll()
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

	step    int              // the step in hand
	unnamed map[string]bool  // its instruments that nothing has named yet, by id
	said    map[int][]saying // what the items of each step say
	relief  map[int]Relief   // steps that do not hold all of theirs
	lookups []render.Group   // those tables
}

func newBuilder(c *card.Card) *builder {
	p := c.Procedure
	d := &Deck{tabled: map[int]bool{}}
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
	return &builder{Deck: d, card: c, refs: map[source.Place]render.Ref{}, said: map[int][]saying{}}
}

// ref returns the reference of a place.
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

// Variants returns what a face says of the variants that it serves.
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
