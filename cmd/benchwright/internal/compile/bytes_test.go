package compile_test

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"benchwright/cmd/benchwright/internal/compile"
	"benchwright/cmd/benchwright/internal/diag"
)

// The demo's PDFs are held by hash. Their bytes depend on how Go deflates, so
// they are judged on the toolchain that go.mod pins, on linux/amd64; their
// content is held everywhere by the dumps in testdata/sheet.
func TestPDFSums(t *testing.T) {
	decks := demoDecks(t)
	var got strings.Builder
	for _, name := range slices.Sorted(maps.Keys(decks)) {
		fmt.Fprintf(&got, "%x  %s\n", sha256.Sum256([]byte(decks[name].pdf)), name)
	}
	file, err := os.ReadFile(sumsFile)
	want := string(file)
	here := runtime.GOOS+"/"+runtime.GOARCH == "linux/amd64" && runtime.Version() == pinned(t)
	switch {
	case err == nil && want == got.String():
	case here && os.Getenv("UPDATE") == "1":
		if err := os.WriteFile(sumsFile, []byte(got.String()), 0o666); err != nil {
			t.Fatal(err)
		}
		t.Logf("rewrote %s", sumsFile)
	case err != nil:
		t.Fatalf("%v; UPDATE=1 writes it", err)
	case here:
		t.Errorf("%s: %s", sumsFile, difference(want, got.String()))
	default: // which decks there are is known on any machine
		if names(want) != names(got.String()) {
			t.Errorf("%s lists the decks%s\nwant%s", sumsFile, names(want), names(got.String()))
		}
	}
}

// pinned is the toolchain of go.mod.
func pinned(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(top, "go.mod"))
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(text)) {
		if version, ok := strings.CutPrefix(line, "toolchain "); ok {
			return strings.TrimSpace(version)
		}
	}
	t.Fatal("go.mod pins no toolchain")
	return ""
}

func names(sums string) string {
	var out strings.Builder
	for line := range strings.Lines(sums) {
		_, name, _ := strings.Cut(strings.TrimSuffix(line, "\n"), "  ")
		out.WriteString(" " + name)
	}
	return out.String()
}

// The same procedures give the same bytes, whatever the order in which files
// are visited, the processors and workers, the folder and the time zone.
func TestSameBytes(t *testing.T) {
	want := demoDecks(t)
	again := func(how, dir string, o compile.Options, reverse bool) {
		t.Run(how, func(t *testing.T) {
			msgs := &diag.List{}
			w := load(t, dir, msgs)
			if reverse {
				slices.Reverse(w.Procedures)
				slices.Reverse(w.Units)
			}
			got := build(t, w, o, msgs)
			if len(got) != len(want) {
				t.Errorf("%d decks, want %d", len(got), len(want))
			}
			for name, m := range want {
				if got[name].dump != m.dump {
					t.Errorf("%s: %s", name, difference(m.dump, got[name].dump))
				} else if got[name].pdf != m.pdf {
					t.Errorf("%s: other bytes", name)
				}
			}
		})
	}
	again("once more", demo, compile.Options{}, false)
	again("other order", demo, compile.Options{}, true)
	for _, n := range []int{1, 8} {
		again(fmt.Sprint("workers ", n), demo, compile.Options{Workers: n}, false)
		old := runtime.GOMAXPROCS(n)
		again(fmt.Sprint("processors ", n), demo, compile.Options{}, false)
		runtime.GOMAXPROCS(old)
	}
	elsewhere := filepath.Join(t.TempDir(), "another place", "é")
	copyFolder(t, demo, elsewhere)
	again("another folder", elsewhere, compile.Options{}, false)
	zone := time.Local
	defer func() { time.Local = zone }()
	time.Local = time.FixedZone("far east", 14*60*60)
	t.Setenv("TZ", "Pacific/Kiritimati")
	t.Setenv("LANG", "de_DE.UTF-8")
	again("another time zone", demo, compile.Options{}, false)
}

func copyFolder(t *testing.T, from, to string) {
	t.Helper()
	err := filepath.WalkDir(from, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(from, path)
		if err != nil {
			return err
		}
		target := filepath.Join(to, rel)
		if d.IsDir() {
			return os.MkdirAll(target, 0o777)
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		return os.WriteFile(target, text, 0o666)
	})
	if err != nil {
		t.Fatal(err)
	}
}

// A deck that cannot be written, by a panic or by an error, stops its own card
// alone.
func TestFaultStopsOneCard(t *testing.T) {
	const bad = "MD48-20"
	for _, c := range []struct {
		how  string
		fail func() error
		said bool // a message is given as well: a panic is a fault of ours
	}{
		{"panic", func() error { panic("deliberate") }, true},
		{"nil map", func() error { var m map[string]int; m["a"] = 1; return nil }, true},
		{"error", func() error { return errors.New("deliberate") }, false},
	} {
		t.Run(c.how, func(t *testing.T) {
			msgs := &diag.List{}
			w := load(t, demo, msgs)
			var mu sync.Mutex
			written := map[string]bool{}
			results := compile.Run(context.Background(), w, compile.Options{Emit: func(m *compile.Made) error {
				if m.Card == bad {
					return c.fail()
				}
				mu.Lock()
				defer mu.Unlock()
				written[m.Name] = true
				return nil
			}}, msgs)
			for _, r := range results {
				if failed := r.Procedure.Number.Name == bad; (r.Fault != nil) != failed {
					t.Errorf("%s: fault %v", r.Procedure.Number.Name, r.Fault)
				}
			}
			for name := range demoDecks(t) {
				if !strings.HasPrefix(name, bad) && !written[name] {
					t.Errorf("%s is not written", name)
				}
			}
			faults := 0
			for _, d := range msgs.Sorted() {
				if d.Slug == "internal-fault" {
					faults++
					if d.At.File == nil || d.At.Text() != bad {
						t.Errorf("the message stands at %q, not at the card's number", d.At.Text())
					}
				}
			}
			if (faults == 1) != c.said || faults > 1 {
				t.Errorf("%d messages say internal-fault", faults)
			}
		})
	}
}
