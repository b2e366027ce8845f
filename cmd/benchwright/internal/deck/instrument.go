package deck

import (
	"slices"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/render"
)

// A step names a gauge or a wrench once, with its number and place, before it is
// needed: on its line of tools where words stand before the panel, since these
// may use it already; else in the panel itself. Where it has several gauges or
// several wrenches, every other panel says which by the short name.

// instruments returns what the panels of an item are read and set on, in the
// order of the hands.
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

// begin prepares the names of a step: none of its instruments is named yet but
// those that a tool block takes.
func (b *builder) begin(s *card.Step) {
	b.step, b.unnamed = s.Number, map[string]bool{}
	for _, i := range s.Items {
		for _, item := range instruments(i) {
			b.unnamed[item.ID] = true
		}
	}
	for _, i := range s.Items {
		if t, ok := i.(*card.Tool); ok {
			for _, l := range t.Lines {
				for _, item := range l.Tools {
					delete(b.unnamed, item.ID)
				}
			}
		}
	}
}

// take names an instrument, unless the step has.
func (b *builder) take(i *shop.Item) []render.ToolRow {
	if !b.unnamed[i.ID] {
		return nil
	}
	delete(b.unnamed, i.ID)
	return []render.ToolRow{toolRow(wordTake, i, "")}
}

// on returns what a panel says of the gauge or wrench that it is read or set on.
func (b *builder) on(i *shop.Item, thing any) []render.ToolRow {
	if rows := b.take(i); rows != nil || !b.several(thing) {
		return rows
	}
	return []render.ToolRow{{Verb: wordOn, Name: together(lower(i.Name))}}
}

// onGauge returns what a panel says of the gauge of its reading.
func (b *builder) onGauge(m *card.Measurement) []render.ToolRow {
	if m.Gauge == nil {
		return nil
	}
	return b.on(&m.Gauge.Item, m.Gauge)
}

// several says whether the step has more than one of a kind: gauges, wrenches.
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
