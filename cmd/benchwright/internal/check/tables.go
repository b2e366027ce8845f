package check

import (
	"math/big"
	"regexp"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// tableHoles warns of a table of ranges copied from a manual that has no row
// for a reading, or two. A public truck manual has the rows 0.180 to 0.190 in
// and 0.192 to 0.201 in beside 4.574 to 4.843 mm and 4.844 to 5.113 mm: in
// inches, no row holds 0.191. It checks the first column, and the second if
// that repeats the first in another unit.
func tableHoles(p *pass) {
	each(p, func(_ *card.Step, i *card.Prose) {
		t, ok := i.Content.(*syntax.Table)
		if !ok {
			return
		}
		first := p.spans(t, 0, i.Source)
		if first == nil || p.reportHole(first) {
			return
		}
		if second := p.spans(t, 1, i.Source); second.isConversionOf(first) {
			p.reportHole(second)
		}
	})
}

// A spans is a table column of ranges.
type spans struct {
	rows  []bench.Row
	at    []source.Place // of the cells
	scale quantity.Scale // with the step of the decimals written; without a unit if none is written
}

// rangeForm matches a range with or without a unit: "0.180 to 0.190 in",
// "4.574–4.843", "over 18 to 30 mm".
var rangeForm = regexp.MustCompile(`^((?i:over|above) )?([−-]?[0-9]+(?:[.,][0-9]+)?)(?: ?[–-]| ?\.\.| (?i:to)) ?([−-]?[0-9]+(?:[.,][0-9]+)?)(?: ?([^0-9]*))?$`)

// spans converts a column, nil unless its ranges rise or fall from row to row.
// A first or last row may be open, such as "below 0.18", and is skipped.
func (p *pass) spans(t *syntax.Table, column int, from *procedure.Prose) *spans {
	if column >= len(t.Head) {
		return nil
	}
	c := &spans{scale: quantity.Scale{Unit: headUnit(textOf(t.Head[column].Runs, nil).text)}}
	var above []int // rows that do not include their low end
	for i, cells := range t.Rows {
		if column >= len(cells) {
			return nil
		}
		m := rangeForm.FindStringSubmatch(strings.Join(strings.Fields(textOf(cells[column].Runs, nil).text), " "))
		if m == nil && (i == 0 || i == len(t.Rows)-1) {
			continue
		}
		if m == nil || m[4] != "" && !c.noteUnit(m[4]) {
			return nil
		}
		low, bad := quantity.ParseNumber(m[2], p.Shop.Mark())
		high, worse := quantity.ParseNumber(m[3], p.Shop.Mark())
		if bad != nil || worse != nil || high.Value.Cmp(low.Value) < 0 {
			return nil
		}
		for _, n := range []quantity.Number{low, high} {
			switch step := n.DigitStep(); {
			case n.Text == "0" || c.scale.Step != nil && c.scale.Step.Cmp(step) == 0:
			case c.scale.Step != nil:
				return nil // the interval of its marks is not apparent
			default:
				c.scale.Step = step
			}
		}
		if m[1] != "" {
			above = append(above, len(c.rows))
		}
		c.rows = append(c.rows, bench.Row{Low: low.Value, High: high.Value})
		c.at = append(c.at, from.At.File.At(cells[column].Span.Start, cells[column].Span.End))
	}
	if len(c.rows) < 2 || c.scale.Step == nil {
		return nil
	}
	for _, i := range above {
		c.rows[i].Low = new(big.Rat).Add(c.rows[i].Low, c.scale.Step)
	}
	if c.rows[1].Low.Cmp(c.rows[0].Low) < 0 {
		slices.Reverse(c.rows)
		slices.Reverse(c.at)
	}
	for i := 1; i < len(c.rows); i++ {
		if c.rows[i].Low.Cmp(c.rows[i-1].Low) <= 0 || c.rows[i].High.Cmp(c.rows[i-1].High) <= 0 {
			return nil // limits of several things, not a column to look a reading up in
		}
	}
	return c
}

// noteUnit records the unit in a cell. It returns false if it is unknown or
// differs from that of the column.
func (c *spans) noteUnit(name string) bool {
	u, ok := quantity.UnitOf(name)
	if !ok || c.scale.Unit.Symbol != "" && c.scale.Unit != u {
		return false
	}
	c.scale.Unit = u
	return true
}

// headUnit returns the unit in the head of a column: "Gap, mm", "Gap (mm)",
// "mm".
func headUnit(head string) quantity.Unit {
	name := head[strings.LastIndexAny(head, ",(")+1:]
	u, _ := quantity.UnitOf(strings.TrimSuffix(strings.TrimSpace(name), ")"))
	return u
}

// isConversionOf reports whether c repeats the column first in another unit,
// within 2.5 % at each end, as manuals round.
func (c *spans) isConversionOf(first *spans) bool {
	if c == nil || len(c.rows) != len(first.rows) || c.scale.Unit == first.scale.Unit {
		return false
	}
	near := func(a, b *big.Rat) bool {
		exact := quantity.Convert(a, first.scale.Unit, c.scale.Unit)
		if exact == nil {
			return false
		}
		most := new(big.Rat).Mul(exact, big.NewRat(1, 40))
		off := new(big.Rat).Sub(b, exact)
		return off.Abs(off).Cmp(most.Abs(most)) <= 0
	}
	for i, r := range c.rows {
		if !near(first.rows[i].Low, r.Low) || !near(first.rows[i].High, r.High) {
			return false
		}
	}
	return true
}

// fault returns the first row that leaves a gap to the row before it or
// overlaps it, and the marks in no row or in both. It counts as a fault only
// if other rows meet, or if the gap is narrow compared with both rows: limits
// of several things have wide gaps.
func (c *spans) fault() (row int, fault bench.RowFault, low, high *big.Rat) {
	step := c.scale.Step
	count := func(low, high *big.Rat) *big.Rat { // number of marks
		n := new(big.Rat).Sub(high, low)
		return n.Quo(n, step).Add(n, big.NewRat(1, 1))
	}
	meet := false
	for i := 1; i < len(c.rows); i++ {
		last, next := c.rows[i-1].High, c.rows[i].Low
		meet = meet || next.Cmp(last) == 0 || next.Cmp(new(big.Rat).Add(last, step)) == 0
	}
	for i := 1; i < len(c.rows); i++ {
		a, b := c.rows[i-1], c.rows[i]
		switch fault, _ := bench.CheckRows([]bench.Row{a, b}, step); fault {
		case bench.RowHole:
			low, high := new(big.Rat).Add(a.High, step), new(big.Rat).Sub(b.Low, step)
			four := new(big.Rat).Mul(count(low, high), big.NewRat(4, 1))
			if meet || four.Cmp(count(a.Low, a.High)) <= 0 && four.Cmp(count(b.Low, b.High)) <= 0 {
				return i, fault, low, high
			}
		case bench.RowOverlap:
			// Two oils may both be suitable from 5 to 10 °C.
			if meet && (c.scale.Unit.Dimension != quantity.Temperature || b.Low.Cmp(a.High) == 0) {
				return i, fault, b.Low, a.High
			}
		}
	}
	return 0, bench.RowsGood, nil, nil
}

// reportHole reports the first fault of a column, and whether there is one.
func (p *pass) reportHole(c *spans) bool {
	row, fault, low, high := c.fault()
	if fault == bench.RowsGood {
		return false
	}
	mark := p.Shop.Mark()
	marks, verb := c.scale.Number(low, mark), "lies"
	if low.Cmp(high) != 0 {
		marks, verb = marks+" to "+c.scale.Number(high, mark), "lie"
	}
	if c.scale.Unit.Symbol != "" {
		marks = c.scale.Unit.After(marks)
	}
	where := "in no row"
	if fault == bench.RowOverlap {
		where = "in two rows"
	}
	end := c.rows[row-1].High
	p.msgs.Report("table-hole", c.at[row], "look them up in the manual; a row begins one mark above the end of the row below it, as "+
		c.scale.Number(new(big.Rat).Add(end, c.scale.Step), mark)+" above "+c.scale.Number(end, mark),
		"%s %s %s of this table", marks, verb, where)
	return true
}
