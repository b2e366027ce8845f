// Package release keeps what was released of each card: which revision, when,
// by whom, what its pages said, and where its copies hang. A record is a plain
// file in the workspace, releases/CARD.yaml, to be kept under version control.
package release

import (
	"fmt"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/value"
)

// A Record is the releases of one card, the newest last.
type Record struct {
	Card     string
	At       source.Place // of the card's number
	Releases []*Release
}

// A Release is one release of a card.
type Release struct {
	Revision string
	Date     string // "2026-10-02"
	Approver string // the role of the person who approved it
	Copies   []string
	Decks    []Deck
	At       source.Place // of the revision
}

// A Deck is one deck of a release: the pages of the variants that share them.
type Deck struct {
	Variants []string // nil for a unit without variants
	Code     string   // of all that it says, on whatever page
	Pages    []Page
}

// A Page is one page of a deck.
type Page struct {
	Number int
	Shows  string // "Steps 1–5 of 41"
	Code   string
}

// Read converts a record. What it lacks was reported by its schema.
func Read(t *syntax.Tree, msgs *diag.List) *Record {
	r := &value.Reader{Msgs: msgs, SchemaRefused: t.Refused}
	card := t.Root.Get("card")
	out := &Record{Card: r.Text(card), At: card.Place()}
	for _, n := range r.Sequence(t.Root.Get("releases")) {
		x := &Release{Revision: r.Text(n.Get("revision")), Date: r.Text(n.Get("date")), Approver: r.Text(n.Get("approved-by")),
			Copies: r.Texts(n.Get("copies")), At: n.Get("revision").Place()}
		for _, d := range r.Sequence(n.Get("decks")) {
			deck := Deck{Variants: r.Texts(d.Get("variants")), Code: r.Text(d.Get("code"))}
			for _, p := range r.Sequence(d.Get("pages")) {
				deck.Pages = append(deck.Pages, Page{r.Count(p.Get("page"), 0), r.Text(p.Get("shows")), r.Text(p.Get("code"))})
			}
			x.Decks = append(x.Decks, deck)
		}
		out.Releases = append(out.Releases, x)
	}
	return out
}

// Of returns the release of a revision, nil without one.
func (r *Record) Of(revision string) *Release {
	if r != nil {
		for _, x := range r.Releases {
			if x.Revision == revision {
				return x
			}
		}
	}
	return nil
}

// Last returns the newest release, nil without one.
func (r *Record) Last() *Release {
	if r == nil || len(r.Releases) == 0 {
		return nil
	}
	return r.Releases[len(r.Releases)-1]
}

// Same says whether two releases say the same on their decks, whatever page it
// stands on.
func (x *Release) Same(y *Release) bool {
	codes := func(x *Release) []string {
		var out []string
		for _, d := range x.Decks {
			out = append(out, strings.Join(d.Variants, "+")+" "+d.Code)
		}
		slices.Sort(out)
		return out
	}
	return slices.Equal(codes(x), codes(y))
}

// Append returns the text of a record with one more release at its end; text is
// nil for a card's first.
func Append(text []byte, card string, x *Release) []byte {
	var b strings.Builder
	b.Write(text)
	if len(text) == 0 {
		fmt.Fprintf(&b, "# What was released of this card, the newest last. `benchwright release` adds to it.\ncard: %s\nreleases:\n", quoted(card))
	} else if text[len(text)-1] != '\n' {
		b.WriteByte('\n')
	}
	fmt.Fprintf(&b, "  - revision: %s\n    date: %s\n    approved-by: %s\n", quoted(x.Revision), x.Date, quoted(x.Approver))
	if len(x.Copies) > 0 {
		fmt.Fprintf(&b, "    copies: %s\n", list(x.Copies))
	}
	b.WriteString("    decks:\n")
	for _, d := range x.Decks {
		dash := "- "
		if len(d.Variants) > 0 {
			fmt.Fprintf(&b, "      %svariants: %s\n", dash, list(d.Variants))
			dash = "  "
		}
		fmt.Fprintf(&b, "      %scode: %s\n        pages:\n", dash, quoted(d.Code))
		for _, p := range d.Pages {
			fmt.Fprintf(&b, "          - {page: %d, shows: %s, code: %s}\n", p.Number, quoted(p.Shows), quoted(p.Code))
		}
	}
	return []byte(b.String())
}

// quoted is a text as a YAML scalar that nothing can read as anything else.
func quoted(text string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(text) + `"`
}

func list(texts []string) string {
	var out []string
	for _, t := range texts {
		out = append(out, quoted(t))
	}
	return "[" + strings.Join(out, ", ") + "]"
}
