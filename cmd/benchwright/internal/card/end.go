package card

import (
	"slices"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
)

// An End is the reading that ends the tightening against a crush sleeve, and
// its step.
type End struct {
	Step    *Step
	Reading *Measurement
}

// end finds the reading that has a named limit, preferably in the same step or
// a later one, or else the first reading of a named step. What is not found is
// nil.
func (r *resolver) end(from *Step, n procedure.Named) *End {
	u, steps := r.card.Unit, r.card.Steps()
	if u != nil && u.Limit(n.Name) != nil {
		out := &End{}
		for _, s := range steps {
			if out.Step != nil && out.Step.Number >= from.Number {
				break
			}
			if m := s.firstReading(n.Name); m != nil {
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
		r.reportUnknown(diag.OnUnit, "limit-unknown", "limit or step", n, have, "limits in the unit")
		return nil
	}
	number, ok := r.number(n)
	if !ok || number < 1 || number > len(steps) {
		return nil
	}
	s := steps[number-1]
	return &End{s, s.firstReading("")}
}

// firstReading returns the step's first reading with a named limit; limit ""
// matches any.
func (s *Step) firstReading(limit string) *Measurement {
	for _, i := range s.Items {
		if m := ReadingOf(i); m != nil && (limit == "" || m.Limits.Named.Name == limit) {
			return m
		}
	}
	return nil
}
