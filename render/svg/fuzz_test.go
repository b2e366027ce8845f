package svg

import (
	"reflect"
	"testing"
)

// Whatever the bytes: no panic, the caps hold, a drawing that is accepted stays
// inside its view box, what is refused has a place in the file, and a second
// reading is the same as the first.
func FuzzRead(f *testing.F) {
	for _, in := range []string{
		`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16"><g transform="rotate(30 8 8) scale(.5)" stroke="#4F1B4E" fill="none"><path d="M1 1h3v3s1-1 2 0q1 1 2 0t2 0a3 2 30 1 0 2 2z"/><rect x="1" y="1" width="4" height="3" rx="1"/></g></svg>`,
		`<svg width="10mm" height="5mm"><circle cx="5" cy="5" r="4" style="stroke-dasharray:4,1;fill-rule:evenodd"/><line x1="1" y1="1" x2="3" y2="3" stroke="red"/></svg>`,
		`<svg viewBox="-5 -5 10 10"><text x="0" y="0" font-size="2" text-anchor="middle">a<tspan x="1" y="2">b</tspan></text><polygon points="0,0 1,1 2,0"/></svg>`,
		`<?xml version="1.0"?><!DOCTYPE svg><svg viewBox="0 0 1 1"><script/><path d="M0 0 L1e9 1"/></svg>`,
		`<svg viewBox="0 0 1 1"><g><g style="fill:url(#a);;x"><use/></g>`,
	} {
		f.Add([]byte(in))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		d, refused := Read(data)
		again, refusedAgain := Read(data)
		if !reflect.DeepEqual(d, again) || !reflect.DeepEqual(refused, refusedAgain) {
			t.Fatal("a second reading differs")
		}
		if (d == nil) != (len(refused) > 0) {
			t.Fatalf("drawing %v, refused %v", d != nil, refused)
		}
		for _, r := range refused {
			if r.Start < 0 || r.End < r.Start || r.End > len(data) {
				t.Fatalf("%+v lies outside %d bytes", r, len(data))
			}
		}
		if d != nil {
			sane(t, d)
		}
	})
}

func sane(t *testing.T, d *Drawing) {
	if max(d.W, d.H) != Side || min(d.W, d.H) < Side/100 || len(d.Shapes) > MaxShapes {
		t.Fatalf("%d × %d, %d shapes", d.W, d.H, len(d.Shapes))
	}
	points := 0
	for _, s := range d.Shapes {
		switch s := s.(type) {
		case *Text:
			if s.X < 0 || s.Y < 0 || s.X > d.W || s.Y > d.H || s.Size < 0 || s.Size > 4*Side || s.Says == "" {
				t.Fatalf("text %+v", s)
			}
		case *Path:
			points += len(s.Segs)
			if s.Segs[0].Verb != 'M' || s.Width < 0 || s.Width > 4*Side || len(s.Dash) != 0 && len(s.Dash) != 2 && len(s.Dash) != 4 {
				t.Fatalf("path %+v", s)
			}
			for _, g := range s.Segs {
				if g.Verb != 'Z' && (g.X < -Side/50 || g.Y < -Side/50 || g.X > d.W+Side/50 || g.Y > d.H+Side/50) {
					t.Fatalf("segment %+v of %d × %d", g, d.W, d.H)
				}
				for _, v := range []int{g.X1, g.Y1, g.X2, g.Y2} {
					if v < -4*Side || v > 4*Side {
						t.Fatalf("control point %+v", g)
					}
				}
			}
		}
	}
	if points > MaxPoints {
		t.Fatalf("%d points", points)
	}
}
