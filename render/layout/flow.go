package layout

import (
	"fmt"

	"benchwright/render"
	"benchwright/render/checkcode"
	"benchwright/render/compose"
	"benchwright/render/element"
	"benchwright/render/sheet"
)

// closing reports groups that hold nothing but the end, for which the foot has
// room.
func closing(groups []laid) bool {
	for _, g := range groups {
		for _, b := range g.blocks {
			if _, is := b.Content.(render.End); !is {
				return false
			}
		}
	}
	return true
}

// apart returns the room below a group.
func (p *pages) apart(g render.Group) int {
	if g.Join || p.small {
		return max(compose.LeastBoxGap, p.c.Beat)
	}
	return 2 * p.c.Beat
}

// place puts a group where the last one ended.
func (p *pages) place(section int, g laid) {
	if p.c.Anchors[g.Anchor] {
		p.c.Anchors[g.Anchor] = false // nothing leads to a second group of that name
		p.face().anchors = append(p.face().anchors, sheet.Anchor{Name: g.Anchor, Y: p.y})
	}
	if g.Bookmark != "" {
		p.face().bookmarks = append(p.face().bookmarks, sheet.Bookmark{Level: p.level(g.Group), Text: titled(g.Bookmark), Y: p.y})
	}
	p.begin(groupName(g))
	if g.reach > 0 && p.begun() && !p.headed { // a rule parts a step from what stands above it
		p.face().Ground(p.left(), p.y, p.c.Column, p.c.Rule, compose.Accent)
	}
	p.headed = g.Join
	reach := p.y + g.reach
	for i, b := range g.blocks {
		if s, is := b.Content.(render.Step); is {
			p.face().steps = append(p.face().steps, s.Number)
			p.count = max(p.count, s.Number)
		}
		if b.level {
			p.y -= g.blocks[i-1].Height()
			p.flow(section, b)
			p.y += g.blocks[i-1].Height() - b.Height()
			continue
		}
		if i > 0 {
			p.y += b.gap
		}
		if e, is := b.Content.(render.End); is && p.begun() && p.y+b.Height() > p.last {
			p.under(e, b.Element)
			continue
		}
		p.flow(section, b)
	}
	if g.reach > 0 { // a step is of one piece
		p.y = max(p.y, reach)
	}
	p.low = max(p.low, p.y)
	p.end()
}

// begin notes that a group, or what is left of it, begins on this face.
func (p *pages) begin(name string) {
	p.face().groups = append(p.face().groups, sheet.Group{Name: name, Area: p.area(0), From: len(p.face().Ops)})
}

// end notes that the group ends here, or goes on on the next face; it returns
// the group's name.
func (p *pages) end() string {
	f := p.face()
	g := &f.groups[len(f.groups)-1]
	name := g.Name
	g.H, g.To = p.y-g.Y, len(f.Ops)
	if g.To == g.From {
		f.groups = f.groups[:len(f.groups)-1]
	}
	return name
}

// area returns an area that begins here, x from the column's left, with no
// height yet.
func (p *pages) area(x int) sheet.Area {
	return sheet.Area{X: p.left() + x, Y: p.y, W: p.c.Column - x}
}

// groupName returns the name of a group on the sheet.
func groupName(g laid) string {
	for _, b := range g.blocks {
		if s, is := b.Content.(render.Step); is {
			return fmt.Sprintf("step %d", s.Number)
		}
	}
	if len(g.blocks) == 0 {
		return ""
	}
	return render.Kind(g.blocks[0].Content)
}

// level returns a group's level in the outline: stages stand below their
// section, steps below their stage.
func (p *pages) level(g render.Group) int {
	for _, e := range g.Elements {
		switch e.Content.(type) {
		case render.Stage:
			p.stage = true
			return 1
		case render.Step:
			if p.stage {
				return 2
			}
		}
	}
	return 1
}

// under puts the end into the foot, on a face that is full. It is of no column.
func (p *pages) under(e render.End, of render.Element) {
	b, y, column := element.EndBelow(e, p.c), p.y, p.column
	p.y, p.column = p.foot, 0
	from, area := len(p.face().Ops), p.area(0)
	area.W = p.c.Page
	for _, s := range b.Slabs {
		p.put(s, 0)
	}
	p.mark(checkcode.Piece{Element: of}, from, area)
	group := &p.face().groups[len(p.face().groups)-1]
	group.X, group.W = area.X, area.W
	p.y, p.column = y, column
}

// put draws a slab where the last one ended, x from the column's left.
func (p *pages) put(s compose.Slab, x int) {
	for _, op := range s.Ops {
		p.face().Add(sheet.Moved(op, p.left()+x, p.y))
	}
	p.y += s.Height
}

// mark notes that the operations from the given one draw a piece of an element,
// from the top of the area to here. Pieces in two columns of a face are one.
func (p *pages) mark(e checkcode.Piece, from int, a sheet.Area) {
	f := p.face()
	a.H = max(a.H, p.y-a.Y)
	if to := len(f.Ops); to > from {
		f.marks = append(f.marks, sheet.Mark{Ref: e.Ref, Class: e.Class, Kind: render.Kind(e.Content), Area: a, From: from, To: to})
		if n := len(f.pieces); e.From > 0 && n > 0 && f.pieces[n-1].To == e.From {
			f.pieces[n-1].To = e.To
		} else {
			f.pieces = append(f.pieces, e)
		}
	}
}

// flow places the slabs of one element, on new faces where they do not fit.
func (p *pages) flow(section int, b placedBlock) {
	from, area := len(p.face().Ops), p.area(b.x)
	area.H = b.Reach // in the margin
	first := 0       // slab on this face
	for i := 0; i < len(b.Slabs); {
		end, height := b.Chunk(i)
		gap := 0
		if i > 0 {
			gap = b.Slabs[i].Gap
		}
		if height > p.c.Tallest { // kept together it would fit nowhere
			end, height = i+1, b.Slabs[i].Height
		}
		if height > p.c.Tallest {
			p.c.Found(render.Problem{Kind: render.TooTall, Ref: b.Ref, Size: height, Room: p.c.Tallest})
		}
		if p.begun() && p.y+gap+height > p.last {
			p.mark(checkcode.Piece{Element: b.Element, From: first, To: i, Of: len(b.Slabs)}, from, area)
			group := p.end()
			p.next(section)
			p.begin(group)
			first, from, gap, area = i, len(p.face().Ops), 0, p.area(b.x)
			if b.Again != nil && i > 0 {
				p.put(*b.Again, b.x)
			}
		}
		p.y += gap
		for j, s := range b.Slabs[i:end] {
			if j > 0 {
				p.y += s.Gap
			}
			p.put(s, b.x)
		}
		i = end
	}
	p.mark(checkcode.Piece{Element: b.Element, From: first, To: len(b.Slabs), Of: len(b.Slabs)}, from, area)
}
