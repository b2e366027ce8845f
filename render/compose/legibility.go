package compose

import (
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// What a face must be for an apprentice with gloves on, who stands at the
// bench under a shop lamp. All numbers of size and distance are in this file.
// Lengths are micrometres.
//
// The height that an angle asks for at a distance is distance × 2·tan(angle/2):
// 16 minutes of arc at 700 mm is 3.26 mm, 20 minutes 4.07 mm. NUREG-0700,
// 11.4.1.5, has 15 minutes as the least and 20 as preferred. An A6 card is a
// pocket card, read at 500 mm.
const (
	LeastInstruction       = 3260 // capital height, 16 minutes at 700 mm
	LeastInstructionPocket = 2330 // 16 minutes at 500 mm
	LeastFigure            = 5000 // what is set or read
	LeastFigurePocket      = 3600
	LeastText              = 2000 // anything on a face
	LeastTrim              = 6000 // nothing is printed nearer to the trim
	LeastHole              = 12000
	LeastBoxGap            = 2000
	LeastBoxWidth          = 14000 // a box that a gloved hand writes in
	LeastBoxHeight         = 9000
	CodeSquare             = 22000 // kept free in the foot
)

// The measure of running text is at most 75 characters and at least 45 on A5
// and larger; a line is 1.2 to 1.4 of its type's size. An English sentence set
// in the regular face takes 0.40 em a character, so that 28 em are 70.
const measureEms = 28

// The colours. Text stands 7:1 or better on its ground (WCAG 2.1, 1.4.6). The
// accent is an aubergine: it is far from the red, orange, yellow, green and
// blue that ISO 3864 and ANSI Z535.1 give a meaning, which a petrol is not,
// and is nearly black to a grey printer and under a yellow lamp.
const (
	Ink      sheet.Color = 0x17141A
	Soft     sheet.Color = 0x4A434C // asides and labels
	Accent   sheet.Color = 0x4F1B4E // structure: numbers, heads, rules
	Band     sheet.Color = 0xE3D6E3 // a stage's ground
	Tint     sheet.Color = 0xF4EFF4 // a panel's ground, and every second row's
	Hairline sheet.Color = 0xB9AEBA // thin rules, never text
	White    sheet.Color = 0xFFFFFF
	Black    sheet.Color = 0x000000
)

// A Hand is how a kind of text is set.
type Hand struct {
	Size  int // of the em
	Lead  int // from base line to base line
	Font  typeface.Font
	color sheet.Color
}

// In is h in another colour.
func (h Hand) In(c sheet.Color) Hand { h.color = c; return h }

// Cap is the height of h's capitals.
func (h Hand) Cap() int { return typeface.CapHeight(h.Font, h.Size) }

// Base is where the base line lies below the top of a line: capitals stand in
// its middle, so that equal room above and below looks equal.
func (h Hand) Base() int { return (h.Lead + h.Cap()) / 2 }

// A Style is the sizes of one kind of face. Distances are multiples of half a
// beat, which is an eighth of the instruction's line, so that lines, rows and
// panels fall into step.
type Style struct {
	Beat   int // a quarter of the instruction's line
	Side   int // margin left and right
	Top    int // of the head
	Bottom int // margin under the foot
	Hang   int // width of the column in which step numbers hang

	Text, Strong  Hand // instruction; the same in semibold
	Title, Stage  Hand // a step's action, a stage's name
	Aside         Hand // tips and whys
	Label, Tag    Hand // small text; the same in semibold and accent
	Number        Hand // of a step
	Figure, Units Hand // what is set or read, and its unit
	Signal        Hand // a signal word over a full callout
	Watch         Hand
	leastFigure   int // capital height below which a figure is never set

	Tick   int // side of a tick box
	Box    int // height of a box to write in
	Boxes  int // least width of one
	Symbol int // of a full callout
	Minor  int // of a short callout and of the summary
	Hair   int // strokes: between rows
	Rule   int // under heads
	Frame  int // round boxes and panels
}

// NewStyle chooses the sizes for a paper, plain or to be laminated.
func NewStyle(p sheet.Paper, plain bool) Style {
	switch {
	case plain:
		return stripStyle()
	case p.Width < 120000:
		return pocketStyle()
	case p.Width < 180000:
		return benchStyle()
	}
	return wallStyle()
}

// benchStyle is for A5 and half Letter: on the bench, 700 mm away.
func benchStyle() Style {
	s := Style{Beat: 1200, Side: 10000, Top: 11600, Bottom: 6500, leastFigure: LeastFigure}
	s.hands(heights{text: 3270, title: 4000, stage: 3600, aside: 2700, label: 2300, number: 5000, figure: 8200, units: 5000, signal: 4000, watch: 3800})
	s.Tick, s.Box, s.Boxes, s.Symbol, s.Minor = 9000, 9600, 20000, 12000, 10200
	s.Hair, s.Rule, s.Frame = 200, 500, 600
	return s
}

// pocketStyle is for A6: in the hand, 500 mm away.
func pocketStyle() Style {
	s := Style{Beat: 1060, Side: 8000, Top: 11200, Bottom: 6500, leastFigure: LeastFigurePocket}
	s.hands(heights{text: 2330, title: 2900, stage: 2600, aside: 2050, label: 2010, number: 3600, figure: 5900, units: 3600, signal: 2900, watch: 2600})
	s.Tick, s.Box, s.Boxes, s.Symbol, s.Minor = 7000, 9000, 16000, 10000, 8000
	s.Hair, s.Rule, s.Frame = 180, 400, 500
	return s
}

// wallStyle is for A4 and Letter: on a hook beside the bench; a little larger,
// and the text does not take the whole width.
func wallStyle() Style {
	s := Style{Beat: 1550, Side: 18000, Top: 11000, Bottom: 7000, leastFigure: LeastFigure}
	s.hands(heights{text: 3400, title: 4200, stage: 3800, aside: 2800, label: 2350, number: 5200, figure: 9000, units: 5300, signal: 4200, watch: 4000})
	s.Tick, s.Box, s.Boxes, s.Symbol, s.Minor = 9300, 10000, 24000, 12400, 10600
	s.Hair, s.Rule, s.Frame = 200, 500, 600
	return s
}

// stripStyle is for the record strip: plain paper, in the hand.
func stripStyle() Style {
	s := Style{Beat: 1100, Side: 14000, Top: 10000, Bottom: 8000, leastFigure: LeastText}
	s.hands(heights{text: 2400, title: 2900, stage: 2650, aside: 2100, label: 2020, number: 3000, figure: 5000, units: 3000, signal: 2700, watch: 2700})
	s.Tick, s.Box, s.Boxes, s.Symbol, s.Minor = 6000, 9000, 18000, 10500, 8400
	s.Hair, s.Rule, s.Frame = 180, 350, 400
	return s
}

// heights are capital heights, from which sizes follow.
type heights struct{ text, title, stage, aside, label, number, figure, units, signal, watch int }

func (s *Style) hands(h heights) {
	s.Hang = 9 * s.Beat
	s.Text = s.Hand(h.text, typeface.Regular, Ink)
	s.Strong = s.Hand(h.text, typeface.Semibold, Ink)
	s.Title = s.Hand(h.title, typeface.Bold, Ink)
	s.Stage = s.Hand(h.stage, typeface.Bold, Accent)
	s.Aside = s.Hand(h.aside, typeface.Regular, Soft)
	s.Label = s.Hand(h.label, typeface.Regular, Soft)
	s.Tag = s.Hand(h.label, typeface.Semibold, Accent)
	s.Number = s.Hand(h.number, typeface.Bold, White)
	s.Figure = s.Hand(h.figure, typeface.Bold, Ink)
	s.Figure.Lead = s.Beats(h.figure + 5*s.Beat/2) // it stands alone on its line
	s.Units = s.Hand(h.units, typeface.Semibold, Ink)
	s.Signal = s.Hand(h.signal, typeface.Bold, Ink)
	s.Watch = s.Hand(h.watch, typeface.Bold, White)
}

// Hand is a hand whose capitals are height high, in the whole half beats that
// are at least 1.2 of its size.
func (s *Style) Hand(height int, f typeface.Font, c sheet.Color) Hand {
	per := typeface.CapHeight(f, 1000)
	size := (height*1000 + per - 1) / per
	return Hand{size, s.Beats(size * 6 / 5), f, c}
}

// Beats rounds a length up to half beats.
func (s *Style) Beats(n int) int {
	half := s.Beat / 2
	return (n + half - 1) / half * half
}
