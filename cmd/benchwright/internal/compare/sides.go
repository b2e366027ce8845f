package compare

import (
	"cmp"
	"fmt"
	"maps"
	"runtime"
	"slices"
	"strings"
	"sync"
)

// Sides compares two sides, procedure by procedure and variant by variant, several
// at a time. A procedure that rests on the same files on both is passed over.
func Sides(before, after []Procedure) *Report {
	all := procedures(before, after)
	cards := make([]Card, len(all))
	next := make(chan int)
	var wg sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			for i := range next {
				cards[i] = all[i].compared()
			}
		})
	}
	for i, p := range all {
		if p.a == nil || p.b == nil || !maps.Equal(p.a.Rests, p.b.Rests) {
			next <- i
		}
	}
	close(next)
	wg.Wait()
	r := &Report{}
	for _, c := range cards {
		unsound := c.Old.Errors+c.New.Errors > 0 && len(c.Causes) > 0
		if len(c.Changes) > 0 || unsound {
			r.Cards = append(r.Cards, c)
		}
	}
	return r
}

// both is a procedure on both sides; nil where a side has none.
type both struct{ a, b *Procedure }

// procedures pairs the procedures of two sides by card number, then by file.
func procedures(before, after []Procedure) []both {
	var out []both
	used := make([]bool, len(after))
	numbers, files := map[string]int{}, map[string]int{}
	for i := len(after) - 1; i >= 0; i-- { // the first of two with one number
		numbers[after[i].Number], files[after[i].File] = i, i
	}
	find := func(index map[string]int, key string) *Procedure {
		i, ok := index[key]
		if !ok || key == "" || used[i] {
			return nil
		}
		used[i] = true
		return &after[i]
	}
	for i := range before {
		out = append(out, both{&before[i], find(numbers, before[i].Number)})
	}
	for i, p := range out {
		if p.b == nil {
			out[i].b = find(files, p.a.File)
		}
	}
	for i := range after {
		if !used[i] {
			out = append(out, both{nil, &after[i]})
		}
	}
	slices.SortStableFunc(out, func(x, y both) int { return strings.Compare(x.number(), y.number()) })
	return out
}

func (p both) number() string {
	if p.b != nil {
		return cmp.Or(p.b.Number, p.b.File)
	}
	return cmp.Or(p.a.Number, p.a.File)
}

// compared compares one procedure. A panic leaves it without a change, and unsure.
func (p both) compared() (out Card) {
	shown := cmp.Or(p.b, p.a)
	defer func() {
		if r := recover(); r != nil {
			out.Changes, out.Causes = nil, []string{shown.File}
			out.New.Errors++
			out.New.First = cmp.Or(out.New.First, fmt.Sprintf("benchwright itself failed on this card: %v", r))
		}
	}()
	out = Card{Number: cmp.Or(shown.Number, shown.File), Title: shown.Title, File: shown.File}
	if p.a != nil && shown.Number == "" { // its front matter cannot be read
		out.Number, out.Title = cmp.Or(p.a.Number, p.a.File), cmp.Or(shown.Title, p.a.Title)
	}
	var a, b *Made
	if p.a != nil {
		a = p.a.Make()
		out.Old = Side{true, a.Errors, a.First}
	}
	if p.b != nil {
		b = p.b.Make()
		out.New = Side{true, b.Errors, b.First}
	}
	for _, m := range []*Made{a, b} {
		if m == nil {
			continue
		}
		for _, c := range m.Cards {
			if id := c.VariantID(); id != "" && !slices.Contains(out.Variants, id) {
				out.Variants = append(out.Variants, id)
			}
		}
	}
	switch {
	case a == nil:
		out.Changes, out.Causes = []Change{whole("card added", shown, b)}, []string{shown.File}
	case b == nil:
		out.Changes, out.Causes = []Change{whole("card removed", shown, a)}, []string{shown.File}
	default:
		out.Causes = p.causes()
		if len(a.Cards) == 0 || len(b.Cards) == 0 {
			return out // one side could not be read at all, which its errors say
		}
		out.Changes = changes(a, b)
		attribute(out.Changes, out.Causes, a, b)
		out.Causes = telling(out.Causes, out.Changes)
	}
	slices.SortStableFunc(out.Changes, func(x, y Change) int { return cmp.Compare(x.position(), y.position()) })
	out.place(a, b)
	out.Revised = revised(a, b)
	return out
}

// changes compares the cards of a procedure, variant by variant.
func changes(a, b *Made) []Change {
	var out []Change
	for _, x := range a.Cards {
		if y := b.variant(x.VariantID()); y != nil {
			out = join(out, cards(x, y))
			continue
		}
		if id := x.VariantID(); id != "" {
			out = append(out, Change{Class: Safety, Reaches: []Reach{{Variant: id}}, Place: onCard, What: "variant no longer served", Before: x.Variant.Title})
		}
	}
	for _, y := range b.Cards {
		if id := y.VariantID(); id != "" && a.variant(id) == nil {
			out = append(out, Change{Class: Safety, Reaches: []Reach{{Variant: id}}, Place: onCard, What: "variant served from now on", After: y.Variant.Title})
		}
	}
	return out
}

// The places that are no step.
const (
	onCard   = "card"
	onHead   = "head of every page"
	onLayOut = "lay-out page"
	onLead   = "before the steps"
	onStrip  = "record strip"
)

// position orders the changes of a card as its pages are read.
func (c Change) position() int {
	if at := slices.Index([]string{onCard, onHead, onLayOut, onLead}, c.Place); c.Place != "" && at >= 0 {
		return at - 4
	}
	if c.Place == onStrip || len(c.Reaches) == 0 {
		return 1 << 20
	}
	return 2*max(c.Reaches[0].New.Step, c.Reaches[0].Old.Step) + 1
}

// whole returns the change of a card that one side does not have.
func whole(what string, p *Procedure, m *Made) Change {
	c := Change{Class: Method, Place: onCard, What: what, After: p.Title, Causes: []string{p.File}}
	for _, x := range m.Cards {
		c.Reaches = append(c.Reaches, Reach{Variant: x.VariantID()})
		for _, g := range read(x).steps {
			if g.grave() {
				c.Class = Safety
			}
		}
	}
	if len(m.Cards) == 0 {
		c.Class, c.Reaches = Safety, []Reach{{}} // what it says is not known
	}
	if what == "card removed" {
		c.Before, c.After = p.Title, ""
	}
	return c
}

// join adds the changes of one more variant: the same change in another
// variant is one change.
func join(all, more []Change) []Change {
	for _, c := range more {
		i := slices.IndexFunc(all, func(x Change) bool {
			return x.key == c.key && x.Class == c.Class && !slices.ContainsFunc(x.Reaches, func(r Reach) bool { return r.Variant == c.Reaches[0].Variant })
		})
		if i < 0 {
			all = append(all, c)
			continue
		}
		all[i].Reaches = append(all[i].Reaches, c.Reaches...)
	}
	return all
}
