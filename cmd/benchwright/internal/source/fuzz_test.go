package source

import (
	"testing"
	"unicode/utf8"
)

// Whatever the bytes, every offset has a position inside the file, positions
// rise with offsets, and an offset lies in the line that its position names.
func FuzzPosition(f *testing.F) {
	for _, s := range []string{"", "a", "a\nb", "\ufeffa\r\nµ\n", "\n\n", "\r", "\xff\xfe\n", "—\t\u2028x"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		file := NewFile("f", text)
		last := Position{1, 1}
		for i := 0; i <= len(text); i++ {
			p := file.Position(i)
			if p.Line < last.Line || p.Line == last.Line && p.Column < last.Column {
				t.Fatalf("offset %d is %v, after %v", i, p, last)
			}
			last = p
			if n := len(file.index()); p.Line > n {
				t.Fatalf("offset %d is on line %d of %d", i, p.Line, n)
			}
			line := file.LineSpan(p.Line)
			if line.Start < 0 || line.End > len(text) || line.Start > line.End {
				t.Fatalf("line %d is %v in %d bytes", p.Line, line, len(text))
			}
			if p.Column > utf8.RuneCount(text)+1 {
				t.Fatalf("offset %d is in column %d", i, p.Column)
			}
			if i < line.Start && i >= len(mark) {
				t.Fatalf("offset %d stands before its line %v", i, line)
			}
		}
	})
}
