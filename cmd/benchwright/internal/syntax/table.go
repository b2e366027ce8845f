package syntax

import (
	"bytes"

	extast "github.com/yuin/goldmark/extension/ast"

	"benchwright/cmd/benchwright/internal/source"
)

// table converts a Markdown table.
func (r *docReader) table(n *extast.Table) Content {
	t := &Table{}
	for _, a := range n.Alignments {
		switch a {
		case extast.AlignCenter:
			t.Align = append(t.Align, Center)
		case extast.AlignRight:
			t.Align = append(t.Align, Right)
		default:
			t.Align = append(t.Align, Left)
		}
	}
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		line := r.clamp(c.Pos())
		if c == n.FirstChild() {
			t.Span.Start = line
		}
		t.Span.End = r.lineEnd(line)
		var row []Cell
		for d := c.FirstChild(); d != nil; d = d.NextSibling() {
			cell := Cell{Runs: r.runs(d), Span: source.Span{Start: t.Span.End, End: t.Span.End}}
			if d.Lines().Len() > 0 {
				cell.Span = r.lines(d)
			}
			row = append(row, cell)
		}
		if c == n.FirstChild() {
			t.Head = row
			continue
		}
		if cells := countCells(r.src[line:t.Span.End]); cells > len(t.Align) {
			r.report("table-cells", source.Span{Start: line, End: t.Span.End}, "write `\\|` for a bar in a cell, or add a column to the head",
				"this row has %d cells, the head %d", cells, len(t.Align))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// countCells returns the number of cells of a row.
func countCells(line []byte) int {
	line = bytes.TrimSpace(line)
	n := 1
	for i, c := range line {
		if c == '|' && i > 0 && i < len(line)-1 && line[i-1] != '\\' {
			n++
		}
	}
	return n
}
