package unit

import (
	"fmt"
	"strings"

	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/value"
)

// A State is how a shaft stands when its turning torque is read. New bearings,
// a seal or a gear in mesh each make it turn harder, so a limit holds in one
// state alone.
type State struct {
	Bearings Bearings
	Seal     Fitting
	Gear     Fitting
	Oil      string // what is on the bearings
	Turns    int    // made before the reading, so that the rollers seat
	At       source.Place
	node     *syntax.Node
}

// Bearings says whether bearings are new or have run.
type Bearings string

// A Fitting says whether a part is fitted.
type Fitting string

// What the parts of a State may be.
const (
	NewBearings  Bearings = "new"
	UsedBearings Bearings = "used"
	Fitted       Fitting  = "in"
	Out          Fitting  = "out"
)

// ReadState returns the state that a mapping describes, nil where there is none
// or where it could not be read, which marks the reader's thing.
func ReadState(r *value.Reader, n *syntax.Node) *State {
	if n == nil || !r.Need(n, "bearings", "seal", "gear", "oil", "turns") {
		return nil
	}
	s := &State{value.Word(r, n.Get("bearings"), NewBearings, UsedBearings), value.Word(r, n.Get("seal"), Fitted, Out), value.Word(r, n.Get("gear"), Fitted, Out),
		r.Says(n.Get("oil"), "write what is on the bearings, such as `gear oil`, or `none`"), r.Count(n.Get("turns"), 0), n.Place(), n}
	if r.Bad().Is() {
		return nil
	}
	return s
}

type stateValue struct{ key, text string }

func (s *State) values() []stateValue {
	return []stateValue{{"bearings", string(s.Bearings)}, {"seal", string(s.Seal)}, {"gear", string(s.Gear)}, {"oil", s.Oil}, {"turns", fmt.Sprint(s.Turns)}}
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
