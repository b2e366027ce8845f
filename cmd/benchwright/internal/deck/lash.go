package deck

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/render"
)

// The words of a backlash reading.
const (
	wordStand  = "How the indicator stands"
	wordLocked = "locked"
)

func wordRock(turned unit.Member) string {
	return "Lock the " + string(turned.Other()) + ". Turn the " + string(turned) + " to one stop: zero the indicator. To the other: read."
}

func wordStem(square bool, radius string) string {
	how := "Stem tangent to rotation"
	if square {
		how = "Stem normal to the flank"
	}
	if radius == "" {
		return how + ", at the pitch radius."
	}
	return how + ", " + wordRadius(radius) + "."
}

func wordRadius(radius string) string { return radius + " from the shaft centerline" }

func wordHolds(at *unit.LashPlace, radius string) string {
	how := "tangent to rotation"
	if at.Square {
		how = "normal to the flank"
	}
	if radius == "" {
		radius = "the pitch radius"
	}
	return how + " at " + radius + " of the " + string(at.Turned)
}

// lash builds the panel of a backlash reading: the limits as the dial shows
// them at its place, and below them the manual's limits and where those hold.
func (b *builder) lash(i *card.Lash) []render.Element {
	r, radius := b.reading(i.Measurement), ""
	if i.Radius != nil {
		radius = together(b.value(*i.Radius))
	}
	dial := i.Block.DialPlace
	how := [][]render.Run{plain(wordStem(dial.Square, radius)), plain(wordRock(dial.Turned))}
	if i.Block.NoFigure || b.relief[b.step] != unrelieved {
		r.Lines = append(how, r.Lines...) // the step can be done without the figure
	}
	if at := i.LimitPlace; at != nil && i.Limit != nil {
		place := ""
		if at.Radius != nil {
			place = together(b.value(*at.Radius))
		}
		r.Source = plain(b.manualAt(i.Limit, wordHolds(at, place)))
	}
	var out []render.Element
	if !i.Block.NoFigure {
		out = append(out, b.table(i.At, wordStand, render.Indicator{Radius: radius, Locked: wordLocked, Reach: reach(i),
			Square: dial.Square, Pinion: dial.Turned == unit.PinionGear, Lines: how}))
	}
	return append(append(out, b.technical(i.At, r)), b.tables(i.Measurement)...)
}

// reach returns the radius of the dial in thousandths of the pitch radius;
// 1000 if not known.
func reach(i *card.Lash) int {
	at := i.Radius
	if at == nil || i.Pair == nil || i.Pair.PitchRadius(i.Block.DialPlace.Turned) == nil {
		return 1000
	}
	pitch := i.Pair.PitchRadius(i.Block.DialPlace.Turned)
	ratio := new(big.Rat).Quo(quantity.Convert(at.Value, at.Unit, pitch.Unit), pitch.Value)
	ratio.Mul(ratio, big.NewRat(1000, 1))
	if ratio.Cmp(big.NewRat(5000, 1)) > 0 {
		return 5000
	}
	return int(new(big.Int).Quo(ratio.Num(), ratio.Denom()).Int64())
}
