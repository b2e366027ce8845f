package card

import (
	"cmp"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/hazard"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/source"
)

// caution resolves a callout of the writer in the current step.
func (r *resolver) caution(c *procedure.Caution) {
	out := &Callout{Hazard: c.Hazard, Result: c.Result, Avoid: c.Avoid, Written: c, At: c.At}
	out.Signal, _ = hazard.ParseSignal(c.Level.Name)
	for _, s := range c.Symbols {
		if _, ok := hazard.FindSymbol(s.Name); !ok {
			var codes []string
			for _, k := range hazard.Symbols() {
				codes = append(codes, k.Code)
			}
			r.reportUnknown(0, "symbol-unknown", "symbol", s, codes, "the symbols in `benchwright explain symbol-unknown`")
			continue
		}
		out.Symbols = append(out.Symbols, s.Name)
	}
	for _, n := range c.Covers {
		h, ok := hazard.Find(n.Name)
		if !ok {
			r.reportUnknown(0, "hazard-unknown", "hazard", n, hazard.IDs(), "the hazards in `benchwright explain hazard-unknown`")
			continue
		}
		out.IDs = append(out.IDs, h.ID)
		if len(c.Symbols) == 0 {
			for _, s := range h.Symbols {
				if !slices.Contains(out.Symbols, s) {
					out.Symbols = append(out.Symbols, s)
				}
			}
		}
		if out.Signal < h.Signal && out.Signal != 0 {
			d := r.msgs.Report("caution-weaker", c.Level.At, "write `level: "+h.Signal.String()+"`",
				"`%s` is a weaker word than the hazard `%s` calls for", c.Level.Name, h.ID)
			d.Label = "at least " + h.Signal.String()
		}
	}
	if len(out.Symbols) == 0 && out.Signal.People() {
		out.Symbols = []string{"W001"}
	}
	if r.step != nil {
		r.step.Callouts = append(r.step.Callouts, out)
	}
}

// A Cause is the source of a hazard in a step: a tool that carries it, or a
// block.
type Cause struct {
	ID string
	At source.Place // where the step names it
}

// Causes returns the hazards of the step's tools and blocks.
func (s *Step) Causes() []Cause {
	var out []Cause
	for _, i := range s.Items {
		out = append(out, i.causes()...)
	}
	return out
}

// toolCauses returns the hazards of a tool.
func toolCauses(i *shop.Item, at source.Place) []Cause {
	var out []Cause
	for _, id := range i.Hazards {
		out = append(out, Cause{id, at})
	}
	return out
}

// hazards adds the callouts for tools and blocks, shortens those already
// printed in full in their stage, and adds the card's summary.
func (r *resolver) hazards() {
	for _, st := range r.card.Stages {
		shown, read := map[string]bool{}, map[[3]string]bool{}
		for _, s := range st.Steps {
			for _, cause := range s.Causes() {
				if slices.ContainsFunc(s.Callouts, func(c *Callout) bool { return slices.Contains(c.IDs, cause.ID) }) {
					continue
				}
				h, ok := hazard.Find(cause.ID)
				if !ok {
					continue // reported when the shop was read
				}
				c := &Callout{Signal: h.Signal, Symbols: h.Symbols, Hazard: h.Hazard, Result: h.Result,
					Avoid: strings.Join(h.Avoid, " "), IDs: []string{h.ID}, Short: shown[h.ID], At: cause.At}
				r.addWeights(s, c)
				s.Callouts = append(s.Callouts, c)
			}
			slices.SortStableFunc(s.Callouts, func(a, b *Callout) int { return cmp.Compare(b.Signal, a.Signal) })
			// A callout written by the writer has its own text, so only one
			// that is identical to a callout printed in full may be shortened.
			for _, c := range s.Callouts {
				if c.Written == nil {
					shown[c.IDs[0]] = true
					continue
				}
				says := [3]string{c.Hazard, c.Result, c.Avoid}
				c.Short, read[says] = c.Short || read[says], true
			}
		}
	}
	r.summary()
}

// summary collects the hazards of the card, one line for each, most severe
// first.
func (r *resolver) summary() {
	add := func(u HazardUse, step int) {
		for i := range r.card.Hazards {
			h := &r.card.Hazards[i]
			if h.Text == u.Text {
				h.Signal = max(h.Signal, u.Signal)
				if !slices.Contains(h.Steps, step) {
					h.Steps = append(h.Steps, step)
				}
				return
			}
		}
		u.Steps = []int{step}
		r.card.Hazards = append(r.card.Hazards, u)
	}
	for _, s := range r.card.Steps() {
		for _, c := range s.Callouts {
			for _, id := range c.IDs {
				h, _ := hazard.Find(id)
				add(HazardUse{Signal: max(h.Signal, c.Signal), Symbols: h.Symbols[:1], Text: h.Name, Rule: r.shopRule(id)}, s.Number)
			}
			if len(c.IDs) == 0 && c.Signal.People() {
				add(HazardUse{Signal: c.Signal, Symbols: c.Symbols[:1], Text: c.Hazard}, s.Number)
			}
		}
	}
	r.heavyParts()
	slices.SortStableFunc(r.card.Hazards, func(a, b HazardUse) int { return cmp.Compare(b.Signal, a.Signal) })
}

// shopRule returns the shop's rule for a hazard, or "". The regulations in the
// hazard table are examples from one country and are not printed: a card says
// to follow the local code.
func (r *resolver) shopRule(id string) string {
	if r.card.Shop == nil {
		return ""
	}
	return r.card.Shop.HazardRules[id]
}
