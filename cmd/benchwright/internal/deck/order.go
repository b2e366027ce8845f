package deck

import (
	"fmt"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/render"
)

// The words of the order and the passes in which a set is tightened.
const wordRound = "Once around"

func wordPass(n int) string             { return fmt.Sprintf("Pass\u00a0%d", n) }
func wordOrderOf(what string) string    { return "Order of the " + what }
func wordDrawnFrom(where string) string { return "Drawn as seen from " + where + "." }

var shapes = map[bench.BoltPattern]render.Shape{bench.BoltCircle: render.Circle, bench.BoltRectangle: render.Rectangle, bench.BoltRow: render.Row}

// order builds the figure of a tightening order. The panel says what to do with it.
func (b *builder) order(t *card.Torque) render.Order {
	p, _ := bench.ParseBoltPattern(string(t.Fastener.Pattern))
	o := render.Order{Shape: shapes[p], Numbers: make([]int, len(t.Order))}
	for i, position := range t.Order {
		o.Numbers[position-1] = i + 1
	}
	if from := t.Fastener.SeenFrom; from != "" {
		o.Lines = append(o.Lines, plain(wordDrawnFrom(from)))
	}
	return o
}

// passes prints the settings of the passes, on marks of the wrench.
func (b *builder) passes(t *card.Torque) []render.Pass {
	var out []render.Pass
	for i, p := range t.Passes {
		label := wordPass(i + 1)
		if p.Round {
			label = wordRound
		}
		out = append(out, render.Pass{Label: label, Value: t.Choice.Wrench.Scale.Number(p.Setting, b.card.Shop.Mark())})
	}
	return out
}
