package compile

import (
	"slices"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/shop"
)

// maxNamed is the maximum number of cards that a message names.
const maxNamed = 6

// overdue warns, once for each, of wrenches and gauges whose calibration
// expires before the day on, at their place in the shop. The program does not
// use the clock: without a day there is no check.
func (lib *library) overdue(on string, results []*Result, msgs *diag.List) {
	if on == "" || lib.shop == nil {
		return
	}
	late := func(i *shop.Item, due string) {
		var by []string
		for _, r := range results {
			if slices.Contains(r.toolIDs, i.ID) {
				by = append(by, r.Procedure.Number.Name)
			}
		}
		if due == "" || due >= on || len(by) == 0 { // dates of this form sort as text
			return
		}
		take := " takes it"
		if len(by) > 1 {
			take = " take it"
		}
		if n := len(by) - 1; n >= maxNamed {
			by = append(by[:maxNamed], "others")
		}
		msgs.Report("gauge-overdue", i.Node.Get("due").Place(), "have it calibrated, and write the new day",
			"the calibration of `%s` fell due on %s, before %s, and %s", i.ID, due, on, diag.Series(by, "and")+take)
	}
	for _, w := range lib.shop.Wrenches {
		late(&w.Item, w.Due)
	}
	for _, g := range lib.shop.Gauges {
		late(&g.Item, g.Due)
	}
}

// toolsTaken returns the ids of all tools on the cards.
func toolsTaken(cards []*card.Card) []string {
	var out []string
	for _, c := range cards {
		for _, k := range c.Kit {
			if !slices.Contains(out, k.Item.ID) {
				out = append(out, k.Item.ID)
			}
		}
	}
	return out
}
