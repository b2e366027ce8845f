package render

// pages fills faces from top to bottom, one after another.
type pages struct {
	c           *compositor
	first, last int // the body of a face: from, to
	faces       []*face
	y           int // where the next thing stands
	stage       bool
	count       int // of steps on the card
}

// A face is one sheet in the making.
type face struct {
	section int
	canvas
	steps     []int // the numbers of the steps on it
	marks     []Mark
	bookmarks []Bookmark
	anchors   []Anchor
}

func (p *pages) face() *face { return p.faces[len(p.faces)-1] }

func (p *pages) next(section int) {
	p.faces = append(p.faces, &face{section: section})
	p.y = p.first
}

// section lays out the groups of one section, from a new face. A group that
// must not be last on its face waits for the one behind it.
func (p *pages) section(i int, s Section) {
	p.next(i)
	p.stage = false
	p.face().bookmarks = append(p.face().bookmarks, Bookmark{Level: 0, Text: titled(s.Name), Y: p.first})
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
		if g := groups[to]; g.Breaks && need > p.c.tallest {
			need -= g.needs - g.first()
		}
		if over := need - p.c.tallest; over > 0 && to > from && !groups[to].Breaks {
			if t := p.fit(groups[to].Group, groups[to].height-over); groups[to].height-t.height >= over {
				t.needs = t.height
				need -= groups[to].height - t.height
				groups[to] = t
			}
		}
		if need > p.c.tallest && to > from {
			p.c.report(Problem{TooTall, groups[to].about(), lengths(need, p.c.tallest)})
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
			if _, is := b.Content.(End); !is {
				return false
			}
		}
	}
	return true
}

// apart is the room below a group.
func (p *pages) apart(g Group) int {
	if g.Join {
		return 3 * p.c.beat
	}
	return 4 * p.c.beat
}

// place puts a group where the last one ended.
func (p *pages) place(section int, g laid) {
	if p.c.anchors[g.Anchor] {
		p.c.anchors[g.Anchor] = false // nothing leads to a second group of that name
		p.face().anchors = append(p.face().anchors, Anchor{g.Anchor, p.y})
	}
	if g.Bookmark != "" {
		p.face().bookmarks = append(p.face().bookmarks, Bookmark{Level: p.level(g.Group), Text: titled(g.Bookmark), Y: p.y})
	}
	for i, b := range g.blocks {
		if s, is := b.Content.(Step); is {
			p.face().steps = append(p.face().steps, s.Number)
			p.count = max(p.count, s.Number)
		}
		if i > 0 {
			p.y += b.gap
		}
		if e, is := b.Content.(End); is && p.y > p.first && p.y+b.height() > p.last {
			p.under(e, b.Element)
			continue
		}
		p.flow(section, b)
	}
}

// level is a group's place in the outline: stages stand below their section,
// steps below their stage.
func (p *pages) level(g Group) int {
	for _, e := range g.Elements {
		switch e.Content.(type) {
		case Stage:
			p.stage = true
			return 1
		case Step:
			if p.stage {
				return 2
			}
		}
	}
	return 1
}

// under puts the end into the foot's first line, on a face that is full.
func (p *pages) under(e End, of Element) {
	b, y := e.below(p.c), p.y
	p.y = p.last + p.c.beat
	from := len(p.face().ops)
	for _, s := range b.slabs {
		p.put(s, 0)
	}
	p.mark(of, from)
	p.y = y
}

// put draws a slab where the last one ended, x from the column's left.
func (p *pages) put(s slab, x int) {
	for _, op := range s.ops {
		p.face().add(moved(op, p.c.side+x, p.y))
	}
	p.y += s.height
}

// mark notes that the operations from the given one draw an element.
func (p *pages) mark(e Element, from int) {
	if to := len(p.face().ops); to > from {
		p.face().marks = append(p.face().marks, Mark{e.Ref, e.Class, from, to})
	}
}

// flow places the slabs of one element, on new faces where they do not fit.
func (p *pages) flow(section int, b placedBlock) {
	from := len(p.face().ops)
	for i := 0; i < len(b.slabs); {
		end, height := b.chunk(i)
		gap := 0
		if i > 0 {
			gap = b.slabs[i].gap
		}
		if height > p.c.tallest { // kept together it would fit nowhere
			end, height = i+1, b.slabs[i].height
		}
		if height > p.c.tallest {
			p.c.report(Problem{TooTall, b.Ref, lengths(height, p.c.tallest)})
		}
		if p.y > p.first && p.y+gap+height > p.last {
			p.mark(b.Element, from)
			p.next(section)
			from, gap = 0, 0
			if b.again != nil && i > 0 {
				p.put(*b.again, b.x)
			}
		}
		p.y += gap
		for j, s := range b.slabs[i:end] {
			if j > 0 {
				p.y += s.gap
			}
			p.put(s, b.x)
		}
		i = end
	}
	p.mark(b.Element, from)
}
