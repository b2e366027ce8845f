package deck

import (
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/hazard"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/render"
)

// setOut builds the first face: all that must be known and lie ready before
// the work starts. Nothing is used later that does not stand here.
func (b *builder) setOut() {
	c, p := b.card, b.card.Procedure
	front := c.Procedure.Number.At
	var elements []render.Element
	tech := func(at source.Place, content render.Content) {
		elements = append(elements, b.technical(at, content))
	}
	elements = append(elements, b.wording(front, render.Text{Role: render.Lead, Runs: plain(wordReadFirst)}))
	var facts []render.Fact
	for _, f := range []struct{ label, text string }{
		{wordTime, p.Time}, {wordPeople, p.People}, {wordSkill, p.Skill}, {wordCall, p.Call}, {wordMethod, p.Source},
	} {
		if f.text != "" {
			facts = append(facts, render.Fact{Label: f.label, Runs: plain(f.text)})
		}
	}
	if len(facts) > 0 {
		elements = append(elements, b.wording(front, render.Facts{Rows: facts}))
	}

	elements = append(elements,
		b.wording(front, render.Text{Role: render.Small, Runs: plain(wordDefer)}),
		b.wording(front, render.Text{Role: render.Small, Runs: plain(wordSignals)}))

	hazards := render.Hazards{Title: wordHazards, None: wordNone}
	for _, h := range c.Hazards {
		text := h.Text
		if h.Rule != "" {
			text = wordRule(text, h.Rule)
		}
		hazards.Rows = append(hazards.Rows, render.HazardRow{Signal: signals[h.Signal], Word: h.Signal.Word(), Symbols: h.Symbols, Text: plain(text), Steps: steps(h.Steps)})
	}
	tech(front, hazards)

	conditions := render.Listing{Title: wordConditions, None: wordNone}
	for _, a := range c.After {
		conditions.Rows = append(conditions.Rows, row(wordFinished(a.Number.Name, a.Title.Name)))
	}
	for _, n := range p.Conditions {
		conditions.Rows = append(conditions.Rows, row(n.Name))
	}
	tech(placeOf(p.Conditions, front), conditions)

	more, tools := b.implied()
	kit := b.kit()
	kit.Rows = append(kit.Rows, tools...)
	tech(front, kit)
	tech(front, b.wear())
	if len(c.Flats) > 0 {
		flats := render.Listing{Title: wordFlats, None: wordNone}
		for _, f := range c.Flats {
			size := b.value(f.Size)
			if f.Key {
				size = wordKey(size)
			}
			flats.Rows = append(flats.Rows, row(size, join(f.What), steps(f.Steps)))
		}
		tech(front, flats)
	}

	parts := render.Listing{Title: wordParts, None: wordNone}
	for _, part := range c.Parts {
		note := ""
		if part.Renew {
			note = wordRenew
		}
		count := part.Name
		if part.Count > 1 {
			count += ", " + wordOff(part.Count)
		}
		parts.Rows = append(parts.Rows, row(count, part.Number, note))
	}
	tech(placeOf(p.Parts, front), parts)

	consumables := render.Listing{Title: wordConsumables, None: wordNone}
	for _, n := range p.Consumables {
		consumables.Rows = append(consumables.Rows, row(n.Name))
	}
	consumables.Rows = append(consumables.Rows, more...)
	tech(placeOf(p.Consumables, front), consumables)

	stops := render.Listing{Title: wordStops, None: wordNone}
	for _, s := range c.Stops {
		stops.Rows = append(stops.Rows, row(wordAfterStep(s.Step), s.Say))
	}
	tech(front, stops)
	b.section(wordSetOut, render.Group{Ref: b.ref(front), Bookmark: "", Breaks: true, Elements: elements})
}

// wear lists what the callouts of the card tell to put on.
func (b *builder) wear() render.Listing {
	l := render.Listing{Title: wordWear, None: wordNone}
	for _, s := range hazard.Symbols() {
		what, wear := strings.CutPrefix(s.Meaning, "Wear ")
		if !wear {
			continue
		}
		kinds, used := []string{capital(what)}, map[string][]int{}
		for _, step := range b.card.Steps() {
			for _, c := range step.Callouts {
				if !slices.Contains(c.Symbols, s.Code) {
					continue
				}
				kind := kinds[0]
				for _, id := range c.IDs {
					if of, ok := wears[id]; ok && s.Code == "M009" {
						kind = of
					}
				}
				if !slices.Contains(kinds, kind) {
					kinds = append(kinds, kind)
				}
				used[kind] = append(used[kind], step.Number)
			}
		}
		for _, kind := range kinds {
			if len(used[kind]) > 0 {
				l.Rows = append(l.Rows, row(kind, steps(used[kind])))
			}
		}
	}
	return l
}

// implied returns what the card's own words tell to take, with its steps: it
// stands on the set-out face though no writer named it.
func (b *builder) implied() (consumables, tools [][][]render.Run) {
	used := map[string][]int{}
	for _, s := range b.card.Steps() {
		for _, i := range s.Items {
			switch i := i.(type) {
			case *card.Torque:
				if i.Drawn() {
					used[wordChalk] = append(used[wordChalk], s.Number)
				}
				if i.ThenTurn != nil {
					used[wordPaintPen] = append(used[wordPaintPen], s.Number)
				}
			case *card.Timed, *card.LeakTest:
				used[wordClock] = append(used[wordClock], s.Number)
			}
		}
	}
	named := func(what string) bool {
		return slices.ContainsFunc(b.card.Procedure.Consumables, func(n procedure.Named) bool {
			return strings.Contains(strings.ToLower(n.Name), strings.ToLower(what))
		})
	}
	for _, what := range []string{wordChalk, wordPaintPen} {
		if len(used[what]) > 0 && !named(what) {
			consumables = append(consumables, row(what, steps(used[what])))
		}
	}
	if len(used[wordClock]) > 0 && !named(wordClock) {
		tools = append(tools, row(wordClock, "", "", steps(used[wordClock])))
	}
	return consumables, tools
}

// kit lists every tool, wrench and gauge with its number and place.
func (b *builder) kit() render.Listing {
	l := render.Listing{Title: wordTools, None: wordNone}
	for _, k := range b.card.Kit {
		name := k.Item.Name
		switch t := k.Thing.(type) {
		case *shop.Stock:
			name += ", " + together(b.stockSpan(t))
		case *shop.Wrench:
			name += ", " + together(b.marks(quantity.Marks{Scale: t.Scale, Low: t.Scale.Low, High: t.Scale.High})) + nbsp + engraved(t.Marked, t.Scale)
		case *shop.Gauge:
			if t.Scale.Step != nil {
				name += ", " + wordMarksOf(t.Scale.Number(t.Scale.Step, b.card.Shop.Mark())+nbsp+engraved(t.Marked, t.Scale))
			}
		}
		l.Rows = append(l.Rows, row(name, numbers(k.Item), k.Item.Place, steps(k.Steps)))
	}
	return l
}

// numbers gives a tool's number and the one it had before, which some still
// carry.
func numbers(i *shop.Item) string {
	if i.Old != "" {
		return wordOld(i.Number, i.Old)
	}
	return i.Number
}

func row(cells ...string) [][]render.Run {
	out := make([][]render.Run, len(cells))
	for i, c := range cells {
		out[i] = plain(c)
	}
	return out
}

func placeOf(names []procedure.Named, or source.Place) source.Place {
	if len(names) > 0 {
		return names[0].At
	}
	return or
}
