package card

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
)

// A resolver makes one card.
type resolver struct {
	card     *Card
	lib      *Library
	msgs     *diag.List
	numbers  map[string]int // step id → number in this variant
	ids      []string       // all step ids of the procedure
	step     *Step          // the current step
	deferred []func()       // calls to make when all steps exist
}

func (r *resolver) run() {
	c, p := r.card, r.card.Procedure
	r.checkVariants(p.Variants)
	r.numbers, r.ids = Numbers(p, c.VariantID())
	r.assemblies()
	r.front()
	c.Lead = r.items(p.Lead)
	n := 0
	for _, st := range p.Stages {
		if !r.appliesTo(named(c.Procedure.File, st.Only, st.OnlySpan)) {
			continue
		}
		stage := &Stage{Source: st, Title: r.runs(st.Title), Items: r.items(st.Items)}
		for _, s := range st.Steps {
			if !r.appliesTo(named(c.Procedure.File, s.Only, s.OnlySpan)) {
				continue
			}
			n++
			step := &Step{Number: n, Source: s, Title: r.runs(s.Title)}
			r.step = step
			step.Items = r.items(s.Items)
			r.step = nil
			step.takeWhy()
			stage.Steps = append(stage.Steps, step)
		}
		if len(stage.Steps) > 0 || len(stage.Items) > 0 {
			c.Stages = append(c.Stages, stage)
		}
	}
	for _, f := range r.deferred {
		f()
	}
	r.hazards()
	r.stops()
}

// Numbers returns the number of each step with an id on the card of a variant,
// and all step ids of the procedure.
func Numbers(p *procedure.Procedure, variant string) (numbers map[string]int, ids []string) {
	numbers = map[string]int{}
	n := 0
	for _, st := range p.Stages {
		for _, s := range st.Steps {
			if s.ID != "" {
				ids = append(ids, s.ID)
			}
			if appliesToVariant(st.Only, variant) && appliesToVariant(s.Only, variant) {
				n++
				if s.ID != "" {
					numbers[s.ID] = n
				}
			}
		}
		if st.ID != "" {
			ids = append(ids, st.ID)
			if appliesToVariant(st.Only, variant) {
				numbers[st.ID] = n
			}
		}
	}
	return numbers, ids
}

// appliesToVariant reports whether something limited to some variants applies
// to one. Nil variants apply to all, and without variants everything applies.
func appliesToVariant(only []string, variant string) bool {
	return only == nil || variant == "" || slices.Contains(only, variant)
}

func named(f *source.File, only []string, span source.Span) []procedure.Named {
	var out []procedure.Named
	for _, o := range only {
		out = append(out, procedure.Named{Name: o, At: f.At(span.Start, span.End)})
	}
	return out
}

// appliesTo reports whether something limited to some variants applies to this
// card.
func (r *resolver) appliesTo(only []procedure.Named) bool {
	r.checkVariants(only)
	if only == nil || r.card.Variant == nil {
		return true
	}
	return slices.ContainsFunc(only, func(n procedure.Named) bool { return n.Name == r.card.Variant.ID })
}

// checkVariants reports names of variants that the unit lacks.
func (r *resolver) checkVariants(only []procedure.Named) {
	u := r.card.Unit
	if u == nil {
		return
	}
	var have []string
	for _, v := range u.Variants {
		have = append(have, v.ID)
	}
	for _, n := range only {
		if !slices.Contains(have, n.Name) {
			r.reportUnknown(diag.OnUnit, "variant-unknown", "variant", n, have, "variants of "+u.ID)
		}
	}
}

// reportUnknown reports an unknown name and suggests the nearest known one.
// Without a near one, the name may be declared in a file that was not fully
// read, so the message rests on those files.
func (r *resolver) reportUnknown(rests diag.Basis, slug, what string, n procedure.Named, have []string, where string) {
	d := r.msgs.Report(slug, n.At, "", "no %s is called `%s`", what, n.Name)
	d.Basis = rests
	switch near := diag.Nearest(n.Name, have); {
	case near != "":
		d.Fix = "write `" + near + "`"
		d.Edit = &diag.Edit{At: n.At, Text: near}
		d.Basis = 0
	case len(have) == 0:
		d.Fix = "declare it under " + where
	case len(have) <= 8:
		d.Fix = "name one of: " + strings.Join(have, ", ") + "; or declare it under " + where
	default:
		d.Fix = "declare it under " + where
	}
}

// front resolves the names in the front matter.
func (r *resolver) front() {
	c, p := r.card, r.card.Procedure
	for _, n := range p.After {
		other := r.lib.ByNumber(n.Name)
		if other == nil {
			r.reportUnknown(0, "card-unknown", "card", n, r.lib.numbers(), "the procedures of this workspace")
			continue
		}
		c.After = append(c.After, other)
	}
	if n := p.Reverses; n.Name != "" && r.lib.ByNumber(n.Name) == nil {
		r.reportUnknown(0, "card-unknown", "card", n, r.lib.numbers(), "the procedures of this workspace")
	}
	if c.Unit == nil {
		return
	}
	for _, n := range p.Parts {
		part := c.Unit.Part(n.Name)
		if part == nil {
			r.reportUnknown(diag.OnUnit, "part-unknown", "part", n, c.Unit.PartIDs(), "parts in the unit")
			continue
		}
		if appliesToVariant(part.Only, c.VariantID()) {
			c.Parts = append(c.Parts, part)
		}
	}
	slices.SortStableFunc(c.Parts, func(a, b *unit.Part) int {
		return cmp.Compare(btoi(b.Renew), btoi(a.Renew))
	})
}

func btoi(b bool) int {
	if b {
		return 1
	}
	return 0
}

// stops resolves the stop points.
func (r *resolver) stops() {
	for _, s := range r.card.Procedure.StopPoints {
		if n, ok := r.number(s.After); ok {
			r.card.Stops = append(r.card.Stops, Stop{n, s.Say})
		}
	}
	slices.SortStableFunc(r.card.Stops, func(a, b Stop) int { return cmp.Compare(a.Step, b.Step) })
}

// number returns the number of the step with an id. It reports one that is not
// on this card.
func (r *resolver) number(id procedure.Named) (int, bool) {
	n, ok := r.numbers[id.Name]
	switch {
	case ok:
	case slices.Contains(r.ids, id.Name):
		r.msgs.Report("step-left-out", id.At, "limit this reference to the same variants, or give the step to all",
			"step `%s` is left out here", id.Name).Basis = diag.OnProcedure
	default:
		r.reportUnknown(diag.OnProcedure, "step-unknown", "step", id, r.ids, "a heading, as {#"+id.Name+"}")
	}
	return n, ok
}

func (r *resolver) items(list []procedure.Item) []Item {
	var out []Item
	for _, i := range list {
		if !r.appliesTo(i.OnlyFor()) {
			continue
		}
		if i := r.item(i); i != nil {
			out = append(out, i)
		}
	}
	return out
}

// item resolves an item. It returns nil for a caution, which becomes a callout
// of its step, and for an unreadable item, which is reported.
func (r *resolver) item(i procedure.Item) Item {
	switch i := i.(type) {
	case *procedure.Invalid:
		return nil
	case *procedure.Caution:
		r.caution(i)
		return nil
	case *procedure.Prose:
		return r.prose(i)
	case *procedure.Tool:
		return r.tool(i)
	case *procedure.Torque:
		return r.torque(i)
	case *procedure.Measurement:
		return r.measurement(i)
	case *procedure.HoldPoint:
		return &HoldPoint{i}
	case *procedure.Lash:
		return r.lash(i)
	case *procedure.Shim:
		return r.shim(i)
	case *procedure.Preload:
		return r.preload(i)
	case *procedure.Fit:
		return r.fit(i)
	case *procedure.Timed:
		return r.timed(i)
	case *procedure.LeakTest:
		return r.leakTest(i)
	case *procedure.Fill:
		return r.fill(i)
	case *procedure.Pattern:
		return r.pattern(i)
	case *procedure.Figure:
		return r.figure(i)
	}
	panic(fmt.Sprintf("no card resolves a %T", i))
}

// takeWhy moves the step's why from its items to Why, because it is printed
// last.
func (s *Step) takeWhy() {
	s.Items = slices.DeleteFunc(s.Items, func(i Item) bool {
		p, ok := i.(*Prose)
		if !ok {
			return false
		}
		note, ok := p.Content.(*syntax.Note)
		if !ok || note.Kind != syntax.Why {
			return false
		}
		s.Why = p
		return true
	})
}

// addToKit records that the current step uses a tool.
func (r *resolver) addToKit(item *shop.Item, thing any) {
	n := 0
	if r.step != nil {
		n = r.step.Number
	}
	for _, k := range r.card.Kit {
		if k.Item.ID == item.ID && k.Thing == thing {
			if !slices.Contains(k.Steps, n) {
				k.Steps = append(k.Steps, n)
			}
			return
		}
	}
	r.card.Kit = append(r.card.Kit, &Kit{item, thing, []int{n}})
}
