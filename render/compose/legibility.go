package compose

import (
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// What a face must be for an apprentice with gloves on, who stands at the
// bench under a shop lamp. All numbers of size and distance are in this file.
// Lengths are micrometers.
//
// Sizes follow from the reading distance. The height that an angle asks for at
// a distance is distance × 2·tan(angle/2): 18 minutes of arc are 1/191 of it,
// 16 minutes 1/215. NUREG-0700 rev. 3, 11.4.1.5, has 16 minutes as the least
// and 20 to 22 as preferred for reading, 15 and 20 for labels; the FAA's Human
// Factors Design Standard has 1/200 of the distance.
const (
	usualDistance  = 500000 // half a meter: the card in a stand on the bench
	pocketDistance = 350000 // of an A6 card, in the hand

	instructionOf = 190 // an instruction's capitals are at least 1/190 of the distance, 18 minutes
	figureOf      = 100 // what is set or read, 1/100
	tableOf       = 150 // figures of a table that is looked up, 1/150
	labelOf       = 465 // all else, 0.00465 of the distance, 16 minutes

	LeastTrim      = 6000  // nothing is printed nearer to the trim
	LeastBoxGap    = 1500  // between any two boxes
	LeastBoxWidth  = 20000 // a box that a gloved hand writes in
	LeastBoxHeight = 9000
	CodeSquare     = 15000 // of the QR code in the head, which takes 14 to 18 mm
	CodeQuiet      = 1000  // kept clear around it beside what parts it from text and rules
	holeBottom     = 12400 // of a hole through the film, in the middle of the top edge
	HoleHalf       = 3000  // half its width
)

// Running text has at most 75 characters to a line and at least 35. An English
// sentence set in the regular face takes 0.44 em a character at most, 0.40 as a
// rule: 29 em are 75 characters at most, and a column of 18 em still holds 38.
const (
	measureEms = 29
	columnEms  = 18
)

// The colors. Text stands 7:1 or better on its ground (WCAG 2.1, 1.4.6). The
// accent is an aubergine: it is far from the red, orange, yellow, green and
// blue that ISO 3864 and ANSI Z535.1 give a meaning, which a petrol is not,
// and is nearly black to a gray printer and under a yellow lamp.
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

// In returns h in another color.
func (h Hand) In(c sheet.Color) Hand { h.color = c; return h }

// Cap returns the height of h's capitals.
func (h Hand) Cap() int { return typeface.CapHeight(h.Font, h.Size) }

// Base returns the distance of the base line from the top of a line. Capitals
// stand in the middle of the line, so that equal room above and below looks
// equal.
func (h Hand) Base() int { return (h.Lead + h.Cap()) / 2 }

// A Style is the sizes of one kind of face, of a paper and a reading distance.
type Style struct {
	Distance int
	Beat     int // a quarter of the instruction's line: the unit of distances
	Side     int // margin left and right
	Top      int // margin over the head
	Bottom   int // margin under the foot
	Gutter   int // between columns
	Hang     int // width of the margin in which step numbers and tick boxes hang

	Text, Strong  Hand // instruction; the same in semibold
	Title, Stage  Hand // a step's action, a stage's name
	Small, Name   Hand // tools, places, lists, tips, whys; the same in semibold
	Label, Tag    Hand // sources, box labels, column heads; the same in semibold and accent
	Number        Hand // of a step
	Figure, Units Hand // what is set or read, and its unit
	LookUp        Hand // figures of a table that is looked up
	Watch         Hand
	Least         int // capital height below which nothing is set

	Tick   int // side of a tick box
	Box    int // height of a box to write in
	Boxes  int // least width of one
	Symbol int // of a full callout
	Minor  int // of a short callout and of the summary
	Hair   int // strokes: between rows
	Rule   int // under heads
	Frame  int // round boxes and panels
}

// NewStyle chooses the sizes for a paper and a distance in micrometers, 0 for the
// usual one; those of plain paper are for the hand.
func NewStyle(p sheet.Paper, distance int, plain bool) Style {
	d := distance
	switch {
	case d == 0 && p.Width < 120000:
		d = pocketDistance
	case d == 0:
		d = usualDistance
	}
	if plain { // the strip lies on a clipboard, never farther off than a card in its stand
		d = min(d, usualDistance)
	}
	text, label := over(d, instructionOf), (d*labelOf+99999)/100000
	s := Style{Distance: d, Least: label}
	s.Text = s.Hand(text, typeface.Regular, Ink)
	s.Beat = s.Text.Lead / 4
	s.Strong = s.Hand(text, typeface.Semibold, Ink)
	s.Title = s.Hand(text*112/100, typeface.Bold, Ink)
	s.Stage = s.Hand(text*106/100, typeface.Bold, Accent)
	s.Small = s.Hand(label, typeface.Regular, Ink)
	s.Name = s.Hand(label, typeface.Semibold, Ink)
	s.Label = s.Hand(label, typeface.Regular, Soft)
	s.Tag = s.Hand(label, typeface.Semibold, Accent)
	s.Number = s.Hand(text*130/100, typeface.Bold, White)
	s.Figure = s.Hand(over(d, figureOf)*104/100, typeface.Bold, Ink)
	s.Figure.Lead = s.Figure.Cap() + 2*s.Beat // it stands alone on its line
	s.Units = s.Hand(over(d, tableOf), typeface.Semibold, Ink)
	s.LookUp = s.Hand(over(d, tableOf), typeface.Semibold, Ink)
	s.LookUp.Lead = s.LookUp.Cap() + 3*s.Beat/2
	s.Watch = s.Hand(label, typeface.Bold, White)
	s.Tick = 11 * s.Beat / 2
	s.Hang = s.Tick + max(LeastBoxGap, s.Beat)
	s.Symbol, s.Minor = 7*s.Beat, 6*s.Beat
	s.Box, s.Boxes = max(LeastBoxHeight, 2*s.Text.Lead), LeastBoxWidth
	s.Hair, s.Rule, s.Frame = 180, 400, 500
	s.Side, s.Top, s.Bottom, s.Gutter = 7000, 7000, 6500, 7*s.Beat/2
	s.Top = max(s.Top, holeBottom-s.Title.Lead) // the title stands below the hole
	if plain {
		s.Box, s.Side, s.Top, s.Bottom = LeastBoxHeight, 12000, 10000, 9000
		s.Frame = 350
	}
	return s
}

// over returns one part of a distance that is divided into parts, rounded up.
func over(distance, part int) int { return (distance + part - 1) / part }

// Hand returns a hand whose capitals are at least so high, whatever the weight
// of a word in it, on lines of 1.2 times its size.
func (s *Style) Hand(height int, f typeface.Font, c sheet.Color) Hand {
	const em = 1000000
	per := em
	for w := typeface.Regular; w <= typeface.Bold; w++ {
		per = min(per, typeface.CapHeight(w, em))
	}
	size := (height*em + per - 1) / per
	return Hand{size, size * 6 / 5, f, c}
}

// Columns returns how many columns of the style stand beside each other on a
// paper: as many as hold running text of 35 characters beside the margin of the
// numbers. Small text has no such margin, so there may be more.
func (s Style) Columns(p sheet.Paper, small bool) int {
	least := s.Hang + columnEms*s.Text.Size
	if small {
		least = columnEms * s.Small.Size
	}
	return max(1, (p.Width-2*s.Side+s.Gutter)/(least+s.Gutter))
}
