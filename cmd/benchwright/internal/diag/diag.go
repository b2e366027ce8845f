// Package diag holds the messages to the writer: one for each slip, with a
// slug, a place, a sentence and the fix. Any package may report one; only the
// command line prints them.
package diag

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/source"
)

// A Severity tells whether a message stops a card.
type Severity string

// An error keeps a card from being built; a warning does not.
const (
	Error   Severity = "error"
	Warning Severity = "warning"
)

// A Diagnostic is one message to the writer.
type Diagnostic struct {
	Slug    string       // name of the rule; diag/pages holds its page, with the severity
	At      source.Place // the narrowest span that is wrong
	Message string       // one sentence: what is wrong, without position and period
	Label   string       // a few words at the caret, or ""
	Related []Related    // other places involved
	Fix     string       // what to do, in the imperative, or ""
	Edit    *Edit        // the fix as an edit a program could make, or nil
	Fixes   *Fixes       // replaces Fix once the shop's decimal mark is known; mostly nil
	Basis   Basis        // the files that must be free of errors for the message to be shown

	listed bool // it has been added to a list
}

// Fixes holds the fix for a shop that writes 0,15 and for one that writes
// 0.15.
type Fixes struct{ Comma, Point string }

// A Basis is the set of files that a message relies on. If one of them has an
// error of its own, that error may have caused the message, so the message is
// held back: one slip gives one message.
type Basis uint8

// The files of a Basis; they can be combined.
const (
	OnUnit Basis = 1 << iota
	OnShop
	OnProcedure // the rest of the file that the message is about
)

// A Related is another place involved in a message.
type Related struct {
	At      source.Place
	Message string
}

// An Edit replaces the text at a place.
type Edit struct {
	At   source.Place
	Text string
}

// Severity returns the severity in the slug's page.
func (d Diagnostic) Severity() Severity {
	if p, ok := PageOf(d.Slug); ok {
		return p.Severity
	}
	return Error
}

// A List collects messages. The zero List is ready to use. A List is not safe
// for concurrent use: parallel work has one List each, joined with Join.
type List struct {
	items    []Diagnostic
	reported int // errors ever added, including extracted and dropped ones
}

// Add adds d and returns a pointer to it in the list, so that the caller can
// add related places. The pointer is valid until the next Add.
func (l *List) Add(d Diagnostic) *Diagnostic {
	// Cards keep a value and its unit on one line with a no-break space. In
	// messages, which are copied and searched, it is a plain blank.
	d.Message, d.Label, d.Fix = plainBlanks(d.Message), plainBlanks(d.Label), plainBlanks(d.Fix)
	d.listed = true
	if d.Severity() == Error {
		l.reported++
	}
	l.items = append(l.items, d)
	return &l.items[len(l.items)-1]
}

func plainBlanks(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }

// Report adds a message and returns it, as Add does.
func (l *List) Report(slug string, at source.Place, fix, format string, args ...any) *Diagnostic {
	return l.Add(Diagnostic{Slug: slug, At: at, Fix: fix, Message: fmt.Sprintf(format, args...)})
}

// Join adds all messages of other.
func (l *List) Join(other *List) {
	l.items = append(l.items, other.items...)
	l.reported += other.reported
}

// Len returns the number of messages.
func (l *List) Len() int { return len(l.items) }

// Errors returns the number of errors in the list.
func (l *List) Errors() int {
	n := 0
	for i := range l.items {
		if l.items[i].Severity() == Error {
			n++
		}
	}
	return n
}

// Reported returns the number of errors ever added, including those that were
// removed again.
func (l *List) Reported() int { return l.reported }

// Sorted returns the messages sorted by file, offset, slug and text. A message
// that two variants of a card give at the same place appears once.
func (l *List) Sorted() []Diagnostic {
	out := slices.Clone(l.items)
	slices.SortStableFunc(out, func(a, b Diagnostic) int {
		return cmp.Or(
			cmp.Compare(name(a.At), name(b.At)),
			cmp.Compare(a.At.Span.Start, b.At.Span.Start),
			cmp.Compare(a.Slug, b.Slug),
			cmp.Compare(a.Message, b.Message),
			cmp.Compare(a.At.Span.End, b.At.Span.End),
		)
	})
	return slices.CompactFunc(out, func(a, b Diagnostic) bool {
		return name(a.At) == name(b.At) && a.At.Span == b.At.Span && a.Slug == b.Slug && a.Message == b.Message
	})
}

// ChooseFixes sets Fix of every message that has Fixes.
func (l *List) ChooseFixes(comma bool) {
	for i := range l.items {
		switch d := &l.items[i]; {
		case d.Fixes == nil:
		case comma:
			d.Fix = d.Fixes.Comma
		default:
			d.Fix = d.Fixes.Point
		}
	}
}

// Extract removes the messages that match and returns them as a new list.
func (l *List) Extract(match func(Diagnostic) bool) *List {
	taken := &List{}
	for _, d := range l.items {
		if match(d) {
			taken.items = append(taken.items, d)
		}
	}
	l.Keep(func(d Diagnostic) bool { return !match(d) })
	return taken
}

// Keep removes the messages for which keep is false.
func (l *List) Keep(keep func(Diagnostic) bool) {
	l.items = slices.DeleteFunc(l.items, func(d Diagnostic) bool { return !keep(d) })
}

func name(p source.Place) string {
	if p.File == nil {
		return ""
	}
	return p.File.Name
}
