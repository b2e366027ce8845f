package check

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// english reports whether the rules about words apply: they know only English.
func (p *pass) english() bool {
	return p.Shop == nil || p.Shop.Language == "" || p.Shop.Language == "en"
}

// A text is a paragraph or list item of instructions, and its place.
type text struct {
	text string
	runs []syntax.Run
	file *source.File
}

// place returns the place of the bytes from:to of a text, or of the run that
// holds them if escapes or folded lines make that inexact.
func (t text) place(from, to int) source.Place {
	start, end := -1, -1
	at := 0
	for _, r := range t.runs {
		next := at + len(r.Text)
		exact := r.Span.Len() == len(r.Text)
		if start < 0 && from < next {
			start = r.Span.Start
			if exact {
				start += from - at
			}
		}
		if to <= next && end < 0 {
			end = r.Span.End
			if exact {
				end = r.Span.Start + to - at
			}
		}
		at = next
	}
	if start < 0 || end < start {
		return source.Place{File: t.file}
	}
	return t.file.At(start, end)
}

// texts returns the instructions of a step: heading, paragraphs and list
// items, but no tips, whys or tables.
func (p *pass) texts(s *card.Step) []text {
	file := p.Procedure.File
	out := []text{textOf(s.Source.Title, file)}
	for _, i := range s.Source.Items {
		prose, ok := i.(*procedure.Prose)
		if !ok {
			continue
		}
		switch c := prose.Content.(type) {
		case *syntax.Paragraph:
			out = append(out, textOf(c.Runs, file))
		case *syntax.List:
			out = listTexts(out, c, file)
		}
	}
	return out
}

func listTexts(out []text, l *syntax.List, f *source.File) []text {
	for _, i := range l.Items {
		out = append(out, textOf(i.Runs, f))
		if i.Sub != nil {
			out = listTexts(out, i.Sub, f)
		}
	}
	return out
}

func textOf(runs []syntax.Run, f *source.File) text {
	var b strings.Builder
	for _, r := range runs {
		b.WriteString(r.Text)
	}
	return text{b.String(), runs, f}
}

type sentence struct {
	text
	from, to int
	words    []word
}

// A word is a word as counted: a number with its unit, an identifier, a
// hyphenated group, or a name of the parts list.
type word struct {
	text     string // lower case, without punctuation
	from, to int    // in the text
	comma    bool   // a comma or bracket follows
}

func (s sentence) place() source.Place { return s.text.place(s.from, s.to) }

// instructions returns the sentences of a step's instructions, heading first.
func (p *pass) instructions(s *card.Step) []sentence {
	var out []sentence
	for _, t := range p.texts(s) {
		out = append(out, sentences(t, p.names())...)
	}
	return out
}

// sentences splits a text at periods, question and exclamation marks, colons,
// semicolons, and dashes between blanks.
func sentences(t text, names []string) []sentence {
	var out []sentence
	start := 0
	add := func(end int) {
		from, to := start, end
		for from < to && t.text[from] == ' ' {
			from++
		}
		for to > from && strings.ContainsRune(" .!?:;", rune(t.text[to-1])) {
			to--
		}
		if from < to {
			s := sentence{text: t, from: from, to: to}
			s.words = words(t.text, from, to, names)
			out = append(out, s)
		}
	}
	for i, r := range t.text {
		end := i + utf8.RuneLen(r)
		last := end == len(t.text)
		blank := last || t.text[end] == ' '
		if strings.ContainsRune(".!?:;", r) && blank || (r == '—' || r == '–') && blank && i > 0 && t.text[i-1] == ' ' {
			add(i)
			start = end
		}
	}
	add(len(t.text))
	return out
}

// words splits text[from:to] into words.
func words(text string, from, to int, names []string) []word {
	var out []word
	for i := from; i < to; {
		if text[i] == ' ' {
			i++
			continue
		}
		end := i
		for end < to && text[end] != ' ' {
			end++
		}
		if n := nameAt(text[i:to], names); i+n > end {
			end = i + n
			for end < to && text[end] != ' ' {
				end++
			}
		}
		raw := text[i:end]
		w := word{text: strings.ToLower(strings.TrimFunc(raw, isMark)), from: i, to: end, comma: strings.ContainsAny(raw[len(raw)-1:], ",)")}
		if w.text != "" {
			if n := len(out); n > 0 && isUnit(w.text, strings.TrimFunc(raw, isMark)) && isNumber(out[n-1].text) {
				out[n-1].to, out[n-1].comma = w.to, w.comma
			} else {
				out = append(out, w)
			}
		} else if n := len(out); n > 0 && w.comma {
			out[n-1].comma = true
		}
		i = end
	}
	return out
}

func isMark(r rune) bool { return strings.ContainsRune(".,;:!?()[]\"'“”‘’…", r) }

func isNumber(s string) bool {
	return s != "" && strings.ContainsFunc(s, unicode.IsDigit) && strings.Trim(s, "0123456789.,/-±–½¼¾") == ""
}

func isUnit(lower, raw string) bool {
	_, ok := quantity.UnitOf(raw)
	return ok && len(lower) > 0
}

// nameAt returns the length of the longest name that text begins with.
func nameAt(text string, names []string) int {
	best := 0
	for _, n := range names {
		if len(n) > best && len(text) >= len(n) && strings.EqualFold(text[:len(n)], n) {
			rest := text[len(n):]
			if r, _ := utf8.DecodeRuneInString(rest); rest == "" || !unicode.IsLetter(r) && !unicode.IsDigit(r) {
				best = len(n)
			}
		}
	}
	return best
}

// names returns the names of several words that count as one: of parts,
// fasteners, tools, wrenches and gauges.
func (p *pass) names() []string {
	if p.known != nil {
		return p.known
	}
	add := func(n string) {
		if strings.Contains(n, " ") {
			p.known = append(p.known, n)
		}
	}
	if u := p.Unit; u != nil {
		for _, x := range u.Parts {
			add(x.Name)
		}
		for _, x := range u.Fasteners {
			add(x.Name)
		}
	}
	if s := p.Shop; s != nil {
		for _, x := range s.Tools {
			add(x.Name)
		}
		for _, x := range s.Wrenches {
			add(x.Name)
		}
		for _, x := range s.Gauges {
			add(x.Name)
		}
	}
	if p.known == nil {
		p.known = []string{}
	}
	slices.Sort(p.known)
	return p.known
}
