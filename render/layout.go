package render

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Layout lays a deck out on faces of the paper that o names. It always gives
// sheets; what could not be done well is in the problems, each with the
// caller's reference. The same deck gives the same sheets.
func Layout(d Deck, o Options) ([]Sheet, []Problem) {
	c := &compositor{style: newStyle(o), say: d.Words.withDefaults(), anchors: map[string]bool{}}
	c.column = o.Paper.Width - 2*c.side
	c.width = c.column
	for _, s := range d.Sections {
		for _, g := range s.Groups {
			if g.Anchor != "" {
				c.anchors[g.Anchor] = true
			}
		}
	}
	p := &pages{c: c}
	var scratch canvas
	p.first = c.head(&scratch, d.Running, place{longest(d), 888, 888}) + c.pad()
	square, _ := CodePlace(o)
	p.last = square.Y - 3*c.beat/2
	c.tallest = p.last - p.first
	for i, s := range d.Sections {
		p.section(i, s)
	}
	return p.sheets(d, o), c.problems
}

// longest is the longest name of a part that a head may have to hold.
func longest(d Deck) string {
	name := ""
	for _, s := range d.Sections {
		if part := fmt.Sprintf(d.Words.withDefaults().Part, s.Name, 88, 88); len(part) > len(name) {
			name = part
		}
	}
	if steps := fmt.Sprintf(d.Words.withDefaults().Steps, 888, 888, 888); len(steps) > len(name) {
		name = steps
	}
	return name
}

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

// A laid group is measured but not yet placed.
type laid struct {
	Group
	blocks []placedBlock
	runs   bool // its elements may all run on
	height int  // of all, where it starts a face
	needs  int  // to begin it: all of it, or what a group that breaks must show
}

type placedBlock struct {
	block
	Element
	x   int // from the column's left
	gap int // above, where it is not the first of its group
}

// lay measures a group. What follows a step's head stands clear of the column
// in which the numbers hang.
func (p *pages) lay(g Group) laid {
	c := p.c
	l := p.fit(g, c.tallest)
	tall := l.height > c.tallest
	if tall && !l.Breaks && !l.runs {
		c.report(Problem{TooTall, g.about(), lengths(l.height, c.tallest)})
	}
	l.Breaks = l.Breaks || tall
	l.needs = l.height
	if l.Breaks && (tall || !looked(g)) {
		l.needs = l.first()
	}
	return l
}

// looked reports a group that is looked up: a table that one face holds is not
// parted, for it is read across and down.
func looked(g Group) bool {
	return slices.ContainsFunc(g.Elements, func(e Element) bool {
		_, is := e.Content.(Table)
		return is
	})
}

// lead reports a line that is read before what stands below it.
func lead(c Content) bool {
	t, is := c.(Text)
	return is && t.Role == Lead
}

// fit measures a group for a room: where it is too tall its pictures give way
// first, then the air between its things.
func (p *pages) fit(g Group, room int) laid {
	c := p.c
	c.picture, c.drawn = c.tallest*2/5, 0
	l := p.measure(g)
	if over, n := l.height-room, pictures(g); over > 0 && n > 0 {
		c.picture = max(c.tallest/5, c.drawn-over/n-c.beat)
		l = p.measure(g)
	}
	if l.height > room && !l.Breaks && !l.runs {
		if t := p.tight(g); t.height <= room {
			l = t
		}
	}
	return l
}

// first is what a group that breaks must show where it begins.
func (l laid) first() int {
	if len(l.blocks) == 0 {
		return l.height
	}
	_, height := l.blocks[0].chunk(0)
	if lead(l.blocks[0].Content) && len(l.blocks) > 1 { // it leads nowhere alone
		_, next := l.blocks[1].chunk(0)
		height += l.blocks[1].gap + next
	}
	return height
}

// tight measures a group with less air between its things. The type is never
// made smaller.
func (p *pages) tight(g Group) laid {
	beat := p.c.beat
	defer func() { p.c.beat = beat }()
	p.c.beat = max(beat*3/4, leastBoxGap/2) // two beats part two boxes
	return p.measure(g)
}

// about is the reference for a problem with the whole group.
func (g Group) about() Ref {
	if g.Ref == 0 && len(g.Elements) > 0 {
		return g.Elements[0].Ref
	}
	return g.Ref
}

func pictures(g Group) int {
	n := 0
	for _, e := range g.Elements {
		if _, is := e.Content.(Picture); is {
			n++
		}
	}
	return n
}

// measure lays the elements of a group out, one under the other.
func (p *pages) measure(g Group) laid {
	c := p.c
	l := laid{Group: g, runs: true}
	x := 0
	var before Content
	for _, e := range g.Elements {
		if e.Content == nil {
			continue
		}
		c.ref, c.width, c.wide = e.Ref, c.column-x, false
		b := e.Content.lay(c)
		if len(b.slabs) == 0 {
			continue
		}
		b.resolve(c)
		gap := c.between(before, e.Content)
		l.blocks = append(l.blocks, placedBlock{b, e, x, gap})
		if len(l.blocks) > 1 {
			l.height += gap
		}
		l.height += b.height()
		l.runs = l.runs && b.runs
		before = e.Content
		if _, is := e.Content.(Step); is {
			x = c.hang
		}
	}
	c.ref, c.width = 0, c.column
	return l
}

// lengths says how much there is of how much room.
func lengths(is, room int) string {
	return fmt.Sprintf("%d mm of %d mm", (is+999)/1000, room/1000)
}

// between is the room between two elements of a group.
func (c *compositor) between(before, after Content) int {
	switch after.(type) {
	case Text, List:
		switch before.(type) {
		case Step, Text, List:
			return c.beat
		}
	}
	return 2 * c.beat
}

// chunk is the slabs from i that stay together: their end and their height.
func (b block) chunk(i int) (end, height int) {
	for end = i; end < len(b.slabs); end++ {
		if end > i {
			height += b.slabs[end].gap
		}
		height += b.slabs[end].height
		if !b.slabs[end].keep {
			return end + 1, height
		}
	}
	return end, height
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

// sheets adds what every face repeats, now that their number is known.
func (p *pages) sheets(d Deck, o Options) []Sheet {
	c := p.c
	c.ref, c.width = 0, c.column
	counts := make([]int, len(d.Sections))
	for _, f := range p.faces {
		counts[f.section]++
	}
	faceOf := map[string]int{}
	for i, f := range p.faces {
		for _, a := range f.anchors {
			faceOf[a.Name] = i + 1
		}
	}
	part := make([]int, len(d.Sections))
	all := make([]Sheet, len(p.faces))
	for i, f := range p.faces {
		part[f.section]++
		name := d.Sections[f.section].Name
		switch n := len(f.steps); {
		case n == 1:
			name = fmt.Sprintf(c.say.Step, f.steps[0], p.count)
		case n > 1:
			name = fmt.Sprintf(c.say.Steps, f.steps[0], f.steps[n-1], p.count)
		case counts[f.section] > 1:
			name = fmt.Sprintf(c.say.Part, name, part[f.section], counts[f.section])
		}
		at := place{strings.TrimSpace(name), i + 1, len(p.faces)}
		var k canvas
		c.head(&k, d.Running, at)
		n := len(k.ops)
		for j := range f.marks {
			f.marks[j].From += n
			f.marks[j].To += n
		}
		number(f.ops, faceOf)
		k.add(f.ops...)
		c.foot(&k, d.Running, at, o)
		all[i] = Sheet{Width: o.Paper.Width, Height: o.Paper.Height, Name: at.part,
			Bookmarks: f.bookmarks, Anchors: f.anchors, Ops: k.ops, Marks: f.marks}
	}
	return all
}

// titled is a bookmark's text with nothing that a PDF string cannot hold.
func titled(s string) string {
	return strings.Map(func(r rune) rune {
		if r = stands(r); r > 0xFFFF {
			return -1
		}
		return r
	}, strings.ToValidUTF8(s, ""))
}

// number puts the numbers of faces in the place of FaceOf. The link of a text
// is the operation behind it.
func number(ops []Op, faceOf map[string]int) {
	for i, op := range ops {
		g, is := op.(Glyphs)
		if !is || !strings.Contains(g.Text, FaceOf) || i+1 == len(ops) {
			continue
		}
		if l, is := ops[i+1].(Link); is {
			g.Text = strings.ReplaceAll(g.Text, FaceOf, strconv.Itoa(faceOf[l.To]))
			g.Width = textWidth(g.Font, g.Size, g.Text)
			ops[i] = g
		}
	}
}
