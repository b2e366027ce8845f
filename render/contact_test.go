package render

import (
	"math/rand/v2"
	"testing"
)

// A patch lies on its flank and keeps the side that its numbers say, whatever
// the tooth's size: the toe is on the left and the top above.
func TestPatchLiesOnTheFlank(t *testing.T) {
	m := rand.New(rand.NewPCG(4, 48))
	for range 500 {
		f := flank{x: m.IntN(1000), width: 5000 + m.IntN(50000), toe: 3000, heel: 1000, toeRoot: 9000, heelRoot: 10000}
		r := ContactRow{Half: 50 + m.IntN(300), Height: 50 + m.IntN(300)}
		r.Along, r.Up = r.Half+m.IntN(1000-2*r.Half), r.Height+m.IntN(1000-2*r.Height)
		for _, s := range f.patch(r).Segs {
			if s.Verb == 'Z' {
				continue
			}
			along := (s.X - f.x) * 1000 / f.width
			root, top := f.toeRoot+(f.heelRoot-f.toeRoot)*along/1000, f.toe+(f.heel-f.toe)*along/1000
			if s.X < f.x || s.X > f.x+f.width || s.Y > root+20 || s.Y < top-20 {
				t.Fatalf("%+v: %d, %d is off the flank %+v", r, s.X, s.Y, f)
			}
		}
	}
	f := flank{width: 1000, toe: 300, heel: 100, toeRoot: 900, heelRoot: 1000}
	for _, c := range [][4]int{{0, 0, 0, 900}, {0, 1000, 0, 300}, {1000, 0, 1000, 1000}, {1000, 1000, 1000, 100}} {
		if x, y := f.at(c[0], c[1]); x != c[2] || y != c[3] {
			t.Errorf("%v: %d, %d", c, x, y)
		}
	}
}

// Every picture has its letter, its box and its patch; on a grey printer the
// patch stands out from the tooth.
func TestContactRows(t *testing.T) {
	alone := sampleContact()
	alone.Rows[1].Do = alone.Rows[1].Do[:1] // its link leads nowhere here
	for _, o := range allOptions() {
		d := Deck{Sections: []Section{{Name: "Look-up", Groups: []Group{{Elements: elements(Text{Role: Lead, Runs: r("For step 3")}, alone)}}}}}
		sheets, problems := Layout(d, o)
		if len(problems) > 0 {
			t.Errorf("%s: %+v", o.Paper.Name, problems)
		}
		boxes, patches, letters := 0, 0, ""
		for _, s := range sheets {
			for _, op := range s.Ops {
				switch op := op.(type) {
				case Rect:
					if op.Role == TickBox {
						boxes++
					}
				case Path:
					if op.Fill == accent {
						patches++
					}
				case Glyphs:
					if len(op.Text) == 1 && op.Color == accent {
						letters += op.Text
					}
				}
			}
		}
		if boxes != 5 || patches != 5 || letters != "ABCDE" {
			t.Errorf("%s: %d boxes, %d patches, letters %q", o.Paper.Name, boxes, patches, letters)
		}
	}
	if contrast(accent, white) < 7 {
		t.Error("the patch is hard to see")
	}
}

// A lead line stays with what it leads, and what runs on is kept whole where a
// face holds it.
func TestLeadStaysWithWhatItLeads(t *testing.T) {
	alone := sampleContact()
	alone.Rows[1].Do = alone.Rows[1].Do[:1] // its link leads nowhere here
	pictures := Group{Elements: elements(Text{Role: Lead, Runs: r("For step 3")}, alone)}
	for _, o := range allOptions() {
		d := Deck{Sections: []Section{{Name: "Look-up", Groups: []Group{pictures, pictures, pictures}}}}
		sheets, problems := Layout(d, o)
		if len(problems) > 0 {
			t.Errorf("%s: %+v", o.Paper.Name, problems)
		}
		for i, s := range sheets {
			last := ""
			for _, m := range s.Marks {
				if g, is := s.Ops[m.From].(Glyphs); is {
					last = g.Text
				} else {
					last = ""
				}
			}
			if last == "For step 3" {
				t.Errorf("%s: face %d ends with a lead", o.Paper.Name, i+1)
			}
		}
		if want := map[string]int{"A5": 3, "half-Letter": 3}[o.Paper.Name]; want > 0 && len(sheets) != want {
			t.Errorf("%s: %d faces", o.Paper.Name, len(sheets))
		}
	}
}
