package cli

import (
	"fmt"
	"os"
	"path"
	"strings"

	"benchwright/cmd/benchwright/internal/compare"
	"benchwright/cmd/benchwright/internal/compile"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/workspace"
)

// gitLines are what git is told once, so that its own commands speak of cards.
const gitLines = `In .gitattributes at the top of the repository:

*.md       diff=benchwright
shop.yaml  diff=benchwright
unit.yaml  diff=benchwright

Once on each machine:

git config diff.benchwright.command "benchwright git"

Then ` + "`git diff`" + ` says what changed on the cards, and so do ` + "`git log -p --ext-diff`" + ` and
` + "`git show --ext-diff`" + `. ` + "`git diff --no-ext-diff`" + ` shows the lines.
`

// gitDiff is git's external diff driver for procedures, shop.yaml and unit.yaml.
// Git gives it a path, and of the old and the new version a file, the id of its
// object and its mode; where the file was renamed also the new path and how. With
// nothing it prints what git is to be told.
//
// Git ends the whole diff for a driver that fails, so what cannot be compared is
// shown line by line.
func gitDiff(c *call) int {
	if len(c.rest) == 0 || strings.HasPrefix(c.rest[0], "-") {
		if code, ok := c.parse(); !ok {
			return code
		}
	}
	args := c.rest
	switch len(args) {
	case 0:
		fmt.Fprint(c.Out, gitLines)
		return exitOK
	case 1:
		fmt.Fprintf(c.Out, "%s is not merged yet\n", args[0])
		return exitOK
	case 7, 9:
	default:
		return fail(c.Streams, fmt.Errorf("git calls this with a path, two files, their ids and modes: `benchwright git` alone prints what to tell git"))
	}
	old := workspace.Version{Path: args[0], File: args[1], ID: args[2]}
	new := workspace.Version{Path: args[0], File: args[4], ID: args[5]}
	if len(args) == 9 {
		new.Path = args[7]
	}
	_, plain := os.LookupEnv("NO_COLOR")
	color := c.Colored || os.Getenv("GIT_PAGER_IN_USE") == "true" && !plain
	report, err := c.versions(old, new)
	if err != nil {
		fmt.Fprintf(c.Out, "%s: %s; line by line:\n", program, err)
	}
	if report == nil {
		text, err := workspace.Lines(c.Dir, old, new, color)
		if err != nil {
			return fail(c.Streams, err)
		}
		fmt.Fprint(c.Out, text)
		return exitOK
	}
	name := new.Path
	switch {
	case old.Path != new.Path:
		name = old.Path + " → " + new.Path
	case old.ID == ".":
		name += ", new"
	case new.ID == ".":
		name += ", deleted"
	}
	if color {
		name = "\x1b[1m" + name + "\x1b[0m"
	}
	fmt.Fprintf(c.Out, "%s\n\n", name)
	if err := report.WriteText(c.Out, color); err != nil {
		return fail(c.Streams, err)
	}
	fmt.Fprintln(c.Out)
	return exitOK
}

// versions compares the workspaces of two versions of a file, and returns what
// changed by this file; nil for a file that no card is made from.
func (c *call) versions(old, new workspace.Version) (*compare.Report, error) {
	var msgs [2]diag.List
	spaces, err := workspace.Versions(c.Dir, old, new, &msgs)
	if err != nil {
		return nil, err
	}
	var sides [2][]compare.Procedure
	var names []string
	for i, v := range []workspace.Version{old, new} {
		w := spaces[i]
		if w == nil {
			continue
		}
		name := strings.TrimPrefix(strings.TrimPrefix(v.Path, w.Path), "/")
		sides[i] = compile.Resolve(w, &msgs[i])
		card := path.Base(name) == "shop.yaml" || path.Base(name) == "unit.yaml"
		for _, e := range w.Procedures {
			card = card || e.File.Name == name
		}
		if card {
			names = append(names, name)
		}
	}
	if len(names) == 0 {
		return nil, nil
	}
	return compare.Sides(sides[0], sides[1]).Of(names...), nil
}
