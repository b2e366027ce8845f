package syntax

import (
	"bytes"
	"strings"
	"sync"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	gmtext "github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

// ReadDoc parses a procedure. It reports malformed parts and leaves them out.
// It returns nil only for a file that is too large or is not text, which it
// also reports.
func ReadDoc(f *source.File, msgs *diag.List) *Doc {
	text, ok := legible(f, msgs)
	if !ok {
		return nil
	}
	r := &docReader{file: f, text: text, src: blankReturns(text), msgs: msgs, doc: &Doc{File: f}}
	reader := gmtext.NewReader(r.src)
	reader.Advance(r.front())
	pc := parser.NewContext()
	root := markdown().Parse(reader, parser.WithContext(pc))
	r.cutProse, _ = pc.Get(cutProseKey).(map[int]bool)
	for n := root.FirstChild(); n != nil && !r.full; n = n.NextSibling() {
		if h, ok := n.(*ast.Heading); ok {
			r.open(h)
		} else if c := r.content(n); c != nil {
			r.put(c)
		}
	}
	return r.doc
}

// blankReturns returns the text with each carriage return replaced by a blank;
// goldmark does not recognize an empty item or a fence in a line that ends in
// one. A carriage return behind a blank or a backslash stays, because a blank
// there would change whether Markdown sees a hard line break.
func blankReturns(text []byte) []byte {
	if bytes.IndexByte(text, '\r') < 0 {
		return text
	}
	text = bytes.Clone(text)
	for i, c := range text {
		if c == '\r' && (i == 0 || text[i-1] != ' ' && text[i-1] != '\\') {
			text[i] = ' '
		}
	}
	return text
}

// markdown returns the parser: CommonMark with tables and this package's
// fences and headings.
var markdown = sync.OnceValue(func() parser.Parser {
	return parser.NewParser(
		parser.WithBlockParsers(
			util.Prioritized(parser.NewSetextHeadingParser(), 100),
			util.Prioritized(parser.NewThematicBreakParser(), 200),
			util.Prioritized(parser.NewListParser(), 300),
			util.Prioritized(parser.NewListItemParser(), 400),
			util.Prioritized(parser.NewCodeBlockParser(), 500),
			util.Prioritized(newHeadingParser(), 600),
			util.Prioritized(fenceParser{}, 700),
			util.Prioritized(parser.NewBlockquoteParser(), 800),
			util.Prioritized(parser.NewHTMLBlockParser(), 900),
			util.Prioritized(parser.NewParagraphParser(), 1000),
		),
		parser.WithInlineParsers(parser.DefaultInlineParsers()...),
		parser.WithParagraphTransformers(append([]util.PrioritizedValue{util.Prioritized(proseCap{}, 1)}, append(parser.DefaultParagraphTransformers(),
			util.Prioritized(extension.NewTableParagraphTransformer(), 200))...)...),
		parser.WithASTTransformers(util.Prioritized(extension.NewTableASTTransformer(), 0)),
	)
})

// A docReader converts the Markdown tree of one file into its Doc.
type docReader struct {
	file *source.File
	text []byte // the file as legible returns it
	src  []byte // text as blankReturns returns it: what goldmark parses
	msgs *diag.List
	doc  *Doc

	cutProse     map[int]bool // the paragraphs that proseCap cut, by the offset of their first line
	steps        int
	stageExcused bool // do not report a step outside a stage: done already, or a refused heading may have been meant as the stage
	full         bool // the step limit is exceeded: stop reading
	hasWhy       bool // the current stage or step has its why
	inStep       bool // content belongs to the last step, not to the stage
}

func (r *docReader) report(slug string, at source.Span, fix, format string, args ...any) *diag.Diagnostic {
	return r.msgs.Report(slug, source.Place{File: r.file, Span: at}, fix, format, args...)
}

// badHeading reports an error in a heading and sets Doc.HeadingRefused.
func (r *docReader) badHeading(slug string, at source.Span, fix, format string, args ...any) {
	r.doc.HeadingRefused = r.report(slug, at, fix, format, args...).Proof()
}

// front parses the front matter and returns the offset of the line after it.
func (r *docReader) front() int {
	start := markLen(r.src)
	r.doc.Front = &Tree{File: r.file, Span: source.Span{Start: start, End: start}, Broken: true,
		Root: &Node{Kind: Mapping, File: r.file, Span: source.Span{Start: start, End: start}}}
	if !r.ruler(start) {
		r.report("front-matter-missing", source.Span{Start: start, End: r.lineEnd(start)},
			"begin the file with a line `---`, the card's keys, and another line `---`", "the front matter is missing")
		return r.lateFrontMatter(start)
	}
	begin := r.nextLine(start)
	end, fenced := begin, false
	for end < len(r.src) && !r.ruler(end) && !fenced {
		_, _, fenced = fenceLine(r.src[end:r.lineEnd(end)])
		if !fenced {
			end = r.nextLine(end)
		}
	}
	if fenced || end >= len(r.src) {
		r.report("front-matter-unclosed", source.Span{Start: start, End: r.lineEnd(start)},
			"write a line `---` after its last key", "the front matter is not closed")
		for i := begin; i < len(r.src); i = r.nextLine(i) {
			if bytes.HasPrefix(r.src[i:], []byte("## ")) {
				return i
			}
		}
		return end
	}
	if tree, _ := readTree(r.file, r.text, source.Span{Start: begin, End: end}, r.msgs); tree != nil {
		r.doc.Front = tree
	}
	return r.nextLine(end)
}

// lateFrontMatter returns the offset behind a front matter that lacks its
// first --- or has blank lines before it, start where there is none.
func (r *docReader) lateFrontMatter(start int) int {
	i := start
	for i < len(r.src) && (r.src[i] == '\n' || r.src[i] == '\r') {
		i++
	}
	if r.ruler(i) {
		i = r.nextLine(i)
	}
	for ; i < len(r.src); i = r.nextLine(i) {
		if r.ruler(i) {
			return r.nextLine(i)
		}
		if _, _, fenced := fenceLine(r.src[i:r.lineEnd(i)]); fenced || r.src[i] == '#' {
			break
		}
	}
	return start
}

// ruler reports whether the line at start is just ---.
func (r *docReader) ruler(start int) bool {
	line := r.src[start:r.lineEnd(start)]
	return bytes.HasPrefix(line, []byte("---")) && len(bytes.TrimSpace(line)) == 3
}

// open begins the stage or step of a heading.
func (r *docReader) open(n *ast.Heading) {
	h := r.heading(n)
	level := n.Level
	marks := source.Span{Start: r.clamp(n.Pos()), End: min(r.clamp(n.Pos())+level, len(r.src))}
	if _, atx := n.Attribute(attrATX); !atx {
		r.badHeading("heading-underlined", h.Span, "write `## ` before it and delete the line below", "a heading is underlined")
		r.stageExcused = true
		return
	}
	switch {
	case level == 1:
		r.badHeading("heading-level", marks, "write `##` for a stage or `###` for a step; the card's title stands in the front matter",
			"a heading with one `#` is not used")
		r.stageExcused = true
		return
	case level > 3:
		r.badHeading("heading-level", marks, "write `###` and a space for a step, or a paragraph", "a heading goes deeper than a step")
		return
	}
	if _, glued := n.Attribute(attrGlued); glued {
		r.badHeading("heading-level", marks, "write a space after `"+strings.Repeat("#", level)+"`", "a space is missing between the `#` of this heading and its title")
	}
	if level == 2 {
		r.doc.Stages = append(r.doc.Stages, &Stage{Heading: h})
		r.inStep, r.hasWhy = false, false
		return
	}
	if r.steps++; r.steps > maxSteps {
		r.full = true
		r.report("too-large", h.Span, "split it into several cards", "the procedure has more than %d steps", maxSteps)
		return
	}
	if len(r.doc.Stages) == 0 {
		if !r.stageExcused {
			r.stageExcused = true
			r.report("step-outside-stage", h.Span, "write a stage before it: `## ` and its title", "a step comes before the first stage")
		}
		r.doc.Stages = append(r.doc.Stages, &Stage{Heading: Heading{Span: h.Span}})
	}
	stage := r.doc.Stages[len(r.doc.Stages)-1]
	stage.Steps = append(stage.Steps, &Step{Heading: h})
	r.inStep, r.hasWhy = true, false
}

// put appends content to the current step or stage, or to the Doc's Lead.
func (r *docReader) put(c Content) {
	if note, ok := c.(*Note); ok && note.Kind == Why {
		if r.hasWhy {
			r.report("why-twice", note.Span, "join the two, or write one as `**Tip**`", "this step has a second why")
			return
		}
		r.hasWhy = true
	}
	if len(r.doc.Stages) == 0 {
		r.doc.Lead = append(r.doc.Lead, c)
		return
	}
	stage := r.doc.Stages[len(r.doc.Stages)-1]
	if !r.inStep {
		stage.Content = append(stage.Content, c)
		return
	}
	step := stage.Steps[len(stage.Steps)-1]
	step.Content = append(step.Content, c)
}

// clamp limits an offset to the file: goldmark gives -1 for nodes it made up,
// and in one case an offset past the end.
func (r *docReader) clamp(i int) int { return max(0, min(i, len(r.src))) }

// span returns a span clamped to the file.
func (r *docReader) span(start, end int) source.Span {
	start = r.clamp(start)
	return source.Span{Start: start, End: max(start, r.clamp(end))}
}

// lineEnd returns the end of the line that holds offset i, without trailing
// white space.
func (r *docReader) lineEnd(i int) int {
	i = r.clamp(i)
	end := len(r.src)
	if j := bytes.IndexByte(r.src[i:], '\n'); j >= 0 {
		end = i + j
	}
	for end > i && blank(r.src[end-1]) {
		end--
	}
	return end
}

// nextLine returns the start of the line after the one that holds i.
func (r *docReader) nextLine(i int) int {
	if j := bytes.IndexByte(r.src[i:], '\n'); j >= 0 {
		return i + j + 1
	}
	return len(r.src)
}

// trimEnd moves an end offset back over white space.
func (r *docReader) trimEnd(end int) int {
	end = r.clamp(end)
	for end > 0 && blank(r.src[end-1]) {
		end--
	}
	return end
}
