package compare

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"
)

// Format names the form of the JSON document. Fields may be added under it;
// none is taken away.
const Format = "benchwright-changes/1"

const (
	red    = "\x1b[1;31m"
	yellow = "\x1b[1;33m"
	faint  = "\x1b[2m"
	bold   = "\x1b[1m"
	reset  = "\x1b[0m"
)

var colors = map[Class]string{Safety: red, Method: yellow, Wording: faint}

// WriteText writes a report for a person to read. With color, the classes are
// colored for a terminal.
func (r *Report) WriteText(w io.Writer, color bool) error {
	b := bufio.NewWriter(w)
	paint := func(code, text string) string {
		if !color {
			return text
		}
		return code + text + reset
	}
	for _, c := range r.Cards {
		fmt.Fprintf(b, "%s %s%s\n", paint(bold, c.Number), c.Title, c.because())
		for _, line := range c.unread() {
			fmt.Fprintf(b, "  %s\n", line)
		}
		last := ""
		for _, x := range c.Changes {
			if at := c.where(x); at != last {
				fmt.Fprintf(b, "  %s\n", at)
				last = at
			}
			fmt.Fprintf(b, "    %s %s\n", paint(colors[x.Class], fmt.Sprintf("%-8s", x.Class)), x.text())
		}
		fmt.Fprintln(b)
	}
	fmt.Fprintln(b, r.sum())
	for _, line := range r.bench() {
		fmt.Fprintln(b, line)
	}
	return b.Flush()
}

// WriteMarkdown writes a report for a review comment.
func (r *Report) WriteMarkdown(w io.Writer) error {
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, "**%s**\n", r.sum())
	for _, line := range r.bench() {
		fmt.Fprintf(b, "\n%s\n", cell(line))
	}
	for _, c := range r.Cards {
		fmt.Fprintf(b, "\n### %s %s%s\n\n", c.Number, cell(c.Title), cell(c.because()))
		for _, line := range c.unread() {
			fmt.Fprintf(b, "%s\n\n", cell(line))
		}
		if len(c.Changes) == 0 {
			continue
		}
		fmt.Fprint(b, "| class | where | what | before | after | |\n|---|---|---|---|---|---|\n")
		for _, x := range c.Changes {
			fmt.Fprintf(b, "| %s | %s | %s | %s | %s | %s |\n", x.Class, cell(c.where(x)), cell(x.What), cell(x.Before), cell(x.After), cell(x.Note))
		}
	}
	return b.Flush()
}

// cell is a text that Markdown prints as it stands, in a table too.
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
			line := fmt.Sprintf("the %s side does not compile, %s: compared as far as it reads", s.name, count(s.Errors, "error", "errors"))
			if s.First != "" {
				line += ". " + s.First
			}
			out = append(out, line)
		}
	}
	return out
}

// where says where a change stands, with its variants where it does not reach
// all of the card's.
func (c Card) where(x Change) string {
	at := x.Place
	switch s := x.Step; {
	case at != "":
	case s.New == 0:
		at = fmt.Sprintf("old step %d, %s", s.Old, s.Title)
	default:
		at = fmt.Sprintf("step %d, %s", s.New, s.Title)
	}
	if len(x.Variants) > 0 && len(x.Variants) < len(c.Variants) {
		at += " [" + strings.Join(x.Variants, ", ") + "]"
	}
	return at
}

func (x Change) text() string {
	text := x.What + ": " + x.Before
	if x.After != "" {
		if x.Before == "" {
			text = x.What + ": " + x.After
		} else {
			text += " → " + x.After
		}
	}
	if x.Before != "" && x.After == "" && !strings.HasSuffix(x.What, "removed") {
		text += " → nothing"
	}
	if x.Before == "" && !strings.HasSuffix(x.What, "added") && !strings.HasSuffix(x.What, "on") {
		text = x.What + ": nothing → " + x.After
	}
	if x.Note != "" {
		text += " (" + x.Note + ")"
	}
	return text
}

// sum says how many changes of each class there are.
func (r *Report) sum() string {
	changed := 0
	for _, c := range r.Cards {
		if len(c.Changes) > 0 {
			changed++
		}
	}
	if changed == 0 {
		return "no change in what the cards say"
	}
	return fmt.Sprintf("%s changed: %d safety, %d method, %d wording", count(changed, "card", "cards"), r.Count(Safety), r.Count(Method), r.Count(Wording))
}

// bench says which cards are printed again and which are taken off the bench.
func (r *Report) bench() []string {
	var again, off []string
	for _, c := range r.Cards {
		name := c.Number
		if used := c.reached(); len(used) > 0 && len(used) < len(c.Variants) {
			name += " (" + strings.Join(used, ", ") + ")"
		}
		if len(c.Changes) == 0 {
			continue
		}
		if c.New.There {
			again = append(again, name)
		}
		if c.Old.There {
			off = append(off, name)
		}
	}
	var out []string
	if len(again) > 0 {
		out = append(out, "print again: "+strings.Join(again, ", "))
	}
	if len(off) > 0 {
		out = append(out, "take off the bench: "+strings.Join(off, ", "))
	}
	if unsure := r.Unsure(); len(unsure) > 0 {
		out = append(out, "cannot be compared: "+strings.Join(unsure, ", ")+" has errors that may hide a change")
	}
	return out
}

// reached returns the variants that the changes of a card reach; nil where one
// reaches the card whole.
func (c Card) reached() []string {
	var out []string
	for _, id := range c.Variants {
		if slices.ContainsFunc(c.Changes, func(x Change) bool { return slices.Contains(x.Variants, id) }) {
			out = append(out, id)
		}
	}
	if slices.ContainsFunc(c.Changes, func(x Change) bool { return len(x.Variants) == 0 }) {
		return nil
	}
	return out
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

type jsonStep struct {
	Title string `json:"title"`
	Old   int    `json:"old"`
	New   int    `json:"new"`
}

type jsonChange struct {
	Class    Class     `json:"class"`
	Variants []string  `json:"variants"`
	Step     *jsonStep `json:"step"`
	Place    string    `json:"place"`
	What     string    `json:"what"`
	Before   string    `json:"before"`
	After    string    `json:"after"`
	Note     string    `json:"note"`
}

type jsonSide struct {
	There  bool   `json:"there"`
	Errors int    `json:"errors"`
	First  string `json:"first"`
}

type jsonCard struct {
	Card     string       `json:"card"`
	Title    string       `json:"title"`
	Variants []string     `json:"variants"`
	Causes   []string     `json:"causes"`
	Old      jsonSide     `json:"old"`
	New      jsonSide     `json:"new"`
	Changes  []jsonChange `json:"changes"`
}

// WriteJSON writes a report as one document. Every field is always there; step
// is null for what stands in no step.
func (r *Report) WriteJSON(w io.Writer) error {
	doc := struct {
		Format string        `json:"format"`
		Counts map[Class]int `json:"counts"`
		Cards  []jsonCard    `json:"cards"`
	}{Format, map[Class]int{}, []jsonCard{}}
	for _, class := range Classes {
		doc.Counts[class] = r.Count(class)
	}
	for _, c := range r.Cards {
		j := jsonCard{Card: c.Number, Title: c.Title, Variants: some(c.Variants), Causes: some(c.Causes), Old: jsonSide(c.Old), New: jsonSide(c.New), Changes: []jsonChange{}}
		for _, x := range c.Changes {
			change := jsonChange{Class: x.Class, Variants: some(x.Variants), Place: x.Place, What: x.What, Before: x.Before, After: x.After, Note: x.Note}
			if x.Place == "" {
				change.Step = &jsonStep{x.Step.Title, x.Step.Old, x.Step.New}
			}
			j.Changes = append(j.Changes, change)
		}
		doc.Cards = append(doc.Cards, j)
	}
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(doc)
}

// some is a list that JSON writes as one, empty or not.
func some(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}
