// Package workspace finds the files that belong together: the root with a
// shop.yaml, the units and procedures below it in a fixed order, and the ones
// named on the command line. It limits sizes, and does not interpret content.
package workspace

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

// Limits, in bytes and in files.
const (
	MaxFile       = 256 << 10
	MaxPicture    = 16 << 20
	MaxProcedures = 5000
)

// Releases is the folder of the records of what was released.
const Releases = "releases"

// A Workspace is the files below one root.
type Workspace struct {
	Root       string       // folder on disk, or what a revision's is called
	Revision   bool         // it was read from git, and not from disk
	Path       string       // its root from the top of the repository, for a revision
	Shop       *source.File // shop.yaml; nil if standalone or unreadable
	Standalone bool         // a procedure outside any workspace
	Units      []*source.File
	Procedures []*Entry
	Releases   []*source.File // records of what was released, releases/*.yaml
	files      files
}

// Read returns the file at the slash-separated name below the workspace's root,
// as the function Read does.
func (w *Workspace) Read(name string, limit int64) ([]byte, error) {
	if w.files == nil { // made without Load
		return Read(w.Root, name, limit)
	}
	return w.files.read(name, limit)
}

// Has reports whether a file is one that the workspace read.
func (w *Workspace) Has(f *source.File) bool {
	return f == w.Shop || slices.Contains(w.Units, f) || slices.Contains(w.Releases, f) || slices.ContainsFunc(w.Procedures, func(e *Entry) bool { return e.File == f })
}

// An Entry is a procedure file.
type Entry struct {
	File  *source.File
	Unit  *source.File // nearest unit.yaml in its folder or above, nil without one; not in Units if unreadable
	Named bool         // the command line names it or a folder above it
}

// Load finds and reads the workspaces of paths, which are folders or procedure
// files, absolute or relative to dir. It does not enter the folders in skip,
// such as an output folder. It reports what a writer can fix; the error is for
// a path that cannot be read at all.
func Load(dir string, paths, skip []string, msgs *diag.List) ([]*Workspace, error) {
	l := loader{msgs: msgs}
	for _, s := range skip {
		l.skip = append(l.skip, absolute(dir, s))
	}
	var out []*Workspace
	for _, p := range paths {
		target := absolute(dir, p)
		info, err := os.Stat(target)
		if err != nil {
			return nil, fmt.Errorf("%s cannot be read: %s", p, reason(err))
		}
		folder := target
		if !info.IsDir() {
			folder = filepath.Dir(target)
			if filepath.Ext(target) != ".md" && filepath.Base(target) != "shop.yaml" && filepath.Base(target) != "unit.yaml" {
				return nil, fmt.Errorf("%s is not a procedure: name a folder or a file that ends in .md", p)
			}
		}
		root := rootOf(folder)
		if root == "" {
			if info.IsDir() {
				return nil, noWorkspace(p, target)
			}
			w := &Workspace{Root: folder, files: disk(folder)}
			l.standalone(w, filepath.Base(target))
			out = append(out, w)
			continue
		}
		i := slices.IndexFunc(out, func(w *Workspace) bool { return w.Root == root })
		if i < 0 {
			w, err := l.load(root, disk(root))
			if err != nil {
				return nil, err
			}
			out = append(out, w)
			i = len(out) - 1
		}
		below := strings.TrimPrefix(strings.TrimPrefix(target, root), string(filepath.Separator))
		if err := markNamed(out[i], p, filepath.ToSlash(below), info.IsDir()); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// markNamed marks the entries that a folder or a file names, which p called and
// which stands at the slash-separated target below the workspace's root. A
// shop.yaml names every card, a unit.yaml those of its unit.
func markNamed(w *Workspace, p, target string, folder bool) error {
	n := 0
	for _, e := range w.Procedures {
		switch {
		case folder:
			if target != "" && !strings.HasPrefix(e.File.Name, target+"/") {
				continue
			}
		case path.Base(target) == "shop.yaml":
		case path.Base(target) == "unit.yaml":
			if e.Unit == nil || e.Unit.Name != target {
				continue
			}
		case e.File.Name != target:
			continue
		}
		e.Named = true
		n++
	}
	if n == 0 && !folder && path.Ext(target) == ".md" {
		return fmt.Errorf("%s is not a procedure of the workspace: README.md and names that begin with . or _ are left out", p)
	}
	return nil
}

// absolute returns p as an absolute path; relative ones are based on dir.
func absolute(dir, p string) string {
	if !filepath.IsAbs(p) {
		p = filepath.Join(dir, p)
	}
	return filepath.Clean(p)
}

// rootOf returns dir or the nearest folder above that has a shop.yaml, or ""
// if a folder with .git or the top comes first.
func rootOf(dir string) string {
	for {
		if exists(filepath.Join(dir, "shop.yaml")) {
			return dir
		}
		parent := filepath.Dir(dir)
		if parent == dir || exists(filepath.Join(dir, ".git")) {
			return ""
		}
		dir = parent
	}
}

func exists(path string) bool { _, err := os.Lstat(path); return err == nil }

// reason returns an I/O error without its path, which the message already has.
func reason(err error) string {
	var pe *fs.PathError
	if errors.As(err, &pe) {
		err = pe.Err
	}
	return err.Error()
}

// noWorkspace returns the error that no shop.yaml was found, and names one
// below target if there is one.
func noWorkspace(p, target string) error {
	if exists(filepath.Join(target, "shop.yml")) {
		return fmt.Errorf("%s has no shop.yaml: rename its shop.yml", p)
	}
	entries, _ := os.ReadDir(target)
	for _, e := range entries {
		if e.IsDir() && exists(filepath.Join(target, e.Name(), "shop.yaml")) {
			return fmt.Errorf("%s has no shop.yaml, nor has a folder above it: name the workspace below it, %s", p, filepath.ToSlash(filepath.Join(p, e.Name())))
		}
	}
	return fmt.Errorf("%s has no shop.yaml, nor has a folder above it: begin a workspace with `benchwright new DIR`, or name one procedure file", p)
}

type loader struct {
	skip []string
	msgs *diag.List
}

// standalone reads a procedure without a workspace.
func (l *loader) standalone(w *Workspace, name string) {
	w.Standalone = true
	if f := l.read(w, name); f != nil {
		w.Procedures = []*Entry{{File: f, Named: true}}
	}
}

// load reads the workspace at root.
func (l *loader) load(root string, files files) (*Workspace, error) {
	w := &Workspace{Root: root, files: files}
	w.Shop = l.read(w, "shop.yaml")
	if err := l.folder(w, "", nil); err != nil {
		return nil, err
	}
	if err := l.releases(w); err != nil {
		return nil, err
	}
	if n := len(w.Procedures); n > MaxProcedures {
		l.msgs.Report("too-large", place(source.NewFile("shop.yaml", nil)), "split the workspace: each shop.yaml begins one",
			"the workspace has %d procedures, more than the %d that one may have", n, MaxProcedures)
		w.Procedures = w.Procedures[:MaxProcedures]
	}
	slices.SortFunc(w.Units, func(a, b *source.File) int { return strings.Compare(a.Name, b.Name) })
	slices.SortFunc(w.Procedures, func(a, b *Entry) int { return strings.Compare(a.File.Name, b.File.Name) })
	return w, nil
}

// releases reads the records of what was released.
func (l *loader) releases(w *Workspace) error {
	entries, err := w.files.list(Releases)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("%s cannot be read: %s", filepath.Join(w.Root, Releases), reason(err))
	}
	for _, e := range entries {
		name := Releases + "/" + e.Name()
		if e.IsDir() || hidden(e.Name()) || path.Ext(name) != ".yaml" || !l.regular(name, e) {
			continue
		}
		if f := l.read(w, name); f != nil {
			w.Releases = append(w.Releases, f)
		}
	}
	return nil
}

// folder reads the folder at rel ("" for the root) and those below it.
func (l *loader) folder(w *Workspace, rel string, unit *source.File) error {
	entries, err := w.files.list(rel)
	if err != nil {
		return fmt.Errorf("%s cannot be read: %s", filepath.Join(w.Root, filepath.FromSlash(rel)), reason(err))
	}
	join := func(n string) string { return strings.TrimPrefix(rel+"/"+n, "/") }
	for _, e := range entries {
		if e.Name() == "unit.yml" && !w.files.has(join("unit.yaml")) {
			unit = source.NewFile(join("unit.yml"), nil) // reported below
		}
		if e.Name() != "unit.yaml" || e.IsDir() {
			continue
		}
		unit = source.NewFile(join("unit.yaml"), nil) // a placeholder until it is read
		if l.regular(unit.Name, e) {
			if f := l.read(w, unit.Name); f != nil {
				unit = f
				w.Units = append(w.Units, f)
			}
		}
	}
	for _, e := range entries {
		n := e.Name()
		if hidden(n) {
			continue
		}
		switch {
		case e.IsDir():
			below := filepath.Join(w.Root, filepath.FromSlash(join(n)))
			if slices.Contains(l.skip, below) || w.files.has(join(n)+"/shop.yaml") {
				continue
			}
			if err := l.folder(w, join(n), unit); err != nil {
				return err
			}
		case n == "unit.yml" || n == "shop.yml":
			right := strings.TrimSuffix(n, "yml") + "yaml"
			l.msgs.Report("file-name", place(source.NewFile(join(n), nil)), "rename it to "+right,
				"`%s` is not read: the file is called `%s`", n, right)
		case filepath.Ext(n) == ".md" && n != "README.md" && l.regular(join(n), e):
			if len(w.Procedures) > MaxProcedures {
				continue
			}
			if f := l.read(w, join(n)); f != nil {
				w.Procedures = append(w.Procedures, &Entry{File: f, Unit: unit})
			}
		}
	}
	return nil
}

// regular reports whether an entry is a regular file. It warns of a symbolic
// link with the name of a file to be read, which would otherwise be skipped
// silently.
func (l *loader) regular(name string, e fs.DirEntry) bool {
	if e.Type().IsRegular() {
		return true
	}
	if e.Type()&fs.ModeSymlink != 0 {
		l.msgs.Report("link-not-followed", place(source.NewFile(name, nil)), "put the file itself in the workspace",
			"`%s` is a symbolic link, and links are not followed", name)
	}
	return false
}

// read reads one file of a workspace, measured first. It returns nil for one that
// is too large or cannot be read, which is reported.
func (l *loader) read(w *Workspace, name string) *source.File {
	text, err := w.Read(name, MaxFile)
	if err != nil {
		at := place(source.NewFile(name, nil))
		var large *TooLarge
		var link *Link
		switch {
		case errors.As(err, &large):
			l.msgs.Report("too-large", at, "split it into shorter procedures", "`%s` has %s", name, large)
		case errors.As(err, &link):
			l.msgs.Report("link-not-followed", at, "put the file itself in the workspace", "`%s` is a symbolic link, and links are not followed", name)
		default:
			l.msgs.Report("file-unreadable", at, "see that the file is there and may be read", "`%s` cannot be read: %s", name, reason(err))
		}
		return nil
	}
	return source.NewFile(name, text)
}

func place(f *source.File) source.Place { return source.Place{File: f} }
