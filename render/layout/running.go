package layout

import (
	"fmt"

	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// A place is what a face knows about itself when the deck is laid out.
type place struct {
	part        string
	face, faces int
}

// CodePlace is the square in the foot that is kept free on every face, and
// the line of text left of it: both for a check code.
func CodePlace(o Options) (square, line sheet.Rect) {
	s := compose.NewStyle(o.Paper, o.Plain)
	right := o.Paper.Width - s.Side
	under := o.Paper.Height - s.Bottom
	square = sheet.Rect{X: right - compose.CodeSquare, Y: under - compose.CodeSquare, W: compose.CodeSquare, H: compose.CodeSquare}
	line = sheet.Rect{X: s.Side, Y: under - s.Label.Lead, W: square.X - 2*s.Beat - s.Side, H: s.Label.Lead}
	return square, line
}

// head draws the running head and returns where it ends: number and title,
// under them the unit, and at the right where on the card the face is.
func head(c *compose.Compositor, k *compose.Canvas, r render.Running, at place) int {
	u := c.Beat
	left, y, right := c.Side, c.Top, c.Side+c.Column
	bold, name := c.Aside.In(compose.Accent), c.Aside.In(compose.Ink)
	bold.Font, name.Font = typeface.Bold, typeface.Semibold
	bold.Lead, name.Lead = 4*u, 4*u
	if r.Watch != "" {
		h := c.Watch
		h.Lead = name.Lead
		p := c.Set(compose.Says(r.Watch), h, c.Column/2, 0)
		box := p.Width + 2*u
		k.Ground(right-box, y+u/6, box, h.Lead-u/3, compose.Black)
		k.Para(p, right-box+u, y)
		right -= box + 2*u
	}
	number := c.Set(compose.Says(r.Number), bold, c.Column/2, 0)
	title := c.Set(compose.Says(r.Title), name, right-left-number.Width-2*u, 0)
	k.Para(number, left, y)
	k.Para(title, left+number.Width+2*u, y)
	y += max(number.Height(), title.Height())
	where := func(at place) []render.Run {
		return []render.Run{{Text: at.part, Weight: render.Semibold}, {Text: "  "}, {Text: "· " + fmt.Sprintf(c.Say.Face, at.face, at.faces)}}
	}
	// Room for one length of count, so that the count moves nothing.
	_, side := c.Extent(where(place{at.part, 888, 888}), c.Label)
	standing := c.Set(where(at), c.Label.In(compose.Ink), c.Column, 0)
	unit := c.Set(compose.Says(compose.Joined(" · ", r.Unit, r.Variant, revision(c, r))), c.Label.In(compose.Ink), c.Column-side-2*u, 0)
	if len(unit.Lines) > 1 { // the foot has the revision in any case
		unit = c.Set(compose.Says(compose.Joined(" · ", r.Unit, r.Variant)), c.Label.In(compose.Ink), c.Column-side-2*u, 0)
	}
	k.Para(unit, left, y)
	k.Aligned(standing, left, y, c.Column, render.Right)
	y = c.Beats(y + unit.Height() + u/2)
	k.Ground(left, y, c.Column, c.Rule, compose.Accent)
	return y + c.Rule
}

func revision(c *compose.Compositor, r render.Running) string {
	if r.Revision == "" {
		return ""
	}
	return fmt.Sprintf(c.Say.Revision, r.Revision)
}

// foot draws the running foot: a band as high as the square that is kept free
// at its right, with the face's number, the card and the note beside it.
func foot(c *compose.Compositor, k *compose.Canvas, r render.Running, at place, o Options) {
	square, line := CodePlace(o)
	u := c.Beat
	k.Across(line.X, square.Y, line.W, c.Hair, compose.Hairline)
	face := c.Set(compose.Says(fmt.Sprintf(c.Say.Face, at.face, at.faces)), c.Strong.In(compose.Accent), line.W, 0)
	y := square.Y + u/2
	k.Para(face, line.X, y)
	if at.face == 1 && at.faces > 1 {
		count := c.Set(compose.Says(fmt.Sprintf(c.Say.Count, at.faces)), c.Label.In(compose.Ink), line.W, 0)
		x := line.X + face.Width + 2*u
		k.Para(count, x, y+face.Hand.Base()-count.Hand.Base())
	}
	y += face.Height()
	for _, s := range []string{compose.Joined(" · ", r.Number, revision(c, r), r.Date), r.Note} {
		h := c.Label.In(compose.Ink)
		if s == r.Note {
			h.Font = typeface.Semibold
		}
		p := c.Set(compose.Says(s), h, line.W, 0)
		k.Para(p, line.X, y)
		y += p.Height()
	}
	if y > line.Y {
		c.Found(render.Problem{Kind: render.WordTooWide, Text: r.Note})
	}
}
