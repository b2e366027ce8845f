package layout

import (
	"benchwright/render"
	"benchwright/render/sheet"
)

// section lays out the groups of one section. It begins on a new face, but for one
// that follows on, and where more than a third of the last face is left or what is
// left holds it whole.
func (p *pages) section(i int, s render.Section, columns int) {
	c, before := p.c, p.c.Columns
	p.divide(columns)
	groups := make([]laid, len(s.Groups))
	for j, g := range s.Groups {
		groups[j] = p.lay(g)
	}
	below := p.low + 2*c.Beat
	holds := len(p.faces) > 0 && (p.last-below > (p.last-p.first)/3 || p.holds(below, 0, below, groups))
	p.divide(before) // for the rules of what stands there already
	switch {
	case len(p.faces) > 0 && s.Follows && columns == before:
		p.y += c.Beat
	case holds:
		p.restart(below)
	default:
		p.turn(i)
	}
	p.divide(columns)
	p.stage = false
	p.face().bookmarks = append(p.face().bookmarks, sheet.Bookmark{Level: 0, Text: titled(s.Name), Y: p.y})
	last := p.last
	switch {
	case s.Small:
		p.small = true
		if whole := p.whole(s.Groups); p.takes(i, whole, p.last) <= p.takes(i, groups, p.last) {
			groups = whole
		}
		if columns > 1 {
			p.last = p.balanced(i, groups)
		}
		p.fill(i, groups)
		p.last, p.small = last, false
	case s.Follows:
		p.lookUp(i, groups)
	default:
		p.fill(i, groups)
	}
	p.face().short = p.face().short || s.Small
}

// whole lays lists out each for itself, so that none of them is parted.
func (p *pages) whole(groups []render.Group) []laid {
	var out []laid
	for _, g := range groups {
		for _, e := range g.Elements {
			out = append(out, p.lay(render.Group{Ref: g.Ref, Elements: []render.Element{e}}))
		}
	}
	return out
}

// lookUp places tables. Those of one step stand on one face, wherever one holds
// them, and those on the last face in columns as tall as each other.
func (p *pages) lookUp(i int, groups []laid) {
	for len(groups) > 0 {
		n := 1
		for n < len(groups) && (groups[n-1].With || groups[n-1].Join) {
			n++
		}
		face := p.face()
		if !p.holds(face.top, p.column, p.y, groups[:n]) && p.holds(p.first, 0, p.first, groups[:n]) {
			p.turn(i)
		}
		if p.column == 0 && p.y == p.first && p.c.Columns > 1 && p.holds(p.first, 0, p.first, groups) {
			end := len(groups)
			for end > 0 && closing(groups[end-1:]) {
				end--
			}
			last := p.last
			p.last = p.balanced(i, groups[:end])
			p.fill(i, groups[:end])
			p.last, p.face().short = last, true
			p.fill(i, groups[end:])
			return
		}
		p.fill(i, groups[:n])
		groups = groups[n:]
	}
}

// fill places groups in columns. One that must not be last in its column waits for
// the one behind it.
func (p *pages) fill(i int, groups []laid) {
	p.press(groups)
	for len(groups) > 0 {
		n, need := p.run(groups)
		last := &groups[n-1]
		if over := need - p.c.Tallest; over > 0 && n > 1 && !last.Breaks {
			if t := p.fit(last.Group, last.height-over); last.height-t.height >= over {
				t.needs = t.height
				need -= last.height - t.height
				*last = t
			}
		}
		if last.Wide && p.c.Columns > 1 {
			p.spread(i, groups[:n])
			groups = groups[n:]
			p.press(groups)
			continue
		}
		if need > p.c.Tallest && n > 1 {
			p.c.Found(p.tooTall(*last, need))
		}
		if left := p.last - p.y; p.begun() && need > left && !closing(groups[:n]) {
			if left > (p.last-p.first)/2 && last.reach > 0 {
				loose := p.tooTall(*last, need)
				loose.Kind, loose.Room = render.Loose, left
				p.loose = append(p.loose, loose)
			}
			p.next(i)
			p.press(groups)
		}
		broke := false
		for _, g := range groups[:n] {
			p.place(i, g)
			p.y += p.apart(g.Group)
			broke = broke || g.Breaks
		}
		groups = groups[n:]
		if broke {
			p.press(groups)
		}
	}
}

// run returns how many groups stand together at the head of some, and how much
// room they need to begin in a column.
func (p *pages) run(groups []laid) (n, need int) {
	need = groups[0].needs
	for n = 1; groups[n-1].Join && n < len(groups); n++ {
		need += groups[n-1].height - groups[n-1].needs
		need += p.apart(groups[n-1].Group) + groups[n].needs
	}
	if g := groups[n-1]; g.Breaks && need > p.c.Tallest {
		need -= g.needs - max(g.first(), g.reach)
	}
	return n, need
}

// press takes air out of the groups that stand in the rest of this column, where that
// lets one more run of them in: a quarter out of that run, or if need be out of all of
// them, or a third out of all.
func (p *pages) press(groups []laid) {
	y := p.y
	for from := 0; from < len(groups); {
		n, need := p.run(groups[from:])
		to := from + n
		if over := y + need - p.last; over > 0 {
			// Lists and tables keep their air. Much more than a tenth is not to be had.
			if steps := groups[to-1].reach > 0; steps && (from > 0 || p.begun()) && !closing(groups[from:to]) {
				_ = over < need/8 && p.squeeze(groups[from:to], over, 9) ||
					over < (y+need-p.y)/9 && (p.squeeze(groups[:to], over, 9) || p.squeeze(groups[:to], over, 8))
			}
			return
		}
		for _, g := range groups[from:to] {
			y += g.height + p.apart(g.Group)
		}
		from = to
	}
}

// squeeze leaves groups so many twelfths of their air, where that makes them lower by
// what they are too tall, and reports whether it did.
func (p *pages) squeeze(groups []laid, over, twelfths int) bool {
	less := make([]laid, len(groups))
	for i, g := range groups {
		if g.Breaks || g.Wide {
			return false
		}
		less[i] = p.tight(g, twelfths)
		over -= g.height - less[i].height
	}
	if over > 0 {
		return false
	}
	copy(groups, less)
	return true
}
