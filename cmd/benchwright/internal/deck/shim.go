package deck

import (
	"fmt"
	"math/big"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/render"
)

// The words of a shim pack. Every word of direction is made here, from the
// unit's data.
const (
	wordPackFrom   = "Pack from the table"
	wordPackMade   = "Pack as made"
	wordPackOrder  = "Lay the shims in the order of the row, thin between thick."
	wordMakePack   = "2. Make this pack"
	wordFromShims  = "3. Of these shims, in this order"
	wordMicrometer = "4. Micrometer over it"
)

var effects = map[unit.Effect]string{unit.Opens: "opens", unit.Closes: "closes", unit.Raises: "raises", unit.Lowers: "lowers"}

func wordPackSits(name, sits string) string { return name + ", " + sits }
func wordThicker(effect, reading string) string {
	return "A thicker pack " + effect + " the " + reading + "."
}
func wordFindReading(lowest bool, step int) string {
	if lowest {
		return fmt.Sprintf("1. Find the lowest reading of step\u00a0%d", step)
	}
	return fmt.Sprintf("1. Find the reading of step\u00a0%d", step)
}
func wordWorked(reading, pack, shims, over string) string {
	return "Example: reading " + reading + ". Make " + pack + " of " + shims + ". Micrometer " + over + "."
}
func wordPackTable(name string) string  { return name + ": shims for each reading" }
func wordPackRow(name string) string    { return name + ", from the table" }
func wordPackAsMade(name string) string { return name + ", as made" }
func wordAsRow(span string) string      { return "as in its row, " + span }

const wordFramed = "Framed row: as thick as the set-up pack."

// shim builds what a face says of a shim pack to be made: where it sits, the
// boxes, and the table of stacks.
func (b *builder) shim(i *card.Shim) []render.Element {
	if len(i.Rows) == 0 {
		return nil
	}
	title := i.Pack.Name
	if i.Pack.Sits != "" {
		title = wordPackSits(title, i.Pack.Sits)
	}
	g := i.Micrometer
	panel := render.Reading{Title: strong(title), Gauge: toolRow(wordTake, &g.Item, ""), Plain: true,
		Lines: [][]render.Run{plain(wordThicker(effects[i.Pack.MoreShim], i.Pack.Reading)), plain(wordPackOrder)},
		Boxes: []string{wordPackFrom + ", " + i.Unit.Symbol, wordPackMade + ", " + engraved(g.Marked, g.Scale)}}
	return []render.Element{b.technical(i.At, panel), b.table(i.At, wordPackTable(i.Pack.Name), b.stacks(i))}
}

// stacks builds the table from reading to stack.
func (b *builder) stacks(i *card.Shim) render.Table {
	read, over := i.Read.Gauge, i.Micrometer
	t := render.Table{Large: true, Fine: []bool{false, false, true, true}, Head: [][]render.Run{
		plain(wordFindReading(i.Read.Use == "lowest", i.Read.Step) + ", " + engraved(read.Marked, read.Scale)),
		plain(wordMakePack + ", " + i.Unit.Symbol), plain(wordFromShims + ", " + i.Unit.Symbol), plain(wordMicrometer + ", " + engraved(over.Marked, over.Scale))}}
	for _, row := range i.Rows {
		ends := quantity.Marks{Scale: read.Scale, Low: row.Low, High: row.High}
		t.Rows = append(t.Rows, [][]render.Run{
			plain(together(b.marks(ends))), strong(b.exactly(row.Total)), plain(b.layers(row)), plain(together(b.over(row)))})
		t.Marked = append(t.Marked, row.InPlace)
	}
	shown := i.Rows[i.Shown]
	t.Under = plain(wordWorked(read.Scale.Number(i.ShownAt, b.card.Shop.Mark()), b.exactly(shown.Total), b.layers(shown), b.over(shown)))
	for _, marked := range t.Marked {
		if marked {
			t.Under = append(t.Under, render.Run{Text: " " + wordFramed})
			break
		}
	}
	return t
}

// layers writes a stack's shims in the order in which they are laid.
func (b *builder) layers(row card.ShimRow) string {
	var out []string
	for _, t := range row.Layers() {
		out = append(out, b.exactly(t))
	}
	sep := ", "
	if b.card.Shop.Mark() == quantity.Comma {
		sep = "; "
	}
	return strings.Join(out, sep)
}

// over writes what the micrometer may show over a finished pack.
func (b *builder) over(row card.ShimRow) string {
	if row.Over == nil {
		return ""
	}
	return b.marks(*row.Over)
}

// exactly writes a thickness with two decimals at least, or as many as it has.
func (b *builder) exactly(t *big.Rat) string {
	if hundredth := big.NewRat(1, 100); new(big.Rat).Quo(t, hundredth).IsInt() {
		return quantity.Format(t, hundredth, b.card.Shop.Mark())
	}
	return quantity.Decimal(t, b.card.Shop.Mark())
}

// stockSpan writes the thinnest and the thickest shim of a stock.
func (b *builder) stockSpan(s *shop.Stock) string {
	u := s.Shims[0].Thickness.Unit
	var low, high *big.Rat
	for _, shim := range s.Shims {
		t := quantity.Convert(shim.Thickness.Value, shim.Thickness.Unit, u)
		if low == nil || t.Cmp(low) < 0 {
			low = t
		}
		if high == nil || t.Cmp(high) > 0 {
			high = t
		}
	}
	return span(b.exactly(low), b.exactly(high)) + nbsp + u.Symbol
}

// shimTools returns what is taken in the hand for it.
func (b *builder) shimTools(i *card.Shim) []render.ToolRow {
	if i.Stock == nil {
		return nil
	}
	return []render.ToolRow{{Verb: wordTake, Name: i.Stock.Name, Place: i.Stock.Place}}
}

// shimRows returns what it leaves on record.
func (b *builder) shimRows(i *card.Shim) []recordRow {
	if len(i.Rows) == 0 {
		return nil
	}
	low, high := i.Rows[0], i.Rows[len(i.Rows)-1]
	if low.Total.Cmp(high.Total) > 0 {
		low, high = high, low
	}
	kind := rowKind{left: true, initials: true}
	g := i.Micrometer
	return []recordRow{
		{item: i, what: wordPackRow(i.Pack.Name), limits: span(b.exactly(low.Total), b.exactly(high.Total)) + nbsp + i.Unit.Symbol, kind: kind},
		{item: i, what: wordPackAsMade(i.Pack.Name), limits: wordAsRow(b.marks(quantity.Marks{Scale: g.Scale, Low: low.Over.Low, High: high.Over.High})) + nbsp + engraved(g.Marked, g.Scale), kind: kind},
	}
}
