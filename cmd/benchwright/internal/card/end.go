package card

import (
	"slices"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
)

// An End is the reading that ends the tightening of a crush sleeve, and the
// step that takes it.
type End struct {
	Step    *Step
	Reading *Measurement
}

// end finds the reading of a limit, in the same step or after it rather than
// before, or else the first one of a step. What it lacks is nil.
func (r *resolver) end(from *Step, n procedure.Named) *End {
	u, steps := r.card.Unit, r.card.Steps()
	if u != nil && u.Limit(n.Name) != nil {
		out := &End{}
		for _, s := range steps {
			if out.Step != nil && out.Step.Number >= from.Number {
				break
			}
			if m := s.read(n.Name); m != nil {
				out.Step, out.Reading = s, m
			}
		}
		return out
	}
	if _, known := r.numbers[n.Name]; !known && !slices.Contains(r.ids, n.Name) {
		have := r.ids
		if u != nil {
			have = append(u.LimitIDs(), have...)
		}
		r.unknown(diag.OnUnit, "limit-unknown", "limit or step", n, have, "limits in the unit")
		return nil
	}
	number, ok := r.number(n)
	if !ok || number < 1 || number > len(steps) {
		return nil
	}
	s := steps[number-1]
	return &End{s, s.read("")}
}

// read returns the first reading of the step that has a limit of that name; of
// any name where it is "".
func (s *Step) read(limit string) *Measurement {
	for _, i := range s.Items {
		if m := ReadingOf(i); m != nil && (limit == "" || m.Limits.Named.Name == limit) {
			return m
		}
	}
	return nil
}
