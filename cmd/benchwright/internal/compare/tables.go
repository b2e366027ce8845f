package compare

import (
	"fmt"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/quantity"
)

// table compares two tables: one that comes out differently is one change, with
// the first row that did.
func (c *comparison) table(f, g fact) {
	gone, come := c.rest(f.lines, g.lines)
	if len(gone)+len(come) == 0 {
		c.lines(f, g) // their order is left
		return
	}
	before, after := firstRow(gone, come)
	class := graver(f.class, g.class)
	note := ""
	if n := max(len(gone), len(come)); n > 1 {
		note = fmt.Sprintf("one of %d rows that differ", n)
	}
	if class == Safety && c.stockOnly() {
		class, note = Method, note+map[bool]string{true: "; ", false: ""}[note != ""]+"the stock of shims changed, the limits did not"
	}
	c.report(class, f.what, before, after, note)
}

// firstRow returns the first row that became another, found again by its first
// cell; else the first that is gone and the first that came.
func firstRow(gone, come []string) (before, after string) {
	for _, before := range gone {
		lead, _, _ := strings.Cut(before, ": ")
		for _, after := range come {
			if strings.HasPrefix(after, lead+": ") {
				return before, after
			}
		}
	}
	if len(gone) > 0 {
		before = gone[0]
	}
	if len(come) > 0 {
		after = come[0]
	}
	return before, after
}

// stockOnly reports whether the shim packs of the current step come out
// differently because of the stock alone: the same limits, aim and rate, other
// shims.
func (c *comparison) stockOnly() bool {
	if c.was == nil || c.is == nil {
		return false
	}
	x, y := shims(c.a.card, c.was.number), shims(c.b.card, c.is.number)
	if len(x) == 0 || len(x) != len(y) {
		return false
	}
	changed := false
	for i := range x {
		a, b := x[i], y[i]
		if a.Stock == nil || b.Stock == nil || !alike(a, b) {
			return false
		}
		changed = changed || stock(a) != stock(b)
	}
	return changed
}

func shims(c *card.Card, number int) []*card.Shim {
	var out []*card.Shim
	for _, s := range c.Steps() {
		if s.Number != number {
			continue
		}
		for _, i := range s.Items {
			if shim, ok := i.(*card.Shim); ok {
				out = append(out, shim)
			}
		}
	}
	return out
}

// alike reports whether two shim packs ask for the same.
func alike(a, b *card.Shim) bool {
	band := func(x *quantity.Band) string {
		if x == nil {
			return ""
		}
		return exact(*x)
	}
	length := func(x *quantity.Value) string {
		if x == nil {
			return ""
		}
		return inBase(*x)
	}
	spans := func(s *card.Shim) string {
		text := fmt.Sprint(s.MinShims, s.MaxShims, len(s.Inputs), s.From.First, s.From.Last)
		if s.Limit != nil {
			text += exact(s.Limit.Band)
		}
		return text
	}
	return spans(a) == spans(b) && band(a.Limits) == band(b.Limits) && ratio(a.Aim) == ratio(b.Aim) && ratio(a.Rate) == ratio(b.Rate) &&
		ratio(a.InPlace) == ratio(b.InPlace) && length(a.Within) == length(b.Within) && length(a.OverPack) == length(b.OverPack) &&
		length(a.RoundTo) == length(b.RoundTo) && length(a.From.PerMark) == length(b.From.PerMark) && length(a.From.By) == length(b.From.By) && band(a.Span) == band(b.Span)
}

// stock returns the shims of a pack's stock, exactly.
func stock(s *card.Shim) string {
	text := ""
	for _, shim := range s.Stock.Shims {
		text += fmt.Sprintf("%s×%d ", inBase(shim.Thickness), shim.MaxCount)
	}
	return text
}
