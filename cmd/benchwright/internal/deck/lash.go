package deck

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/render"
)

// The words of a backlash reading. Which gear is locked, how the stem stands
// and where are data.

func wordRock(turned unit.Member) string {
	return "Lock the " + string(turned.Other()) + ". Turn the " + string(turned) + " to and fro."
}

func wordStem(square bool, radius string) string {
	how := "Set the stem along the turn"
	if square {
		how = "Set the stem square to the tooth's flank"
	}
	if radius == "" {
		return how + ", at the pitch radius."
	}
	return how + ", " + wordRadius(radius) + "."
}

func wordRadius(radius string) string { return radius + " from the shaft's middle" }

func wordHolds(at *unit.LashPlace, radius string) string {
	how := "along the turn"
	if at.Square {
		how = "square to the flank"
	}
	if radius == "" {
		radius = "the pitch radius"
	}
	return how + " at " + radius + " of the " + string(at.Turned)
}

// lash builds the panel of a backlash reading: its limits as the dial shows
// them there, and below them what the manual says and where that holds.
func (b *builder) lash(i *card.Lash) []render.Element {
	r, radius := b.reading(i.Measurement), ""
	if i.Radius != nil {
		radius = together(b.value(*i.Radius))
	}
	dial := i.Block.Dial
	r.Lines = append([][]render.Run{plain(wordStem(dial.Square, radius)), plain(wordRock(dial.Turned))}, r.Lines...)
	if at := i.Holds; at != nil && i.Limit != nil {
		place := ""
		if at.Radius != nil {
			place = together(b.value(*at.Radius))
		}
		r.Source = plain(b.manualAt(i.Limit, wordHolds(at, place)))
	}
	return append([]render.Element{b.technical(i.At, r)}, b.tables(i.Measurement)...)
}

// lashTools returns what is taken in the hand for it: the gauge, which its panel
// names.
func (b *builder) lashTools(*card.Lash) []render.ToolRow { return nil }

// lashRows returns what it leaves on record.
func (b *builder) lashRows(i *card.Lash) []recordRow { return b.measurementRows(i.Measurement) }
