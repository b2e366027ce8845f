package card

import (
	"slices"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/value"
)

// assemblies collects the assemblies that tool blocks make, and their tools.
func (r *resolver) assemblies() {
	c, v := r.card, r.card.VariantID()
	c.Assemblies = map[string][]*shop.Item{}
	names := map[string][]procedure.Named{}
	for _, st := range c.Procedure.Stages {
		for _, s := range st.Steps {
			for _, i := range s.Items {
				t, ok := i.(*procedure.Tool)
				if !ok || t.AssemblyName.Name == "" {
					continue
				}
				c.Assemblies[t.AssemblyName.Name] = nil
				if appliesToVariant(st.Only, v) && appliesToVariant(s.Only, v) && inNamed(t.Only, v) {
					names[t.AssemblyName.Name] = append(names[t.AssemblyName.Name], t.Assemble...)
				}
			}
		}
	}
	for as := range names {
		c.Assemblies[as] = r.assemblyTools(as, names, map[string]bool{})
	}
}

// assemblyTools returns the tools of an assembly, including those of nested
// assemblies.
func (r *resolver) assemblyTools(as string, names map[string][]procedure.Named, seen map[string]bool) []*shop.Item {
	if seen[as] {
		return nil
	}
	seen[as] = true
	var out []*shop.Item
	for _, n := range names[as] {
		if _, ok := names[n.Name]; ok {
			out = append(out, r.assemblyTools(n.Name, names, seen)...)
		} else if item := ItemOf(r.card.Shop.Find(n.Name)); item != nil {
			out = append(out, item)
		}
	}
	return out
}

func inNamed(only []procedure.Named, variant string) bool {
	return only == nil || variant == "" || slices.ContainsFunc(only, func(n procedure.Named) bool { return n.Name == variant })
}

func (r *resolver) tool(t *procedure.Tool) Item {
	out := &Tool{Tool: t}
	if as := t.AssemblyName; r.card.Shop.Find(as.Name) != nil {
		d := r.msgs.Report("id-twice", as.At, "give the assembly a name of its own", "`%s` is a tool of the shop already", as.Name)
		d.Related = append(d.Related, diag.Related{At: ItemOf(r.card.Shop.Find(as.Name)).At, Message: "the other one"})
	}
	add := func(v Verb, names []procedure.Named, as, held string) {
		if len(names) == 0 {
			return
		}
		l := ToolLine{Verb: v, As: as, Held: held, Names: names}
		for _, n := range names {
			if item := r.findTool(n); item != nil {
				l.Tools = append(l.Tools, item)
			}
		}
		out.Lines = append(out.Lines, l)
	}
	add(Take, t.Use, "", "")
	add(Assemble, t.Assemble, value.NameOf(t.AssemblyName.Name), "")
	if _, made := r.card.Assemblies[t.TakeApart.Name]; made { // a rule reports what is never assembled
		add(TakeApart, []procedure.Named{t.TakeApart}, "", "")
	}
	if t.With.Name != "" {
		add(HoldStill, []procedure.Named{t.With}, "", r.heldName(t.HoldStill))
	}
	return out
}

func (t *Tool) Readings() []*Measurement { return nil }

func (t *Tool) causes() []Cause {
	var out []Cause
	for _, l := range t.Lines {
		for _, item := range l.Tools {
			for _, id := range item.Hazards {
				out = append(out, Cause{id, nameOf(l, item.ID, t.At)})
			}
		}
	}
	return out
}

func nameOf(l ToolLine, id string, or source.Place) source.Place {
	for _, n := range l.Names {
		if n.Name == id {
			return n.At
		}
	}
	return or
}

func (t *Tool) complete(*Card) bool {
	return len(t.Lines) > 0 && !slices.ContainsFunc(t.Lines, func(l ToolLine) bool { return len(l.Tools) < len(l.Names) })
}

// heldName returns the name of the part or fastener that is held still.
func (r *resolver) heldName(n procedure.Named) string {
	if u := r.card.Unit; u != nil {
		if p := u.Part(n.Name); p != nil {
			return p.Name
		}
		if f := u.Fastener(n.Name); f != nil {
			return f.Name
		}
		have := u.PartIDs()
		for _, id := range u.FastenerIDs() {
			if !slices.Contains(have, id) { // a nut may be a part and a fastener
				have = append(have, id)
			}
		}
		if n.Name != "" {
			r.reportUnknown(diag.OnUnit, "part-unknown", "part or fastener", n, have, "parts in the unit")
		}
	}
	return value.NameOf(n.Name)
}

// findTool looks up a tool, wrench or gauge and adds it to the kit. Without a
// shop, a tool is just its name. It returns nil for a name that the shop
// lacks, which is reported.
func (r *resolver) findTool(n procedure.Named) *shop.Item {
	if tools, ok := r.card.Assemblies[n.Name]; ok {
		item := &shop.Item{ID: n.Name, Name: value.NameOf(n.Name)}
		for _, t := range tools { // an assembly keeps the hazards of its tools
			for _, h := range t.Hazards {
				if !slices.Contains(item.Hazards, h) {
					item.Hazards = append(item.Hazards, h)
				}
			}
		}
		return item
	}
	if r.card.Shop == nil {
		item := &shop.Item{ID: n.Name, Name: value.NameOf(n.Name)}
		r.addToKit(item, nil)
		return item
	}
	thing := r.card.Shop.Find(n.Name)
	item := ItemOf(thing)
	if item == nil {
		r.reportUnknown(diag.OnShop|diag.OnProcedure, "tool-unknown", "tool", n, r.card.Shop.IDs(), "tools in shop.yaml")
		return nil
	}
	r.reportReplaced(n, item)
	r.addToKit(item, thing)
	return item
}

// reportReplaced reports a tool, wrench or gauge that has been replaced.
func (r *resolver) reportReplaced(n procedure.Named, item *shop.Item) {
	if item.ReplacedBy != "" {
		d := r.msgs.Report("tool-superseded", n.At, "write `"+item.ReplacedBy+"`", "`%s`%s has been superseded", n.Name, numbered(item))
		d.Label = "replaced by " + item.ReplacedBy
	}
}

func numbered(i *shop.Item) string {
	if i.Number == "" {
		return ""
	}
	return " (" + i.Number + ")"
}

// ItemOf returns the Item of a tool, wrench or gauge; nil for anything else.
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
