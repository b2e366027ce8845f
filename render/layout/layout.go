// Package layout fills faces: it keeps groups together, runs on what may run on,
// and adds what every face repeats.
package layout

import (
	"fmt"
	"strconv"
	"strings"

	"benchwright/render"
	"benchwright/render/checkcode"
	"benchwright/render/compose"
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// Options choose the paper and how far from it its reader stands.
type Options struct {
	Paper    sheet.Paper
	Distance int    // of the reader's eye, in micrometers; 0 is half a meter, 350 mm for A6
	Uncoded  bool   // no laminate for the bench: without a check code
	Deck     string // check code of the deck that a strip on plain paper belongs to; or ""
	Plain    bool   // plain paper read in the hand, not a laminate: smaller text, no film margin
}

func (o Options) style() compose.Style { return compose.NewStyle(o.Paper, o.Distance, o.Plain) }

// Faces lays a deck out on faces of the paper that o names. It always gives
// sheets; what could not be done well is in the problems, each with the
// caller's reference. The same deck gives the same sheets.
func Faces(d render.Deck, o Options) ([]sheet.Sheet, []render.Problem) {
	p := newPages(d, o)
	for i, s := range d.Sections {
		columns := p.c.Style.Columns(o.Paper, s.Small)
		if o.Plain {
			columns = 1
		}
		p.section(i, s, columns)
	}
	p.close()
	if len(p.faces) > 1 { // one face cannot be made fewer
		for _, l := range p.loose {
			p.c.Found(l)
		}
	}
	return p.sheets(d, o), p.c.Problems
}

// newPages prepares faces for a deck: their columns, and their body between head
// and foot.
func newPages(d render.Deck, o Options) *pages {
	c := &compose.Compositor{Style: o.style(), Say: d.Words.WithDefaults(), Anchors: map[string]bool{}, Columns: 1}
	c.Page = o.Paper.Width - 2*c.Side
	for _, s := range d.Sections {
		for _, g := range s.Groups {
			if g.Anchor != "" {
				c.Anchors[g.Anchor] = true
			}
		}
	}
	p := &pages{c: c}
	p.divide(1)
	var scratch compose.Canvas
	p.first = head(c, &scratch, d.Running, place{}, o) + c.Beat
	p.last = o.Paper.Height - c.Bottom - footLines(c, d.Running)*c.Label.Lead - c.Beat
	p.foot = o.Paper.Height - c.Bottom - c.Label.Lead
	c.Tallest = p.last - p.first
	return p
}

// sheets adds what every face repeats, now that their number is known.
func (p *pages) sheets(d render.Deck, o Options) []sheet.Sheet {
	c := p.c
	c.Ref, c.Width = 0, c.Column
	counts := make([]int, len(d.Sections))
	for _, f := range p.faces {
		counts[f.section]++
	}
	faceOf := map[string]int{}
	for i, f := range p.faces {
		for _, a := range f.anchors {
			faceOf[a.Name] = i + 1
		}
	}
	part := make([]int, len(d.Sections))
	all := make([]sheet.Sheet, len(p.faces))
	for i, f := range p.faces {
		part[f.section]++
		name := d.Sections[f.section].Name
		switch n := len(f.steps); {
		case n == 1:
			name = fmt.Sprintf(c.Say.Step, f.steps[0], p.count)
		case n > 1:
			name = fmt.Sprintf(c.Say.Steps, f.steps[0], f.steps[n-1], p.count)
		case counts[f.section] > 1 && counts[f.section] < len(p.faces): // else the face's own number says it
			name = fmt.Sprintf(c.Say.Part, name, part[f.section], counts[f.section])
		}
		at := place{part: strings.TrimSpace(name), face: i + 1, faces: len(p.faces)}
		if !o.Plain && !o.Uncoded {
			at.code = checkcode.Of(d.Running, f.pieces)
		}
		var k compose.Canvas
		head(c, &k, d.Running, at, o)
		for _, r := range f.rules {
			k.Add(r)
		}
		n := len(k.Ops)
		for j := range f.marks {
			f.marks[j].From += n
			f.marks[j].To += n
		}
		for j := range f.groups {
			f.groups[j].From += n
			f.groups[j].To += n
		}
		number(f.Ops, faceOf)
		k.Add(f.Ops...)
		foot(c, &k, d.Running, o)
		all[i] = sheet.Sheet{Width: o.Paper.Width, Height: o.Paper.Height, Name: at.part, Code: string(at.code),
			Bookmarks: f.bookmarks, Anchors: f.anchors, Ops: k.Ops, Groups: f.groups, Marks: f.marks}
	}
	return all
}

// titled returns a bookmark's text without what a PDF string cannot hold.
func titled(s string) string {
	return strings.Map(func(r rune) rune {
		if r = compose.Stands(r); r > 0xFFFF {
			return -1
		}
		return r
	}, strings.ToValidUTF8(s, ""))
}

// number puts the numbers of faces in the place of FaceOf. The link of a text
// is the operation behind it.
func number(ops []sheet.Op, faceOf map[string]int) {
	for i, op := range ops {
		g, is := op.(sheet.Glyphs)
		if !is || !strings.Contains(g.Text, render.FaceOf) || i+1 == len(ops) {
			continue
		}
		if l, is := ops[i+1].(sheet.Link); is {
			g.Text = strings.ReplaceAll(g.Text, render.FaceOf, strconv.Itoa(faceOf[l.To]))
			g.Width = typeface.Width(g.Font, g.Size, g.Text)
			ops[i] = g
		}
	}
}
