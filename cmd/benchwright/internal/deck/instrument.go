package deck

import (
	"slices"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/render"
)

// A step names a gauge or wrench once in full, with number and place, before
// it is needed: on the tool line if text precedes the panel and may already
// use it, else in the panel. With several gauges or wrenches, later panels use
// the short name.

// instruments returns the gauges and wrenches of an item, in the order of the
// work.
func instruments(i card.Item) []*shop.Item {
	var out []*shop.Item
	for _, m := range i.Readings() {
		if m.Gauge != nil {
			out = append(out, &m.Gauge.Item)
		}
	}
	switch i := i.(type) {
	case *card.Torque:
		for _, g := range i.Tightenings() {
			if g.Choice != nil {
				out = append(out, &g.Choice.Wrench.Item)
			}
		}
	case *card.Shim:
		if i.Micrometer != nil {
			out = append(out, &i.Micrometer.Item)
		}
	case *card.LeakTest:
		if i.Thermometer != nil {
			out = append(out, &i.Thermometer.Item)
		}
	}
	return out
}

// begin resets unnamedTools for a step: all its instruments but those that a
// tool block takes.
func (b *builder) begin(s *card.Step) {
	b.step, b.unnamedTools = s.Number, map[string]bool{}
	for _, i := range s.Items {
		for _, item := range instruments(i) {
			b.unnamedTools[item.ID] = true
		}
	}
	for _, i := range s.Items {
		if t, ok := i.(*card.Tool); ok {
			for _, l := range t.Lines {
				for _, item := range l.Tools {
					delete(b.unnamedTools, item.ID)
				}
			}
		}
	}
}

// nameOnce returns the row that names an instrument, nil if the step has named
// it.
func (b *builder) nameOnce(i *shop.Item) []render.ToolRow {
	if !b.unnamedTools[i.ID] {
		return nil
	}
	delete(b.unnamedTools, i.ID)
	return []render.ToolRow{toolRow(wordTake, i, "")}
}

// toolRowFor returns the row of a panel for its gauge or wrench.
func (b *builder) toolRowFor(i *shop.Item, thing any) []render.ToolRow {
	if rows := b.nameOnce(i); rows != nil || !b.several(thing) {
		return rows
	}
	return []render.ToolRow{{Verb: wordOn, Name: together(lower(i.Name))}}
}

// onGauge returns the row of a panel for the gauge of its reading.
func (b *builder) onGauge(m *card.Measurement) []render.ToolRow {
	if m.Gauge == nil {
		return nil
	}
	return b.toolRowFor(&m.Gauge.Item, m.Gauge)
}

// several reports whether the step has several gauges or several wrenches,
// whichever thing is.
func (b *builder) several(thing any) bool {
	n := 0
	_, gauge := thing.(*shop.Gauge)
	for _, k := range b.card.Kit {
		if !slices.Contains(k.Steps, b.step) {
			continue
		}
		switch k.Thing.(type) {
		case *shop.Gauge:
			if gauge {
				n++
			}
		case *shop.Wrench:
			if !gauge {
				n++
			}
		}
	}
	return n > 1
}
