package deck

import (
	"fmt"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/render"
)

// record builds the record face: one row a measurement and torque, and the
// witness points.
func (b *builder) record() {
	found, left := b.columns()
	t := render.Records{Title: wordRecord, Columns: []string{wordStep, wordWork, wordLimits}}
	boxes := 0
	for _, col := range []struct {
		on   bool
		head string
	}{{found, wordAsFound}, {left, wordAsLeft}, {true, wordInitials}} {
		if col.on {
			t.Columns = append(t.Columns, col.head)
			boxes++
		}
	}
	fill := func(kind rowKind) []bool {
		var out []bool
		if found {
			out = append(out, kind.found)
		}
		if left {
			out = append(out, kind.left)
		}
		return append(out, kind.initials)
	}
	for _, s := range b.card.Steps() {
		for _, r := range b.rows(s) {
			for _, what := range r.lines() {
				t.Rows = append(t.Rows, render.RecordRow{Ref: b.ref(r.at), Step: fmt.Sprint(s.Number), What: plain(what), Limits: plain(r.limits), Boxes: fill(r.kind), Hold: r.hold})
			}
		}
	}
	front := b.card.Procedure.Number.At
	group := render.Group{Ref: b.ref(front), Breaks: true, Elements: []render.Element{b.technical(front, t)}}
	if len(t.Rows) == 0 {
		group.Elements = []render.Element{b.technical(front, render.Listing{Title: wordRecord, None: wordNone})}
	}
	b.section(wordRecord, group)
}

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

// lines returns what is written down, one line a reading.
func (r recordRow) lines() []string {
	if len(r.boxes) == 0 {
		return []string{r.what}
	}
	var out []string
	for _, label := range r.boxes {
		if len(label) <= 10 { // "mark 1"
			label = together(label)
		}
		out = append(out, r.what+", "+label)
	}
	return out
}

// rows returns what a step leaves on record.
func (b *builder) rows(s *card.Step) []recordRow {
	var out []recordRow
	for _, i := range b.said[s.Number] {
		out = append(out, i.record...)
	}
	return out
}

// columns says which of the two boxes the card needs at all.
func (b *builder) columns() (found, left bool) {
	for _, s := range b.card.Steps() {
		for _, r := range b.rows(s) {
			found, left = found || r.kind.found, left || r.kind.left
		}
	}
	return
}

// measurementRows returns what a reading leaves on record.
func (b *builder) measurementRows(m *card.Measurement) []recordRow {
	r := recordRow{at: m.At, what: m.Of, boxes: m.Record, kind: rowKind{initials: true}, gauged: true}
	switch kind := b.card.Procedure.Kind; {
	case m.AsFound, kind == procedure.Strip, kind == procedure.Inspect:
		r.kind.found = true
	case kind == procedure.General, kind == "":
		r.kind.found, r.kind.left = true, true
	default:
		r.kind.left = true
	}
	r.limits = b.limits(m)
	return []recordRow{r}
}

// limits writes a measurement's limits in short.
func (b *builder) limits(m *card.Measurement) string {
	limits := b.bounds(m)
	if m.Spread != nil && m.Span() != nil {
		limits = wordApartRow(limits)
	}
	return limits
}

// bounds writes them without the spread.
func (b *builder) bounds(m *card.Measurement) string {
	switch {
	case m.Marks != nil:
		return b.marks(*m.Marks) + nbsp + engraved(m.Gauge.Marked, m.Gauge.Scale)
	case m.Limit != nil:
		return b.band(b.unmarked(m)) + nbsp + m.Limit.Band.Unit.Symbol
	case m.Table != nil:
		return wordByTable
	case m.Expect != nil && m.Gauge != nil:
		return wordExpectRow + " " + b.marks(*m.Expect) + nbsp + engraved(m.Gauge.Marked, m.Gauge.Scale)
	case m.Limits.Expect != nil:
		return wordExpectRow + " " + b.band(*m.Limits.Expect) + nbsp + m.Limits.Expect.Unit.Symbol
	}
	return ""
}

// Strip returns the record strip of a card: plain paper that stays with the
// job, every step with its tick, readings and initials.
func Strip(c *card.Card) *Deck {
	b := newBuilder(c)
	b.sayAll()
	front := c.Procedure.Number.At
	head := render.Records{Columns: []string{"", "", "", wordJob, wordSerial, wordDate, wordName}, Rows: []render.RecordRow{{Boxes: []bool{true, true, true, true}}}}
	t := render.Records{Title: wordStrip, Columns: []string{wordStep, wordWork, wordLimits, wordDone, wordAsFound, wordAsLeft, wordInstrument, wordInitials}}
	for _, s := range c.Steps() {
		at := s.Place(c)
		t.Rows = append(t.Rows, render.RecordRow{Ref: b.ref(at), Step: fmt.Sprint(s.Number), What: runs(s.Title), Boxes: []bool{true, false, false, false, false}})
		for _, r := range b.rows(s) {
			for _, what := range r.lines() {
				t.Rows = append(t.Rows, render.RecordRow{Ref: b.ref(r.at), Step: fmt.Sprint(s.Number), What: plain(what), Limits: plain(r.limits),
					Boxes: []bool{false, r.kind.found, r.kind.left, r.gauged, true}, Hold: r.hold})
			}
		}
	}
	b.section(wordStrip, render.Group{Ref: b.ref(front), Breaks: true, Elements: []render.Element{
		b.technical(front, head), b.technical(front, t),
		{Class: render.Wording, Content: render.End{Text: wordEndStrip}},
	}})
	return b.Deck
}
