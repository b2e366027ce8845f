// Package syntax is the only reader of YAML and of Markdown. It turns YAML
// into a Tree and a procedure's Markdown into a Doc, both with the place of
// everything in the whole file, and says what is malformed. It knows nothing
// of what the words mean.
package syntax

import (
	"strconv"

	"benchwright/cmd/benchwright/internal/diag"
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
	File   *source.File
	Span   source.Span // the document in its file
	Root   *Node
	Broken bool // a front matter that is missing or could not be read, which is reported: its root is empty

	// Refused is the proof that the tree broke its schema, which the caller that
	// has the schemas notes here: what reads it need not say so again.
	Refused diag.Reported
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

// Field returns the field of a mapping that is called key.
func (n *Node) Field(key string) (Field, bool) {
	if n != nil {
		for _, f := range n.Fields {
			if f.Key == key {
				return f, true
			}
		}
	}
	return Field{}, false
}

// Get returns the value of a mapping's key, nil where there is none.
func (n *Node) Get(key string) *Node {
	f, _ := n.Field(key)
	return f.Value
}

// Place returns where the value stands, the zero Place for nil.
func (n *Node) Place() source.Place {
	if n == nil {
		return source.Place{}
	}
	return source.Place{File: n.File, Span: n.Span}
}

// KeyPlace returns where a mapping's key stands, or the mapping itself where
// it has no such key.
func (n *Node) KeyPlace(key string) source.Place {
	if f, ok := n.Field(key); ok {
		return source.Place{File: n.File, Span: f.KeySpan}
	}
	return n.Place()
}

// Sub returns where the bytes from:to of a scalar's Text stand in the file:
// exactly where the text stands there as it is, be it in quotes or folded over
// lines; where an escape came between, the whole value.
func (n *Node) Sub(from, to int) source.Span {
	if n == nil {
		return source.Span{}
	}
	if n.Kind != Scalar || n.File == nil || n.Span.Start < 0 || n.Span.End > len(n.File.Text) {
		return n.Span
	}
	t := traceWords(n.File.Text, n.Span, n.Text, n.Quoted)
	if t == nil {
		return n.Span
	}
	return t.sub(from, to)
}

// Find returns the places of the key and the value that a path of keys and
// indices leads to: an empty path to the root, an item of a sequence is its own
// key.
func (t *Tree) Find(path []string) (key, value source.Span, ok bool) {
	if t == nil || t.Root == nil {
		return source.Span{}, source.Span{}, false
	}
	n := t.Root
	key = n.Span
	for _, token := range path {
		if f, ok := n.Field(token); ok {
			n, key = f.Value, f.KeySpan
			continue
		}
		i, err := strconv.Atoi(token)
		if err != nil || i < 0 || i >= len(n.Items) {
			return source.Span{}, source.Span{}, false
		}
		n = n.Items[i]
		key = n.Span
	}
	return key, n.Span, true
}
