package render

// A ProblemKind tells what is wrong with a face.
type ProblemKind uint8

// The kinds, with the fields of Problem that they use.
const (
	TooTall       ProblemKind = iota // a group does not fit on one face: Size, Room; its tallest element and its height: Text, Part
	WordTooWide                      // Text cannot be broken and is wider than its space
	TableTooWide                     // the columns of a table do not fit: Size, Room
	FigureTooWide                    // a figure does not fit: Size, Room
	MissingGlyph                     // no embedded font has the character in Text
	BadPicture                       // a picture cannot be used: Text is the decoder's sentence, with the picture's name
	BadLink                          // Text is not an anchor of the deck
	NoSymbol                         // there is no symbol for the code in Text
	Loose                            // more than half a column is left empty before a step: as TooTall, with Room the space left
	SpotHides                        // the number Spot covers Other, or the point it marks, or the whole picture
	BadDrawing                       // Drawing cannot be read; svg.Read tells why
	SmallText                        // capitals in a text of Drawing are smaller than a face allows: Size, Room
	TextOver                         // Text extends beyond the edge of Drawing
)

// A Problem is a flaw that layout could not avoid. It carries the caller's
// reference and the facts for a message; the caller words the message.
type Problem struct {
	Kind       ProblemKind
	Ref        Ref
	Text       string
	Size, Room int  // height or width, and the space for it, in micrometers
	Part       int  // height of the tallest element, in micrometers
	Spot       int  // number on a picture that hides something
	Other      int  // the hidden number; 0 for the whole picture
	Place      bool // it hides the point that Other marks, not Other itself
	// Drawing is the name of the drawing that holds the text, or ""; Start and
	// End are the text's byte offsets in its file.
	Drawing    string
	Start, End int
}
