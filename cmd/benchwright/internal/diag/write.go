package diag

import (
	"bufio"
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/width"

	"benchwright/cmd/benchwright/internal/source"
)

// maxPerFile is the number of messages of one file that WriteText shows.
const maxPerFile = 20

// WriteText writes the messages for a person to read. With color, it colors
// severity and caret for a terminal.
func WriteText(w io.Writer, messages []Diagnostic, color bool) error {
	b := bufio.NewWriter(w)
	p := printer{b, color}
	for i := 0; i < len(messages); {
		j := i
		for j < len(messages) && name(messages[j].At) == name(messages[i].At) {
			if j-i < maxPerFile {
				p.message(messages[j])
			}
			j++
		}
		if more := j - i - maxPerFile; more > 0 {
			fmt.Fprintf(b, "%s: and %d more\n\n", name(messages[i].At), more)
		}
		i = j
	}
	return b.Flush()
}

type printer struct {
	*bufio.Writer
	color bool
}

const (
	red    = "\x1b[1;31m"
	yellow = "\x1b[1;33m"
	green  = "\x1b[32m"
	bold   = "\x1b[1m"
	plain  = "\x1b[0m"
)

func (p printer) paint(code, s string) string {
	if !p.color || s == "" {
		return s
	}
	return code + s + plain
}

func (p printer) message(d Diagnostic) {
	severity, tint := d.Severity(), red
	if severity == Warning {
		tint = yellow
	}
	fmt.Fprintf(p, "%s%s %s [%s]\n", position(d.At), p.paint(tint, string(severity)+":"), p.paint(bold, Printable(d.Message)), d.Slug)
	p.excerpt(d.At, Printable(d.Label), tint)
	for _, r := range d.Related {
		fmt.Fprintf(p, "  %snote: %s\n", position(r.At), Printable(r.Message))
		p.excerpt(r.At, "", tint)
	}
	if d.Fix != "" {
		lines := strings.Split(d.Fix, "\n") // a fix may be a block of several lines to paste
		for i := range lines {
			lines[i] = Printable(lines[i])
		}
		fmt.Fprintf(p, "  %s %s\n", p.paint(green, "fix:"), strings.Join(lines, "\n"))
	}
	fmt.Fprintln(p)
}

// position returns "file:line:column: ", or as much of it as is known.
func position(at source.Place) string {
	if at.File == nil {
		return ""
	}
	if len(at.File.Text) == 0 {
		return at.File.Name + ": "
	}
	pos := at.File.Position(at.Span.Start)
	return fmt.Sprintf("%s:%d:%d: ", at.File.Name, pos.Line, pos.Column)
}

// maxExcerptCells is the number of screen cells of a line that are printed.
const maxExcerptCells = 100

// excerpt prints the line of a place, with the place underlined.
func (p printer) excerpt(at source.Place, label, tint string) {
	if at.File == nil || len(at.File.Text) == 0 {
		return
	}
	pos := at.File.Position(at.Span.Start)
	span := at.File.LineSpan(pos.Line)
	start := max(span.Start, min(at.Span.Start, span.End))
	end := max(start, min(at.Span.End, span.End))
	before, in, after := at.File.Text[span.Start:start], at.File.Text[start:end], at.File.Text[end:span.End]

	left, marked, right := Printable(string(before)), Printable(string(in)), Printable(string(after))
	if w := Cells(left); w > maxExcerptCells*2/3 {
		left = "…" + lastCells(left, maxExcerptCells/2)
	}
	marked = truncate(marked, maxExcerptCells-Cells(left))
	right = truncate(right, maxExcerptCells-Cells(left)-Cells(marked))
	number := fmt.Sprint(pos.Line)
	gap := strings.Repeat(" ", len(number))
	fmt.Fprintln(p, strings.TrimRight(fmt.Sprintf("  %s | %s", number, left+marked+right), " "))
	carets := strings.Repeat("^", max(1, Cells(marked)))
	if label != "" {
		label = " " + label
	}
	fmt.Fprintf(p, "  %s | %s%s\n", gap, strings.Repeat(" ", Cells(left)), p.paint(tint, carets+label))
}

// Printable returns s fit for a terminal: tabs become four blanks, and control
// characters and invalid bytes a mark, so that no input can control the
// terminal.
func Printable(s string) string {
	var b strings.Builder
	for i, r := range s {
		switch {
		case r == '\t':
			b.WriteString("    ")
		case r == utf8.RuneError && s[i] != 0xEF:
			b.WriteRune('�')
		case unicode.IsControl(r) || r == '\u2028' || r == '\u2029' || unicode.Is(unicode.Bidi_Control, r):
			b.WriteRune('·')
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// Cells returns the number of screen cells that s takes.
func Cells(s string) int {
	n := 0
	for _, r := range s {
		n += cell(r)
	}
	return n
}

func cell(r rune) int {
	if unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf) {
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}

// truncate returns the start of s that fits in n cells, ending in … if cut.
func truncate(s string, n int) string {
	if Cells(s) <= n {
		return s
	}
	for i, r := range s {
		if n -= cell(r); n < 1 {
			return s[:i] + "…"
		}
	}
	return s
}

func lastCells(s string, n int) string {
	over := Cells(s) - n
	for i, r := range s {
		if over <= 0 {
			return s[i:]
		}
		over -= cell(r)
	}
	return ""
}
