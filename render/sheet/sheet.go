// Package sheet is the display list: what stands where on a printed side, as
// plain data in whole micrometres. It is the waist between layout and every
// writer: layout makes sheets, and PDF, the text dump and any later writer read
// sheets and nothing else.
package sheet

import (
	"benchwright/render"
	"benchwright/render/typeface"
)

// Lengths in the display list are whole micrometres (1/1000 mm), measured
// from the sheet's top left corner, x to the right and y down.

// A Sheet is one printed side: plain data, the waist between layout and every
// writer. Its operations stand in reading order.
type Sheet struct {
	Width, Height int
	Name          string // "Steps 2 of 5"
	Turned        bool   // to be printed half turned; all coordinates are as read upright
	Bookmarks     []Bookmark
	Anchors       []Anchor
	Ops           []Op
	Groups        []Group
	Marks         []Mark
}

// A Bookmark is an entry of the outline.
type Bookmark struct {
	Level int // 0 section, 1 stage, 2 step
	Text  string
	Y     int
	Order int // place in the outline, where that is not the sheets' order; equal ones keep it
}

// An Anchor is a place on a sheet that a link may name.
type Anchor struct {
	Name string
	Y    int
}

// An Area is where on a sheet something was laid out. What it draws may reach
// past it: a number that hangs, an end that stands in the foot.
type Area struct{ X, Y, W, H int }

// A Group says which operations draw what is kept together, a step with all
// that it holds or a stage's heading: Ops[From:To]. One that runs on over faces
// is a group on each.
type Group struct {
	Name string // "step 12", or what it begins with: "stage", "table"
	Area
	From, To int
}

// A Mark says which operations draw which element: Ops[From:To].
type Mark struct {
	Ref   render.Ref
	Class render.Class
	Kind  string // of its content: "reading", "table"
	Area
	From, To int
}

// An Op is one drawing operation: a Glyphs, Rect, Line, Path, Image, Drawing or
// Link.
type Op interface{ op() }

// A Color is 0xRRGGBB.
type Color uint32

// Glyphs is a piece of text on one line. The writer sets it at X, Y (the base
// line) without any width of its own: Width is what layout measured.
type Glyphs struct {
	X, Y  int
	Width int
	Size  int // of the em, in micrometres
	Font  typeface.Font
	Color Color
	Text  string
}

// A BoxRole is what a rectangle is to the eye, for the checks on the display list.
type BoxRole uint8

const (
	Ground   BoxRole = iota // a panel's ground or frame
	WriteBox                // to write in
	TickBox                 // to tick
	Tint                    // a ground behind words or a row, which is no box to the eye
)

// Rect is a rectangle. Width 0 of the stroke draws none; Fill NoColor none.
// The stroke is centred on the edge. Radius rounds the corners.
type Rect struct {
	X, Y, W, H  int
	Radius      int
	Fill        Color
	Stroke      Color
	StrokeWidth int
	Role        BoxRole
}

// Outline is the outline of r, its corners as quarter circles.
func (r Rect) Outline() []Seg {
	rad := min(r.Radius, r.W/2, r.H/2)
	k := rad - rad*5523/10000 // distance of a control point from the corner
	x0, y0, x1, y1 := r.X, r.Y, r.X+r.W, r.Y+r.H
	return []Seg{
		{Verb: 'M', X: x0 + rad, Y: y0},
		{Verb: 'L', X: x1 - rad, Y: y0},
		{Verb: 'C', X1: x1 - k, Y1: y0, X2: x1, Y2: y0 + k, X: x1, Y: y0 + rad},
		{Verb: 'L', X: x1, Y: y1 - rad},
		{Verb: 'C', X1: x1, Y1: y1 - k, X2: x1 - k, Y2: y1, X: x1 - rad, Y: y1},
		{Verb: 'L', X: x0 + rad, Y: y1},
		{Verb: 'C', X1: x0 + k, Y1: y1, X2: x0, Y2: y1 - k, X: x0, Y: y1 - rad},
		{Verb: 'L', X: x0, Y: y0 + rad},
		{Verb: 'C', X1: x0, Y1: y0 + k, X2: x0 + k, Y2: y0, X: x0 + rad, Y: y0},
		{Verb: 'Z'},
	}
}

// NoColor fills or strokes nothing.
const NoColor Color = 1 << 24

// Line is a straight line.
type Line struct {
	X1, Y1, X2, Y2 int
	Width          int
	Color          Color
	Dash           int // length of dashes and gaps; 0 is solid
}

// Path is a closed or open figure of straight lines and cubic curves. It is
// filled by the nonzero rule and stroked with round ends and joins, if nothing
// else is said.
type Path struct {
	Segs        []Seg
	Fill        Color
	EvenOdd     bool // filled by the even-odd rule
	Stroke      Color
	StrokeWidth int
	Dash        [4]int // dash, gap, dash, gap; all 0 is solid
	Butt        bool   // ends cut off square
	Miter       bool   // joins pointed, to four times the width
}

// A Seg is one piece of a Path. Verb is 'M' (X, Y), 'L' (X, Y), 'C' (two
// control points, then X, Y) or 'Z'.
type Seg struct {
	Verb           byte
	X1, Y1, X2, Y2 int
	X, Y           int
}

// Image is a picture, already decoded, checked and encoded again. Pixels are
// a PNG or JPEG that layout itself has written.
type Image struct {
	X, Y, W, H int
	Name       string
	Alt        string
	Pixels     []byte
	Format     string // "PNG" or "JPEG"
}

// Drawing is a picture of vectors. Its operations, Paths and Glyphs, lie in its
// area, or over the edge by a stroke's width.
type Drawing struct {
	X, Y, W, H int
	Name       string
	Alt        string
	Ops        []Op
}

// Link makes an area lead to an Anchor of the same deck or to an https
// address.
type Link struct {
	X, Y, W, H int
	To         string
}

func (Glyphs) op()  {}
func (Rect) op()    {}
func (Line) op()    {}
func (Path) op()    {}
func (Image) op()   {}
func (Drawing) op() {}
func (Link) op()    {}

// Moved is op, dx to the right and dy down.
func Moved(op Op, dx, dy int) Op {
	switch o := op.(type) {
	case Glyphs:
		o.X, o.Y = o.X+dx, o.Y+dy
		return o
	case Rect:
		o.X, o.Y = o.X+dx, o.Y+dy
		return o
	case Line:
		o.X1, o.Y1, o.X2, o.Y2 = o.X1+dx, o.Y1+dy, o.X2+dx, o.Y2+dy
		return o
	case Path:
		segs := make([]Seg, len(o.Segs))
		for i, s := range o.Segs {
			segs[i] = Seg{s.Verb, s.X1 + dx, s.Y1 + dy, s.X2 + dx, s.Y2 + dy, s.X + dx, s.Y + dy}
		}
		o.Segs = segs
		return o
	case Image:
		o.X, o.Y = o.X+dx, o.Y+dy
		return o
	case Drawing:
		o.X, o.Y = o.X+dx, o.Y+dy
		ops := make([]Op, len(o.Ops))
		for i, op := range o.Ops {
			ops[i] = Moved(op, dx, dy)
		}
		o.Ops = ops
		return o
	case Link:
		o.X, o.Y = o.X+dx, o.Y+dy
		return o
	}
	return op
}
