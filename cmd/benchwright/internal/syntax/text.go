package syntax

import (
	"bytes"
	"fmt"
	"unicode/utf8"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

// Limits on input: both parsers take quadratic time on some inputs, and no
// real procedure comes near these.
const (
	maxFile  = 256 << 10 // bytes in a file
	maxLine  = 2 << 10   // bytes in a line
	maxProse = 8 << 10   // bytes in a paragraph or a table
	maxDepth = 32        // nested mappings and sequences
	maxValue = 400       // characters of one YAML value
	maxSteps = 500       // steps in a procedure
)

const byteOrderMark = "\ufeff"

// markLen returns the length of the byte order mark at the start of text, 0
// without one.
func markLen(text []byte) int {
	if bytes.HasPrefix(text, []byte(byteOrderMark)) {
		return len(byteOrderMark)
	}
	return 0
}

// legible checks the size and characters of a file and returns its text for
// the parsers: the file's bytes, with each refused character replaced by as
// many blanks as it has bytes, so that offsets stay valid. It reports what it
// finds, and returns false when the file cannot be parsed.
func legible(f *source.File, msgs *diag.List) ([]byte, bool) {
	text := f.Text
	if len(text) > maxFile {
		msgs.Report("too-large", f.At(0, 0), "split it into several files",
			"the file has %d KB, more than the %d KB that are read", (len(text)+1023)>>10, maxFile>>10)
		return nil, false
	}
	if bytes.HasPrefix(text, []byte("\xff\xfe")) || bytes.HasPrefix(text, []byte("\xfe\xff")) {
		msgs.Report("text-malformed", f.At(0, 2), "save the file as UTF-8", "the file is UTF-16 text")
		return nil, false
	}
	clean, ok := text, true
	seen := map[string]bool{}
	line := markLen(text) // start of the current line
	for i := line; i < len(f.Text); {
		r, size := utf8.DecodeRune(f.Text[i:])
		switch {
		case r == '\n':
			line = i + 1
		case i-line == maxLine || i-line < maxLine && i-line+size > maxLine:
			if !seen["line"] {
				seen["line"] = true
				n := f.Position(i).Line
				msgs.Report("too-large", f.At(i, f.LineSpan(n).End), "break the line",
					"line %d is longer than the %d KB that a line may have", n, maxLine>>10)
			}
			ok = false
		}
		if name, fix := refused(f.Text[i:], r, size); name != "" {
			if !seen[name] {
				seen[name] = true
				msgs.Report("text-malformed", f.At(i, i+size), fix, "there is %s in the text", name)
			}
			if &clean[0] == &f.Text[0] {
				clean = bytes.Clone(f.Text)
			}
			copy(clean[i:i+size], "    ")
			ok = ok && r != '\r' // without line ends, every position would be wrong
		}
		i += size
	}
	return clean, ok
}

// refused returns a name and a fix for the character r at the start of text,
// "" if the character is allowed.
func refused(text []byte, r rune, size int) (name, fix string) {
	switch {
	case r == '\n' || r == '\t':
	case r == '\r':
		if len(text) < 2 || text[1] != '\n' {
			return "a carriage return without a line feed", "save the file with the line ends LF or CRLF"
		}
	case r == 0:
		return "a NUL byte", "delete it, or save the file as UTF-8 text"
	case r == 0x85:
		return "the line separator U+0085", "put an ordinary line end in its place"
	case r == 0x2028:
		return "the line separator U+2028", "put an ordinary line end in its place"
	case r == 0x2029:
		return "the paragraph separator U+2029", "put ordinary line ends in its place"
	case r == utf8.RuneError && size == 1:
		return fmt.Sprintf("a byte that is not UTF-8 (0x%02X)", text[0]), "save the file as UTF-8"
	case r < 0x20 || r >= 0x7F && r < 0xA0 || r == 0xFEFF || r == 0xFFFE || r == 0xFFFF:
		return fmt.Sprintf("the invisible character U+%04X", r), "delete it"
	}
	return "", ""
}
