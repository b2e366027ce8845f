package compile_test

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"benchwright/cmd/benchwright/internal/compile"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/workspace"
	"benchwright/render/dump"
)

const (
	top      = "../../../.."
	demo     = top + "/procedures"
	sheetDir = top + "/testdata/sheet"
	sumsFile = top + "/testdata/pdf.sums"
)

// A made deck as text and as file.
type made struct {
	dump, pdf string
}

// load reads the one workspace of a folder, without what was released of it.
func load(t *testing.T, dir string, msgs *diag.List) *workspace.Workspace {
	t.Helper()
	spaces, err := workspace.Load(dir, []string{"."}, nil, msgs)
	if err != nil {
		t.Fatal(err)
	}
	if len(spaces) != 1 {
		t.Fatalf("%s holds %d workspaces", dir, len(spaces))
	}
	spaces[0].Releases = nil // or a changed card would have no golden: TestDemoReleases has them
	return spaces[0]
}

// build makes every deck of a workspace, by file name.
func build(t *testing.T, w *workspace.Workspace, o compile.Options, msgs *diag.List) map[string]made {
	t.Helper()
	out := map[string]made{}
	var mu sync.Mutex
	o.Emit = func(m *compile.Made) error {
		var b bytes.Buffer
		if err := dump.Write(&b, m.Sheets); err != nil {
			return err
		}
		pdf, err := m.PDF()
		mu.Lock()
		defer mu.Unlock()
		out[m.Name] = made{b.String(), string(pdf)}
		return err
	}
	for _, r := range compile.Run(context.Background(), w, o, msgs) {
		if r.Fault != nil {
			t.Error(r.Fault)
		}
	}
	if msgs.Errors() > 0 {
		var b bytes.Buffer
		diag.WriteText(&b, msgs.Sorted(), false)
		t.Fatalf("the demo has errors:\n%s", b.String())
	}
	return out
}

var demoOnce struct {
	sync.Once
	decks map[string]made
}

// demoDecks is the demo, built once for all tests that only look at it.
func demoDecks(t *testing.T) map[string]made {
	t.Helper()
	demoOnce.Do(func() {
		msgs := &diag.List{}
		demoOnce.decks = build(t, load(t, demo, msgs), compile.Options{}, msgs)
	})
	if len(demoOnce.decks) == 0 {
		t.Fatal("the demo was not built")
	}
	return demoOnce.decks
}

// Every deck of the demo is laid out as its golden says. UPDATE=1 rewrites the
// goldens and names each file that changed.
func TestSheets(t *testing.T) {
	owned := map[string]bool{}
	for name, m := range demoDecks(t) {
		file := strings.TrimSuffix(name, ".pdf") + ".txt"
		owned[file] = true
		path := filepath.Join(sheetDir, file)
		want, err := os.ReadFile(path)
		switch {
		case err == nil && string(want) == m.dump:
		case os.Getenv("UPDATE") == "1":
			if err := os.MkdirAll(sheetDir, 0o777); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(path, []byte(m.dump), 0o666); err != nil {
				t.Fatal(err)
			}
			t.Logf("rewrote %s", path)
		case err != nil:
			t.Errorf("%v; UPDATE=1 writes it", err)
		default:
			t.Errorf("%s: %s", path, difference(string(want), m.dump))
		}
	}
	files, err := os.ReadDir(sheetDir)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if !owned[f.Name()] {
			t.Errorf("no test owns %s", filepath.Join(sheetDir, f.Name()))
		}
	}
}

// difference shows the first line in which two dumps differ, and the sheet on
// which it stands.
func difference(want, got string) string {
	w, g := strings.Split(want, "\n"), strings.Split(got, "\n")
	sheet := "top"
	for i := range max(len(w), len(g)) {
		a, b := "nothing", "nothing"
		if i < len(w) {
			a = w[i]
		}
		if i < len(g) {
			b = g[i]
		}
		if a != b {
			return strings.Join([]string{"below " + sheet, "want " + a, "got  " + b}, "\n\t")
		}
		if strings.HasPrefix(a, "sheet ") {
			sheet = a
		}
	}
	return "no difference"
}
