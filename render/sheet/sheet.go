// Package sheet defines the display list: what is printed where on a side, as
// plain data in whole micrometers. Package layout makes sheets; the PDF
// writer, the text dump and any later writer read nothing else.
package sheet

import (
	"benchwright/render"
	"benchwright/render/typeface"
)

// Lengths are whole micrometers, from the top left corner of the sheet, x to
// the right and y down.

// A Sheet is one printed side. Its operations are in reading order.
type Sheet struct {
	Width, Height int
	Name          string // "Steps 2 of 5"
	Code          string // check code of what it says, "" for none
	Turned        bool   // to be printed upside down; coordinates are as read upright
	Bookmarks     []Bookmark
	Anchors       []Anchor
	Ops           []Op
	Groups        []Group
	Marks         []Mark
}

// A Bookmark is an entry of the PDF outline.
type Bookmark struct {
	Level int // 0 section, 1 stage, 2 step
	Text  string
	Y     int
	Order int // position in the outline, if not that of the sheets; equal ones keep the order of the sheets
}

// An Anchor is a link target on a sheet.
type Anchor struct {
	Name string
	Y    int
}

// An Area is the area in which something was laid out. What it draws may
// extend beyond it: a hanging number, an end mark in the foot.
type Area struct{ X, Y, W, H int }

// A Group tells which operations, Ops[From:To], draw something that is kept
// together: a whole step, or a stage heading. One that continues on other
// faces is a group on each.
type Group struct {
	Name string // "step 12", or the kind of its first element: "stage", "table"
	Area
	From, To int
}

// A Mark tells which operations, Ops[From:To], draw an element.
type Mark struct {
	Ref   render.Ref
	Class render.Class
	Kind  string // of its content: "reading", "table"
	Area
	From, To int
}

// An Op is one drawing operation: a Glyphs, Rect, Line, Path, Image, Drawing
// or Link.
type Op interface{ op() }

// A Color is 0xRRGGBB.
type Color uint32

// Glyphs is text on one line. X, Y is the start of its baseline; Width is what
// layout measured, and writers need not measure again.
type Glyphs struct {
	X, Y  int
	Width int
	Size  int // em size, in micrometers
	Font  typeface.Font
	Color Color
	Text  string
}

// A BoxRole is the purpose of a rectangle, for checks of the display list.
type BoxRole uint8

const (
	Ground   BoxRole = iota // ground or frame of a panel
	WriteBox                // box to write in
	TickBox                 // box to tick
	Tint                    // ground behind words or a row, not seen as a box
)

// Rect is a rectangle. StrokeWidth 0 draws no stroke, Fill NoColor no fill.
// The stroke is centered on the edge. Radius rounds the corners.
type Rect struct {
	X, Y, W, H  int
	Radius      int
	Fill        Color
	Stroke      Color
	StrokeWidth int
	Role        BoxRole
}

// Outline returns the outline of r, with quarter circles at rounded corners.
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

// NoColor means no fill or no stroke.
const NoColor Color = 1 << 24

// Line is a straight line.
type Line struct {
	X1, Y1, X2, Y2 int
	Width          int
	Color          Color
	Dash           int // length of dashes and gaps; 0 for solid
}

// Path is a figure of straight lines and cubic curves. Unless stated otherwise
// it is filled by the nonzero rule and stroked with round ends and joins.
type Path struct {
	Segs        []Seg
	Fill        Color
	EvenOdd     bool // fill by the even-odd rule
	Stroke      Color
	StrokeWidth int
	Dash        [4]int // dash, gap, dash, gap; all 0 for solid
	Butt        bool   // square ends without extension
	Miter       bool   // mitered joins, up to four times the width
}

// A Seg is a segment of a Path. Verb is 'M' (X, Y), 'L' (X, Y), 'C' (two
// control points, then X, Y) or 'Z'.
type Seg struct {
	Verb           byte
	X1, Y1, X2, Y2 int
	X, Y           int
}

// Image is a picture, decoded, checked and encoded again by package raster.
type Image struct {
	X, Y, W, H int
	Name       string
	Alt        string
	Pixels     []byte
	Format     string // "PNG" or "JPEG"
}

// Drawing is a vector picture. Its operations, Paths and Glyphs, are inside
// its area, except that strokes may extend beyond it by their width.
type Drawing struct {
	X, Y, W, H int
	Name       string
	Alt        string
	Ops        []Op
}

// Link makes an area a link to an Anchor of the deck or to an https address.
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

// Moved returns op moved dx to the right and dy down.
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
