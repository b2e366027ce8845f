package check

import (
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/source"
)

// uniqueSteps refuses two headings of a procedure with the same id.
func uniqueSteps(p *procedure.Procedure, msgs *diag.List) {
	first := map[string]source.Place{}
	see := func(id string, span source.Span) {
		if id == "" {
			return
		}
		at := p.File.At(span.Start, span.End)
		if before, twice := first[strings.ToLower(id)]; twice {
			d := msgs.Report("step-id-twice", at, "give each step its own id", "two headings have the id `%s`", id)
			d.Related = append(d.Related, related(before, "the other one"))
			return
		}
		first[strings.ToLower(id)] = at
	}
	for _, st := range p.Stages {
		see(st.ID, st.IDSpan)
		for _, s := range st.Steps {
			see(s.ID, s.IDSpan)
		}
	}
}

// hasSteps refuses a card without steps.
func hasSteps(p *procedure.Procedure, cards []*card.Card, msgs *diag.List) {
	if p.Doc.Front.Broken {
		return // where the front matter ends and the steps begin is not known
	}
	for _, c := range cards {
		if len(c.Steps()) > 0 {
			return
		}
	}
	at := p.Title.At
	if at.File == nil {
		at = p.File.At(0, 0)
	}
	msgs.Report("steps-missing", at, "open a stage with `## ` and a step with `### `", "this procedure has no steps")
}

// order refuses cards that wait for each other.
func order(p *procedure.Procedure, lib *card.Library, msgs *diag.List) {
	for _, n := range p.After {
		if path := path(lib, n.Name, p.Number.Name, map[string]bool{}); path != nil {
			msgs.Report("after-cycle", n.At, "take one `after:` of the circle out", "the cards wait for each other: %s", strings.Join(append([]string{p.Number.Name}, path...), " after "))
			return
		}
	}
}

// path returns the card numbers from one card to goal along after:, nil
// without such a path.
func path(lib *card.Library, from, goal string, seen map[string]bool) []string {
	if from == goal {
		return []string{goal}
	}
	if seen[from] {
		return nil
	}
	seen[from] = true
	p := lib.ByNumber(from)
	if p == nil {
		return nil
	}
	for _, n := range p.After {
		if path := path(lib, n.Name, goal, seen); path != nil {
			return append([]string{from}, path...)
		}
	}
	return nil
}
