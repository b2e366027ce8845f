// Package dump writes sheets as text, for people and golden files.
package dump

import (
	"bufio"
	"bytes"
	"cmp"
	"fmt"
	"hash/crc32"
	"image"
	"io"
	"slices"
	"strings"

	"benchwright/render"
	"benchwright/render/sheet"
)

// Write writes the sheets as text: one line for each bookmark, anchor and
// operation, in order, in micrometers. The operations of a group or element
// are indented below its line, with coordinates relative to its top left
// corner, so that a step that grows changes only its own lines and the
// positions of later ones. References are left out. Write does not check
// anything.
func Write(w io.Writer, sheets []sheet.Sheet) error {
	out := bufio.NewWriter(w)
	for i, s := range sheets {
		if i > 0 {
			fmt.Fprintln(out)
		}
		fmt.Fprintf(out, "sheet %d×%d %q%s\n", s.Width, s.Height, s.Name, when(s.Turned, " turned"))
		for _, b := range s.Bookmarks {
			fmt.Fprintf(out, "bookmark %d y %d%s %q\n", b.Level, b.Y, when(b.Order != 0, fmt.Sprintf(" order %d", b.Order)), b.Text)
		}
		for _, a := range s.Anchors {
			fmt.Fprintf(out, "anchor y %d %q\n", a.Y, a.Name)
		}
		writeOps(out, s)
	}
	return out.Flush()
}

// A part is a group or element, whose operations are indented below its line.
type part struct {
	line     string
	area     sheet.Area
	from, to int
}

// parts returns the groups and elements of a sheet, each after the one that
// contains it.
func parts(s sheet.Sheet) []part {
	var all []part
	for _, g := range s.Groups {
		all = append(all, part{g.Name, g.Area, g.From, g.To})
	}
	for _, m := range s.Marks {
		class := "technical"
		if m.Class == render.Wording {
			class = "wording"
		}
		all = append(all, part{m.Kind + when(m.Kind != "", " ") + class, m.Area, m.From, m.To})
	}
	slices.SortStableFunc(all, func(a, b part) int {
		return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(b.to, a.to))
	})
	return all
}

func writeOps(out io.Writer, s sheet.Sheet) {
	next := parts(s)
	var open []part
	corner := func() (x, y int) {
		if n := len(open); n > 0 {
			x, y = open[n-1].area.X, open[n-1].area.Y
		}
		return x, y
	}
	for i := 0; i <= len(s.Ops); i++ {
		open = slices.DeleteFunc(open, func(p part) bool { return p.to <= i })
		for len(next) > 0 && next[0].from <= i {
			p := next[0]
			next = next[1:]
			x, y := corner()
			fmt.Fprintf(out, "%s%s at %d,%d size %d×%d, %d ops\n", indent(open), p.line, p.area.X-x, p.area.Y-y, p.area.W, p.area.H, p.to-p.from)
			if p.to > i {
				open = append(open, p)
			}
		}
		if i < len(s.Ops) {
			x, y := corner()
			writeOp(out, len(open), sheet.Moved(s.Ops[i], -x, -y))
		}
	}
}

// writeOp writes one operation. Those of a drawing are indented below it, with
// coordinates relative to its corner.
func writeOp(out io.Writer, depth int, op sheet.Op) {
	fmt.Fprintf(out, "%s%s\n", strings.Repeat("  ", depth), operation(op))
	if d, is := op.(sheet.Drawing); is {
		for _, op := range d.Ops {
			writeOp(out, depth+1, sheet.Moved(op, -d.X, -d.Y))
		}
	}
}

func indent(open []part) string { return strings.Repeat("  ", len(open)) }

func operation(op sheet.Op) string {
	switch op := op.(type) {
	case sheet.Glyphs:
		return fmt.Sprintf("text %d,%d %s %d%s w %d %q", op.X, op.Y, op.Font.Name(), op.Size, when(op.Color != 0, fmt.Sprintf(" %06X", op.Color)), op.Width, op.Text)
	case sheet.Rect:
		role := [...]string{sheet.Ground: "rect", sheet.WriteBox: "write-box", sheet.TickBox: "tick-box", sheet.Tint: "tint"}
		name := fmt.Sprintf("rect-%d", op.Role)
		if int(op.Role) < len(role) {
			name = role[op.Role]
		}
		return fmt.Sprintf("%s %d,%d %d×%d%s%s", name, op.X, op.Y, op.W, op.H,
			when(op.Radius != 0, fmt.Sprintf(" radius %d", op.Radius)), paint(op.Fill, op.Stroke, op.StrokeWidth))
	case sheet.Line:
		return fmt.Sprintf("line %d,%d %d,%d%s%s", op.X1, op.Y1, op.X2, op.Y2, paint(sheet.NoColor, op.Color, op.Width),
			when(op.Dash != 0, fmt.Sprintf(" dash %d", op.Dash)))
	case sheet.Path:
		return "path" + paint(op.Fill, op.Stroke, op.StrokeWidth) + when(op.EvenOdd, " even-odd") + when(op.Butt, " butt") + when(op.Miter, " miter") +
			when(op.Dash != [4]int{}, " dash "+strings.Trim(fmt.Sprint(op.Dash), "[]")) + outline(op.Segs)
	case sheet.Image:
		size := "broken"
		if c, _, err := image.DecodeConfig(bytes.NewReader(op.Pixels)); err == nil {
			size = fmt.Sprintf("%d×%d", c.Width, c.Height)
		}
		return fmt.Sprintf("image %d,%d %d×%d %s %s %q alt %q", op.X, op.Y, op.W, op.H, op.Format, size, op.Name, op.Alt)
	case sheet.Drawing:
		return fmt.Sprintf("drawing %d,%d %d×%d %q alt %q", op.X, op.Y, op.W, op.H, op.Name, op.Alt)
	case sheet.Link:
		return fmt.Sprintf("link %d,%d %d×%d %q", op.X, op.Y, op.W, op.H, op.To)
	}
	return fmt.Sprintf("unknown %T", op)
}

// outline prints a short path in full; for a long one, such as a symbol's, it
// prints the area and a hash.
func outline(segs []sheet.Seg) string {
	var b strings.Builder
	x0, y0, x1, y1 := 0, 0, 0, 0
	first := true
	for _, s := range segs {
		fmt.Fprintf(&b, " %c", s.Verb)
		if s.Verb == 'C' {
			fmt.Fprintf(&b, " %d,%d %d,%d", s.X1, s.Y1, s.X2, s.Y2)
		}
		if s.Verb == 'Z' {
			continue
		}
		fmt.Fprintf(&b, " %d,%d", s.X, s.Y)
		if first {
			x0, y0, x1, y1, first = s.X, s.Y, s.X, s.Y, false
		}
		x0, y0, x1, y1 = min(x0, s.X), min(y0, s.Y), max(x1, s.X), max(y1, s.Y)
	}
	if len(segs) <= 5 {
		return b.String()
	}
	return fmt.Sprintf(" %d,%d to %d,%d, %d pieces, sum %08x", x0, y0, x1, y1, len(segs), crc32.ChecksumIEEE([]byte(b.String())))
}

func paint(fill, stroke sheet.Color, width int) string {
	return when(fill != sheet.NoColor, fmt.Sprintf(" fill %06X", fill)) +
		when(stroke != sheet.NoColor && width > 0, fmt.Sprintf(" stroke %06X %d", stroke, width))
}

func when(yes bool, s string) string {
	if yes {
		return s
	}
	return ""
}
