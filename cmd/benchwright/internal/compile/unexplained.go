package compile

import (
	"slices"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/render"
)

// wide says whether the finding is of something wider than its room.
func (x finding) wide() bool {
	return x.Kind == render.WordTooWide || x.Kind == render.TableTooWide || x.Kind == render.FigureTooWide
}

// unexplained returns the messages about a layout that nothing before explains:
// what has an error is not judged by its size too, which may come from that
// error. Said is what was said of the card before.
func (lib *library) unexplained(f *procedureFile, said *diag.List, found []finding) *diag.List {
	// The running head takes its height from every face: all steps are wrong
	// with it, as they are with a unit or a shop that has errors.
	all := lib.shopErrors > 0 || f.nearest != nil && f.nearest.errors > 0
	some, wrong := all, map[int]bool{}
	for _, l := range []*diag.List{said, f.refused} {
		for _, d := range l.Sorted() {
			if d.Severity() == diag.Error {
				n := stepAt(f.procedure, d.At)
				some, wrong[n] = true, true
				all = all || n == 0
			}
		}
	}
	// One word that is too wide makes tables of it too wide, and their steps too
	// tall.
	word := slices.ContainsFunc(found, func(x finding) bool { return x.Kind == render.WordTooWide && x.written })
	wide := map[int]bool{}
	for _, x := range found {
		if x.wide() {
			wide[stepAt(f.procedure, x.at)] = true
		}
	}
	out, explained := &diag.List{}, &diag.List{}
	for _, x := range found {
		n, tall := stepAt(f.procedure, x.at), x.Kind == render.TooTall || x.Kind == render.Loose
		switch {
		case !tall && !x.wide():
			out.Join(x.msgs)
		case n > 0 && (all || wrong[n] || some && x.Kind == render.Loose), n <= 0 && some, // the running head and the record strip are of all steps
			word && !x.written, tall && n >= 0 && wide[n]:
			explained.Join(x.msgs)
		default:
			out.Join(x.msgs)
		}
	}
	explained.Keep(func(diag.Diagnostic) bool { return false }) // it counts as reported all the same
	out.Join(explained)
	return out
}

// stepAt returns which step of a procedure stands at a place, counted from one:
// 0 before the first, −1 in another file.
func stepAt(p *procedure.Procedure, at source.Place) int {
	if at.File != p.File {
		return -1
	}
	n := 0
	for _, st := range p.Stages {
		for _, s := range st.Steps {
			if s.Span.Start <= at.Span.Start {
				n++
			}
		}
	}
	return n
}
