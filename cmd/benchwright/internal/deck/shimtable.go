package deck

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/render"
)

// The words above and below the tables of a pack.
const (
	wordPack       = "Pack"
	wordShims      = "Shims in order"
	wordMicrometer = "Micrometer"
	wordLetter     = "Letter"
	wordToMake     = "pack"
	wordWay        = "thinner or thicker"
)

// ways names the directions of change from the old pack, by sign.
var ways = map[int]string{-1: "thinner", 1: "thicker"}

func wordInput(what string, lowest bool, step int) string {
	if lowest {
		what = "lowest " + what
	}
	return fmt.Sprintf("%s, step\u00a0%d", what, step)
}
func wordFind(lowest bool, step int) string {
	which := "Reading"
	if lowest {
		which = "Lowest"
	}
	return fmt.Sprintf("1. %s of step\u00a0%d", which, step)
}
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
func wordUseOne(shim, over string) string {
	return "Use one " + shim + " shim. Micrometer " + over + "."
}

// packTables builds the tables, in the order in which they are read.
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
		last.Under = plain(wordWorked(b.readAt(i, 0, 1), wordGives(i.Pack.Name, b.thickness(i, i.Worked.Pack.Total))))
		return append(grid, captioned{wordMakeIt(2), b.packs(i)})
	}
	letters := b.letters(i)
	last := &letters[len(letters)-1].table
	last.Under = plain(wordWorked(b.readAt(i, 0, 1), wordGives(wordLetter, letter(i.Worked.Letter))))
	grid := b.grid(wordGrid(2, lower(wordLetter), b.input(in[2]), wordToMake), i, true, in[2])
	last = &grid[len(grid)-1].table
	last.Under = plain(wordWorked(lower(wordLetter)+" "+letter(i.Worked.Letter)+", "+b.readAt(i, 2), wordGives(i.Pack.Name, b.thickness(i, i.Worked.Pack.Total))))
	return append(append(letters, grid...), captioned{wordMakeIt(3), b.packs(i)})
}

// input names an input, with its unit.
func (b *builder) input(in *card.ShimInput) string {
	switch {
	case in.IsDirection:
		return wordWay
	case in.Measurement == nil:
		return lower(in.Mark)
	}
	return wordInput(lower(in.Of), len(in.Record) > 1, in.Step) + ", " + engravedUnit(in.Gauge.EngravedUnit, in.Scale)
}

// find returns the short name of an input for a column head; the line below
// the table has its full name.
func (b *builder) find(in *card.ShimInput) string {
	if in.Measurement == nil {
		return wordNumbered(1, capital(b.input(in)))
	}
	return wordFind(len(in.Record) > 1, in.Step) + ", " + engravedUnit(in.Gauge.EngravedUnit, in.Scale)
}

// readAt names the readings of the worked example.
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

// mark prints a mark of an input.
func (b *builder) mark(in *card.ShimInput, x *big.Rat) string {
	if in.IsDirection {
		return ways[x.Sign()]
	}
	text := in.Scale.Number(x, b.card.Shop.Mark())
	if in.Measurement == nil && x.Sign() > 0 {
		text = "+" + text
	}
	return text
}

// spanOf prints a range of marks of an input.
func (b *builder) spanOf(in *card.ShimInput, low, high *big.Rat) string {
	return span(b.mark(in, low), b.mark(in, high))
}

// stacks builds the table from one reading to a stack.
func (b *builder) stacks(i *card.Shim) render.Table {
	in := i.Inputs[0]
	t := b.packHead(i, 2)
	t.Head = append([][]render.Run{plain(b.find(in))}, t.Head...)
	t.Fine = append([]bool{false}, t.Fine...)
	for _, row := range i.Rows {
		t.Rows = append(t.Rows, append([][]render.Run{plain(together(b.spanOf(in, row.Low, row.High)))}, b.packRow(i, &row.ShimPack)...))
	}
	t.Under = plain(wordWorked(b.readAt(i, 0), b.makeLine(i, i.Worked.Pack)))
	return t
}

// pairs builds the table from one reading to two packs.
func (b *builder) pairs(i *card.Shim) render.Table {
	in, u := i.Inputs[0], ", "+i.Unit.Symbol
	t := render.Table{Large: true, Head: [][]render.Run{plain(b.find(in)), plain(wordNumbered(2, i.Pack.Name) + u), plain(i.Other.Name + u)}}
	for _, row := range i.Rows {
		t.Rows = append(t.Rows, [][]render.Run{plain(together(b.spanOf(in, row.Low, row.High))), strong(b.thickness(i, row.Total)), strong(b.thickness(i, row.Other.Total))})
	}
	t.Under = plain(wordWorked(b.readAt(i, 0), wordGives(i.Pack.Name, b.thickness(i, i.Worked.Pack.Total))+" "+wordGives(i.Other.Name, b.thickness(i, i.Worked.Other.Total))))
	return t
}

// packHead returns the head of a table of stacks. Its actions are numbered
// from from, 0 for no numbers.
func (b *builder) packHead(i *card.Shim, from int) render.Table {
	over := i.Micrometer
	t := render.Table{Large: true, Fine: []bool{false, true, true}}
	for n, what := range []string{wordPack + ", " + i.Unit.Symbol, wordShims + ", " + i.Unit.Symbol, wordMicrometer + ", " + engravedUnit(over.EngravedUnit, over.Scale)} {
		if from > 0 {
			what = wordNumbered(from+n, what)
		}
		t.Head = append(t.Head, plain(what))
	}
	return t
}

func (b *builder) packRow(i *card.Shim, p *card.ShimPack) [][]render.Run {
	return [][]render.Run{strong(b.thickness(i, p.Total)), plain(b.layers(i, p)), plain(together(b.overPack(p)))}
}

// makeLine returns how to make a pack.
func (b *builder) makeLine(i *card.Shim, p *card.ShimPack) string {
	total, over := b.thickness(i, p.Total)+nbsp+i.Unit.Symbol, b.overPack(p)+nbsp+engravedUnit(i.Micrometer.EngravedUnit, i.Micrometer.Scale)
	if len(p.Layers()) == 1 {
		return wordUseOne(total, over)
	}
	return wordMake(total, b.layers(i, p), over)
}

// packs builds the table of every pack that the previous tables lead to.
func (b *builder) packs(i *card.Shim) render.Table {
	t := b.packHead(i, 0)
	for n := range i.Packs {
		t.Rows = append(t.Rows, b.packRow(i, &i.Packs[n]))
	}
	t.Under = plain(wordWorked(lower(i.Pack.Name)+" "+b.thickness(i, i.Worked.Pack.Total), b.makeLine(i, i.Worked.Pack)))
	return t
}

// The numbers of columns of a grid that fit on the narrowest face.
const (
	gridColumns = 4
	markColumns = 8
	sizeColumns = 5
)

// grid builds the panels of a grid. Its rows are ranges of the first input, or
// letters.
func (b *builder) grid(caption string, i *card.Shim, lettered bool, across *card.ShimInput) []captioned {
	most := gridColumns
	if across.Measurement == nil {
		most = sizeColumns // a pack is wider than its mark
	}
	g := i.Grid
	differ := func(a, b bench.Pack) bool { return a.Total.Cmp(b.Total) != 0 }
	all := mergeEqual(len(g.Cols), func(c, next int) bool {
		return !slices.ContainsFunc(g.Cells, func(row []bench.Pack) bool { return differ(row[c], row[next]) })
	})
	return sideBySide(caption, len(all), most, func(cols []int) render.Table {
		t := render.Table{Large: true, Grid: true, Head: [][]render.Run{nil}}
		for _, c := range cols {
			t.Head = append(t.Head, plain(b.spanOf(across, g.Cols[all[c].first].Low, g.Cols[all[c].last].High)))
			t.Align = append(t.Align, render.Left)
		}
		for _, rows := range mergeEqual(len(g.Rows), func(r, next int) bool {
			return !lettered && !slices.ContainsFunc(cols, func(c int) bool { return differ(g.Cells[r][all[c].first], g.Cells[next][all[c].first]) })
		}) {
			var first string
			if lettered {
				first = letter(rows.first)
			} else {
				first = together(b.spanOf(i.Inputs[0], g.Rows[rows.first].Low, g.Rows[rows.last].High))
			}
			line := [][]render.Run{strong(first)}
			for _, c := range cols {
				line = append(line, plain(b.thickness(i, g.Cells[rows.first][all[c].first].Total)))
			}
			t.Rows = append(t.Rows, line)
		}
		return t
	})
}

// A stretch is some neighbors, from the first to the last.
type stretch struct{ first, last int }

// mergeEqual divides n neighbors into stretches of equal ones, so that rows
// and columns with the same results are printed as one.
func mergeEqual(n int, same func(a, b int) bool) []stretch {
	var out []stretch
	for x := range n {
		if x > 0 && same(x-1, x) {
			out[len(out)-1].last = x
		} else {
			out = append(out, stretch{x, x})
		}
	}
	return out
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

// letter returns a letter that cannot be taken for a digit.
func letter(n int) string { return string("ABCDEFGHJKLMNPQRSTUVWXYZ"[n]) }

// sideBySide divides a table's columns into panels of equal width under one
// caption.
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
		caption = ""
	}
	return out
}

// layers prints the shims of a stack in the order in which they are laid.
func (b *builder) layers(i *card.Shim, p *card.ShimPack) string {
	var out []string
	for _, t := range p.Layers() {
		out = append(out, b.thickness(i, t))
	}
	sep := ", "
	if b.card.Shop.Mark() == quantity.Comma {
		sep = "; "
	}
	return strings.Join(out, sep)
}

// overPack prints the micrometer readings allowed for a finished pack.
func (b *builder) overPack(p *card.ShimPack) string {
	if p.Over == nil {
		return ""
	}
	return b.marks(*p.Over)
}
