package source

import "testing"

func TestPosition(t *testing.T) {
	const text = "\ufeffa µ\r\nb\t—x\n\nend"
	f := NewFile("f.md", []byte(text))
	for _, c := range []struct {
		offset, line, column int
	}{
		{0, 1, 1},   // the mark itself
		{3, 1, 1},   // a
		{5, 1, 3},   // µ, two bytes
		{7, 1, 4},   // CR
		{9, 2, 1},   // b
		{11, 2, 3},  // —, three bytes
		{14, 2, 4},  // x
		{16, 3, 1},  // the empty line
		{17, 4, 1},  // e
		{20, 4, 4},  // the end
		{999, 4, 4}, // past it
		{-1, 1, 1},  // before it
	} {
		if got := f.Position(c.offset); got != (Position{c.line, c.column}) {
			t.Errorf("offset %d is %v, want %d:%d", c.offset, got, c.line, c.column)
		}
	}
	for i, want := range []string{"a µ", "b\t—x", "", "end", ""} {
		s := f.LineSpan(i + 1)
		if got := (Place{f, s}).Text(); got != want {
			t.Errorf("line %d is %q, want %q", i+1, got, want)
		}
	}
}
