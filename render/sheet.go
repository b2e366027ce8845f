package render

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

// A Mark says which operations draw which element: Ops[From:To].
type Mark struct {
	Ref      Ref
	Class    Class
	From, To int
}

// An Op is one drawing operation: a Glyphs, Rect, Line, Path, Image or Link.
type Op interface{ op() }

// A Color is 0xRRGGBB.
type Color uint32

// Font names one of the embedded faces.
type Font uint8

// The faces, by weight.
const (
	FontRegular Font = iota
	FontSemibold
	FontBold
)

// Glyphs is a piece of text on one line. The writer sets it at X, Y (the base
// line) without any width of its own: Width is what layout measured.
type Glyphs struct {
	X, Y  int
	Width int
	Size  int // of the em, in micrometres
	Font  Font
	Color Color
	Text  string
}

// Role of a rectangle, for the checks on the display list.
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

// NoColor fills or strokes nothing.
const NoColor Color = 1 << 24

// Line is a straight line.
type Line struct {
	X1, Y1, X2, Y2 int
	Width          int
	Color          Color
	Dash           int // length of dashes and gaps; 0 is solid
}

// Path is a closed or open figure of straight lines and cubic curves.
type Path struct {
	Segs        []Seg
	Fill        Color
	Stroke      Color
	StrokeWidth int
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

// Link makes an area lead to an Anchor of the same deck or to an https
// address.
type Link struct {
	X, Y, W, H int
	To         string
}

func (Glyphs) op() {}
func (Rect) op()   {}
func (Line) op()   {}
func (Path) op()   {}
func (Image) op()  {}
func (Link) op()   {}

// A Paper is a size of face or sheet.
type Paper struct {
	Name          string
	Width, Height int
}

// The papers (ISO 216, ANSI; mm ×1000).
var Papers = []Paper{
	{"A4", 210000, 297000},
	{"A5", 148000, 210000},
	{"A6", 105000, 148000},
	{"Letter", 215900, 279400},
	{"half-Letter", 139700, 215900},
	{"A3", 297000, 420000},
}

// A ProblemKind says what is wrong with a face.
type ProblemKind uint8

const (
	TooTall      ProblemKind = iota // a group does not fit one face
	TooWide                         // a word, figure or table does not fit the measure
	MissingGlyph                    // no embedded face has the character
	BadPicture                      // a picture cannot be decoded or is too large
	BadLink                         // a link names no anchor of the deck
	NoSymbol                        // nothing is drawn for a symbol's code
	SpotHides                       // the number of a spot covers another, or all of its picture
)

// A Problem is something that layout could not do well. It carries the
// caller's reference.
type Problem struct {
	Kind   ProblemKind
	Ref    Ref
	Detail string // "⌁", "312 mm of 180 mm", the picture's name, "number 2 covers number 1"
}

// Options choose the paper.
type Options struct {
	Paper Paper
	Plain bool // plain paper read in the hand, not a laminate: smaller text, no film margin
}
