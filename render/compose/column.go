package compose

import (
	"benchwright/render"
)

// A Column is a canvas that is filled downward.
type Column struct {
	Canvas
	C     *Compositor
	X, Y  int // where the next thing stands
	Width int
}

// Text adds a paragraph, if there is any.
func (k *Column) Text(runs []render.Run, h Hand) {
	if p := k.C.Set(runs, h, k.Width, 0); len(p.Lines) > 0 {
		k.Para(p, k.X, k.Y)
		k.Y += p.Height()
	}
}

// Lines adds paragraphs one under the other.
func (k *Column) Lines(lines [][]render.Run, h Hand) {
	for i, runs := range lines {
		if i > 0 {
			k.Y += k.C.Beat / 2
		}
		k.Text(runs, h)
	}
}
