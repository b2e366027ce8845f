package cli

import (
	"cmp"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"benchwright/cmd/benchwright/internal/compare"
	"benchwright/cmd/benchwright/internal/compile"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/workspace"
)

func compareSides(c *call) int {
	format := c.flags.String("format", "text", "`text`, markdown for a review comment, json, sarif for a forge, or pdf for the notice board")
	file := c.flags.String("o", "", "with --format pdf: the `FILE` to write the change card to")
	failOn := c.flags.String("fail-on", "wording", "exit 1 for a change of this `CLASS` or a graver one: safety, method, wording")
	unless := c.flags.Bool("unless-revised", false, "of these, pass over the cards whose revision was raised")
	if code, ok := c.parse(); !ok {
		return code
	}
	if !slices.Contains([]string{"text", "markdown", "json", "sarif", "pdf"}, *format) {
		return fail(c.Streams, fmt.Errorf("`%s` is not a format: write --format text, markdown, json, sarif or pdf", *format))
	}
	if (*format == "pdf") != (*file != "") {
		return fail(c.Streams, fmt.Errorf("a change card goes into a file: write --format pdf with -o changes.pdf"))
	}
	if !slices.Contains(compare.Classes, compare.Class(*failOn)) {
		return fail(c.Streams, fmt.Errorf("`%s` is no class of change: write --fail-on safety, method or wording", *failOn))
	}
	if len(c.paths) != 2 {
		return fail(c.Streams, fmt.Errorf("name two sides, the old one first: `benchwright compare HEAD procedures`"))
	}
	var sides [2][]compare.Procedure
	var spaces [2]*workspace.Workspace
	var errs [2]error
	var wg sync.WaitGroup
	for i, side := range c.paths {
		wg.Go(func() { spaces[i], sides[i], errs[i] = c.side(side, c.paths[1-i]) })
	}
	wg.Wait()
	if err := cmp.Or(errs[0], errs[1]); err != nil {
		return fail(c.Streams, err)
	}
	report := compare.Sides(sides[0], sides[1])
	var err error
	switch *format {
	case "json":
		err = report.WriteJSON(c.Out)
	case "sarif":
		err = report.WriteSARIF(c.Out, c.below(spaces[1]), programVersion)
	case "markdown":
		err = report.WriteMarkdown(c.Out)
	case "pdf":
		err = c.changeCard(*file, report, spaces[1])
	default:
		err = report.WriteText(c.Out, c.Colored)
	}
	if err != nil {
		return fail(c.Streams, err)
	}
	if len(report.Unsure()) > 0 {
		return exitFault
	}
	class := compare.Class(*failOn)
	found := len(report.Unrevised(class)) > 0
	for _, other := range compare.Classes {
		found = found || !*unless && other.Reaches(class) && report.Count(other) > 0
	}
	if found {
		return exitFound
	}
	return exitOK
}

// changeCard writes a report as a card for the notice board and for signature, and
// says what it holds.
func (c *call) changeCard(file string, report *compare.Report, w *workspace.Workspace) error {
	text, pages, err := compile.ChangeCard(w, report)
	if err != nil {
		return err
	}
	at := c.absolute(file)
	if err := (&output{dir: filepath.Dir(at)}).replace(filepath.Base(at), text); err != nil {
		return err
	}
	_, err = fmt.Fprintf(c.Out, "%s: %s\n", file, count(pages, "page", "pages"))
	return err
}

// side reads one side: a folder or a file that is there, else a revision, with
// its folder after a colon. A revision alone is that of the folder or file of
// the other side.
func (c *call) side(side, other string) (*workspace.Workspace, []compare.Procedure, error) {
	msgs := &diag.List{}
	if c.onDisk(side) {
		spaces, err := workspace.Load(c.Dir, []string{side}, nil, msgs)
		if err != nil {
			return nil, nil, err
		}
		return spaces[0], compile.Resolve(spaces[0], msgs), nil
	}
	dir := c.Dir
	revision, name, named := strings.Cut(side, ":")
	switch {
	case named && name == "":
		return nil, nil, fmt.Errorf("no folder stands after the colon of `%s`: write `%s:procedures`, or the revision alone", side, revision)
	case !named && c.onDisk(other):
		// A folder may be the top of the repository: git is run in it.
		if dir, name = c.absolute(other), "./"; !isFolder(dir) {
			dir, name = filepath.Split(dir)
			name = "./" + name
		}
	}
	w, err := workspace.LoadRevision(dir, revision, name, msgs)
	if err != nil {
		return nil, nil, err
	}
	return w, compile.Resolve(w, msgs), nil
}

func isFolder(path string) bool { info, err := os.Stat(path); return err == nil && info.IsDir() }

// below returns what gives the path of a file of a workspace: from the working
// directory, or for a revision from the top of the repository.
func (c *call) below(w *workspace.Workspace) func(name string) string {
	return func(name string) string {
		at, err := filepath.Rel(c.Dir, filepath.Join(w.Root, filepath.FromSlash(name)))
		if w.Revision || err != nil {
			return path.Join(w.Path, name)
		}
		return filepath.ToSlash(at)
	}
}

// onDisk reports whether a side is a folder or a file that a workspace reads.
// Any other file does not count: a bare repository has one that is called HEAD.
func (c *call) onDisk(name string) bool {
	info, err := os.Stat(c.absolute(name))
	ext := filepath.Ext(name)
	return err == nil && (info.IsDir() || ext == ".md" || ext == ".yaml")
}
