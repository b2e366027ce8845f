package layout

import (
	"slices"

	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/element"
)

// A laid group is measured but not yet placed.
type laid struct {
	render.Group
	blocks  []placedBlock
	runs    bool // its elements may all run on
	height  int  // of all, where it starts a face
	needs   int  // to begin it: all of it, or what a group that breaks must show
	reach   int  // how far down a step's margin reaches
	picture int  // height that a picture of it may take
}

type placedBlock struct {
	compose.Block
	render.Element
	x     int  // from the column's left
	gap   int  // above, where it is not the first of its group
	level bool // it stands at the height of the one before it, beside it
}

// lay measures a group. What follows a step's head stands clear of the column
// in which the numbers hang.
func (p *pages) lay(g render.Group) laid {
	c := p.c
	if g.Wide && c.Columns > 1 && c.Column < c.Page { // it is laid out where it is placed
		return laid{Group: g}
	}
	l := p.fit(g, c.Tallest)
	tall := l.height > c.Tallest
	if tall && c.Columns > 1 && looked(g) && l.runs { // a table of more rows than a column takes the width
		g.Wide = true
		return laid{Group: g}
	}
	if tall && !l.Breaks && !l.runs {
		c.Found(p.tooTall(l, l.height))
	}
	l.Breaks = l.Breaks || tall
	l.needs = l.height
	if l.Breaks && (tall || !looked(g)) {
		l.needs = max(l.first(), l.reach)
	}
	return l
}

// tooTall returns the problem of a group that is too tall, with the tallest
// part of it.
func (p *pages) tooTall(l laid, height int) render.Problem {
	out := render.Problem{Kind: render.TooTall, Ref: about(l.Group), Size: height, Room: p.c.Tallest}
	for _, b := range l.blocks {
		if h := b.Height(); h > out.Part {
			out.Part, out.Text = h, render.Kind(b.Content)
		}
	}
	return out
}

// looked reports a group that is looked up: a table that one face holds is not
// parted, for it is read across and down.
func looked(g render.Group) bool {
	return slices.ContainsFunc(g.Elements, func(e render.Element) bool {
		_, is := e.Content.(render.Table)
		return is
	})
}

// lead reports a line that is read before what stands below it.
func lead(c render.Content) bool {
	t, is := c.(render.Text)
	return is && t.Role == render.Lead
}

// fit measures a group for a room: where it is too tall its pictures give way
// first, then the air between its things.
func (p *pages) fit(g render.Group, room int) laid {
	c := p.c
	c.Picture, c.Drawn = c.Tallest*2/5, 0
	l := p.measure(g)
	if over, n := l.height-room, pictures(g); over > 0 && n > 0 {
		c.Picture = max(c.Tallest/5, c.Drawn-over/n-c.Beat)
		l = p.measure(g)
	}
	if l.height > room && !l.Breaks && !l.runs {
		if t := p.tight(l, 9); t.height <= room {
			l = t
		}
	}
	return l
}

// first returns how much of a group that breaks must stand where it begins.
func (l laid) first() int {
	if len(l.blocks) == 0 {
		return l.height
	}
	_, height := l.blocks[0].Chunk(0)
	if lead(l.blocks[0].Content) && len(l.blocks) > 1 { // it leads nowhere alone
		_, next := l.blocks[1].Chunk(0)
		height += l.blocks[1].gap + next
	}
	return height
}

// tight measures a group with so many twelfths of the air between its things. The
// type is never made smaller.
func (p *pages) tight(l laid, twelfths int) laid {
	beat := p.c.Beat
	defer func() { p.c.Beat = beat }()
	p.c.Beat, p.c.Picture = beat*twelfths/12, l.picture
	t := p.measure(l.Group)
	t.needs = t.height
	return t
}

// about returns the reference for a problem with the whole group.
func about(g render.Group) render.Ref {
	if g.Ref == 0 && len(g.Elements) > 0 {
		return g.Elements[0].Ref
	}
	return g.Ref
}

func pictures(g render.Group) int {
	n := 0
	for _, e := range g.Elements {
		if _, is := e.Content.(render.Picture); is {
			n++
		}
	}
	return n
}

// measure lays the elements of a group out, one under the other.
func (p *pages) measure(g render.Group) laid {
	c := p.c
	l := laid{Group: g, runs: true, picture: c.Picture}
	x := 0
	var before render.Content
	for i := 0; i < len(g.Elements); i++ {
		e := g.Elements[i]
		if e.Content == nil {
			continue
		}
		gap := between(c, before, e.Content)
		if i+1 < len(g.Elements) && !g.Breaks {
			if pair, height, ok := p.beside(e, g.Elements[i+1], x, gap); ok {
				if len(l.blocks) > 0 {
					l.height += gap
				}
				l.blocks = append(l.blocks, pair[:]...)
				l.height += height
				before = g.Elements[i+1].Content
				l.runs = false
				i++
				continue
			}
		}
		c.Width = c.Column - x
		b := p.block(e)
		if len(b.Slabs) == 0 {
			continue
		}
		l.blocks = append(l.blocks, placedBlock{Block: b, Element: e, x: x, gap: gap})
		if len(l.blocks) > 1 {
			l.height += gap
		}
		if b.Reach > 0 {
			l.reach = max(l.reach, l.height+b.Reach)
		}
		l.height += b.Height()
		l.runs = l.runs && b.Runs
		before = e.Content
		if _, is := e.Content.(render.Step); is {
			x = c.Hang
		}
	}
	l.height = max(l.height, l.reach)
	c.Ref, c.Width = 0, c.Column
	return l
}

// block lays out one element, to the compositor's width.
func (p *pages) block(e render.Element) compose.Block {
	c := p.c
	c.Ref, c.Wide = e.Ref, false
	b := element.Lay(c, e.Content)
	b.Resolve(c)
	return b
}

// between returns the room between two elements of a group.
func between(c *compose.Compositor, before, after render.Content) int {
	switch after := after.(type) {
	case render.Tools, render.List:
		return c.Beat / 2
	case render.Text:
		if _, step := before.(render.Step); step {
			return 0
		}
		if _, text := before.(render.Text); text || after.Role != render.Instruction {
			return c.Beat / 2
		}
	}
	return max(compose.LeastBoxGap, c.Beat) // two panels are two boxes
}
