package compile

import (
	"slices"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/workspace"
)

// Whatever file a card of the demo reads when it is made stands among those that
// it rests on: a comparison passes over a card on nothing else.
func TestRests(t *testing.T) {
	spaces, err := workspace.Load("../../../..", []string{"procedures"}, nil, &diag.List{})
	if err != nil {
		t.Fatal(err)
	}
	lib := read(spaces[0], &diag.List{})
	var asked []string
	lib.cards.Picture = func(from *source.File, path string) (string, []byte, error) {
		name, data, err := lib.picture(from, path)
		asked = append(asked, name)
		return name, data, err
	}
	pictures, others := 0, 0
	for _, f := range lib.procedures {
		asked = nil
		rests := lib.rests(f)
		made := lib.side(f)
		for _, c := range made.Cards {
			for _, p := range c.After {
				asked = append(asked, p.File.Name)
				others++
			}
			asked = append(asked, c.Procedure.File.Name, c.Unit.File.Name, c.Shop.File.Name)
		}
		pictures += len(asked)
		for _, name := range asked {
			if rests[name] == "" {
				t.Errorf("%s does not rest on %s", f.File.Name, name)
			}
		}
	}
	if pictures == 0 || others == 0 {
		t.Errorf("%d files, %d cards before: the demo tests nothing here", pictures, others)
	}
	links, found := names(lib.cards.ByFile("md-48/set-up.md"))
	if len(found) == 0 || !slices.ContainsFunc(links, func(l string) bool { return l != "" && l[0] == '#' }) {
		t.Errorf("links %q, pictures %q: a text has more", links, found)
	}
}
