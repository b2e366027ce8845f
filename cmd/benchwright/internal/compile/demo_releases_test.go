package compile_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"benchwright/cmd/benchwright/internal/compile"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/release"
	"benchwright/cmd/benchwright/internal/workspace"
)

// The record of a released card of the demo is what `benchwright release` would
// write of it now: the cards change with the program, and nobody has the demo on
// a bench. UPDATE=1 writes it anew.
func TestDemoReleases(t *testing.T) {
	msgs := &diag.List{}
	spaces, err := workspace.Load(demo, []string{"."}, nil, msgs)
	if err != nil {
		t.Fatal(err)
	}
	w := spaces[0]
	records := map[string]*release.Release{}
	for _, r := range compile.Run(context.Background(), w, compile.Options{}, msgs) {
		if last := r.Record.Last(); last != nil {
			records[r.Procedure.Number.Name] = last
		}
	}
	if len(records) != len(w.Releases) || len(records) == 0 {
		t.Fatalf("%d of %d records are of a card", len(records), len(w.Releases))
	}
	w.Releases = nil // so that a card with an old record is made, too
	for _, r := range compile.Run(context.Background(), w, compile.Options{}, &diag.List{}) {
		x := records[r.Procedure.Number.Name]
		if x == nil {
			continue
		}
		now := *x
		now.Revision, now.Decks = r.Procedure.Revision, compile.Release(r.Decks).Decks
		name := filepath.Join(demo, workspace.Releases, r.Procedure.Number.Name+".yaml")
		want := string(release.Append(nil, r.Procedure.Number.Name, &now))
		got, err := os.ReadFile(name)
		switch {
		case err == nil && string(got) == want:
		case os.Getenv("UPDATE") == "1":
			if err := os.WriteFile(name, []byte(want), 0o666); err != nil {
				t.Fatal(err)
			}
			t.Logf("rewrote %s", name)
		default:
			t.Errorf("%s is not what is released now; UPDATE=1 writes it: %v", name, err)
		}
	}
}
