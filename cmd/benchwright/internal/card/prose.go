package card

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/workspace"
)

func (p *Prose) Readings() []*Measurement { return nil }
func (p *Prose) causes() []Cause          { return nil }
func (p *Prose) complete(*Card) bool      { return true }

func (p *Picture) Readings() []*Measurement { return nil }
func (p *Picture) causes() []Cause          { return nil }
func (p *Picture) complete(*Card) bool      { return p.Data != nil }

func (r *resolver) prose(p *procedure.Prose) Item {
	switch c := p.Content.(type) {
	case *syntax.Picture:
		return r.picture(p, c)
	case *syntax.Paragraph:
		return &Prose{p, &syntax.Paragraph{Runs: r.runs(c.Runs), Span: c.Span}}
	case *syntax.Note:
		return &Prose{p, &syntax.Note{Kind: c.Kind, Runs: r.runs(c.Runs), Span: c.Span}}
	case *syntax.List:
		return &Prose{p, r.list(c)}
	case *syntax.Table:
		t := &syntax.Table{Align: c.Align, Span: c.Span, Head: r.cells(c.Head)}
		for _, row := range c.Rows {
			t.Rows = append(t.Rows, r.cells(row))
		}
		return &Prose{p, t}
	}
	return &Prose{p, p.Content}
}

func (r *resolver) list(l *syntax.List) *syntax.List {
	if l == nil {
		return nil
	}
	out := &syntax.List{Ordered: l.Ordered, Span: l.Span}
	for _, i := range l.Items {
		out.Items = append(out.Items, syntax.Item{Runs: r.runs(i.Runs), Sub: r.list(i.Sub), Span: i.Span})
	}
	return out
}

func (r *resolver) cells(cells []syntax.Cell) []syntax.Cell {
	var out []syntax.Cell
	for _, c := range cells {
		out = append(out, syntax.Cell{Runs: r.runs(c.Runs), Span: c.Span})
	}
	return out
}

// runs returns runs with their links resolved.
func (r *resolver) runs(runs []syntax.Run) []syntax.Run {
	if !slices.ContainsFunc(runs, func(run syntax.Run) bool { return run.Link != "" }) {
		return runs
	}
	out := slices.Clone(runs)
	for i := range out {
		if link := out[i].Link; link != "" {
			out[i] = r.link(out[i])
		}
	}
	return out
}

// link resolves a link to a step of this card, to another card or a step of
// it, or to a web address. The card prints "step 12" or "MD48-10 step 12"
// after the text of the link; a link whose text is just "step" is replaced by
// it.
func (r *resolver) link(run syntax.Run) syntax.Run {
	file := r.card.Procedure.File
	at := file.At(run.LinkSpan.Start, run.LinkSpan.End)
	path, id, _ := strings.Cut(run.Link, "#")
	step := procedure.Named{Name: id, At: at}
	if at.Text() == run.Link {
		step.At.Span.Start = at.Span.End - len(id)
	}
	if strings.HasPrefix(run.Link, "https://") {
		return run
	}
	if strings.Contains(path, ":") {
		r.msgs.Report("link-unknown", at, "link to a step with (#id), to a card with (name.md), or to an https address",
			"`%s` is no link that a card can print", run.Link)
		run.Link = ""
		return run
	}
	if path == "" {
		n, ok := r.number(step)
		run.Link = ""
		if ok {
			run.Text = worded(run.Text, fmt.Sprintf("step\u00a0%d", n))
			run.Link = Anchor(n)
		}
		return run
	}
	run.Link = ""
	name, err := workspace.Resolve(file.Name, path)
	other := r.lib.ByFile(name)
	if err != nil || other == nil {
		r.msgs.Report("link-unknown", at, "name a procedure file of this workspace, as it is reached from this one",
			"`%s` is not a procedure of this workspace", path)
		return run
	}
	label := other.Number.Name
	if id != "" {
		numbers, ids := Numbers(other, r.card.VariantID())
		n, ok := numbers[id]
		switch {
		case ok:
			label += fmt.Sprintf(" step\u00a0%d", n)
		case slices.Contains(ids, id):
			r.msgs.Report("step-left-out", step.At, "limit this reference to the same variants, or give the step to all",
				"step `%s` of %s is left out here", id, other.Number.Name)
			return run
		default:
			r.reportUnknown(0, "step-unknown", "step of "+other.Number.Name, step, ids, "a heading of "+path)
			return run
		}
	}
	run.Text = worded(run.Text, label)
	return run
}

func worded(words, label string) string {
	switch strings.ToLower(strings.TrimSpace(words)) {
	case "", "step", "card", strings.ToLower(strings.ReplaceAll(label, "\u00a0", " ")):
		return label
	}
	return words + " (" + label + ")"
}

// Anchor returns the name of a step's link target in the PDF.
func Anchor(step int) string { return fmt.Sprintf("step-%d", step) }

func (r *resolver) picture(p *procedure.Prose, c *syntax.Picture) Item {
	name, data, ok := r.load(procedure.Named{Name: c.Path, At: p.At.File.At(c.PathSpan.Start, c.PathSpan.End)})
	if !ok {
		return &Picture{Source: p}
	}
	return &Picture{Source: p, Name: name, Data: data, Alt: c.Alt, Title: c.Title}
}

// load reads the picture at a path. It reports an unreadable one.
func (r *resolver) load(path procedure.Named) (name string, data []byte, ok bool) {
	name, data, err := r.lib.Picture(path.At.File, path.Name)
	var outside *workspace.Outside
	var link *workspace.Link
	var large *workspace.TooLarge
	switch {
	case err == nil:
		return name, data, true
	case errors.As(err, &outside):
		r.msgs.Report("path-outside", path.At, "keep the picture in the workspace and name it from this file", "`%s` leads out of the workspace", path.Name)
	case errors.As(err, &link):
		r.msgs.Report("link-not-followed", path.At, "put the picture itself in the workspace", "`%s` is a symbolic link, and links are not followed", link.Name)
	case errors.As(err, &large):
		r.msgs.Report("too-large", path.At, "save the picture smaller: 1500 pixels across fill a page", "the picture has %s", large)
	default:
		r.msgs.Report("picture-missing", path.At, "put the picture there, or fix the path: it is reached from this file's folder",
			"no picture is at `%s`", path.Name)
	}
	return "", nil, false
}
