package deck

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/cmd/benchwright/internal/value"
	"benchwright/render"
)

// measurement builds the panel of a reading, and its tables.
func (b *builder) measurement(m *card.Measurement) []render.Element {
	return append([]render.Element{b.technical(m.At, b.reading(m))}, b.tables(m)...)
}

// reading builds the panel of a reading.
func (b *builder) reading(m *card.Measurement) render.Reading {
	r := render.Reading{Title: strong(m.Of), Boxes: labels(m.Record), Use: plain(uses[m.Use])}
	if len(r.Boxes) == 0 {
		r.Boxes = []string{""}
	}
	if g := m.Gauge; g != nil {
		r.Tools = b.onGauge(m)
		r.Unit = engravedUnit(g.EngravedUnit, g.Scale)
	}
	b.accept(&r, m)
	switch {
	case m.FromLowest:
		r.Lines = append(r.Lines, plain(wordZeroLowest(lower(m.Gauge.Name), b.spreadText(m))))
	case m.Spread != nil && m.Span() != nil:
		r.Lines = append(r.Lines, plain(wordSpreadToo))
	}
	if t := m.Tilt; t != nil {
		r.Lines = append(r.Lines, plain(wordTilt(b.value(*t))))
	}
	if r.Low != "" {
		r.LowLabel, r.IfLow = wordBelow, b.branch(m.IfLow, m.LowStep)
	}
	if r.High != "" {
		r.HighLabel, r.IfHigh = wordAbove, b.branch(m.IfHigh, m.HighStep)
	}
	switch {
	case m.Table != nil: // the mark has no unit, and precedes the reading
		if r.Boxes[0] == "" {
			r.Boxes[0] = wordReading
		}
		r.Boxes = append([]string{value.NameOf(m.Table.Mark)}, withUnit(r.Boxes, r.Unit)...)
	case len(r.Boxes) == 1:
		r.BoxUnit = r.Unit
	default:
		r.Boxes = withUnit(r.Boxes, r.Unit)
	}
	return r
}

// accept sets the limits of the panel: on marks of the gauge, as the manual
// states them if no gauge is known, or that they are in a table or not stated.
func (b *builder) accept(r *render.Reading, m *card.Measurement) {
	switch {
	case m.Limits.None:
		if m.Use == procedure.Each {
			r.Use = nil // there are no limits to be inside
		}
		r.Plain, r.Label = true, wordWriteDown
		if m.Expect != nil && m.Limits.Expect != nil {
			r.Label = wordExpect
			r.Value = b.marks(*m.Expect)
			r.Lines = append(r.Lines, plain(wordOutside(b.card.Procedure.Call)))
		} else if e := m.Limits.Expect; e != nil {
			r.Label, r.Value, r.Unit = wordExpect, b.band(*e), e.Unit.Symbol
			r.Lines = append(r.Lines, plain(wordOutside(b.card.Procedure.Call)))
		}
		if m.Limits.Because != "" {
			r.Lines = append(r.Lines, plain(wordNoLimits(m.Limits.Because)))
		}
	case m.Limit != nil && m.Marks != nil:
		r.Label = wordAccept
		r.Value = b.marks(*m.Marks)
		r.Low, r.High = m.Marks.Ends(b.card.Shop.Mark())
		r.Source = plain(b.manual(m.Limit))
		if m.Guarded != nil {
			r.Lines = append(r.Lines, plain(wordGuarded))
		}
	case m.Limit != nil:
		band := b.typedBand(m)
		r.Label, r.Value, r.Unit = wordAccept, b.band(band), band.Unit.Symbol
		r.Low, r.High = band.Ends(b.card.Shop.Mark())
		r.Source = plain(b.manual(m.Limit))
	case m.Table != nil:
		mark := value.NameOf(m.Table.Mark)
		r.Lines = append(r.Lines, plain(wordByMark(lower(mark))))
		r.LowLabel, r.IfLow = wordBelowRow, b.branch(m.IfLow, m.LowStep)
		r.HighLabel, r.IfHigh = wordAboveRow, b.branch(m.IfHigh, m.HighStep)
		r.Source = plain(b.tableSource(m.Table))
		if len(m.Rows) > 0 && m.Rows[0].Guarded != nil {
			r.Lines = append(r.Lines, plain(wordGuarded))
		}
	}
}

// tables builds the tables of a reading: limits by mark, and spread.
func (b *builder) tables(m *card.Measurement) []render.Element {
	var out []render.Element
	if span := m.Span(); m.Spread != nil && span != nil && !m.FromLowest {
		out = append(out, b.table(m.At, wordSpread(lower(m.Of)), b.spread(m, span)))
	}
	if m.Table != nil {
		out = append(out, b.table(m.At, m.Of, b.byMark(m)))
	}
	return out
}

// spreadText prints the maximum spread of readings.
func (b *builder) spreadText(m *card.Measurement) string {
	return m.Gauge.Scale.Number(m.Spread, b.card.Shop.Mark()) + nbsp + engravedUnit(m.Gauge.EngravedUnit, m.Gauge.Scale)
}

// typedBand returns limits without a gauge, with the digits that were typed.
// If no mark of the gauge is inside, a rule refuses the card.
func (b *builder) typedBand(m *card.Measurement) quantity.Band {
	if m.Gauge == nil {
		return *m.OnGauge()
	}
	return m.Limit.Band
}

// withUnit adds the unit to the label of each box.
func withUnit(labels []string, unit string) []string {
	var out []string
	for _, label := range labels {
		switch {
		case label == "":
			label = unit
		case unit != "":
			label += ", " + unit
		}
		out = append(out, label)
	}
	return out
}

// labels converts the labels given by the writer.
func labels(names []string) []string {
	var out []string
	for _, n := range names {
		out = append(out, typeset(n))
	}
	return out
}

// branch returns what to do on one side of the band.
func (b *builder) branch(br procedure.Branch, to *card.Step) []render.Run {
	out := plain(br.Text)
	if to != nil {
		if len(out) > 0 {
			out = append(out, render.Run{Text: " "})
		}
		out = append(out, render.Run{Text: wordGo(to.Number, br.Back), Link: card.Anchor(to.Number)})
	}
	return out
}

// spread builds a table of the maximum spread, so that nothing is added up at
// the bench: for each lowest reading the highest allowed.
func (b *builder) spread(m *card.Measurement, span *quantity.Marks) render.Table {
	step, number := m.Gauge.Scale.Step, func(v *big.Rat) string { return m.Gauge.Scale.Number(v, b.card.Shop.Mark()) }
	unit := engravedUnit(m.Gauge.EngravedUnit, m.Gauge.Scale)
	t := render.Table{Head: [][]render.Run{plain(wordSpreadLow + ", " + unit), plain(wordSpreadHigh + ", " + unit)}, Align: []render.Align{render.Left, render.Left}, Large: true}
	for low := new(big.Rat).Set(span.Low); low.Cmp(span.High) <= 0; low = new(big.Rat).Add(low, step) {
		high := new(big.Rat).Add(low, m.Spread)
		if high.Cmp(span.High) >= 0 {
			t.Rows = append(t.Rows, [][]render.Run{plain(wordAndOver(number(low))), plain(number(span.High))})
			break
		}
		t.Rows = append(t.Rows, [][]render.Run{plain(number(low)), plain(number(high))})
		if len(t.Rows) < 3 { // the second row, if there is one
			t.Under = plain(wordSpreadRow(number(low), number(high)))
		}
	}
	return t
}

// byMark builds a table of limits by etched mark.
func (b *builder) byMark(m *card.Measurement) render.Table {
	mark, scale := value.NameOf(m.Table.Mark), b.rowScale(m)
	t := render.Table{Head: [][]render.Run{plain(mark), plain(wordAccept + ", " + scale)}, Align: []render.Align{render.Right, render.Left}, Large: true}
	first, said := 0, ""
	for _, row := range m.Rows {
		if row.Marks == nil {
			continue // a rule refuses it
		}
		accept := b.marks(*row.Marks)
		if accept == said { // one step of the marks moves no mark of the gauge
			t.Rows[len(t.Rows)-1][0] = plain(span(signed(first), signed(row.Mark)))
		} else {
			first, said = row.Mark, accept
			t.Rows = append(t.Rows, [][]render.Run{plain(signed(row.Mark)), plain(accept)})
		}
		if row.Mark != 0 && (t.Under == nil || row.Mark == 2) { // +2 if there is one: a zero shows nothing
			t.Under = plain(wordMarkRow(mark, signed(row.Mark), accept+nbsp+scale))
		}
	}
	return t
}

// rowScale returns the unit of a table's rows.
func (b *builder) rowScale(m *card.Measurement) string {
	if m.Gauge != nil {
		return engravedUnit(m.Gauge.EngravedUnit, m.Gauge.Scale)
	}
	return m.Table.Nominal.Unit.Symbol
}

// tableSource returns what the manual states about a table.
func (b *builder) tableSource(t *unit.Table) string {
	return wordSourced(wordManualTable(b.value(t.Nominal), b.value(t.Tolerance), b.value(t.PerMark), t.Shorter), t.Source)
}

// signed prints a mark as etched: "+2", "−3", "0".
func signed(mark int) string {
	if mark > 0 {
		return "+" + wholeDegrees(int64(mark))
	}
	return wholeDegrees(int64(mark))
}
