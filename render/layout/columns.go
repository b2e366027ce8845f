package layout

import (
	"slices"

	"benchwright/render"
	"benchwright/render/checkcode"
	"benchwright/render/compose"
	"benchwright/render/sheet"
)

// pages fills faces from top to bottom, one column after the other.
type pages struct {
	c           *compose.Compositor
	first, last int // the body of a face: from, to
	foot        int // where the last line of the foot stands
	faces       []*face
	column      int              // the column in hand
	y           int              // where the next thing stands in it
	low         int              // the lowest that anything stands on the face in hand
	loose       []render.Problem // steps before which much of a column is left
	stage       bool
	small       bool // the section in hand is only lists in small type
	headed      bool // the last group was the heading of what follows
	count       int  // of steps on the card
}

// A face is one sheet in the making.
type face struct {
	section int
	compose.Canvas
	top       int  // where its columns begin
	short     bool // its columns end where what stands in them does
	rules     []sheet.Line
	steps     []int // the numbers of the steps on it
	groups    []sheet.Group
	marks     []sheet.Mark
	pieces    []checkcode.Piece
	bookmarks []sheet.Bookmark
	anchors   []sheet.Anchor
}

func (p *pages) face() *face { return p.faces[len(p.faces)-1] }

// left returns where the current column begins.
func (p *pages) left() int { return p.c.Side + p.column*(p.c.Column+p.c.Gutter) }

// divide sets how many columns stand beside each other from now on.
func (p *pages) divide(columns int) {
	c := p.c
	c.Columns, c.Column = columns, (c.Page-(columns-1)*c.Gutter)/columns
	c.Width = c.Column
}

// next goes to the top of the next column.
func (p *pages) next(section int) {
	if len(p.faces) > 0 && p.column+1 < p.c.Columns {
		p.column++
		p.low, p.y = max(p.low, p.y), p.face().top
		return
	}
	p.turn(section)
}

// turn goes to a new face.
func (p *pages) turn(section int) {
	p.close()
	p.faces = append(p.faces, &face{section: section, top: p.first})
	p.column, p.y, p.low = 0, p.first, p.first
}

// restart begins the columns anew below all that stands on the face.
func (p *pages) restart(top int) {
	p.rule(p.low)
	p.face().top, p.face().short = top, false
	p.column, p.y = 0, top
}

// close ends the columns of the face in hand.
func (p *pages) close() {
	switch {
	case len(p.faces) == 0:
	case p.face().short:
		p.rule(p.low)
	default:
		p.rule(p.last)
	}
}

// rule parts the columns of the face in hand down to a height, those in which
// something stands.
func (p *pages) rule(bottom int) {
	c := p.c
	for j := 1; j <= p.column; j++ {
		x := c.Side + j*(c.Column+c.Gutter) - c.Gutter/2
		p.face().rules = append(p.face().rules, sheet.Line{X1: x, Y1: p.face().top, X2: x, Y2: bottom, Width: c.Hair, Color: compose.Hairline})
	}
}

// begun reports whether something stands in the column already.
func (p *pages) begun() bool { return p.y > p.face().top }

// spread places groups over all columns at the top of a face; the columns of what
// follows begin below them.
func (p *pages) spread(i int, groups []laid) {
	columns := p.c.Columns
	if p.low > p.face().top {
		p.turn(i)
	}
	p.divide(1)
	for _, g := range groups {
		p.place(i, p.lay(g.Group))
		p.y += p.apart(g.Group)
	}
	p.restart(p.y)
	p.divide(columns)
}

// holds reports whether the columns of one face, which begin at a height, hold all of
// some groups from a place in them on. For the end there is always room.
func (p *pages) holds(top, column, y int, groups []laid) bool {
	for len(groups) > 0 && !closing(groups) {
		n, need := p.run(groups)
		if y > top && y+need > p.last {
			column, y = column+1, top
		}
		for _, g := range groups[:n] {
			if g.Wide || column >= p.c.Columns || y+g.height > p.last {
				return false
			}
			y += g.height + p.apart(g.Group)
		}
		groups = groups[n:]
	}
	return true
}

// balanced returns where the columns of groups end that are as tall as each other,
// the end of the body where they take more than this face.
func (p *pages) balanced(i int, groups []laid) int {
	tall := 0
	for _, g := range groups {
		tall += g.height
	}
	tall /= p.c.Columns
	for _, g := range groups {
		if !g.Breaks { // it is not parted
			tall = max(tall, g.height)
		}
	}
	for last := p.y + tall; last < p.last; last += p.c.Beat {
		if p.takes(i, groups, last) == 1 {
			return last
		}
	}
	return p.last
}

// takes is how many faces groups take from here on whose columns end at a height.
func (p *pages) takes(i int, groups []laid, last int) int {
	c := *p.c
	t := pages{c: &c, first: p.first, last: last, foot: p.foot, faces: []*face{{top: p.face().top}}, y: p.y, low: p.low, small: p.small}
	c.Anchors, c.Problems = nil, nil
	t.fill(i, slices.Clone(groups))
	return len(t.faces)
}
