package hazard

import (
	"cmp"
	"regexp"
	"slices"
	"strings"
	"sync"
)

// A Match is a place in a text whose words imply a hazard: byte offsets.
type Match struct {
	ID         string
	Start, End int
}

// Implied returns the hazards that the words of an English text imply, each
// once, at its first place, in the order of the text. It would rather miss a
// hazard than cry wolf, because a warning that is false is soon not read: a
// word counts only where it plainly means the work (a press that presses, not
// a button that is pressed), and a command not to do a thing implies nothing.
//
// Lifting is never implied by a word: a part's mass implies it. A shaft that
// is turned by hand or pulled round by a cord is not a turning shaft.
func Implied(text string) []Match {
	var found []Match
	low := lower(text)
	var rest []byte // the text without what no longer counts
	for i := range causes {
		if !holdsAny(low, causes[i].stems) {
			continue
		}
		if rest == nil {
			rest = permitted(low)
		}
		p := compiled()[i]
		view := slices.Clone(rest)
		if p.not != nil {
			for _, at := range p.not.FindAllIndex(view, -1) {
				blank(view, at[0], at[1])
			}
		}
		for n, at := range p.words.FindAllSubmatchIndex(view, -1) {
			start, end := narrow(at)
			if n == 0 {
				found = append(found, Match{causes[i].id, start, end})
			}
			blank(rest, start, end) // words belong to one hazard
		}
	}
	slices.SortStableFunc(found, func(a, b Match) int { return cmp.Compare(a.Start, b.Start) })
	return found
}

// lower returns the text with its ASCII letters in lower case, so that offsets
// stay: the words are English.
func lower(text string) string {
	b := []byte(text)
	for i, c := range b {
		if 'A' <= c && c <= 'Z' {
			b[i] = c + 'a' - 'A'
		}
	}
	return string(b)
}

// permitted returns a text in lower case with its prohibitions blanked out.
func permitted(low string) []byte {
	rest := []byte(low)
	if !holdsAny(low, forbids) {
		return rest
	}
	for _, at := range prohibition().FindAllIndex(rest, -1) {
		if !limiting().Match(rest[at[0]:at[1]]) {
			blank(rest, at[0], at[1])
		}
	}
	return rest
}

// narrow returns the first group that took part in a match, else all of it.
func narrow(at []int) (start, end int) {
	for i := 2; i < len(at); i += 2 {
		if at[i] >= 0 {
			return at[i], at[i+1]
		}
	}
	return at[0], at[1]
}

// blank puts a stroke, which is no word and no blank, over part of a text, so
// that offsets stay what they were and no phrase reaches across.
func blank(text []byte, start, end int) {
	for i := start; i < end; i++ {
		text[i] = '|'
	}
}

func holdsAny(text string, stems []string) bool {
	return slices.ContainsFunc(stems, func(s string) bool { return strings.Contains(text, s) })
}

// patterns are a cause's words and what it leaves out; not is nil for nothing.
type patterns struct{ words, not *regexp.Regexp }

var (
	compiled = sync.OnceValue(func() []patterns {
		out := make([]patterns, len(causes))
		for i, c := range causes {
			out[i].words = pattern(c.words)
			if len(c.not) > 0 {
				out[i].not = pattern(c.not)
			}
		}
		return out
	})
	prohibition = sync.OnceValue(func() *regexp.Regexp { return pattern([]string{forbidden}) })
	limiting    = sync.OnceValue(func() *regexp.Regexp { return pattern([]string{within}) })
)

var shorthand = strings.NewReplacer(
	"SOME", `(?:[^\s.;:!?|]+\s+){0,5}?`,
	"FEW", `(?:[^\s.;:!?|]+\s+){0,2}?`,
	"THE", `(?:the|a|an|both|each|all|this|that|these|those|its)\s+`,
	"-", `[-\s]?`,
	" ", `\s+`,
)

// pattern makes one expression of alternatives: whole words in lower case.
func pattern(alternatives []string) *regexp.Regexp {
	return regexp.MustCompile(`(?:\b|^)(?:` + shorthand.Replace(strings.Join(alternatives, "|")) + `)(?:\b|$)`)
}
