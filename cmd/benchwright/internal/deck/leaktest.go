package deck

import (
	"fmt"
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/render"
)

// What a face says of a leak test.
const (
	wordPump      = "Pump up to"
	wordDraw      = "Draw down to"
	wordColderBy  = "Shop colder by"
	wordWarmerBy  = "Shop warmer by"
	wordWarmer    = "warmer"
	wordColder    = "colder"
	wordAtStart   = "at the start"
	wordAtEnd     = "at the end"
	wordUnder     = "below"
	wordShallower = "nearer to 0 than"
	wordDeeper    = "or deeper"
	wordStart     = "start"
	wordFinish    = "end"
	wordShop      = "shop"
	wordStartHeat = "the temperature of the start"
)

func wordCap(limit string) string   { return "Never above " + limit + ". " }
func wordShopAt(span string) string { return "Shop at " + span + "." }
func wordHoldFor(time string) string {
	return "Fill the first two boxes. Wait " + time + ". Fill the others."
}
func wordBeyond(degrees string) string { return "Beyond " + degrees + ", do the test again." }
func wordBetween(side string) string   { return "Between two rows, take the " + side + " one." }
func wordLeak(side string) string      { return "Gauge " + side + " the table: " }
func wordEndTable(of string) string    { return "At the end: " + of }
func wordLost(allowed, time, reference string) string {
	return allowed + " lost in " + time + " at " + reference
}
func wordLeakRate(rate, volume, time string) string {
	return rate + " from " + volume + ", held " + time
}
func wordLeakExample(from, to, row, reading string) string {
	return fmt.Sprintf("Example: %s at the start, %s at the end is %s: %s.", from, to, row, reading)
}

// leakTest builds what a face says of a pressure or vacuum hold: the panel, and
// the table of what the gauge may show at the end.
func (b *builder) leakTest(t *card.LeakTest) []render.Element {
	p := t.Block
	panel := render.Setting{Title: strong(t.Of), Label: wordPump, Source: plain(wordManual(b.leakManual(t)))}
	if p.Vacuum {
		panel.Label = wordDraw
	}
	if t.Rows == nil {
		return []render.Element{b.technical(t.At, panel)} // what is missing has been reported
	}
	mark, g := b.card.Shop.Mark(), t.Gauge
	panel.Value, panel.Unit = g.Scale.Number(t.Start, mark), engraved(g.Marked, g.Scale)
	degree := t.Thermometer.Scale.Unit.Symbol
	first := plain(wordShopAt(b.shopSpan(t)))
	if u := b.card.Unit; u != nil && u.TestCap != nil && !p.Vacuum {
		limit := quantity.Band{Form: quantity.Max, High: u.TestCap.Gas.Value, Unit: u.TestCap.Gas.Unit}
		if m, ok := limit.Inward(g.Scale); ok {
			first = append(strong(wordCap(g.Scale.Number(m.High, mark)+nbsp+panel.Unit)), first...)
		}
	}
	panel.Lines = [][]render.Run{first, plain(wordHoldFor(b.value(p.Hold)))}
	panel.Boxes = []string{wordStart + ", " + panel.Unit, wordShop + ", " + degree, wordFinish + ", " + panel.Unit, wordShop + ", " + degree}
	return []render.Element{b.technical(t.At, panel), b.table(t.At, wordEndTable(lower(t.Of)), b.endReadings(t))}
}

// leakManual writes what the manual asks for.
func (b *builder) leakManual(t *card.LeakTest) string {
	p := t.Block
	text := p.Start.Written + " " + map[bool]string{true: "absolute", false: "gauge"}[p.Absolute] + ", "
	reference := wordStartHeat
	if p.Reference != nil {
		reference = b.value(*p.Reference)
	}
	if p.Allowed != nil {
		text += wordLost(b.value(*p.Allowed), b.value(p.Hold), reference)
	} else {
		text += wordLeakRate(b.value(*p.Rate), b.value(*p.Volume), b.value(p.Hold))
	}
	if p.Limits.Source != "" {
		text += " (" + p.Limits.Source + ")"
	}
	return text
}

// endReadings builds the table: by how much the shop has become colder or
// warmer, and what the gauge may show. Where it has not changed is marked.
func (b *builder) endReadings(t *card.LeakTest) render.Table {
	unit := engraved(t.Gauge.Marked, t.Gauge.Scale)
	// On a scale that counts down from zero, less is more of a vacuum: words that
	// show the way.
	head, wrong, shows := wordAtLeast+", "+unit, wordUnder, func(n string) string { return wordAtLeast + " " + n + nbsp + unit }
	if t.Rows[0].AtMost {
		head, wrong, shows = unit+" "+wordDeeper, wordShallower, func(n string) string { return n + nbsp + unit + " " + wordDeeper }
	}
	reading := plain(together(head))
	out := render.Table{Head: [][]render.Run{plain(together(wordColderBy)), reading, plain(together(wordWarmerBy)), reading},
		Align: []render.Align{render.Left, render.Right, render.Left, render.Right}, Large: true}
	number := func(r bench.EndReading) string { return t.Gauge.Scale.Number(r.Mark, b.card.Shop.Mark()) }
	degree := t.Thermometer.Scale.Unit.Symbol
	for _, r := range t.Rows {
		if r.Mark == nil {
			return render.Table{} // reported
		}
	}
	for n := range t.Most + 1 {
		by := plain(fmt.Sprint(n) + nbsp + degree)
		out.Rows = append(out.Rows, [][]render.Run{by, plain(number(t.Rows[t.Most-n])), by, plain(number(t.Rows[t.Most+n]))})
		out.Marked = append(out.Marked, n == 0)
	}
	from, to, row := b.leakStart(t), new(big.Rat), t.Rows[t.Most-2]
	to.Sub(from, big.NewRat(2, 1))
	s := t.Thermometer.Scale
	out.Under = plain(wordLeakExample(s.Print(from, b.card.Shop.Mark()), s.Print(to, b.card.Shop.Mark()), fmt.Sprint(2)+nbsp+degree+" "+wordColder, shows(number(row))))
	add := func(text string) { out.Under = append(out.Under, render.Run{Text: " " + text}) }
	add(wordBeyond(fmt.Sprint(t.Most) + nbsp + degree))
	if !s.Step.IsInt() {
		sharper := wordWarmer // a warmer shop lifts a pressure, so its row is the stricter
		if t.Block.Vacuum {
			sharper = wordColder
		}
		add(wordBetween(sharper))
	}
	if runs := b.branch(t.IfLow, t.LowGo); len(runs) > 0 {
		out.Under = append(append(out.Under, render.Run{Text: " " + wordLeak(wrong), Weight: render.Semibold}), runs...)
	}
	return out
}

// shopSpan writes where the shop's temperature may be at the start, as it was
// written where the thermometer has those marks.
func (b *builder) shopSpan(t *card.LeakTest) string {
	text, shop, unit := b.marks(*t.Shop), t.Block.Shop, t.Thermometer.Scale.Unit
	if in := shop.In(unit); shop.Unit == unit && in.Low.Cmp(t.Shop.Low) == 0 && in.High.Cmp(t.Shop.High) == 0 {
		text = b.band(shop)
	}
	return together(text) + nbsp + unit.Symbol
}

// leakStart is a temperature of the shop for the worked line: a mark of the
// thermometer near the middle.
func (b *builder) leakStart(t *card.LeakTest) *big.Rat {
	middle := new(big.Rat).Add(t.Shop.Low, t.Shop.High)
	return t.Thermometer.Scale.Floor(middle.Mul(middle, big.NewRat(1, 2)))
}

// leakTestTools returns what is taken in the hand for it.
func (b *builder) leakTestTools(t *card.LeakTest) []render.ToolRow {
	var rows []render.ToolRow
	if t.Gauge != nil {
		rows = append(rows, toolRow(wordTake, &t.Gauge.Item, ""))
	}
	if t.Thermometer != nil {
		rows = append(rows, toolRow(wordTake, &t.Thermometer.Item, ""))
	}
	return rows
}

// leakTestRows returns what it leaves on record: both readings of the gauge, and
// of the thermometer.
func (b *builder) leakTestRows(t *card.LeakTest) []recordRow {
	row := b.measurementRows(t.Measurement)[0]
	if t.Rows == nil {
		return []recordRow{row}
	}
	unit := nbsp + engraved(t.Gauge.Marked, t.Gauge.Scale)
	var out []recordRow
	for _, r := range []struct{ what, limits string }{
		{"gauge " + wordAtStart, wordSet + " " + t.Gauge.Scale.Number(t.Start, b.card.Shop.Mark()) + unit},
		{"shop " + wordAtStart, b.shopSpan(t)},
		{"gauge " + wordAtEnd, wordByTable},
		{"shop " + wordAtEnd, ""},
	} {
		row.what, row.limits = t.Of+", "+r.what, r.limits
		out = append(out, row)
	}
	return out
}
