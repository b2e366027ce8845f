package card

import (
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/unit"
)

// assemblies lists the names that tool blocks of a procedure give with as:.
func assemblies(p *procedure.Procedure) map[string]bool {
	out := map[string]bool{}
	for _, st := range p.Stages {
		for _, s := range st.Steps {
			for _, i := range s.Items {
				if t, ok := i.(*procedure.Tool); ok && t.As.Name != "" {
					out[t.As.Name] = true
				}
			}
		}
	}
	return out
}

func (r *resolver) tool(t *procedure.Tool) Item {
	out := &Tool{Tool: t}
	add := func(v Verb, names []procedure.Named, as, held string) {
		if len(names) == 0 {
			return
		}
		l := ToolLine{Verb: v, As: as, Held: held, Names: names}
		for _, n := range names {
			if item := r.find(n); item != nil {
				l.Tools = append(l.Tools, item)
			}
		}
		out.Lines = append(out.Lines, l)
	}
	add(Take, t.Use, "", "")
	add(Assemble, t.Assemble, unit.NameOf(t.As.Name), "")
	if t.TakeApart.Name != "" {
		add(TakeApart, []procedure.Named{t.TakeApart}, "", "")
	}
	if t.With.Name != "" {
		add(HoldStill, []procedure.Named{t.With}, "", r.held(t.HoldStill))
	}
	return out
}

// held is what is held still: a part or fastener by its name.
func (r *resolver) held(n procedure.Named) string {
	if u := r.card.Unit; u != nil {
		if p := u.Part(n.Name); p != nil {
			return p.Name
		}
		if f := u.Fastener(n.Name); f != nil {
			return f.Name
		}
		have := append(u.PartIDs(), u.FastenerIDs()...)
		if n.Name != "" {
			r.unknown("part-unknown", "part or fastener", n, have, "parts in the unit")
		}
	}
	return unit.NameOf(n.Name)
}

// find looks a tool, wrench or gauge up and puts it in the kit. Without a shop
// a tool is no more than its name. nil is a name that the shop does not have,
// which is reported.
func (r *resolver) find(n procedure.Named) *shop.Item {
	if r.assemblies[n.Name] {
		return &shop.Item{ID: n.Name, Name: unit.NameOf(n.Name)}
	}
	if r.card.Shop == nil {
		item := &shop.Item{ID: n.Name, Name: unit.NameOf(n.Name)}
		r.kit(item, nil)
		return item
	}
	thing := r.card.Shop.Find(n.Name)
	item := ItemOf(thing)
	if item == nil {
		r.unknown("tool-unknown", "tool", n, r.card.Shop.IDs(), "tools in shop.yaml")
		return nil
	}
	if item.Replaced != "" {
		help := "write `" + item.Replaced + "`"
		d := r.msgs.Report("tool-superseded", n.At, help, "`%s`%s has been superseded", n.Name, numbered(item))
		d.Label = "replaced by " + item.Replaced
	}
	r.kit(item, thing)
	return item
}

func numbered(i *shop.Item) string {
	if i.Number == "" {
		return ""
	}
	return " (" + i.Number + ")"
}

// ItemOf returns what a tool, wrench or gauge of a shop has in common; nil for
// nothing.
func ItemOf(thing any) *shop.Item {
	switch t := thing.(type) {
	case *shop.Tool:
		return &t.Item
	case *shop.Wrench:
		return &t.Item
	case *shop.Gauge:
		return &t.Item
	}
	return nil
}
