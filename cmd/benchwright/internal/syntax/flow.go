package syntax

import (
	"bytes"
	"regexp"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

// In { } and [ ] a comma separates values, so a number with a decimal comma is
// split in two: {value: 0,15 mm} has value: 0 and a key "15 mm".

// commaFields returns the fields of a { } without those that continue a split
// number. It reports each such number once.
func (r *treeReader) commaFields(fields []Field) []Field {
	var out []Field
	for i := 0; i < len(fields); i++ {
		f := fields[i]
		out = append(out, f)
		from := f.Value.Span.Start
		glued := false
		if bareField(f) {
			from, glued = f.KeySpan.Start, r.glued(f.KeySpan)
		}
		end := f.Value.Span.End
		for i+1 < len(fields) && bareField(fields[i+1]) && r.continuesNumber(end, fields[i+1].KeySpan) {
			i++
			end = fields[i].KeySpan.End
		}
		if end > f.Value.Span.End && !glued {
			r.splitNumber(source.Span{Start: from, End: end})
		}
	}
	return out
}

// bareField reports whether a field of a { } has neither colon nor value.
func bareField(f Field) bool {
	return f.Value.Kind == Scalar && f.Value.Span == source.Span{Start: f.KeySpan.End, End: f.KeySpan.End}
}

// continuesNumber reports whether the text at span at continues the number
// that ends at offset end: digit, comma, digit, with no blank between them.
func (r *treeReader) continuesNumber(end int, at source.Span) bool {
	return end > r.span.Start && at.Start == end+1 && at.Len() > 0 &&
		digit(r.text[end-1]) && r.text[end] == ',' && digit(r.text[at.Start])
}

// grouped matches a number whose commas may be thousands separators; decimals
// matches a comma between two digits.
var (
	grouped  = regexp.MustCompile(`\b[1-9][0-9]{0,2}(?:,[0-9]{3})+(?:[^0-9]|$)`)
	decimals = regexp.MustCompile(`([0-9]),([0-9])`)
)

// splitNumber reports a number that a comma split. The shop's decimal mark is
// not known here, so the diagnostic carries a fix for each.
func (r *treeReader) splitNumber(at source.Span) {
	text := string(r.text[at.Start:at.End])
	const quotes = "put quotes around it"
	fix, fixes := quotes, diag.Fixes{Comma: quotes, Point: quotes}
	if !grouped.MatchString(text) { // else the comma may be a thousands separator
		fixes.Point = "write the number with a point: `" + decimals.ReplaceAllString(text, "$1.$2") + "`"
		fix += ", or " + fixes.Point
	}
	r.fail("flow-comma", at, fix, "a comma inside brackets splits the value").Fixes = &fixes
}

// commaItems reports each group of items of a [ ] that are pieces of one
// number. Whole numbers written without any blank, [16,32], are a list.
func (r *treeReader) commaItems(items []*Node) {
	list := true
	for i, n := range items {
		digits := n.Kind == Scalar && !n.Quoted && len(bytes.Trim([]byte(n.Text), "0123456789")) == 0 && n.Text != ""
		list = list && digits && (n.Text[0] != '0' || len(items) == 1) && (i == 0 || r.continuesNumber(items[i-1].Span.End, n.Span))
	}
	if list {
		return
	}
	plain := func(n *Node) bool { return n.Kind == Scalar && !n.Quoted }
	for i := 0; i < len(items); i++ {
		from := i
		for i+1 < len(items) && plain(items[i]) && plain(items[i+1]) && r.continuesNumber(items[i].Span.End, items[i+1].Span) {
			i++
		}
		if i > from {
			r.splitNumber(source.Span{Start: items[from].Span.Start, End: items[i].Span.End})
		}
	}
}
