package unit

import (
	"fmt"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// A State is how a shaft stands when its turning torque is read. New bearings,
// a seal or a gear in mesh each make it turn harder, so a limit holds in one
// state alone.
type State struct {
	Bearings string // new, used
	Seal     string // in, out
	Gear     string // in, out
	Oil      string // what is on the bearings
	Turns    int    // made before the reading, so that the rollers seat
	At       source.Place
	node     *syntax.Node
}

// State returns the state that a mapping describes, nil where there is none or
// it is not complete, which the schema has reported.
func (r Reader) State(n *syntax.Node) *State {
	if n == nil || n.Kind != syntax.Mapping {
		return nil
	}
	s := &State{r.Text(n.Get("bearings")), r.Text(n.Get("seal")), r.Text(n.Get("gear")), r.Text(n.Get("oil")), r.Count(n.Get("turns"), 0), n.Place(), n}
	for _, v := range s.values() {
		words, closed := stateWords[v.key]
		if v.text == "" || v.text == "0" || closed && !slices.Contains(words, v.text) {
			return nil
		}
	}
	return s
}

// stateWords are the words of those keys that take no others.
var stateWords = map[string][]string{"bearings": {"new", "used"}, "seal": {"in", "out"}, "gear": {"in", "out"}}

type stateValue struct{ key, text string }

func (s *State) values() []stateValue {
	return []stateValue{{"bearings", s.Bearings}, {"seal", s.Seal}, {"gear", s.Gear}, {"oil", s.Oil}, {"turns", fmt.Sprint(s.Turns)}}
}

// Against compares a state with the one in which a limit holds. It returns what
// differs, as each of them has it ("bearings new, seal out"), and the place of
// the first difference in s; both texts are "" where nothing differs.
func (s *State) Against(limit *State) (here, there string, at source.Place) {
	var mine, theirs []string
	want := limit.values()
	for i, v := range s.values() {
		if strings.EqualFold(strings.TrimSuffix(v.text, "."), strings.TrimSuffix(want[i].text, ".")) {
			continue
		}
		if mine == nil {
			at = s.node.Get(v.key).Place()
		}
		mine, theirs = append(mine, v.key+" "+v.text), append(theirs, v.key+" "+want[i].text)
	}
	return strings.Join(mine, ", "), strings.Join(theirs, ", "), at
}
