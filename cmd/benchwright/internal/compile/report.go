package compile

import (
	"fmt"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/deck"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/render"
)

// report turns a problem of the layout into a message.
func (lib *library) report(problem render.Problem, f *procedureFile, d *deck.Deck, msgs *diag.List) {
	p := f.procedure
	at := d.Place(problem.Ref)
	if at.File == nil {
		at = p.Title.At // of the running head, or of a fixed word
	}
	switch problem.Kind {
	case render.TooTall:
		msgs.Report("step-too-tall", at, "split the step in two, or choose larger paper", "this step does not fit one face: %s", lengths(problem))
	case render.TableTooWide, render.FigureTooWide: // and no word of the writer's
		if !slices.ContainsFunc(msgs.Sorted(), func(d diag.Diagnostic) bool { return d.Slug == "too-wide" && d.At == at }) {
			msgs.Report("too-wide", at, "narrow what it is for, or choose larger paper", "a table or a figure is wider than the face: %s", lengths(problem))
		}
	case render.WordTooWide:
		word := strings.TrimRight(problem.Text, ".,;:")
		if at, ok := lib.written(at, f, word); ok {
			msgs.Report("too-wide", at, "shorten it, or break it up with blanks", unbroken)
			return
		}
		msgs.Report("too-wide", at, "shorten it, or break it up with blanks", "this is wider than the face: %s", word)
	case render.MissingGlyph:
		if problem.Drawing != "" {
			at = lib.drawing(problem.Drawing).At(problem.Start, problem.End)
		}
		at, ok := lib.written(at, f, problem.Text)
		if !ok && slices.ContainsFunc(msgs.Sorted(), func(d diag.Diagnostic) bool {
			return d.Slug == "glyph-missing" && strings.Contains(d.Message, problem.Text)
		}) {
			return // an escape in the name of a thing, which stands at many places
		}
		msgs.Report("glyph-missing", at, "write it in other words", "the card's type has no character `%s`", problem.Text)
	case render.BadPicture:
		msgs.Report("picture-bad", at, "save it again as PNG or JPEG, at most 8 megapixels", "the picture cannot be used: %s", problem.Text)
	case render.BadDrawing:
		lib.refused(problem.Drawing, at, msgs)
	case render.SmallText, render.TextOver:
		lib.drawnText(problem, at, msgs)
	case render.SpotHides:
		msgs.Report("call-out-place", at, "move one of them and draw a line to its place with `to:`, or take a larger picture", "at the size in which the picture is printed, %s", hides(problem))
	case render.Loose:
	case render.BadLink:
		msgs.Report("step-unknown", at, "name a step of this card", "the link leads nowhere: %s", problem.Text).Rests = diag.OnProcedure
	default:
		panic(fmt.Sprintf("no message for the layout's problem %+v", problem))
	}
}

// lengths says how much there is of how much room.
func lengths(p render.Problem) string {
	return fmt.Sprintf("%d mm of %d mm", (p.Size+999)/1000, p.Room/1000)
}

// hides says what the number of a call-out hides.
func hides(p render.Problem) string {
	switch {
	case p.Other == 0:
		return fmt.Sprintf("number %d covers the whole picture", p.Spot)
	case p.Place:
		return fmt.Sprintf("number %d covers the place of number %d", p.Spot, p.Other)
	}
	return fmt.Sprintf("number %d covers number %d", p.Spot, p.Other)
}

// unbroken is said of a word of the writer's that is too wide.
const unbroken = "this is wider than the face, and nothing in it can be broken"

// own returns what the layout found that nothing before it explains: a step that
// has an error is not judged by its size too, which may come from that error.
func (lib *library) own(f *procedureFile, card, found *diag.List) *diag.List {
	p := f.procedure
	var wrong []int
	errors := lib.shopErrors > 0 || f.nearest != nil && f.nearest.errors > 0
	if errors {
		wrong = append(wrong, everyStep(p)...)
	}
	for _, l := range []*diag.List{card, f.refused} {
		for _, d := range l.Sorted() {
			if d.Severity() == diag.Error {
				errors = true
				if d.At.File != p.File {
					continue
				}
				n := stepAt(p, d.At.Span.Start)
				if n == 0 { // of the running head, which takes its height from every face
					wrong = append(wrong, everyStep(p)...)
				}
				wrong = append(wrong, n)
			}
		}
	}
	// One word that is too wide makes tables of it too wide, and their steps too
	// tall.
	word := slices.ContainsFunc(found.Sorted(), func(d diag.Diagnostic) bool { return d.Message == unbroken })
	var wide []int
	for _, d := range found.Sorted() {
		if d.Slug == "too-wide" && d.At.File == p.File {
			wide = append(wide, stepAt(p, d.At.Span.Start))
		}
	}
	out := &diag.List{}
	out.Join(found)
	out.Keep(func(d diag.Diagnostic) bool {
		size := d.Slug == "too-wide" && d.Message != unbroken || d.Slug == "step-too-tall"
		tall := d.Slug == "step-too-tall" && d.At.File == p.File && slices.Contains(wide, stepAt(p, d.At.Span.Start))
		return judged(p, d, wrong, errors) && !(word && size) && !tall
	})
	return out
}

// judged says whether a finding of the layout stands, with the steps that have
// errors.
func judged(p *procedure.Procedure, d diag.Diagnostic, wrong []int, errors bool) bool {
	if d.Slug != "too-wide" && d.Slug != "step-too-tall" {
		return true
	}
	step := 0
	if d.At.File == p.File {
		step = stepAt(p, d.At.Span.Start)
	}
	if step == 0 { // of the running head or the record strip: it may come from any of them
		return !errors
	}
	return !slices.Contains(wrong, step)
}

// everyStep returns the numbers of all steps.
func everyStep(p *procedure.Procedure) (out []int) {
	for n := range stepAt(p, len(p.File.Text)) {
		out = append(out, n+1)
	}
	return out
}

// stepAt returns which step of a procedure stands at an offset of its file,
// counted from one; 0 before the first.
func stepAt(p *procedure.Procedure, offset int) int {
	n := 0
	for _, st := range p.Stages {
		for _, s := range st.Steps {
			if s.Span.Start <= offset {
				n++
			}
		}
	}
	return n
}

// written finds where a text that stands on a face was written. The layout
// knows no more than the place of what holds the text; it stands there, or
// behind it in its file, or in the unit or the shop that lends a name. It
// returns at itself for a text that stands nowhere.
func (lib *library) written(at source.Place, p *procedureFile, text string) (source.Place, bool) {
	search := func(f *source.File, from, to int) (source.Place, bool) {
		if f == nil || text == "" {
			return at, false
		}
		i := strings.Index(string(f.Text[from:to]), text)
		if i < 0 {
			return at, false
		}
		return f.At(from+i, from+i+len(text)), true
	}
	files := []*source.File{p.File}
	if u := p.unit(); u != nil {
		files = append(files, u.File)
	}
	files = append(files, lib.workspace.Shop)
	if at.File != nil {
		if found, ok := search(at.File, at.Span.Start, at.Span.End); ok {
			return found, true
		}
		if found, ok := search(at.File, at.Span.End, len(at.File.Text)); ok {
			return found, true
		}
	}
	for _, f := range files {
		if f == nil {
			continue
		}
		if found, ok := search(f, 0, len(f.Text)); ok {
			return found, true
		}
	}
	return at, false
}
