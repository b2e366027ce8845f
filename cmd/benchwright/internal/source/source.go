// Package source holds the text of input files and converts byte offsets to
// lines and columns. Everywhere else a position is a byte offset in the whole
// file; only a message needs a line.
package source

import (
	"bytes"
	"sort"
	"sync"
	"unicode/utf8"
)

// A File is one input file.
type File struct {
	Name string // path relative to the workspace, with slashes
	Text []byte // the whole file, with any byte order mark

	once  sync.Once
	lines []int // offset of each line's first byte
}

// NewFile returns the file called name that holds text.
func NewFile(name string, text []byte) *File { return &File{Name: name, Text: text} }

// A Span is a half-open range of byte offsets in a whole file.
type Span struct{ Start, End int }

// Len returns the number of bytes in the span.
func (s Span) Len() int { return s.End - s.Start }

// A Place is a span of a file; messages point at one.
type Place struct {
	File *File
	Span Span
}

// At returns the place of the span from start to end in the file.
func (f *File) At(start, end int) Place { return Place{f, Span{start, end}} }

// Text returns the bytes of the place, "" if it is outside its file.
func (p Place) Text() string {
	if p.File == nil || p.Span.Start < 0 || p.Span.End > len(p.File.Text) || p.Span.Start > p.Span.End {
		return ""
	}
	return string(p.File.Text[p.Span.Start:p.Span.End])
}

// A Position is a line and column, both 1-based. The column counts runes.
type Position struct{ Line, Column int }

var mark = []byte("\ufeff")

func (f *File) index() []int {
	f.once.Do(func() {
		f.lines = []int{0}
		for i, b := range f.Text {
			if b == '\n' {
				f.lines = append(f.lines, i+1)
			}
		}
	})
	return f.lines
}

// Position returns the line and column of the byte at offset. An offset past
// the end is taken as the end; a byte order mark takes no column.
func (f *File) Position(offset int) Position {
	offset = max(0, min(offset, len(f.Text)))
	lines := f.index()
	n := sort.SearchInts(lines, offset+1)
	start := lines[n-1]
	if n == 1 && bytes.HasPrefix(f.Text, mark) {
		start = min(offset, len(mark))
	}
	column := 1
	for i := start; i < offset; column++ {
		_, size := utf8.DecodeRune(f.Text[i:])
		i += size
	}
	return Position{n, column}
}

// LineSpan returns the span of line n, 1-based, without its line end.
func (f *File) LineSpan(n int) Span {
	lines := f.index()
	if n < 1 || n > len(lines) {
		return Span{len(f.Text), len(f.Text)}
	}
	start, end := lines[n-1], len(f.Text)
	if n < len(lines) {
		end = lines[n] - 1
	}
	if n == 1 && bytes.HasPrefix(f.Text, mark) {
		start = len(mark)
	}
	if end > start && f.Text[end-1] == '\r' {
		end--
	}
	return Span{start, max(start, end)}
}
