package syntax

import (
	"bytes"
	"html"
	"regexp"
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/util"

	"benchwright/cmd/benchwright/internal/source"
)

// inline collects the runs of one paragraph, heading, cell or list item.
type inline struct {
	*docReader
	runs    []Run
	last    []byte // the text of the last run, which has none until it is closed
	html    bool   // raw HTML was reported here: its other tag is the same slip
	picture bool   // and so for a picture
	cut     bool   // the next text begins a new run
}

// runs returns the text of a node's inline children.
func (r *docReader) runs(nodes ...ast.Node) []Run {
	in := &inline{docReader: r}
	for i, n := range nodes {
		if i > 0 {
			if last := n.Lines(); last.Len() > 0 {
				in.space(last.At(0).Start, last.At(0).Start, Plain, "", source.Span{})
			}
		}
		in.children(n, Plain, "", source.Span{})
	}
	return in.done()
}

// done closes the last run, without a blank at its end, and returns all.
func (in *inline) done() []Run {
	if n := len(in.runs); n > 0 {
		run := &in.runs[n-1]
		run.Break = false
		if k := len(in.last); k > 0 && in.last[k-1] == ' ' {
			in.last = in.last[:k-1]
			run.Span.End = run.trace.at(k - 1)
			for n := len(run.trace); n > 0 && run.trace[n-1].text >= k; n-- {
				run.trace = run.trace[:n-1]
			}
		}
		if in.close(); run.Text == "" && run.Link == "" {
			in.runs = in.runs[:n-1]
		}
	}
	return in.runs
}

// close gives the last run its text.
func (in *inline) close() {
	if n := len(in.runs); n > 0 && len(in.last) > 0 {
		run := &in.runs[n-1]
		run.Text = string(in.last)
		run.trace.end(len(in.last), run.Span.End)
		in.last = in.last[:0]
	}
}

// open begins a run.
func (in *inline) open(run Run) {
	in.close()
	in.runs = append(in.runs, run)
	in.cut = false
}

func (in *inline) children(n ast.Node, style Style, link string, at source.Span) {
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		in.node(c, style, link, at)
	}
}

func (in *inline) node(n ast.Node, style Style, link string, at source.Span) {
	switch n := n.(type) {
	case *ast.Text:
		s := n.Segment
		if style == Code || n.IsRaw() {
			in.raw(s.Start, s.Stop, style, link, at)
		} else {
			in.text(s.Start, s.Stop, style, link, at)
		}
		if n.SoftLineBreak() || n.HardLineBreak() {
			in.space(s.Stop, s.Stop, style, link, at)
			if n.HardLineBreak() && len(in.runs) > 0 {
				in.runs[len(in.runs)-1].Break = true
				in.cut = true
			}
		}
	case *ast.CodeSpan:
		in.children(n, Code, link, at)
	case *ast.Emphasis:
		if n.Level > 1 || style == Strong {
			style = Strong
		} else {
			style = Emphasis
		}
		in.children(n, style, link, at)
	case *ast.Link:
		target, place := in.target(n, n.Destination, n.Reference != nil)
		before := len(in.runs)
		in.cut = true
		in.children(n, style, target, place)
		if len(in.runs) == before {
			in.open(Run{Style: style, Link: target, LinkSpan: place, Span: in.span(n.Pos(), in.linkEnd(place.End))})
		}
		in.cut = true
	case *ast.AutoLink:
		label := n.Label(in.src)
		start := in.clamp(n.Pos())
		if i := bytes.Index(in.src[start:], label); i >= 0 {
			start += i
		}
		target := string(n.URL(in.src))
		if n.AutoLinkType == ast.AutoLinkEmail && !strings.HasPrefix(strings.ToLower(target), "mailto:") {
			target = "mailto:" + target
		}
		in.cut = true
		in.raw(start, min(start+len(label), len(in.src)), style, target, in.span(start, start+len(label)))
		in.cut = true
	case *ast.RawHTML:
		if !in.html && n.Segments.Len() > 0 {
			in.html = true
			in.rawHTML(n.Segments.At(0).Start, n.Segments.At(n.Segments.Len()-1).Stop)
		}
	case *ast.Image:
		if !in.picture {
			in.picture = true
			in.report("picture-place", in.imageSpan(n), "put the picture in a paragraph of its own, blank lines around it",
				"a picture stands within a text")
		}
	case *ast.String:
		in.raw(in.clamp(n.Pos()), in.clamp(n.Pos()), style, link, at)
	default:
		in.children(n, style, link, at)
	}
}

// target returns where a link or a picture leads, as it was written, and where
// that stands: the whole label for a reference.
func (in *docReader) target(n ast.Node, destination []byte, reference bool) (string, source.Span) {
	start := in.clamp(n.Pos())
	label := source.Span{Start: start, End: max(start, in.lastByte(n))}
	target := unescape(destination)
	if reference {
		label.Start = min(label.Start+1, label.End) // behind the bracket
		return target, label
	}
	for i := label.End; ; {
		j := bytes.Index(in.src[i:], []byte("]("))
		if j < 0 {
			return target, label
		}
		i += j + len("](")
		at := i
		for at < len(in.src) && (blank(in.src[at]) || in.src[at] == '<') {
			at++
		}
		if bytes.HasPrefix(in.src[at:], destination) {
			return target, source.Span{Start: at, End: at + len(destination)}
		}
	}
}

// lastByte returns the end of the last text inside a node, 0 without any.
func (in *docReader) lastByte(n ast.Node) int {
	end := 0
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		if t, ok := c.(*ast.Text); ok {
			end = max(end, t.Segment.Stop)
		}
		end = max(end, in.lastByte(c))
	}
	return in.clamp(end)
}

// imageSpan returns the place of an image from its "![" to its ")".
func (in *docReader) imageSpan(n *ast.Image) source.Span {
	_, place := in.target(n, n.Destination, n.Reference != nil)
	if n.Reference != nil {
		return in.span(n.Pos(), place.End+1)
	}
	return in.span(n.Pos(), in.linkEnd(place.End))
}

// linkEnd returns the end of a link whose target ends at end: behind its ")".
func (in *docReader) linkEnd(end int) int {
	line := in.lineEnd(end)
	if i := bytes.IndexByte(in.src[end:line], ')'); i >= 0 {
		return end + i + 1
	}
	return line
}

var entity = regexp.MustCompile(`^&(#[0-9]{1,7}|#[xX][0-9a-fA-F]{1,6}|[A-Za-z][A-Za-z0-9]{1,31});`)

// text adds text in which \ escapes and &…; stands for a character.
func (in *inline) text(start, stop int, style Style, link string, at source.Span) {
	for i := start; i < stop; {
		c := in.src[i]
		switch {
		case c == '\\' && i+1 < stop && util.IsPunct(in.src[i+1]):
			in.put(string(in.src[i+1]), i, i+2, style, link, at)
			i += 2
			continue
		case c == '&':
			if m := entity.Find(in.src[i:stop]); m != nil {
				in.put(html.UnescapeString(string(m)), i, i+len(m), style, link, at)
				i += len(m)
				continue
			}
		}
		j := i + 1
		for j < stop && in.src[j] != '\\' && in.src[j] != '&' {
			j++
		}
		in.raw(i, j, style, link, at)
		i = j
	}
}

// raw adds text as it stands, white space folded.
func (in *inline) raw(start, stop int, style Style, link string, at source.Span) {
	for i := start; i < stop; {
		j := i
		for j < stop && blank(in.src[j]) {
			j++
		}
		if j > i {
			in.space(i, j, style, link, at)
			i = j
			continue
		}
		for j < stop && !blank(in.src[j]) {
			j++
		}
		in.put(string(in.src[i:j]), i, j, style, link, at)
		i = j
	}
}

// space adds one blank, none at the start or behind another.
func (in *inline) space(start, stop int, style Style, link string, at source.Span) {
	if len(in.runs) == 0 {
		return
	}
	if n := len(in.last); n > 0 && in.last[n-1] == ' ' {
		return
	}
	in.put(" ", start, stop, style, link, at)
}

// put adds s, which was read from start:stop of the file.
func (in *inline) put(s string, start, stop int, style Style, link string, at source.Span) {
	n := len(in.runs)
	if n == 0 || in.cut || in.runs[n-1].Style != style || in.runs[n-1].Link != link || in.runs[n-1].LinkSpan != at {
		in.open(Run{Style: style, Link: link, LinkSpan: at, Span: source.Span{Start: start, End: start}})
		n = len(in.runs)
	}
	run := &in.runs[n-1]
	run.trace.add(len(in.last), start)
	in.last = append(in.last, s...)
	run.trace.add(len(in.last), stop)
	run.Span.End = max(run.Span.End, stop)
}

// unescape resolves escapes and entities of a link's target or title.
func unescape(s []byte) string {
	s = util.UnescapePunctuations(s)
	return entityAny.ReplaceAllStringFunc(string(s), html.UnescapeString)
}

var entityAny = regexp.MustCompile(strings.TrimPrefix(entity.String(), "^"))

// plainText returns the runs' text joined.
func plainText(runs []Run) string {
	var b strings.Builder
	for _, r := range runs {
		b.WriteString(r.Text)
	}
	return b.String()
}
