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

// The words of a shim pack; those of its tables stand with them. Every word of
// direction is made from the unit's data.
const (
	wordPackFrom  = "Pack from the table"
	wordPackMade  = "Pack as made"
	wordPackOrder = "Lay the shims in the order of the row"
	wordPackThin  = ", thin between thick"
)

// effects are what a thicker pack does to the reading.
var effects = map[unit.Effect]string{unit.Opens: "opens", unit.Closes: "closes", unit.Raises: "raises", unit.Lowers: "lowers"}

// wordAimOf says of what the manual's limits are: they stand in the panel of a
// pack, and are not its own.
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

// packOrder says how the shims are laid: of fewer than three none is between
// others.
func packOrder(i *card.Shim) string {
	if slices.ContainsFunc(i.Packs, func(p card.ShimPack) bool { return len(p.Shims) > 2 }) {
		return wordPackOrder + wordPackThin + "."
	}
	return wordPackOrder + "."
}

// shim builds what a face says of a shim pack to be made: where it sits, the
// boxes, and its tables.
func (b *builder) shim(i *card.Shim) []render.Element {
	if !i.HasTables() {
		return nil
	}
	g := i.Micrometer
	panel := render.Reading{Title: strong(sits(i.Pack)), Tools: b.on(&g.Item, g), Plain: true}
	if e := effects[i.Pack.MoreShim]; e != "" && i.Pack.Reading != "" {
		panel.Lines = append(panel.Lines, plain(wordThicker(e, i.Pack.Reading)))
	}
	if i.Other != nil {
		panel.Lines = append(panel.Lines, plain(wordBothPacks(sits(i.Other))))
	}
	cut, ok := b.cut(i)
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
		panel.Boxes = append(panel.Boxes, from+", "+i.Unit.Symbol, made+", "+engraved(g.EngravedUnit, g.Scale))
	}
	out := []render.Element{b.technical(i.At, panel)}
	if ok {
		out = append(out, b.technical(i.At, cut))
	}
	return append(out, b.series(i.At, wordPackTable(i.Pack.Name), b.packTables(i))...)
}

// mostLayers is how many layers a section is drawn with: more would be taller
// than the reading that it explains.
const mostLayers = 5

// cut builds the section of the worked line's pack; ok is false for one of too
// many layers, and where the step has no room for it.
func (b *builder) cut(i *card.Shim) (cut render.Pack, ok bool) {
	p := i.Worked.Pack
	cut = render.Pack{Total: b.exactly(i, p.Total) + nbsp + i.Unit.Symbol, Lines: [][]render.Run{plain(packOrder(i)), plain(wordCut(b.exactly(i, p.Total) + nbsp + i.Unit.Symbol))}}
	if len(i.Pack.Between) == 2 {
		cut.Above, cut.Below = i.Pack.Between[0], i.Pack.Between[1]
	}
	layers := p.Layers()
	for _, t := range layers {
		share := new(big.Rat).Quo(t, p.Total)
		size := new(big.Int).Quo(new(big.Int).Mul(share.Num(), big.NewInt(1000)), share.Denom())
		cut.Layers = append(cut.Layers, render.Layer{Label: b.exactly(i, t), Size: int(size.Int64())})
	}
	return cut, len(layers) > 0 && len(layers) <= mostLayers && b.relief[b.step] < figureGone
}

func sits(p *unit.Pack) string {
	if p.Location == "" {
		return p.Name
	}
	return wordPackSits(p.Name, p.Location)
}

// exactly writes a thickness with the decimals of the stock, or as many more as
// it has.
func (b *builder) exactly(i *card.Shim, t *big.Rat) string {
	if step := i.Stock.Step(); step != nil && new(big.Rat).Quo(t, step).IsInt() {
		return quantity.Format(t, step, b.card.Shop.Mark())
	}
	return quantity.Decimal(t, b.card.Shop.Mark())
}

// stockSpan writes the thinnest and the thickest shim of a stock.
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

// shimTools returns what is taken in the hand for it.
func (b *builder) shimTools(i *card.Shim) []render.ToolRow {
	if i.Stock == nil {
		return nil
	}
	return []render.ToolRow{{Verb: wordTake, Name: i.Stock.Name, Place: i.Stock.Location}}
}

// shimRows returns what it leaves on record.
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
			{at: i.At, what: wordPackRow(p.Name), limits: span(b.exactly(i, low.Total), b.exactly(i, high.Total)) + nbsp + i.Unit.Symbol, kind: kind},
			{at: i.At, what: wordPackAsMade(p.Name), limits: wordAsRow(over) + nbsp + engraved(g.EngravedUnit, g.Scale), kind: kind, gauged: true},
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
