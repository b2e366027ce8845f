package cli

import (
	"bytes"
	"encoding/json"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/compile"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/source"
)

const top = "../../../.."

// run runs benchwright in a folder and returns its exit code and all that it
// said.
func run(t *testing.T, dir string, args ...string) (int, string) {
	t.Helper()
	dir, err := filepath.Abs(dir)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	code := Main(args, Streams{Out: &b, Err: &b, Dir: dir})
	return code, b.String()
}

// A fault of ours is exit 2, above errors in procedures, above warnings.
func TestExitCodes(t *testing.T) {
	procedure := &procedure.Procedure{}
	good, fault := &compile.Result{Procedure: procedure}, &compile.Result{Procedure: procedure, Fault: errors.New("deliberate")}
	place := source.Place{File: source.NewFile("a.md", []byte("a"))}
	list := func(slugs ...string) *diag.List {
		l := &diag.List{}
		for _, s := range slugs {
			l.Report(s, place, "", "x")
		}
		return l
	}
	for _, c := range []struct {
		results []*compile.Result
		msgs    *diag.List
		want    int
	}{
		{nil, list(), exitOK},
		{[]*compile.Result{good}, list("why-missing"), exitOK},
		{[]*compile.Result{good}, list("why-missing", "limits-missing"), exitFound},
		{[]*compile.Result{good, fault}, list(), exitFault},
		{[]*compile.Result{fault, good}, list("limits-missing"), exitFault},
		{[]*compile.Result{fault}, list("internal-fault"), exitFault},
	} {
		if got := exitCode(c.results, c.msgs); got != c.want {
			t.Errorf("exit code %d, want %d", got, c.want)
		}
	}
}

// What calc says is exit 0 for an answer and for help, 1 where the answer is
// that it cannot be done, 2 with one sentence for wrong use.
func TestWorkExitCodes(t *testing.T) {
	for _, c := range []struct {
		args []string
		want int
		says string // the beginning
	}{
		{[]string{"calc"}, exitOK, "benchwright calc works out"},
		{[]string{"calc", "tilt", "--help"}, exitOK, "usage: benchwright calc tilt"},
		{[]string{"calc", "convert", "100", "N·m", "--to", "ft-lb"}, exitOK, "Conversion\n"},
		{[]string{"calc", "convert", "100.1", "to", "100.2", "N·m", "--marks", "1", "N·m"}, exitFound, "Conversion\n"},
		{[]string{"calc", "convert", "100"}, exitFault, "benchwright: "},
		{[]string{"calc", "qqq"}, exitFault, "benchwright: there is no calculation `qqq`: `benchwright calc` lists them\n"},
	} {
		code, text := run(t, ".", c.args...)
		if code != c.want || !strings.HasPrefix(text, c.says) || code == exitFault && strings.Count(text, "\n") != 1 {
			t.Errorf("%q: exit code %d, want %d:\n%s", c.args, code, c.want, text)
		}
	}
}

// A card that cannot be written is exit 2 with one sentence; the other cards
// are written, and the list says what there is.
func TestCardThatCannotBeWritten(t *testing.T) {
	out := t.TempDir()
	if err := os.MkdirAll(filepath.Join(out, "AG3-10.pdf", "in the way"), 0o777); err != nil {
		t.Fatal(err)
	}
	code, text := run(t, top, "build", "procedures", "-o", out)
	if code != exitFault || !strings.Contains(text, "AG3-10.pdf cannot be written") || strings.Contains(text, "goroutine") {
		t.Errorf("exit code %d:\n%s", code, text)
	}
	for _, n := range []string{"MD48-10.pdf", "MD48-10.record.pdf", listFile} {
		if _, err := os.Stat(filepath.Join(out, n)); err != nil {
			t.Error(err)
		}
	}
	var list deckList
	file, _ := os.ReadFile(filepath.Join(out, listFile))
	if err := json.Unmarshal(file, &list); err != nil {
		t.Fatal(err)
	}
	for _, d := range list.Decks {
		if d.File == "AG3-10.pdf" {
			t.Error("the list names a card that was not written")
		}
	}
	nothingAside(t, out)
}

// nothingAside requires that no half-written file is left.
func nothingAside(t *testing.T, dir string) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, ".benchwright-*"))
	if err != nil || len(files) > 0 {
		t.Errorf("left behind: %q", files)
	}
}

// A build over a build writes nothing anew, and check writes nothing at all.
func TestBuildOverBuild(t *testing.T) {
	out := t.TempDir()
	args := []string{"build", "procedures/auger-hub", "-o", out}
	if code, text := run(t, top, args...); code != exitOK {
		t.Fatal(text)
	}
	stamps := func() map[string]string {
		all := map[string]string{}
		filepath.WalkDir(out, func(path string, d fs.DirEntry, err error) error {
			if info, err := os.Stat(path); err == nil && !d.IsDir() {
				all[path] = info.ModTime().String()
			}
			return err
		})
		return all
	}
	before := stamps()
	if code, text := run(t, top, args...); code != exitOK {
		t.Fatal(text)
	}
	after := stamps()
	if len(before) != 3 || len(after) != len(before) {
		t.Errorf("%d files, then %d", len(before), len(after))
	}
	for path, stamp := range before {
		if after[path] != stamp {
			t.Errorf("%s was written again", path)
		}
	}
	nothingAside(t, out)
}

// The list of an earlier build says what may be removed, and never reaches
// beyond the folder or to what is no card.
func TestListReachesNoFurther(t *testing.T) {
	dir := t.TempDir()
	out := filepath.Join(dir, "out")
	if err := os.MkdirAll(out, 0o777); err != nil {
		t.Fatal(err)
	}
	list := `{"format":"benchwright-decks/1","decks":[{"file":"../keep.pdf","card":"X"},{"file":"notes.txt","card":"X"},{"file":"old.pdf","card":"X"}]}`
	for name, text := range map[string]string{"keep.pdf": "k", "out/notes.txt": "n", "out/old.pdf": "o", "out/mine.pdf": "m", "out/" + listFile: list} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if code, text := run(t, top, "build", "procedures", "-o", out); code != exitOK || !strings.Contains(text, "removed old.pdf") {
		t.Errorf("exit code %d:\n%s", code, text)
	}
	for name, want := range map[string]bool{"keep.pdf": true, "out/notes.txt": true, "out/old.pdf": false, "out/mine.pdf": true} {
		if _, err := os.Stat(filepath.Join(dir, name)); (err == nil) != want {
			t.Errorf("%s is there: %v", name, err == nil)
		}
	}
}

// Progress is for a terminal and for long work alone.
func TestProgress(t *testing.T) {
	var b bytes.Buffer
	if progress(Streams{Err: &b}) != nil {
		t.Error("a pipe shows progress")
	}
	show := progress(Streams{Err: &b, Terminal: true})
	show(3, 5)
	if b.Len() > 0 {
		t.Errorf("short work shows %q", b.String())
	}
	show(3, 50)
	show(50, 50)
	if got := b.String(); got != "\r3 of 50 cards\r50 of 50 cards\r\x1b[K" {
		t.Errorf("%q", got)
	}
}

// Without git two folders are compared, and a revision is refused with what to do.
func TestCompareWithoutGit(t *testing.T) {
	t.Setenv("PATH", t.TempDir())
	dir := t.TempDir()
	if err := os.CopyFS(filepath.Join(dir, "ws"), os.DirFS("starter")); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args []string
		code int
		says string
	}{
		{[]string{"compare", "ws", "ws"}, exitOK, "no change in what the cards say"},
		{[]string{"compare", "HEAD", "ws"}, exitFault, "benchwright: git is not on this machine: install it, or name two folders"},
	} {
		if code, said := run(t, dir, c.args...); code != c.code || !strings.Contains(said, c.says) {
			t.Errorf("%q: exit code %d, %s", c.args, code, said)
		}
	}
}
