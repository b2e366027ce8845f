package deck

import (
	"fmt"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/render"
)

// What a face says of a preload.
const (
	wordPullHow   = "How to pull the cord"
	wordOneLayer  = "One layer of cord, square to the shaft."
	wordZeroScale = "Zero the scale as you hold it."
	wordSteady    = "Steady pull: 3\u00a0s a turn or slower."
	wordMoving    = "Ignore breakaway."
)

func wordDrum(radius string) string { return radius + " + ½ cord" }
func wordCord(thick string) string  { return "cord " + thick }
func wordState(s *unit.State) string {
	return fmt.Sprintf("Read it with %s bearings, seal %s, gear %s. Oil: %s.", s.Bearings, s.Seal, s.Gear, strings.TrimSuffix(s.Oil, "."))
}
func wordTurns(n int) string {
	if n == 1 {
		return "First turn it once."
	}
	return fmt.Sprintf("First turn it %d times.", n)
}

// preload builds the panel of a bearing preload, and how to pull the cord.
func (b *builder) preload(i *card.Preload) []render.Element {
	how := [][]render.Run{plain(wordSteady), plain(wordMoving)}
	var out []render.Element
	if d := i.Block.Drum; d != nil {
		figure := render.Cord{Drum: wordDrum(b.value(*d)), Cord: wordCord(b.value(*i.Block.Cord)), Pull: together(b.limits(i.Measurement)),
			Lines: append([][]render.Run{plain(wordZeroScale), plain(wordOneLayer)}, how...)}
		out, how = append(out, b.table(i.At, wordPullHow, figure)), nil
	}
	r := b.reading(i.Measurement)
	r.Lines = append(append(r.Lines, plain(wordState(i.Block.State)+" "+wordTurns(i.Block.State.Turns))), how...)
	return append(append(out, b.technical(i.At, r)), b.tables(i.Measurement)...)
}
