package render

import (
	"fmt"
	"strings"
)

// Words are the few words that layout itself prints. An empty one is printed
// in English.
type Words struct {
	Continued string // behind the head of a listing that runs on
	Part      string // of a section: name, number, count
	Step      string // on the face: number, count
	Steps     string // first and last on the face, count
	Face      string // number, count
	Revision  string // the revision
	Count     string // on the first face: count of faces
}

// withDefaults fills what is empty.
func (w Words) withDefaults() Words {
	for _, p := range []struct {
		word *string
		is   string
	}{
		{&w.Continued, "(continued)"},
		{&w.Part, "%s %d of %d"},
		{&w.Step, "Step %d of %d"},
		{&w.Steps, "Steps %d–%d of %d"},
		{&w.Face, "Face %d of %d"},
		{&w.Revision, "revision %s"},
		{&w.Count, "%d faces in all"},
	} {
		if *p.word == "" {
			*p.word = p.is
		}
	}
	return w
}

// A place is what a face knows about itself when the deck is laid out.
type place struct {
	part        string
	face, faces int
}

// CodePlace is the square in the foot that is kept free on every face, and
// the line of text left of it: both for a check code.
func CodePlace(o Options) (square, line Rect) {
	s := newStyle(o)
	right := o.Paper.Width - s.side
	under := o.Paper.Height - s.bottom
	square = Rect{X: right - codeSquare, Y: under - codeSquare, W: codeSquare, H: codeSquare}
	line = Rect{X: s.side, Y: under - s.label.lead, W: square.X - 2*s.beat - s.side, H: s.label.lead}
	return square, line
}

// head draws the running head and returns where it ends: number and title,
// under them the unit, and at the right where on the card the face is.
func (c *compositor) head(k *canvas, r Running, at place) int {
	u := c.beat
	left, y, right := c.side, c.top, c.side+c.column
	bold, name := c.aside.in(accent), c.aside.in(ink)
	bold.font, name.font = FontBold, FontSemibold
	bold.lead, name.lead = 4*u, 4*u
	if r.Watch != "" {
		h := c.watch
		h.lead = name.lead
		p := c.set(says(r.Watch), h, c.column/2, 0)
		box := p.width + 2*u
		k.ground(right-box, y+u/6, box, h.lead-u/3, black)
		k.para(p, right-box+u, y)
		right -= box + 2*u
	}
	number := c.set(says(r.Number), bold, c.column/2, 0)
	title := c.set(says(r.Title), name, right-left-number.width-2*u, 0)
	k.para(number, left, y)
	k.para(title, left+number.width+2*u, y)
	y += max(number.height(), title.height())
	where := func(at place) []Run {
		return []Run{{Text: at.part, Weight: Semibold}, {Text: "  "}, {Text: "· " + fmt.Sprintf(c.say.Face, at.face, at.faces)}}
	}
	// Room for one length of count, so that the count moves nothing.
	_, side := c.extent(where(place{at.part, 888, 888}), c.label)
	standing := c.set(where(at), c.label.in(ink), c.column, 0)
	unit := c.set(says(joined(" · ", r.Unit, r.Variant, c.revision(r))), c.label.in(ink), c.column-side-2*u, 0)
	if len(unit.lines) > 1 { // the foot has the revision in any case
		unit = c.set(says(joined(" · ", r.Unit, r.Variant)), c.label.in(ink), c.column-side-2*u, 0)
	}
	k.para(unit, left, y)
	k.aligned(standing, left, y, c.column, Right)
	y = c.beats(y + unit.height() + u/2)
	k.ground(left, y, c.column, c.rule, accent)
	return y + c.rule
}

func (c *compositor) revision(r Running) string {
	if r.Revision == "" {
		return ""
	}
	return fmt.Sprintf(c.say.Revision, r.Revision)
}

// joined is the parts that say something, with sep between them.
func joined(sep string, parts ...string) string {
	var some []string
	for _, p := range parts {
		if p != "" {
			some = append(some, p)
		}
	}
	return strings.Join(some, sep)
}

// foot draws the running foot: a band as high as the square that is kept free
// at its right, with the face's number, the card and the note beside it.
func (c *compositor) foot(k *canvas, r Running, at place, o Options) {
	square, line := CodePlace(o)
	u := c.beat
	k.across(line.X, square.Y, line.W, c.hair, hairline)
	face := c.set(says(fmt.Sprintf(c.say.Face, at.face, at.faces)), c.strong.in(accent), line.W, 0)
	y := square.Y + u/2
	k.para(face, line.X, y)
	if at.face == 1 && at.faces > 1 {
		count := c.set(says(fmt.Sprintf(c.say.Count, at.faces)), c.label.in(ink), line.W, 0)
		x := line.X + face.width + 2*u
		k.para(count, x, y+face.hand.base()-count.hand.base())
	}
	y += face.height()
	for _, s := range []string{joined(" · ", r.Number, c.revision(r), r.Date), r.Note} {
		h := c.label.in(ink)
		if s == r.Note {
			h.font = FontSemibold
		}
		p := c.set(says(s), h, line.W, 0)
		k.para(p, line.X, y)
		y += p.height()
	}
	if y > line.Y {
		c.report(Problem{TooWide, 0, r.Note})
	}
}
