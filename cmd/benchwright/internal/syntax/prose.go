package syntax

import (
	"path"
	"strings"

	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"benchwright/cmd/benchwright/internal/source"
)

// content converts a top-level Markdown block, nil if it was refused.
func (r *docReader) content(n ast.Node) Content {
	switch n := n.(type) {
	case *ast.Paragraph:
		if image, ok := n.FirstChild().(*ast.Image); ok && image.NextSibling() == nil {
			return r.picture(image)
		}
		if r.indentedFence(n) || r.tooLong(n) {
			return nil
		}
		if runs := r.runs(n); len(runs) > 0 {
			return &Paragraph{Runs: runs, Span: r.lines(n)}
		}
	case *fence:
		return r.block(n)
	case *ast.List:
		return r.list(n, 1)
	case *extast.Table:
		return r.table(n)
	case *ast.Blockquote:
		return r.note(n)
	case *ast.HTMLBlock:
		r.rawHTML(n.Pos(), r.lineEnd(n.Pos()))
	case *ast.CodeBlock:
		if r.indentedFence(n) {
			return nil
		}
		r.refuse(n, "begin the text at column 1", "these lines are indented, which makes them program code")
	case *ast.ThematicBreak:
		r.refuse(n, "take it out; a heading begins a stage or a step", "a card has no horizontal rule")
	default:
		if n.Kind() != ast.KindLinkReferenceDefinition {
			r.refuse(n, "write it as a paragraph, a list or a table", "a card has no place for this")
		}
	}
	return nil
}

// indentedFence reports a fence that is indented so far that Markdown takes it
// for text or an indented code block.
func (r *docReader) indentedFence(n ast.Node) bool {
	for i := range n.Lines().Len() {
		at := r.clamp(n.Lines().At(i).Start)
		for at < len(r.src) && (r.src[at] == ' ' || r.src[at] == '\t') {
			at++
		}
		if marks, info, ok := fenceLine(r.src[at:r.lineEnd(at)]); ok {
			f := &fence{open: source.Span{Start: at, End: at + marks}, info: source.Span{Start: at + marks, End: at + marks}}
			if len(info) > 0 {
				f.info.End = r.lineEnd(at)
			}
			r.misplaced(f, nested(n))
			return true
		}
	}
	return false
}

// A proseCap cuts a paragraph that is too long to its first line and records
// it under cutProseKey: goldmark's time to parse a paragraph is quadratic or
// worse.
type proseCap struct{}

var cutProseKey = parser.NewContextKey() // value: map[int]bool, keyed by the offset of the first line

func (proseCap) Transform(n *ast.Paragraph, _ text.Reader, pc parser.Context) {
	if l := n.Lines(); l.Len() > 0 && l.At(l.Len()-1).Stop-l.At(0).Start > maxProse {
		pc.ComputeIfAbsent(cutProseKey, func() any { return map[int]bool{} }).(map[int]bool)[l.At(0).Start] = true
		l.SetSliced(0, 1)
	}
}

// tooLong reports a paragraph that proseCap cut.
func (r *docReader) tooLong(n ast.Node) bool {
	if n.Lines().Len() == 0 || !r.cutProse[n.Lines().At(0).Start] {
		return false
	}
	r.report("too-large", r.lines(n), "split it in two", "this paragraph or table is longer than %d KB", maxProse>>10)
	return true
}

// refuse reports a Markdown construct that a card cannot show, at its first
// line.
func (r *docReader) refuse(n ast.Node, fix, format string, args ...any) {
	start := r.clamp(n.Pos())
	if n.Kind() == ast.KindCodeBlock {
		start = r.lines(n).Start
	}
	r.report("markdown-refused", source.Span{Start: start, End: r.lineEnd(start)}, fix, format, args...)
}

func (r *docReader) rawHTML(start, end int) {
	r.report("raw-html", r.span(start, r.trimEnd(end)), "take it out, or write `\\<` for the sign itself", "HTML is not read")
}

// picture converts an image that is the only content of its paragraph.
func (r *docReader) picture(n *ast.Image) Content {
	p := &Picture{Span: r.imageSpan(n), Title: unescape(n.Title), Alt: plainText(r.runs(n))}
	p.Path, p.PathSpan = r.target(n, n.Destination, n.Reference != nil)
	switch strings.ToLower(path.Ext(p.Path)) {
	case ".png", ".jpg", ".jpeg", ".svg":
		return p
	}
	if p.Path == "" {
		r.report("picture-kind", p.Span, "write the picture's path between ( and )", "the picture has no path")
		return nil
	}
	r.report("picture-kind", p.PathSpan, "save it as PNG or JPEG, a drawing as plain SVG", "the picture is not a PNG, JPEG or SVG file")
	return nil
}

// list converts a list. Level is 1 for one directly in a step.
func (r *docReader) list(n *ast.List, level int) *List {
	l := &List{Ordered: n.IsOrdered()}
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		item := r.item(c, level)
		l.Items = append(l.Items, item)
	}
	l.Span = r.span(n.Pos(), n.Pos())
	if len(l.Items) > 0 {
		l.Span = source.Span{Start: l.Items[0].Span.Start, End: l.Items[len(l.Items)-1].Span.End}
	}
	return l
}

func (r *docReader) item(n ast.Node, level int) Item {
	item := Item{Span: r.span(n.Pos(), n.Pos())}
	var texts []ast.Node
	refused := false
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		switch c := c.(type) {
		case *ast.TextBlock, *ast.Paragraph:
			if item.Sub != nil {
				refused = true
				r.refuse(c, "put it before the list, or in an item of its own", "text follows the list inside this item")
				continue
			}
			item.Span.End = max(item.Span.End, r.lines(c).End)
			if r.indentedFence(c) || r.tooLong(c) {
				refused = true
				continue
			}
			texts = append(texts, c)
		case *ast.List:
			switch {
			case level > 1:
				refused = true
				r.refuse(c, "write it as a step of its own, or in fewer levels", "lists are nested more than two deep")
			case item.Sub != nil:
				refused = true
				r.refuse(c, "make it one list", "there is a second list inside this item")
			default:
				item.Sub = r.list(c, level+1)
				item.Span.End = max(item.Span.End, item.Sub.Span.End)
			}
		case *fence:
			refused = true
			r.misplaced(c, true)
		case *ast.HTMLBlock:
			refused = true
			r.content(c)
		case *ast.Heading:
			refused = true
			if _, atx := c.Attribute(attrATX); atx {
				r.refuse(c, "put it after the list, at column 1", "there is a heading in a list")
				continue
			}
			line := r.nextLine(r.lines(c).End)
			for line < len(r.src) && blank(r.src[line]) {
				line++
			}
			r.report("markdown-refused", source.Span{Start: line, End: r.lineEnd(line)}, "write the item's text after its mark, or delete the line",
				"this line makes a heading of the one above it")
		default:
			refused = true
			r.refuse(c, "put it after the list, at column 1", "a list holds only text and one more list")
		}
	}
	if len(texts) > 0 {
		item.Runs = r.runs(texts...)
	}
	if len(item.Runs) == 0 && !refused {
		r.refuse(n, "write the item, or delete its mark", "this item of the list is empty")
	}
	return item
}

// lines returns the span of a block's lines, without white space around them.
func (r *docReader) lines(n ast.Node) source.Span {
	l := n.Lines()
	if l.Len() == 0 {
		return r.span(n.Pos(), n.Pos())
	}
	s := r.span(l.At(0).Start, r.trimEnd(l.At(l.Len()-1).Stop))
	for s.Start < s.End && blank(r.src[s.Start]) {
		s.Start++
	}
	return s
}
