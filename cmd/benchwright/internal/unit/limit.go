package unit

import (
	"math/big"
	"strings"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/value"
)

// limit reads a named limit and its bands for all variants or for each. An
// unreadable part marks the limit as bad.
func (r reader) limit(f syntax.Field) *Limit {
	r = r.forPart()
	n := f.Value
	l := &Limit{ID: f.Key, State: ReadState(r.Reader, n.Get("state")), At: r.Key(f), Node: n}
	if f.Key == "none" {
		r.Msgs.Report("id-reserved", l.At, "choose another", "`none` says that a reading has no limits")
	}
	switch band, table := n.Get("band"), n.Get("table-by"); {
	case table != nil && band != nil:
		r.Refuse("limits-twice", band.Place(), "keep the one that the manual gives", "this limit has both a band and a table by a mark")
	case table != nil:
		l.Table = r.table(n)
	case band != nil:
		l.All = r.band(n, l, "")
	case n.Get("by-variant") == nil:
		r.Require(n, "band")
	}
	if holds := n.Get("holds"); holds != nil {
		l.LashPlace = ReadLashPlace(r.Reader, holds)
	}
	if all := n.Get("by-variant"); all != nil {
		l.ByVariant = map[string]*LimitBand{}
		source := r.Text(n.Get("source"))
		for _, v := range r.Fields(all) {
			r.variant(v)
			if b := r.band(v.Value, l, source); b != nil {
				l.ByVariant[v.Key] = b
			}
		}
	}
	l.Bad = r.Bad()
	r.apart(l)
	return l
}

// band reads a band, its second unit and its source, which defaults to
// otherwise.
func (r reader) band(n *syntax.Node, l *Limit, otherwise string) *LimitBand {
	written := n.Get("band")
	want, like := quantity.None, quantity.None
	if l.All != nil {
		want = l.All.Band.Unit.Dimension // all bands of a limit have one dimension
	}
	if strings.Contains(l.ID, "torque") {
		like = quantity.Torque
	}
	if !r.Require(n, "band") {
		return nil
	}
	b := r.BandLike(written, want, like)
	if b == nil {
		return nil
	}
	out := &LimitBand{Band: *b, Source: r.Text(n.Get("source")), At: value.Place(written)}
	if out.Source == "" {
		out.Source = otherwise
	}
	if b.Form == quantity.Bare {
		fix := "write a band, such as `" + b.ExampleLimits(r.Mark) + "`, or `max` or `at least` before it"
		if b.Unit.Dimension == quantity.Torque {
			fix = "write a band, such as `" + b.ExampleLimits(r.Mark) + "`, or write it as `value:` in the torque block to have the shop's tolerance added"
		}
		r.Refuse("limits-bare", out.At, fix, "%s is a single value, not limits", b.Written)
		return nil
	}
	if also := n.Get("also"); also != nil {
		if out.Also = r.Band(also, b.Unit.Dimension); out.Also != nil {
			CompareAlso(*b, *out.Also, out.At, value.Place(also), r.Mark, r.Msgs)
		}
	}
	const fix = "add `source:` with title, issue and table of the manual, or `source: shop practice`"
	switch {
	case out.Source != "":
	case b.Unit.Dimension == quantity.Torque:
		r.Msgs.Report("torque-source-missing", out.At, fix, "this torque has no source")
	default:
		r.Msgs.Report("source-missing", out.At, fix, "these limits have no source")
	}
	return out
}

// apart warns of a variant's band that shares nothing with that of a sister and is
// more than a factor of two away from it.
func (r reader) apart(l *Limit) {
	var seen []*LimitBand
	if l.All != nil {
		seen = append(seen, l.All)
	}
	for _, v := range r.Fields(l.Node.Get("by-variant")) {
		b := l.ByVariant[v.Key]
		if b == nil {
			continue
		}
		for _, other := range seen {
			if farApart(b.Band, other.Band) || farApart(other.Band, b.Band) {
				d := r.Msgs.Report("variants-apart", b.At, "look both up again, the decimal point and the unit of measure too", "%s is more than a factor of two away from %s, those of its sister", b.Band.Written, other.Band.Written)
				d.Related = append(d.Related, diag.Related{At: other.At, Message: "the other limits stand here"})
				return
			}
		}
		seen = append(seen, b)
	}
}

// farApart reports whether high begins at more than twice the end of low.
func farApart(low, high quantity.Band) bool {
	if low.High == nil || high.Low == nil || low.High.Sign() <= 0 || low.Unit.Dimension != high.Unit.Dimension || low.Unit.Dimension == quantity.Temperature {
		return false
	}
	return high.In(low.Unit).Low.Cmp(new(big.Rat).Mul(low.High, big.NewRat(2, 1))) > 0
}
