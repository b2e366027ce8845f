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

// An inline collects the runs of one paragraph, heading, cell or list item.
type inline struct {
	*docReader
	runs            []Run
	lastText        []byte // text of the last run; close moves it to the Run
	htmlReported    bool   // raw HTML was reported here; its closing tag is the same slip
	pictureReported bool   // a picture was reported here
	newRun          bool   // the next text begins a new run
}

// A format is the style and link of a run.
type format struct {
	style    Style
	link     string
	linkSpan source.Span
}

// runs converts the inline children of the nodes, joined by blanks.
func (r *docReader) runs(nodes ...ast.Node) []Run {
	in := &inline{docReader: r}
	for i, n := range nodes {
		if i > 0 {
			if first := n.Lines(); first.Len() > 0 {
				in.space(first.At(0).Start, first.At(0).Start, format{})
			}
		}
		in.children(n, format{})
	}
	return in.done()
}

// done drops a trailing blank, closes the last run and returns all runs.
func (in *inline) done() []Run {
	if n := len(in.runs); n > 0 {
		run := &in.runs[n-1]
		run.LineBreak = false
		if k := len(in.lastText); k > 0 && in.lastText[k-1] == ' ' {
			in.lastText = in.lastText[:k-1]
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

// close stores the collected text in the last run.
func (in *inline) close() {
	if n := len(in.runs); n > 0 && len(in.lastText) > 0 {
		run := &in.runs[n-1]
		run.Text = string(in.lastText)
		run.trace.end(len(in.lastText), run.Span.End)
		in.lastText = in.lastText[:0]
	}
}

// open begins a new run.
func (in *inline) open(run Run) {
	in.close()
	in.runs = append(in.runs, run)
	in.newRun = false
}

func (in *inline) children(n ast.Node, f format) {
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		in.node(c, f)
	}
}

func (in *inline) node(n ast.Node, f format) {
	switch n := n.(type) {
	case *ast.Text:
		s := n.Segment
		if f.style == Code || n.IsRaw() {
			in.raw(s.Start, s.Stop, f)
		} else {
			in.text(s.Start, s.Stop, f)
		}
		if n.SoftLineBreak() || n.HardLineBreak() {
			in.space(s.Stop, s.Stop, f)
			if n.HardLineBreak() && len(in.runs) > 0 {
				in.runs[len(in.runs)-1].LineBreak = true
				in.newRun = true
			}
		}
	case *ast.CodeSpan:
		f.style = Code
		in.children(n, f)
	case *ast.Emphasis:
		if n.Level > 1 || f.style == Strong {
			f.style = Strong
		} else {
			f.style = Emphasis
		}
		in.children(n, f)
	case *ast.Link:
		target, place := in.target(n, n.Destination, n.Reference != nil)
		before := len(in.runs)
		in.newRun = true
		in.children(n, format{f.style, target, place})
		if len(in.runs) == before {
			in.open(Run{Style: f.style, Link: target, LinkSpan: place, Span: in.span(n.Pos(), in.linkEnd(place.End))})
		}
		in.newRun = true
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
		in.newRun = true
		in.raw(start, min(start+len(label), len(in.src)), format{f.style, target, in.span(start, start+len(label))})
		in.newRun = true
	case *ast.RawHTML:
		if !in.htmlReported && n.Segments.Len() > 0 {
			in.htmlReported = true
			in.rawHTML(n.Segments.At(0).Start, n.Segments.At(n.Segments.Len()-1).Stop)
		}
	case *ast.Image:
		if !in.pictureReported {
			in.pictureReported = true
			in.report("picture-place", in.imageSpan(n), "put the picture in a paragraph of its own, blank lines around it",
				"a picture stands within a text")
		}
	case *ast.String:
		in.raw(in.clamp(n.Pos()), in.clamp(n.Pos()), f)
	default:
		in.children(n, f)
	}
}

// target returns the target of a link or picture as written, and its span. For
// a reference link that is the span of the whole label.
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

// lastByte returns the end offset of the last text inside a node, 0 without
// any.
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

// imageSpan returns the span of an image from its "![" to its ")".
func (in *docReader) imageSpan(n *ast.Image) source.Span {
	_, place := in.target(n, n.Destination, n.Reference != nil)
	if n.Reference != nil {
		return in.span(n.Pos(), place.End+1)
	}
	return in.span(n.Pos(), in.linkEnd(place.End))
}

// linkEnd returns the offset behind the ")" of a link whose target ends at
// end.
func (in *docReader) linkEnd(end int) int {
	line := in.lineEnd(end)
	if i := bytes.IndexByte(in.src[end:line], ')'); i >= 0 {
		return end + i + 1
	}
	return line
}

var entity = regexp.MustCompile(`^&(#[0-9]{1,7}|#[xX][0-9a-fA-F]{1,6}|[A-Za-z][A-Za-z0-9]{1,31});`)

// text adds text in which \ escapes and entities, &…;, are resolved.
func (in *inline) text(start, stop int, f format) {
	for i := start; i < stop; {
		c := in.src[i]
		switch {
		case c == '\\' && i+1 < stop && util.IsPunct(in.src[i+1]):
			in.put(string(in.src[i+1]), i, i+2, f)
			i += 2
			continue
		case c == '&':
			if m := entity.Find(in.src[i:stop]); m != nil {
				in.put(html.UnescapeString(string(m)), i, i+len(m), f)
				i += len(m)
				continue
			}
		}
		j := i + 1
		for j < stop && in.src[j] != '\\' && in.src[j] != '&' {
			j++
		}
		in.raw(i, j, f)
		i = j
	}
}

// raw adds text as written, with white space folded.
func (in *inline) raw(start, stop int, f format) {
	for i := start; i < stop; {
		j := i
		for j < stop && blank(in.src[j]) {
			j++
		}
		if j > i {
			in.space(i, j, f)
			i = j
			continue
		}
		for j < stop && !blank(in.src[j]) {
			j++
		}
		in.put(string(in.src[i:j]), i, j, f)
		i = j
	}
}

// space adds one blank, unless at the start or behind another blank.
func (in *inline) space(start, stop int, f format) {
	if len(in.runs) == 0 {
		return
	}
	if n := len(in.lastText); n > 0 && in.lastText[n-1] == ' ' {
		return
	}
	in.put(" ", start, stop, f)
}

// put adds s, which was read from start:stop of the file.
func (in *inline) put(s string, start, stop int, f format) {
	n := len(in.runs)
	if n == 0 || in.newRun || f != (format{in.runs[n-1].Style, in.runs[n-1].Link, in.runs[n-1].LinkSpan}) {
		in.open(Run{Style: f.style, Link: f.link, LinkSpan: f.linkSpan, Span: source.Span{Start: start, End: start}})
		n = len(in.runs)
	}
	run := &in.runs[n-1]
	run.trace.add(len(in.lastText), start)
	in.lastText = append(in.lastText, s...)
	run.trace.add(len(in.lastText), stop)
	run.Span.End = max(run.Span.End, stop)
}

// unescape resolves escapes and entities in a link's target or title.
func unescape(s []byte) string {
	s = util.UnescapePunctuations(s)
	return entityAny.ReplaceAllStringFunc(string(s), html.UnescapeString)
}

var entityAny = regexp.MustCompile(strings.TrimPrefix(entity.String(), "^"))

// plainText returns the joined text of the runs.
func plainText(runs []Run) string {
	var b strings.Builder
	for _, r := range runs {
		b.WriteString(r.Text)
	}
	return b.String()
}
