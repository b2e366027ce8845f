package compile

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/hazard"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/workspace"
)

// Every page of messages is a test: its example must give exactly one message,
// the page's own, at the text between « and »; its fix must give none.
//
// What stands in a page is only what the slip is about. It is put into a small
// sound workspace, testdata/pages, and the info string of its ~~~ fence says
// where:
//
//	~~~ step       what stands in the one step of md-48/strip.md
//	~~~ stage      what stands in its one stage: steps, ### headings and all
//	~~~ front      keys of its front matter, beside those that it has
//	~~~ unit.yaml  keys of md-48/unit.yaml, in place of those of that name
//	~~~ shop.yaml  keys of shop.yaml, likewise
//	~~~ PATH       any other file as a whole: md-48/strip.md, md-48/test.md
//	~~~ alone.md   a whole file outside any workspace, checked by itself
//
// The fences are tildes, so that typed blocks stand inside as they are. A fix
// takes over what it does not show again: one that shows the step alone keeps
// the unit.yaml of the example.

// base is the sound workspace.
const base = "testdata/pages"

const (
	strip = "md-48/strip.md"
	alone = "alone.md"
)

// A sample is the fenced pieces of an example or a fix by info string.
type sample map[string]string

// samples returns the pieces that stand under a heading of a page.
func samples(text, heading string) sample {
	_, text, found := strings.Cut(text, "\n## "+heading+"\n")
	if !found {
		return nil
	}
	text, _, _ = strings.Cut(text, "\n## "+map[string]string{"Example": "Fix", "Fix": "\x00"}[heading])
	return pieces(text)
}

// pieces returns the fenced pieces of a text by their info strings.
func pieces(text string) sample {
	out := sample{}
	info, inside := "", false
	for line := range strings.Lines(text) {
		switch fence, ok := strings.CutPrefix(line, "~~~"); {
		case ok && inside:
			inside = false
		case ok:
			info, inside = strings.TrimSpace(fence), true
			out[info] = ""
		case inside:
			out[info] += line
		}
	}
	return out
}

// files puts the pieces into the base workspace.
func (s sample) files(t *testing.T) map[string]string {
	t.Helper()
	out := map[string]string{}
	if text, ok := s[alone]; ok {
		return map[string]string{alone: text}
	}
	err := filepath.WalkDir(base, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		name, err := filepath.Rel(base, path)
		if err != nil {
			return err
		}
		text, err := os.ReadFile(path)
		out[filepath.ToSlash(name)] = string(text)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for info, text := range s {
		switch info {
		case "step":
			if _, all := s["stage"]; all {
				continue // the stage takes the step's place, in whatever order they come
			}
			out[strip] = after(out[strip], "\n### ") + "\n" + text
		case "stage":
			out[strip] = after(out[strip], "\n## ") + "\n" + text
		case "front":
			keys, rest, _ := strings.Cut(strings.TrimPrefix(out[strip], "---\n"), "\n---\n")
			out[strip] = "---\n" + keyed(keys+"\n", text) + "---\n" + rest
		case "unit.yaml":
			out["md-48/unit.yaml"] = keyed(out["md-48/unit.yaml"], text)
		case "shop.yaml":
			out[info] = keyed(out[info], text)
		default:
			out[info] = text
		}
	}
	return out
}

// after returns text up to the end of the line that begins with mark.
func after(text, mark string) string {
	i := strings.Index(text, mark) + len(mark)
	return text[:i+strings.IndexByte(text[i:], '\n')+1]
}

// keyed returns the YAML text with keys in place of the top-level keys of the
// same names.
func keyed(text, keys string) string {
	has := map[string]bool{}
	for line := range strings.Lines(strings.NewReplacer("«", "", "»", "").Replace(keys)) {
		if k, _, ok := strings.Cut(line, ":"); ok && !strings.HasPrefix(k, " ") {
			has[k] = true
		}
	}
	var b strings.Builder
	keep := true
	for line := range strings.Lines(text) {
		if !strings.HasPrefix(line, " ") {
			k, _, _ := strings.Cut(line, ":")
			keep = !has[k]
		}
		if keep {
			b.WriteString(line)
		}
	}
	return b.String() + keys
}

// marked takes the marks out of the files and returns the place between them.
func marked(t *testing.T, files map[string]string) (name string, span source.Span) {
	t.Helper()
	for n, text := range files {
		start := strings.Index(text, "«")
		if start < 0 {
			continue
		}
		end := strings.Index(text, "»") - len("«")
		if name != "" || end < start || strings.Count(text, "«") != 1 || strings.Count(text, "»") != 1 {
			t.Fatal("an example has one « and one » behind it")
		}
		name, span = n, source.Span{Start: start, End: end}
		files[n] = strings.NewReplacer("«", "", "»", "").Replace(text)
	}
	return name, span
}

// write writes the files to a new folder, above which no workspace is looked
// for.
func write(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, ".git"), 0o777); err != nil {
		t.Fatal(err)
	}
	for name, text := range files {
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// messages checks the workspace, or the file that stands alone, in a folder.
func messages(t *testing.T, dir string, o Options) []diag.Diagnostic {
	t.Helper()
	target := "."
	if _, err := os.Stat(filepath.Join(dir, alone)); err == nil {
		target = alone
	}
	msgs := &diag.List{}
	spaces, err := workspace.Load(dir, []string{target}, nil, msgs)
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range spaces {
		runShared(t, w, o, msgs)
	}
	return msgs.Sorted()
}

// shown is the messages as a writer sees them.
func shown(list []diag.Diagnostic) string {
	var b bytes.Buffer
	if err := diag.WriteText(&b, list, false); err != nil {
		return err.Error()
	}
	return b.String()
}

func TestTheBaseIsSound(t *testing.T) {
	if list := messages(t, write(t, sample{}.files(t)), Options{}); len(list) > 0 {
		t.Errorf("testdata/pages:\n%s", shown(list))
	}
}

func TestPages(t *testing.T) {
	for _, slug := range diag.Slugs() {
		if setups[slug].make != nil {
			continue
		}
		t.Run(slug, func(t *testing.T) {
			t.Parallel()
			page, _ := procedure.PageOf(slug)
			example, fix := samples(page.Text, "Example"), samples(page.Text, "Fix")
			if len(example) == 0 || len(fix) == 0 {
				t.Fatal("the page has no example or no fix")
			}
			one(t, slug, example)
			sound(t, example, fix)
		})
	}
}

// one requires that an example gives one message, with the slug, at its mark.
func one(t *testing.T, slug string, s sample) {
	t.Helper()
	files := s.files(t)
	name, span := marked(t, files)
	if name == "" {
		t.Fatal("the example has no « »")
	}
	list := messages(t, write(t, files), Options{})
	if len(list) != 1 {
		t.Fatalf("the example gives %d messages, want one:\n%s", len(list), shown(list))
	}
	d := list[0]
	if d.Slug != slug {
		t.Errorf("the example gives %s", shown(list))
	}
	if got := d.At; got.File == nil || got.File.Name != name || got.Span != span {
		t.Errorf("the message is not at `%s` of %s:\n%s", files[name][span.Start:span.End], name, shown(list))
	}
	manners(t, d)
}

// manners requires what every message keeps to.
func manners(t *testing.T, d diag.Diagnostic) {
	t.Helper()
	for what, text := range map[string]string{"message": d.Message, "label": d.Label} {
		if strings.HasSuffix(text, ".") && !strings.HasSuffix(text, "…") {
			t.Errorf("the %s ends in a full stop: %s", what, text)
		}
		if strings.Count(text, "`")%2 != 0 || strings.Contains(text, "%!") || strings.Contains(text, "  ") || strings.Contains(text, "``") {
			t.Errorf("the %s is badly put together: %s", what, text)
		}
	}
	switch {
	case d.Message == "":
		t.Error("the message is empty")
	case d.Fix == "":
		t.Errorf("no fix is named: %s", d.Message)
	case strings.HasSuffix(d.Fix, ".") && !strings.Contains(d.Fix, "```") || strings.Contains(d.Fix, "%!"):
		t.Errorf("the fix is badly put together: %s", d.Fix)
	}
}

// sound requires that a fix, on top of its example, gives no message.
func sound(t *testing.T, example, fix sample) {
	t.Helper()
	all := sample{}
	for info, text := range example {
		all[info] = text
	}
	for info, text := range fix {
		all[info] = text
	}
	files := all.files(t)
	marked(t, files) // what was wrong may be fixed elsewhere, as a wrench is added to the shop
	if list := messages(t, write(t, files), Options{}); len(list) > 0 {
		t.Errorf("the fix gives messages:\n%s", shown(list))
	}
}

// TestPagesHaveTheirParts holds the form that page.go describes.
func TestPagesHaveTheirParts(t *testing.T) {
	for _, slug := range diag.Slugs() {
		page, _ := diag.PageOf(slug)
		headings, fenced := "", false
		for line := range strings.Lines(page.Text) {
			line = strings.TrimSuffix(line, "\n")
			if strings.HasPrefix(line, "~~~") {
				fenced = !fenced
			}
			if h, ok := strings.CutPrefix(line, "## "); ok && !fenced {
				headings += h + "; "
			}
			if most := 100; diag.Cells(line) > most {
				t.Errorf("%s: a line is wider than %d cells: %s", slug, most, line)
			}
		}
		if headings != "At the bench; Example; Fix; " || fenced {
			t.Errorf("%s has the headings %s", slug, headings)
		}
		if page.Summary == "" || strings.HasSuffix(page.Summary, ".") {
			t.Errorf("%s: the summary is a few words without a full stop", slug)
		}
	}
}

// TestListsOnPages compares the lists that two pages print with the tables
// that they are of.
func TestListsOnPages(t *testing.T) {
	rows := map[string][]string{}
	for _, id := range hazard.IDs() {
		h, _ := hazard.Find(id)
		rows["hazard-unknown"] = append(rows["hazard-unknown"], "| `"+h.ID+"` | "+h.Name+" | "+h.Signal.Word()+" |")
	}
	for _, s := range hazard.Symbols() {
		rows["symbol-unknown"] = append(rows["symbol-unknown"], "| `"+s.Code+"` | "+s.Meaning+" |")
	}
	for slug, want := range rows {
		page, _ := diag.PageOf(slug)
		var got []string
		for line := range strings.Lines(page.Text) {
			if strings.HasPrefix(line, "| `") {
				got = append(got, strings.Join(strings.Fields(line), " "))
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s lists\n%s\nwant\n%s", slug, strings.Join(got, "\n"), strings.Join(want, "\n"))
		}
	}
}
