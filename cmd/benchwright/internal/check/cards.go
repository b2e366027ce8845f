package check

import (
	"slices"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/syntax"
)

// sameTightening warns of a fastener that another card of the unit tightens to
// the same limits, but in passes, in an order or with a turn that this one drops
// or has otherwise.
func sameTightening(p *procedure.Procedure, cards []*card.Card, lib *card.Library, msgs *diag.List) {
	done := map[*procedure.Torque]bool{}
	for _, c := range cards {
		for _, s := range c.Steps() {
			for _, i := range s.Items {
				t, ok := i.(*card.Torque)
				if !ok || done[t.Torque] || t.Fastener == nil {
					continue
				}
				for _, other := range lib.Procedures {
					if done[t.Torque] || other == p || other.Unit.Name != p.Unit.Name {
						continue
					}
					done[t.Torque] = tightenedOtherwise(t.Torque, other, c.VariantID(), msgs)
				}
			}
		}
	}
}

// tightenedOtherwise reports the first key in which a torque of another card of
// the unit differs.
func tightenedOtherwise(t *procedure.Torque, other *procedure.Procedure, variant string, msgs *diag.List) bool {
	for u := range torques(other, variant) {
		if u.Fastener.Name != t.Fastener.Name || !sameLimits(u, t) {
			continue
		}
		for _, key := range []string{"passes", "order", "then-turn"} {
			theirs, ours := u.Node.Get(key), t.Node.Get(key)
			if theirs == nil || sameText(theirs, ours) {
				continue
			}
			said := "has no `" + key + ":`"
			if ours != nil {
				said = "has another `" + key + ":`"
			}
			d := msgs.Report("tightening-differs", t.Fastener.At, "look up how it is tightened, and write `"+key+":` alike on both cards", "%s tightens `%s` to the same limits, and this block %s", other.Number.Name, t.Fastener.Name, said)
			d.Related = append(d.Related, related(theirs.Place(), "the other card's stands here"))
			return true
		}
	}
	return false
}

// torques yields the torque blocks of a procedure that apply to a variant.
func torques(p *procedure.Procedure, variant string) func(yield func(*procedure.Torque) bool) {
	applies := func(only []procedure.Named) bool {
		return len(only) == 0 || variant == "" || slices.ContainsFunc(only, func(n procedure.Named) bool { return n.Name == variant })
	}
	heading := func(h syntax.Heading) bool { return h.Only == nil || variant == "" || slices.Contains(h.Only, variant) }
	return func(yield func(*procedure.Torque) bool) {
		if !applies(p.Variants) {
			return
		}
		for _, st := range p.Stages {
			for _, s := range st.Steps {
				if !heading(st.Heading) || !heading(s.Heading) {
					continue
				}
				for _, i := range s.Items {
					if t, ok := i.(*procedure.Torque); ok && applies(t.Only) && !yield(t) {
						return
					}
				}
			}
		}
	}
}

// sameLimits reports whether two blocks name one limit, or write the same band.
func sameLimits(a, b *procedure.Torque) bool {
	if a.Limits.Named.Name != "" {
		return a.Limits.Named.Name == b.Limits.Named.Name
	}
	for _, key := range []string{"limits", "value"} {
		if n := a.Node.Get(key); n != nil && n.Text != "" && sameText(n, b.Node.Get(key)) {
			return true
		}
	}
	return false
}

// sameText reports whether two values are written alike.
func sameText(a, b *syntax.Node) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.Text == b.Text && slices.EqualFunc(a.Items, b.Items, sameText)
}
