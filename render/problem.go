package render

// A ProblemKind says what is wrong with a face.
type ProblemKind uint8

// The kinds, with the fields of Problem that belong to each.
const (
	TooTall       ProblemKind = iota // a group does not fit one face: Size, Room; what of it is tallest, and how tall: Text, Part
	WordTooWide                      // nothing in Text can be broken, and it is wider than its room
	TableTooWide                     // the columns of a table do not fit side by side: Size, Room
	FigureTooWide                    // a drawing does not fit: Size, Room
	MissingGlyph                     // no embedded face has the character in Text
	BadPicture                       // a picture cannot be used: Text is the reader's own sentence, with its name
	BadLink                          // Text names no anchor of the deck
	NoSymbol                         // nothing is drawn for the code in Text
	Loose                            // more than half a column is left empty before a step: as TooTall, Room what was left
	SpotHides                        // the number Spot covers Other, or its place, or all of its picture
	BadDrawing                       // Drawing is not one that can be read: svg.Read says why
	SmallText                        // capitals of Drawing's text are lower than the face allows: Size, Room
	TextOver                         // Text runs over the edge of Drawing
)

// A Problem is something that layout could not do well. It carries the
// caller's reference and what a message needs; the sentence is the caller's.
type Problem struct {
	Kind       ProblemKind
	Ref        Ref
	Text       string
	Size, Room int  // height or width, and what there is for it, in micrometres
	Part       int  // height of the tallest element
	Spot       int  // the number on a picture that hides something
	Other      int  // the number that it hides; 0 for the whole picture
	Place      bool // it hides the place that Other leads to, not Other itself
	// Drawing is the name of the drawing whose text it is about, "" for none;
	// Start and End are where that stands in the drawing's file, in bytes.
	Drawing    string
	Start, End int
}
