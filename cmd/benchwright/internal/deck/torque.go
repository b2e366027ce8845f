package deck

import (
	"cmp"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/cmd/benchwright/internal/value"
	"benchwright/render"
)

// torque builds the panel with the setting, the wrench and the actions, the
// figure of the order, and a second panel if the fastener is loosened and
// tightened again.
func (b *builder) torque(t *card.Torque) []render.Element {
	first := render.Setting{Boxes: labels(t.Record)}
	b.fastener(&first, t)
	b.setting(&first, t, &t.Tightening)
	if line := thread(t.Thread.Name); line != "" {
		first.Lines = append(first.Lines, plain(line))
	}
	a := b.actions(t)
	if len(a.slack)+len(a.tight) == 1 { // a single action needs no number
		first.Lines, a = append(first.Lines, a.only(t)...), actions{}
	}
	var figure []render.Element
	if t.Drawn() {
		figure = append(figure, b.table(t.At, wordOrderOf(lower(t.Fastener.Name)), b.order(t)))
	}
	if t.SecondTorque == nil {
		first.Actions = append(a.slack, a.tight...)
		return append([]render.Element{b.technical(t.At, first)}, figure...)
	}
	// Only the last torque is recorded.
	second := render.Setting{Boxes: first.Boxes, Actions: a.tight, First: len(a.slack) + 1}
	b.setting(&second, t, t.SecondTorque)
	first.Boxes, first.Actions = nil, a.slack
	out := append([]render.Element{b.technical(t.At, first)}, figure...)
	return append(out, b.technical(t.At, second))
}

// fastener sets what is tightened, and in which direction.
func (b *builder) fastener(s *render.Setting, t *card.Torque) {
	f := t.Fastener
	if f == nil {
		return
	}
	title := f.Name
	if f.Thread != "" {
		title += ", " + f.Thread
	}
	if f.Count > 1 {
		title += ", " + wordQuantity(f.Count)
	}
	s.Title = strong(title)
	if f.Hand == "" {
		return
	}
	s.Turn = render.Clockwise
	if f.Hand == unit.LeftHand {
		s.Turn = render.Counterclockwise
		s.Lines = append(s.Lines, []render.Run{{Text: wordLeftHand, Weight: render.Bold}})
	}
	s.SeenFrom = wordSeenFrom(cmp.Or(f.SeenFrom, wordWrenchSide))
	if loosens(t) {
		s.SeenFrom = wordToTighten(s.SeenFrom)
	}
}

// setting sets a torque: the mark to set on the wrench, or the manual's band
// if no wrench is known.
func (b *builder) setting(s *render.Setting, t *card.Torque, g *card.Tightening) {
	if g.Limit == nil {
		return
	}
	source := b.manual(g.Limit)
	if c := g.Choice; c != nil {
		s.Label = wordSet
		s.Value = c.Wrench.Scale.Number(c.Setting, b.card.Shop.Mark())
		s.Unit = engravedUnit(c.Wrench.EngravedUnit, c.Wrench.Scale)
		s.Tools = b.toolRowFor(&c.Wrench.Item, c.Wrench)
		if a := t.Adapter; a != nil {
			s.Lines = append(adapter(a), s.Lines...)
			source = wordReaches(b.reached(g)) + "; " + source
		}
		if g == &t.Tightening && len(t.Passes) > 0 {
			s.Label, s.Value, s.Passes = wordSetPasses, "", b.passes(t)
		}
	} else {
		s.Label = wordTorque
		s.Value = b.band(g.Limit.Band)
		s.Unit = g.Limit.Band.Unit.Symbol
		s.BoxUnit = s.Unit // a wrench gives no reading to write down: its boxes are ticked
		if len(s.Boxes) == 0 {
			s.Boxes = []string{wordSet}
		}
	}
	s.Source = plain(source)
	if g.Assumed {
		s.Lines = append(s.Lines, plain(wordTolerance(b.percent(b.card.Shop.TorqueTolerance))))
	}
}

// thread returns the condition of a thread; a fluid is called by its name.
func thread(name string) string {
	if words, ok := threads[name]; ok {
		return words
	}
	if name == "" {
		return ""
	}
	return sentence(value.NameOf(name))
}

// manual prints the manual's value exactly as stated, and its source.
func (b *builder) manual(l *unit.LimitBand) string { return b.manualAt(l, "") }

// manualAt also prints where the value holds.
func (b *builder) manualAt(l *unit.LimitBand, where string) string {
	text := wordManual(l.Band.Written)
	if where != "" {
		text += " " + where
	}
	return wordSourced(text, l.Source)
}

// torqueTools returns the tools to take besides the wrenches: the adapter, and
// a tool for the size of the fastener if no other tool of the step has it.
func (b *builder) torqueTools(t *card.Torque, items []card.Item) []render.ToolRow {
	var rows []render.ToolRow
	if a := t.Adapter; a != nil {
		rows = append(rows, toolRow(wordTake, a.Tool, ""))
	}
	if f := t.Fastener; f != nil && f.AcrossFlats != nil && !b.inHand(*f.AcrossFlats, items) {
		name := wordFlat(b.value(*f.AcrossFlats))
		if f.Drive == unit.Socket {
			name = wordKey(b.value(*f.AcrossFlats))
		}
		rows = append(rows, render.ToolRow{Verb: wordTake, Name: name})
	}
	return rows
}

// torqueTakes returns things to take that only the text mentions: what marks
// the finished fasteners, and what shows the angle.
func torqueTakes(t *card.Torque) []string {
	var out []string
	if t.Drawn() {
		out = append(out, wordChalk)
	}
	if t.ThenTurn != nil {
		out = append(out, wordPaintPen)
	}
	return out
}

// torqueRows returns its rows of the record: the last setting, and what
// follows it.
func (b *builder) torqueRows(t *card.Torque) []recordRow {
	r := recordRow{at: t.At, kind: rowKind{left: true, initials: true}, boxes: t.Record, gauged: true}
	if t.Fastener != nil {
		r.what = t.Fastener.Name
	}
	all := t.Tightenings()
	g := all[len(all)-1]
	var limits []string
	switch c := g.Choice; {
	case c != nil:
		limits = append(limits, wordSet+" "+c.Wrench.Scale.Number(c.Setting, b.card.Shop.Mark())+nbsp+engravedUnit(c.Wrench.EngravedUnit, c.Wrench.Scale))
	case g.Limit != nil:
		limits = append(limits, b.band(g.Limit.Band)+nbsp+g.Limit.Band.Unit.Symbol)
	}
	if t.ThenTurn != nil {
		limits = append(limits, wordThen(t.ThenTurn.Range(b.card.Shop.Mark())))
	}
	if e := t.End; e != nil && e.Reading != nil {
		limits = append(limits, wordUntil(b.limits(e.Reading)))
	}
	r.limits = strings.Join(limits, ", ")
	return []recordRow{r}
}
