package workspace

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strconv"
	"strings"

	"benchwright/cmd/benchwright/internal/diag"
)

// A Version is one version of a file, as git hands it to a diff driver.
type Version struct {
	Path string // from the top of the repository, slash-separated
	ID   string // of its object; zeros for a file of the work tree, "." for no file
	File string // where its text is, absolute or from the top of the repository
}

// none reports whether there is no such file on this side.
func (v Version) none() bool { return v.ID == "." }

// unstored reports whether git has no object of it, because it is in the work
// tree.
func (v Version) unstored() bool { return strings.Trim(v.ID, "0") == "" }

// object returns the version as git lists it: zeros for no file.
func (v Version) object(like string) string {
	if v.none() {
		return strings.Repeat("0", len(like))
	}
	return v.ID
}

// Versions loads the workspaces in which the two versions of a file stood, with
// every procedure named; nil for a side that has none there. Dir is the top of the
// repository, or the repository itself where it is bare.
//
// Git hands over two files and does not say which two states it compares, so they
// are looked for: the work tree with what is staged or committed, what is staged
// with what is committed, the commit that made the one version from the other, and
// last the commits that each version was last seen in. A version that is in none
// of them is read in the work tree, in the place of the file there.
func Versions(dir string, old, new Version, msgs *[2]diag.List) (sides [2]*Workspace, err error) {
	h := history{dir: dir, old: old, new: new}
	states, err := h.states()
	if err != nil {
		return sides, err
	}
	for i, v := range []Version{old, new} {
		if sides[i], err = h.load(states[i], v, &msgs[i]); err != nil {
			return sides, err
		}
		if w := sides[i]; w != nil {
			for _, e := range w.Procedures {
				e.Named = true
			}
		}
	}
	return sides, nil
}

// A history looks for the states of a repository that two versions of a file
// stood in.
type history struct {
	dir      string
	old, new Version
}

// The states beside the commits, which go by their ids.
const (
	nothing  = ""          // before the first commit
	workTree = "work tree" // the files on disk
	index    = "index"     // what is staged
	unknown  = "unknown"
)

// states returns the states that the old and the new version stood in.
func (h history) states() (out [2]string, err error) {
	head, staged := h.has("HEAD", h.old), h.has(index, h.old)
	switch {
	case h.new.unstored() || h.new.none() && !h.onDisk() && staged:
		switch {
		case staged:
			return [2]string{index, workTree}, nil
		case head:
			return [2]string{"HEAD", workTree}, nil
		}
	case head && h.has(index, h.new):
		return [2]string{"HEAD", index}, nil
	}
	// The commits that took the old version away, and those that brought the new
	// one, the latest first.
	text, err := git(h.dir, nil, "--literal-pathspecs", "-c", "core.quotePath=false", "-c", "log.showRoot=true", "-c", "log.follow=false", "log", "--all", "--no-renames", "--no-abbrev", "--raw", "--format=%x00%H %P", "--", h.old.Path, h.new.Path)
	if err != nil {
		text = nil // a repository without a commit
	}
	out = [2]string{unknown, unknown}
	if h.new.unstored() {
		out[1] = workTree
	}
	for commit := range strings.SplitSeq(string(text), "\x00") {
		lines := strings.Split(commit, "\n")
		ids := strings.Fields(lines[0])
		if len(ids) == 0 {
			continue
		}
		id, before := ids[0], nothing
		if len(ids) > 1 {
			before = ids[1]
		}
		took, brought := false, false
		for _, line := range lines[1:] {
			facts, name, ok := strings.Cut(line, "\t")
			f := strings.Fields(facts)
			if !ok || len(f) < 5 {
				continue
			}
			took = took || name == h.old.Path && f[2] == h.old.object(f[2])
			brought = brought || name == h.new.Path && f[3] == h.new.object(f[3])
		}
		if took && brought && !h.new.unstored() {
			return [2]string{before, id}, nil
		}
		if took && out[0] == unknown {
			out[0] = before
		}
		if brought && out[1] == unknown {
			out[1] = id
		}
	}
	if head && out[0] == unknown {
		out[0] = "HEAD"
	}
	if h.has("HEAD", h.new) {
		out[1] = "HEAD"
	}
	return out, nil
}

// has reports whether a commit, or what is staged, has a version of the file.
func (h history) has(state string, v Version) bool {
	object := state + ":" + v.Path
	if state == index {
		object = ":" + v.Path
	}
	id, err := git(h.dir, nil, "rev-parse", "--verify", "--quiet", object)
	if err != nil {
		return v.none()
	}
	return strings.TrimSpace(string(id)) == v.ID
}

// onDisk reports whether the new version's file is in the work tree.
func (h history) onDisk() bool { return exists(filepath.Join(h.dir, filepath.FromSlash(h.new.Path))) }

// load loads the workspace of a state that a version stands in; nil where there is
// none.
func (h history) load(state string, v Version, msgs *diag.List) (*Workspace, error) {
	l := loader{msgs: msgs}
	var r *revision
	var err error
	switch state {
	case nothing:
		return nil, nil
	case index:
		r, err = openIndex(h.dir)
	case workTree, unknown:
		return h.loadDisk(state, v, l)
	default:
		r, err = openRevision(h.dir, state)
	}
	if err != nil {
		return nil, err
	}
	root, ok := r.rootOf(parent(v.Path))
	if !ok {
		if _, there := r.files[v.Path]; !there || path.Ext(v.Path) != ".md" {
			return nil, nil
		}
		w := &Workspace{Path: parent(v.Path), files: r.filesBelow(parent(v.Path))}
		l.standalone(w, path.Base(v.Path))
		return w, nil
	}
	if err := r.refuseSubmodules(state, root); err != nil {
		return nil, err
	}
	below := r.filesBelow(root)
	if err := below.fetch(); err != nil {
		return nil, err
	}
	w, err := l.load(state, below)
	if w != nil {
		w.Path = root
	}
	return w, err
}

// loadDisk loads the workspace in the work tree, with the version in the place of
// the file where that is another.
func (h history) loadDisk(state string, v Version, l loader) (*Workspace, error) {
	at := filepath.Join(h.dir, filepath.FromSlash(v.Path))
	folder := filepath.Dir(at)
	root := rootOf(folder)
	if root == "" {
		if _, err := os.Stat(at); err != nil || filepath.Ext(at) != ".md" {
			return nil, nil
		}
		w := &Workspace{Root: folder, Path: parent(v.Path), files: disk(folder)}
		l.standalone(w, filepath.Base(at))
		return w, nil
	}
	var all files = disk(root)
	below, err := filepath.Rel(root, at)
	if err != nil {
		return nil, err
	}
	if state == unknown {
		if all, err = h.instead(disk(root), filepath.ToSlash(below), v); err != nil {
			return nil, err
		}
	}
	w, err := l.load(root, all)
	if w != nil {
		w.Path = strings.Trim(strings.TrimSuffix(v.Path, filepath.ToSlash(below)), "/")
	}
	return w, err
}

// instead is files with another text of one of them.
type instead struct {
	files
	name string
	text []byte
	gone bool
}

func (h history) instead(all files, name string, v Version) (files, error) {
	out := instead{files: all, name: name, gone: v.none()}
	if out.gone {
		return out, nil
	}
	file := v.File
	if !filepath.IsAbs(file) {
		file = filepath.Join(h.dir, file)
	}
	text, err := os.ReadFile(file)
	if err != nil {
		return nil, fmt.Errorf("%s cannot be read: %s", v.Path, reason(err))
	}
	out.text = text
	return out, nil
}

func (i instead) has(name string) bool {
	if name == i.name {
		return !i.gone
	}
	return i.files.has(name)
}

func (i instead) list(dir string) ([]fs.DirEntry, error) {
	entries, err := i.files.list(dir)
	if dir != strings.TrimSuffix(parent(i.name), "/") || err != nil {
		return entries, err
	}
	var out []fs.DirEntry
	for _, e := range entries {
		if e.Name() != path.Base(i.name) {
			out = append(out, e)
		}
	}
	if !i.gone {
		out = append(out, listed{path.Base(i.name), 0})
	}
	return out, nil
}

func (i instead) read(name string, limit int64) ([]byte, error) {
	switch {
	case name != i.name:
		return i.files.read(name, limit)
	case i.gone:
		return nil, fs.ErrNotExist
	case int64(len(i.text)) > limit:
		return nil, &TooLarge{int64(len(i.text)), limit}
	}
	return i.text, nil
}

// Lines returns how two versions of a file differ, line by line, as git writes it.
func Lines(dir string, old, new Version, color bool) (string, error) {
	args := []string{"diff", "--no-index", "--no-ext-diff", "--no-color"}
	if color {
		args[3] = "--color"
	}
	cmd := exec.Command("git", append(args, "--", old.File, new.File)...)
	cmd.Dir = dir
	out, err := cmd.Output()
	var exit *exec.ExitError
	if err != nil && !(errors.As(err, &exit) && exit.ExitCode() == 1) { // 1 says that they differ
		return "", fmt.Errorf("git cannot compare %s: %w", new.Path, err)
	}
	names := [2]string{"a/" + old.Path, "b/" + new.Path}
	for i, v := range []Version{old, new} {
		if v.none() {
			names[i] = "/dev/null"
		}
	}
	text := fmt.Sprintf("diff --git a/%s b/%s\n--- %s\n+++ %s\n", old.Path, new.Path, names[0], names[1])
	if at := bytes.Index(out, []byte("@@")); at >= 0 {
		at = bytes.LastIndexByte(out[:at], '\n') + 1
		return text + string(out[at:]), nil
	}
	return text, nil
}

// openIndex lists what is staged.
func openIndex(dir string) (*revision, error) {
	list, err := git(dir, nil, "ls-files", "--stage", "-z", "--full-name")
	if err != nil {
		return nil, err
	}
	r := &revision{dir: dir, files: map[string]object{}}
	var ask bytes.Buffer
	for line := range strings.SplitSeq(strings.TrimSuffix(string(list), "\x00"), "\x00") {
		facts, name, ok := strings.Cut(line, "\t")
		f := strings.Fields(facts)
		if !ok || len(f) != 3 {
			continue
		}
		r.files[name] = object{mode: modeOf(f[0]), id: f[1]}
		if f[0] != gitlink {
			fmt.Fprintln(&ask, f[1])
		}
	}
	sizes, err := git(dir, &ask, "cat-file", "--batch-check=%(objectname) %(objectsize)")
	if err != nil {
		return nil, err
	}
	size := map[string]int64{}
	for line := range strings.Lines(string(sizes)) {
		if id, n, ok := strings.Cut(strings.TrimSpace(line), " "); ok {
			size[id], _ = strconv.ParseInt(n, 10, 64)
		}
	}
	for name, o := range r.files {
		o.size = size[o.id]
		r.files[name] = o
	}
	return r, nil
}
