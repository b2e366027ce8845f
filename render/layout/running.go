package layout

import (
	"fmt"

	"benchwright/render"
	"benchwright/render/checkcode"
	"benchwright/render/compose"
	"benchwright/render/sheet"
)

// A place is what a face knows about itself when the deck is laid out.
type place struct {
	part        string
	face, faces int
	code        checkcode.Code // "" for none
}

// CodePlace returns the square in the head that is kept free on every face for
// a check code, and the line in the outer corner that is kept free for its
// letters.
func CodePlace(o Options) (square, line sheet.Rect) {
	c := &compose.Compositor{Style: o.style()}
	corner := corner(c, render.Words{}.WithDefaults())
	right := o.Paper.Width - c.Side
	x := right - corner - 2*c.Beat - compose.CodeSquare
	if x < o.Paper.Width/2+compose.HoleHalf+compose.CodeQuiet {
		x = c.Side
	}
	square = sheet.Rect{X: x, Y: compose.LeastTrim, W: compose.CodeSquare, H: compose.CodeSquare}
	line = sheet.Rect{X: right - corner, Y: c.Top + c.Title.Lead + c.Name.Lead, W: corner, H: c.Name.Lead}
	return square, line
}

// Columns returns the columns of a face's body, from the left.
func Columns(o Options) []sheet.Rect {
	p := newPages(render.Deck{}, o)
	p.divide(p.c.Style.Columns(o.Paper, false))
	var all []sheet.Rect
	for p.column = range p.c.Columns {
		all = append(all, sheet.Rect{X: p.left(), Y: p.first, W: p.c.Column, H: p.last - p.first})
	}
	return all
}

// corner returns the width of the head's outer corner, where a thumb leafs. It
// has room for any count, so that the count moves nothing.
func corner(c *compose.Compositor, w render.Words) int {
	_, face := c.Extent(compose.Says(fmt.Sprintf(w.Face, 88, 88)), c.Title)
	_, part := c.Extent(compose.Says(fmt.Sprintf(w.Steps, 888, 888, 888)), c.Name)
	return max(face, part)
}

// head draws the running head and returns where it ends. At the left stand the
// card's number and revision, its title, and what it is for; in the outer
// corner which face it is.
func head(c *compose.Compositor, k *compose.Canvas, r render.Running, at place, o Options) int {
	u := c.Beat
	width := o.Paper.Width - 2*c.Side
	left, y, right := c.Side, c.Top, c.Side+width
	corner := corner(c, c.Say)
	square, line := CodePlace(o)
	face := c.Set(compose.Says(fmt.Sprintf(c.Say.Face, at.face, at.faces)), c.Title.In(compose.Accent), corner, 0)
	part := c.Set(compose.Says(at.part), c.Name, corner, 0)
	k.Aligned(face, right-corner, y, corner, render.Right)
	k.Aligned(part, right-corner, y+face.Height(), corner, render.Right)
	if at.code != "" {
		if d, err := checkcode.Square(checkcode.Text(r, at.face, at.code), square); err == nil {
			k.Add(d)
		}
		k.Aligned(c.Set(compose.Says(string(at.code)), c.Name, corner, 0), line.X, line.Y, corner, render.Right)
	}
	if o.Plain && o.Deck != "" { // whose readings these are is known later
		k.Aligned(c.Set(compose.Says(fmt.Sprintf(c.Say.Deck, o.Deck)), c.Name, corner, 0), right-corner, y+face.Height()+part.Height(), corner, render.Right)
	}
	room := square.X - 2*u - left
	switch {
	case o.Plain: // no code is read on a strip
		room = right - corner - 2*u - left
	case square.X == left:
		left += square.W + 2*u
		room = right - corner - 2*u - left
	}
	number := c.Set(compose.Says(r.Number), c.Title.In(compose.Accent), room, 0)
	k.Para(number, left, y)
	x := left + number.Width + u
	down := number.Hand.Base() - c.Small.Base()
	if text := revision(c, r); text != "" {
		p := c.Set(compose.Says(text), c.Small, room, 0)
		k.Para(p, x, y+down)
		x += p.Width + u
	}
	if r.Watch != "" {
		p := c.Set(compose.Says(r.Watch), c.Watch, room, 0)
		k.Ground(x, y+down+u/4, p.Width+2*u, p.Hand.Lead-u/2, compose.Black)
		k.Para(p, x+u, y+down)
	}
	y += number.Height()
	title := c.Set(compose.Says(r.Title), c.Strong, room, 0)
	k.Para(title, left, y)
	y += title.Height()
	unit := c.Set(compose.Says(compose.Joined(" · ", r.Unit, r.Variant)), c.Small, room, 0)
	k.Para(unit, left, y)
	y = max(y+unit.Height(), c.Top+face.Height()+part.Height())
	if o.Plain && o.Deck != "" {
		y = max(y, c.Top+face.Height()+part.Height()+c.Name.Lead)
	}
	if !o.Plain {
		y = max(y, square.Y+square.H+compose.CodeQuiet, line.Y+line.H)
	}
	y += u / 2
	k.Ground(c.Side, y, width, c.Rule, compose.Accent)
	y += c.Rule
	if len(r.Boxes) > 0 {
		row := compose.Column{C: c, X: c.Side, Y: y + u/2, Width: width}
		row.Boxes(r.Boxes, "", width)
		k.Add(row.Ops...)
		y = row.Y + max(u/2, compose.LeastBoxGap-u) // the body begins a beat below
	}
	return y
}

func revision(c *compose.Compositor, r render.Running) string {
	if r.Revision == "" {
		return ""
	}
	return fmt.Sprintf(c.Say.Revision, r.Revision)
}

// foot draws the one thin line at the foot: what there is to know of the unit,
// and the date. On a pocket card they are two lines.
func foot(c *compose.Compositor, k *compose.Canvas, r render.Running, o Options) {
	y := o.Paper.Height - c.Bottom - c.Label.Lead
	note := noted(c, r)
	k.Aligned(c.Set(compose.Says(r.Date), c.Label.In(compose.Ink), c.Page, 0), c.Side, y, c.Page, render.Right)
	k.Para(note, c.Side, y-(footLines(c, r)-1)*c.Label.Lead)
	if len(note.Lines) > 1 {
		c.Found(render.Problem{Kind: render.WordTooWide, Text: r.Note})
	}
}

func noted(c *compose.Compositor, r render.Running) compose.Para {
	return c.Set(compose.Says(r.Note), c.Tag.In(compose.Ink), c.Page, 0)
}

// footLines returns how many lines the foot has: two if the date, and the end
// before it, leave the note no room.
func footLines(c *compose.Compositor, r render.Running) int {
	if noted(c, r).Width > c.Page-12*c.Tag.Size-2*c.Beat { // date and end take 12 em
		return 2
	}
	return 1
}
