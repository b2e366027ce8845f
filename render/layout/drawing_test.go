package layout

import (
	"fmt"
	"testing"

	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
	"benchwright/render/specimen"
	"benchwright/render/typeface"
)

func svgPicture(inside string) render.Picture {
	return render.Picture{Name: "figures/a.svg", Alt: "a", Data: []byte(`<svg viewBox="0 0 100 50">` + inside + `</svg>`)}
}

// laidDrawing lays a drawing out and returns it as it stands at 0, 0.
func laidDrawing(t *testing.T, p render.Picture, o Options) (sheet.Drawing, []render.Problem) {
	t.Helper()
	sheets, problems := Faces(render.Deck{Sections: []render.Section{{Groups: []render.Group{{Elements: specimen.Elements(p)}}}}}, o)
	for _, op := range sheets[0].Ops {
		if d, is := op.(sheet.Drawing); is && d.Name != "check code" {
			return sheet.Moved(d, -d.X, -d.Y).(sheet.Drawing), problems
		}
	}
	return sheet.Drawing{}, problems
}

// A drawing takes the column's width, and what is drawn follows it.
func TestDrawingIsScaledToItsRoom(t *testing.T) {
	for _, o := range allOptions() {
		d, problems := laidDrawing(t, svgPicture(`<path d="M10 20H90" stroke="#4F1B4E" stroke-width=".4" stroke-dasharray="4 1 1 1"/>
			<path fill="red" fill-rule="evenodd" stroke-linecap="round" stroke-linejoin="round" stroke="currentColor" d="M0 0C10 20 30 40 50 50z"/>`), o)
		if problems != nil || d.H == 0 || d.Alt != "a" || d.Name != "figures/a.svg" {
			t.Fatalf("%s: %+v, %v", o.Paper.Name, d, problems)
		}
		at := func(v float64) int { return int(v*float64(d.W)/100 + .5) }
		got := fmt.Sprintf("%+v", d.Ops)
		want := fmt.Sprintf("%+v", []sheet.Op{
			sheet.Path{Segs: []sheet.Seg{{Verb: 'M', X: at(10), Y: at(20)}, {Verb: 'L', X: at(90), Y: at(20)}}, Fill: 0, Stroke: compose.Accent,
				StrokeWidth: at(.4), Dash: [4]int{at(4), at(1), at(1), at(1)}, Butt: true, Miter: true},
			sheet.Path{Segs: []sheet.Seg{{Verb: 'M'}, {Verb: 'C', X1: at(10), Y1: at(20), X2: at(30), Y2: at(40), X: at(50), Y: at(50)}, {Verb: 'Z'}},
				Fill: 0xFF0000, EvenOdd: true, Stroke: compose.Ink, StrokeWidth: at(1)},
		})
		if got != want {
			t.Errorf("%s\n got %s\nwant %s", o.Paper.Name, got, want)
		}
		if d.H != (d.W+1)/2 && d.H != d.W/2 {
			t.Errorf("%s: %d × %d", o.Paper.Name, d.W, d.H)
		}
	}
}

// Text stands at its anchor in the card's type, and in the file's weight.
func TestTextOfADrawing(t *testing.T) {
	d, problems := laidDrawing(t, svgPicture(`<g font-size="10"><text x="50" y="20">ring</text><text x="50" y="20" font-weight="600" text-anchor="middle">ring</text>
		<text x="50" y="20" font-weight="bold" text-anchor="end" fill="#4F1B4E">⌀ ring</text></g>`), optionsFor("A5"))
	if problems != nil {
		t.Fatal(problems)
	}
	for i, op := range d.Ops {
		g := op.(sheet.Glyphs)
		left := []int{d.W / 2, (d.W - g.Width) / 2, d.W/2 - g.Width}[i]
		if g.Font != typeface.Font(i) || g.Width != typeface.Width(g.Font, g.Size, g.Text) || g.X < left-2 || g.X > left+2 || g.Y != (d.W*20+50)/100 || g.Size != (d.W+5)/10 {
			t.Errorf("text %d: %+v in a width of %d", i, g, d.W)
		}
	}
	if g := d.Ops[2].(sheet.Glyphs); g.Text != "Ø ring" || g.Color != compose.Accent {
		t.Errorf("%+v", g)
	}
}

// What a drawing's text may not do is a problem at the text.
func TestProblemsOfADrawing(t *testing.T) {
	for _, c := range []struct {
		inside string
		kind   render.ProblemKind
		says   string
		text   string
	}{
		{`<text x="10" y="20" font-size="1">low</text>`, render.SmallText, "", "low"},
		{`<text x="98" y="20" font-size="10">over</text>`, render.TextOver, "over", "over"},
		{`<text x="2" y="20" font-size="10" text-anchor="end">over</text>`, render.TextOver, "over", "over"},
		{`<text x="2" y="20" font-size="10">a⌁b</text>`, render.MissingGlyph, "⌁", "a⌁b"},
		{`<use/>`, render.BadDrawing, "", ""},
		{`<g>`, render.BadDrawing, "", ""},
	} {
		p := svgPicture(c.inside)
		_, problems := laidDrawing(t, p, optionsFor("A5"))
		if len(problems) != 1 {
			t.Errorf("%s: %v", c.inside, problems)
			continue
		}
		got := problems[0]
		if got.Kind != c.kind || got.Text != c.says || (got.Size < got.Room) != (c.kind == render.SmallText) || got.Drawing != p.Name || string(p.Data[got.Start:got.End]) != c.text {
			t.Errorf("%s: %+v at %q", c.inside, got, p.Data[got.Start:got.End])
		}
	}
}

// A picture that gives way keeps its text tall enough.
func TestADrawingShrinksNoFurtherThanItsText(t *testing.T) {
	tall := render.Picture{Name: "a.svg", Alt: "a", Data: []byte(`<svg viewBox="0 0 100 100"><text x="10" y="20" font-size="4.2">key</text></svg>`)}
	for _, o := range allOptions() {
		d, problems := laidDrawing(t, tall, o)
		if problems != nil {
			t.Errorf("%s: %v", o.Paper.Name, problems)
			continue
		}
		g := d.Ops[0].(sheet.Glyphs)
		if least := o.style().Label.Cap(); typeface.CapHeight(g.Font, g.Size) < least {
			t.Errorf("%s: %d µm of %d", o.Paper.Name, typeface.CapHeight(g.Font, g.Size), least)
		}
	}
}

// Numbers that the picture shows itself stand in the legend alone, and those
// that are drawn over it go on behind them.
func TestLegendOfADrawing(t *testing.T) {
	p := render.Picture{Name: "a.svg", Data: specimen.Drawing(), Alt: "a", Spots: []render.Spot{
		{Shown: true, Says: specimen.Runs("Race")}, {X: 300, Y: 500, Says: specimen.Runs("Case")}}}
	ops, problems := laidPicture(p, optionsFor("A5"))
	numbers := map[string]int{}
	for _, op := range ops {
		if g, is := op.(sheet.Glyphs); is {
			numbers[g.Text]++
		}
	}
	if problems != nil || numbers["1"] != 1 || numbers["2"] != 2 {
		t.Errorf("numbers %v, problems %v", numbers, problems)
	}
}

// A number of two figures has room on its disc, and one that has no disc stands
// dark on white.
func TestNumbersOfTwoFigures(t *testing.T) {
	p := render.Picture{Name: "a.svg", Data: specimen.Drawing(), Alt: "a"}
	for i := range 12 {
		s := render.Spot{Shown: i < 9, Says: specimen.Runs("Race")}
		if !s.Shown {
			s.X, s.Y = 100+350*(i-9), 500
		}
		p.Spots = append(p.Spots, s)
	}
	ops, problems := laidPicture(p, optionsFor("A5"))
	if problems != nil {
		t.Fatal(problems)
	}
	white := 0
	for _, op := range ops {
		g, is := op.(sheet.Glyphs)
		if !is || g.Color != compose.White {
			continue
		}
		white++
		if a, _ := covers(g); !grounded(ops, a) {
			t.Errorf("%q stands out of its disc", g.Text)
		}
	}
	if white != 6 { // 10, 11 and 12, on the picture and in the legend
		t.Errorf("%d numbers on discs", white)
	}
}
