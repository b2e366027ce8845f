package render

// What a face must be for an apprentice with gloves on, who stands at the
// bench under a shop lamp. All numbers of size and distance are in this file.
// Lengths are micrometres.
//
// The height that an angle asks for at a distance is distance × 2·tan(angle/2):
// 16 minutes of arc at 700 mm is 3.26 mm, 20 minutes 4.07 mm. NUREG-0700,
// 11.4.1.5, has 15 minutes as the least and 20 as preferred. An A6 card is a
// pocket card, read at 500 mm.
const (
	leastInstruction       = 3260 // capital height, 16 minutes at 700 mm
	leastInstructionPocket = 2330 // 16 minutes at 500 mm
	leastFigure            = 5000 // what is set or read
	leastFigurePocket      = 3600
	leastText              = 2000 // anything on a face
	leastTrim              = 6000 // nothing is printed nearer to the trim
	leastHole              = 12000
	leastBoxGap            = 2000
	leastBoxWidth          = 14000 // a box that a gloved hand writes in
	leastBoxHeight         = 9000
	codeSquare             = 22000 // kept free in the foot
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
	ink      Color = 0x17141A
	soft     Color = 0x4A434C // asides and labels
	accent   Color = 0x4F1B4E // structure: numbers, heads, rules
	band     Color = 0xE3D6E3 // a stage's ground
	tint     Color = 0xF4EFF4 // a panel's ground, and every second row's
	hairline Color = 0xB9AEBA // thin rules, never text
	white    Color = 0xFFFFFF
	black    Color = 0x000000
)

// A hand is how a kind of text is set.
type hand struct {
	size  int // of the em
	lead  int // from base line to base line
	font  Font
	color Color
}

// in is h in another colour.
func (h hand) in(c Color) hand { h.color = c; return h }

// cap is the height of h's capitals.
func (h hand) cap() int { return capHeight(h.font, h.size) }

// base is where the base line lies below the top of a line: capitals stand in
// its middle, so that equal room above and below looks equal.
func (h hand) base() int { return (h.lead + h.cap()) / 2 }

// A style is the sizes of one kind of face. Distances are multiples of half a
// beat, which is an eighth of the instruction's line, so that lines, rows and
// panels fall into step.
type style struct {
	beat   int // a quarter of the instruction's line
	side   int // margin left and right
	top    int // of the head
	bottom int // margin under the foot
	hang   int // width of the column in which step numbers hang

	text, strong  hand // instruction; the same in semibold
	title, stage  hand // a step's action, a stage's name
	aside         hand // tips and whys
	label, tag    hand // small text; the same in semibold and accent
	number        hand // of a step
	figure, units hand // what is set or read, and its unit
	signal        hand // a signal word over a full callout
	watch         hand
	leastFigure   int // capital height below which a figure is never set

	tick   int // side of a tick box
	box    int // height of a box to write in
	boxes  int // least width of one
	symbol int // of a full callout
	minor  int // of a short callout and of the summary
	hair   int // strokes: between rows
	rule   int // under heads
	frame  int // round boxes and panels
}

// newStyle chooses the sizes for a paper.
func newStyle(o Options) style {
	switch {
	case o.Plain:
		return stripStyle()
	case o.Paper.Width < 120000:
		return pocketStyle()
	case o.Paper.Width < 180000:
		return benchStyle()
	}
	return wallStyle()
}

// benchStyle is for A5 and half Letter: on the bench, 700 mm away.
func benchStyle() style {
	s := style{beat: 1200, side: 10000, top: 11600, bottom: 6500, leastFigure: leastFigure}
	s.hands(heights{text: 3270, title: 4000, stage: 3600, aside: 2700, label: 2300, number: 5000, figure: 8200, units: 5000, signal: 4000, watch: 3800})
	s.tick, s.box, s.boxes, s.symbol, s.minor = 9000, 9600, 20000, 12000, 10200
	s.hair, s.rule, s.frame = 200, 500, 600
	return s
}

// pocketStyle is for A6: in the hand, 500 mm away.
func pocketStyle() style {
	s := style{beat: 1060, side: 8000, top: 11200, bottom: 6500, leastFigure: leastFigurePocket}
	s.hands(heights{text: 2330, title: 2900, stage: 2600, aside: 2050, label: 2010, number: 3600, figure: 5900, units: 3600, signal: 2900, watch: 2600})
	s.tick, s.box, s.boxes, s.symbol, s.minor = 7000, 9000, 16000, 10000, 8000
	s.hair, s.rule, s.frame = 180, 400, 500
	return s
}

// wallStyle is for A4 and Letter: on a hook beside the bench; a little larger,
// and the text does not take the whole width.
func wallStyle() style {
	s := style{beat: 1550, side: 18000, top: 11000, bottom: 7000, leastFigure: leastFigure}
	s.hands(heights{text: 3400, title: 4200, stage: 3800, aside: 2800, label: 2350, number: 5200, figure: 9000, units: 5300, signal: 4200, watch: 4000})
	s.tick, s.box, s.boxes, s.symbol, s.minor = 9300, 10000, 24000, 12400, 10600
	s.hair, s.rule, s.frame = 200, 500, 600
	return s
}

// stripStyle is for the record strip: plain paper, in the hand.
func stripStyle() style {
	s := style{beat: 1100, side: 14000, top: 10000, bottom: 8000, leastFigure: leastText}
	s.hands(heights{text: 2400, title: 2900, stage: 2650, aside: 2100, label: 2020, number: 3000, figure: 5000, units: 3000, signal: 2700, watch: 2700})
	s.tick, s.box, s.boxes, s.symbol, s.minor = 6000, 9000, 18000, 10500, 8400
	s.hair, s.rule, s.frame = 180, 350, 400
	return s
}

// heights are capital heights, from which sizes follow.
type heights struct{ text, title, stage, aside, label, number, figure, units, signal, watch int }

func (s *style) hands(h heights) {
	s.hang = 9 * s.beat
	s.text = s.hand(h.text, FontRegular, ink)
	s.strong = s.hand(h.text, FontSemibold, ink)
	s.title = s.hand(h.title, FontBold, ink)
	s.stage = s.hand(h.stage, FontBold, accent)
	s.aside = s.hand(h.aside, FontRegular, soft)
	s.label = s.hand(h.label, FontRegular, soft)
	s.tag = s.hand(h.label, FontSemibold, accent)
	s.number = s.hand(h.number, FontBold, white)
	s.figure = s.hand(h.figure, FontBold, ink)
	s.figure.lead = s.beats(h.figure + 5*s.beat/2) // it stands alone on its line
	s.units = s.hand(h.units, FontSemibold, ink)
	s.signal = s.hand(h.signal, FontBold, ink)
	s.watch = s.hand(h.watch, FontBold, white)
}

// hand is a hand whose capitals are height high, in the whole half beats that
// are at least 1.2 of its size.
func (s *style) hand(height int, f Font, c Color) hand {
	per := metrics()[f].cap
	size := (height*1000 + per - 1) / per
	return hand{size, s.beats(size * 6 / 5), f, c}
}

// beats rounds a length up to half beats.
func (s *style) beats(n int) int {
	half := s.beat / 2
	return (n + half - 1) / half * half
}
