package deck

import (
	"math/big"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/render"
)

// The words of an adapter on a wrench.
const (
	wordGrip       = "Pull at the center of the grip."
	wordInLine     = "in line with the wrench"
	wordPointsBack = "pointing back along the wrench"
)

func wordAtAngle(angle string) string  { return "at " + angle + " to the wrench" }
func wordReaches(torque string) string { return torque + " at the fastener" }
func wordWithAdapter(adapter, points string) string {
	return "With the " + adapter + ", " + points + "."
}

// adapter describes the adapter on the wrench and where to pull: the setting
// is valid only for that grip.
func adapter(a *card.Adapter) [][]render.Run {
	return [][]render.Run{
		plain(wordWithAdapter(together(lower(a.Tool.Name)), pointing(a))),
		strong(wordGrip),
	}
}

// pointing returns the direction of an adapter on the wrench.
func pointing(a *card.Adapter) string {
	switch {
	case a.Adapter.Angle.Sign() == 0:
		return wordInLine
	case a.Adapter.Angle.Cmp(big.NewRat(180, 1)) == 0:
		return wordPointsBack
	}
	return wordAtAngle(a.Angle)
}

// reached prints the torque at the fastener that a setting gives, in the
// manual's unit, with one decimal more than the manual but at most three.
func (b *builder) reached(g *card.Tightening) string {
	mark, u := b.card.Shop.Mark(), g.Limit.Band.Unit
	decimals := 0
	for _, n := range g.Limit.Band.Numbers {
		if _, digits, ok := strings.Cut(n.Text, string(rune(mark))); ok {
			decimals = max(decimals, len(digits))
		}
	}
	step := new(big.Rat).SetFrac(big.NewInt(1), new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(min(decimals+1, 3))), nil))
	x := quantity.Convert(g.Choice.Torque, g.Choice.Wrench.Scale.Unit, u)
	return u.After(quantity.Format(x, step, mark))
}
