package card

import (
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/unit"
)

// A Pattern is a contact pattern with the unit's corrections.
type Pattern struct {
	*procedure.Pattern
	Pair    *unit.Pair    // nil if unknown, which is reported
	Contact *unit.Contact // of the side that is read; nil if not stated, which is reported
	Go      map[unit.Fault]*Step
}

func (r *resolver) pattern(p *procedure.Pattern) Item {
	out := &Pattern{Pattern: p, Go: map[unit.Fault]*Step{}}
	for _, f := range unit.Faults {
		r.branch(p.Branches[f], func(to *Step) { out.Go[f] = to })
	}
	u := r.card.Unit
	if u == nil {
		return out
	}
	if out.Pair = r.pair(p.Gears, p.At); out.Pair == nil && p.Gears.Name == "" && len(u.Gears) == 0 {
		r.msgs.Report("key-missing", p.At, "declare the pair under `gears:` in the unit, with its `drive-side:` and `contact:`", "the unit has no gears whose contact pattern could be read")
	}
	if g := out.Pair; g != nil {
		if out.Contact = g.Contact[p.Side]; out.Contact == nil && !g.ContactBad.IsSet() {
			d := r.msgs.Report("key-missing", p.KeyPlace("side"), "state it with its source in the unit, as `contact: {"+string(p.Side)+": …}` of `"+g.ID+"`",
				"the unit does not say what a contact pattern on the %s side calls for", p.Side)
			d.Related = append(d.Related, diag.Related{At: g.At, Message: "the pair is declared here"})
		}
	}
	if out.Contact != nil && !p.AsFound {
		for _, f := range unit.Faults {
			if pack := out.Contact.Corrections[f].Pack; !appliesToVariant(pack.Only, r.card.VariantID()) {
				r.msgs.Report("pack-left-out", p.At, "limit this block to the variants that have it", "pack `%s` is left out here", pack.ID)
				break
			}
		}
	}
	return out
}

// Readings returns none: a pattern is judged by eye.
func (p *Pattern) Readings() []*Measurement { return nil }

func (p *Pattern) complete(*Card) bool {
	for _, f := range unit.Faults {
		if p.Branches[f].Go.Name != "" && p.Go[f] == nil {
			return false
		}
	}
	return p.Contact != nil
}

// causes: the gears are turned in mesh against a brake.
func (p *Pattern) causes() []Cause { return []Cause{{"mesh", p.At}} }
