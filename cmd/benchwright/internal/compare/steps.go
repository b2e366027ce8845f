package compare

import (
	"cmp"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/render"
)

// A pairing says what of two lists belongs together: old[i] is the place in the
// new list of what stands at place i of the old one, -1 for none; new is the
// same the other way.
type pairing struct{ old, new []int }

func newPairing(old, new int) pairing {
	return pairing{slices.Repeat([]int{-1}, old), slices.Repeat([]int{-1}, new)}
}

// join pairs what has no partner yet and is alike, the first with the first.
func (p pairing) join(alike func(i, j int) bool) {
	for i := range p.old {
		for j := range p.new {
			if p.old[i] < 0 && p.new[j] < 0 && alike(i, j) {
				p.old[i], p.new[j] = j, i
			}
		}
	}
}

// matched pairs steps of two cards.
//
// A step keeps its identity by its id, else by its title; what is left between
// two neighbors that were found is paired by what the steps say, so that a new
// title is a rename and not another step.
func matched(a, b []*step) pairing {
	p := newPairing(len(a), len(b))
	old, new := p.old, p.new
	pair := func(alike func(x, y *step) bool) {
		p.join(func(i, j int) bool { return alike(a[i], b[j]) })
	}
	pair(func(x, y *step) bool { return x.id != "" && x.id == y.id })
	known := func(steps []*step, id string) bool {
		return id != "" && slices.ContainsFunc(steps, func(s *step) bool { return s.id == id })
	}
	// A title that stands twice goes with the stage it stands in, and then with
	// its order.
	pair(func(x, y *step) bool { return x.title == y.title && x.stage == y.stage })
	pair(func(x, y *step) bool { return x.title == y.title })
	type candidate struct {
		i, j  int
		alike float64
	}
	var all []candidate
	for i, x := range a {
		for j, y := range b {
			if old[i] >= 0 || new[j] >= 0 || !neighbors(old, new, i, j) || known(b, x.id) || known(a, y.id) {
				continue
			}
			if alike := likeness(x.words(), y.words()); alike >= 0.5 {
				all = append(all, candidate{i, j, alike})
			}
		}
	}
	slices.SortStableFunc(all, func(x, y candidate) int { return cmp.Compare(y.alike, x.alike) })
	for _, c := range all {
		if old[c.i] < 0 && new[c.j] < 0 {
			old[c.i], new[c.j] = c.j, c.i
		}
	}
	return p
}

// neighbors reports whether two steps that are not paired stand between the
// same steps: the nearest that is paired before both, or after both, is the
// same.
func neighbors(old, new []int, i, j int) bool {
	before, after := i-1, i+1
	for before >= 0 && old[before] < 0 {
		before--
	}
	for after < len(old) && old[after] < 0 {
		after++
	}
	first, last := j-1, j+1
	for first >= 0 && new[first] < 0 {
		first--
	}
	for last < len(new) && new[last] < 0 {
		last++
	}
	begins := before < 0 && first < 0 || before >= 0 && first >= 0 && old[before] == first
	ends := after == len(old) && last == len(new) || after < len(old) && last < len(new) && old[after] == last
	return begins || ends
}

// likeness returns how much two lists of words share: 1 for all, 0 for nothing.
func likeness(a, b []string) float64 {
	count := map[string]int{}
	for _, w := range a {
		count[w]++
	}
	shared := 0
	for _, w := range b {
		if count[w] > 0 {
			count[w]--
			shared++
		}
	}
	if len(a)+len(b) == 0 {
		return 0
	}
	return 2 * float64(shared) / float64(len(a)+len(b))
}

// moved returns which places of a list of places do not keep their order: the
// fewest whose moving explains it. Places below zero are passed over.
func moved(places []int) []bool {
	best, from := make([]int, len(places)), make([]int, len(places))
	end := -1
	for i, p := range places {
		if from[i] = -1; p < 0 {
			continue
		}
		best[i] = 1
		for j := range i {
			if places[j] >= 0 && places[j] < p && best[j]+1 > best[i] {
				best[i], from[i] = best[j]+1, j
			}
		}
		if end < 0 || best[i] > best[end] {
			end = i
		}
	}
	out := make([]bool, len(places))
	for i, p := range places {
		out[i] = p >= 0
	}
	for ; end >= 0; end = from[end] {
		out[end] = false
	}
	return out
}

// A step is what one step of a deck says.
type step struct {
	id, title, stage string
	number           int
	source           *procedure.Step
	at               source.Place // of its heading
	incomplete       bool         // an error keeps something of it from being made
	elements         []render.Element
	items            []card.Item
	reads            *reader
}

// words returns the words that the step says, for finding it again.
func (s *step) words() []string {
	out := strings.Fields(strings.ToLower(s.title))
	for _, e := range s.elements {
		for _, f := range s.reads.facts(e) {
			for _, line := range f.lines {
				out = append(out, strings.Fields(strings.ToLower(line))...)
			}
		}
	}
	return out
}

// grave reports whether the step holds anything whose change is of class safety.
func (s *step) grave() bool {
	return slices.ContainsFunc(s.elements, func(e render.Element) bool {
		return slices.ContainsFunc(s.reads.facts(e), func(f fact) bool { return s.reads.grave(f) == Safety })
	})
}

// holds names what the step holds of class safety: a setting and limits by their
// numbers, a callout by its signal word.
func (s *step) holds() string {
	var out []string
	for _, e := range s.elements {
		facts := s.reads.facts(e)
		if !slices.ContainsFunc(facts, func(f fact) bool { return f.class == Safety }) {
			continue
		}
		says := kind(e)
		for _, f := range facts {
			if slices.Contains([]string{"set", "accept", "signal word"}, f.what) && len(f.lines) > 0 {
				says += " " + f.lines[0]
			}
		}
		if !slices.Contains(out, says) {
			out = append(out, says)
		}
	}
	if len(out) == 0 {
		return ""
	}
	return "with " + strings.Join(out, ", ")
}
