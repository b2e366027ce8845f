package unit

import (
	"fmt"
	"strings"

	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/value"
)

// A State is the condition of a shaft when its rotating torque is read. New
// bearings, a seal or a meshing gear each add torque, so a limit holds in one
// state only.
type State struct {
	Bearings Bearings
	Seal     Fitting
	Gear     Fitting
	Oil      string // the oil on the bearings
	Turns    int    // turns made before the reading to seat the rollers
	At       source.Place
	node     *syntax.Node
}

// Bearings tells whether bearings are new or used.
type Bearings string

// A Fitting tells whether a part is fitted.
type Fitting string

const (
	NewBearings  Bearings = "new"
	UsedBearings Bearings = "used"
	Fitted       Fitting  = "in"
	Out          Fitting  = "out"
)

// ReadState converts a mapping, nil if it is absent or unreadable, which marks
// the reader's thing as bad.
func ReadState(r *value.Reader, n *syntax.Node) *State {
	if n == nil || !r.Require(n, "bearings", "seal", "gear", "oil", "turns") {
		return nil
	}
	s := &State{value.OneOf(r, n.Get("bearings"), NewBearings, UsedBearings), value.OneOf(r, n.Get("seal"), Fitted, Out), value.OneOf(r, n.Get("gear"), Fitted, Out),
		r.Wording(n.Get("oil"), "write what is on the bearings, such as `gear oil`, or `none`"), r.Count(n.Get("turns"), 0), n.Place(), n}
	if r.Bad().IsSet() {
		return nil
	}
	return s
}

type stateValue struct{ key, text string }

func (s *State) values() []stateValue {
	return []stateValue{{"bearings", string(s.Bearings)}, {"seal", string(s.Seal)}, {"gear", string(s.Gear)}, {"oil", s.Oil}, {"turns", fmt.Sprint(s.Turns)}}
}

// Differences compares s with the state in which a limit holds. It returns the
// differing values of each as text ("bearings new, seal out"), both "" if
// there are none, and the place of the first difference in s.
func (s *State) Differences(limit *State) (here, there string, at source.Place) {
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
