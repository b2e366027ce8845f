package syntax

import (
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

// A Doc is a procedure file as written: front matter, then stages, which hold
// steps, which hold content.
type Doc struct {
	File   *source.File
	Front  *Tree     // never nil; empty and Broken when the front matter is missing or unreadable, which is reported
	Lead   []Content // prose between the front matter and the first stage
	Stages []*Stage

	// HeadingRefused is set when an error in a heading was reported. The
	// content below that heading may then be attached to the wrong step.
	HeadingRefused diag.Reported
}

// A Heading opens a stage or a step.
type Heading struct {
	Title    []Run
	Text     string // the title as plain text
	ID       string // from {#id}; "" without one
	IDSpan   source.Span
	Only     []string // from {only=…}: ids of the variants the heading applies to; nil means all
	OnlySpan source.Span
	Span     source.Span // the heading's text, without its # marks
}

// A Stage is a ## heading and what stands below it.
type Stage struct {
	Heading
	Content []Content // what stands before its first step
	Steps   []*Step
}

// A Step is a ### heading and what stands below it.
type Step struct {
	Heading
	Content []Content
}

// Content is one element of a stage or step, in the order written: a
// *Paragraph, *List, *Table, *Picture, *Note or *Block. Place returns its span
// in the file.
type Content interface{ Place() source.Span }

// A Paragraph is one paragraph of text.
type Paragraph struct {
	Runs []Run
	Span source.Span
}

// A List is a bulleted or numbered list. The paragraphs of an item are joined;
// an item may hold one nested list.
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
	Align []Align // one for each column
	Span  source.Span
}

// A Cell is one cell of a Table.
type Cell struct {
	Runs []Run
	Span source.Span
}

// Align is the horizontal alignment of a column of a Table.
type Align uint8

const (
	Left Align = iota
	Center
	Right
)

// A Picture is an image that is the only content of its paragraph.
type Picture struct {
	Path     string // as written, with escapes resolved
	PathSpan source.Span
	Alt      string
	Title    string
	Span     source.Span
}

// NoteKind is the kind of a Note.
type NoteKind uint8

const (
	Tip NoteKind = iota
	Why
)

// A Note is a block quote that begins with **Tip** or **Why**. Runs omit that
// word and the colon or period behind it.
type Note struct {
	Kind NoteKind
	Runs []Run
	Span source.Span
}

// A Block is a typed block: a fenced block whose info string is one word.
type Block struct {
	Type     string // the info string; "" when it is not one word, which is reported
	TypeSpan source.Span
	Tree     *Tree         // nil when its YAML could not be read
	Unread   diag.Reported // the proof of the reported error when Tree is nil
	Span     source.Span
}

// Style is the type style of a Run.
type Style uint8

const (
	Plain Style = iota
	Strong
	Emphasis
	Code
)

// A Run is text of one style. Escapes and entities in Text are resolved, and
// all white space, line ends included, is folded to single blanks. A link
// without text is a Run with an empty Text.
type Run struct {
	Text      string
	Style     Style
	Link      string // the target as written: "#id", "strip.md#id", "https://…"
	LinkSpan  source.Span
	LineBreak bool // a hard line break follows; Text then ends in a blank
	Span      source.Span

	trace trace
}

// Sub returns the span in the file of the bytes from:to of the run's Text.
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
