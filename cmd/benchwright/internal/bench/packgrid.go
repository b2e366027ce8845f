package bench

import (
	"math/big"
	"slices"
)

// An Axis is one thing that a pack depends on: the marks that it may read,
// which rise by one step of their scale, and by how much the wanted pack grows
// for each unit of it, below zero where it shrinks.
type Axis struct {
	Marks []*big.Rat
	Rate  *big.Rat
}

// share returns what a mark adds to the wanted pack.
func (a Axis) share(mark *big.Rat) *big.Rat { return new(big.Rat).Mul(a.Rate, mark) }

// A Span is some marks that follow each other, both ends included.
type Span struct{ Low, High *big.Rat }

// spans cuts the marks into spans of n, the last one shorter where they do not
// come out even.
func (a Axis) spans(n int) []Span {
	var out []Span
	for from := 0; from < len(a.Marks); from += n {
		out = append(out, Span{a.Marks[from], a.Marks[min(from+n, len(a.Marks))-1]})
	}
	return out
}

// ends returns the least and the most that a span adds to the wanted pack.
func (a Axis) ends(s Span) (low, high *big.Rat) { return ordered(a.share(s.Low), a.share(s.High)) }

// A Grid is a table with two ways in: a pack for each pair of spans.
type Grid struct {
	Rows, Cols []Span
	Cells      [][]Pack // by row, then by column
}

// Packs returns the packs of the cells, each once, the thinnest first.
func (g *Grid) Packs() []Pack {
	var out []Pack
	for _, row := range g.Cells {
		out = append(out, row...)
	}
	return distinct(out)
}

// distinct returns each pack once, the thinnest first.
func distinct(packs []Pack) []Pack {
	slices.SortStableFunc(packs, func(a, b Pack) int { return a.Total.Cmp(b.Total) })
	return slices.CompactFunc(packs, func(a, b Pack) bool { return a.Total.Cmp(b.Total) == 0 })
}

// A GridMiss is the first pair of marks for which no pack can be made, and how
// many cells there are like it.
type GridMiss struct {
	Fault    PackFault
	Row, Col *big.Rat
	Want     *big.Rat
	Count    int
}

// PackGrid returns the grid of the pack to make for base + what the marks of
// both axes add. Each span holds as few marks as will fit mostRows and
// mostCols; where the rule leaves no room for that many to a span, as few more
// rows and columns as it asks for. Each pair of marks lies in one cell, and its
// pack serves for all of them. Where a cell has no pack the grid is nil and
// miss says which.
func PackGrid(rows, cols Axis, base *big.Rat, r PackRule, mostRows, mostCols int) (grid *Grid, miss *GridMiss) {
	if len(rows.Marks) == 0 || len(cols.Marks) == 0 {
		return nil, &GridMiss{Fault: PackNothing}
	}
	atLeast := func(marks, most int) int { return (marks + most - 1) / most }
	n, m := atLeast(len(rows.Marks), mostRows), atLeast(len(cols.Marks), mostCols)
	for {
		grid, miss = packGrid(rows.spans(n), cols.spans(m), rows, cols, base, r, n == 1 && m == 1)
		if miss == nil || n == 1 && m == 1 {
			return grid, miss
		}
		// The axis whose span spreads the pack more is cut finer.
		if m == 1 || n > 1 && reach(rows, n).Cmp(reach(cols, m)) >= 0 {
			n--
		} else {
			m--
		}
	}
}

// reach returns how far the wanted pack moves over the first n marks.
func reach(a Axis, n int) *big.Rat {
	low, high := a.ends(Span{a.Marks[0], a.Marks[min(n, len(a.Marks))-1]})
	return new(big.Rat).Sub(high, low)
}

// packGrid makes the grid of some spans. Where a cell has no pack it looks at
// the cells behind it only to count.
func packGrid(down, across []Span, rows, cols Axis, base *big.Rat, r PackRule, count bool) (grid *Grid, miss *GridMiss) {
	type served struct {
		pack  Pack
		fault PackFault
	}
	grid = &Grid{Rows: down, Cols: across}
	known := map[string]served{} // cells along a slant want the same
	for _, d := range down {
		low, high := rows.ends(d)
		var line []Pack
		for _, a := range across {
			l, h := cols.ends(a)
			l.Add(l, low).Add(l, base)
			h.Add(h, high).Add(h, base)
			key := l.String() + " " + h.String()
			s, ok := known[key]
			if !ok {
				s.pack, s.fault = r.Serve(l, h)
				known[key] = s
			}
			if s.fault != PackGood {
				if miss == nil {
					miss = &GridMiss{Fault: s.fault, Row: d.Low, Col: a.Low, Want: new(big.Rat).Add(base, new(big.Rat).Add(rows.share(d.Low), cols.share(a.Low)))}
				}
				if miss.Count++; !count {
					return nil, miss
				}
			}
			line = append(line, s.pack)
		}
		grid.Cells = append(grid.Cells, line)
	}
	if miss != nil {
		return nil, miss
	}
	return grid, nil
}

// At returns the pack for a pair of marks, nil where the grid has no such.
func (g *Grid) At(row, col *big.Rat) *Pack {
	at := func(spans []Span, mark *big.Rat) int {
		return slices.IndexFunc(spans, func(s Span) bool { return s.Low.Cmp(mark) <= 0 && mark.Cmp(s.High) <= 0 })
	}
	i, j := at(g.Rows, row), at(g.Cols, col)
	if i < 0 || j < 0 {
		return nil
	}
	return &g.Cells[i][j]
}

// Sums joins two axes to one, whose marks are what both add to the wanted pack
// and whose Rate is 1: the middle of a chain of grids. The marks rise, each once.
func Sums(a, b Axis) Axis {
	var out Axis
	for _, x := range a.Marks {
		for _, y := range b.Marks {
			out.Marks = append(out.Marks, new(big.Rat).Add(a.share(x), b.share(y)))
		}
	}
	slices.SortFunc(out.Marks, (*big.Rat).Cmp)
	out.Marks = slices.CompactFunc(out.Marks, func(x, y *big.Rat) bool { return x.Cmp(y) == 0 })
	out.Rate = big.NewRat(1, 1)
	return out
}

// SpanAt returns which span holds what two marks add together, −1 for none.
func SpanAt(spans []Span, a, b Axis, x, y *big.Rat) int {
	s := new(big.Rat).Add(a.share(x), b.share(y))
	return slices.IndexFunc(spans, func(sp Span) bool { return sp.Low.Cmp(s) <= 0 && s.Cmp(sp.High) <= 0 })
}
