package render

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
