package syntax

import (
	"bytes"

	"benchwright/cmd/benchwright/internal/source"
)

// A trace maps byte offsets of a decoded text to byte offsets of the file.
// Steps are ordered; from each to the next both offsets advance equally. The
// last step is the end of the text.
type trace []step

type step struct{ text, file int }

// add records that offset text of the decoded text is at offset file of the
// file.
func (t *trace) add(text, file int) {
	if n := len(*t); n > 0 {
		last := (*t)[n-1]
		if text-last.text == file-last.file {
			return // the offsets still advance equally
		}
	}
	*t = append(*t, step{text, file})
}

// at returns the file offset of a text offset.
func (t trace) at(text int) int {
	i, j := 0, len(t)
	for j-i > 1 {
		if m := int(uint(i+j) >> 1); t[m].text <= text {
			i = m
		} else {
			j = m
		}
	}
	file := t[i].file + max(0, text-t[i].text)
	if j < len(t) {
		file = min(file, t[j].file)
	}
	return file
}

// sub returns the span in the file of the bytes from:to of the text.
func (t trace) sub(from, to int) source.Span {
	if len(t) == 0 {
		return source.Span{}
	}
	end := t[len(t)-1]
	from = max(0, min(from, end.text))
	to = max(from, min(to, end.text))
	s := source.Span{Start: min(t.at(from), end.file), End: min(t.at(to), end.file)}
	s.End = max(s.Start, s.End)
	return s
}

// end records the end of the text.
func (t *trace) end(text, file int) { *t = append(*t, step{text, file}) }

// traceWords maps text to the span of the file it was decoded from, provided
// the two differ only in enclosing quotes and in white space between words.
// Otherwise it returns nil.
func traceWords(file []byte, span source.Span, text string, quoted bool) trace {
	at := span.Start
	if quoted && at < span.End {
		switch file[at] {
		case '"', '\'':
			at++
		case '|', '>': // the header of a block scalar
			if i := bytes.IndexByte(file[at:span.End], '\n'); i >= 0 {
				at += i + 1
			}
		}
	}
	var t trace
	for i := 0; i < len(text); {
		j := i
		for j < len(text) && !blank(text[j]) {
			j++
		}
		if j > i {
			for at < span.End && blank(file[at]) {
				at++
			}
			if at+j-i > span.End || string(file[at:at+j-i]) != text[i:j] {
				return nil
			}
			t.add(i, at)
			at += j - i
			t.add(j, at)
		}
		for i = j; i < len(text) && blank(text[i]); {
			i++
		}
	}
	if t == nil {
		t.add(0, at)
	}
	t.end(len(text), at)
	return t
}

// blank reports whether c is white space.
func blank(c byte) bool { return c == ' ' || c == '\t' || c == '\n' || c == '\r' }
