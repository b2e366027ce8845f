package deck

import (
	"cmp"
	"math/big"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/render"
)

// The words of a fit, in the order of the work.
const (
	wordHeat        = "Heat"
	wordChill       = "Chill"
	wordClean       = "Clean"
	wordOil         = "Oil"
	wordSealant     = "Sealant"
	wordOrientation = "Orientation"
	wordLip         = "Lip"
	wordFlush       = "Flush with the face."
	wordHome        = "Home when"
	wordHoldHot     = "Hold it home until it is cold."
	wordHoldCold    = "Hold it home until it is warm."
	wordPress       = "Press to"
	wordPull        = "Pull to"
	wordColder      = " or colder"
)

var fitWays = map[procedure.Direction]string{procedure.Into: " into ", procedure.Onto: " onto ", procedure.OutOf: " out of ", procedure.Off: " off "}

func wordBringTo(verb, what string) string   { return verb + " " + what + " to" }
func wordNotWarmer(what, most string) string { return capital(what) + " no warmer than " + most + "." }
func wordNotColder(what, least string) string {
	return capital(what) + " no colder than " + least + "."
}
func wordNever(most, what string) string {
	return "Above " + most + ": never use " + what + "."
}
func wordFast(verb, other string) string {
	return verb + " fast, pull at once: " + other + " follows."
}
func wordTooHigh(in bool, call string) string {
	above := "Above this"
	if in { // the force jumps when the part is fully seated
		above += " on the way in"
	}
	return above + ", stop. " + cmp.Or(call, "Release the load.")
}
func wordTooLow(call string) string {
	return strings.TrimSpace("If it is home below this, it is too loose. " + call)
}
func wordCallWho(who string) string  { return "Call the " + who + "." }
func wordHeated(title string) string { return title + ", heated" }
func wordChilled(t string) string    { return t + ", chilled" }
func wordPressed(t string) string    { return t + ", on the gauge" }
func wordDepth(name string) string   { return "Depth of " + name }
func wordComputed(interference, spare, diameter string) string {
	return "computed: interference up to " + interference + ", " + spare + " to spare, on " + diameter
}
func wordComputedForce(interference, force string) string {
	return "computed: interference up to " + interference + ", " + force
}
func wordRam(ram string) string { return ", ram " + ram }

func fitTitle(f *card.Fit) string { return f.Part.Name + fitWays[f.Direction] + the(f.Mate.Name) }

// fit builds the panels and lines of a fit, in the order of the work: one
// panel for each number, the depth of its seat last.
func (b *builder) fit(f *card.Fit) []render.Element {
	var first, hand [][]render.Run
	for _, l := range []struct{ word, text string }{{wordClean, f.Clean}, {wordOil, f.Oil}} {
		first = append(first, labeled(l.word, l.text)...)
	}
	for _, l := range []struct{ word, text string }{{wordSealant, f.Sealant}, {wordOrientation, f.Orientation}, {wordLip, f.Lip}} {
		hand = append(hand, labeled(l.word, l.text)...)
	}
	var panels []render.Setting
	for _, w := range f.Warmths() {
		panels = append(panels, b.warmth(f, w))
	}
	for _, p := range f.Pushes() {
		if p.HasReading {
			panels = append(panels, b.push(f, p))
		}
	}
	last := fitLast(f)
	title := strong(fitTitle(f))
	var out []render.Element
	if len(panels) == 0 {
		out = append(out, b.technical(f.At, render.Reading{Title: title, Plain: true, Lines: slices.Concat(first, hand, last)}))
	}
	for i, p := range panels {
		if i == len(panels)-1 {
			p.Lines = slices.Concat(hand, p.Lines, last)
		}
		if i == 0 {
			p.Title, p.Lines = title, append(first, p.Lines...)
		}
		out = append(out, b.technical(f.At, p))
	}
	if d := f.Depth; d != nil {
		named, written := *d, *d.Measurement
		written.Of = wordDepth(the(f.Part.Name))
		named.Measurement = &written
		out = append(out, b.measurement(&named)...)
	}
	return out
}

// fitLast returns the sign that the part is fully seated, and what to do then.
func fitLast(f *card.Fit) [][]render.Run {
	var out [][]render.Run
	if f.Seat == procedure.Flush {
		out = append(out, strong(wordFlush))
	}
	out = append(out, labeled(wordHome, f.HomeSign)...)
	switch {
	case !f.Direction.In():
	case f.Heat != nil:
		out = append(out, plain(wordHoldHot))
	case f.Chill != nil:
		out = append(out, plain(wordHoldCold))
	}
	return out
}

// toReach builds the panel of what is read while it rises: its limits, and the
// box for where it ended.
func (b *builder) toReach(label string, m *card.Measurement) render.Setting {
	s := render.Setting{Tools: b.onGauge(m), Label: label}
	s.Value, s.Unit = b.limitsOnGauge(m)
	if s.Value != "" { // a panel without a figure has a box in its place
		s.Boxes, s.BoxUnit = []string{""}, s.Unit
	}
	return s
}

// warmth builds the panel of a temperature.
func (b *builder) warmth(f *card.Fit, w *card.Warmth) render.Setting {
	verb := wordHeat
	if w == f.Chill {
		verb = wordChill
	}
	s := b.toReach(wordBringTo(verb, shortName(w.Part)), w.Measurement)
	if high := b.chilledTo(f, w); high != "" {
		s.Value, s.Unit = high, s.Unit+wordColder
	}
	mark := b.card.Shop.Mark()
	switch {
	case w.StatedLimit != nil:
		s.Source = plain(b.manual(w.StatedLimit))
	case w.Need != nil && w.Method.Clearance != nil:
		most, diameter := f.Size()
		s.Source = plain(wordComputed(b.lengthOf(most), b.value(*w.Method.Clearance), b.lengthOf(diameter)))
	}
	if w.StatedLimit == nil && w.RoomTemperature != nil && (f.Direction.In() || w.Fast) { // else both parts change by the same amount, whatever the start
		line := wordNotWarmer
		if w == f.Chill {
			line = wordNotColder
		}
		s.Lines = append(s.Lines, plain(line(shortName(w.Other), b.value(*w.RoomTemperature))))
	}
	if w.Cap != nil {
		most := w.Cap.Degrees(mark)
		if w.Cap.Shown != nil {
			_, high := w.Cap.Shown.Ends(mark)
			most = high + nbsp + engravedUnit(w.Gauge.EngravedUnit, w.Gauge.Scale)
		}
		s.Lines = append(s.Lines, strong(wordNever(most, shortName(w.Cap.Member))))
	}
	if w.Fast {
		s.Lines = append(s.Lines, strong(wordFast(verb, shortName(w.Other))))
	}
	return s
}

// push builds the panel of a force.
func (b *builder) push(f *card.Fit, p *card.Push) render.Setting {
	label := wordPress
	if p == f.Pull {
		label = wordPull
	}
	s := b.toReach(label, p.Measurement)
	if p.Force != nil {
		text := b.manual(p.Force)
		if p.Computed {
			most, _ := f.Size()
			text = wordComputedForce(b.lengthOf(most), p.Force.Band.Written)
		}
		if p.Ram != nil {
			text += wordRam(b.value(*p.Ram))
		}
		s.Source = plain(text)
	}
	low, high := b.ends(p.Measurement)
	call := ""
	if who := b.card.Procedure.Call; who != "" {
		call = wordCallWho(who)
	}
	if high != "" {
		s.Lines = append(s.Lines, strong(wordTooHigh(f.Direction.In(), call)))
	}
	if low != "" && f.Direction.In() {
		s.Lines = append(s.Lines, plain(wordTooLow(call)))
	}
	return s
}

// shortName returns the kind of a part if its mate is of another kind, else
// its name; the title has the full name.
func shortName(m card.Member) string {
	if m.Part != nil && m.Part.Kind != "" {
		return "the " + string(m.Part.Kind)
	}
	return the(m.Name)
}

// limitsOnGauge prints the limits of a reading as the gauge shows them, and
// their unit, "" without limits.
func (b *builder) limitsOnGauge(m *card.Measurement) (value, unit string) {
	switch {
	case m.Marks != nil:
		return b.marks(*m.Marks), engravedUnit(m.Gauge.EngravedUnit, m.Gauge.Scale)
	case m.Limit != nil:
		return b.band(m.Limit.Band), m.Limit.Band.Unit.Symbol
	}
	return "", ""
}

// ends prints each end of those limits.
func (b *builder) ends(m *card.Measurement) (low, high string) {
	switch mark := b.card.Shop.Mark(); {
	case m.Marks != nil:
		return m.Marks.Ends(mark)
	case m.Limit != nil:
		return m.Limit.Band.Ends(mark)
	}
	return "", ""
}

// chilledTo prints the temperature that a chilled part must reach or go below;
// "" if it has a low limit too, and for a heated part.
func (b *builder) chilledTo(f *card.Fit, w *card.Warmth) string {
	if low, high := b.ends(w.Measurement); w == f.Chill && low == "" {
		return high
	}
	return ""
}

// lengthOf writes a length in mm with just the decimals that it needs.
func (b *builder) lengthOf(mm *big.Rat) string {
	return quantity.MustUnit("mm").After(quantity.Decimal(mm, b.card.Shop.Mark()))
}

// fitTools returns the tools to take for it.
func (b *builder) fitTools(f *card.Fit) []render.ToolRow {
	var rows []render.ToolRow
	for _, w := range f.Warmths() {
		for _, i := range w.With {
			rows = append(rows, toolRow(wordTake, i, ""))
		}
	}
	for _, p := range f.Pushes() {
		for _, i := range p.With {
			rows = append(rows, toolRow(wordTake, i, ""))
		}
		if p.Gauge != nil && !p.HasReading { // it has no panel
			rows = append(rows, toolRow(wordTake, &p.Gauge.Item, ""))
		}
	}
	return rows
}

// fitRows returns its rows of the record.
func (b *builder) fitRows(f *card.Fit) []recordRow {
	var rows []recordRow
	add := func(what string, m *card.Measurement) {
		rows = append(rows, recordRow{at: f.At, what: what, limits: b.limits(m), kind: rowKind{left: true, initials: true}, gauged: true})
	}
	title := fitTitle(f)
	for _, w := range f.Warmths() {
		word := wordHeated
		if w == f.Chill {
			word = wordChilled
		}
		add(word(title), w.Measurement)
		if high := b.chilledTo(f, w); high != "" { // as on its face
			_, unit := b.limitsOnGauge(w.Measurement)
			rows[len(rows)-1].limits = high + nbsp + unit + wordColder
		}
	}
	for _, p := range f.Pushes() {
		if p.HasReading {
			add(wordPressed(title), p.Measurement)
		}
	}
	if d := f.Depth; d != nil {
		for _, r := range b.measurementRows(d) {
			r.at, r.what = f.At, wordDepth(the(f.Part.Name))
			rows = append(rows, r)
		}
	}
	return rows
}
