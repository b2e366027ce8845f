// Package compare says what changed between two sides of a workspace, in what a
// card says and not in the lines of its files: two Cards → changes. It compares
// the decks that both sides build, so what it reports is what the reader of a
// card sees before and after, whichever file the change stands in.
package compare

import (
	"bytes"
	"cmp"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/source"
)

// A Class says what a change means at the bench.
type Class string

// The classes, the gravest first.
const (
	Safety  Class = "safety"  // a number that is set or accepted, a caution, a hold point, a direction
	Method  Class = "method"  // steps, tools, parts, what is written down
	Wording Class = "wording" // prose alone
)

// Classes lists the classes, the gravest first.
var Classes = []Class{Safety, Method, Wording}

// Reaches says whether a change of this class is as grave as another, or graver.
func (c Class) Reaches(other Class) bool {
	return slices.Index(Classes, c) <= slices.Index(Classes, other)
}

// graver returns the graver of two classes.
func graver(x, y Class) Class {
	if y.Reaches(x) {
		return y
	}
	return x
}

// A Procedure is one procedure of one side, as far as it could be read.
type Procedure struct {
	Number string
	Title  string
	File   string       // its name below the workspace
	Cards  []*card.Card // one a variant; nil where none could be made
	Errors int          // that keep it from being built
	First  string       // the first of them, with its place
}

// A Change is one change in what a card says.
type Change struct {
	Class    Class
	Variants []string // ids of those that it reaches, in the unit's order; nil where the unit has none
	Step     Step     // zero for the lay-out page and the head of the pages
	Place    string   // where it stands if not in a step: "lay-out page"
	What     string   // "set", "caution removed", "step moved"
	Before   string   // as the reader sees it; "" where there was nothing
	After    string
	Note     string // "5 % more, wider"; "" for nothing
}

// A Step is a step on both sides: 0 where it is not there.
type Step struct {
	Title    string // the new one, else the old one
	Old, New int
}

// A Card is what changed on one card.
type Card struct {
	Number, Title string
	Variants      []string // ids of all that it serves, on either side; nil where the unit has none
	Causes        []string // files of the card that differ, by their names below the workspace
	Changes       []Change
	Old, New      Side
}

// A Side says how far one side of a card could be read.
type Side struct {
	There  bool
	Errors int
	First  string
}

// A Report is what changed between two sides.
type Report struct {
	Cards []Card // those with a change, and those that do not compile
}

// Count returns how many changes of a class there are.
func (r *Report) Count(class Class) int {
	n := 0
	for _, c := range r.Cards {
		for _, x := range c.Changes {
			if x.Class == class {
				n++
			}
		}
	}
	return n
}

// Unsure returns the cards that do not compile on a side and in which no change
// was found though their files differ: what could not be read may hide one.
func (r *Report) Unsure() []string {
	var out []string
	for _, c := range r.Cards {
		if len(c.Changes) == 0 {
			out = append(out, c.Number)
		}
	}
	return out
}

// Sides compares two sides, procedure by procedure and variant by variant.
func Sides(before, after []Procedure) *Report {
	r := &Report{}
	for _, p := range procedures(before, after) {
		c := pair(p.a, p.b)
		unsound := c.Old.Errors+c.New.Errors > 0 && len(c.Causes) > 0
		if len(c.Changes) > 0 || unsound {
			r.Cards = append(r.Cards, c)
		}
	}
	return r
}

type both struct{ a, b *Procedure } // nil where a side has none

// procedures pairs the procedures of two sides by card number, then by file.
func procedures(before, after []Procedure) []both {
	var out []both
	used := make([]bool, len(after))
	find := func(is func(*Procedure) bool) *Procedure {
		for i := range after {
			if !used[i] && is(&after[i]) {
				used[i] = true
				return &after[i]
			}
		}
		return nil
	}
	for i := range before {
		a := &before[i]
		out = append(out, both{a, find(func(b *Procedure) bool { return b.Number == a.Number && a.Number != "" })})
	}
	for i := range out {
		if a := out[i].a; out[i].b == nil {
			out[i].b = find(func(b *Procedure) bool { return b.File == a.File })
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

// pair compares one procedure.
func pair(a, b *Procedure) Card {
	out := Card{Old: side(a), New: side(b)}
	for _, p := range []*Procedure{a, b} {
		if p == nil {
			continue
		}
		for _, c := range p.Cards {
			if id := c.VariantID(); id != "" && !slices.Contains(out.Variants, id) {
				out.Variants = append(out.Variants, id)
			}
		}
	}
	switch {
	case b != nil:
		out.Number, out.Title = cmp.Or(b.Number, b.File), b.Title
	default:
		out.Number, out.Title = cmp.Or(a.Number, a.File), a.Title
	}
	switch {
	case a == nil:
		out.Changes, out.Causes = []Change{whole("card added", b, false)}, []string{b.File}
		return out
	case b == nil:
		out.Changes, out.Causes = []Change{whole("card removed", a, true)}, []string{a.File}
		return out
	}
	out.Causes = causes(a, b)
	if len(a.Cards) == 0 || len(b.Cards) == 0 {
		return out // one side could not be read at all, which its errors say
	}
	for _, x := range a.Cards {
		if y := b.variant(x.VariantID()); y != nil {
			out.Changes = join(out.Changes, cards(x, y))
			continue
		}
		if id := x.VariantID(); id != "" {
			out.Changes = append(out.Changes, Change{Class: Safety, Variants: []string{id}, Place: onCard, What: "variant no longer served", Before: x.Variant.Title})
		}
	}
	for _, y := range b.Cards {
		if id := y.VariantID(); id != "" && a.variant(id) == nil {
			out.Changes = append(out.Changes, Change{Class: Safety, Variants: []string{id}, Place: onCard, What: "variant served from now on", After: y.Variant.Title})
		}
	}
	// A change that reaches some variants of the card names them; one without
	// variants reaches the card.
	slices.SortStableFunc(out.Changes, func(x, y Change) int { return cmp.Compare(x.position(), y.position()) })
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
	if c.Place == onStrip {
		return 1 << 20
	}
	return 2*max(c.Step.New, c.Step.Old) + 1
}

func side(p *Procedure) Side {
	if p == nil {
		return Side{}
	}
	return Side{true, p.Errors, p.First}
}

// whole is the change of a card that one side does not have.
func whole(what string, p *Procedure, before bool) Change {
	c := Change{Class: Method, Place: onCard, What: what}
	for _, x := range p.Cards {
		for _, g := range read(x).steps {
			if g.grave() {
				c.Class = Safety
			}
		}
	}
	if len(p.Cards) == 0 {
		c.Class = Safety // what it says is not known
	}
	if c.After = p.Title; before {
		c.Before, c.After = p.Title, ""
	}
	return c
}

// causes names the files that a procedure's cards are made from and that differ.
func causes(a, b *Procedure) []string {
	if len(a.Cards) == 0 || len(b.Cards) == 0 {
		return []string{b.File}
	}
	x, y := a.Cards[0], b.Cards[0]
	var out []string
	if f, g := x.Procedure.File, y.Procedure.File; !bytes.Equal(f.Text, g.Text) || f.Name != g.Name {
		out = append(out, g.Name)
	}
	other := func(f, g *source.File) { // unit and shop, where they are files of their own
		if f != nil && g != nil && g.Name != b.File && !bytes.Equal(f.Text, g.Text) {
			out = append(out, g.Name)
		}
	}
	if x.Unit != nil && y.Unit != nil {
		other(x.Unit.File, y.Unit.File)
	}
	if x.Shop != nil && y.Shop != nil {
		other(x.Shop.File, y.Shop.File)
	}
	return out
}

func (p *Procedure) variant(id string) *card.Card {
	for _, c := range p.Cards {
		if c.VariantID() == id {
			return c
		}
	}
	return nil
}

// join adds the changes of one more variant: the same change in another
// variant is one change.
func join(all, more []Change) []Change {
	for _, c := range more {
		i := slices.IndexFunc(all, func(x Change) bool { return same(x, c) })
		if i < 0 {
			all = append(all, c)
			continue
		}
		if len(c.Variants) > 0 && !slices.Contains(all[i].Variants, c.Variants[0]) {
			all[i].Variants = append(all[i].Variants, c.Variants...)
		}
	}
	return all
}

// same says whether two changes are one, but for the variants.
func same(x, y Change) bool {
	return x.Class == y.Class && x.Step == y.Step && x.Place == y.Place && x.What == y.What && x.Before == y.Before && x.After == y.After && x.Note == y.Note
}
