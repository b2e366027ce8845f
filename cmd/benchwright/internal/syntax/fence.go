package syntax

import (
	"bytes"
	"regexp"
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"benchwright/cmd/benchwright/internal/source"
)

// A fence is a node of the Markdown tree: a fenced block.
type fence struct {
	ast.BaseBlock
	open         source.Span // the opening backticks or tildes
	info         source.Span // the info string
	content      source.Span // the lines between the fences; set only if column1
	contentEnd   int         // offset of the line after the content
	column1      bool
	closed       bool
	twoBackticks bool // opened with two backticks, where three were meant
}

var kindFence = ast.NewNodeKind("BenchFence")

func (f *fence) Kind() ast.NodeKind            { return kindFence }
func (f *fence) Dump(source []byte, level int) { ast.DumpHelper(f, source, level, nil, nil) }
func (f *fence) IsRaw() bool                   { return true }

// A fenceParser parses fenced blocks. Unlike goldmark's own parser it ends an
// unclosed block at the next heading or fence, so that a forgotten closing
// fence costs one block and not the rest of the file.
type fenceParser struct{}

// shortFence matches a block opened with two backticks: a single word behind
// them and a YAML key on the next line.
var shortFence = regexp.MustCompile("^``[a-z]+(?:-[a-z]+)*[ \\t]*\n[a-z]+(?:-[a-z]+)*:[ \\t\n]")

func (fenceParser) Trigger() []byte                             { return []byte("`~") }
func (fenceParser) Close(ast.Node, text.Reader, parser.Context) {}
func (fenceParser) CanInterruptParagraph() bool                 { return true }
func (fenceParser) CanAcceptIndentedLine() bool                 { return false }
func (p fenceParser) Open(parent ast.Node, reader text.Reader, pc parser.Context) (ast.Node, parser.State) {
	line, segment := reader.PeekLine()
	pos := pc.BlockOffset()
	if pos < 0 || pos >= len(line) {
		return nil, parser.NoChildren
	}
	src := reader.Source()
	marks, info, ok := fenceLine(line[pos:])
	twoBackticks := !ok && pos == 0 && shortFence.Match(src[min(max(0, segment.Start-segment.Padding), len(src)):])
	if twoBackticks {
		marks, info, ok = 2, bytes.TrimSpace(line[2:]), true
	}
	if !ok {
		return nil, parser.NoChildren
	}
	start := max(0, min(segment.Start+pos-segment.Padding, len(src)))
	f := &fence{open: source.Span{Start: start, End: min(start+marks, len(src))}, twoBackticks: twoBackticks}
	f.info = source.Span{Start: f.open.End, End: f.open.End}
	if len(info) > 0 {
		at := start + bytes.Index(line[pos:], info)
		f.info = source.Span{Start: at, End: at + len(info)}
	}
	f.column1 = start == markLen(src) || src[start-1] == '\n'
	if f.column1 {
		f.bounds(src, src[start])
	}
	return f, parser.NoChildren
}

func (p fenceParser) Continue(node ast.Node, reader text.Reader, pc parser.Context) parser.State {
	f := node.(*fence)
	line, segment := reader.PeekLine()
	if f.column1 {
		switch {
		case segment.Start < f.contentEnd:
			reader.AdvanceToEOL()
			return parser.Continue | parser.NoChildren
		case f.closed:
			reader.AdvanceToEOL()
		}
		return parser.Close
	}
	inner := bytes.TrimLeft(line, " \t")
	marks, info, ok := fenceLine(inner)
	same := ok && len(inner) > 0 && inner[0] == reader.Source()[f.open.Start]
	reader.AdvanceToEOL()
	if same && marks >= f.open.Len() && len(info) == 0 {
		return parser.Close
	}
	return parser.Continue | parser.NoChildren
}

// fenceLine parses a line as a fence. It returns the number of fence
// characters and the info string behind them.
func fenceLine(line []byte) (marks int, info []byte, ok bool) {
	for marks < len(line) && (line[0] == '`' || line[0] == '~') && line[marks] == line[0] {
		marks++
	}
	if marks < 3 {
		return 0, nil, false
	}
	info = bytes.TrimSpace(line[marks:])
	if line[0] == '`' && bytes.IndexByte(info, '`') >= 0 {
		return 0, nil, false
	}
	return marks, info, true
}

// bounds finds the content of a fence at column 1. If another fence opens, or
// the file ends, before the closing fence, the content ends at the first
// heading in between.
func (f *fence) bounds(src []byte, char byte) {
	next := func(i int) int {
		if j := bytes.IndexByte(src[i:], '\n'); j >= 0 {
			return i + j + 1
		}
		return len(src)
	}
	begin := next(f.open.End)
	heading := -1
	i := begin
	for ; i < len(src); i = next(i) {
		line := src[i:next(i)]
		if heading < 0 && (bytes.HasPrefix(line, []byte("## ")) || bytes.HasPrefix(line, []byte("### "))) {
			heading = i
		}
		marks, info, ok := fenceLine(line)
		if f.twoBackticks && !ok && string(bytes.TrimSpace(line)) == "``" {
			marks, ok = 2, true
		}
		if !ok || line[0] != char || marks < f.open.Len() {
			continue
		}
		f.closed = len(info) == 0
		break
	}
	if !f.closed && heading >= 0 {
		i = heading
	}
	f.content = source.Span{Start: min(begin, i), End: i}
	f.contentEnd = i
}

// block turns a fenced block into a Block.
func (r *docReader) block(f *fence) Content {
	if !f.column1 {
		r.misplaced(f, nested(f))
		return nil
	}
	b := &Block{TypeSpan: f.info, Span: source.Span{Start: f.open.Start, End: r.trimEnd(f.contentEnd)}}
	if f.closed {
		b.Span.End = r.lineEnd(f.contentEnd)
	}
	info := string(r.src[f.info.Start:f.info.End])
	if !strings.ContainsAny(info, " \t") {
		b.Type = info
	}
	switch {
	case f.twoBackticks:
		b.Unread = r.report("block-info", source.Span{Start: f.open.Start, End: f.info.End}, "write ```"+info+", and three below the block", "a fence has three backticks").Proof()
		return b
	case !f.closed:
		fix := "write " + string(r.src[f.open.Start:f.open.End]) + " alone on the line after the block"
		if info == "" {
			fix += ", or take this one away"
		}
		b.Unread = r.report("fence-unclosed", source.Span{Start: f.open.Start, End: max(f.open.End, f.info.End)}, fix, "this block is not closed").Proof()
		return b
	case info == "":
		r.report("block-info", f.open, "write the block's type behind the fence, or indent nothing and write it as text",
			"a fenced block has no type")
		return nil
	case b.Type == "":
		r.report("block-info", f.info, "write the type alone behind the fence", "a block's type is one word")
		return nil
	}
	b.Tree, b.Unread = readTree(r.file, r.text, f.content, r.msgs)
	return b
}

// misplaced reports a typed block that does not begin at column 1. Nested
// tells that it stands in a list or quote.
func (r *docReader) misplaced(f *fence, nested bool) {
	fix := "put it behind the list or the quote, its fences at column 1"
	if !nested {
		fix = "begin it in column 1, each of its lines as far to the left"
	}
	r.report("block-place", source.Span{Start: f.open.Start, End: max(f.open.End, f.info.End)}, fix, "a typed block does not stand at column 1")
}

// nested reports whether a Markdown block stands in a list or quote.
func nested(n ast.Node) bool {
	return n.Parent() != nil && n.Parent().Kind() != ast.KindDocument
}
