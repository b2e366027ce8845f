package compile

import (
	"context"
	"regexp"
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/deck"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/workspace"
	"benchwright/render"
	"benchwright/schema"
)

// Each block type that is built has its schema, and there is no schema but
// these and those of the files.
func TestEveryBlockHasItsSchema(t *testing.T) {
	want := []string{"front", "shop", "unit"}
	for _, kind := range procedure.Built {
		if want = append(want, "block-"+kind); !slices.Contains(schema.Names(), "block-"+kind) {
			t.Errorf("no schema for the block %s", kind)
		}
	}
	slices.Sort(want)
	if got := schema.Names(); !slices.Equal(got, want) {
		t.Errorf("the schemas are %q, want %q", got, want)
	}
}

// statesTime matches a key of a block that is a time.
var statesTime = regexp.MustCompile(`(?m)^[a-z-]+: .*[0-9] (s|min|h)$`)

// A block has a row on the record strip, or its section in procedures/README.md
// says that it has none; a step names each tool that its blocks use, and its
// place; and a time takes a clock.
func TestEveryBlockIsOnRecord(t *testing.T) {
	for kind, e := range blockExamples(t) {
		msgs := &diag.List{}
		spaces, err := workspace.Load(write(t, e.files), []string{"."}, nil, msgs)
		if err != nil {
			t.Fatal(err)
		}
		lib := read(spaces[0], msgs)
		cards, _, _, _ := lib.resolve(lib.procedures[0], msgs)
		if len(cards) != 2 || msgs.Errors() > 0 {
			t.Fatalf("%s: %d cards\n%s", kind, len(cards), shown(msgs.Sorted()))
		}
		rows := 0
		strip := deck.Strip(cards[1])
		for _, s := range strip.Sections {
			for _, g := range s.Groups {
				for _, e := range g.Elements {
					records, _ := e.Content.(render.Records)
					for _, r := range records.Rows {
						if strip.Place(r.Ref).Text() == kind {
							rows++
						}
					}
				}
			}
		}
		if none := strings.Contains(e.section, "Nothing of it goes on the record strip."); none == (rows > 0) {
			t.Errorf("%s: %d rows on the record strip, and procedures/README.md says that it has none: %v", kind, rows, none)
		}
		built := deck.Build(cards[1], nil)
		if at := statesTime.FindString(e.files["card.md"]); at != "" && !strings.Contains(render.Canonical(built.Deck), `"Clock"`) {
			t.Errorf("%s: the lay-out page has no clock for `%s`", kind, at)
		}
		for _, s := range built.Sections {
			for _, g := range s.Groups {
				said := render.Canonical(render.Deck{Sections: []render.Section{{Groups: []render.Group{g}}}})
				said = strings.ToLower(strings.ReplaceAll(said, `\u00a0`, " "))
				for _, k := range cards[1].Kit {
					for _, n := range k.Steps {
						for _, what := range []string{k.Item.Name, k.Item.Location} {
							if g.Anchor == card.Anchor(n) && !strings.Contains(said, strings.ToLower(what)) {
								t.Errorf("%s: step %d uses the %s and does not say `%s`", kind, n, k.Item.Name, what)
							}
						}
					}
				}
			}
		}
	}
}

// A limit that counts as reported, and of which nothing was said, takes a reading
// its limits: such a card is not printed.
func TestWhatIsMissingIsReported(t *testing.T) {
	s := pieces("~~~ step\n```measurement\nof: Lash\nlimits: output-lash\ngauge: dial-indicator\nif-low: Note it.\nif-high: Note it.\n```\n~~~\n")
	for _, silent := range []bool{false, true} {
		msgs := &diag.List{}
		spaces, err := workspace.Load(write(t, s.files(t)), []string{"."}, nil, msgs)
		if err != nil {
			t.Fatal(err)
		}
		lib := read(spaces[0], msgs)
		for _, u := range lib.units {
			if l := u.unit.Limit("output-lash"); l != nil && silent {
				l.Bad, l.All = (&diag.List{}).Report("limits-bare", l.At, "", "said to nobody").Proof(), nil
			}
		}
		faults := 0
		for _, r := range lib.makeCards(context.Background(), Options{}, msgs) {
			if r.Fault != nil && r.Decks == nil {
				faults++
			}
		}
		list := msgs.Sorted()
		if said := len(list) == 1 && list[0].Slug == "internal-fault"; faults == 1 != silent || said != silent {
			t.Errorf("%v: %d faults\n%s", silent, faults, shown(list))
		}
	}
}
