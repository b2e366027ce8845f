package syntax

import (
	"strings"

	"github.com/yuin/goldmark/ast"
)

// note converts a quote to a Note.
func (r *docReader) note(n *ast.Blockquote) Content {
	first, ok := n.FirstChild().(*ast.Paragraph)
	if !ok {
		if f, ok := n.FirstChild().(*fence); ok {
			r.misplaced(f, true)
			return nil
		}
		r.noteKind(n)
		return nil
	}
	var texts []ast.Node
	note := &Note{Span: r.span(n.Pos(), n.Pos())}
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		switch c := c.(type) {
		case *ast.Paragraph:
			if r.tooLong(c) {
				return nil
			}
			texts = append(texts, c)
			note.Span.End = r.lines(c).End
		case *fence:
			r.misplaced(c, true)
			return nil
		default:
			r.refuse(c, "write it as a paragraph, or take it out of the quote", "only text may stand in a tip or a why")
			return nil
		}
	}
	strong, _ := first.FirstChild().(*ast.Emphasis)
	if strong == nil || strong.Level != 2 {
		r.noteKind(n)
		return nil
	}
	runs := r.runs(texts...)
	if len(runs) == 0 {
		r.noteKind(n)
		return nil
	}
	switch word := strings.TrimRight(runs[0].Text, ":. "); {
	case strings.EqualFold(word, "tip"):
		note.Kind = Tip
	case strings.EqualFold(word, "why"):
		note.Kind = Why
	default:
		r.noteKind(n)
		return nil
	}
	note.Runs = trimNote(runs[1:])
	if len(note.Runs) == 0 {
		r.refuse(n, "write the text behind it", "nothing stands behind the word")
		return nil
	}
	return note
}

func (r *docReader) noteKind(n ast.Node) {
	r.report("note-kind", r.span(n.Pos(), r.lineEnd(n.Pos())), "begin it with `**Tip**` or `**Why**`, or take the `>` away",
		"a quote begins with neither `**Tip**` nor `**Why**`")
}

// trimNote removes the colon or period and the blanks behind a note's first
// word.
func trimNote(runs []Run) []Run {
	if len(runs) == 0 {
		return nil
	}
	first := runs[0]
	text := strings.TrimLeft(first.Text, ":.")
	text = strings.TrimLeft(text, " ")
	if text == "" {
		return runs[1:]
	}
	first.cutFront(len(first.Text) - len(text))
	return append([]Run{first}, runs[1:]...)
}

// cutFront removes the first n bytes of a run's text.
func (r *Run) cutFront(n int) {
	if n == 0 {
		return
	}
	at := r.trace.at(n)
	var t trace
	t = append(t, step{0, at})
	for _, s := range r.trace {
		if s.text > n {
			t = append(t, step{s.text - n, s.file})
		}
	}
	r.Text, r.trace, r.Span.Start = r.Text[n:], t, at
}
