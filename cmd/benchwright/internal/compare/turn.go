package compare

import (
	"regexp"
	"slices"
	"strings"
)

// opposites are words one of which in the place of the other turns an
// instruction round, in prose that states no number.
var opposites = [][2]string{
	{"clockwise", "counterclockwise"}, {"left", "right"}, {"up", "down"}, {"upward", "downward"}, {"above", "below"}, {"over", "under"},
	{"before", "after"}, {"first", "last"}, {"inward", "outward"}, {"inner", "outer"}, {"inside", "outside"}, {"input", "output"}, {"in", "out"},
	{"on", "off"}, {"onto", "off"}, {"into", "out"}, {"top", "bottom"}, {"upper", "lower"}, {"front", "back"}, {"near", "far"}, {"to", "from"}, {"with", "without"},
	{"tighten", "loosen"}, {"tight", "loose"}, {"thicker", "thinner"}, {"thick", "thin"}, {"longer", "shorter"}, {"long", "short"}, {"higher", "lower"}, {"high", "low"},
	{"highest", "lowest"}, {"most", "least"}, {"more", "less"}, {"dry", "oiled"}, {"push", "pull"}, {"lift", "lower"}, {"open", "close"}, {"new", "used"}, {"new", "old"},
	{"hot", "cold"}, {"warm", "cool"}, {"slow", "fast"}, {"slowly", "fast"}, {"fit", "remove"}, {"always", "never"},
}

// denials are the words that forbid.
var denials = []string{"not", "never", "no", "without", "cannot", "nobody", "nothing"}

// counts are numbers that are written out.
var counts = []string{"two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "once", "twice", "half", "quarter"}

var (
	digits     = regexp.MustCompile(`[0-9]+(?:[.,/][0-9]+)*`)
	named      = regexp.MustCompile(`^[^\pL\d]*\pL[\pL\d]*-`) // a card, a tool: X-20
	stepsNamed = regexp.MustCompile(`(?i)\bsteps? (?:new )?[0-9]+`)
)

// numbers returns the numbers of a text in their order, those written out too, but
// for those of steps, cards and tools that it names.
func numbers(text string) []string {
	text = stepsNamed.ReplaceAllString(text, "")
	var out []string
	for _, w := range strings.Fields(text) {
		if bare := strings.ToLower(strings.Trim(w, ".,;:()!?")); slices.Contains(counts, bare) {
			out = append(out, bare)
			continue
		}
		if !named.MatchString(w) {
			out = append(out, digits.FindAllString(w, -1)...)
		}
	}
	return out
}

var anyWord = regexp.MustCompile(`[\pL-]+`)

// turned says whether a text was turned round: a word gave way to its opposite,
// or a "not" came or went.
func turned(before, after string) bool {
	x, y := tally(before), tally(after)
	for _, o := range opposites {
		for _, pair := range [][2]string{o, {o[1], o[0]}} {
			if x[pair[0]] > y[pair[0]] && x[pair[1]] < y[pair[1]] {
				return true
			}
		}
	}
	denied := func(count map[string]int) (n int) {
		for _, d := range denials {
			n += count[d]
		}
		return n
	}
	return denied(x) != denied(y)
}

// tally counts the words of a text.
func tally(text string) map[string]int {
	out := map[string]int{}
	for _, w := range anyWord.FindAllString(strings.ToLower(text), -1) {
		out[w]++
		if slices.Contains([]string{"don", "doesn", "isn", "aren", "mustn"}, w) {
			out["not"]++
		}
	}
	return out
}
