package card

import (
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/hazard"
	"benchwright/cmd/benchwright/internal/unit"
)

// lifting is the hazard of a heavy part. It comes from the mass alone, not
// from any word.
const lifting = "lift"

// Heavy reports whether a part is too heavy for one person in this shop, false
// if its mass is not stated.
func (c *Card) Heavy(p *unit.Part) bool {
	return p != nil && p.Mass != nil && c.Shop.TooHeavy(*p.Mass)
}

// Lifting returns the lifting hazard for parts that are too heavy for one
// person. Their masses are in the text that even a shortened callout keeps.
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

// weights lists the masses of parts: "Crank, 21 kg; Case, 30 kg".
func weights(parts []*unit.Part, between string) string {
	var out []string
	for _, p := range parts {
		out = append(out, p.Name+between+p.Mass.Unit.After(p.Mass.Text))
	}
	return strings.Join(out, "; ")
}

// tooHeavy returns the part if it is too heavy for one person to put in or
// draw from its seat, else nil.
func (r *resolver) tooHeavy(m Member) *unit.Part {
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

// addWeights adds the masses of the parts to the step's lifting callout.
func (r *resolver) addWeights(s *Step, c *Callout) {
	parts := s.lifted()
	if len(parts) == 0 || !slices.Contains(c.IDs, lifting) {
		return
	}
	h := r.card.Lifting(parts...)
	c.Hazard, c.Avoid = h.Hazard, strings.Join(h.Avoid, " ")
}

// heavyParts adds the parts that are too heavy for one person to the card's
// hazards: those to have ready, which somebody carries to the bench, and those
// that its steps move.
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
		r.card.Hazards = append(r.card.Hazards, HazardUse{Signal: h.Signal, Symbols: h.Symbols[:1], Rule: r.shopRule(lifting)})
	}
	r.card.Hazards[i].Text = h.Name + ": " + weights(parts, " ")
}
