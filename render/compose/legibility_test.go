package compose

import (
	"math"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"

	"benchwright/render/sheet"
	"benchwright/render/symbol"
	"benchwright/render/typeface"
)

// height is what an angle in minutes of arc spans at a distance in mm.
func height(minutes, distance float64) float64 {
	return distance * 2 * math.Tan(minutes/60*math.Pi/180/2)
}

// NUREG-0700, 11.4.1.5: 15 minutes of arc are the least. The design takes 16.
func TestLeastHeightsAreSixteenMinutesOfArc(t *testing.T) {
	for _, c := range []struct {
		least    int
		distance float64
	}{{LeastInstruction, 700}, {LeastInstructionPocket, 500}} {
		if want := height(16, c.distance); math.Abs(float64(c.least)/1000-want) > 0.005 {
			t.Errorf("%d µm at %g mm, want %.2f mm", c.least, c.distance, want)
		}
	}
}

// The heights that a card takes from angles at 700 mm, and the multipliers
// of NUREG-0700, 11.4.1.5, for 15 and 20 minutes, which are rounded: 0.004 and
// 0.006 of the distance are really 13.75 and 20.6 minutes. All recomputed.
func TestHeightsOfAngles(t *testing.T) {
	for _, c := range []struct{ minutes, distance, want, within float64 }{
		{16, 700, 3.26, 0.005},
		{20, 700, 4.07, 0.005},
		{13.75, 1, 0.004, 0.0000005},
		{20.6, 1, 0.006, 0.00001},
	} {
		if got := height(c.minutes, c.distance); math.Abs(got-c.want) > c.within {
			t.Errorf("%g minutes at %g mm are %.6f mm, want %g", c.minutes, c.distance, got, c.want)
		}
	}
	// 15 minutes are the least: less than what any face has.
	for least, distance := range map[int]float64{LeastInstruction: 700, LeastInstructionPocket: 500} {
		if want := height(15, distance); float64(least)/1000 < want {
			t.Errorf("%d µm at %g mm is under 15 minutes, %.2f mm", least, distance, want)
		}
	}
}

// Small letters are at least 2.5 mm high in what matters most on a face at the
// bench: the figure that is set or read, its unit, the action of a step (from
// memory). Instructions have 2.4 mm.
func TestSmallLetters(t *testing.T) {
	small := func(h Hand) int {
		face, err := sfnt.Parse(typeface.File(h.Font))
		if err != nil {
			t.Fatal(err)
		}
		m, err := face.Metrics(nil, 1000, font.HintingNone)
		if err != nil || m.XHeight < 480 || m.XHeight > 500 {
			t.Fatalf("face %s: x-height %d, %v", h.Font.Name(), m.XHeight, err)
		}
		return h.Size * int(m.XHeight) / 1000
	}
	for name, s := range map[string]Style{"bench": benchStyle(), "wall": wallStyle()} {
		for _, h := range []Hand{s.Figure, s.Units, s.Title} {
			if x := small(h); x < 2500 {
				t.Errorf("%s: small letters of %d µm", name, x)
			}
		}
		if x := small(s.Text); x < 2400 {
			t.Errorf("%s: small letters of instructions of %d µm", name, x)
		}
	}
}

func styles() map[string]Style {
	return map[string]Style{"bench": benchStyle(), "pocket": pocketStyle(), "wall": wallStyle(), "strip": stripStyle()}
}

func TestHandsAreTallEnoughAndWellLed(t *testing.T) {
	for name, s := range styles() {
		instruction, figure := LeastInstruction, LeastFigure
		switch name {
		case "pocket":
			instruction, figure = LeastInstructionPocket, LeastFigurePocket
		case "strip":
			instruction, figure = LeastText, LeastText
		}
		for _, h := range []Hand{s.Text, s.Strong, s.Title, s.Stage} {
			if h.Cap() < instruction {
				t.Errorf("%s: instruction has capitals of %d µm, want %d", name, h.Cap(), instruction)
			}
		}
		for _, h := range []Hand{s.Figure, s.Units} {
			if h.Cap() < figure {
				t.Errorf("%s: figure has capitals of %d µm, want %d", name, h.Cap(), figure)
			}
		}
		for _, h := range []Hand{s.Aside, s.Label, s.Tag, s.Number, s.Signal, s.Watch} {
			if h.Cap() < LeastText {
				t.Errorf("%s: text has capitals of %d µm, want %d", name, h.Cap(), LeastText)
			}
		}
		for _, h := range []Hand{s.Text, s.Strong, s.Title, s.Stage, s.Aside, s.Label, s.Tag} {
			if ratio := float64(h.Lead) / float64(h.Size); ratio < 1.2 || ratio > 1.4 {
				t.Errorf("%s: %d µm type on %d µm lines is %.2f", name, h.Size, h.Lead, ratio)
			}
			if h.Lead%(s.Beat/2) != 0 {
				t.Errorf("%s: a line of %d µm is out of step with %d", name, h.Lead, s.Beat)
			}
		}
		// The order of rank: the figure, then number and action, then the rest.
		if !(s.Figure.Cap() > s.Units.Cap() && s.Figure.Cap() >= s.Title.Cap()*3/2 &&
			s.Number.Cap() > s.Title.Cap() && s.Title.Cap() > s.Stage.Cap() && s.Stage.Cap() > s.Text.Cap() &&
			s.Text.Cap() > s.Aside.Cap() && s.Aside.Cap() >= s.Label.Cap()) {
			t.Errorf("%s: sizes are out of rank", name)
		}
		if s.Box < LeastBoxHeight || s.Boxes < LeastBoxWidth {
			t.Errorf("%s: a box to write in is %d × %d µm", name, s.Boxes, s.Box)
		}
		if s.Side < LeastTrim || s.Bottom < LeastTrim {
			t.Errorf("%s: margins %d and %d are under %d", name, s.Side, s.Bottom, LeastTrim)
		}
	}
}

// luminance after WCAG 2.1, "relative luminance".
func luminance(c sheet.Color) float64 {
	part := func(v sheet.Color) float64 {
		s := float64(v&0xFF) / 255
		if s <= 0.03928 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*part(c>>16) + 0.7152*part(c>>8) + 0.0722*part(c)
}

func contrast(a, b sheet.Color) float64 {
	x, y := luminance(a), luminance(b)
	if x < y {
		x, y = y, x
	}
	return (x + 0.05) / (y + 0.05)
}

func TestContrast(t *testing.T) {
	if got := contrast(Black, White); math.Abs(got-21) > 0.01 {
		t.Fatalf("black on white is %.2f, want 21 (WCAG 2.1)", got)
	}
	pairs := [][2]sheet.Color{{Ink, White}, {Ink, Tint}, {Soft, White}, {Soft, Tint}, {Accent, White}, {Accent, Tint}, {Accent, Band}, {White, Accent}, {White, Black}}
	for _, l := range looks {
		pairs = append(pairs, [2]sheet.Color{l.Word, l.Ground})
	}
	for _, p := range pairs {
		if got := contrast(p[0], p[1]); got < 7 {
			t.Errorf("%06X on %06X is %.2f:1, want 7:1", p[0], p[1], got)
		}
	}
}

// hue in degrees.
func hue(c sheet.Color) float64 {
	r, g, b := float64(c>>16&0xFF), float64(c>>8&0xFF), float64(c&0xFF)
	return math.Mod(math.Atan2(math.Sqrt(3)*(g-b), 2*r-g-b)*180/math.Pi+360, 360)
}

func TestTheAccentIsNoSafetyColour(t *testing.T) {
	for name, c := range map[string]sheet.Color{"red": symbol.SafetyRed, "orange": symbol.SafetyOrange, "yellow": symbol.SafetyYellow, "blue": symbol.SafetyBlue, "green": 0x00824A} {
		d := math.Abs(hue(Accent) - hue(c))
		if d = min(d, 360-d); d < 45 {
			t.Errorf("the accent is %.0f° from safety %s", d, name)
		}
	}
}
