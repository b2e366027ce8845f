// Package render holds the content of a card before layout: a deck of
// sections, groups and elements. Each element has a class and a reference of
// the caller. Package render knows nothing of procedures. Its subpackages
// typeset a deck: package layout fills faces and returns the display list,
// which package sheet defines and package pdf writes.
package render

// A Ref is the caller's reference for an element. It is opaque here and is
// returned in a Problem. Zero is no reference.
type Ref int

// A Class tells what a change of an element means to the reader.
type Class uint8

const (
	Technical Class = iota // numbers, tools, order, callouts
	Wording                // prose
)

// A Deck is the content of a card, element by element, before layout.
type Deck struct {
	Language string // BCP 47
	Subject  string // for the PDF's document properties
	Running  Running
	Sections []Section
	Words    Words
}

// Running is repeated on every face, so that each face is complete on its own.
type Running struct {
	Number   string // card number
	Title    string
	Unit     string // name of the unit worked on
	Variant  string // "early", "early, mid"; "" without variants
	Revision string
	Date     string
	Watch    string   // printed large on every face, such as DRAFT; or ""
	Note     string   // one short line on every face, such as "Invented unit, not for real work"; or ""
	Boxes    []string // labels of boxes to fill in on every face: job, serial number; nil for none
}

// A Section is a kind of face: lay-out, steps, look-up, record. It begins on a
// new face, and its name is in the head of its faces ("Lay-out 1 of 2").
type Section struct {
	Name    string
	Follows bool // begins where the previous section ended
	Small   bool // only lists in small type: narrower columns of equal height
	Groups  []Group
}

// A Group is kept together on one face. One too tall for a face is a Problem,
// unless it holds only Listings, Hazards, Records or Tables, which continue on
// the next face with their heads repeated.
type Group struct {
	Ref      Ref
	Bookmark string // or ""
	Anchor   string // target for the Link of a Run; or ""
	Join     bool   // must not be last on its face, such as a stage heading
	With     bool   // stands on one face with the group behind it, if a face holds both
	Breaks   bool   // may continue on another face, between elements and between rows
	Wide     bool   // takes the full width, because it is too tall for a column
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

// Weight is the weight of a run's type.
type Weight uint8

const (
	Regular Weight = iota
	Semibold
	Bold
)

// A Run is text of one style. No line breaks at a no-break space (U+00A0).
type Run struct {
	Text   string
	Weight Weight
	Code   bool   // a name as engraved or typed, printed on a light ground
	Struck bool   // struck through: what held before a change
	Link   string // the Anchor of a group, or an https address; or ""
}

// FaceOf, in the text of a Run with a Link, stands for the number of the face
// on which the linked group begins. Layout replaces it when the faces are
// known; Canonical keeps it.
const FaceOf = "\uE000\uE000"

// Stage is the heading of a stage.
type Stage struct{ Title []Run }

// Step is the head of a step: number, bold action, tick box.
type Step struct {
	Number int
	Title  []Run
}

// Role is the purpose of a Text.
type Role uint8

const (
	Instruction Role = iota // what to do
	Tip                     // a tip, lighter than an instruction
	Why                     // the reason for the step, last and lighter
	Small                   // a footnote-like line, never an instruction
	Lead                    // read before anything else, semibold
	Changed                 // on a change card: what changed in the step, beside a heavy bar
)

// Text is a paragraph.
type Text struct {
	Role Role
	Runs []Run
}

// List is a bulleted or numbered list. An item may have a nested list.
type List struct {
	Ordered bool
	Items   []Item
}

// An Item is one entry of a List.
type Item struct {
	Runs []Run
	Sub  *List
}

// Align is the horizontal alignment of a column.
type Align uint8

const (
	Left Align = iota
	Center
	Right
)

// Table is a ruled table. Its head is repeated when it continues on another
// face.
type Table struct {
	Head   [][]Run
	Rows   [][][]Run
	Align  []Align
	Marked []bool // by row: set apart, because a reading there is accepted as it is; nil for none
	Large  bool   // large figures, for reading with dirty hands
	Fine   []bool // by column: figures are not large; nil for none
	Grid   bool   // the head is looked up too, like the first column
	Ruled  bool   // thin lines between columns, to follow one up or down
	Under  []Run  // one line below that stays with the last row: a worked example
}

// Listing is a titled list on the lay-out page: tools, parts, conditions.
// Without rows it shows None, so that an empty list does not look like an
// omission. The first column is semibold.
type Listing struct {
	Title   string
	None    string   // "none"
	Columns []string // column heads; nil for a list of one column
	Rows    [][][]Run
	Signs   []string // ISO 7010 codes, by row: rows of one cell then stand side by side, each behind its sign; nil for none
}

// Facts are short labeled facts side by side: time, people, skill.
type Facts struct{ Rows []Fact }

type Fact struct {
	Label string
	Runs  []Run
}

// Signal is a signal word of ANSI Z535.6 / ISO 3864.
type Signal uint8

// The signal words, most severe first.
const (
	Danger Signal = iota
	Warning
	Caution
	Notice
)

// Callout is a hazard, before its action. If Short, it shows only symbol, word
// and Avoid.
type Callout struct {
	Signal     Signal
	Word       string   // the word as printed, "WARNING"
	Symbols    []string // ISO 7010 codes
	Hazard     []Run
	Result     []Run
	Avoid      []Run
	Short      bool
	AvoidFirst bool // print the command before hazard and result
}

// Hazards is the hazard summary of the lay-out page.
type Hazards struct {
	Title string
	None  string
	Rows  []HazardRow
}

// A HazardRow is a hazard and the steps that have it.
type HazardRow struct {
	Signal  Signal
	Word    string
	Symbols []string
	Text    []Run
	Steps   string // "steps 3, 7–9"
}

// Tools lists the tools of a step: what to take, or what to do with it.
type Tools struct{ Rows []ToolRow }

type ToolRow struct {
	Verb   string // "Take", "Hold still", "Assemble"
	Name   string
	Number string
	Place  string
	Note   string // "on 36 mm", "new number of FL-101"; or ""
}

// Turn is the direction of a turning arrow.
type Turn uint8

// Directions are as seen from where the panel says.
const (
	NoTurn Turn = iota
	Clockwise
	Counterclockwise
)

// Setting is a panel with the number to set.
type Setting struct {
	Title    []Run     // what is tightened: "Pinion nut, M24×1.5"
	Tools    []ToolRow // tools to set, if the step has not named them before
	Label    string    // above the figure: "Set"
	Value    string    // the large figure, "100" or "95 to 105"; "" for a box to fill in
	Unit     string    // beside the figure
	Source   []Run     // below the figure, smaller: "manual: 100 ±5 N·m"
	Passes   []Pass    // successive settings, instead of Value
	Lines    [][]Run   // thread condition, pull point …
	Actions  [][]Run   // what to do next, in order, numbered
	First    int       // number of the first action; 0 for 1
	Turn     Turn
	SeenFrom string   // "seen from input end"
	Boxes    []string // labels of the record boxes
	BoxUnit  string
}

// A Pass is one of several successive settings.
type Pass struct {
	Label string // "Pass 1"
	Value string
}

// Order shows a set of fasteners in their pattern, each with its number in the
// tightening order.
type Order struct {
	Shape   Shape
	Numbers []int // by position: in a circle clockwise from the top, in a rectangle from top left, in a row from the left
	Lines   [][]Run
}

// Shape is the pattern of a set of fasteners.
type Shape uint8

const (
	Circle    Shape = iota
	Rectangle       // two equal rows
	Row
)

// Reading is a panel for a measurement: a bar with the accept band and hatched
// reject sides, boxes to write in, and what to do on each side.
type Reading struct {
	Title               []Run
	Tools               []ToolRow // instruments, if the step has not named them before
	Low                 string    // low end of the accept band, on the gauge's marks; or ""
	High                string
	Label               string // above the figure: "Accept"
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
	Plain               bool   // no accept band: a reading that is only recorded
}

// Pack is a section through a shim pack and the two faces it lies between.
type Pack struct {
	Above, Below string // the faces: "gear race", "case"; or ""
	Layers       []Layer
	Total        string  // beside the layers: "1.05 mm"
	Lines        [][]Run // beside the pack, or below it if there is no room
}

// A Layer is one shim of a Pack.
type Layer struct {
	Label string // "0.50"
	Size  int    // thickness, in any unit fine enough to tell the layers apart
}

// Cord shows how rotating torque is read: the end view of a drum, one layer of
// cord, and a spring scale pulling it off at right angles to the shaft.
type Cord struct {
	Drum  string  // below the drum: "drum radius 40 mm"
	Cord  string  // above the cord: "cord 3 mm"
	Pull  string  // below the scale: "24 to 36 kg"
	Lines [][]Run // instructions beside it
}

// Hold is a hold point: work stops until somebody has signed.
type Hold struct {
	Title  string // "STOP. HOLD POINT"
	Who    []Run
	Sees   []Run
	Before []Run
	Boxes  []string // "Signature", "Date"
}

// Picture is an image. Data is a PNG or JPEG file, or an SVG file if Name ends
// in .svg; the caller limits its size. A file that cannot be decoded is a
// Problem.
type Picture struct {
	Name    string // for messages; identifies the image
	Data    []byte
	Alt     string
	Caption []Run
	Spots   []Spot // numbered in order, from 1
}

// A Spot is a numbered disc on a picture, with its line in the legend.
// Coordinates are in thousandths of the picture's width and height, from top
// left.
type Spot struct {
	Ref      Ref
	Shown    bool // the picture shows the number itself, so it is only in the legend
	X, Y     int  // center of the disc; near an edge it is moved inward
	Leads    bool
	ToX, ToY int // end of the leader line, if Leads
	Says     []Run
}

// Contact is a gear contact pattern: pictures of a tooth, each with a possible
// pattern of the marking compound, its name, what to do, and a box to tick.
// The toe of the tooth is on the left, its top land above.
type Contact struct {
	Title                []Run  // above the pictures: the side to read
	Toe, Heel, Top, Root string // names of the tooth's edges, around the first picture
	Rows                 []ContactRow
	Under                [][]Run // below the pictures: the order of the work
	Source               []Run
}

// A ContactRow is one picture. The center of its patch and its half size are
// in thousandths of the tooth's length, from the toe, and of its height, from
// the root.
type ContactRow struct {
	Letter       string
	Do           [][]Run // its name, and what to do
	Along, Up    int
	Half, Height int // half the length and half the height of the patch
}

// Indicator shows the position of a dial indicator at a gear that is rocked
// while the other gear is clamped.
type Indicator struct {
	Radius string // distance of the stem from the shaft axis: "72 mm"; "" if not known
	Locked string // at the other gear: "locked"
	Reach  int    // Radius in thousandths of the pitch radius; far from 1000 an arm is drawn
	Square bool   // the stem is square to the flank, not along the circumference
	Pinion bool   // the pinion is turned
	Lines  [][]Run
}

// Records is the table of a record strip.
type Records struct {
	Title                string
	Step, What, Readings string   // column heads
	Tail                 []string // heads of the boxes at the end of each row: instrument, initials
	Rows                 []RecordRow
}

// A RecordRow is a line to fill in: the readings of one thing.
type RecordRow struct {
	Ref    Ref
	Step   string
	What   []Run
	Limits []Run
	Boxes  []string // labels of the boxes for readings; "" for an unlabeled box
	Tail   []bool   // by box of the tail: false prints a dash
	Hold   bool     // a hold point, drawn heavier
}

// Ticks are the cells of a record strip for ticking each step.
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
