package quantity

import (
	"testing"
	"unicode/utf8"
)

// FuzzParseBand holds that no text makes the reader panic, that a problem
// points into the text and says something, and that what is printed of a band
// reads as the same band.
func FuzzParseBand(f *testing.F) {
	f.Fuzz(func(t *testing.T, text string, comma bool) {
		mark := Point
		if comma {
			mark = Comma
		}
		b, p := ParseBand(text, mark)
		if p != nil {
			if p.Start < 0 || p.Start > p.End || p.End > len(text) {
				t.Errorf("%q: the place is %d to %d", text, p.Start, p.End)
			}
			if p.Slug == "" || p.Message == "" {
				t.Errorf("%q: an empty message", text)
			}
			if utf8.ValidString(text) && !utf8.ValidString(text[p.Start:p.End]) {
				t.Errorf("%q: the place %d to %d cuts a letter", text, p.Start, p.End)
			}
			return
		}
		again, p := ParseBand(b.Written, mark)
		if p != nil {
			t.Fatalf("%q is written %q: %s", text, b.Written, p.Message)
		}
		if !again.Same(b) || again.Form != b.Form || again.Written != b.Written {
			t.Errorf("%q is written %q, which is another", text, b.Written)
		}
		limits, p := ParseBand(b.Range(mark), mark)
		if p != nil {
			t.Fatalf("%q has the range %q: %s", text, b.Range(mark), p.Message)
		}
		if b.Form == PlusMinus {
			b.Form, b.Nominal = Range, nil
		}
		if !limits.Same(b) {
			t.Errorf("%q has the range %q, which is another", text, b.Range(mark))
		}
	})
}
