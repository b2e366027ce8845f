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
	holds := len(p.faces) > 0 && (p.last-below > (p.last-p.first)/3 || p.holds(below, groups))
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
	if s.Small && columns > 1 {
		p.last = p.balanced(i, groups)
	}
	p.fill(i, groups)
	p.last, p.face().short = last, s.Small
}

// fill places groups in columns. One that must not be last in its column waits for
// the one behind it.
func (p *pages) fill(i int, groups []laid) {
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
				if left > (p.last-p.first)/2 && groups[to].reach > 0 {
					loose := p.tooTall(groups[to], need)
					loose.Kind, loose.Room = render.Loose, left
					p.loose = append(p.loose, loose)
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
