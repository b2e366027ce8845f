package syntax

import (
	"gopkg.in/yaml.v3"

	"benchwright/cmd/benchwright/internal/source"
)

func (r *treeReader) documents() {}

func (r *treeReader) explain(err error) {
	r.fail("yaml-malformed", source.Span{Start: r.span.Start, End: r.span.Start}, "", "this YAML cannot be read: %v", err)
}

func (r *treeReader) feature(y *yaml.Node, start int) bool { return false }

func (r *treeReader) notMapping(n *Node) {
	r.fail("yaml-malformed", n.Span, "write keys and values, one `key: value` a line", "keys and values belong here")
}

func (r *treeReader) commas(n *Node) {}

func (r *treeReader) cut(n *Node) {}

func (r *treeReader) key(y *yaml.Node, indent int) (*Node, bool) {
	n := r.node(y, 1, indent)
	return n, n.Kind == Scalar && !r.failed
}
