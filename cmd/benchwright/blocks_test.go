package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/procedure"
)

const blockFaces = "../../testdata/blocks"

// What the example of each block type says on its faces and on its record strip
// is what its golden holds: whatever a block says, its own example loses it
// where it is lost. UPDATE=1 rewrites the goldens.
func TestBlockFaces(t *testing.T) {
	sections := blocksPage(t)
	for _, kind := range procedure.Built {
		t.Run(kind, func(t *testing.T) {
			got := readExample(t, kind, sections[kind])
			o := got.build(got.files)
			if o.fault != "" || o.faces == "" {
				t.Fatalf("the example does not build: %s", o.fault)
			}
			golden := filepath.Join(blockFaces, kind+".txt")
			want, err := os.ReadFile(golden)
			switch {
			case err == nil && string(want) == o.faces:
			case os.Getenv("UPDATE") == "1":
				if err := os.WriteFile(golden, []byte(o.faces), 0o666); err != nil {
					t.Fatal(err)
				}
				t.Logf("rewrote %s", golden)
			case err != nil:
				t.Errorf("%v; UPDATE=1 writes it", err)
			default:
				t.Errorf("the faces differ from %s: %s", golden, differs(string(want), o.faces))
			}
		})
	}
	files, err := os.ReadDir(blockFaces)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if !slices.Contains(procedure.Built, strings.TrimSuffix(f.Name(), ".txt")) {
			t.Errorf("%s is no block's", f.Name())
		}
	}
}

// differs names the first line that differs.
func differs(want, got string) string {
	a, b := strings.Split(want, "\n"), strings.Split(got, "\n")
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			return "`" + b[i] + "` for `" + a[i] + "`"
		}
	}
	return "one goes on longer"
}
