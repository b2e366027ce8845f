package deck

import (
	"slices"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/hazard"
	"benchwright/render"
)

// steps builds the step faces.
func (b *builder) steps() {
	var groups []render.Group
	if lead := b.leadProse(b.card.Lead); len(lead) > 0 {
		groups = append(groups, render.Group{Elements: lead})
	}
	for _, st := range b.card.Stages {
		at := b.card.Procedure.File.At(st.Source.Span.Start, st.Source.Span.End)
		head := render.Group{Ref: b.ref(at), Bookmark: st.Source.Text, Join: true}
		head.Elements = append(head.Elements, b.wording(at, render.Stage{Title: bindTitle(runs(st.Title))}))
		head.Elements = append(head.Elements, b.leadProse(st.Items)...)
		groups = append(groups, head)
		for _, s := range st.Steps {
			groups = append(groups, b.stepGroup(s))
		}
	}
	b.section(wordSteps, groups...)
}

// leadProse builds the prose before the first step of a stage.
func (b *builder) leadProse(items []card.Item) []render.Element {
	var out []render.Element
	for _, i := range items {
		out = append(out, b.build(i, items).elements...)
	}
	return out
}

// stepGroup builds a step in the order of the work: the action, a way past it,
// callouts, tools and sizes, then everything else as written, and the why last.
func (b *builder) stepGroup(s *card.Step) render.Group {
	at := s.Place(b.card)
	g := render.Group{Ref: b.ref(at), Bookmark: s.Source.Text, Anchor: card.Anchor(s.Number), Wide: b.relief[s.Number] == wholeWidth}
	g.Elements = append(g.Elements, b.technical(at, render.Step{Number: s.Number, Title: bindTitle(runs(s.Title))}))
	var tools []render.ToolRow
	var elements []render.Element
	for _, i := range b.contents[s.Number] {
		tools, elements = append(tools, i.tools...), append(elements, i.elements...)
	}
	if len(elements) > 1 && b.wayPast(s, elements[0].Content) {
		past := elements[0].Content.(render.Text)
		past.Role = render.Lead
		elements[0].Content = past
		g.Elements, elements = append(g.Elements, elements[0]), elements[1:]
	}
	for _, c := range s.Callouts {
		g.Elements = append(g.Elements, b.callout(c))
	}
	if len(tools) > 0 {
		g.Elements = append(g.Elements, b.technical(at, render.Tools{Rows: byVerb(unique(tools))}))
	}
	g.Elements = append(g.Elements, elements...)
	if s.Why != nil {
		g.Elements = append(g.Elements, b.prose(s.Why)...)
	}
	return g
}

// wayPast reports a paragraph that leads to a later step. Where a step begins with
// one, it is read before anything is done or fetched.
func (b *builder) wayPast(s *card.Step, c render.Content) bool {
	t, is := c.(render.Text)
	if !is || t.Role != render.Instruction {
		return false
	}
	for _, later := range b.card.Steps()[s.Number:] {
		to := card.Anchor(later.Number)
		if slices.ContainsFunc(t.Runs, func(r render.Run) bool { return r.Link == to }) {
			return true
		}
	}
	return false
}

var signals = map[hazard.Signal]render.Signal{
	hazard.Danger: render.Danger, hazard.Warning: render.Warning, hazard.Caution: render.Caution, hazard.Notice: render.Notice,
}

func (b *builder) callout(c *card.Callout) render.Element {
	return b.technical(c.At, render.Callout{
		Signal: signals[c.Signal], Word: c.Signal.Word(), Symbols: c.Symbols,
		Hazard: plain(c.Hazard), Result: plain(c.Result), Avoid: plain(c.Avoid),
		Short: c.Short, AvoidFirst: b.card.Shop != nil && b.card.Shop.AvoidFirst,
	})
}
