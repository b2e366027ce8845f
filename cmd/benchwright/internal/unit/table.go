package unit

import (
	"math/big"
	"regexp"
	"strconv"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// A Table is limits that follow a mark etched on the part: its size is Nominal
// + mark × PerMark, or − where a plus mark means shorter, ± Tolerance, for the
// marks from First to Last.
type Table struct {
	Mark        string // what the mark is called: "pinion-mark"
	Nominal     quantity.Value
	PerMark     quantity.Value
	Tolerance   quantity.Value
	Shorter     bool
	First, Last int // First is below Last, or the same
	Source      string
	At          source.Place
}

// Band returns the limits of a part with that mark, exactly, in the unit of
// the nominal size. The mark may lie outside First and Last.
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

// fromTo reads two whole numbers: "-5 to 5", "0..12".
var fromTo = regexp.MustCompile(`^([-+−]?)([0-9]{1,2}) ?(?:to|\.\.|–) ?([-+−]?)([0-9]{1,2})$`)

// table reads limits that follow an etched mark, nil when they are not
// complete, which is reported.
func (r reader) table(n *syntax.Node) *Table {
	t := &Table{Mark: r.Text(n.Get("table-by")), Shorter: r.Text(n.Get("plus-mark-means")) == "shorter",
		Source: r.Text(n.Get("source")), At: place(n.Get("table-by"))}
	nominal, step := r.Value(n.Get("nominal"), quantity.Length), r.Value(n.Get("per-mark"), quantity.Length)
	tolerance := r.Either(n.Get("tolerance"), quantity.Length)
	first, last, ok := r.Marks(n.Get("marks"))
	for _, v := range []struct {
		v         *quantity.Value
		key, mend string
	}{
		{step, "per-mark", "write what one mark is worth; `plus-mark-means:` says which way"},
		{tolerance, "tolerance", "write how far the size may lie from what the mark calls for, such as `±0.02 mm`"},
	} {
		if v.v != nil && v.v.Value.Sign() <= 0 {
			r.Msgs.Report("quantity-malformed", n.Get(v.key).Place(), v.mend, "`%s` is more than nothing", v.key)
			return nil
		}
	}
	if nominal == nil || step == nil || tolerance == nil || !ok || n.Get("plus-mark-means") == nil {
		return nil
	}
	t.Nominal, t.PerMark, t.Tolerance = *nominal, *step, *tolerance
	t.First, t.Last = first, last
	if t.Source == "" {
		r.Msgs.Report("source-missing", t.At, "add `source:` with title, issue and table of the manual", "this table has no source")
	}
	return t
}

// Marks returns the first and the last mark of a span of marks, "-5 to 5". It is
// not ok where there is none or it is reversed, which is reported.
func (r Reader) Marks(n *syntax.Node) (first, last int, ok bool) {
	span := fromTo.FindStringSubmatch(r.Text(n))
	if span == nil {
		return 0, 0, false
	}
	first, last = whole(span[1], span[2]), whole(span[3], span[4])
	if first > last {
		r.Msgs.Report("limits-reversed", place(n), "write the lower mark first", "the marks are reversed: %d is more than %d", first, last)
		return 0, 0, false
	}
	return first, last, true
}

// whole returns a number of digits alone, below zero after a minus.
func whole(sign, digits string) int {
	n, _ := strconv.Atoi(digits)
	if sign == "-" || sign == "−" {
		return -n
	}
	return n
}
