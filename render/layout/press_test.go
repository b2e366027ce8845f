package layout

import (
	"testing"

	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
	"benchwright/render/specimen"
)

// stepsOf returns a section of steps, each so many lines long.
func stepsOf(heights ...int) render.Deck {
	var groups []render.Group
	for i, n := range heights {
		g := specimen.Step(i+1, "", "Turn the ring")
		g.Elements = append(g.Elements, render.Element{Content: render.Setting{Title: specimen.Runs("Cover bolts, M8"), Label: "Set", Value: "22", Unit: "N·m", Actions: [][]render.Run{specimen.Runs("Tighten."), specimen.Runs("Turn.")}}})
		g.Elements = append(g.Elements, lines(n, render.Ref(100+i)))
		groups = append(groups, g)
	}
	return render.Deck{Sections: []render.Section{{Name: "Steps", Groups: groups}}}
}

// A step that is a little too tall for what is left of a column comes into it when air
// is taken out of the column; the type stays as large.
func TestAColumnGivesAir(t *testing.T) {
	o := optionsFor("A5")
	pressed, turned := 0, 0
	for n := 1; n < 25; n++ {
		d := stepsOf(1, 1, n)
		sheets, _ := Faces(d, o) // the step may stand loose
		p := newPages(d, o)
		p.divide(1)
		need := 0
		for _, g := range d.Sections[0].Groups {
			l := p.lay(g)
			need += l.height + p.apart(g)
		}
		need -= p.apart(d.Sections[0].Groups[2])
		on := facesOf(sheets, 102)[0]
		switch {
		case need <= p.c.Tallest && on > 0:
			t.Errorf("%d lines: step 3 fits and stands on face %d", n, on+1)
		case need > p.c.Tallest && on == 0:
			pressed++
		case on > 0:
			turned++
		}
		for _, op := range sheets[0].Ops {
			if g, is := op.(sheet.Glyphs); is && g.Text == "word " && g.Size < p.c.Text.Size {
				t.Errorf("%d lines: text of size %d, want %d", n, g.Size, p.c.Text.Size)
			}
		}
	}
	if pressed == 0 || turned == 0 {
		t.Errorf("%d columns gave air, %d had too little", pressed, turned)
	}
}

// A rule parts a step from the step above it. At the head of a column, and below a
// stage's name, there is nothing to part.
func TestARulePartsSteps(t *testing.T) {
	d := stepsOf(3, 3)
	d.Sections[0].Groups = append([]render.Group{specimen.Stage("Output cartridge")}, d.Sections[0].Groups...)
	o := optionsFor("A5")
	sheets, _ := Faces(d, o)
	width, rules := o.Paper.Width-2*o.style().Side, 0
	var at int
	for _, op := range sheets[0].Ops {
		if r, is := op.(sheet.Rect); is && r.W == width && r.H == o.style().Rule && r.Fill == compose.Accent {
			rules, at = rules+1, r.Y
		}
	}
	if second := sheets[0].Groups[2]; rules != 2 || at != second.Y {
		t.Errorf("%d rules, the last at %d; want the head's and one at step 2, %d", rules, at, second.Y)
	}
}
