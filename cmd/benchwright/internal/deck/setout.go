package deck

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/hazard"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/render"
)

// setOut builds the first face, with everything that must be known and ready
// before the work starts.
func (b *builder) setOut() {
	p := b.card.Procedure
	front := p.Number.At
	elements := b.facts()
	add := func(at source.Place, l render.Content) { elements = append(elements, b.technical(at, l)) }
	more, tools := b.implied()
	consumables := render.Listing{Title: wordConsumables, None: wordNone}
	for _, n := range p.Consumables {
		consumables.Rows = append(consumables.Rows, listRow(capital(n.Name)))
	}
	consumables.Rows = append(consumables.Rows, more...)

	add(front, b.hazards())
	add(front, b.wear())
	add(placeOf(p.Conditions, front), b.conditions())
	add(front, b.kit(tools))
	if len(b.card.Flats) > 0 {
		add(front, b.flats())
	}
	add(placeOf(p.Parts, front), b.parts())
	add(placeOf(p.Consumables, front), runIn(consumables))
	stops := render.Listing{Title: wordStops, None: wordNone}
	for _, s := range b.card.Stops {
		stops.Rows = append(stops.Rows, listRow(wordAfterStep(s.Step), s.Say))
	}
	add(front, stops)
	b.Sections = append(b.Sections, render.Section{Name: wordLayOut, Small: true, Groups: []render.Group{render.Group{Ref: b.ref(front), Breaks: true, Elements: elements}}})
}

// facts builds what is read first: what the card is for, how long it takes,
// and what it does not replace.
func (b *builder) facts() []render.Element {
	p, front := b.card.Procedure, b.card.Procedure.Number.At
	out := []render.Element{b.wording(front, render.Text{Role: render.Lead, Runs: plain(wordReadFirst)})}
	var facts []render.Fact
	for _, f := range []struct{ label, text string }{
		{wordTime, p.Time}, {wordPeople, p.People}, {wordSkill, p.Skill}, {wordCall, p.Call}, {wordMethod, p.Source},
	} {
		if f.text != "" {
			facts = append(facts, render.Fact{Label: f.label, Runs: plain(capital(f.text))})
		}
	}
	if len(facts) > 0 {
		out = append(out, b.wording(front, render.Facts{Rows: facts}))
	}
	return append(out,
		b.wording(front, render.Text{Role: render.Small, Runs: plain(wordDefer)}),
		b.wording(front, render.Text{Role: render.Small, Runs: plain(wordSignals)}))
}

// hazards lists the hazards of the card and their steps.
func (b *builder) hazards() render.Hazards {
	out := render.Hazards{Title: wordHazards, None: wordNone}
	for _, h := range b.card.Hazards {
		text := h.Text
		if h.Rule != "" {
			text = wordRule(text, h.Rule)
		}
		out.Rows = append(out.Rows, render.HazardRow{Signal: signals[h.Signal], Word: h.Signal.Word(), Symbols: triangles(h.Symbols), Text: plain(text), Steps: steps(h.Steps)})
	}
	return out
}

// triangles returns the warning signs of a hazard, the general one if it has
// none. What to wear has a list of its own.
func triangles(codes []string) []string {
	warn := slices.DeleteFunc(slices.Clone(codes), func(code string) bool { return code[0] != 'W' })
	if len(warn) == 0 {
		return []string{wordGeneral}
	}
	return warn
}

// conditions lists what must be fulfilled before the first step.
func (b *builder) conditions() render.Listing {
	l := render.Listing{Title: wordConditions, None: wordNone}
	for _, a := range b.card.After {
		l.Rows = append(l.Rows, listRow(wordFinished(a.Number.Name, a.Title.Name)))
	}
	for _, n := range b.card.Procedure.Conditions {
		l.Rows = append(l.Rows, listRow(capital(n.Name)))
	}
	return l
}

// flats lists the sizes across flats that need hand tools.
func (b *builder) flats() render.Listing {
	l := render.Listing{Title: wordFlats, None: wordNone}
	for _, f := range b.card.Flats {
		size := b.value(f.Size)
		if f.Key {
			size = wordKey(size)
		}
		l.Rows = append(l.Rows, [][]render.Run{append(strong(together(size)), plain(" "+lower(join(f.What)))...)})
	}
	return runIn(l)
}

// parts lists the parts to have ready, with their numbers; those that are
// always replaced come first.
func (b *builder) parts() render.Listing {
	l := render.Listing{Title: wordParts, None: wordNone}
	for _, renew := range []bool{true, false} {
		var runs []render.Run
		for _, part := range b.card.Parts {
			if part.Renew != renew {
				continue
			}
			if len(runs) > 0 {
				runs = append(runs, render.Run{Text: wordApart})
			}
			runs = append(runs, strong(part.Name)...)
			if part.Number != "" {
				runs = append(runs, render.Run{Text: nbsp + part.Number})
			}
			if part.Count > 1 {
				runs = append(runs, plain(", "+wordQuantity(part.Count))...)
			}
		}
		if len(runs) > 0 {
			l.Rows = append(l.Rows, [][]render.Run{plain(together(map[bool]string{true: wordRenew, false: wordAgain}[renew])), runs})
		}
	}
	return l
}

// wear lists the protective equipment in the card's callouts, with its signs.
func (b *builder) wear() render.Listing {
	l := render.Listing{Title: wordWear, None: wordNone}
	for _, s := range hazard.Symbols() {
		if s.Worn == "" {
			continue
		}
		kinds, used := []string{capital(s.Worn)}, map[string][]int{}
		for _, step := range b.card.Steps() {
			for _, c := range step.Callouts {
				if !slices.Contains(c.Symbols, s.Code) {
					continue
				}
				kind := kinds[0]
				for _, id := range c.IDs {
					kind = cmp.Or(wears[s.Code][id], kind)
				}
				if !slices.Contains(kinds, kind) {
					kinds = append(kinds, kind)
				}
				used[kind] = append(used[kind], step.Number)
			}
		}
		for _, kind := range kinds {
			if len(used[kind]) > 0 {
				l.Rows, l.Signs = append(l.Rows, listRow(kind)), append(l.Signs, s.Code)
			}
		}
	}
	return l
}

// implied returns what only the card's own text tells to take, for the set-out
// face.
func (b *builder) implied() (consumables [][][]render.Run, tools []string) {
	taken := map[string]bool{}
	for _, contents := range b.contents {
		for _, i := range contents {
			for _, what := range i.takes {
				taken[what] = true
			}
		}
	}
	named := func(what string) bool {
		return slices.ContainsFunc(b.card.Procedure.Consumables, func(n procedure.Named) bool {
			return strings.Contains(strings.ToLower(n.Name), strings.ToLower(what))
		})
	}
	for _, what := range slices.Sorted(maps.Keys(taken)) {
		switch {
		case named(what):
		case what == wordClock: // it is not used up
			tools = append(tools, what)
		default:
			consumables = append(consumables, listRow(what))
		}
	}
	return consumables, tools
}

// kit lists every tool, wrench and gauge by place, so that one walk fetches
// them all.
func (b *builder) kit(more []string) render.Listing {
	l := render.Listing{Title: wordTools, None: wordNone}
	var places []string
	at := map[string][]render.Run{}
	put := func(place string, runs ...render.Run) {
		if _, known := at[place]; !known {
			places = append(places, place)
		} else {
			at[place] = append(at[place], render.Run{Text: wordApart})
		}
		at[place] = append(at[place], runs...)
	}
	for _, k := range b.card.Kit {
		runs := []render.Run{{Text: bindName(k.Item.Name), Weight: render.Semibold}}
		if number := together(numbers(k.Item)); number != "" {
			runs = append(runs, render.Run{Text: " " + number})
		}
		if size := b.sizeOf(k.Thing); size != "" {
			runs = append(runs, render.Run{Text: ", " + size})
		}
		put(k.Item.Location, runs...)
	}
	for _, name := range more {
		put("", render.Run{Text: name, Weight: render.Semibold})
	}
	slices.SortFunc(places, byPlace)
	for _, place := range places {
		name := capital(place)
		if place == "" {
			name = wordNoPlace
		}
		l.Rows = append(l.Rows, [][]render.Run{plain(together(name)), at[place]})
	}
	return l
}

// sizeOf returns what distinguishes an instrument or stock from similar ones:
// its range, or its graduations.
func (b *builder) sizeOf(thing any) string {
	switch t := thing.(type) {
	case *shop.Stock:
		return together(b.stockSpan(t))
	case *shop.Wrench:
		return together(b.marks(quantity.Marks{Scale: t.Scale, Low: t.Scale.Low, High: t.Scale.High})) + nbsp + engravedUnit(t.EngravedUnit, t.Scale)
	case *shop.Gauge:
		if t.Scale.Step != nil {
			return t.Scale.Number(t.Scale.Step, b.card.Shop.Mark()) + nbsp + engravedUnit(t.EngravedUnit, t.Scale)
		}
	}
	return ""
}

// byPlace compares places by name, numbers in them by value; "" comes last.
func byPlace(a, b string) int {
	if a == "" || b == "" {
		return len(b) - len(a)
	}
	return cmp.Or(strings.Compare(strings.TrimRight(a, "0123456789"), strings.TrimRight(b, "0123456789")), cmp.Compare(len(a), len(b)), strings.Compare(a, b))
}

// runIn joins the rows of a list into one paragraph.
func runIn(l render.Listing) render.Listing {
	var all []render.Run
	for _, r := range l.Rows {
		if len(all) > 0 {
			all = append(all, render.Run{Text: wordApart})
		}
		all = append(all, r[0]...)
	}
	if len(all) > 0 {
		l.Rows = [][][]render.Run{{all}}
	}
	return l
}

// numbers returns a tool's number and its former number, which some still
// carry.
func numbers(i *shop.Item) string {
	if i.OldNumber != "" {
		return wordOld(i.Number, i.OldNumber)
	}
	return i.Number
}

// listRow returns a row of plain text.
func listRow(cells ...string) [][]render.Run {
	out := make([][]render.Run, len(cells))
	for i, c := range cells {
		out[i] = plain(c)
	}
	return out
}

// placeOf returns the place of the first name, or another place if there is
// none.
func placeOf(names []procedure.Named, or source.Place) source.Place {
	if len(names) > 0 {
		return names[0].At
	}
	return or
}
