package unit

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/value"
)

// A Table gives limits that depend on a mark etched on the part. The size is
// Nominal + mark × PerMark ± Tolerance, or Nominal − mark × PerMark ±
// Tolerance if Shorter. It covers the marks from First to Last.
type Table struct {
	Mark        string // name of the mark: "pinion-mark"
	Nominal     quantity.Value
	PerMark     quantity.Value
	Tolerance   quantity.Value
	Shorter     bool
	First, Last int // First ≤ Last
	Source      string
	At          source.Place
}

// Band returns the exact limits for a part with a mark, in the unit of the
// nominal size. The mark may be outside First and Last.
func (t *Table) Band(mark int) quantity.Band {
	u := t.Nominal.Unit
	shift := new(big.Rat).Mul(big.NewRat(int64(mark), 1), quantity.Convert(t.PerMark.Value, t.PerMark.Unit, u))
	if t.Shorter {
		shift.Neg(shift)
	}
	middle := shift.Add(shift, t.Nominal.Value)
	half := new(big.Rat).Abs(quantity.Convert(t.Tolerance.Value, t.Tolerance.Unit, u))
	return quantity.Band{Form: quantity.Range, Low: new(big.Rat).Sub(middle, half), High: half.Add(half, middle), Unit: u}
}

// Marks returns the marks from First to Last.
func (t *Table) Marks() []int {
	out := make([]int, 0, t.Last-t.First+1)
	for m := t.First; m <= t.Last; m++ {
		out = append(out, m)
	}
	return out
}

// table converts limits that depend on an etched mark.
func (r reader) table(n *syntax.Node) *Table {
	t := &Table{Mark: r.Text(n.Get("table-by")), Shorter: value.OneOf(r.Reader, n.Get("plus-mark-means"), "longer", "shorter") == "shorter",
		Source: r.Text(n.Get("source")), At: value.Place(n.Get("table-by"))}
	if !r.Require(n, "nominal", "per-mark", "tolerance", "marks", "plus-mark-means") {
		return nil
	}
	nominal := r.Value(n.Get("nominal"), quantity.Length)
	step := r.Positive(n.Get("per-mark"), quantity.Length, "`per-mark` is", "write what one mark is worth; `plus-mark-means:` says which way")
	tolerance := r.Deviation(n.Get("tolerance"), quantity.Length)
	if tolerance != nil && tolerance.Value.Sign() <= 0 {
		r.Refuse("quantity-malformed", n.Get("tolerance").Place(), "write how far the size may lie from what the mark calls for, such as `±0.02 mm`", "`tolerance` must be greater than zero")
	}
	t.First, t.Last = r.Marks(n.Get("marks"))
	if r.Bad().IsSet() {
		return nil
	}
	t.Nominal, t.PerMark, t.Tolerance = *nominal, *step, *tolerance
	if t.Source == "" {
		r.Msgs.Report("source-missing", t.At, "add `source:` with title, issue and table of the manual", "this table has no source")
	}
	return t
}
