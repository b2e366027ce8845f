// Package syntax is the only reader of YAML and Markdown. It parses YAML into
// a Tree and a procedure's Markdown into a Doc, with the byte span of every
// element, and reports what is malformed. It does not know what keys and
// values mean.
package syntax

import (
	"strconv"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

// A Kind is the kind of a Node.
type Kind uint8

const (
	Scalar Kind = iota
	Mapping
	Sequence
)

// A Tree is one YAML document: a whole file, a front matter, or the content of
// a typed block. Its root is a mapping, empty when nothing was written.
type Tree struct {
	File   *source.File
	Span   source.Span // the document in its file
	Root   *Node
	Broken bool // a front matter that is missing or unreadable, which is reported; Root is then empty

	// Refused is set by the caller that validates the tree, when it reported a
	// violation of the schema. Later readers need not report the same error.
	Refused diag.Reported
}

// A Node is one value of a Tree. Nodes are read-only once parsed. A nil *Node
// stands for a missing value; its methods may be called.
type Node struct {
	Kind   Kind
	Span   source.Span // the value as written, with its quotes
	Text   string      // a scalar as typed, with quotes and escapes resolved; never converted to a number or date
	Quoted bool        // a quoted or block scalar, which is always text
	Fields []Field     // of a mapping, in the order written
	Items  []*Node     // of a sequence
	File   *source.File
}

// A Field is one key of a mapping and its value.
type Field struct {
	Key     string
	KeySpan source.Span
	Value   *Node
}

// Field returns the field of a mapping with the given key.
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

// Get returns the value of a mapping's key, nil without one.
func (n *Node) Get(key string) *Node {
	f, _ := n.Field(key)
	return f.Value
}

// Place returns the place of the value, the zero Place for nil.
func (n *Node) Place() source.Place {
	if n == nil {
		return source.Place{}
	}
	return source.Place{File: n.File, Span: n.Span}
}

// KeyPlace returns the place of a mapping's key, or of the mapping itself if
// it lacks the key.
func (n *Node) KeyPlace(key string) source.Place {
	if f, ok := n.Field(key); ok {
		return source.Place{File: n.File, Span: f.KeySpan}
	}
	return n.Place()
}

// Sub returns the span in the file of the bytes from:to of a scalar's Text. It
// is the span of the whole value where escapes make the text differ from the
// file in more than quotes and white space.
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

// Find returns the spans of the key and the value at a path of keys and
// indices. The empty path leads to the root. An item of a sequence, and the
// root, is its own key.
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
