// Package compose sets type and rules: the sizes and colours of a face, text
// broken into lines, columns, boxes, panels and strokes. What an element shows is
// composed of these; where it comes to stand on a face is not known here.
package compose

import (
	"strings"

	"benchwright/render"
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// A Canvas is the drawing of one slab, measured from its top left corner.
type Canvas struct{ Ops []sheet.Op }

func (c *Canvas) Add(ops ...sheet.Op) { c.Ops = append(c.Ops, ops...) }

// Ground fills an area without being a box.
func (c *Canvas) Ground(x, y, w, h int, fill sheet.Color) {
	c.Add(sheet.Rect{X: x, Y: y, W: w, H: h, Fill: fill, Stroke: sheet.NoColor, Role: sheet.Tint})
}

// Frame strokes a box whose outer edges are the given ones.
func (c *Canvas) Frame(x, y, w, h, stroke, radius int, fill, color sheet.Color, role sheet.BoxRole) {
	c.Add(sheet.Rect{X: x + stroke/2, Y: y + stroke/2, W: w - stroke, H: h - stroke,
		Radius: radius, Fill: fill, Stroke: color, StrokeWidth: stroke, Role: role})
}

// Across draws a level line.
func (c *Canvas) Across(x, y, w, width int, color sheet.Color) {
	c.Add(sheet.Line{X1: x, Y1: y, X2: x + w, Y2: y, Width: width, Color: color})
}

// Para draws p with its first line at (x, y).
func (c *Canvas) Para(p Para, x, y int) { c.Aligned(p, x, y, 0, render.Left) }

// Aligned draws p within width.
func (c *Canvas) Aligned(p Para, x, y, width int, a render.Align) {
	h := p.Hand
	for i, line := range p.Lines {
		if len(line) == 0 {
			continue
		}
		base := y + i*h.Lead + h.Base()
		shift := 0
		if end := line[len(line)-1].x + line[len(line)-1].W; a == render.Right {
			shift = width - end
		} else if a == render.Center {
			shift = (width - end) / 2
		}
		for _, s := range line {
			c.Span(s, h, x+shift+s.x, base)
		}
	}
}

func (c *Canvas) Span(s Span, h Hand, x, base int) {
	if s.code {
		pad := typeface.Scaled(codePad, h.Size)
		over := h.Size / 6
		c.Add(sheet.Rect{X: x - pad, Y: base - h.Cap() - over, W: s.W + 2*pad, H: h.Cap() + 2*over + h.Size/12,
			Radius: h.Size / 8, Fill: Tint, Stroke: sheet.NoColor, Role: sheet.Tint})
	}
	c.Add(sheet.Glyphs{X: x, Y: base, Width: s.W, Size: h.Size, Font: s.Font, Color: h.color, Text: s.Text})
	if s.link != "" {
		c.Add(sheet.Link{X: x, Y: base - h.Cap() - h.Size/6, W: s.W, H: h.Cap() + h.Size/3, To: s.link})
	}
}

// A Slab is a piece of a face that is never split.
type Slab struct {
	Gap    int // above it, where it does not come first on a face
	Height int
	Keep   bool // stays with the slab behind it
	Ops    []sheet.Op
}

// A Block is what one element draws.
type Block struct {
	Slabs []Slab
	Again *Slab // the head, set again where the slabs run on to another face
	Runs  bool  // may run on even in a group that is kept together
}

// One is a block of one slab, or nothing.
func One(height int, c Canvas) Block {
	if height == 0 {
		return Block{}
	}
	return Block{Slabs: []Slab{{Height: height, Ops: c.Ops}}}
}

// Height of a block that starts a face.
func (b Block) Height() int {
	h := 0
	for i, s := range b.Slabs {
		if i > 0 {
			h += s.Gap
		}
		h += s.Height
	}
	return h
}

// width of the block that a panel's contents keep clear of its edges.
func (s Style) Pad() int { return 2 * s.Beat }

// A Compositor lays elements out to a width. It knows nothing of faces.
type Compositor struct {
	Style
	Say      render.Words
	Column   int             // width of a face's column
	Width    int             // of what the element stands in
	Tallest  int             // height of a face's body
	Picture  int             // height that a picture may take
	Drawn    int             // height of the tallest picture so far
	Wide     bool            // the element was reported as too wide already
	Ref      render.Ref      // of the element that is being laid out
	Anchors  map[string]bool // of the deck; true until it is placed
	Problems []render.Problem
}

// Problem reports something about the element that is being laid out, once;
// what is too wide makes its words too wide as well, which is one thing.
func (c *Compositor) Problem(p render.Problem) {
	switch p.Kind {
	case render.WordTooWide, render.TableTooWide, render.FigureTooWide:
		if c.Wide {
			return
		}
		c.Wide = true
	}
	p.Ref = c.Ref
	c.Found(p)
}

// Found reports something with a reference of its own, once.
func (c *Compositor) Found(p render.Problem) {
	for _, q := range c.Problems {
		if p == q {
			return
		}
	}
	c.Problems = append(c.Problems, p)
}

// Says is a run of text as it is.
func Says(s string) []render.Run { return []render.Run{{Text: s}} }

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

// Resolve checks the links of a block: one that names nothing is a Problem and
// leads nowhere.
func (b *Block) Resolve(c *Compositor) {
	for i := range b.Slabs {
		ops := b.Slabs[i].Ops
		kept := ops[:0]
		for _, op := range ops {
			if l, is := op.(sheet.Link); is && !c.leads(l.To) {
				c.Problem(render.Problem{Kind: render.BadLink, Text: l.To})
				continue
			}
			kept = append(kept, op)
		}
		b.Slabs[i].Ops = kept
	}
}

func (c *Compositor) leads(to string) bool {
	_, known := c.Anchors[to]
	return known || strings.HasPrefix(to, "https://")
}

// Joined is the parts that say something, with sep between them.
func Joined(sep string, parts ...string) string {
	var some []string
	for _, p := range parts {
		if p != "" {
			some = append(some, p)
		}
	}
	return strings.Join(some, sep)
}

// Chunk is the slabs from i that stay together: their end and their height.
func (b Block) Chunk(i int) (end, height int) {
	for end = i; end < len(b.Slabs); end++ {
		if end > i {
			height += b.Slabs[end].Gap
		}
		height += b.Slabs[end].Height
		if !b.Slabs[end].Keep {
			return end + 1, height
		}
	}
	return end, height
}

// Measure is the width of running text: the column, or what holds 70
// characters.
func (c *Compositor) Measure() int { return min(c.Width, measureEms*c.Text.Size) }
