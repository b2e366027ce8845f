package unit

import (
	"strings"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/syntax"
)

// limit reads a named limit with its bands for all variants and for some.
func (r reader) limit(f syntax.Field) *Limit {
	n := f.Value
	l := &Limit{ID: f.Key, State: r.State(n.Get("state")), At: r.Key(f), Node: n}
	if f.Key == "none" {
		r.Msgs.Report("id-reserved", l.At, "choose another", "`none` says that a reading has no limits")
	}
	if n.Get("band") == nil && n.Get("by-variant") == nil && n.Get("table-by") == nil {
		l.Bad = true // the schema has asked for one of them
	}
	if n.Get("table-by") != nil && n.Get("band") != nil {
		r.Msgs.Report("limits-twice", n.Get("band").Place(), "keep the one that the manual gives", "this limit has both a band and a table by a mark")
		l.Bad = true
		return l
	}
	if n.Get("table-by") != nil {
		l.Table = r.table(n)
		l.Bad = l.Table == nil
	}
	if holds := n.Get("holds"); holds != nil && holds.Kind == syntax.Mapping {
		l.Holds = r.LashPlace(holds)
		l.Bad = l.Bad || l.Holds == nil
	}
	if n.Get("band") != nil {
		l.All = r.band(n, l, "")
	}
	if all := n.Get("by-variant"); all != nil {
		l.ByVariant = map[string]*LimitBand{}
		source := r.Text(n.Get("source"))
		for _, v := range r.Fields(all) {
			r.variant(v.Key, r.Key(v))
			if b := r.band(v.Value, l, source); b != nil {
				l.ByVariant[v.Key] = b
			}
		}
	}
	return l
}

// band reads the band, its second unit and its source, which is otherwise
// where none is written. What it cannot read makes the limit bad.
func (r reader) band(n *syntax.Node, l *Limit, otherwise string) *LimitBand {
	written := n.Get("band")
	if written == nil || written.Kind != syntax.Scalar {
		l.Bad = true // the schema has asked for it
		return nil
	}
	want := quantity.None
	if l.All != nil {
		want = l.All.Band.Unit.Dimension // one limit is of one thing
	}
	if _, p := quantity.ParseBand(written.Text, r.Mark); p != nil && p.Slug == "unit-missing" && strings.Contains(l.ID, "torque") {
		want = quantity.Torque // for the mend to name its unit
	}
	b := r.Band(written, want)
	if b == nil {
		l.Bad = true
		return nil
	}
	out := &LimitBand{Band: *b, Source: r.Text(n.Get("source")), At: place(written)}
	if out.Source == "" {
		out.Source = otherwise
	}
	if b.Form == quantity.Bare {
		l.Bad = true
		help := "write a band, such as `" + b.Limited(r.Mark) + "`, or `max` or `at least` before it"
		if b.Unit.Dimension == quantity.Torque {
			help = "write a band, such as `" + b.Limited(r.Mark) + "`, or write it as `value:` in the torque block to have the shop's tolerance added"
		}
		r.Msgs.Report("limits-bare", out.At, help, "%s is a value, not limits", b.Written)
		return nil
	}
	if also := n.Get("also"); r.Text(also) != "" {
		if out.Also = r.Band(also, b.Unit.Dimension); out.Also != nil {
			r.CompareAlso(*b, *out.Also, out.At, place(also))
		}
	}
	const mend = "add `source:` with title, issue and table of the manual, or `source: shop practice`"
	switch {
	case out.Source != "":
	case b.Unit.Dimension == quantity.Torque:
		r.Msgs.Report("torque-source-missing", out.At, mend, "this torque has no source")
	default:
		r.Msgs.Report("source-missing", out.At, mend, "these limits have no source")
	}
	return out
}
