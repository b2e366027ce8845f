package compile

import (
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/source"
)

// accept removes the warnings that the front matter accepts. An entry that
// matches no warning, or matches an error, is reported.
func accept(p *procedure.Procedure, msgs *diag.List) {
	for _, a := range p.Accept {
		page, known := diag.PageOf(a.Slug.Name)
		switch {
		case !known:
			d := msgs.Report("accept-unused", a.Slug.At, "take the entry out", "no message is called `%s`", a.Slug.Name)
			if near := diag.Nearest(a.Slug.Name, diag.Slugs()); near != "" {
				d.Fix, d.Edit = "write `"+near+"`", &diag.Edit{At: a.Slug.At, Text: near}
			}
			continue
		case page.Severity == diag.Error:
			msgs.Report("accept-error", a.Slug.At, "fix it instead", "`%s` is an error, and errors are never accepted", a.Slug.Name)
			continue
		case a.Because == "":
			continue // the schema reports it: an accepted warning needs a reason
		}
		span, ok := stepSpan(p, a.Step.Name)
		if !ok {
			msgs.Report("step-unknown", a.Step.At, "name a step by its {#id}, or leave `at:` out for the whole card", "no step is called `%s`", a.Step.Name).Basis = diag.OnProcedure
			continue
		}
		n := msgs.Len()
		msgs.Keep(func(d diag.Diagnostic) bool {
			return d.Slug != a.Slug.Name || d.At.File != p.File || d.At.Span.Start < span.Start || d.At.Span.Start >= span.End
		})
		if msgs.Len() == n {
			msgs.Report("accept-unused", a.Slug.At, "take the entry out", "nothing here gives the warning `%s` any more", a.Slug.Name).Basis = diag.OnProcedure | diag.OnUnit | diag.OnShop
		}
	}
}

// stepSpan returns the span of the step with an id, that of the whole file for
// "".
func stepSpan(p *procedure.Procedure, id string) (source.Span, bool) {
	whole := source.Span{Start: 0, End: len(p.File.Text) + 1}
	if id == "" {
		return whole, true
	}
	var out source.Span
	found := false
	for _, st := range p.Stages {
		if found && out.End == whole.End {
			out.End = st.Span.Start
		}
		for _, s := range st.Steps {
			if found && out.End == whole.End {
				out.End = s.Span.Start
			}
			if s.ID == id {
				found, out = true, source.Span{Start: s.Span.Start, End: whole.End}
			}
		}
	}
	return out, found
}
