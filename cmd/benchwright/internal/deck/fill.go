package deck

import (
	"fmt"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/render"
)

// What a face says of a fill.
const (
	wordPour     = "Pour in"
	wordFillTo   = "Fill it to"
	wordPoured   = "poured"
	wordTickEach = "Check off each one when it is poured."
)

func wordInto(fluid, into string) string { return fluid + ", into " + into }
func wordJug(n int) string               { return fmt.Sprintf("no. %d", n) }

// fill builds the panel for a quantity to pour in: the mark to fill to, or a
// row for each filling if there are several.
func (b *builder) fill(f *card.Fill) []render.Element {
	title := strong(wordInto(f.Of, f.Block.Into))
	var source []render.Run
	if f.Limit != nil {
		source = plain(b.manual(f.Limit))
	}
	if f.Full == 0 || f.Last == nil {
		s := render.Setting{Title: title, Tools: b.onGauge(f.Measurement), Label: wordPour, Source: source, Boxes: []string{wordPoured}}
		switch {
		case f.Last != nil:
			s.Value, s.Unit = b.marks(*f.Last), engravedUnit(f.Gauge.EngravedUnit, f.Gauge.Scale)
		case f.Limit != nil:
			s.Value, s.Unit = b.band(f.Limit.Band), f.Limit.Band.Unit.Symbol
		}
		s.BoxUnit = s.Unit
		return []render.Element{b.technical(f.At, s)}
	}
	unit := engravedUnit(f.Gauge.EngravedUnit, f.Gauge.Scale)
	t := render.Table{Head: [][]render.Run{plain(f.Gauge.Name), plain(wordFillTo + ", " + unit)}, Large: true}
	panel := render.Reading{Title: title, Tools: b.onGauge(f.Measurement), Source: source, Plain: true, Lines: [][]render.Run{plain(wordTickEach)}}
	for i, text := range b.jugs(f) {
		t.Rows = append(t.Rows, [][]render.Run{plain(wordJug(i + 1)), plain(text)})
		panel.Boxes = append(panel.Boxes, wordJug(i+1))
	}
	return []render.Element{b.technical(f.At, t), b.technical(f.At, panel)}
}

// jugs returns the mark to fill to for each filling.
func (b *builder) jugs(f *card.Fill) []string {
	var out []string
	_, top := f.Gauge.Scale.Ends()
	for range f.Full {
		out = append(out, f.Gauge.Scale.Number(top, b.card.Shop.Mark()))
	}
	return append(out, b.marks(*f.Last))
}

// fillRows returns its rows of the record, one for each filling.
func (b *builder) fillRows(f *card.Fill) []recordRow {
	row := b.measurementRows(f.Measurement)[0]
	if f.Full == 0 || f.Last == nil {
		return []recordRow{row}
	}
	var out []recordRow
	for i, text := range b.jugs(f) {
		row.what, row.limits = f.Of+", "+wordJug(i+1), text+nbsp+engravedUnit(f.Gauge.EngravedUnit, f.Gauge.Scale)
		out = append(out, row)
	}
	return out
}
