// Package diag holds what benchwright says to a writer: one message for one
// slip, each with a slug, a place, a sentence and the fix. Every room may
// report; nobody else prints.
package diag

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/source"
)

// A Severity says whether a message stops the card.
type Severity string

// Errors stop a card from being built; warnings do not.
const (
	Error   Severity = "error"
	Warning Severity = "warning"
)

// A Diagnostic is one message.
type Diagnostic struct {
	Slug    string       // names the rule; diag/pages has its page and severity
	At      source.Place // the narrowest place that is wrong
	Message string       // one sentence: what is wrong, no position, no full stop
	Label   string       // a few words at the caret, "" for none
	Related []Related    // other places that matter
	Fix     string       // the fix, in the imperative, "" where there is none
	Edit    *Edit        // the fix as an edit, where a program could make it
	Fixes   *Fixes       // two fixes of which Fix is one when it is known how the shop writes numbers; mostly nil
	Rests   Basis        // what may be at fault in its place

	listed bool // it was put on a list
}

// Fixes are the fixes of a number in a shop that writes 0,15 and in one that
// writes 0.15.
type Fixes struct{ Comma, Point string }

// A Basis is the files that a message takes for sound. Where one of them has an
// error of its own, that error may have caused the message, which then waits:
// one slip gives one message.
type Basis uint8

// The files that a message may rest on; they can be joined.
const (
	OnUnit Basis = 1 << iota
	OnShop
	OnProcedure // the rest of the file that it is about
)

// A Related is another place that a message speaks of.
type Related struct {
	At      source.Place
	Message string
}

// An Edit replaces the text at a place.
type Edit struct {
	At   source.Place
	Text string
}

// Severity returns what the slug's page says.
func (d Diagnostic) Severity() Severity {
	if p, ok := PageOf(d.Slug); ok {
		return p.Severity
	}
	return Error
}

// A List collects messages. The zero List is ready to use. A List belongs to
// one goroutine; work in parallel has one List each, joined with Join.
type List struct {
	items    []Diagnostic
	reported int // errors that were ever put on it
}

// Add puts d on the list and returns it there, so that a caller can add
// related places to it.
func (l *List) Add(d Diagnostic) *Diagnostic {
	// What is printed on a card keeps value and unit together; a message is
	// copied and searched.
	d.Message, d.Label, d.Fix = spaced(d.Message), spaced(d.Label), spaced(d.Fix)
	d.listed = true
	if d.Severity() == Error {
		l.reported++
	}
	l.items = append(l.items, d)
	return &l.items[len(l.items)-1]
}

func spaced(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }

// Report adds a message and its fix.
func (l *List) Report(slug string, at source.Place, fix, format string, args ...any) *Diagnostic {
	return l.Add(Diagnostic{Slug: slug, At: at, Fix: fix, Message: fmt.Sprintf(format, args...)})
}

// Join adds all messages of other.
func (l *List) Join(other *List) {
	l.items = append(l.items, other.items...)
	l.reported += other.reported
}

// Len returns how many messages there are.
func (l *List) Len() int { return len(l.items) }

// Errors returns how many of the messages are errors.
func (l *List) Errors() int {
	n := 0
	for i := range l.items {
		if l.items[i].Severity() == Error {
			n++
		}
	}
	return n
}

// Reported returns how many errors were ever put on the list: those that were
// taken off it again count too.
func (l *List) Reported() int { return l.reported }

// Sorted returns the messages in the one order in which they are shown: by
// file, offset, slug, text. The same message at the same place, as two
// variants of a card give it, is shown once.
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

// Settle makes the fixes that depend on how the shop writes numbers one.
func (l *List) Settle(comma bool) {
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

// Take takes the messages for which which is true off the list.
func (l *List) Take(which func(Diagnostic) bool) *List {
	taken := &List{}
	for _, d := range l.items {
		if which(d) {
			taken.items = append(taken.items, d)
		}
	}
	l.Keep(func(d Diagnostic) bool { return !which(d) })
	return taken
}

// Keep drops every message for which keep is false.
func (l *List) Keep(keep func(Diagnostic) bool) {
	l.items = slices.DeleteFunc(l.items, func(d Diagnostic) bool { return !keep(d) })
}

func name(p source.Place) string {
	if p.File == nil {
		return ""
	}
	return p.File.Name
}
