package syntax

import (
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

// A Doc is a procedure file as it was written: its front matter, then stages
// that hold steps that hold content.
type Doc struct {
	File   *source.File
	Front  *Tree     // never nil; empty and Broken when there is none to read (which is reported)
	Lead   []Content // prose between the front matter and the first stage
	Stages []*Stage

	// HeadingRefused is there where a heading was reported: what stands below it
	// may belong to a step that is not there.
	HeadingRefused diag.Reported
}

// A Heading opens a stage or a step.
type Heading struct {
	Title    []Run
	Text     string // the title as plain text
	ID       string // from {#id}, "" without one
	IDSpan   source.Span
	Only     []string // from {only=…}: the variants it is limited to; nil is all
	OnlySpan source.Span
	Span     source.Span // the heading's text, without the marks before it
}

// A Stage is what stands under one ## heading.
type Stage struct {
	Heading
	Content []Content // prose and typed blocks before its first step
	Steps   []*Step
}

// A Step is what stands under one ### heading.
type Step struct {
	Heading
	Content []Content
}

// Content is one thing in a step, in the order written: a *Paragraph, *List,
// *Table, *Picture, *Note or *Block.
type Content interface{ Place() source.Span }

// A Paragraph is a run of instruction text.
type Paragraph struct {
	Runs []Run
	Span source.Span
}

// A List is a bulleted or numbered list. An item's paragraphs are joined; an
// item may carry one list below it.
type List struct {
	Ordered bool
	Items   []Item
	Span    source.Span
}

// An Item is one entry of a List.
type Item struct {
	Runs []Run
	Sub  *List
	Span source.Span
}

// A Table is a Markdown table.
type Table struct {
	Head  []Cell
	Rows  [][]Cell
	Align []Align // one a column
	Span  source.Span
}

// A Cell is one cell of a Table.
type Cell struct {
	Runs []Run
	Span source.Span
}

// Align is how a column of a Table stands.
type Align uint8

// The alignments of a column.
const (
	Left Align = iota
	Center
	Right
)

// A Picture is an image that stands alone in its paragraph.
type Picture struct {
	Path     string // as written, unescaped
	PathSpan source.Span
	Alt      string
	Title    string
	Span     source.Span
}

// NoteKind tells a tip from a why.
type NoteKind uint8

// The kinds of notes.
const (
	Tip NoteKind = iota
	Why
)

// A Note is a quote that begins with **Tip** or **Why**; Runs leave that word
// and its colon or full stop out.
type Note struct {
	Kind NoteKind
	Runs []Run
	Span source.Span
}

// A Block is a typed block: a fenced block whose info string is a word.
type Block struct {
	Type     string // the info string; "" when it is not one word (which is reported)
	TypeSpan source.Span
	Tree     *Tree         // nil when its YAML could not be read
	Unread   diag.Reported // of a block without a Tree
	Span     source.Span
}

// Style is how a run of text is set.
type Style uint8

// The styles of a run.
const (
	Plain Style = iota
	Strong
	Emphasis
	Code
)

// A Run is text of one style. Text has escapes and entities resolved, and
// white space, line ends among it, folded to single blanks. A link without
// words is a Run with an empty Text.
type Run struct {
	Text     string
	Style    Style
	Link     string // the target as written: "#id", "strip.md#id", "https://…"
	LinkSpan source.Span
	Break    bool // the writer asked for a new line after it; its Text ends in a blank then
	Span     source.Span

	trace trace
}

// Sub returns where the bytes from:to of the run's Text stand in the file.
func (r Run) Sub(from, to int) source.Span {
	if r.trace == nil {
		return r.Span
	}
	return r.trace.sub(from, to)
}

func (p *Paragraph) Place() source.Span { return p.Span }
func (l *List) Place() source.Span      { return l.Span }
func (t *Table) Place() source.Span     { return t.Span }
func (p *Picture) Place() source.Span   { return p.Span }
func (n *Note) Place() source.Span      { return n.Span }
func (b *Block) Place() source.Span     { return b.Span }
