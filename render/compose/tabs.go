package compose

import "benchwright/render"

// Tabs are what tables, listings and records are set on: columns of a width
// of their own and rows between thin rules.
type Tabs struct {
	C      *Compositor
	Widths []int
	Gap    int // between columns
	Left   int // of the first
}

// Share shares width out over columns of which least and whole are the
// narrowest and the natural widths: each gets its natural width if that leaves
// the others their fair share, and what then is short is short where the text
// is long. Room that nobody needs goes to column slack.
func (c *Compositor) Share(least, whole []int, width, gap, slack int) []int {
	n := len(least)
	room := width - gap*(n-1)
	need, want := Sum(least), Sum(whole)
	out := append([]int(nil), whole...)
	switch {
	case want <= room:
		out[slack] += room - want
		return out
	case need > room:
		c.Problem(render.Problem{Kind: render.TableTooWide, Size: need + gap*(n-1), Room: width})
		for i := range n {
			out[i] = max(1, room*least[i]/need)
		}
		return out
	}
	settled := make([]bool, n)
	left := n
	for again := true; again; {
		again = false
		for i := range n {
			if !settled[i] && whole[i] <= room/left && need-least[i] <= room-whole[i] {
				settled[i], again = true, true
				room, need, want, left = room-whole[i], need-least[i], want-whole[i], left-1
			}
		}
	}
	over := room - need
	for i := range n {
		if !settled[i] {
			out[i] = least[i] + over*(whole[i]-least[i])/max(1, want-need)
		}
	}
	return out
}

// Sum adds widths up.
func Sum(ns []int) int {
	total := 0
	for _, n := range ns {
		total += n
	}
	return total
}

// X returns where column i begins.
func (g Tabs) X(i int) int {
	x := g.Left
	for _, w := range g.Widths[:i] {
		x += w + g.Gap
	}
	return x
}

// Row sets cells side by side from y, each so far from the left of its column as
// shift says, their first lines on one base line, and returns the height of the
// tallest.
func (g Tabs) Row(k *Canvas, cells [][]render.Run, h []Hand, align []render.Align, shift []int, y int) int {
	tallest, first := 0, 0
	for _, hand := range h {
		first = max(first, hand.Base())
	}
	for i, cell := range cells {
		if i >= len(g.Widths) {
			break
		}
		in := 0
		if i < len(shift) {
			in = shift[i]
		}
		p := g.C.Set(cell, h[min(i, len(h)-1)], g.Widths[i]-in, 0)
		down := first - p.Hand.Base()
		a := render.Left
		if i < len(align) {
			a = align[i]
		}
		k.Aligned(p, g.X(i)+in, y+down, g.Widths[i]-in, a)
		tallest = max(tallest, down+p.Height())
	}
	return tallest
}
