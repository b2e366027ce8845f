package card

import (
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/hazard"
	"benchwright/cmd/benchwright/internal/unit"
)

// lifting is the hazard that a part's mass brings, and no word does.
const lifting = "lift"

// Heavy says whether a part is heavier than one person lifts in the shop. One
// whose mass is not stated is not.
func (c *Card) Heavy(p *unit.Part) bool {
	return p != nil && p.Mass != nil && c.Shop.TooHeavy(*p.Mass)
}

// Lifting returns the hazard of lifting as it stands for some parts that are
// too heavy for one person. What they weigh stands in what a callout keeps when
// it is short, too.
func (c *Card) Lifting(parts ...*unit.Part) hazard.Hazard {
	h, _ := hazard.Find(lifting)
	out := *h
	var masses []string
	for _, p := range parts {
		masses = append(masses, p.Mass.Unit.After(p.Mass.Text))
	}
	out.Hazard = weights(parts, ", ") + ". " + h.Hazard
	out.Avoid = []string{"Lift " + diag.Series(masses, "and") + " with a hoist or a second person."}
	return out
}

// weights lists what parts weigh: "Crank, 21 kg; Case, 30 kg".
func weights(parts []*unit.Part, between string) string {
	var out []string
	for _, p := range parts {
		out = append(out, p.Name+between+p.Mass.Unit.After(p.Mass.Text))
	}
	return strings.Join(out, "; ")
}

// lifts returns the part that is too heavy to be put in its seat, or drawn from
// it, by one person.
func (r *resolver) lifts(m Member) *unit.Part {
	if r.card.Heavy(m.Part) {
		return m.Part
	}
	return nil
}

// lifted returns the heavy parts that the step's blocks move.
func (s *Step) lifted() []*unit.Part {
	var out []*unit.Part
	for _, i := range s.Items {
		if f, ok := i.(*Fit); ok && f.heavy != nil && !slices.Contains(out, f.heavy) {
			out = append(out, f.heavy)
		}
	}
	return out
}

// weighed puts what the parts weigh into the step's callout for lifting.
func (r *resolver) weighed(s *Step, c *Callout) {
	parts := s.lifted()
	if len(parts) == 0 || !slices.Contains(c.IDs, lifting) {
		return
	}
	h := r.card.Lifting(parts...)
	c.Hazard, c.Avoid = h.Hazard, strings.Join(h.Avoid, " ")
}

// heavyParts puts the parts that are too heavy for one into the card's hazards:
// those to have ready, which somebody carries to the bench, and those that its
// steps move.
func (r *resolver) heavyParts() {
	var parts []*unit.Part
	add := func(p *unit.Part) {
		if r.card.Heavy(p) && !slices.Contains(parts, p) {
			parts = append(parts, p)
		}
	}
	for _, p := range r.card.Parts {
		add(p)
	}
	for _, s := range r.card.Steps() {
		for _, p := range s.lifted() {
			add(p)
		}
	}
	if len(parts) == 0 {
		return
	}
	h, _ := hazard.Find(lifting)
	i := slices.IndexFunc(r.card.Hazards, func(u HazardUse) bool { return u.Text == h.Name })
	if i < 0 {
		i = len(r.card.Hazards)
		r.card.Hazards = append(r.card.Hazards, HazardUse{Signal: h.Signal, Symbols: h.Symbols[:1], Rule: r.rule(lifting)})
	}
	r.card.Hazards[i].Text = h.Name + ": " + weights(parts, " ")
}
