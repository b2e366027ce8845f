package deck

import (
	"fmt"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/value"
	"benchwright/render"
)

type rowKind struct{ found, left, initials bool }

type recordRow struct {
	at     source.Place
	what   string
	limits string
	boxes  []string // labels of several readings
	kind   rowKind
	hold   bool
	gauged bool // read or set on an instrument
}

// rows returns a step's rows of the record.
func (b *builder) rows(s *card.Step) []recordRow {
	var out []recordRow
	for _, i := range b.contents[s.Number] {
		out = append(out, i.record...)
	}
	return out
}

// measurementRows returns a reading's rows of the record.
func (b *builder) measurementRows(m *card.Measurement) []recordRow {
	r := recordRow{at: m.At, what: m.Of, boxes: m.Record, kind: rowKind{initials: true}, gauged: true}
	switch kind := b.card.Procedure.Kind; {
	case !m.AsFound && m.Node.Get("as-found") != nil: // the writer says no
		r.kind.left = true
	case m.AsFound, kind == procedure.Strip, kind == procedure.Inspect:
		r.kind.found = true
	case kind == procedure.General, kind == "":
		r.kind.found, r.kind.left = true, true
	default:
		r.kind.left = true
	}
	r.limits = b.limits(m)
	if m.Table != nil { // the mark is read first, and says which row holds
		if r.boxes = m.Record; len(r.boxes) == 0 {
			r.boxes = []string{wordReading}
		}
		r.boxes = append([]string{value.NameOf(m.Table.Mark)}, r.boxes...)
	}
	return []recordRow{r}
}

// limits prints a measurement's limits in short.
func (b *builder) limits(m *card.Measurement) string {
	limits := b.bounds(m)
	switch {
	case m.FromLowest:
		limits = wordApartBy(limits, b.spreadText(m))
	case m.Spread != nil && m.Span() != nil:
		limits = wordApartRow(limits)
	}
	return limits
}

// bounds prints them without the spread.
func (b *builder) bounds(m *card.Measurement) string {
	switch {
	case m.Marks != nil:
		return b.marks(*m.Marks) + nbsp + engravedUnit(m.Gauge.EngravedUnit, m.Gauge.Scale)
	case m.Limit != nil:
		return b.band(b.typedBand(m)) + nbsp + m.Limit.Band.Unit.Symbol
	case m.Table != nil:
		return wordByTable
	case m.Expect != nil && m.Gauge != nil:
		return wordExpectRow + " " + b.marks(*m.Expect) + nbsp + engravedUnit(m.Gauge.EngravedUnit, m.Gauge.Scale)
	case m.Limits.Expect != nil:
		return wordExpectRow + " " + b.band(*m.Limits.Expect) + nbsp + m.Limits.Expect.Unit.Symbol
	}
	return ""
}

// Strip returns the record strip of a card, plain paper that stays with the
// job: a row for each reading, torque, pack and hold point, and a tick box for
// each step.
func Strip(c *card.Card) *Deck {
	b := newBuilder(c)
	b.buildItems()
	front := c.Procedure.Number.At
	t := render.Records{Step: wordStep, What: wordWork, Readings: wordReadings, Tail: []string{wordInstrument, wordInitials}}
	ticks := render.Ticks{Title: wordTicks}
	for _, s := range c.Steps() {
		ticks.Numbers = append(ticks.Numbers, s.Number)
		for _, r := range b.rows(s) {
			t.Rows = append(t.Rows, render.RecordRow{Ref: b.ref(r.at), Step: fmt.Sprint(s.Number), What: plain(r.what), Limits: plain(r.limits),
				Boxes: r.readings(), Tail: []bool{r.gauged, r.kind.initials}, Hold: r.hold})
		}
	}
	b.Running.Boxes = []string{wordJob, wordSerial, wordDate, wordName}
	var elements []render.Element
	if len(t.Rows) > 0 {
		elements = append(elements, b.technical(front, t))
	}
	elements = append(elements, b.technical(front, ticks), render.Element{Class: render.Wording, Content: render.End{Text: wordEndStrip}})
	b.section(wordStrip, render.Group{Ref: b.ref(front), Breaks: true, Elements: elements})
	return b.Deck
}

// readings returns the labels of the boxes for readings: none for a row that
// only needs initials, two for a reading as found and as left.
func (r recordRow) readings() []string {
	switch {
	case len(r.boxes) > 0:
		return r.boxes
	case r.kind.found && r.kind.left:
		return []string{wordAsFound, wordAsLeft}
	case r.kind.found:
		return []string{wordAsFound}
	case r.kind.left:
		return []string{""}
	}
	return nil
}
