// Package svg reads the plain part of SVG: what a line drawing is made of and
// a bench card can show as vectors. It gives outlines and lines of text in
// drawing order, groups and transforms worked in. Whatever would change the
// look and is not read is refused with its place; nothing is left out in
// silence but what was never to be seen (titles, an editor's own notes, ids).
// The type is the card's own: a font's name in the file counts for nothing.
package svg

// The most that a drawing may be.
const (
	MaxBytes  = 256 << 10 // of the file
	MaxPoints = 20_000    // segments of all its outlines
	MaxShapes = 5_000
	MaxDepth  = 32 // elements within elements
)

// Side is the number of steps of a drawing's longer side. A step is less than a
// fiftieth of a micrometer on the largest paper, so that nothing is lost when
// the drawing is scaled to whole micrometers, and all that follows the reading
// is whole numbers.
const Side = 1 << 24

// A Drawing is what a file shows. Every length in it is in whole steps, from
// the top left corner of its view box.
type Drawing struct {
	W, H   int // the longer one is Side
	Shapes []Shape
}

// A Shape is a *Path or a *Text.
type Shape interface{ shape() }

// A Path is an outline that is filled, stroked or both.
type Path struct {
	Segs    []Seg
	Fill    Color
	EvenOdd bool // filled by the even-odd rule, not the nonzero rule
	Stroke  Color
	Width   int   // of the stroke
	Dash    []int // stroke and gap by turns; nil, or 2 or 4 lengths
	Cap     Cap
	Join    Join
}

// A Seg is a piece of a path: M and L go to X, Y; C curves there by way of two
// control points; Z goes back to the last M.
type Seg struct {
	Verb           byte // 'M', 'L', 'C' or 'Z'
	X1, Y1, X2, Y2 int  // control points of C
	X, Y           int
}

// A Text is one level line of text.
type Text struct {
	X, Y   int // of the anchor, on the base line
	Anchor Anchor
	Size   int // the em
	Weight int // 100 to 900; 400 is regular, 700 bold
	Fill   Color
	Says   string
	Start  int // where it stands in the file
	End    int
}

func (*Path) shape() {}
func (*Text) shape() {}

// A Color is 0xRRGGBB, None or Ink.
type Color int32

// None paints nothing. Ink is the card's own black: currentColor, where the
// file sets no color.
const (
	None Color = -1 - iota
	Ink
	current // the color property, where it is used
)

// Cap is how the ends of a stroke are drawn.
type Cap uint8

// The ends.
const (
	Butt Cap = iota
	RoundCap
)

// Join is how the corners of a stroke are drawn; a Miter is cut off at four
// times the width.
type Join uint8

// The corners.
const (
	Miter Join = iota
	RoundJoin
)

// Anchor is what of a text stands at its place.
type Anchor uint8

// The anchors.
const (
	Start Anchor = iota
	Middle
	End
)

// A Refusal is one thing that is not drawn. Start and End are byte offsets in
// the file. The same thing is refused once, where it stands first.
type Refusal struct {
	Kind       Kind
	Element    string // the element that it stands in
	What       string // an attribute, a property, a cap; "" where the element says it all
	Start, End int
}

// Kind is why something is not drawn.
type Kind uint8

// The kinds.
const (
	Malformed   Kind = iota // no well-formed XML in UTF-8; What is the parser's word
	NotSVG                  // the root is no svg
	Declared                // a DOCTYPE, or a processing instruction such as a style sheet
	Element                 // an element that is not drawn
	Attribute               // an attribute or property that is not drawn
	Value                   // a value that cannot be read, or is not drawn
	Twice                   // an attribute that stands twice
	NoSize                  // neither a view box nor a width and a height
	TooLarge                // more than a cap: What names it
	Outside                 // something reaches out of the view box
	TextTurned              // text that is not level and upright
	TextParted              // a tspan that begins where the text before it ends
	StrokeBent              // a stroke under a transform that is not the same both ways
	TextStroked             // text with an outline
)

// Read reads a drawing. It is nil if anything was refused.
func Read(data []byte) (*Drawing, []Refusal) {
	if len(data) > MaxBytes {
		return nil, []Refusal{{Kind: TooLarge, What: "bytes"}}
	}
	r := &reader{data: data, seen: map[Refusal]bool{}}
	r.read()
	if len(r.refused) > 0 {
		return nil, r.refused
	}
	return &r.out, nil
}
