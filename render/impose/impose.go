// Package impose puts faces on larger sheets for duplex printing, with crop
// marks.
package impose

import (
	"fmt"
	"slices"
	"strings"

	"benchwright/render/sheet"
)

// A Flip is the edge over which the printer turns the sheet to print its back,
// as printer settings call it.
type Flip uint8

const (
	ShortEdge Flip = iota
	LongEdge
)

// Plan says how faces are put on a larger
type Plan struct {
	Paper sheet.Paper // portrait or landscape, whichever leaves the wider margins
	Up    int         // faces on each side of the sheet, 2 or 4
	Flip  Flip
}

const (
	cropRoom  = 6000 // sheet needed outside a trim edge for a crop mark; also the empty margin inside it
	cropGap   = 2000 // from the trim edge to a mark outside it
	cropTick  = 3000 // length of a crop mark inside the margin
	cropWidth = 150

	cropColor sheet.Color = 0x111111
)

// Sheets puts faces on sheets for duplex printing. The result has two sheets
// for each sheet of paper, front and back. Faces 1 and 2, 3 and 4 and so on
// are front and back of one pouch and are placed back to back: two up, the
// front has 1 and 3, the back 4 and 2. An odd last face leaves an empty place.
//
// Both sides are upright when a cut card is turned like a page. If the printer
// turns the sheet head over foot, the back is Turned.
//
// A trim edge is an edge of the sheet or a cut line. Its crop marks are
// outside the trim if the sheet has 6 mm there, else inside the margin that
// every face keeps empty. Two A5 are 1 mm short of an A4: they are placed at
// its edges, with two cut lines in the middle.
//
// Anchors, bookmarks, links and marks move with their faces; bookmarks keep
// the order of the faces. The error is a sentence: faces of different sizes,
// or too large.
func Sheets(faces []sheet.Sheet, o Plan) ([]sheet.Sheet, error) {
	if len(faces) == 0 {
		return nil, nil
	}
	w, h := faces[0].Width, faces[0].Height
	for _, f := range faces {
		if f.Width != w || f.Height != h || f.Turned {
			return nil, fmt.Errorf("page %q does not have the size and orientation of %q", f.Name, faces[0].Name)
		}
	}
	g, ok := fit(w, h, o)
	if !ok {
		return nil, fmt.Errorf("%d pages of %s do not fit on %s (%s)", o.Up, sheet.Millimeters(w, h), o.Paper.Name, sheet.Millimeters(o.Paper.Width, o.Paper.Height))
	}
	var sheets []sheet.Sheet
	for first := 0; first < len(faces); first += 2 * o.Up {
		front := sheet.Sheet{Width: g.width, Height: g.height}
		back := sheet.Sheet{Width: g.width, Height: g.height, Turned: g.headOverFoot(o.Flip)}
		for i := range o.Up {
			x, y := g.xs[i%len(g.xs)], g.ys[i/len(g.xs)]
			if n := first + 2*i; n < len(faces) {
				place(&front, faces[n], n, x, y)
			}
		}
		for i := range o.Up { // in reading order, from the left of the back
			column, row := len(g.xs)-1-i%len(g.xs), i/len(g.xs)
			if n := first + 2*(row*len(g.xs)+column) + 1; n < len(faces) {
				place(&back, faces[n], n, g.width-g.xs[column]-w, g.ys[row])
			}
		}
		number := len(sheets)/2 + 1
		front.Name = strings.TrimSuffix(fmt.Sprintf("Sheet %d front: %s", number, front.Name), ": ")
		back.Name = strings.TrimSuffix(fmt.Sprintf("Sheet %d back: %s", number, back.Name), ": ")
		front.Ops = append(front.Ops, g.cropMarks(w, h, false)...)
		back.Ops = append(back.Ops, g.cropMarks(w, h, true)...)
		sheets = append(sheets, front, back)
	}
	return sheets, nil
}

// A placement is where faces are placed on a sheet: the left edges of its
// columns and the top edges of its rows.
type placement struct {
	width, height int
	xs, ys        []int
}

// fit finds the columns, rows and orientation with the widest minimum margin;
// among equals, portrait first, then fewer columns.
func fit(w, h int, o Plan) (placement, bool) {
	best, found := -1, placement{}
	for _, paper := range [][2]int{{o.Paper.Width, o.Paper.Height}, {o.Paper.Height, o.Paper.Width}} {
		for columns := 1; columns <= o.Up; columns++ {
			if o.Up%columns != 0 {
				continue
			}
			rows := o.Up / columns
			if room := min(paper[0]-columns*w, paper[1]-rows*h); room > best {
				best = room
				found = placement{paper[0], paper[1], spread(paper[0], w, columns), spread(paper[1], h, rows)}
			}
		}
	}
	return found, best >= 0
}

// spread places n faces along one side of a sheet: together in the middle if
// there is room for marks outside, else at the sheet's edges.
func spread(sheet, face, n int) []int {
	free := sheet - n*face
	at := make([]int, n)
	for i := range at {
		switch {
		case free >= 2*cropRoom:
			at[i] = free/2 + i*face
		case n > 1:
			at[i] = i * (sheet - face) / (n - 1)
		}
	}
	return at
}

// headOverFoot reports whether the printer turns the sheet over its top or
// bottom edge.
func (g placement) headOverFoot(f Flip) bool {
	landscape := g.width > g.height
	return landscape == (f == LongEdge)
}

// place draws face number n on s, with its corner at x, y.
func place(s *sheet.Sheet, f sheet.Sheet, n, x, y int) {
	if s.Name != "" {
		s.Name += " | "
	}
	s.Name += f.Name
	base := len(s.Ops)
	for _, g := range f.Groups {
		g.X, g.Y, g.From, g.To = g.X+x, g.Y+y, g.From+base, g.To+base
		s.Groups = append(s.Groups, g)
	}
	for _, m := range f.Marks {
		m.X, m.Y, m.From, m.To = m.X+x, m.Y+y, m.From+base, m.To+base
		s.Marks = append(s.Marks, m)
	}
	for _, b := range f.Bookmarks {
		b.Y += y
		b.Order = n + 1
		s.Bookmarks = append(s.Bookmarks, b)
	}
	for _, a := range f.Anchors {
		a.Y += y
		s.Anchors = append(s.Anchors, a)
	}
	for _, op := range f.Ops {
		s.Ops = append(s.Ops, sheet.Moved(op, x, y))
	}
}

// cropMarks returns the marks at both ends of every cut line. On a back, the
// columns are mirrored.
func (g placement) cropMarks(w, h int, mirrored bool) []sheet.Op {
	xs := slices.Clone(g.xs)
	if mirrored {
		for i, x := range g.xs {
			xs[len(xs)-1-i] = g.width - x - w
		}
	}
	var ops []sheet.Op
	for _, x := range cutLines(xs, w, g.width) {
		for _, end := range markEnds(g.ys, h, g.height) {
			ops = append(ops, sheet.Line{X1: x, Y1: end[0], X2: x, Y2: end[1], Width: cropWidth, Color: cropColor})
		}
	}
	for _, y := range cutLines(g.ys, h, g.height) {
		for _, end := range markEnds(xs, w, g.width) {
			ops = append(ops, sheet.Line{X1: end[0], Y1: y, X2: end[1], Y2: y, Width: cropWidth, Color: cropColor})
		}
	}
	return ops
}

// cutLines returns the trim edges along one side that are not edges of the
// sheet.
func cutLines(at []int, face, sheet int) []int {
	var edges []int
	for _, a := range at {
		edges = append(edges, a, a+face)
	}
	slices.Sort(edges)
	edges = slices.Compact(edges)
	return slices.DeleteFunc(edges, func(e int) bool { return e == 0 || e == sheet })
}

// markEnds returns the extents of the two marks of a cut line that crosses
// faces at these positions.
func markEnds(at []int, face, sheet int) [2][2]int {
	first, last := at[0], at[len(at)-1]+face
	marks := [2][2]int{
		{first + cropRoom - cropTick, first + cropRoom},
		{last - cropRoom, last - cropRoom + cropTick},
	}
	if first >= cropRoom {
		marks[0] = [2]int{first - cropRoom, first - cropGap}
	}
	if sheet-last >= cropRoom {
		marks[1] = [2]int{last + cropGap, last + cropRoom}
	}
	return marks
}
