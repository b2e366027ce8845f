package cli

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"benchwright/cmd/benchwright/internal/compile"
)

// listFile is the list of the files that a build wrote.
const listFile = "decks.json"

const listFormat = "benchwright-decks/1"

// A deckEntry is a file in the list.
type deckEntry struct {
	File     string   `json:"file"`
	Card     string   `json:"card"`
	Title    string   `json:"title"`
	Revision string   `json:"revision"`
	Variants []string `json:"variants"`
	Kind     string   `json:"kind"` // "pages" or "record"
	Sides    int      `json:"sides"`
	Current  bool     `json:"current"` // false: kept from an earlier build, because its procedure now has errors
}

type deckList struct {
	Format string      `json:"format"`
	Decks  []deckEntry `json:"decks"`
}

// An output is a folder that a build writes to. Every file is written under a
// temporary name and renamed, so that a failed build leaves the last good
// card.
type output struct {
	dir  string
	mu   sync.Mutex
	old  deckList
	made map[string]deckEntry
	kept map[string]bool
}

func openOutput(dir string) (*output, error) {
	o := &output{dir: dir, made: map[string]deckEntry{}, kept: map[string]bool{}}
	text, err := os.ReadFile(filepath.Join(dir, listFile))
	if errors.Is(err, fs.ErrNotExist) {
		return o, nil
	}
	if err != nil {
		return nil, fmt.Errorf("%s cannot be read: %w", filepath.Join(dir, listFile), err)
	}
	if json.Unmarshal(text, &o.old) != nil || o.old.Format != listFormat {
		return nil, fmt.Errorf("%s is not a list that benchwright wrote: build into another folder, or move that file away", filepath.Join(dir, listFile))
	}
	// Files in the list may be removed, so only names inside the folder count.
	o.old.Decks = slices.DeleteFunc(o.old.Decks, func(w deckEntry) bool {
		return filepath.Base(w.File) != w.File || !strings.HasSuffix(w.File, ".pdf")
	})
	return o, nil
}

// write writes a deck. It may be called from several goroutines.
func (o *output) write(m *compile.Made) error {
	pdf, err := m.PDF()
	if err != nil {
		return err
	}
	if err := o.replace(m.Name, pdf); err != nil {
		return err
	}
	kind := "pages"
	if m.Strip {
		kind = "record"
	}
	o.mu.Lock()
	defer o.mu.Unlock()
	o.made[m.Name] = deckEntry{File: m.Name, Card: m.Card, Title: m.Title, Revision: m.Revision, Variants: m.Variants, Kind: kind, Sides: len(m.Sheets), Current: true}
	return nil
}

// replace writes a file atomically, by renaming. It leaves a file with the
// same bytes alone.
func (o *output) replace(name string, text []byte) error {
	path := filepath.Join(o.dir, name)
	if was, err := os.ReadFile(path); err == nil && bytes.Equal(was, text) {
		return nil
	}
	if err := os.MkdirAll(o.dir, 0o777); err != nil {
		return fmt.Errorf("the folder %s cannot be made: %w", o.dir, err)
	}
	aside, err := os.CreateTemp(o.dir, ".benchwright-*")
	if err != nil {
		return fmt.Errorf("%s cannot be written: %w", path, err)
	}
	defer os.Remove(aside.Name())
	_, err = aside.Write(text)
	if err == nil {
		err = aside.Chmod(0o666 &^ umask())
	}
	if closed := aside.Close(); err == nil {
		err = closed
	}
	if err == nil {
		err = os.Rename(aside.Name(), path)
	}
	if err != nil {
		return fmt.Errorf("%s cannot be written: %w", path, err)
	}
	return nil
}

// keep records that a card has errors, and returns its remaining files of
// earlier builds.
func (o *output) keep(card string) []string {
	var out []string
	for _, w := range o.old.Decks {
		if w.Card == card && card != "" {
			if _, err := os.Stat(filepath.Join(o.dir, w.File)); err == nil {
				o.kept[w.File] = true
				out = append(out, w.File)
			}
		}
	}
	return out
}

// close writes the list. After a full build it removes listed files that are
// no longer made, and returns their names.
func (o *output) close(full bool, results []*compile.Result) (removed []string, err error) {
	rebuilt := map[string]bool{}
	for _, r := range results {
		if r.Errors == 0 && r.Fault == nil {
			rebuilt[r.Procedure.Number.Name] = true
		}
	}
	unread := slices.ContainsFunc(results, func(r *compile.Result) bool { return r.Procedure.Number.Name == "" })
	list := deckList{Format: listFormat, Decks: []deckEntry{}}
	for _, w := range o.old.Decks {
		switch {
		case o.made[w.File].File != "":
		case o.kept[w.File]:
			w.Current = false
			list.Decks = append(list.Decks, w)
		case rebuilt[w.Card], full && !unread:
			if err := os.Remove(filepath.Join(o.dir, w.File)); err == nil {
				removed = append(removed, w.File)
			} else if !errors.Is(err, fs.ErrNotExist) {
				return removed, fmt.Errorf("%s is no longer made and cannot be removed: %w", w.File, err)
			}
		default:
			if unread {
				w.Current = false
			}
			list.Decks = append(list.Decks, w)
		}
	}
	for _, w := range o.made {
		list.Decks = append(list.Decks, w)
	}
	if len(list.Decks) == 0 && len(o.old.Decks) == 0 {
		return removed, nil
	}
	slices.SortFunc(list.Decks, func(a, b deckEntry) int { return cmp.Compare(a.File, b.File) })
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(list); err != nil {
		return removed, err
	}
	slices.Sort(removed)
	return removed, o.replace(listFile, b.Bytes())
}
