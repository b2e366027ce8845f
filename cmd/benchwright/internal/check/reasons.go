package check

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
)

// reasons asks for a why in a step that cannot be undone: one that ends in a
// lock or at a hold point, or crushes a sleeve.
func reasons(p *pass) {
	for _, s := range p.Steps() {
		if s.Why != nil {
			continue
		}
		what := ""
		for _, i := range s.Items {
			switch i := i.(type) {
			case *card.HoldPoint:
				what = "has a hold point"
			case *card.Torque:
				if i.Lock != "" && what == "" {
					what = "locks a fastener"
				}
				if i.Until.Reading.Name != "" {
					what = "crushes a sleeve"
				}
			}
		}
		if what != "" {
			p.msgs.Report("why-missing", s.Place(p.Card), "add one short line that begins with `> **Why:** `", "this step %s and gives no reason", what).Basis = diag.OnProcedure
		}
	}
}
