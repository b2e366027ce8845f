package compile

import (
	"strings"
	"testing"
	"unicode"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/deck"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/workspace"
	"benchwright/render"
)

// demoDecks returns the decks of the demo, by card and variant.
func demoDecks(t *testing.T) map[string]*deck.Deck {
	t.Helper()
	msgs := &diag.List{}
	spaces, err := workspace.Load("../../../../procedures", []string{"."}, nil, msgs)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]*deck.Deck{}
	for _, w := range spaces {
		lib := read(w, msgs)
		for _, f := range lib.procedures {
			p, u := f.procedure, f.unit()
			for _, v := range variants(p, u) {
				c := card.Make(p, u, lib.shop, v, lib.cards, msgs)
				out[p.Number.Name+" "+c.VariantID()] = deck.Build(c, nil)
			}
		}
	}
	return out
}

func text(runs []render.Run) string {
	var b strings.Builder
	for _, r := range runs {
		b.WriteString(r.Text)
	}
	return strings.ReplaceAll(b.String(), "\u00a0", " ")
}

// What a panel notes runs on as one paragraph: each note is a sentence. An arrow
// says from where it is seen. A step names a thing with a number once.
func TestPanelsOfTheDemo(t *testing.T) {
	decks := demoDecks(t)
	if len(decks) < 8 {
		t.Fatalf("%d decks", len(decks))
	}
	for name, d := range decks {
		for _, s := range d.Sections {
			for _, g := range s.Groups {
				var notes [][]render.Run
				named := map[string]int{}
				tools := func(rows []render.ToolRow) {
					for _, r := range rows {
						if r.Number != "" && r.Verb == "Take" {
							named[r.Number]++
						}
					}
				}
				for _, e := range g.Elements {
					switch c := e.Content.(type) {
					case render.Tools:
						tools(c.Rows)
					case render.Setting:
						tools(c.Tools)
						notes = append(append(notes, c.Lines...), c.Actions...)
						if c.Turn != render.NoTurn && !strings.Contains(c.SeenFrom, "seen from ") {
							t.Errorf("%s, %s: an arrow says %q", name, g.Bookmark, c.SeenFrom)
						}
					case render.Reading:
						tools(c.Tools)
						notes = append(append(notes, c.Lines...), c.Use)
					}
				}
				for _, runs := range notes {
					n := text(runs)
					if n == "" {
						continue
					}
					if first := []rune(n)[0]; !unicode.IsUpper(first) || !strings.HasSuffix(n, ".") {
						t.Errorf("%s, %s: %q is no sentence", name, g.Bookmark, n)
					}
				}
				for number, n := range named {
					if n > 1 {
						t.Errorf("%s, %s: %s is named %d times", name, g.Bookmark, number, n)
					}
				}
			}
		}
	}
}
