package check

import (
	"fmt"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/hazard"
	"benchwright/cmd/benchwright/internal/source"
)

// coveredHazards warns of a hazard that only the words of a step imply.
func coveredHazards(p *pass) {
	if !p.english() {
		return
	}
	for _, s := range p.Steps() {
		covered := func(id string) bool {
			return slices.ContainsFunc(s.Callouts, func(c *card.Callout) bool { return slices.Contains(c.IDs, id) })
		}
		said := map[string]bool{}
		for _, t := range p.texts(s) {
			for _, m := range hazard.Implied(t.text) {
				if covered(m.ID) || said[m.ID] {
					continue
				}
				said[m.ID] = true
				h, _ := hazard.Find(m.ID)
				d := p.msgs.Report("hazard-uncovered", t.place(m.Start, m.End), paste(h), "`%s` implies the hazard `%s`, and no callout of this step covers it", t.text[m.Start:m.End], m.ID)
				d.Basis = diag.OnShop | diag.OnProcedure
				d.Label = h.Name
			}
		}
	}
}

// paste returns a callout for the writer to copy into the step.
func paste(h *hazard.Hazard) string {
	return fmt.Sprintf("put this into the step, in your own words:\n\n    ```caution\n    level: %s\n    covers: [%s]\n    hazard: %s\n    result: %s\n    avoid: %s\n    ```",
		h.Signal, h.ID, h.Hazard, h.Result, strings.Join(h.Avoid, " "))
}

// idleCovers warns of a callout for a hazard that nothing in its step causes:
// too many callouts, and none is read.
func idleCovers(p *pass) {
	for _, s := range p.Steps() {
		var implied map[string]bool // computed only if a callout covers something
		for _, c := range s.Callouts {
			if c.Written == nil {
				continue
			}
			for _, n := range c.Written.Covers {
				if implied == nil {
					implied = p.implied(s)
				}
				if _, known := hazard.Find(n.Name); known && !implied[n.Name] {
					p.msgs.Report("covers-idle", n.At, "take `"+n.Name+"` out, or name the tool that causes it in a `tool` block",
						"nothing in this step causes the hazard `%s`", n.Name).Basis = diag.OnShop | diag.OnProcedure
				}
			}
		}
	}
}

// implied returns the hazards that a step's tools carry or its words imply.
func (p *pass) implied(s *card.Step) map[string]bool {
	ids := map[string]bool{}
	for _, c := range s.Causes() {
		ids[c.ID] = true
	}
	for _, t := range p.texts(s) {
		for _, m := range hazard.Implied(t.text) {
			ids[m.ID] = true
		}
	}
	if part, _ := p.liftedPart(s); part != nil {
		ids["lift"] = true
	}
	return ids
}

// contrarySymbols refuses a step whose callouts demand two things that exclude
// each other.
func contrarySymbols(p *pass) {
	for _, s := range p.Steps() {
		p.contrary(s)
	}
}

// contrary reports the first two contradictory symbols of a step.
func (p *pass) contrary(s *card.Step) {
	for i, a := range s.Callouts {
		for _, b := range s.Callouts[i:] {
			x, y, ok := hazard.Contradict(a.Symbols, b.Symbols)
			if !ok {
				continue
			}
			at := s.Place(p.Card)
			first, _ := hazard.FindSymbol(x)
			second, _ := hazard.FindSymbol(y)
			d := p.msgs.Report("symbols-contradict", at, "split the step: one action with the first symbol, one with the second",
				"this step says both %s (%s) and %s (%s)", strings.ToLower(first.Meaning), x, strings.ToLower(second.Meaning), y)
			for _, c := range []*card.Callout{a, b} {
				if c.At != (source.Place{}) {
					d.Related = append(d.Related, related(c.At, "asked for here"))
				}
			}
			return
		}
	}
}
