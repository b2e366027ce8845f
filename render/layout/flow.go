package layout

import (
	"fmt"

	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/element"
	"benchwright/render/sheet"
)

// pages fills faces from top to bottom, one after another.
type pages struct {
	c           *compose.Compositor
	first, last int // the body of a face: from, to
	faces       []*face
	y           int // where the next thing stands
	stage       bool
	count       int // of steps on the card
}

// A face is one sheet in the making.
type face struct {
	section int
	compose.Canvas
	steps     []int // the numbers of the steps on it
	groups    []sheet.Group
	marks     []sheet.Mark
	bookmarks []sheet.Bookmark
	anchors   []sheet.Anchor
}

func (p *pages) face() *face { return p.faces[len(p.faces)-1] }

func (p *pages) next(section int) {
	p.faces = append(p.faces, &face{section: section})
	p.y = p.first
}

// section lays out the groups of one section, from a new face. A group that
// must not be last on its face waits for the one behind it.
func (p *pages) section(i int, s render.Section) {
	p.next(i)
	p.stage = false
	p.face().bookmarks = append(p.face().bookmarks, sheet.Bookmark{Level: 0, Text: titled(s.Name), Y: p.first})
	groups := make([]laid, len(s.Groups))
	for j, g := range s.Groups {
		groups[j] = p.lay(g)
	}
	for from := 0; from < len(groups); {
		to, need := from, groups[from].needs
		for groups[to].Join && to+1 < len(groups) {
			need += groups[to].height - groups[to].needs
			to++
			need += p.apart(groups[to-1].Group) + groups[to].needs
		}
		if g := groups[to]; g.Breaks && need > p.c.Tallest {
			need -= g.needs - g.first()
		}
		if over := need - p.c.Tallest; over > 0 && to > from && !groups[to].Breaks {
			if t := p.fit(groups[to].Group, groups[to].height-over); groups[to].height-t.height >= over {
				t.needs = t.height
				need -= groups[to].height - t.height
				groups[to] = t
			}
		}
		if need > p.c.Tallest && to > from {
			p.c.Found(render.Problem{Kind: render.TooTall, Ref: about(groups[to].Group), Size: need, Room: p.c.Tallest})
		}
		if p.y > p.first && p.y+need > p.last && !closing(groups[from:to+1]) {
			p.next(i)
		}
		for _, g := range groups[from : to+1] {
			p.place(i, g)
			p.y += p.apart(g.Group)
		}
		from = to + 1
	}
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
		return 3 * p.c.Beat
	}
	return 4 * p.c.Beat
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
	for i, b := range g.blocks {
		if s, is := b.Content.(render.Step); is {
			p.face().steps = append(p.face().steps, s.Number)
			p.count = max(p.count, s.Number)
		}
		if i > 0 {
			p.y += b.gap
		}
		if e, is := b.Content.(render.End); is && p.y > p.first && p.y+b.Height() > p.last {
			p.under(e, b.Element)
			continue
		}
		p.flow(section, b)
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
	return sheet.Area{X: p.c.Side + x, Y: p.y, W: p.c.Column - x}
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

// under puts the end into the foot's first line, on a face that is full.
func (p *pages) under(e render.End, of render.Element) {
	b, y := element.EndBelow(e, p.c), p.y
	p.y = p.last + p.c.Beat
	from, area := len(p.face().Ops), p.area(0)
	for _, s := range b.Slabs {
		p.put(s, 0)
	}
	p.mark(of, from, area)
	p.y = y
}

// put draws a slab where the last one ended, x from the column's left.
func (p *pages) put(s compose.Slab, x int) {
	for _, op := range s.Ops {
		p.face().Add(sheet.Moved(op, p.c.Side+x, p.y))
	}
	p.y += s.Height
}

// mark notes that the operations from the given one draw an element, from the
// top of the area to here.
func (p *pages) mark(e render.Element, from int, a sheet.Area) {
	a.H = p.y - a.Y
	if to := len(p.face().Ops); to > from {
		p.face().marks = append(p.face().marks, sheet.Mark{Ref: e.Ref, Class: e.Class, Kind: render.Kind(e.Content), Area: a, From: from, To: to})
	}
}

// flow places the slabs of one element, on new faces where they do not fit.
func (p *pages) flow(section int, b placedBlock) {
	from, area := len(p.face().Ops), p.area(b.x)
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
		if p.y > p.first && p.y+gap+height > p.last {
			p.mark(b.Element, from, area)
			group := p.end()
			p.next(section)
			p.begin(group)
			from, gap, area = 0, 0, p.area(b.x)
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
