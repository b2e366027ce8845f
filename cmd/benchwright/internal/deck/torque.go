package deck

import (
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/render"
)

// torque builds the panel of a torque: what to set on which wrench.
func (b *builder) torque(t *card.Torque) render.Element {
	s := render.Setting{Boxes: t.Record}
	if f := t.Fastener; f != nil {
		title := f.Name
		if f.Thread != "" {
			title += ", " + f.Thread
		}
		if f.Count > 1 {
			title += ", " + wordOff(f.Count)
		}
		s.Title = strong(title)
		if f.Hand != "" {
			s.Turn = render.Clockwise
			if f.Hand == unit.LeftHand {
				s.Turn = render.Anticlockwise
				s.Lines = append(s.Lines, []render.Run{{Text: wordLeftHand, Weight: render.Bold}})
			}
			if f.SeenFrom != "" {
				s.SeenFrom = wordSeenFrom(f.SeenFrom)
			}
		}
	}
	switch c := t.Choice; {
	case c != nil:
		// The wrench's name may hold a number of its own: it stands apart from
		// the one number to set.
		s.Label = wordSet
		s.Lines = append([][]render.Run{plain(wordWithWrench(lower(c.Wrench.Name)))}, s.Lines...)
		s.Value = c.Wrench.Scale.Number(c.Setting, b.card.Shop.Mark())
		s.Unit = engraved(c.Wrench.Marked, c.Wrench.Scale)
	case t.Limit != nil:
		s.Label = wordTorque
		s.Value = b.band(t.Limit.Band)
		s.Unit = t.Limit.Band.Unit.Symbol
		if len(s.Boxes) == 0 {
			s.Boxes = []string{wordSet}
		}
	}
	if t.Choice == nil {
		s.BoxUnit = s.Unit // a wrench that is set gives no reading: its boxes are ticked
	}
	if t.Limit != nil {
		s.Source = plain(b.manual(t.Limit))
		if t.Assumed {
			s.Lines = append(s.Lines, plain(wordTolerance(b.percent(b.card.Shop.TorqueTolerance))))
		}
	}
	for _, line := range []string{thread(t.Thread.Name), with(wordWhile, t.While), with(wordLock, t.Lock)} {
		if line != "" {
			s.Lines = append(s.Lines, plain(line))
		}
	}
	return b.technical(t.At, s)
}

func thread(name string) string {
	if words, ok := threads[name]; ok {
		return words
	}
	return unit.NameOf(name)
}

func with(word func(string) string, text string) string {
	if text == "" {
		return ""
	}
	return strings.TrimSuffix(word(text), ".")
}

// manual writes the manual's value exactly as it stands, and where.
func (b *builder) manual(l *unit.LimitBand) string { return b.manualAt(l, "") }

// manualAt adds where the value holds.
func (b *builder) manualAt(l *unit.LimitBand, where string) string {
	text := wordManual(l.Band.Written)
	if where != "" {
		text += " " + where
	}
	if l.Source != "" {
		text += " (" + l.Source + ")"
	}
	return text
}
