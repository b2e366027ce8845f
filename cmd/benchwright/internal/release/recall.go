package release

import (
	"slices"

	"benchwright/render/checkcode"
)

// A Recall is what a new release asks for at the benches.
type Recall struct {
	Back  []Of // pages of the old release to bring back
	Mend  []Of // pages of the old release of which only the wording is old: they may stay until they are printed anew
	Moved []Pair
	Print []Of // pages of the new release that are on no bench yet
}

// Of is pages of one deck.
type Of struct {
	Variants []string
	Pages    []int
}

// A Pair is a page that stays, and the number that it has now.
type Pair struct {
	Variants []string
	Old, New int
}

// Between returns what replacing one release by another asks for; the old one is
// nil for a card's first. A page stays where a page of the new release has its
// code, whatever their numbers.
func Between(old, new *Release) Recall {
	if old == nil {
		old = &Release{}
	}
	var out Recall
	for _, d := range old.Decks {
		var back, mend []int
		for _, p := range d.Pages {
			now, deck := new.find(p.Code)
			switch {
			case now != nil && now.Number != p.Number:
				out.Moved = append(out.Moved, Pair{deck.Variants, p.Number, now.Number})
			case now != nil:
			case new.technical(p.Code) != nil:
				mend = append(mend, p.Number)
			default:
				back = append(back, p.Number)
			}
		}
		out.Back, out.Mend = some(out.Back, d, back), some(out.Mend, d, mend)
	}
	for _, d := range new.Decks {
		var print []int
		for _, p := range d.Pages {
			if on, _ := old.find(p.Code); on == nil {
				print = append(print, p.Number)
			}
		}
		out.Print = some(out.Print, d, print)
	}
	return out
}

func some(all []Of, d Deck, pages []int) []Of {
	if len(pages) == 0 {
		return all
	}
	return append(all, Of{d.Variants, pages})
}

// find returns the page that has a code, and its deck.
func (x *Release) find(code string) (*Page, *Deck) {
	return x.page(func(c string) bool { return c == code })
}

// technical returns a page that has the technical part of a code.
func (x *Release) technical(code string) *Page {
	want := checkcode.Code(code).Technical()
	p, _ := x.page(func(c string) bool { return checkcode.Code(c).Technical() == want })
	return p
}

func (x *Release) page(is func(code string) bool) (*Page, *Deck) {
	for i, d := range x.Decks {
		if j := slices.IndexFunc(d.Pages, func(p Page) bool { return is(p.Code) }); j >= 0 {
			return &x.Decks[i].Pages[j], &x.Decks[i]
		}
	}
	return nil, nil
}

// A Standing is how a code stands against a release.
type Standing uint8

const (
	Unknown     Standing = iota // no page has it
	WordingOnly                 // a page says the same in other words
	Current                     // a page has it
)

// Find returns the page of a release that has a code, else one that differs from
// it in wording alone, with its deck. A page without a number stands for the whole
// deck, whose code is on the record strip.
func (x *Release) Find(code checkcode.Code) (Standing, *Page, *Deck) {
	if p, d := x.find(string(code)); p != nil {
		return Current, p, d
	}
	for i, d := range x.Decks {
		if d.Code == string(code) {
			return Current, &Page{}, &x.Decks[i]
		}
	}
	if p, d := x.page(func(c string) bool { return checkcode.Code(c).Technical() == code.Technical() }); p != nil {
		return WordingOnly, p, d
	}
	return Unknown, nil, nil
}
