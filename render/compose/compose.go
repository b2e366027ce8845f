// Package compose sets type and rules: the sizes and colors of a face, text
// broken into lines, columns, boxes, panels and strokes. What an element shows is
// composed of these; where it comes to stand on a face is not known here.
package compose

import (
	"strings"

	"benchwright/render"
)

// A Compositor lays elements out to a width. It knows nothing of faces.
type Compositor struct {
	Style
	Say      render.Words
	Columns  int             // beside each other on a face
	Column   int             // width of one
	Page     int             // width of them all
	Width    int             // of what the element stands in
	Tallest  int             // height of a face's body
	Picture  int             // height that a picture may take
	Drawn    int             // height of the tallest picture so far
	Wide     bool            // the element was reported as too wide already
	Ref      render.Ref      // of the element that is being laid out
	Anchors  map[string]bool // of the deck; true until it is placed
	Problems []render.Problem
}

// Problem reports something about the element that is being laid out, once;
// what is too wide makes its words too wide as well, which is one thing.
func (c *Compositor) Problem(p render.Problem) {
	switch p.Kind {
	case render.WordTooWide, render.TableTooWide, render.FigureTooWide:
		if c.Wide {
			return
		}
		c.Wide = true
	}
	p.Ref = c.Ref
	c.Found(p)
}

// Found reports something with a reference of its own, once.
func (c *Compositor) Found(p render.Problem) {
	for _, q := range c.Problems {
		if p == q {
			return
		}
	}
	c.Problems = append(c.Problems, p)
}

// Pad is the room that a panel's contents keep clear of its edges.
func (s Style) Pad() int { return max(LeastBoxGap, 5*s.Beat/4) }

// Measure returns the width of running text: the column, or the room for 70
// characters.
func (c *Compositor) Measure() int { return min(c.Width, measureEms*c.Text.Size) }

// Says returns a text as one run, in one style.
func Says(s string) []render.Run { return []render.Run{{Text: s}} }

// Joined joins the parts that are not empty, with sep between them.
func Joined(sep string, parts ...string) string {
	var some []string
	for _, p := range parts {
		if p != "" {
			some = append(some, p)
		}
	}
	return strings.Join(some, sep)
}
