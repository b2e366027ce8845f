// Package render is what a card says before it is laid out: a deck of sections,
// groups and elements, each element with a class and the caller's reference. It
// knows nothing of procedures. The rooms below it make paper of a deck: layout
// fills faces with it and gives back the display list, which package sheet
// defines and package pdf writes.
package render

// A Ref is the caller's own mark on an element. It is opaque here and comes
// back with a Problem. Zero is no reference.
type Ref int

// A Class says what an element's change would mean to its reader.
type Class uint8

const (
	Technical Class = iota // numbers, tools, order, callouts
	Wording                // prose
)

// A Deck is what one card says, element by element, before layout.
type Deck struct {
	Language string // BCP 47
	Subject  string // for the file's properties
	Running  Running
	Sections []Section
	Words    Words
}

// Running is what every face repeats, so that each stands alone.
type Running struct {
	Number   string // card number
	Title    string
	Unit     string // what is worked on
	Variant  string // "early", "early, mid"; "" where there are none
	Revision string
	Date     string
	Watch    string // printed large and plain on every face, such as DRAFT; "" for nothing
	Note     string // one short line on every face, such as "Invented unit, not for real work"; "" for nothing
}

// A Section is a kind of face: set-out, steps, look-up, record. Each begins
// on a new face. Its name stands in the head of its faces ("Set-out 1 of 2").
type Section struct {
	Name    string
	Follows bool // begins where the one before it ended
	Small   bool // lists alone, in small type: its columns are narrower, and as tall as each other
	Groups  []Group
}

// A Group is kept together on one face. One that is too tall for a face is a
// Problem, unless all it holds is Listings, Hazards, Records or Tables, which
// run on with their heads repeated.
type Group struct {
	Ref      Ref
	Bookmark string // "" for none
	Anchor   string // what a Run's Link may name; "" for none
	Join     bool   // must not be last on its face: a stage heading
	Breaks   bool   // may run on over faces between its elements and between rows
	Wide     bool   // takes all columns, for it is too tall for one
	Elements []Element
}

// An Element is one thing on a face.
type Element struct {
	Class   Class
	Ref     Ref
	Content Content
}

// Content is what an element shows: one of the types below.
type Content interface{ content() }

// Weight is how heavy a run is set.
type Weight uint8

// The weights.
const (
	Regular Weight = iota
	Semibold
	Bold
)

// A Run is text of one weight. A no-break space (U+00A0) is never broken at.
type Run struct {
	Text   string
	Weight Weight
	Code   bool   // a name as engraved or typed: set apart by a light ground
	Link   string // the Anchor of a group, or an https address; "" for none
}

// FaceOf stands in the text of a Run with a Link for the number of the face on
// which the group begins that the Link names. Layout puts it in when it knows
// the faces; Canonical does not see it, as it sees no number of a face.
const FaceOf = "\uE000\uE000"

// Stage is the heading of a stage of the work.
type Stage struct{ Title []Run }

// Step is the head of a step: number, bold action, tick box.
type Step struct {
	Number int
	Title  []Run
}

// Role is what a Text is for.
type Role uint8

// The roles.
const (
	Instruction Role = iota // what to do
	Tip                     // shop wisdom, set apart, lighter than instruction
	Why                     // the step's reason, set last, lighter
	Small                   // a footnote-like line, never an instruction
	Lead                    // a line read before anything else, semibold
)

// Text is one paragraph.
type Text struct {
	Role Role
	Runs []Run
}

// List is a bulleted or numbered list; an item may have items below it.
type List struct {
	Ordered bool
	Items   []Item
}

// An Item is one entry of a List.
type Item struct {
	Runs []Run
	Sub  *List
}

// Align is how a column stands.
type Align uint8

// The ways a column stands.
const (
	Left Align = iota
	Center
	Right
)

// Table is a ruled table with a head that repeats when it runs on.
type Table struct {
	Head   [][]Run
	Rows   [][][]Run
	Align  []Align
	Marked []bool // rows set apart, one a row: where a reading is accepted as it is; nil for none
	Large  bool   // its figures are large: it is read with a greasy finger
	Fine   []bool // columns whose figures are not, one a column; nil for none
	Grid   bool   // its head is looked up as its first column is
	Ruled  bool   // thin lines part the columns: one of them is followed up or down
	Under  []Run  // one line under it that stays with its last row: a worked line
}

// Listing is a titled list of the set-out face: tools, parts, conditions.
// With no rows it shows None, so that silence is never an oversight. A cell
// of the first column is set in semibold.
type Listing struct {
	Title   string
	None    string   // "none"
	Columns []string // heads; nil for a plain list of one column
	Rows    [][][]Run
}

// Facts are labelled short facts set side by side: time, people, skill.
type Facts struct{ Rows []Fact }

// A Fact is one label and what it says.
type Fact struct {
	Label string
	Runs  []Run
}

// Signal is a signal word after ANSI Z535.6 / ISO 3864.
type Signal uint8

// The signal words, the gravest first.
const (
	Danger Signal = iota
	Warning
	Caution
	Notice
)

// Callout is a hazard before its action. Short shows symbol, word and Avoid.
type Callout struct {
	Signal     Signal
	Word       string   // the word as printed, "WARNING"
	Symbols    []string // ISO 7010 codes
	Hazard     []Run
	Result     []Run
	Avoid      []Run
	Short      bool
	AvoidFirst bool // the shop puts the command before hazard and result
}

// Hazards is the summary of the set-out face: one line a hazard.
type Hazards struct {
	Title string
	None  string
	Rows  []HazardRow
}

// A HazardRow names a hazard and where it waits.
type HazardRow struct {
	Signal  Signal
	Word    string
	Symbols []string
	Text    []Run
	Steps   string // "steps 3, 7–9"
}

// Tools is the line of tools of a step: what to take or what to do with it,
// name, number, place.
type Tools struct{ Rows []ToolRow }

// A ToolRow is one tool.
type ToolRow struct {
	Verb   string // "Take", "Hold still", "Assemble"
	Name   string
	Number string
	Place  string
	Note   string // "on 36 mm", "new number of FL-101"; "" for nothing
}

// Turn is which way something is turned, as an arrow shows it.
type Turn uint8

// The ways to turn, as seen from where the panel says.
const (
	NoTurn Turn = iota
	Clockwise
	Anticlockwise
)

// Setting is a panel with the one number that the reader sets.
type Setting struct {
	Title    []Run     // what is tightened: "Pinion nut, M24×1.5"
	Tools    []ToolRow // what to set it on, where the step has not named it before
	Label    string    // over the figure: "Set"
	Value    string    // the large figure, "100" or "95 to 105"; "" for a box to fill in
	Unit     string    // beside it
	Source   []Run     // under it, smaller: "manual: 100 ±5 N·m"
	Passes   []Pass    // what is set one after the other, in place of Value
	Lines    [][]Run   // thread condition, pull point …
	Actions  [][]Run   // what the hands do, in order, numbered
	First    int       // number of the first action; 0 for 1
	Turn     Turn
	SeenFrom string   // "seen from input end"
	Boxes    []string // record boxes, by label
	BoxUnit  string
}

// A Pass is one of several settings.
type Pass struct {
	Label string // "Pass 1"
	Value string
}

// Order is a set of fasteners as they stand, each with its number.
type Order struct {
	Shape   Shape
	Numbers []int // by position: clockwise from the top, in a rectangle from the top left, in a row from the left
	Lines   [][]Run
}

// Shape is how a set of fasteners stands.
type Shape uint8

// The shapes.
const (
	Circle    Shape = iota
	Rectangle       // two equal rows
	Row
)

// Reading is a panel for a measurement: the band on a bar, the reject sides
// hatched, the boxes to write in, what to do on each side.
type Reading struct {
	Title               []Run
	Tools               []ToolRow // what to read it with, where the step has not named it before
	Low                 string    // end of the accept band on the gauge's marks; "" for none
	High                string
	Label               string // over the figure: "Accept"
	Value               string // the large figure: "0.15 to 0.25", "max 0.05"
	Unit                string
	Source              []Run
	Boxes               []string
	BoxUnit             string // behind each box
	Use                 []Run  // "Use the lowest"
	Lines               [][]Run
	IfLow               []Run
	IfHigh              []Run
	LowLabel, HighLabel string // "Below 0.15", "Above 0.25"
	Plain               bool   // no accept band: a reading that is only written down
}

// Pack is a shim pack cut through, between the two faces that it lies between.
type Pack struct {
	Above, Below string // the faces: "gear race", "case"; "" for no name
	Layers       []Layer
	Total        string  // beside them: "1.05 mm"
	Lines        [][]Run // beside it, or below where there is no room
}

// A Layer is one shim of a Pack.
type Layer struct {
	Label string // "0.50"
	Size  int    // thickness, of whatever is small enough to tell the layers apart
}

// Cord is how a turning torque is read: a drum end on, one layer of cord, and a
// spring scale that pulls it off square to the shaft.
type Cord struct {
	Drum  string  // under the drum: "drum radius 40 mm"
	Cord  string  // over the cord: "cord 3 mm"
	Pull  string  // under the scale: "24 to 36 kg"
	Lines [][]Run // what to heed, beside it
}

// Hold is a hold point: work stops until somebody has signed.
type Hold struct {
	Title  string // "STOP. HOLD POINT"
	Who    []Run
	Sees   []Run
	Before []Run
	Boxes  []string // "Signature", "Date"
}

// Picture is an image. Data is a PNG or JPEG file that the caller has capped, or
// an SVG file where Name ends in .svg; what cannot be decoded is a Problem.
type Picture struct {
	Name    string // for messages and as the image's identity
	Data    []byte
	Alt     string
	Caption []Run
	Spots   []Spot // numbered from 1 in their order
}

// A Spot is a numbered disc on a picture and its line in the legend. Places are
// in thousandths of the picture's width and height from its top left.
type Spot struct {
	Ref      Ref
	Shown    bool // the picture shows the number itself: it stands in the legend alone
	X, Y     int  // where the disc stands; one near an edge is moved in
	Leads    bool
	ToX, ToY int // where Leads leads a line to
	Says     []Run
}

// Contact is a gear contact pattern: pictures of a tooth of the gear, each with
// the patch that the paint may leave, what it is called, what to do, and a box
// to tick. The tooth stands with its toe on the left and its top land above.
type Contact struct {
	Title                []Run  // over the pictures: which side is read
	Toe, Heel, Top, Root string // the names of the tooth's edges, set round the first picture
	Rows                 []ContactRow
	Under                [][]Run // below the pictures: the order of the work
	Source               []Run
}

// A ContactRow is one picture. The middle of its patch and how far that reaches
// to either side are in thousandths of the tooth's length, from the toe, and of
// its height, from the root.
type ContactRow struct {
	Letter       string
	Do           [][]Run // what it is called, what to do
	Along, Up    int
	Half, Height int // half the patch's length, half its height
}

// Indicator is how a dial indicator stands at a gear that is turned to and fro,
// the other gear clamped.
type Indicator struct {
	Radius string // of the stem from the shaft's middle: "72 mm"; "" where it is not known
	Locked string // at the other gear: "locked"
	Reach  int    // Radius in thousandths of the pitch radius: far off it an arm is drawn
	Square bool   // the stem stands square to the flank, not along the turn
	Pinion bool   // the smaller gear is the one that is turned
	Lines  [][]Run
}

// Records is the table of a record strip.
type Records struct {
	Title                string
	Step, What, Readings string   // heads of the columns
	Tail                 []string // heads of the boxes at the end of each row: instrument, initials
	Wide                 bool     // the boxes of a row share its width
	Rows                 []RecordRow
}

// A RecordRow is one line to fill in: the readings of one thing.
type RecordRow struct {
	Ref    Ref
	Step   string
	What   []Run
	Limits []Run
	Boxes  []string // labels of the boxes for readings; one without a label has ""
	Tail   []bool   // one a box of the tail: true draws it, false leaves a dash
	Hold   bool     // drawn heavier: a hold point
}

// Ticks are the cells of a record strip in which each step is ticked.
type Ticks struct {
	Title   string
	Numbers []int
}

// End closes a deck: END OF CARD.
type End struct{ Text string }

func (Stage) content()     {}
func (Step) content()      {}
func (Text) content()      {}
func (List) content()      {}
func (Table) content()     {}
func (Listing) content()   {}
func (Facts) content()     {}
func (Callout) content()   {}
func (Hazards) content()   {}
func (Tools) content()     {}
func (Setting) content()   {}
func (Order) content()     {}
func (Reading) content()   {}
func (Pack) content()      {}
func (Cord) content()      {}
func (Hold) content()      {}
func (Picture) content()   {}
func (Contact) content()   {}
func (Indicator) content() {}
func (Records) content()   {}
func (Ticks) content()     {}
func (End) content()       {}
