package deck

import (
	"fmt"
	"math/big"
	"strings"
	"unicode/utf8"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/render"
)

// What a face says of a leak test.
const (
	wordPump          = "Pump up to"
	wordDraw          = "Draw down to"
	wordGaugeStart    = "gauge at the start"
	wordShopStart     = "shop at the start"
	wordGaugeEnd      = "gauge at the end"
	wordShopEnd       = "shop at the end"
	wordUnder         = "below"
	wordShallower     = "nearer to 0 than"
	wordDeeper        = "or deeper"
	wordStart         = "start"
	wordFinish        = "end"
	wordShop          = "shop"
	wordBeyond        = "Not in the column: test again."
	wordBetween       = "Between two: the colder start, the warmer end."
	wordBetweenVacuum = "Between two: the warmer start, the colder end."
	wordStartHeat     = "the temperature of the start"
)

func wordFillWith(gas string) string { return "Fill with " + gas + " to" }
func wordCap(limit string) string    { return "Never above " + limit + ". " }
func wordShopAt(span string) string  { return "Shop at " + span + "." }
func wordHoldFor(time string) string {
	return "Fill the first two boxes. Wait " + time + ". Fill the others."
}
func wordLeak(side string) string   { return "Gauge " + side + " its row: " }
func wordEndTable(of string) string { return of + ", at the end" }
func wordStarts(from, to string) string {
	return "1. Find the shop at the start, " + from + " to\u00a0" + together(to) + ", in the framed row. 2. In its column find the shop at the end. 3. At the right, read the gauge."
}
func wordStartsOf(step int, starts string) string {
	return fmt.Sprintf("Step\u00a0%d. %s", step, starts)
}
func wordLost(allowed, time, reference string) string {
	return allowed + " lost in " + time + " at " + reference
}
func wordLeakRate(rate, volume, time string) string {
	return rate + " from " + volume + ", held " + time
}
func wordLeakExample(start, end, reading string) string {
	return fmt.Sprintf("Example: %s at the start, %s at the end: %s.", start, end, reading)
}

// pressures names what a test pressure is relative to.
var pressures = map[bool]string{true: "absolute", false: "gauge"}

// leakTest builds the panel of a hold test, and the table of gauge readings
// allowed at the end.
func (b *builder) leakTest(t *card.LeakTest) []render.Element {
	p := t.Block
	pump := wordPump
	if p.Fluid != "" && p.Fluid != procedure.Air { // a pump fills with air anyway
		pump = wordFillWith(string(p.Fluid))
	}
	panel := render.Setting{Title: strong(t.Of), Label: pump, Source: plain(wordManual(b.leakManual(t)))}
	if p.Vacuum {
		panel.Label = wordDraw
	}
	for _, i := range instruments(t) { // the labels of the boxes tell which is which
		panel.Tools = append(panel.Tools, b.nameOnce(i)...)
	}
	if t.Rows == nil {
		return []render.Element{b.technical(t.At, panel)} // what is missing has been reported
	}
	mark, g := b.card.Shop.Mark(), t.Gauge
	panel.Value, panel.Unit = g.Scale.Number(t.Start, mark), engravedUnit(g.EngravedUnit, g.Scale)
	degree := t.Thermometer.Scale.Unit.Symbol
	first := plain(wordShopAt(b.shopSpan(t)))
	if u := b.card.Unit; u != nil && u.TestCap != nil && !p.Vacuum {
		limit := quantity.Band{Form: quantity.Max, High: u.TestCap.Gas.Value, Unit: u.TestCap.Gas.Unit}
		if m, ok := limit.Inward(g.Scale); ok {
			first = append(strong(wordCap(g.Scale.Number(m.High, mark)+nbsp+panel.Unit)), first...)
		}
	}
	panel.Lines = [][]render.Run{first, plain(wordHoldFor(b.value(p.HoldTime)))}
	panel.Boxes = []string{wordStart + ", " + panel.Unit, wordShop + ", " + degree, wordFinish + ", " + panel.Unit, wordShop + ", " + degree}
	return append([]render.Element{b.technical(t.At, panel)}, b.series(t.At, wordEndTable(t.Of), b.endReadings(t))...)
}

// leakManual returns what the manual states.
func (b *builder) leakManual(t *card.LeakTest) string {
	p := t.Block
	text := p.Start.Written + " " + pressures[p.Absolute] + ", "
	reference := wordStartHeat
	if p.Reference != nil {
		reference = b.value(*p.Reference)
	}
	if p.Allowed != nil {
		text += wordLost(b.value(*p.Allowed), b.value(p.HoldTime), reference)
	} else {
		text += wordLeakRate(b.value(*p.Rate), b.value(*p.Volume), b.value(p.HoldTime))
	}
	return wordSourced(text, p.Limits.Source)
}

// startColumns returns the number of start temperatures side by side in one
// table: as many large figures as fit the width of an A5 face beside readings
// of the given length, evenly divided among the tables.
func startColumns(starts int64, longest int) int64 {
	room := int64(9)
	if longest > 4 {
		room = 8
	}
	tables := (starts + room - 1) / room
	return (starts + tables - 1) / tables
}

// endReadings builds the tables of readings allowed at the end. The marked row
// has the start temperature, its column the end temperature, and the end of
// that row the reading, so that the two temperatures cannot be confused.
func (b *builder) endReadings(t *card.LeakTest) []captioned {
	longest := 0
	var readings []string
	for _, r := range t.Rows {
		if r.Mark == nil {
			return nil // reported
		}
		n := t.Gauge.Scale.Number(r.Mark, b.card.Shop.Mark())
		readings, longest = append(readings, n), max(longest, utf8.RuneCountInString(n))
	}
	s, unit := t.Thermometer.Scale, engravedUnit(t.Gauge.EngravedUnit, t.Gauge.Scale)
	head, wrong, shows := wordAtLeast, wordUnder, func(n string) string { return wordAtLeast + " " + n + nbsp + unit }
	if t.Rows[0].AtMost {
		head, wrong, shows = wordDeeper, wordShallower, func(n string) string { return n + nbsp + unit + " " + wordDeeper }
	}
	step, between := int64(1), wordBetween
	if t.MaxDegrees > 5 {
		step = 2 // a degree Fahrenheit is about half a degree Celsius
	}
	// A colder start and a warmer end raise the pressure, which makes the test
	// stricter; for a vacuum it is the other way around. The columns extend
	// beyond the span to the strict side.
	first, last := floorTo(t.Shop.Low, step), floorTo(t.Shop.High, step)
	if t.Block.Vacuum {
		first, last, between = -floorTo(new(big.Rat).Neg(t.Shop.Low), step), -floorTo(new(big.Rat).Neg(t.Shop.High), step), wordBetweenVacuum
	}
	columns := startColumns((last-first)/step+1, longest)
	var out []captioned
	for from := first; from <= last; from += columns * step {
		to := min(from+(columns-1)*step, last)
		table := starts(s.Unit.Symbol, together(head+", "+unit), from, to, step, t.MaxDegrees, readings)
		start, degree := from+(to-from)/2/step*step, nbsp+s.Unit.Symbol
		table.Under = plain(wordLeakExample(wholeDegrees(start)+degree, wholeDegrees(start-2)+degree, shows(readings[t.MaxDegrees-2])))
		add := func(text string) { table.Under = append(table.Under, render.Run{Text: " " + text}) }
		if s.Step.Cmp(big.NewRat(step, 1)) < 0 {
			add(between)
		}
		add(wordBeyond)
		if runs := b.branch(t.IfLow, t.LowStep); len(runs) > 0 {
			table.Under = append(append(table.Under, render.Run{Text: " " + wordLeak(wrong), Weight: render.Semibold}), runs...)
		}
		caption := wordStarts(wholeDegrees(from), wholeDegrees(to)+degree)
		if from > first { // it may be on a face of its own
			caption = wordStartsOf(b.step, caption)
		}
		out = append(out, captioned{caption, table})
	}
	return out
}

// starts builds the table for the start temperatures from one to another. The
// reading without a change is in the middle, with most rows to each side.
func starts(degree, head string, from, to, step, most int64, readings []string) render.Table {
	t := render.Table{Large: true, Ruled: true, Head: [][]render.Run{plain(degree), nil}, Align: []render.Align{render.Left}, Fine: []bool{true}}
	for c := from; c <= to; c += step {
		t.Align = append(t.Align, render.Right)
		if c > from {
			t.Head = append(t.Head, nil)
		}
	}
	t.Head = append(t.Head, plain(head))
	reach := most / step * step
	for d := -reach; d <= reach; d += step {
		row := [][]render.Run{strong(wordFinish)}
		if d == 0 {
			row[0] = strong(wordStart)
		}
		for c := from; c <= to; c += step {
			row = append(row, weightedText(wholeDegrees(c+d), d == 0))
		}
		t.Rows = append(t.Rows, append(row, weightedText(readings[most+d], true)))
		t.Marked = append(t.Marked, d == 0)
	}
	return t
}

func weightedText(text string, bold bool) []render.Run {
	if bold {
		return []render.Run{{Text: text, Weight: render.Bold}}
	}
	return plain(text)
}

// floorTo returns the greatest multiple of step that is ≤ x.
func floorTo(x *big.Rat, step int64) int64 {
	n := new(big.Int).Div(x.Num(), new(big.Int).Mul(x.Denom(), big.NewInt(step)))
	return n.Int64() * step
}

// wholeDegrees prints a whole number of degrees.
func wholeDegrees(n int64) string {
	return strings.Replace(fmt.Sprint(n), "-", "−", 1)
}

// shopSpan prints the range of the shop's temperature at the start, as written
// if the thermometer has those marks.
func (b *builder) shopSpan(t *card.LeakTest) string {
	text, shop, unit := b.marks(*t.Shop), t.Block.ShopTemperature, t.Thermometer.Scale.Unit
	if in := shop.In(unit); shop.Unit == unit && in.Low.Cmp(t.Shop.Low) == 0 && in.High.Cmp(t.Shop.High) == 0 {
		text = b.band(shop)
	}
	return together(text) + nbsp + unit.Symbol
}

// leakTestRows returns its rows of the record: both readings of the gauge and
// of the thermometer.
func (b *builder) leakTestRows(t *card.LeakTest) []recordRow {
	row := b.measurementRows(t.Measurement)[0]
	if t.Rows == nil {
		return []recordRow{row}
	}
	unit := nbsp + engravedUnit(t.Gauge.EngravedUnit, t.Gauge.Scale)
	var out []recordRow
	for _, r := range []struct{ what, limits string }{
		{wordGaugeStart, wordSet + " " + t.Gauge.Scale.Number(t.Start, b.card.Shop.Mark()) + unit},
		{wordShopStart, b.shopSpan(t)},
		{wordGaugeEnd, wordByTable},
		{wordShopEnd, ""},
	} {
		row.what, row.limits = t.Of+", "+r.what, r.limits
		out = append(out, row)
	}
	return out
}
