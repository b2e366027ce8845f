package layout

import (
	"fmt"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
	"benchwright/render/specimen"
)

// laidPicture lays one picture out and returns its operations and problems.
func laidPicture(p render.Picture, o Options) ([]sheet.Op, []render.Problem) {
	d := render.Deck{Sections: []render.Section{{Name: "Steps", Groups: []render.Group{{Elements: specimen.Elements(p)}}}}}
	sheets, problems := Faces(d, o)
	m := sheets[0].Marks[0]
	return sheets[0].Ops[m.From:m.To], problems
}

// Every number stands twice, on the picture and in the legend; the discs lie on
// the picture as a whole, wherever their places are.
func TestSpotsStayOnThePicture(t *testing.T) {
	m := maker{rand.New(rand.NewPCG(9, 48))}
	for range 60 {
		p := render.Picture{Name: "a.png", Data: specimen.Picture(), Alt: "a"}
		for range 1 + m.IntN(9) {
			p.Spots = append(p.Spots, render.Spot{X: m.IntN(1001), Y: m.IntN(1001), Leads: m.IntN(2) == 0, ToX: m.IntN(1001), ToY: m.IntN(1001), Says: m.runs(5)})
		}
		for _, o := range allOptions() {
			ops, _ := laidPicture(p, o)
			size := 2 * o.style().Text.Cap()
			var image area
			numbers, discs := map[string]int{}, 0
			for _, op := range ops {
				a, _ := covers(op)
				switch op := op.(type) {
				case sheet.Image:
					image = a
				case sheet.Glyphs:
					if op.Color == compose.White {
						numbers[op.Text]++
					}
				case sheet.Rect:
					if beside := op.X > image.x2; op.W == size && !beside && op.Y < image.y2-size/2 {
						discs++
						if !image.holds(a) {
							t.Errorf("%s: a disc at %v, the picture at %v", o.Paper.Name, a, image)
						}
					}
				}
			}
			if discs != len(p.Spots) || len(numbers) != len(p.Spots) {
				t.Errorf("%s: %d discs and %d numbers for %d spots", o.Paper.Name, discs, len(numbers), len(p.Spots))
			}
			for i := range p.Spots {
				if numbers[strconv.Itoa(i+1)] != 2 {
					t.Errorf("%s: number %d stands %d times", o.Paper.Name, i+1, numbers[strconv.Itoa(i+1)])
				}
			}
		}
	}
}

// A number that hides another, or another's place, is refused, each with the
// reference of its own spot; on larger paper the same two may stand apart.
func TestSpotsThatHide(t *testing.T) {
	at := func(spots ...render.Spot) render.Picture {
		for i := range spots {
			spots[i].Ref, spots[i].Says = render.Ref(70+i), specimen.Runs("x")
		}
		return render.Picture{Name: "a.png", Data: specimen.Picture(), Alt: "a", Spots: spots}
	}
	for _, c := range []struct {
		p     render.Picture
		paper string
		want  string
	}{
		{at(render.Spot{X: 500, Y: 500}, render.Spot{X: 510, Y: 500}), "A5", "71: 2 covers 1"},
		{at(render.Spot{X: 500, Y: 500}, render.Spot{X: 570, Y: 500}), "A5", ""},
		{at(render.Spot{X: 500, Y: 500}, render.Spot{X: 551, Y: 500}), "A4", "71: 2 covers 1"},
		{at(render.Spot{X: 500, Y: 500}, render.Spot{X: 551, Y: 500}), "A5", ""},
		{at(render.Spot{X: 500, Y: 500}, render.Spot{X: 800, Y: 500, Leads: true, ToX: 500, ToY: 500}), "A5", "70: 1 covers the place of 2"},
		{at(render.Spot{X: 500, Y: 500, Leads: true, ToX: 505, ToY: 505}), "A5", ""},
		{render.Picture{Name: "a.png", Data: specimen.PNG(12, 12), Spots: at(render.Spot{X: 500, Y: 500}).Spots}, "A5", "70: 1 covers 0"},
	} {
		_, problems := laidPicture(c.p, optionsFor(c.paper))
		var got []string
		for _, p := range problems {
			if p.Kind == render.SpotHides {
				what := "covers"
				if p.Place {
					what += " the place of"
				}
				got = append(got, fmt.Sprintf("%d: %d %s %d", p.Ref, p.Spot, what, p.Other))
			}
		}
		if strings.Join(got, "; ") != c.want {
			t.Errorf("%s: %q, want %q", c.paper, got, c.want)
		}
	}
}

// The legend takes two columns where its lines are short.
func TestLegendColumns(t *testing.T) {
	for says, columns := range map[string]int{"Oil hole": 2, strings.Repeat("A long line that wraps. ", 4): 1} {
		p := render.Picture{Name: "a.png", Data: specimen.Picture(), Alt: "a"}
		for i := range 4 {
			p.Spots = append(p.Spots, render.Spot{X: 200 * i, Y: 500, Says: specimen.Runs(says)})
		}
		ops, _ := laidPicture(p, optionsFor("A5"))
		lefts := map[int]bool{}
		for _, op := range ops {
			if g, is := op.(sheet.Glyphs); is && g.Color == compose.Ink {
				lefts[g.X] = true
			}
		}
		if len(lefts) != columns {
			t.Errorf("%q stands in %d columns", says, len(lefts))
		}
	}
}

// A picture gives way to the heading of its stage as it does to its step: what
// fits a face alone lacks no more lines below a heading than that is high.
func TestPictureGivesWayToItsStage(t *testing.T) {
	most := func(head ...render.Group) int {
		for n := 0; ; n++ {
			contents := []render.Content{render.Picture{Name: "a.png", Data: specimen.Picture(), Alt: "a"}}
			for range n {
				contents = append(contents, render.Text{Runs: specimen.Runs("Wipe it.")})
			}
			d := render.Deck{Sections: []render.Section{{Name: "Steps", Groups: append(head, specimen.Step(1, "", "Look at it", contents...))}}}
			if _, problems := Faces(d, optionsFor("A5")); len(problems) > 0 {
				return n - 1
			}
		}
	}
	if alone, below := most(), most(specimen.Stage("Housing")); below < alone-3 || below < 8 {
		t.Errorf("%d lines alone, %d below a stage's heading", alone, below)
	}
}
