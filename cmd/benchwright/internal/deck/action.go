package deck

import (
	"fmt"
	"strconv"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/render"
)

// The words for tightening, in the order of the work.
const (
	wordTighten      = "Tighten to the setting"
	wordTightenAgain = "Tighten again to this setting"
	wordTightenOrder = "Chalk the numbers of the figure on. Tighten in their order"
	wordTightenPass  = "Chalk the numbers of the figure on. Do each pass in their order"
	wordTightenEach  = "Do each pass on all of them"
	wordOnceRound    = "Last, go around once, from each to its neighbor"
	wordLoosenLeft   = " clockwise"
	wordLoosenRight  = " counterclockwise"
	wordAlignOn      = "Tighten until a slot lines up. Never loosen"
)

func wordOrderList(numbers string) string {
	return "Tighten in this order, by the numbers of the picture: " + numbers
}
func wordThen(angle string) string           { return "then " + angle }
func wordUntil(limits string) string         { return "until " + limits }
func wordDuring(action string) string        { return " while " + strings.TrimSuffix(action, ".") }
func wordSlackBy(who, way, by string) string { return "Back " + who + " off" + way + " by " + by }
func wordSlack(who, way string) string       { return "Back " + who + " off" + way + " until it is loose" }
func wordAlignBack(way string) string {
	return "Loosen" + way + " until a slot lines up. Never tighten"
}
func wordTurnOn(who, by string) string {
	return "Paint a line across " + who + ". Turn " + who + " on by " + by
}
func wordCrush(turn string, step int) string {
	read := "take the reading below"
	if step > 0 {
		read = fmt.Sprintf("take the reading of step\u00a0%d", step)
	}
	if turn == "" {
		return "Turn it on a little at a time. After each time " + read
	}
	return "Turn it on by no more than " + turn + " at a time. After each time " + read
}
func wordCrushStop(accept string, ends bool) string {
	text := "Stop at " + accept + ". Never turn back"
	if ends {
		text += ". Above this, take it apart and fit a new sleeve"
	}
	return text
}

// turns has the angles that are better known as part of a turn.
var turns = map[string]string{"30": "half a flat of a hexagon", "45": "an eighth of a turn", "60": "one flat of a hexagon", "90": "a quarter turn",
	"120": "two flats of a hexagon", "180": "half a turn", "270": "three quarters of a turn", "360": "one turn"}

// actions are what to do with a fastener, before and after it is slack.
type actions struct{ slack, tight [][]render.Run }

func (b *builder) actions(t *card.Torque) actions {
	var a actions
	who := "it"
	if t.Set() {
		who = "each"
	}
	add := func(list *[][]render.Run, text string) {
		*list = append(*list, plain(text+"."))
	}
	if t.Limit != nil {
		text := tighten(t)
		if t.While != "" {
			text += wordDuring(t.While)
		}
		add(&a.slack, text)
		if len(t.Passes) > 0 {
			add(&a.slack, wordOnceRound)
		}
	}
	if off := t.BackOff; off != nil {
		if off.Angle == nil {
			add(&a.slack, wordSlack(who, loosening(t.Fastener)))
		} else {
			add(&a.slack, wordSlackBy(who, loosening(t.Fastener), b.angle(off.Angle)))
		}
	}
	if t.SecondTorque != nil {
		add(&a.tight, wordTightenAgain)
	}
	if t.ThenTurn != nil {
		add(&a.tight, wordTurnOn(who, b.angle(t.ThenTurn)))
	}
	if t.End != nil && t.End.Reading != nil {
		a.tight = append(a.tight, b.crush(t)...)
	}
	switch t.Align {
	case procedure.TightenOnly:
		add(&a.tight, wordAlignOn)
	case procedure.LoosenOnly:
		add(&a.tight, wordAlignBack(loosening(t.Fastener)))
	}
	if t.Lock != "" {
		add(&a.tight, wordLock(t.Lock))
	}
	return a
}

// only returns the action of a fastener that is just tightened. It is printed
// only if something is done meanwhile or an order must be kept.
func (a actions) only(t *card.Torque) [][]render.Run {
	switch {
	case t.Limit == nil || t.Order != nil:
		return append(a.slack, a.tight...)
	case t.While != "":
		return [][]render.Run{plain(wordWhile(t.While))}
	}
	return nil
}

// tighten returns the instruction that brings a fastener or a set to its
// setting.
func tighten(t *card.Torque) string {
	switch passes := len(t.Passes) > 0; {
	case passes && t.Drawn():
		return wordTightenPass
	case passes && t.Order == nil:
		return wordTightenEach
	case t.Drawn():
		return wordTightenOrder
	case t.Order != nil:
		var numbers []string
		for _, p := range t.Order {
			numbers = append(numbers, strconv.Itoa(p))
		}
		return wordOrderList(strings.Join(numbers, ", "))
	}
	return wordTighten
}

// crush returns how to tighten against a crush sleeve, with the scale of the
// gauge that is read.
func (b *builder) crush(t *card.Torque) [][]render.Run {
	turn := ""
	if v := t.Until.Turn; v != nil {
		turn = b.value(*v)
	}
	number, link := 0, ""
	if n := t.End.Step.Number; n != b.step {
		number, link = n, card.Anchor(n)
	}
	m := t.End.Reading
	return [][]render.Run{
		{{Text: typeset(wordCrush(turn, number)) + ".", Link: link}},
		plain(wordCrushStop(b.limits(m), pastEnd(m)) + "."),
	}
}

// pastEnd reports whether the limits of a reading have an upper end.
func pastEnd(m *card.Measurement) bool {
	if m.Marks != nil {
		return m.Marks.High != nil
	}
	q := m.OnGauge()
	return q != nil && q.High != nil
}

// loosening returns the direction that loosens a fastener, from the hand of
// its thread; "" if not known.
func loosening(f *unit.Fastener) string {
	switch {
	case f == nil || f.Hand == "":
		return ""
	case f.Hand == unit.LeftHand:
		return wordLoosenLeft
	}
	return wordLoosenRight
}

// loosens reports whether a fastener is also loosened, so that the arrow must
// say which direction it shows.
func loosens(t *card.Torque) bool {
	return t.BackOff != nil || t.Align == procedure.LoosenOnly || t.End != nil
}

// angle prints an angle, with the part of a turn if it is a well-known one.
func (b *builder) angle(a *quantity.Band) string {
	text := a.Range(b.card.Shop.Mark())
	if a.Form == quantity.Bare && a.Unit.Symbol == "°" {
		if part, ok := turns[a.Nominal.Value.RatString()]; ok {
			text += " (" + part + ")"
		}
	}
	return text
}
