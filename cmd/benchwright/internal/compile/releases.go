package compile

import (
	"slices"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/release"
	"benchwright/cmd/benchwright/internal/syntax"
)

// readReleases reads the records of what was released. It reports errors in
// those of the named procedures, and in those of cards that are not there.
func (lib *library) readReleases(msgs *diag.List) {
	var numbers []string
	named, all := map[string]bool{}, true
	for _, f := range lib.procedures {
		numbers = append(numbers, f.procedure.Number.Name)
		named[f.procedure.Number.Name] = f.Named
		all = all && f.Named
	}
	lib.releases = map[string]*release.Record{}
	for _, file := range lib.workspace.Releases {
		list := &diag.List{}
		t := syntax.ReadTree(file, list)
		if t == nil {
			msgs.Join(list)
			continue
		}
		validate("release", t, firstLine(file), list)
		r := release.Read(t, list)
		if list.Errors() == 0 {
			if !slices.Contains(numbers, r.Card) {
				list.Report("card-unknown", r.At, "take the record away once all its copies are off the benches", "no card is called `%s`", r.Card)
			}
			lib.releases[r.Card] = r
		}
		if all || named[r.Card] {
			msgs.Join(list)
		}
	}
}

// changedSinceRelease reports a card that says other than the release of its
// revision: laminates of both would hang under one revision.
func (lib *library) changedSinceRelease(p *procedure.Procedure, made []*Made, lists []*diag.List, msgs *diag.List) {
	released := lib.releases[p.Number.Name].Of(p.Revision)
	if released == nil || slices.ContainsFunc(lists, func(l *diag.List) bool { return l.Errors() > 0 }) || Release(made).Same(released) {
		return
	}
	at := p.Number.At
	if n := p.Doc.Front.Root.Get("revision"); n != nil {
		at = n.Place()
	}
	d := msgs.Report("release-changed", at, "raise the revision, or undo the change",
		"changed since release %s of %s", released.Revision, released.Date)
	d.Related = append(d.Related, diag.Related{At: released.At, Message: "it was released here"})
}

// Release returns the decks of a card as a release has them.
func Release(made []*Made) *release.Release {
	out := &release.Release{}
	for _, m := range made {
		if !m.Strip {
			out.Decks = append(out.Decks, release.Deck{Variants: m.Variants, Code: m.Code, Pages: m.Pages})
		}
	}
	return out
}
