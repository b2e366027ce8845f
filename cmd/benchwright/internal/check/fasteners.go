package check

import (
	"math/big"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/unit"
)

// sizes refuses a step whose sockets and wrenches do not fit the fastener that
// it tightens.
func sizes(p *pass) {
	if p.Shop == nil {
		return
	}
	for _, s := range p.Steps() {
		for _, i := range s.Items {
			t, ok := i.(*card.Torque)
			if !ok || t.Fastener == nil || t.Fastener.AcrossFlats == nil {
				continue
			}
			named, fits := p.sizedTools(s, t.Fastener)
			if len(named) == 0 || fits {
				continue
			}
			size := t.Fastener.AcrossFlats
			fix := "name a tool of " + size.Unit.After(size.Text)
			for _, tool := range p.Shop.Tools {
				if sameSize(tool.AcrossFlats, size) {
					fix = "write `" + tool.ID + "`"
					break
				}
			}
			var tools []string
			for _, n := range named {
				tools = append(tools, n.Name)
			}
			d := p.msgs.Report("tool-size", named[0].At, fix, "`%s` has %s across flats, and `%s` does not fit it%s",
				t.Fastener.ID, size.Unit.After(size.Text), strings.Join(tools, "`, `"), p.otherSystem(named, *size))
			d.Related = append(d.Related, related(t.Fastener.At, "the fastener is declared here"))
		}
	}
}

// otherSystem explains why a tool in the other system of sizes will not do, if
// one is named.
func (p *pass) otherSystem(named []procedure.Named, size quantity.Value) string {
	for _, n := range named {
		if tool, ok := p.Shop.Find(n.Name).(*shop.Tool); ok && bench.NearlyFits(size, *tool.AcrossFlats) {
			exact := size.In(tool.AcrossFlats.Unit)
			near := quantity.Format(exact.Value, big.NewRat(1, 100), p.Shop.Mark())
			return ": " + size.Unit.After(size.Text) + " is " + exact.Unit.After(near) + ", and a tool that nearly fits rounds the corners"
		}
	}
	return ""
}

// sizedTools returns the tools of a step that have a size across flats, as
// named in the step, and whether one of them fits the fastener.
func (p *pass) sizedTools(s *card.Step, f *unit.Fastener) (named []procedure.Named, fits bool) {
	for _, i := range s.Items {
		if t, ok := i.(*card.Torque); ok && t.Adapter != nil && t.Fastener == f {
			if tool, ok := p.Shop.Find(t.Adapter.Tool.ID).(*shop.Tool); ok && tool.AcrossFlats != nil {
				named = append(named, t.Torque.Adapter.Tool)
				fits = fits || sameSize(tool.AcrossFlats, f.AcrossFlats)
			}
		}
		t, ok := i.(*card.Tool)
		if !ok {
			continue
		}
		for _, n := range slices.Concat(t.Use, t.Assemble) {
			if tool, ok := p.Shop.Find(n.Name).(*shop.Tool); ok && tool.AcrossFlats != nil {
				named = append(named, n)
				fits = fits || sameSize(tool.AcrossFlats, f.AcrossFlats)
			}
			for _, part := range p.Assemblies[n.Name] {
				if tool, ok := p.Shop.Find(part.ID).(*shop.Tool); ok {
					fits = fits || sameSize(tool.AcrossFlats, f.AcrossFlats)
				}
			}
		}
	}
	return named, fits
}

func sameSize(a, b *quantity.Value) bool {
	if a == nil || b == nil || a.Unit.Dimension != b.Unit.Dimension {
		return false
	}
	return a.In(b.Unit).Value.Cmp(b.Value) == 0
}

// threads asks for the condition of a thread: the same torque stretches an
// oiled bolt much more than a dry one.
func threads(p *pass) {
	each(p, func(_ *card.Step, t *card.Torque) {
		if t.Thread.Name == "" {
			p.msgs.Report("thread-missing", t.At, "add `thread: dry`, `oiled`, `threadlocker` or `anti-seize`, as the manual says", "this torque does not say whether the thread is dry or oiled")
		}
	})
}
