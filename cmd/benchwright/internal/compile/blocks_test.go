package compile

import (
	"context"
	"slices"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/workspace"
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
