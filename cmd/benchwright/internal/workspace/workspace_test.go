package workspace

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
)

// lay writes files into a new folder that a .git closes above. A name that
// ends in / is a folder, a text that begins with -> a symbolic link.
func lay(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, ".git"), 0o777); err != nil {
		t.Fatal(err)
	}
	for name, text := range files {
		path := filepath.Join(dir, filepath.FromSlash(name))
		if strings.HasSuffix(name, "/") {
			if err := os.MkdirAll(path, 0o777); err != nil {
				t.Fatal(err)
			}
			continue
		}
		if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
			t.Fatal(err)
		}
		if to, ok := strings.CutPrefix(text, "->"); ok {
			if err := os.Symlink(to, path); err != nil {
				t.Skip("this system makes no symbolic links: ", err)
			}
			continue
		}
		if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// shown writes workspaces as "root: file(unit)* …", named entries with a star,
// and messages as "slug file".
func shown(dir string, spaces []*Workspace, msgs *diag.List) string {
	var out []string
	for _, w := range spaces {
		root, _ := filepath.Rel(dir, w.Root)
		s := filepath.ToSlash(root) + ":"
		if w.Standalone {
			s = "alone " + s
		}
		for _, e := range w.Procedures {
			s += " " + e.File.Name
			if e.Unit != nil {
				s += "(" + e.Unit.Name + ")"
			}
			if e.Named {
				s += "*"
			}
		}
		out = append(out, s)
	}
	for _, d := range msgs.Sorted() {
		out = append(out, d.Slug+" "+d.At.File.Name)
	}
	return strings.Join(out, "; ")
}

func TestLoad(t *testing.T) {
	for _, c := range []struct {
		name  string
		files string // blank-separated
		paths string
		skip  string
		want  string
	}{
		{"a workspace", "shop.yaml u/unit.yaml u/b.md u/a.md", ".", "", ".: u/a.md(u/unit.yaml)* u/b.md(u/unit.yaml)*"},
		{"from below", "shop.yaml u/unit.yaml u/a.md v/b.md", "u", "", ".: u/a.md(u/unit.yaml)* v/b.md"},
		{"one file", "shop.yaml u/a.md u/b.md", "u/b.md", "", ".: u/a.md u/b.md*"},
		{"two files of one root", "shop.yaml u/a.md u/b.md v/c.md", "u/b.md v/c.md", "", ".: u/a.md u/b.md* v/c.md*"},
		{"two roots", "x/shop.yaml x/a.md y/shop.yaml y/b.md", "x y/b.md", "", "x: a.md*; y: b.md*"},
		{"its shop.yaml names all", "shop.yaml a.md u/b.md", "shop.yaml", "", ".: a.md* u/b.md*"},
		{"its unit.yaml names its cards", "shop.yaml a.md u/unit.yaml u/b.md u/v/c.md", "u/unit.yaml", "", ".: a.md u/b.md(u/unit.yaml)* u/v/c.md(u/unit.yaml)*"},
		{"a folder's name is no prefix", "shop.yaml u/a.md uu/b.md", "u", "", ".: u/a.md* uu/b.md"},
		{"the nearest unit", "shop.yaml unit.yaml a.md u/unit.yaml u/b.md u/v/c.md w/d.md", ".", "",
			".: a.md(unit.yaml)* u/b.md(u/unit.yaml)* u/v/c.md(u/unit.yaml)* w/d.md(unit.yaml)*"},
		{"what is left out", "shop.yaml README.md u/README.md _draft.md .hidden.md _old/a.md .git/b.md .x/c.md d.txt e.MD f.md", ".", "", ".: f.md*"},
		{"readme is a procedure's name", "shop.yaml readme.md", ".", "", ".: readme.md*"},
		{"a nested workspace", "shop.yaml a.md n/shop.yaml n/b.md n/m/c.md", ".", "", ".: a.md*"},
		{"in a nested workspace", "shop.yaml a.md n/shop.yaml n/b.md", "n/b.md", "", "n: b.md*"},
		{"the output folder", "shop.yaml a.md out/b.md u/out/c.md", ".", "out", ".: a.md* u/out/c.md*"},
		{"unit.yml", "shop.yaml u/unit.yml u/a.md", ".", "", ".: u/a.md(u/unit.yml)*; file-name u/unit.yml"},
		{"shop.yml", "shop.yaml u/shop.yml u/a.md", ".", "", ".: u/a.md*; file-name u/shop.yml"},
		{"unit.yml that is left out", "shop.yaml _u/unit.yml a.md", ".", "", ".: a.md*"},
		{"alone", "a.md b.md", "b.md", "", "alone .: b.md*"},
		{"alone by two", "a.md b.md", "a.md b.md", "", "alone .: a.md*; alone .: b.md*"},
		{"alone in a folder that .git closes", "shop.yaml a/.git/ a/b.md", "a/b.md", "", "alone a: b.md*"},
		{".git beside shop.yaml", "x/shop.yaml x/.git/ x/u/a.md", "x/u/a.md", "", "x: u/a.md*"},
		{"no procedures", "shop.yaml", ".", "", ".:"},
	} {
		t.Run(c.name, func(t *testing.T) {
			files := map[string]string{}
			for f := range strings.FieldsSeq(c.files) {
				files[f] = "text of " + f
			}
			dir := lay(t, files)
			msgs := &diag.List{}
			spaces, err := Load(dir, strings.Fields(c.paths), strings.Fields(c.skip), msgs)
			if err != nil {
				t.Fatal(err)
			}
			if got := shown(dir, spaces, msgs); got != c.want {
				t.Errorf("\n%s, want\n%s", got, c.want)
			}
			for _, w := range spaces {
				for _, e := range w.Procedures {
					name, _ := filepath.Rel(dir, filepath.Join(w.Root, e.File.Name))
					if string(e.File.Text) != "text of "+filepath.ToSlash(name) {
						t.Errorf("%s holds %q", name, e.File.Text)
					}
				}
			}
		})
	}
}

// A path that cannot be a workspace's is an error that says what to do.
func TestLoadRefuses(t *testing.T) {
	dir := lay(t, map[string]string{"w/shop.yaml": "", "w/README.md": "", "w/_a.md": "", "w/b.txt": "", "c.md": "", "x/y/shop.yaml": ""})
	for _, c := range []struct{ path, want string }{
		{"nowhere", "nowhere cannot be read: "},
		{"w/b.txt", "w/b.txt is not a procedure: name a folder or a file that ends in .md"},
		{"w/README.md", "w/README.md is not a procedure of the workspace: "},
		{"w/_a.md", "w/_a.md is not a procedure of the workspace: "},
		{".", ". has no shop.yaml, nor has a folder above it: name the workspace below it, w"},
		{"x", "x has no shop.yaml, nor has a folder above it: name the workspace below it, x/y"},
		{"x/../x", "x/../x has no shop.yaml"},
	} {
		msgs := &diag.List{}
		if _, err := Load(dir, []string{c.path}, nil, msgs); err == nil || !strings.HasPrefix(err.Error(), c.want) || strings.Contains(err.Error(), dir) {
			t.Errorf("%s: %v, want %s…", c.path, err, c.want)
		}
	}
}

// Links are not followed, wherever they lead; each that has the name of a file
// of ours is one message.
func TestLinks(t *testing.T) {
	outside := t.TempDir()
	for _, n := range []string{"a.md", "unit.yaml"} {
		if err := os.WriteFile(filepath.Join(outside, n), []byte("secret"), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	dir := lay(t, map[string]string{"shop.yaml": "", "a.md": "", "b.md": "->" + outside + "/a.md", "c.md": "->a.md",
		"folder": "->" + outside, "u/unit.yaml": "->" + outside + "/unit.yaml", "u/d.md": "", "e.txt": "->a.md"})
	msgs := &diag.List{}
	spaces, err := Load(dir, []string{"."}, nil, msgs)
	if err != nil {
		t.Fatal(err)
	}
	want := ".: a.md* u/d.md(u/unit.yaml)*; link-not-followed b.md; link-not-followed c.md; link-not-followed u/unit.yaml"
	if got := shown(dir, spaces, msgs); got != want || len(spaces[0].Units) != 0 {
		t.Errorf("\n%s, want\n%s", got, want)
	}
	if e := spaces[0].Procedures[1]; len(e.Unit.Text) > 0 {
		t.Error("a link was followed")
	}
}

// A file above its cap is measured, not read, and is one message.
func TestCaps(t *testing.T) {
	full := strings.Repeat("a", MaxFile)
	dir := lay(t, map[string]string{"shop.yaml": "", "a.md": full, "b.md": full + "a"})
	huge, err := os.Create(filepath.Join(dir, "c.md"))
	if err != nil {
		t.Fatal(err)
	}
	if err := huge.Truncate(100 << 20); err != nil {
		t.Fatal(err)
	}
	huge.Close()
	msgs := &diag.List{}
	var spaces []*Workspace
	allocated := testing.AllocsPerRun(1, func() {
		msgs = &diag.List{}
		spaces, err = Load(dir, []string{"."}, nil, msgs)
	})
	if err != nil {
		t.Fatal(err)
	}
	if got, want := shown(dir, spaces, msgs), ".: a.md*; too-large b.md; too-large c.md"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	if allocated > 10_000 {
		t.Errorf("%.0f allocations", allocated)
	}
	if m := msgs.Sorted()[1].Message; m != "`c.md` has 100 MB, more than the 256 KB that may be read" {
		t.Error(m)
	}
}

func TestTooManyProcedures(t *testing.T) {
	dir := lay(t, map[string]string{"shop.yaml": ""})
	for i := range MaxProcedures + 1 {
		if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("p%d.md", i)), nil, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	msgs := &diag.List{}
	spaces, err := Load(dir, []string{"."}, nil, msgs)
	if err != nil {
		t.Fatal(err)
	}
	if n := len(spaces[0].Procedures); n != MaxProcedures || msgs.Len() != 1 || msgs.Sorted()[0].Slug != "too-large" {
		t.Errorf("%d procedures, %d messages", n, msgs.Len())
	}
}

// A file that may not be read is one message, and its neighbors are read.
func TestUnreadable(t *testing.T) {
	dir := lay(t, map[string]string{"shop.yaml/": "", "a.md": ""})
	msgs := &diag.List{}
	spaces, err := Load(dir, []string{"."}, nil, msgs)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := shown(dir, spaces, msgs), ".: a.md*; file-unreadable shop.yaml"; got != want || spaces[0].Shop != nil {
		t.Errorf("%s, want %s", got, want)
	}
}

// Read never leaves the root.
func TestRead(t *testing.T) {
	dir := lay(t, map[string]string{"w/a.txt": "four", "secret": "s", "w/out": "->../secret", "w/in": "->a.txt", "w/up": "->..", "w/b/c.txt": "c"})
	root := filepath.Join(dir, "w")
	for _, c := range []struct {
		name  string
		limit int64
		want  string
		as    any
	}{
		{"a.txt", 4, "four", nil},
		{"b/c.txt", 4, "c", nil},
		{"a.txt", 3, "", new(*TooLarge)},
		{"../secret", 9, "", new(*Outside)},
		{"b/../../secret", 9, "", new(*Outside)},
		{"/etc/hostname", 9, "", new(*Outside)},
		{"", 9, "", new(*Outside)},
		{"out", 9, "", new(*Link)},
		{"in", 9, "", new(*Link)},
		{"up/secret", 9, "", new(*Link)},
		{"b", 9, "", nil},
		{"none", 9, "", nil},
	} {
		got, err := Read(root, c.name, c.limit)
		if string(got) != c.want || (err == nil) != (c.want != "") || c.as != nil && !errors.As(err, c.as) {
			t.Errorf("%q: %q, %v", c.name, got, err)
		}
	}
}

func TestResolve(t *testing.T) {
	for _, c := range []struct{ from, path, want string }{
		{"u/a.md", "figures/x.png", "u/figures/x.png"},
		{"u/a.md", "./x.png", "u/x.png"},
		{"u/a.md", "../x.png", "x.png"},
		{"a.md", "x.png", "x.png"},
		{"u/v/a.md", "../../b.md", "b.md"},
		{"u/a.md", "../../x.png", ""},
		{"a.md", "../x.png", ""},
		{"u/a.md", "/etc/x.png", ""},
		{"u/a.md", `..\x.png`, ""},
		{"u/a.md", "C:/x.png", ""},
		{"u/a.md", "http://example.org/x.png", ""},
	} {
		got, err := Resolve(c.from, c.path)
		var outside *Outside
		if got != c.want || (err == nil) != (c.want != "") || err != nil && !errors.As(err, &outside) {
			t.Errorf("%s from %s: %q, %v, want %q", c.path, c.from, got, err, c.want)
		}
	}
}

// The order of files does not depend on the order in which a folder gives them.
func TestOrder(t *testing.T) {
	files := map[string]string{"shop.yaml": ""}
	for _, n := range []string{"b/z.md", "a/y.md", "B/x.md", "c.md", "a.md", "a-b/w.md", "b/unit.yaml", "a/unit.yaml"} {
		files[n] = ""
	}
	dir := lay(t, files)
	spaces, err := Load(dir, []string{"."}, nil, &diag.List{})
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range spaces[0].Procedures {
		names = append(names, e.File.Name)
	}
	if !slices.IsSorted(names) || len(names) != 6 || spaces[0].Units[0].Name != "a/unit.yaml" {
		t.Errorf("%q", names)
	}
}
