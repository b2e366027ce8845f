package deck

import (
	"slices"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/render"
)

// inHand reports whether the step takes a tool of that size across flats, by
// itself or in an assembly. One that holds something still does not count.
func (b *builder) inHand(size quantity.Value, items []card.Item) bool {
	fits := func(i *shop.Item) bool {
		t, ok := b.card.Shop.Find(i.ID).(*shop.Tool)
		if !ok || t.AcrossFlats == nil {
			return false
		}
		same := quantity.Convert(t.AcrossFlats.Value, t.AcrossFlats.Unit, size.Unit)
		return same != nil && same.Cmp(size.Value) == 0
	}
	for _, i := range items {
		if t, ok := i.(*card.Torque); ok && t.Adapter != nil && fits(t.Adapter.Tool) {
			return true
		}
		t, ok := i.(*card.Tool)
		if !ok {
			continue
		}
		for _, l := range t.Lines {
			if l.Verb != card.Take && l.Verb != card.Assemble {
				continue
			}
			for _, item := range l.Tools {
				if fits(item) || slices.ContainsFunc(b.card.Assemblies[item.ID], fits) {
					return true
				}
			}
		}
	}
	return false
}

// toolLines returns the rows of a tool block.
func toolLines(t *card.Tool) []render.ToolRow {
	var rows []render.ToolRow
	for _, l := range t.Lines {
		rows = append(rows, toolLine(l)...)
	}
	return rows
}

func toolLine(l card.ToolLine) []render.ToolRow {
	var rows []render.ToolRow
	for n, item := range l.Tools {
		note := ""
		switch {
		case l.Verb == card.Assemble && n == len(l.Tools)-1 && l.As != "":
			note = wordMade(l.As)
		case l.Verb == card.HoldStill && l.Held != "":
			note = wordHeld(lower(l.Held))
		}
		rows = append(rows, toolRow(verbs[l.Verb], item, note))
	}
	return rows
}

func unique(rows []render.ToolRow) []render.ToolRow {
	var out []render.ToolRow
	seen := map[render.ToolRow]bool{}
	for _, r := range rows {
		if !seen[r] {
			out = append(out, r)
		}
		seen[r] = true
	}
	return out
}

// byVerb groups rows by verb, in the order of the first of each.
func byVerb(rows []render.ToolRow) []render.ToolRow {
	var out []render.ToolRow
	done := map[string]bool{}
	for _, first := range rows {
		if done[first.Verb] {
			continue
		}
		done[first.Verb] = true
		for _, r := range rows {
			if r.Verb == first.Verb {
				out = append(out, r)
			}
		}
	}
	return out
}
