package compile

import (
	"slices"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/render"
)

// wide reports whether the finding is about something wider than its space.
func (x finding) wide() bool {
	return x.Kind == render.WordTooWide || x.Kind == render.TableTooWide || x.Kind == render.FigureTooWide
}

// unexplained returns the layout messages that earlier errors do not explain:
// an element with an error is not also judged by its size, which may result
// from it. Said holds the earlier messages about the card.
func (lib *library) unexplained(f *procedureFile, said *diag.List, found []finding) *diag.List {
	// The running head takes height from every face, so an error in it, or in
	// the unit or shop, may explain the problems of all steps.
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
	// A word that is too wide makes its tables too wide and its steps too
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
		case n > 0 && (all || wrong[n] || some && x.Kind == render.Loose), n <= 0 && some, // the running head and the record strip belong to all steps
			word && !x.written, tall && n >= 0 && wide[n]:
			explained.Join(x.msgs)
		default:
			out.Join(x.msgs)
		}
	}
	explained.Keep(func(diag.Diagnostic) bool { return false }) // it still counts as reported
	out.Join(explained)
	return out
}

// stepAt returns the number of the step at a place, from 1; 0 before the
// first, −1 in another file.
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
