// Package syntax is the only reader of YAML and of Markdown. It turns YAML
// into a Tree and a procedure's Markdown into a Doc, both with the place of
// everything in the whole file, and says what is malformed. It knows nothing
// of what the words mean.
package syntax

import (
	"benchwright/cmd/benchwright/internal/source"
)

// A Kind is what a node of a Tree is.
type Kind uint8

// The kinds of nodes.
const (
	Scalar Kind = iota
	Mapping
	Sequence
)

// A Tree is one YAML document: a whole file, a front matter, or the inside of
// a typed block. Its root is a mapping, empty when nothing was written.
type Tree struct {
	File *source.File
	Span source.Span // the document in its file
	Root *Node
}

// A Node is one value of a Tree. Nodes are read-only once parsed, and a nil
// *Node stands for a value that is not there: its methods may be called.
type Node struct {
	Kind   Kind
	Span   source.Span // the value as written, quotes and all
	Text   string      // a scalar as it was typed, after quotes and escapes; never re-read as a number or date
	Quoted bool        // a scalar in quotes or a block scalar: always text
	Fields []Field     // a mapping's, in the order in which they were written
	Items  []*Node     // a sequence's
	File   *source.File
}

// A Field is one key of a mapping and its value.
type Field struct {
	Key     string
	KeySpan source.Span
	Value   *Node
}
