package deck

import (
	"fmt"
	"math/big"
	"slices"
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
	wordMakePack   = "Make this pack"
	wordFromShims  = "Of these shims, in this order"
	wordMicrometer = "Micrometer over it"
	wordLetter     = "Letter"
	wordToMake     = "pack to make"
	wordWay        = "thinner or thicker"
	wordFramed     = "Framed row: as thick as the pack in place."
)

var effects = map[unit.Effect]string{unit.Opens: "opens", unit.Closes: "closes", unit.Raises: "raises", unit.Lowers: "lowers"}

var ways = map[int]string{-1: "thinner", 1: "thicker"}

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
func wordInput(what string, lowest bool, step int) string {
	if lowest {
		what = "lowest " + what
	}
	return fmt.Sprintf("%s, step\u00a0%d", what, step)
}
func wordFind(what string) string { return "1. Find the " + what }
func wordNumbered(n int, what string) string {
	return fmt.Sprintf("%d. %s", n, what)
}
func wordGrid(n int, down, across, gives string) string {
	return fmt.Sprintf("%d. Down: %s. Across: %s. Read the %s.", n, down, across, gives)
}
func wordMakeIt(n int) string { return fmt.Sprintf("%d. Make the pack.", n) }
func wordWorked(read, gives string) string {
	return "Example: " + read + ". " + gives
}
func wordGives(what, value string) string { return what + " " + value + "." }
func wordMake(pack, shims, over string) string {
	return "Make " + pack + " of " + shims + ". Micrometer " + over + "."
}
func wordCut(pack string) string        { return "Example: a pack of " + pack + "." }
func wordPackTable(name string) string  { return name + ": shims for each reading" }
func wordPackRow(name string) string    { return name + ", from the table" }
func wordPackAsMade(name string) string { return name + ", as made" }
func wordAsRow(span string) string      { return "as in its row, " + span }

// shim builds what a face says of a shim pack to be made: where it sits, the
// boxes, and its tables.
func (b *builder) shim(i *card.Shim) []render.Element {
	if !i.Made() {
		return nil
	}
	g := i.Micrometer
	panel := render.Reading{Title: strong(sits(i.Pack)), Gauge: toolRow(wordTake, &g.Item, ""), Plain: true}
	if e := effects[i.Pack.MoreShim]; e != "" && i.Pack.Reading != "" {
		panel.Lines = append(panel.Lines, plain(wordThicker(e, i.Pack.Reading)))
	}
	if i.Other != nil {
		panel.Lines = append(panel.Lines, plain(wordBothPacks(sits(i.Other))))
	}
	cut, ok := b.cut(i)
	if !ok {
		panel.Lines = append(panel.Lines, plain(wordPackOrder))
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
		panel.Boxes = append(panel.Boxes, from+", "+i.Unit.Symbol, made+", "+engraved(g.Marked, g.Scale))
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
	cut = render.Pack{Total: b.exactly(i, p.Total) + nbsp + i.Unit.Symbol, Lines: [][]render.Run{plain(wordPackOrder), plain(wordCut(b.exactly(i, p.Total) + nbsp + i.Unit.Symbol))}}
	if len(i.Pack.Between) == 2 {
		cut.Above, cut.Below = i.Pack.Between[0], i.Pack.Between[1]
	}
	layers := p.Layers()
	for _, t := range layers {
		share := new(big.Rat).Quo(t, p.Total)
		size := new(big.Int).Quo(new(big.Int).Mul(share.Num(), big.NewInt(1000)), share.Denom())
		cut.Layers = append(cut.Layers, render.Layer{Label: b.exactly(i, t), Size: int(size.Int64())})
	}
	return cut, len(layers) > 0 && len(layers) <= mostLayers && b.far[b.step] < farAll
}

func sits(p *unit.Pack) string {
	if p.Sits == "" {
		return p.Name
	}
	return wordPackSits(p.Name, p.Sits)
}

// packTables builds the tables in the order in which they are read.
func (b *builder) packTables(i *card.Shim) []captioned {
	in := i.Inputs
	switch {
	case i.Rows != nil && i.Other == nil:
		return []captioned{{"", b.stacks(i)}}
	case i.Rows != nil:
		return []captioned{{"", b.pairs(i)}, {wordMakeIt(3), b.packs(i)}}
	case i.Chain == nil:
		grid := b.grid(wordGrid(1, b.input(in[0]), b.input(in[1]), wordToMake), i, false, in[1])
		last := &grid[len(grid)-1].table
		last.Under = plain(wordWorked(b.readAt(i, 0, 1), wordGives(i.Pack.Name, b.exactly(i, i.Worked.Pack.Total))))
		return append(grid, captioned{wordMakeIt(2), b.packs(i)})
	}
	letters := b.letters(i)
	last := &letters[len(letters)-1].table
	last.Under = plain(wordWorked(b.readAt(i, 0, 1), wordGives(wordLetter, letter(i.Worked.Letter))))
	grid := b.grid(wordGrid(2, lower(wordLetter), b.input(in[2]), wordToMake), i, true, in[2])
	last = &grid[len(grid)-1].table
	last.Under = plain(wordWorked(lower(wordLetter)+" "+letter(i.Worked.Letter)+", "+b.readAt(i, 2), wordGives(i.Pack.Name, b.exactly(i, i.Worked.Pack.Total))))
	return append(append(letters, grid...), captioned{wordMakeIt(3), b.packs(i)})
}

// input names what is read, with its unit.
func (b *builder) input(in *card.ShimInput) string {
	switch {
	case in.Way:
		return wordWay
	case in.Measurement == nil:
		return lower(in.Mark)
	}
	return wordInput(lower(in.Of), len(in.Record) > 1, in.Step) + ", " + engraved(in.Gauge.Marked, in.Scale)
}

// readAt names the readings of the worked line.
func (b *builder) readAt(i *card.Shim, inputs ...int) string {
	var out []string
	for _, n := range inputs {
		in, what := i.Inputs[n], ""
		if what = lower(in.Mark); in.Measurement != nil {
			what = lower(in.Of)
		}
		out = append(out, strings.TrimSpace(what+" "+b.mark(in, i.Worked.At[n])))
	}
	return strings.Join(out, ", ")
}

// mark writes a mark of an input.
func (b *builder) mark(in *card.ShimInput, x *big.Rat) string {
	if in.Way {
		return ways[x.Sign()]
	}
	text := in.Scale.Number(x, b.card.Shop.Mark())
	if in.Measurement == nil && x.Sign() > 0 {
		text = "+" + text
	}
	return text
}

// spanOf writes some marks of an input.
func (b *builder) spanOf(in *card.ShimInput, low, high *big.Rat) string {
	return span(b.mark(in, low), b.mark(in, high))
}

// stacks builds the table from one reading to the stack.
func (b *builder) stacks(i *card.Shim) render.Table {
	in := i.Inputs[0]
	t := b.packHead(i, 2)
	t.Head = append([][]render.Run{plain(wordFind(b.input(in)))}, t.Head...)
	t.Fine = append([]bool{false}, t.Fine...)
	for _, row := range i.Rows {
		t.Rows = append(t.Rows, append([][]render.Run{plain(together(b.spanOf(in, row.Low, row.High)))}, b.packRow(i, &row.ShimPack)...))
		t.Marked = append(t.Marked, row.InPlace)
	}
	t.Under = plain(wordWorked(b.readAt(i, 0), b.made(i, i.Worked.Pack)))
	if slices.Contains(t.Marked, true) {
		t.Under = append(t.Under, render.Run{Text: " " + wordFramed})
	}
	return t
}

// pairs builds the table from one reading to two packs.
func (b *builder) pairs(i *card.Shim) render.Table {
	in, u := i.Inputs[0], ", "+i.Unit.Symbol
	t := render.Table{Large: true, Head: [][]render.Run{plain(wordFind(b.input(in))), plain(wordNumbered(2, i.Pack.Name) + u), plain(i.Other.Name + u)}}
	for _, row := range i.Rows {
		t.Rows = append(t.Rows, [][]render.Run{plain(together(b.spanOf(in, row.Low, row.High))), strong(b.exactly(i, row.Total)), strong(b.exactly(i, row.Other.Total))})
		t.Marked = append(t.Marked, row.InPlace)
	}
	t.Under = plain(wordWorked(b.readAt(i, 0), wordGives(i.Pack.Name, b.exactly(i, i.Worked.Pack.Total))+" "+wordGives(i.Other.Name, b.exactly(i, i.Worked.Other.Total))))
	if slices.Contains(t.Marked, true) {
		t.Under = append(t.Under, render.Run{Text: " " + wordFramed})
	}
	return t
}

// packHead is the head of a table of stacks; its actions are numbered from the
// given one, 0 for none.
func (b *builder) packHead(i *card.Shim, from int) render.Table {
	over := i.Micrometer
	t := render.Table{Large: true, Fine: []bool{false, true, true}}
	for n, what := range []string{wordMakePack + ", " + i.Unit.Symbol, wordFromShims + ", " + i.Unit.Symbol, wordMicrometer + ", " + engraved(over.Marked, over.Scale)} {
		if from > 0 {
			what = wordNumbered(from+n, what)
		}
		t.Head = append(t.Head, plain(what))
	}
	return t
}

func (b *builder) packRow(i *card.Shim, p *card.ShimPack) [][]render.Run {
	return [][]render.Run{strong(b.exactly(i, p.Total)), plain(b.layers(i, p)), plain(together(b.over(p)))}
}

// made writes the worked line of a pack.
func (b *builder) made(i *card.Shim, p *card.ShimPack) string {
	return wordMake(b.exactly(i, p.Total), b.layers(i, p), b.over(p))
}

// packs builds the table of every pack that the tables before it give.
func (b *builder) packs(i *card.Shim) render.Table {
	t := b.packHead(i, 0)
	for n := range i.Packs {
		t.Rows = append(t.Rows, b.packRow(i, &i.Packs[n]))
		t.Marked = append(t.Marked, i.InPlace != nil && i.Packs[n].Total.Cmp(i.InPlace) == 0 && i.Other == nil)
	}
	t.Under = plain(wordWorked(lower(i.Pack.Name)+" "+b.exactly(i, i.Worked.Pack.Total), b.made(i, i.Worked.Pack)))
	if slices.Contains(t.Marked, true) {
		t.Under = append(t.Under, render.Run{Text: " " + wordFramed})
	}
	return t
}

// Widths of a grid: so many columns stand side by side on the narrowest face
// that a bench card is read from.
const (
	gridColumns = 4
	markColumns = 8
	sizeColumns = 5
)

// grid builds the panels of a grid. Its rows are spans of the first input, or
// letters.
func (b *builder) grid(caption string, i *card.Shim, lettered bool, across *card.ShimInput) []captioned {
	most := gridColumns
	if across.Measurement == nil {
		most = sizeColumns // a pack is wider than its mark
	}
	return sideBySide(caption, len(i.Grid.Cols), most, func(cols []int) render.Table {
		t := render.Table{Large: true, Grid: true, Head: [][]render.Run{nil}}
		for _, c := range cols {
			t.Head = append(t.Head, plain(b.spanOf(across, i.Grid.Cols[c].Low, i.Grid.Cols[c].High)))
			t.Align = append(t.Align, render.Left)
		}
		for r, row := range i.Grid.Rows {
			first := ""
			if lettered {
				first = letter(r)
			} else {
				first = together(b.spanOf(i.Inputs[0], row.Low, row.High))
			}
			line := [][]render.Run{strong(first)}
			for _, c := range cols {
				line = append(line, plain(b.exactly(i, i.Grid.Cells[r][c].Total)))
			}
			t.Rows = append(t.Rows, line)
		}
		return t
	})
}

// letters builds the panels of the first grid of a chain.
func (b *builder) letters(i *card.Shim) []captioned {
	down, across := i.Inputs[0], i.Inputs[1]
	most := sizeColumns
	if across.Measurement == nil {
		most = markColumns
	}
	return sideBySide(wordGrid(1, b.input(down), b.input(across), lower(wordLetter)), len(across.Axis.Marks), most, func(cols []int) render.Table {
		t := render.Table{Large: true, Grid: true, Head: [][]render.Run{nil}}
		for _, c := range cols {
			t.Head = append(t.Head, plain(b.mark(across, across.Axis.Marks[c])))
		}
		for r, mark := range down.Axis.Marks {
			line := [][]render.Run{strong(b.mark(down, mark))}
			for _, c := range cols {
				line = append(line, plain(letter(i.Chain.Cells[r][c])))
			}
			t.Rows = append(t.Rows, line)
		}
		return t
	})
}

// letter names the rows of a chain by letters that nobody takes for a figure.
func letter(n int) string { return string("ABCDEFGHJKLMNPQRSTUVWXYZ"[n]) }

// sideBySide cuts a table's columns into panels that are as wide as one another.
func sideBySide(caption string, columns, most int, build func(cols []int) render.Table) []captioned {
	n := (columns + most - 1) / most
	wide := (columns + n - 1) / n
	var out []captioned
	for from := 0; from < columns; from += wide {
		var cols []int
		for c := from; c < min(from+wide, columns); c++ {
			cols = append(cols, c)
		}
		out = append(out, captioned{caption, build(cols)})
	}
	return out
}

// layers writes a stack's shims in the order in which they are laid.
func (b *builder) layers(i *card.Shim, p *card.ShimPack) string {
	var out []string
	for _, t := range p.Layers() {
		out = append(out, b.exactly(i, t))
	}
	sep := ", "
	if b.card.Shop.Mark() == quantity.Comma {
		sep = "; "
	}
	return strings.Join(out, sep)
}

// over writes what the micrometer may show over a finished pack.
func (b *builder) over(p *card.ShimPack) string {
	if p.Over == nil {
		return ""
	}
	return b.marks(*p.Over)
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
	u := s.Shims[0].Thickness.Unit
	low, high := s.Shims[0].Thickness, s.Shims[0].Thickness
	for _, shim := range s.Shims {
		t := shim.Thickness
		if quantity.Convert(t.Value, t.Unit, u).Cmp(quantity.Convert(low.Value, low.Unit, u)) < 0 {
			low = t
		}
		if quantity.Convert(t.Value, t.Unit, u).Cmp(quantity.Convert(high.Value, high.Unit, u)) > 0 {
			high = t
		}
	}
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
	return []render.ToolRow{{Verb: wordTake, Name: i.Stock.Name, Place: i.Stock.Place}}
}

// shimRows returns what it leaves on record.
func (b *builder) shimRows(i *card.Shim) []recordRow {
	if !i.Made() {
		return nil
	}
	rows := func(p *unit.Pack, packs []*card.ShimPack) []recordRow {
		low, high, g := packs[0], packs[0], i.Micrometer
		for _, k := range packs {
			if k.Total.Cmp(low.Total) < 0 {
				low = k
			}
			if k.Total.Cmp(high.Total) > 0 {
				high = k
			}
		}
		if low.Over == nil || high.Over == nil {
			return nil
		}
		kind := rowKind{left: true, initials: true}
		over := span(g.Scale.Number(low.Over.Low, b.card.Shop.Mark()), g.Scale.Number(high.Over.High, b.card.Shop.Mark()))
		return []recordRow{
			{item: i, what: wordPackRow(p.Name), limits: span(b.exactly(i, low.Total), b.exactly(i, high.Total)) + nbsp + i.Unit.Symbol, kind: kind},
			{item: i, what: wordPackAsMade(p.Name), limits: wordAsRow(over) + nbsp + engraved(g.Marked, g.Scale), kind: kind, gauged: true},
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
