package diag

import (
	"embed"
	"fmt"
	"slices"
	"strings"
	"sync"
)

//go:embed pages/*.md
var pages embed.FS

// A Page is what `benchwright explain` prints of a slug. Its form:
//
//	# limits-missing
//
//	error: a measurement has no limits
//
//	What it means …
//
//	## At the bench
//	Why it matters …
//
//	## Example
//	fenced files, the wrong text between « and »
//
//	## Fix
//	the same files, put right
type Page struct {
	Slug     string
	Severity Severity
	Summary  string // one line
	Text     string // the page as it stands in its file
}

var allPages = sync.OnceValue(func() map[string]Page {
	entries, err := pages.ReadDir("pages")
	if err != nil {
		panic(err) // the pages are embedded in the program
	}
	out := make(map[string]Page, len(entries))
	for _, e := range entries {
		text, err := pages.ReadFile("pages/" + e.Name())
		if err != nil {
			panic(err)
		}
		p, err := parsePage(strings.TrimSuffix(e.Name(), ".md"), string(text))
		if err != nil {
			panic(err)
		}
		out[p.Slug] = p
	}
	return out
})

func parsePage(slug, text string) (Page, error) {
	lines := strings.SplitN(text, "\n", 4)
	if len(lines) < 4 || lines[0] != "# "+slug || lines[1] != "" {
		return Page{}, fmt.Errorf("pages/%s.md does not begin with its name as heading", slug)
	}
	severity, summary, ok := strings.Cut(lines[2], ": ")
	if s := Severity(severity); !ok || s != Error && s != Warning {
		return Page{}, fmt.Errorf("pages/%s.md: third line is not 'error: …' or 'warning: …'", slug)
	}
	return Page{slug, Severity(severity), summary, text}, nil
}

// PageOf returns the page of a slug.
func PageOf(slug string) (Page, bool) {
	p, ok := allPages()[slug]
	return p, ok
}

// Slugs returns every slug that has a page, sorted.
func Slugs() []string {
	var out []string
	for s := range allPages() {
		out = append(out, s)
	}
	slices.Sort(out)
	return out
}

// WithCarets returns the page for a reader: the « » around the wrong text of
// its example become a line of carets below it.
func (p Page) WithCarets() string {
	var b strings.Builder
	for line := range strings.Lines(p.Text) {
		before, rest, marked := strings.Cut(line, "«")
		wrong, after, closed := strings.Cut(rest, "»")
		if !marked || !closed {
			b.WriteString(line)
			continue
		}
		b.WriteString(before + wrong + after)
		b.WriteString(strings.Repeat(" ", Cells(before)) + strings.Repeat("^", max(1, Cells(wrong))) + "\n")
	}
	return b.String()
}
