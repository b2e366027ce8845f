package compare

import (
	"slices"

	"benchwright/render"
)

// ChangedRef is the reference of the elements that say what changed.
const ChangedRef render.Ref = -1

// The words of a change card.
const (
	wordChanges  = "CHANGE CARD"
	wordNotWork  = "Says what changed. No work is done by it."
	wordSummary  = "What changed"
	wordOff      = "Take off the bench"
	wordAgain    = "Print and hang"
	wordUnsure   = "Cannot be compared"
	wordLate     = "Unsafe without a new revision"
	wordNothing  = "none"
	wordApproved = "Sign before any page is hung"
	wordLead     = "The shop lead has read every change below."
)

// Summary returns the pages that sum a report up: what comes off the bench, what
// is printed, a place to sign, and every change.
func (r *Report) Summary() render.Deck {
	d := render.Deck{Language: "en", Running: render.Running{Number: wordSummary, Title: r.sum(), Watch: wordChanges, Note: wordNotWork}}
	add := func(g render.Group, contents ...render.Content) {
		for _, c := range contents {
			g.Elements = append(g.Elements, render.Element{Class: render.Wording, Content: c})
		}
		d.Sections[0].Groups = append(d.Sections[0].Groups, g)
	}
	d.Sections = []render.Section{{Name: wordSummary}}
	off, again := r.pages(func(c Card) []Pages { return c.Off }, false), r.pages(func(c Card) []Pages { return c.Print }, true)
	add(render.Group{Breaks: true}, rows(wordOff, off))
	add(render.Group{Breaks: true}, rows(wordAgain, again))
	for _, l := range []struct {
		title string
		cards []string
	}{{wordLate, r.Unrevised(Safety)}, {wordUnsure, r.Unsure()}} {
		if len(l.cards) > 0 {
			add(render.Group{Breaks: true}, rows(l.title, l.cards))
		}
	}
	add(render.Group{}, render.Hold{Title: wordApproved, Sees: words(wordLead), Boxes: []string{"Name", "Date", "Signature"}})
	for _, c := range r.Cards {
		add(render.Group{Join: true}, render.Stage{Title: words(c.Number + " " + c.Title)})
		for _, line := range c.unread() {
			add(render.Group{}, render.Text{Role: render.Lead, Runs: words(line)})
		}
		last := ""
		for _, x := range c.Changes {
			g := render.Group{}
			if at := c.where(x); at != last {
				g.Elements = append(g.Elements, render.Element{Class: render.Wording, Content: render.Text{Role: render.Lead, Runs: words(at)}})
				last = at
			}
			add(g, render.Text{Role: render.Changed, Runs: c.runs(x)})
		}
	}
	return d
}

func words(text string) []render.Run { return []render.Run{{Text: text}} }

func rows(title string, names []string) render.Listing {
	l := render.Listing{Title: title, None: wordNothing}
	for _, n := range names {
		l.Rows = append(l.Rows, [][]render.Run{words(n)})
	}
	return l
}

// runs says a change with the old value struck through beside the new one.
func (c Card) runs(x Change) []render.Run {
	before, after := x.values()
	out := []render.Run{{Text: string(x.Class) + ", " + x.What + ": "}}
	if before != "" {
		out = append(out, render.Run{Text: before, Struck: true}, render.Run{Text: " "})
	}
	out = append(out, render.Run{Text: after, Weight: render.Bold})
	if note := c.note(x); note != "" {
		out = append(out, render.Run{Text: " (" + note + ")"})
	}
	return out
}

// Mark returns a deck of the new side, that of a variant, with what changed beside
// a bar in each step. What stands on the lay-out page or before the steps heads
// its section; a step that is gone stands before the one that has its number now.
func (c Card) Mark(d render.Deck, variant string) render.Deck {
	steps := map[int][]render.Element{}
	heads := map[int][]render.Element{}
	lastStep := 0
	for _, s := range d.Sections {
		for _, g := range s.Groups {
			lastStep = max(lastStep, stepOf(g))
		}
	}
	gone := map[int][]render.Element{}
	for _, x := range c.Changes {
		i := slices.IndexFunc(x.Reaches, func(r Reach) bool { return r.Variant == variant })
		if i < 0 || x.Behind {
			continue
		}
		e := render.Element{Class: render.Wording, Ref: ChangedRef, Content: render.Text{Role: render.Changed, Runs: c.runs(x)}}
		switch at := x.Reaches[i]; {
		case x.Place == onLayOut:
			heads[0] = append(heads[0], e)
		case x.Place == onLead:
			heads[1] = append(heads[1], e)
		case x.Place != "":
		case at.New.Step > 0:
			steps[at.New.Step] = append(steps[at.New.Step], e)
		default:
			gone[min(at.Old.Step, lastStep)] = append(gone[min(at.Old.Step, lastStep)], e)
		}
	}
	out := d
	out.Running.Watch = wordChanges
	out.Sections = nil
	for i, s := range d.Sections {
		groups := s.Groups
		s.Groups = nil
		if len(heads[i]) > 0 {
			s.Groups = append(s.Groups, render.Group{Elements: heads[i]})
		}
		for _, g := range groups {
			n := stepOf(g)
			if n > 0 && len(gone[n]) > 0 {
				s.Groups = append(s.Groups, render.Group{Elements: gone[n]})
			}
			if n > 0 && len(steps[n]) > 0 {
				g.Elements = slices.Insert(slices.Clone(g.Elements), 1, steps[n]...)
			}
			s.Groups = append(s.Groups, g)
		}
		out.Sections = append(out.Sections, s)
	}
	return out
}

// stepOf returns the number of a group's step, 0 for none.
func stepOf(g render.Group) int {
	if len(g.Elements) > 0 {
		if s, is := g.Elements[0].Content.(render.Step); is {
			return s.Number
		}
	}
	return 0
}
