package deck

import (
	"slices"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/hazard"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/render"
)

// steps builds the step faces.
func (b *builder) steps() {
	var groups []render.Group
	if lead := b.items(b.card.Lead); len(lead) > 0 {
		groups = append(groups, render.Group{Elements: lead})
	}
	for _, st := range b.card.Stages {
		at := b.card.Procedure.File.At(st.Source.Span.Start, st.Source.Span.End)
		head := render.Group{Ref: b.ref(at), Bookmark: st.Source.Text, Join: true}
		head.Elements = append(head.Elements, b.wording(at, render.Stage{Title: runs(st.Title)}))
		head.Elements = append(head.Elements, b.items(st.Items)...)
		groups = append(groups, head)
		for _, s := range st.Steps {
			groups = append(groups, b.stepGroup(s))
		}
	}
	b.section(wordSteps, groups...)
}

// stepGroup builds one step in the order of the hands: the action, callouts, tools
// and sizes, then everything else as it was written; the why last.
func (b *builder) stepGroup(s *card.Step) render.Group {
	at := s.Place(b.card)
	b.step = s.Number
	g := render.Group{Ref: b.ref(at), Bookmark: s.Source.Text, Anchor: card.Anchor(s.Number)}
	g.Elements = append(g.Elements, b.technical(at, render.Step{Number: s.Number, Title: runs(s.Title)}))
	for _, c := range s.Callouts {
		g.Elements = append(g.Elements, b.callout(c))
	}
	if rows := b.toolRows(s.Items); len(rows) > 0 {
		g.Elements = append(g.Elements, b.technical(at, render.Tools{Rows: rows}))
	}
	g.Elements = append(g.Elements, b.items(s.Items)...)
	if s.Why != nil {
		if e, ok := b.prose(s.Why); ok {
			g.Elements = append(g.Elements, e)
		}
	}
	return g
}

func (b *builder) items(items []card.Item) []render.Element {
	var out []render.Element
	for _, i := range items {
		switch i := i.(type) {
		case *card.Prose:
			if e, ok := b.prose(i); ok {
				out = append(out, e)
			}
		case *card.Picture:
			out = append(out, b.technical(i.Place(), render.Picture{Name: i.Name, Data: i.Data, Alt: i.Alt, Caption: plain(i.Title)}))
		case *card.Torque:
			out = append(out, b.torque(i)...)
		case *card.Measurement:
			out = append(out, b.measurement(i)...)
		case *card.Lash:
			out = append(out, b.lash(i)...)
		case *card.Shim:
			out = append(out, b.shim(i)...)
		case *card.Preload:
			out = append(out, b.preload(i)...)
		case *card.Fit:
			out = append(out, b.fit(i)...)
		case *card.Timed:
			out = append(out, b.timed(i)...)
		case *card.LeakTest:
			out = append(out, b.leakTest(i)...)
		case *card.Fill:
			out = append(out, b.fill(i)...)
		case *card.Pattern:
			out = append(out, b.pattern(i)...)
		case *card.Figure:
			out = append(out, b.figure(i)...)
		case *card.Witness:
			out = append(out, b.technical(i.Place(), render.Hold{Title: wordHold, Who: plain(wordWho(i.Who)),
				Sees: plain(wordSees(i.Sees)), Before: before(i.Before), Boxes: []string{wordSignature, wordDate}}))
		}
	}
	return out
}

func before(text string) []render.Run {
	if text == "" {
		return nil
	}
	return plain(wordBefore(text))
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

// toolRows returns the line of tools of a step: its tool blocks, and what its
// other blocks take that does not stand in their panels.
func (b *builder) toolRows(items []card.Item) []render.ToolRow {
	var rows []render.ToolRow
	for _, i := range items {
		switch i := i.(type) {
		case *card.Tool:
			for _, l := range i.Lines {
				rows = append(rows, toolLine(l)...)
			}
		case *card.Shim:
			rows = append(rows, b.shimTools(i)...)
		case *card.Fit:
			rows = append(rows, b.fitTools(i)...)
		case *card.LeakTest:
			rows = append(rows, b.leakTestTools(i)...)
		case *card.Fill:
			rows = append(rows, b.fillTools(i)...)
		case *card.Torque:
			rows = append(rows, b.torqueTools(i, items)...)
		}
	}
	return unique(rows)
}

// inHand says whether a tool that the step takes, by itself or as part of what
// it was put together with, has that size across flats. One that holds
// something still is not free to turn something else.
func (b *builder) inHand(size quantity.Value, items []card.Item) bool {
	fits := func(i *shop.Item) bool {
		t, ok := b.card.Shop.Find(i.ID).(*shop.Tool)
		if !ok || t.AcrossFlats == nil {
			return false
		}
		same := quantity.Convert(t.AcrossFlats.Value, t.AcrossFlats.Unit, size.Unit)
		return same != nil && same.Cmp(size.Value) == 0
	}
	for _, i := range items {
		if t, ok := i.(*card.Torque); ok && t.Adapter != nil && fits(t.Adapter.Tool) {
			return true
		}
		t, ok := i.(*card.Tool)
		if !ok {
			continue
		}
		for _, l := range t.Lines {
			if l.Verb != card.Take && l.Verb != card.Assemble {
				continue
			}
			for _, item := range l.Tools {
				if fits(item) || slices.ContainsFunc(b.card.Assemblies[item.ID], fits) {
					return true
				}
			}
		}
	}
	return false
}

func toolLine(l card.ToolLine) []render.ToolRow {
	var rows []render.ToolRow
	for n, item := range l.Tools {
		note := ""
		switch {
		case l.Verb == card.Assemble && n == len(l.Tools)-1 && l.As != "":
			note = wordMade(l.As)
		case l.Verb == card.HoldStill && l.Held != "":
			note = wordHeld(lower(l.Held))
		}
		rows = append(rows, toolRow(verbs[l.Verb], item, note))
	}
	return rows
}

func unique(rows []render.ToolRow) []render.ToolRow {
	var out []render.ToolRow
	seen := map[render.ToolRow]bool{}
	for _, r := range rows {
		if !seen[r] {
			out = append(out, r)
		}
		seen[r] = true
	}
	return out
}
