package workspace

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"os/exec"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"benchwright/cmd/benchwright/internal/diag"
)

// LoadRevision reads the workspace around a folder or a procedure file of a git
// revision. It runs git in the folder dir and touches no work tree. Name is
// slash-separated and starts at the top of the repository, or at dir if it
// begins with "./"; "" is dir itself, or the one workspace below it. What a
// writer can fix is reported; an error is a revision or a path that cannot be
// read at all.
func LoadRevision(dir, revision, name string, msgs *diag.List) (*Workspace, error) {
	typed := revision
	if name != "" {
		typed += ":" + name
	}
	r, err := openRevision(dir, revision)
	if err != nil {
		return nil, err
	}
	target, err := r.target(typed, name)
	if err != nil {
		return nil, err
	}
	_, file := r.files[target]
	folder := target
	if file {
		folder = parent(target)
	}
	root, ok := r.rootOf(folder)
	l := loader{msgs: msgs}
	switch {
	case ok:
	case file && path.Ext(target) == ".md":
		w := &Workspace{Root: typed, Revision: true, Path: folder, files: r.filesBelow(folder)}
		l.standalone(w, path.Base(target))
		return w, nil
	default:
		inner := r.workspaces(folder)
		if name != "" || len(inner) != 1 {
			help := "name a revision that has one"
			if len(inner) > 0 {
				help = "name a workspace below it, as in `" + revision + ":" + inner[0] + "`"
			}
			return nil, fmt.Errorf("%s has no shop.yaml, nor has a folder above it: %s", typed, help)
		}
		root, target = inner[0], inner[0]
	}
	if err := r.refuseSubmodules(typed, root); err != nil {
		return nil, err
	}
	files := r.filesBelow(root)
	if err := files.fetch(); err != nil {
		return nil, err
	}
	w, err := l.load(typed, files)
	if err != nil {
		return nil, err
	}
	w.Revision, w.Path = true, root
	return w, markNamed(w, typed, strings.TrimPrefix(strings.TrimPrefix(target, root), "/"), !file)
}

// A revision is the list of the files of one commit.
type revision struct {
	dir    string // in which git is run
	prefix string // of dir, from the top of the repository; "" at the top
	files  map[string]object
}

// An object is one entry of a revision.
type object struct {
	mode fs.FileMode
	id   string
	size int64
}

const submodule = fs.ModeIrregular

// gitlink is git's mode of a submodule.
const gitlink = "160000"

// modeOf reads the mode of an entry as git writes it.
func modeOf(mode string) fs.FileMode {
	switch mode {
	case "120000":
		return fs.ModeSymlink
	case gitlink:
		return submodule
	}
	return 0
}

func openRevision(dir, name string) (*revision, error) {
	if name == "" || strings.HasPrefix(name, "-") {
		return nil, fmt.Errorf("`%s` is no revision: name a folder, a revision, or both as in `HEAD:procedures`", name)
	}
	prefix, err := git(dir, nil, "rev-parse", "--show-prefix")
	if err != nil {
		return nil, err
	}
	tree, err := git(dir, nil, "rev-parse", "--verify", "--quiet", name+"^{tree}")
	if err != nil {
		return nil, fmt.Errorf("`%s` is no file or folder here, and no revision of this repository: `git log` lists those that it has, a shallow clone only the last", name)
	}
	r := &revision{dir: dir, prefix: strings.TrimSuffix(strings.TrimSuffix(string(prefix), "\n"), "/"), files: map[string]object{}}
	list, err := git(dir, nil, "ls-tree", "-r", "-z", "-l", "--full-tree", strings.TrimSpace(string(tree)), "--")
	if err != nil {
		return nil, err
	}
	for line := range strings.SplitSeq(strings.TrimSuffix(string(list), "\x00"), "\x00") {
		facts, name, ok := strings.Cut(line, "\t")
		f := strings.Fields(facts)
		if !ok || len(f) != 4 {
			continue
		}
		o := object{id: f[2]}
		o.size, _ = strconv.ParseInt(f[3], 10, 64)
		o.mode = modeOf(f[0])
		r.files[name] = o
	}
	return r, nil
}

// git runs git in a folder and returns what it prints.
func git(dir string, in io.Reader, args ...string) ([]byte, error) {
	program, err := exec.LookPath("git")
	if err != nil {
		return nil, fmt.Errorf("git is not on this machine: install it, or name two folders")
	}
	cmd := exec.Command(program, args...)
	var complaint bytes.Buffer
	cmd.Dir, cmd.Stdin, cmd.Stderr = dir, in, &complaint
	out, err := cmd.Output()
	if err != nil {
		first, _, _ := strings.Cut(strings.TrimPrefix(complaint.String(), "fatal: "), "\n")
		return nil, fmt.Errorf("git cannot read %s: %s", filepath.ToSlash(dir), first)
	}
	return out, nil
}

// target returns the path of a name from the top of the repository.
func (r *revision) target(typed, name string) (string, error) {
	below, here := strings.CutPrefix(name, "./")
	target := path.Clean(name)
	if name == "" || name == "." || here {
		target = path.Join(r.prefix, below)
		if name == "." {
			target = r.prefix
		}
	}
	if target == "." {
		target = ""
	}
	if path.IsAbs(target) || target == ".." || strings.HasPrefix(target, "../") {
		return "", fmt.Errorf("%s leads out of the repository: a path in a revision begins at its top", typed)
	}
	for at := target; at != ""; at = parent(at) {
		switch r.files[at].mode {
		case fs.ModeSymlink:
			return "", fmt.Errorf("%s is a symbolic link, and links are not followed: name the folder itself", at)
		case submodule:
			return "", fmt.Errorf("%s is a submodule: its files are in a repository of their own, compare there", at)
		}
	}
	if _, file := r.files[target]; target != "" && !file && len(r.under(target)) == 0 {
		return "", fmt.Errorf("%s is not in that revision: `git ls-tree -r --name-only REVISION` lists what is", typed)
	}
	return target, nil
}

// parent returns the folder that a path stands in, "" for the top.
func parent(name string) string { return strings.Trim(path.Dir("/"+name), "/") }

// under returns the paths below a folder, sorted.
func (r *revision) under(folder string) []string {
	var out []string
	for name := range r.files {
		if folder == "" || strings.HasPrefix(name, folder+"/") {
			out = append(out, name)
		}
	}
	slices.Sort(out)
	return out
}

// rootOf returns the nearest folder upward that has a shop.yaml.
func (r *revision) rootOf(folder string) (root string, ok bool) {
	for {
		if _, ok := r.files[path.Join(folder, "shop.yaml")]; ok {
			return folder, true
		}
		if folder == "" {
			return "", false
		}
		folder = parent(folder)
	}
}

// workspaces returns the outermost folders with a shop.yaml in or below a folder.
// Hidden ones are skipped, as they are on disk.
func (r *revision) workspaces(folder string) []string {
	var out []string
	for _, name := range r.under(folder) {
		if at := parent(name); path.Base(name) == "shop.yaml" && !hidden(at) && !slices.ContainsFunc(out, func(w string) bool { return strings.HasPrefix(at, w+"/") }) {
			out = append(out, at)
		}
	}
	return out
}

// hidden reports whether a path has a file or folder that is skipped because of
// its name.
func hidden(name string) bool {
	return slices.ContainsFunc(strings.Split(name, "/"), func(part string) bool { return strings.HasPrefix(part, ".") || strings.HasPrefix(part, "_") })
}

// refuseSubmodules returns an error for a workspace with a submodule, whose
// procedures would be left out without a word.
func (r *revision) refuseSubmodules(typed, root string) error {
	for _, name := range r.under(root) {
		if r.files[name].mode == submodule && !hidden(name) {
			return fmt.Errorf("%s has a submodule, %s: its files are in a repository of their own, and cannot be compared with the rest", typed, name)
		}
	}
	return nil
}

// filesBelow returns the files below a folder.
func (r *revision) filesBelow(folder string) *revisionFiles {
	f := &revisionFiles{dir: r.dir, files: map[string]object{}, texts: map[string][]byte{}}
	for _, name := range r.under(folder) {
		f.files[strings.TrimPrefix(strings.TrimPrefix(name, folder), "/")] = r.files[name]
	}
	return f
}

// revisionFiles are the files of a revision below one folder.
type revisionFiles struct {
	dir   string
	files map[string]object
	texts map[string][]byte // what has been read, by object
}

// fetch reads the procedures and YAML files in one run of git.
func (f *revisionFiles) fetch() error {
	var ask bytes.Buffer
	for name, o := range f.files {
		if ext := path.Ext(name); o.mode == 0 && o.size <= MaxFile && (ext == ".md" || ext == ".yaml") {
			fmt.Fprintln(&ask, o.id)
		}
	}
	if ask.Len() == 0 {
		return nil
	}
	out, err := git(f.dir, &ask, "cat-file", "--batch")
	if err != nil {
		return err
	}
	in := bufio.NewReader(bytes.NewReader(out))
	for {
		head, err := in.ReadString('\n')
		if err != nil {
			return nil
		}
		facts := strings.Fields(head)
		if len(facts) != 3 {
			return fmt.Errorf("git has lost an object of this revision: `git fsck` says which")
		}
		size, err := strconv.Atoi(facts[2])
		text := make([]byte, size)
		if err == nil {
			_, err = io.ReadFull(in, text)
		}
		if err == nil {
			_, err = in.Discard(1)
		}
		if err != nil {
			return fmt.Errorf("git stopped before all files were read: %w", err)
		}
		f.texts[facts[0]] = text
	}
}

func (f *revisionFiles) has(name string) bool { _, ok := f.files[name]; return ok }

func (f *revisionFiles) list(dir string) ([]fs.DirEntry, error) {
	found := map[string]fs.FileMode{}
	for name, o := range f.files {
		if dir != "" {
			inner, ok := strings.CutPrefix(name, dir+"/")
			if !ok {
				continue
			}
			name = inner
		}
		if first, _, deeper := strings.Cut(name, "/"); deeper {
			found[first] = fs.ModeDir
		} else {
			found[first] = o.mode
		}
	}
	var out []fs.DirEntry
	for name, mode := range found {
		out = append(out, listed{name, mode})
	}
	slices.SortFunc(out, func(a, b fs.DirEntry) int { return strings.Compare(a.Name(), b.Name()) })
	return out, nil
}

func (f *revisionFiles) read(name string, limit int64) ([]byte, error) {
	if !filepath.IsLocal(filepath.FromSlash(name)) {
		return nil, &Outside{name}
	}
	for at := name; at != ""; at = parent(at) {
		if f.files[at].mode == fs.ModeSymlink {
			return nil, &Link{at}
		}
	}
	o, ok := f.files[name]
	switch {
	case !ok || o.mode != 0:
		return nil, fs.ErrNotExist
	case o.size > limit:
		return nil, &TooLarge{o.size, limit}
	}
	if text, ok := f.texts[o.id]; ok {
		return text, nil
	}
	return git(f.dir, nil, "cat-file", "blob", o.id)
}

// listed is an entry of a folder of a revision.
type listed struct {
	name string
	mode fs.FileMode
}

func (l listed) Name() string               { return l.name }
func (l listed) IsDir() bool                { return l.mode.IsDir() }
func (l listed) Type() fs.FileMode          { return l.mode }
func (l listed) Info() (fs.FileInfo, error) { return info{l}, nil }

type info struct{ listed }

func (i info) Size() int64        { return 0 }
func (i info) Mode() fs.FileMode  { return i.mode }
func (i info) ModTime() time.Time { return time.Time{} }
func (i info) Sys() any           { return nil }
