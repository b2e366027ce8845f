package compare

import (
	"slices"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/deck"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/render"
)

// A Page is one printed page of a card.
type Page struct {
	Head   string // the words of head and foot, its number and the count of pages with them
	Body   string // the words between
	Steps  []int
	Places map[source.Place]bool // of the elements that stand on it
	LayOut bool                  // it lists what to lay out
}

// place fills in the pages on which the changes of a card stand, those to print
// again and those to take off the bench. A side that does not compile has none.
//
// A page is printed again if a change stands on it, or no old page has the same
// words, its number and the count of pages included; an old one comes off the
// bench if a change stands on it, or what it says stands on no new page. Revision
// and date are passed over: they stand on every page, and a page that differs in
// them alone is not wrong.
func (c *Card) place(a, b *Made) {
	var revision, date string
	for _, m := range []*Made{a, b} {
		if m != nil && len(m.Cards) > 0 {
			revision, date = m.Cards[0].Procedure.Revision, m.Cards[0].Procedure.Date
		}
	}
	lay := func(m *Made) map[string][]Page {
		if m == nil || m.Errors > 0 || m.Pages == nil || len(c.Changes) == 0 {
			return nil
		}
		return m.Pages(revision, date)
	}
	if a != nil && b != nil && len(c.Changes) > 0 {
		c.Strip = slices.ContainsFunc(b.Cards, func(y *card.Card) bool {
			x := a.variant(y.VariantID())
			return x == nil || strip(x) != strip(y)
		})
	}
	old, new := lay(a), lay(b)
	for i := range c.Changes {
		x := &c.Changes[i]
		for j := range x.Reaches {
			r := &x.Reaches[j]
			r.Old.Pages = x.on(old[r.Variant], r.Old.Step, x.before, x.lost[0])
			r.New.Pages = x.on(new[r.Variant], r.New.Step, x.at(), x.lost[1])
		}
	}
	for _, v := range variantsOr(c.Variants) {
		if !c.reaches(v, func(Change) bool { return true }) {
			continue
		}
		head := c.reaches(v, func(x Change) bool { return x.Place == onHead && !x.controls() })
		off, again := c.touched(v)
		slices.Sort(off)
		off = slices.Compact(off)
		switch {
		case slices.ContainsFunc(c.Changes, func(x Change) bool { return x.What == pageSize || x.What == readingDistance }):
			again = differing(new[v], nil, nil, nil, true) // every page is set anew, and none is wrong for it
		case a == nil || b == nil || old != nil && new != nil: // else nothing can be told of the other pages
			x, y := said(a, v, old[v]), said(b, v, new[v])
			again = differing(y, x, again, func(p Page) string { return p.Head + p.Body }, head)
			off = differing(x, y, off, func(p Page) string { return p.Body }, head)
		}
		if b != nil && b.variant(v) != nil && (again != nil || new[v] == nil) {
			c.Print = gather(c.Print, v, len(new[v]), again)
		}
		if a != nil && a.variant(v) != nil && (off != nil || old[v] == nil) {
			c.Off = gather(c.Off, v, len(old[v]), off)
		}
	}
}

// controls reports whether a change is of the document's revision or date,
// which make no page wrong.
func (x Change) controls() bool {
	return x.Place == onHead && (x.What == "revision" || x.What == "date")
}

// strip returns what the record strip of a card says, but for its revision and
// date.
func strip(c *card.Card) string {
	d := deck.Strip(c)
	d.Running.Revision, d.Running.Date = "", ""
	return render.Canonical(d.Deck)
}

// at returns where the change stands on the new side.
func (x *Change) at() source.Place {
	if x.Gone {
		return source.Place{}
	}
	return x.At
}

// on returns the pages on which a change stands on one side, where its element has
// a place, or is lost.
func (x *Change) on(pages []Page, step int, at source.Place, lost bool) []int {
	if x.Behind {
		return nil
	}
	var out []int
	pick := func(is func(Page) bool) {
		if len(out) > 0 {
			return
		}
		for i, p := range pages {
			if is(p) {
				out = append(out, i+1)
			}
		}
	}
	switch x.Place {
	case onStrip:
	case onCard, onHead:
		pick(func(Page) bool { return true })
	case onLayOut:
		pick(func(p Page) bool { return p.LayOut })
	default:
		if at.File != nil && !lost {
			pick(func(p Page) bool { return p.Places[at] })
		}
		pick(func(p Page) bool { return slices.Contains(p.Steps, step) })
		if x.Title == "" {
			pick(func(p Page) bool { return len(p.Steps) > 0 })
		}
	}
	return out
}

// reaches reports whether a change of a kind reaches a variant.
func (c *Card) reaches(variant string, kind func(Change) bool) bool {
	return slices.ContainsFunc(c.Changes, func(x Change) bool {
		return kind(x) && slices.ContainsFunc(x.Reaches, func(r Reach) bool { return r.Variant == variant })
	})
}

// touched returns the old and the new pages on which the changes of a variant
// stand. Those of the card itself and of its head are left to what the pages say.
func (c *Card) touched(variant string) (old, new []int) {
	for _, x := range c.Changes {
		for _, r := range x.Reaches {
			if r.Variant == variant && x.Place != onHead && x.Place != onCard {
				old, new = append(old, r.Old.Pages...), append(new, r.New.Pages...)
			}
		}
	}
	return old, new
}

// narrow leaves the pages on which the changes stand that the card has left.
func (c *Card) narrow() {
	old, new := c.Off, c.Print
	c.Off, c.Print = nil, nil
	for _, v := range variantsOr(c.Variants) {
		off, again := c.touched(v)
		for _, side := range []struct {
			was   []Pages
			is    *[]Pages
			pages []int
		}{{old, &c.Off, off}, {new, &c.Print, again}} {
			for _, p := range side.was {
				if slices.Contains(p.Variants, v) || v == "" {
					slices.Sort(side.pages)
					*side.is = gather(*side.is, v, p.Of, slices.Compact(side.pages))
				}
			}
		}
	}
}

// said returns pages with their words as they are compared: the same quantity in
// another spelling is the same.
func said(m *Made, variant string, pages []Page) []Page {
	out := slices.Clone(pages)
	for i := range out {
		mark := m.variant(variant).Shop.Mark()
		out[i].Head, out[i].Body = keyed(out[i].Head, mark), keyed(out[i].Body, mark)
	}
	return out
}

// differing returns the numbers of the pages that the other side does not have, and
// those that are told; or all.
func differing(pages, others []Page, told []int, key func(Page) string, all bool) []int {
	var out []int
	for i, p := range pages {
		if all || slices.Contains(told, i+1) || !slices.ContainsFunc(others, func(o Page) bool { return key(o) == key(p) }) {
			out = append(out, i+1)
		}
	}
	return out
}

// gather adds the pages of one more variant: variants with the same pages are
// named together.
func gather(all []Pages, variant string, of int, pages []int) []Pages {
	i := slices.IndexFunc(all, func(p Pages) bool { return p.Of == of && slices.Equal(p.Pages, pages) })
	if i < 0 {
		i, all = len(all), append(all, Pages{Of: of, Pages: pages})
	}
	if variant != "" {
		all[i].Variants = append(all[i].Variants, variant)
	}
	return all
}

// variantsOr returns the variants, or the one without an id.
func variantsOr(ids []string) []string {
	if len(ids) == 0 {
		return []string{""}
	}
	return ids
}
