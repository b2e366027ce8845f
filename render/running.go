package render

import (
	"fmt"
)

// A place is what a face knows about itself when the deck is laid out.
type place struct {
	part        string
	face, faces int
}

// CodePlace is the square in the foot that is kept free on every face, and
// the line of text left of it: both for a check code.
func CodePlace(o Options) (square, line Rect) {
	s := newStyle(o.Paper, o.Plain)
	right := o.Paper.Width - s.Side
	under := o.Paper.Height - s.Bottom
	square = Rect{X: right - codeSquare, Y: under - codeSquare, W: codeSquare, H: codeSquare}
	line = Rect{X: s.Side, Y: under - s.Label.Lead, W: square.X - 2*s.Beat - s.Side, H: s.Label.Lead}
	return square, line
}

// head draws the running head and returns where it ends: number and title,
// under them the unit, and at the right where on the card the face is.
func (c *compositor) head(k *canvas, r Running, at place) int {
	u := c.Beat
	left, y, right := c.Side, c.Top, c.Side+c.Column
	bold, name := c.Aside.In(accent), c.Aside.In(ink)
	bold.Font, name.Font = FontBold, FontSemibold
	bold.Lead, name.Lead = 4*u, 4*u
	if r.Watch != "" {
		h := c.Watch
		h.Lead = name.Lead
		p := c.Set(says(r.Watch), h, c.Column/2, 0)
		box := p.Width + 2*u
		k.Ground(right-box, y+u/6, box, h.Lead-u/3, black)
		k.Para(p, right-box+u, y)
		right -= box + 2*u
	}
	number := c.Set(says(r.Number), bold, c.Column/2, 0)
	title := c.Set(says(r.Title), name, right-left-number.Width-2*u, 0)
	k.Para(number, left, y)
	k.Para(title, left+number.Width+2*u, y)
	y += max(number.Height(), title.Height())
	where := func(at place) []Run {
		return []Run{{Text: at.part, Weight: Semibold}, {Text: "  "}, {Text: "· " + fmt.Sprintf(c.Say.Face, at.face, at.faces)}}
	}
	// Room for one length of count, so that the count moves nothing.
	_, side := c.Extent(where(place{at.part, 888, 888}), c.Label)
	standing := c.Set(where(at), c.Label.In(ink), c.Column, 0)
	unit := c.Set(says(joined(" · ", r.Unit, r.Variant, c.revision(r))), c.Label.In(ink), c.Column-side-2*u, 0)
	if len(unit.Lines) > 1 { // the foot has the revision in any case
		unit = c.Set(says(joined(" · ", r.Unit, r.Variant)), c.Label.In(ink), c.Column-side-2*u, 0)
	}
	k.Para(unit, left, y)
	k.Aligned(standing, left, y, c.Column, Right)
	y = c.Beats(y + unit.Height() + u/2)
	k.Ground(left, y, c.Column, c.Rule, accent)
	return y + c.Rule
}

func (c *compositor) revision(r Running) string {
	if r.Revision == "" {
		return ""
	}
	return fmt.Sprintf(c.Say.Revision, r.Revision)
}

// foot draws the running foot: a band as high as the square that is kept free
// at its right, with the face's number, the card and the note beside it.
func (c *compositor) foot(k *canvas, r Running, at place, o Options) {
	square, line := CodePlace(o)
	u := c.Beat
	k.Across(line.X, square.Y, line.W, c.Hair, hairline)
	face := c.Set(says(fmt.Sprintf(c.Say.Face, at.face, at.faces)), c.Strong.In(accent), line.W, 0)
	y := square.Y + u/2
	k.Para(face, line.X, y)
	if at.face == 1 && at.faces > 1 {
		count := c.Set(says(fmt.Sprintf(c.Say.Count, at.faces)), c.Label.In(ink), line.W, 0)
		x := line.X + face.Width + 2*u
		k.Para(count, x, y+face.Hand.Base()-count.Hand.Base())
	}
	y += face.Height()
	for _, s := range []string{joined(" · ", r.Number, c.revision(r), r.Date), r.Note} {
		h := c.Label.In(ink)
		if s == r.Note {
			h.Font = FontSemibold
		}
		p := c.Set(says(s), h, line.W, 0)
		k.Para(p, line.X, y)
		y += p.Height()
	}
	if y > line.Y {
		c.Found(Problem{TooWide, 0, r.Note})
	}
}
