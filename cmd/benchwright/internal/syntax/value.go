package syntax

import (
	"slices"
	"strings"
)

// Value returns the node as a schema validator takes it: a mapping as
// map[string]any, a sequence as []any, null as nil, and every scalar as the
// typed text with white space folded. Scalars stay text because YAML would
// turn some into numbers, and would read 0x6, 1e1 and 012 differently from
// this program's readers.
func (n *Node) Value() any {
	switch {
	case n == nil || n.Null():
		return nil
	case n.Kind == Mapping:
		out := make(map[string]any, len(n.Fields))
		for _, f := range n.Fields {
			out[f.Key] = f.Value.Value()
		}
		return out
	case n.Kind == Sequence:
		out := make([]any, len(n.Items))
		for i, item := range n.Items {
			out[i] = item.Value()
		}
		return out
	}
	return strings.Join(strings.Fields(n.Text), " ")
}

// Null reports whether a scalar is empty or YAML's null.
func (n *Node) Null() bool {
	return n.Kind == Scalar && !n.Quoted && slices.Contains([]string{"", "~", "null", "Null", "NULL"}, n.Text)
}
