package render

import "strings"

// A canvas is the drawing of one slab, measured from its top left corner.
type canvas struct{ ops []Op }

func (c *canvas) add(ops ...Op) { c.ops = append(c.ops, ops...) }

// ground fills an area without being a box.
func (c *canvas) ground(x, y, w, h int, fill Color) {
	c.add(Rect{X: x, Y: y, W: w, H: h, Fill: fill, Stroke: NoColor, Role: Tint})
}

// frame strokes a box whose outer edges are the given ones.
func (c *canvas) frame(x, y, w, h, stroke, radius int, fill, color Color, role BoxRole) {
	c.add(Rect{X: x + stroke/2, Y: y + stroke/2, W: w - stroke, H: h - stroke,
		Radius: radius, Fill: fill, Stroke: color, StrokeWidth: stroke, Role: role})
}

// across draws a level line.
func (c *canvas) across(x, y, w, width int, color Color) {
	c.add(Line{X1: x, Y1: y, X2: x + w, Y2: y, Width: width, Color: color})
}

// para draws p with its first line at (x, y).
func (c *canvas) para(p para, x, y int) { c.aligned(p, x, y, 0, Left) }

// aligned draws p within width.
func (c *canvas) aligned(p para, x, y, width int, a Align) {
	h := p.hand
	for i, line := range p.lines {
		if len(line) == 0 {
			continue
		}
		base := y + i*h.lead + h.base()
		shift := 0
		if end := line[len(line)-1].x + line[len(line)-1].w; a == Right {
			shift = width - end
		} else if a == Center {
			shift = (width - end) / 2
		}
		for _, s := range line {
			c.span(s, h, x+shift+s.x, base)
		}
	}
}

func (c *canvas) span(s span, h hand, x, base int) {
	if s.code {
		pad := scaled(codePad, h.size)
		over := h.size / 6
		c.add(Rect{X: x - pad, Y: base - h.cap() - over, W: s.w + 2*pad, H: h.cap() + 2*over + h.size/12,
			Radius: h.size / 8, Fill: tint, Stroke: NoColor, Role: Tint})
	}
	c.add(Glyphs{X: x, Y: base, Width: s.w, Size: h.size, Font: s.font, Color: h.color, Text: s.text})
	if s.link != "" {
		c.add(Link{X: x, Y: base - h.cap() - h.size/6, W: s.w, H: h.cap() + h.size/3, To: s.link})
	}
}

// moved is op, dx to the right and dy down.
func moved(op Op, dx, dy int) Op {
	switch o := op.(type) {
	case Glyphs:
		o.X, o.Y = o.X+dx, o.Y+dy
		return o
	case Rect:
		o.X, o.Y = o.X+dx, o.Y+dy
		return o
	case Line:
		o.X1, o.Y1, o.X2, o.Y2 = o.X1+dx, o.Y1+dy, o.X2+dx, o.Y2+dy
		return o
	case Path:
		segs := make([]Seg, len(o.Segs))
		for i, s := range o.Segs {
			segs[i] = Seg{s.Verb, s.X1 + dx, s.Y1 + dy, s.X2 + dx, s.Y2 + dy, s.X + dx, s.Y + dy}
		}
		o.Segs = segs
		return o
	case Image:
		o.X, o.Y = o.X+dx, o.Y+dy
		return o
	case Link:
		o.X, o.Y = o.X+dx, o.Y+dy
		return o
	}
	return op
}

// A slab is a piece of a face that is never split.
type slab struct {
	gap    int // above it, where it does not come first on a face
	height int
	keep   bool // stays with the slab behind it
	ops    []Op
}

// A block is what one element draws.
type block struct {
	slabs []slab
	again *slab // the head, set again where the slabs run on to another face
	runs  bool  // may run on even in a group that is kept together
}

// one is a block of one slab, or nothing.
func one(height int, c canvas) block {
	if height == 0 {
		return block{}
	}
	return block{slabs: []slab{{height: height, ops: c.ops}}}
}

// height of a block that starts a face.
func (b block) height() int {
	h := 0
	for i, s := range b.slabs {
		if i > 0 {
			h += s.gap
		}
		h += s.height
	}
	return h
}

// width of the block that a panel's contents keep clear of its edges.
func (s style) pad() int { return 2 * s.beat }

// A compositor lays elements out to a width. It knows nothing of faces.
type compositor struct {
	style
	say      Words
	column   int             // width of a face's column
	width    int             // of what the element stands in
	tallest  int             // height of a face's body
	picture  int             // height that a picture may take
	drawn    int             // height of the tallest picture so far
	wide     bool            // the element was reported as too wide already
	ref      Ref             // of the element that is being laid out
	anchors  map[string]bool // of the deck; true until it is placed
	problems []Problem
}

// problem reports something about the element that is being laid out, once;
// what is too wide makes its words too wide as well, which is one thing.
func (c *compositor) problem(kind ProblemKind, detail string) {
	if kind == TooWide {
		if c.wide {
			return
		}
		c.wide = true
	}
	c.report(Problem{kind, c.ref, detail})
}

func (c *compositor) report(p Problem) {
	for _, q := range c.problems {
		if p == q {
			return
		}
	}
	c.problems = append(c.problems, p)
}

// says is a run of text as it is.
func says(s string) []Run { return []Run{{Text: s}} }

// A column is a canvas that is filled downward.
type column struct {
	canvas
	c     *compositor
	x, y  int // where the next thing stands
	width int
}

// text adds a paragraph, if there is any.
func (k *column) text(runs []Run, h hand) {
	if p := k.c.set(runs, h, k.width, 0); len(p.lines) > 0 {
		k.para(p, k.x, k.y)
		k.y += p.height()
	}
}

// lines adds paragraphs one under the other.
func (k *column) lines(lines [][]Run, h hand) {
	for i, runs := range lines {
		if i > 0 {
			k.y += k.c.beat / 2
		}
		k.text(runs, h)
	}
}

// resolve checks the links of a block: one that names nothing is a Problem and
// leads nowhere.
func (b *block) resolve(c *compositor) {
	for i := range b.slabs {
		ops := b.slabs[i].ops
		kept := ops[:0]
		for _, op := range ops {
			if l, is := op.(Link); is && !c.leads(l.To) {
				c.problem(BadLink, l.To)
				continue
			}
			kept = append(kept, op)
		}
		b.slabs[i].ops = kept
	}
}

func (c *compositor) leads(to string) bool {
	_, known := c.anchors[to]
	return known || strings.HasPrefix(to, "https://")
}
