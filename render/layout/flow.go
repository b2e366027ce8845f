package layout

import (
	"fmt"

	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/element"
	"benchwright/render/sheet"
)

// pages fills faces from top to bottom, one column after the other.
type pages struct {
	c           *compose.Compositor
	first, last int // the body of a face: from, to
	faces       []*face
	column      int  // the column in hand
	wide        bool // what is placed takes all columns
	y           int  // where the next thing stands in it
	stage       bool
	count       int // of steps on the card
}

// A face is one sheet in the making.
type face struct {
	section int
	compose.Canvas
	top       int   // where its columns begin
	steps     []int // the numbers of the steps on it
	groups    []sheet.Group
	marks     []sheet.Mark
	bookmarks []sheet.Bookmark
	anchors   []sheet.Anchor
}

func (p *pages) face() *face { return p.faces[len(p.faces)-1] }

// left is where the column in hand begins.
func (p *pages) left() int { return p.c.Side + p.column*(p.c.Column+p.c.Gutter) }

// next goes to the top of the next column.
func (p *pages) next(section int) {
	if len(p.faces) > 0 && p.column+1 < p.c.Columns {
		p.column++
		p.y = p.face().top
		return
	}
	p.turn(section)
}

// turn goes to a new face.
func (p *pages) turn(section int) {
	p.faces = append(p.faces, &face{section: section, top: p.first})
	p.column, p.y = 0, p.first
}

// begun says whether something stands in the column already.
func (p *pages) begun() bool { return p.y > p.face().top }

// section lays out the groups of one section. It begins on a new face, but for
// one that follows on, and one that what is left of the last face holds whole. A group that must not be last in its column waits for the one behind
// it.
func (p *pages) section(i int, s render.Section) {
	groups := make([]laid, len(s.Groups))
	for j, g := range s.Groups {
		groups[j] = p.lay(g)
	}
	switch {
	case len(p.faces) == 0:
		p.turn(i)
	case s.Follows:
		p.y += p.c.Beat
	case p.holds(p.column+1, p.face().top, groups):
		p.next(i)
	case p.c.Columns == 1 && p.holds(0, p.y+p.c.Beat, groups):
		p.y += p.c.Beat
	default:
		p.turn(i)
	}
	p.stage = false
	p.face().bookmarks = append(p.face().bookmarks, sheet.Bookmark{Level: 0, Text: titled(s.Name), Y: p.y})
	for from := 0; from < len(groups); {
		to, need := from, groups[from].needs
		for groups[to].Join && to+1 < len(groups) {
			need += groups[to].height - groups[to].needs
			to++
			need += p.apart(groups[to-1].Group) + groups[to].needs
		}
		if g := groups[to]; g.Breaks && need > p.c.Tallest {
			need -= g.needs - max(g.first(), g.reach)
		}
		if over := need - p.c.Tallest; over > 0 && to > from && !groups[to].Breaks {
			if t := p.fit(groups[to].Group, groups[to].height-over); groups[to].height-t.height >= over {
				t.needs = t.height
				need -= groups[to].height - t.height
				groups[to] = t
			}
		}
		if groups[to].Wide && p.c.Columns > 1 {
			p.spread(i, groups[from:to+1])
			from = to + 1
			continue
		}
		if need > p.c.Tallest && to > from {
			p.c.Found(p.tooTall(groups[to], need))
		}
		if p.begun() && p.y+need > p.last && !closing(groups[from:to+1]) {
			if left := p.last - p.y; !p.squeeze(groups[from:to+1], need-left) {
				if left > (p.last-p.face().top)/2 && groups[to].reach > 0 {
					loose := p.tooTall(groups[to], need)
					loose.Kind, loose.Room = render.Loose, left
					p.c.Found(loose)
				}
				p.next(i)
			}
		}
		for _, g := range groups[from : to+1] {
			p.place(i, g)
			p.y += p.apart(g.Group)
		}
		from = to + 1
	}
}

// squeeze takes air out of groups that are a little too tall for what is left of
// a column, and says whether that was enough.
func (p *pages) squeeze(groups []laid, over int) bool {
	less := make([]laid, len(groups))
	for i, g := range groups {
		if g.Breaks {
			return false
		}
		less[i] = p.tight(g.Group)
		over -= g.height - less[i].height
	}
	if over > 0 {
		return false
	}
	for i := range groups {
		less[i].needs = less[i].height
		groups[i] = less[i]
	}
	return true
}

// spread places groups over all columns at the top of a face; the columns of what
// follows begin below them.
func (p *pages) spread(i int, groups []laid) {
	c, column := p.c, p.c.Column
	if p.column > 0 || p.begun() {
		p.turn(i)
	}
	c.Column, c.Width = c.Page, c.Page
	for _, g := range groups {
		p.place(i, p.lay(g.Group))
		p.y += p.apart(g.Group)
	}
	c.Column, c.Width = column, column
	p.face().top = p.y
}

// holds says whether the face in hand holds all of some groups, from a place in
// one of its columns on.
func (p *pages) holds(column, y int, groups []laid) bool {
	for _, g := range groups {
		if y > p.face().top && y+g.height > p.last {
			column, y = column+1, p.face().top
		}
		if column >= p.c.Columns || y+g.height > p.last {
			return false
		}
		y += g.height + p.apart(g.Group)
	}
	return column < p.c.Columns
}

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

// apart is the room below a group.
func (p *pages) apart(g render.Group) int {
	if g.Join {
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
	reach := p.y + g.reach
	for i, b := range g.blocks {
		if s, is := b.Content.(render.Step); is {
			p.face().steps = append(p.face().steps, s.Number)
			p.count = max(p.count, s.Number)
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

// area is what begins here, x from the column's left, with no height yet.
func (p *pages) area(x int) sheet.Area {
	return sheet.Area{X: p.left() + x, Y: p.y, W: p.c.Column - x}
}

// groupName is what a group is called on the sheet.
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

// level is a group's place in the outline: stages stand below their section,
// steps below their stage.
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

// under puts the end into the foot, on a face that is full.
func (p *pages) under(e render.End, of render.Element) {
	b, y, column := element.EndBelow(e, p.c), p.y, p.column
	p.y, p.column = p.last+p.c.Beat, 0
	from, area := len(p.face().Ops), p.area(0)
	for _, s := range b.Slabs {
		p.put(s, 0)
	}
	p.mark(of, from, area)
	p.y, p.column = y, column
}

// put draws a slab where the last one ended, x from the column's left.
func (p *pages) put(s compose.Slab, x int) {
	for _, op := range s.Ops {
		p.face().Add(sheet.Moved(op, p.left()+x, p.y))
	}
	p.y += s.Height
}

// mark notes that the operations from the given one draw an element, from the
// top of the area to here.
func (p *pages) mark(e render.Element, from int, a sheet.Area) {
	a.H = max(a.H, p.y-a.Y)
	if to := len(p.face().Ops); to > from {
		p.face().marks = append(p.face().marks, sheet.Mark{Ref: e.Ref, Class: e.Class, Kind: render.Kind(e.Content), Area: a, From: from, To: to})
	}
}

// flow places the slabs of one element, on new faces where they do not fit.
func (p *pages) flow(section int, b placedBlock) {
	from, area := len(p.face().Ops), p.area(b.x)
	area.H = b.Reach // in the margin
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
			p.mark(b.Element, from, area)
			group := p.end()
			p.next(section)
			p.begin(group)
			from, gap, area = len(p.face().Ops), 0, p.area(b.x)
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
	p.mark(b.Element, from, area)
}
