package deck

import (
	"math/big"
	"slices"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/render"
)

// The words of a shim pack; those of its tables are in shimtable.go. Direction
// words come from the unit's data.
const (
	wordPackFrom  = "Pack from the table"
	wordPackMade  = "Pack as made"
	wordPackOrder = "Lay the shims in the order of the row"
	wordPackThin  = ", thin between thick"
)

// effects names what a thicker pack does to the reading.
var effects = map[unit.Effect]string{unit.Opens: "opens", unit.Closes: "closes", unit.Raises: "raises", unit.Lowers: "lowers"}

// wordAimOf tells what the manual's limits are for, because in the panel of a
// pack they could be taken for the pack's own.
func wordAimOf(reading, manual string) string {
	if reading == "" {
		return manual
	}
	return reading + ", " + manual
}
func wordPackSits(name, sits string) string { return name + ", " + sits }
func wordThicker(effect, reading string) string {
	return "A thicker pack " + effect + " the " + reading + "."
}
func wordBothPacks(other string) string {
	return "Make the " + lower(other) + " too: both packs together stay as thick as they were."
}
func wordCut(pack string) string        { return "Example: a pack of " + pack + "." }
func wordPackTable(name string) string  { return name + ": shims for each reading" }
func wordPackRow(name string) string    { return name + ", from the table" }
func wordPackAsMade(name string) string { return name + ", as made" }
func wordAsRow(span string) string      { return "as in its row, " + span }

// packOrder returns how to lay the shims, if there are enough for one to be
// between others.
func packOrder(i *card.Shim) string {
	if slices.ContainsFunc(i.Packs, func(p card.ShimPack) bool { return len(p.Shims) > 2 }) {
		return wordPackOrder + wordPackThin + "."
	}
	return wordPackOrder + "."
}

// shim builds the content for a shim pack: where it sits, the boxes, and its
// tables.
func (b *builder) shim(i *card.Shim) []render.Element {
	if !i.HasTables() {
		return nil
	}
	g := i.Micrometer
	panel := render.Reading{Title: strong(sits(i.Pack)), Tools: b.toolRowFor(&g.Item, g), Plain: true}
	if e := effects[i.Pack.MoreShim]; e != "" && i.Pack.Reading != "" {
		panel.Lines = append(panel.Lines, plain(wordThicker(e, i.Pack.Reading)))
	}
	if i.Other != nil {
		panel.Lines = append(panel.Lines, plain(wordBothPacks(sits(i.Other))))
	}
	cut, ok := b.sectionView(i)
	if !ok {
		panel.Lines = append(panel.Lines, plain(packOrder(i)))
	}
	if i.Limit != nil {
		panel.Source = plain(wordAimOf(i.Pack.Reading, b.manual(i.Limit)))
	}
	for _, p := range []*unit.Pack{i.Pack, i.Other} {
		if p == nil {
			continue
		}
		from, made := wordPackFrom, wordPackMade
		if i.Other != nil {
			from, made = wordPackRow(p.Name), wordPackAsMade(p.Name)
		}
		panel.Boxes = append(panel.Boxes, from+", "+i.Unit.Symbol, made+", "+engravedUnit(g.EngravedUnit, g.Scale))
	}
	out := []render.Element{b.technical(i.At, panel)}
	if ok {
		out = append(out, b.technical(i.At, cut))
	}
	return append(out, b.series(i.At, wordPackTable(i.Pack.Name), b.packTables(i))...)
}

// maxLayers is the maximum number of layers drawn in a section: more would be
// taller than the panel that it explains.
const maxLayers = 5

// sectionView draws the pack of the worked example in section. Ok is false if
// it has too many layers, or the step has no room for it.
func (b *builder) sectionView(i *card.Shim) (cut render.Pack, ok bool) {
	p := i.Worked.Pack
	cut = render.Pack{Total: b.thickness(i, p.Total) + nbsp + i.Unit.Symbol, Lines: [][]render.Run{plain(packOrder(i)), plain(wordCut(b.thickness(i, p.Total) + nbsp + i.Unit.Symbol))}}
	if len(i.Pack.Between) == 2 {
		cut.Above, cut.Below = i.Pack.Between[0], i.Pack.Between[1]
	}
	layers := p.Layers()
	for _, t := range layers {
		share := new(big.Rat).Quo(t, p.Total)
		size := new(big.Int).Quo(new(big.Int).Mul(share.Num(), big.NewInt(1000)), share.Denom())
		cut.Layers = append(cut.Layers, render.Layer{Label: b.thickness(i, t), Size: int(size.Int64())})
	}
	return cut, len(layers) > 0 && len(layers) <= maxLayers && b.relief[b.step] < figureGone
}

func sits(p *unit.Pack) string {
	if p.Location == "" {
		return p.Name
	}
	return wordPackSits(p.Name, p.Location)
}

// thickness prints a thickness with the decimals of the stock, or more if it
// needs them.
func (b *builder) thickness(i *card.Shim, t *big.Rat) string {
	if step := i.Stock.Step(); step != nil && new(big.Rat).Quo(t, step).IsInt() {
		return quantity.Format(t, step, b.card.Shop.Mark())
	}
	return quantity.Decimal(t, b.card.Shop.Mark())
}

// stockSpan prints the thinnest and thickest shim of a stock.
func (b *builder) stockSpan(s *shop.Stock) string {
	thickness := func(a, c shop.Shim) int {
		u := a.Thickness.Unit
		return a.Thickness.Value.Cmp(quantity.Convert(c.Thickness.Value, c.Thickness.Unit, u))
	}
	low, high := slices.MinFunc(s.Shims, thickness).Thickness, slices.MaxFunc(s.Shims, thickness).Thickness
	if low.Unit.Symbol != high.Unit.Symbol {
		return span(b.value(low), b.value(high))
	}
	return span(low.Text, b.value(high))
}

// shimTools returns the tools to take for it.
func (b *builder) shimTools(i *card.Shim) []render.ToolRow {
	if i.Stock == nil {
		return nil
	}
	return []render.ToolRow{{Verb: wordTake, Name: bindName(i.Stock.Name), Place: bindName(i.Stock.Location)}}
}

// shimRows returns its rows of the record.
func (b *builder) shimRows(i *card.Shim) []recordRow {
	if !i.HasTables() {
		return nil
	}
	rows := func(p *unit.Pack, packs []*card.ShimPack) []recordRow {
		total := func(a, c *card.ShimPack) int { return a.Total.Cmp(c.Total) }
		low, high, g := slices.MinFunc(packs, total), slices.MaxFunc(packs, total), i.Micrometer
		if low.Over == nil || high.Over == nil {
			return nil
		}
		kind := rowKind{left: true, initials: true}
		over := span(g.Scale.Number(low.Over.Low, b.card.Shop.Mark()), g.Scale.Number(high.Over.High, b.card.Shop.Mark()))
		return []recordRow{
			{at: i.At, what: wordPackRow(p.Name), limits: span(b.thickness(i, low.Total), b.thickness(i, high.Total)) + nbsp + i.Unit.Symbol, kind: kind},
			{at: i.At, what: wordPackAsMade(p.Name), limits: wordAsRow(over) + nbsp + engravedUnit(g.EngravedUnit, g.Scale), kind: kind, gauged: true},
		}
	}
	var packs, others []*card.ShimPack
	for n := range i.Packs {
		packs = append(packs, &i.Packs[n])
	}
	if i.Other == nil {
		return rows(i.Pack, packs)
	}
	packs = nil
	for n := range i.Rows {
		packs, others = append(packs, &i.Rows[n].ShimPack), append(others, i.Rows[n].Other)
	}
	return append(rows(i.Pack, packs), rows(i.Other, others)...)
}
