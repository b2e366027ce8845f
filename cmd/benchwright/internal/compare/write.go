package compare

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strings"
)

const (
	red    = "\x1b[1;31m"
	yellow = "\x1b[1;33m"
	faint  = "\x1b[2m"
	bold   = "\x1b[1m"
	reset  = "\x1b[0m"
)

var colors = map[Class]string{Safety: red, Method: yellow, Wording: faint}

// WriteText writes a report for a person to read. With color, the classes and
// what holds from now on are colored for a terminal.
func (r *Report) WriteText(w io.Writer, color bool) error {
	b := bufio.NewWriter(w)
	paint := func(code, text string) string {
		if !color || text == "" {
			return text
		}
		return code + text + reset
	}
	for _, c := range r.Cards {
		fmt.Fprintf(b, "%s %s%s\n", paint(bold, c.Number), c.Title, paint(faint, c.because()))
		for _, line := range c.unread() {
			fmt.Fprintf(b, "  %s\n", line)
		}
		last := ""
		for _, x := range c.Changes {
			if at := c.where(x); at != last {
				fmt.Fprintf(b, "  %s\n", at)
				last = at
			}
			fmt.Fprintf(b, "    %s %s\n", paint(colors[x.Class], fmt.Sprintf("%-8s", x.Class)), c.text(x, func(s string) string { return paint(bold, s) }))
		}
		fmt.Fprintln(b)
	}
	fmt.Fprintln(b, paint(bold, r.sum()))
	for _, line := range r.bench() {
		fmt.Fprintln(b, line)
	}
	return b.Flush()
}

// text returns a change on one line, with what holds from now on marked.
func (c Card) text(x Change, mark func(string) string) string {
	before, after := x.values()
	text := x.What
	switch {
	case before == "" && after != "":
		text += ": " + mark(after)
	case before != "" && after == "":
		text += ": " + before
	case before != "":
		text += ": " + before + " → " + mark(after)
	}
	if note := c.note(x); note != "" {
		text += " (" + note + ")"
	}
	return text
}

// WriteMarkdown writes a report for a review comment.
func (r *Report) WriteMarkdown(w io.Writer) error {
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, "**%s**\n", r.sum())
	for _, line := range r.bench() {
		fmt.Fprintf(b, "\n%s\n", cell(line))
	}
	for _, c := range r.Cards {
		fmt.Fprintf(b, "\n### %s %s%s\n\n", cell(c.Number), cell(c.Title), cell(c.because()))
		for _, line := range c.unread() {
			fmt.Fprintf(b, "%s\n\n", cell(line))
		}
		if len(c.Changes) == 0 {
			continue
		}
		fmt.Fprint(b, "| class | where | what | before | after | |\n|---|---|---|---|---|---|\n")
		for _, x := range c.Changes {
			class := string(x.Class)
			if x.Class == Safety {
				class = "**" + class + "**"
			}
			before, after := x.values()
			fmt.Fprintf(b, "| %s | %s | %s | %s | %s | %s |\n", class, cell(c.where(x)), cell(x.What), cell(before), cell(after), cell(c.note(x)))
		}
	}
	return b.Flush()
}

// cell returns a text that Markdown prints as it stands, in a table too.
func cell(text string) string {
	var b strings.Builder
	for _, r := range text {
		if strings.ContainsRune("\\`*_[]<>|#~&", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}

// because names the files that the changes come from.
func (c Card) because() string {
	if len(c.Causes) == 0 {
		return ""
	}
	return " (" + strings.Join(c.Causes, ", ") + ")"
}

// unread says on which side the card does not compile.
func (c Card) unread() []string {
	var out []string
	for _, s := range []struct {
		name string
		Side
	}{{"old", c.Old}, {"new", c.New}} {
		if s.Errors > 0 {
			line := fmt.Sprintf("the %s side has %s and prints no card; it is compared as far as it can be read", s.name, count(s.Errors, "error", "errors"))
			if s.First != "" {
				line += ". " + s.First
			}
			out = append(out, line)
		}
	}
	return out
}

// where says where a change stands, with its variants where it does not reach
// all of the card's, and its pages.
func (c Card) where(x Change) string {
	at := x.Place
	if at == "" {
		at = "step " + x.perVariant(func(r Reach) string { return fmt.Sprint(r.New.Step) }) + ", " + x.Title
		if x.Reaches[0].New.Step == 0 {
			at = "old step " + x.perVariant(func(r Reach) string { return fmt.Sprint(r.Old.Step) }) + ", " + x.Title
		}
	}
	if len(x.Reaches) < len(c.Variants) {
		at += " [" + strings.Join(x.variants(), ", ") + "]"
	}
	if x.Place != onCard && x.Place != onHead {
		if pages := x.perVariant(Reach.pages); pages != "" {
			at += ", " + pages
		}
	}
	return at
}

// variants returns the ids of the variants that a change reaches.
func (x Change) variants() []string {
	var out []string
	for _, r := range x.Reaches {
		if r.Variant != "" {
			out = append(out, r.Variant)
		}
	}
	return out
}

// perVariant says a thing once if it is the same in all variants, else with the
// variants behind it.
func (x Change) perVariant(say func(Reach) string) string {
	var texts, out []string
	ids := map[string][]string{}
	for _, r := range x.Reaches {
		text := say(r)
		if !slices.Contains(texts, text) {
			texts = append(texts, text)
		}
		ids[text] = append(ids[text], r.Variant)
	}
	if len(texts) == 1 {
		return texts[0]
	}
	for _, text := range texts {
		out = append(out, fmt.Sprintf("%s (%s)", text, strings.Join(ids[text], ", ")))
	}
	return strings.Join(out, ", ")
}

// pages says on which pages a change stands, on both sides where they differ.
func (r Reach) pages() string {
	switch old, new := pageList(r.Old.Pages), pageList(r.New.Pages); {
	case old == new || old == "":
		return new
	case new == "":
		return "old " + old
	default:
		return old + ", now " + new
	}
}

// pageList writes pages as "page 4" or "pages 3–5, 8"; "" for none.
func pageList(pages []int) string {
	var runs []string
	for i := 0; i < len(pages); {
		j := i
		for j+1 < len(pages) && pages[j+1] == pages[j]+1 {
			j++
		}
		switch {
		case j == i:
			runs = append(runs, fmt.Sprint(pages[i]))
		case j == i+1:
			runs = append(runs, fmt.Sprint(pages[i]), fmt.Sprint(pages[j]))
		default:
			runs = append(runs, fmt.Sprintf("%d–%d", pages[i], pages[j]))
		}
		i = j + 1
	}
	switch len(pages) {
	case 0:
		return ""
	case 1:
		return "page " + runs[0]
	}
	return "pages " + strings.Join(runs, ", ")
}

// note says how a value changed, and which file it comes from where the card's
// changes come from several.
func (c Card) note(x Change) string {
	if len(x.Causes) == 0 || len(x.Causes) == len(c.Causes) {
		return x.Note
	}
	from := "from " + strings.Join(x.Causes, ", ")
	if x.Note == "" {
		return from
	}
	return x.Note + "; " + from
}

// values returns what stood there and what stands there now. What long texts
// share at their ends is cut to a few words.
func (x Change) values() (before, after string) {
	ends := func(with ...string) bool {
		return slices.ContainsFunc(with, func(s string) bool { return strings.HasSuffix(x.What, s) })
	}
	switch {
	case x.Before == "" && x.After == "", ends(" order", " moved"):
		return x.Before, x.After
	case x.Before == "" && !ends("added", " on"):
		return "nothing", x.After
	case x.After == "" && !ends("removed", " served"):
		return x.Before, "nothing"
	case x.Before == "" || x.After == "":
		return x.Before, x.After
	}
	const lead, tail = 3, 2 // words that stay
	a, b := strings.Fields(x.Before), strings.Fields(x.After)
	first := 0
	for first < min(len(a), len(b)) && a[first] == b[first] {
		first++
	}
	last := 0
	for last < min(len(a), len(b))-first && a[len(a)-1-last] == b[len(b)-1-last] {
		last++
	}
	cut := func(words []string) string {
		from, to := 0, len(words)
		if first > lead+2 {
			from = first - lead
		}
		if last > tail+2 {
			to -= last - tail
		}
		text := strings.Join(words[from:to], " ")
		if from > 0 {
			text = "… " + text
		}
		if to < len(words) {
			text += " …"
		}
		return text
	}
	return cut(a), cut(b)
}

// sum says how many changes of each class there are.
func (r *Report) sum() string {
	changed := 0
	for _, c := range r.Cards {
		if len(c.Changes) > 0 {
			changed++
		}
	}
	if changed == 0 && len(r.Unsure()) > 0 {
		return "no change found in what the cards say"
	}
	if changed == 0 {
		return "no change in what the cards say"
	}
	return fmt.Sprintf("%s changed: %d safety, %d method, %d wording", count(changed, "card", "cards"), r.Count(Safety), r.Count(Method), r.Count(Wording))
}

// pages names the pages of each card that are to be printed again, with its
// record strip, or to be taken off.
func (r *Report) pages(of func(Card) []Pages, print bool) []string {
	var names []string
	for _, c := range r.Cards {
		for _, p := range of(c) {
			if p.Of > 0 && len(p.Pages) == 0 {
				continue
			}
			name := c.Number
			if len(p.Variants) > 0 && len(p.Variants) < len(c.Variants) {
				name += " (" + strings.Join(p.Variants, ", ") + ")"
			}
			switch {
			case p.Of == 0 && print:
				name += ", when its errors are fixed"
			case p.Of > 1 && len(p.Pages) == p.Of:
				name += fmt.Sprintf(" all %d pages", p.Of)
			case p.Of > 0:
				name += " " + pageList(p.Pages)
			}
			names = append(names, name)
		}
		if print && c.Strip {
			names = append(names, c.Number+" record strip")
		}
	}
	return names
}

// bench says which pages are printed again and which are taken off the bench.
func (r *Report) bench() []string {
	var out []string
	for _, l := range []struct {
		say   string
		pages func(Card) []Pages
		strip bool
	}{
		{"print again", func(c Card) []Pages { return c.Print }, true},
		{"take off the bench", func(c Card) []Pages { return c.Off }, false},
	} {
		names := r.pages(l.pages, l.strip)
		if len(names) > 0 {
			out = append(out, l.say+": "+strings.Join(names, "; "))
		}
	}
	var marked []string
	for _, c := range r.Cards {
		if len(c.Changes) > 0 && !slices.ContainsFunc(c.Changes, func(x Change) bool { return !x.controls() }) {
			marked = append(marked, c.Number)
		}
	}
	if len(marked) > 0 {
		out = append(out, "nothing but revision or date: "+strings.Join(marked, ", "))
	}
	if late := r.Unrevised(Safety); len(late) > 0 {
		out = append(out, "raise the revision: "+strings.Join(late, ", "))
	}
	if unsure := r.Unsure(); len(unsure) > 0 {
		out = append(out, "fix first, an error may hide a change: "+strings.Join(unsure, ", "))
	}
	return out
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
