package syntax

import (
	"slices"
	"strings"
)

// Value returns the value for a schema to judge: a mapping as map[string]any, a
// sequence as []any, nothing as nil, and every scalar as the text that was
// typed, on one line. YAML would make numbers of some and take 0x6, 1e1 and 012
// for others than their readers do.
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

// Null says whether a scalar is YAML's word for nothing, or nothing at all.
func (n *Node) Null() bool {
	return n.Kind == Scalar && !n.Quoted && slices.Contains([]string{"", "~", "null", "Null", "NULL"}, n.Text)
}
