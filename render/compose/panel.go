package compose

import (
	"benchwright/render"
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// Panel returns a tinted ground with a bar down its left side, for one number.
func (c *Compositor) Panel(k Column) Block {
	var out Canvas
	height := k.Y + c.Pad()
	out.Add(sheet.Rect{W: c.Width, H: height, Fill: Tint, Stroke: sheet.NoColor, Role: sheet.Ground})
	out.Ground(0, 0, c.Beat/2, height, Accent)
	out.Add(k.Ops...)
	return One(height, out)
}

// Within returns a column inside such a panel.
func (c *Compositor) Within() Column {
	return Column{C: c, X: c.Pad(), Y: c.Beat / 2, Width: c.Width - 2*c.Pad()}
}

// Titled sets what a panel is about, and behind it on the same line, as far as
// there is room, what it is read with.
func (k *Column) Titled(title, with []render.Run) {
	c := k.C
	p := c.Set(title, c.Strong, k.Width, 0)
	k.Para(p, k.X, k.Y)
	k.Y += p.Height()
	if len(with) == 0 {
		return
	}
	indent := 0
	if n := len(p.Lines); n > 0 {
		if last := p.Lines[n-1]; len(last) > 0 {
			indent = last[len(last)-1].x + last[len(last)-1].W + 2*c.Beat
		}
	}
	least, _ := c.Extent(with, c.Small)
	if q := c.Set(with, c.Small, k.Width, indent); indent > 0 && indent+least < k.Width && len(q.Lines[0]) > 0 && indent < k.Width*2/3 {
		down := p.Hand.Lead - p.Hand.Base() - (q.Hand.Lead - q.Hand.Base())
		k.Y += down - q.Hand.Lead
		k.Para(q, k.X, k.Y)
		k.Y += q.Height() - min(down, 0)
		return
	}
	k.Text(with, c.Small)
}

// Labeled sets a figure with its label before it on the same line where both
// fit, or else above it.
func (k *Column) Labeled(label, value, unit string) {
	c, u := k.C, k.C.Beat
	p := c.Set(Says(label), c.Strong.In(Accent), k.Width, 0)
	beside := p.Width + 3*u/2
	if len(p.Lines) != 1 || beside+c.FigureWidth(value, unit) > k.Width {
		k.Para(p, k.X, k.Y)
		k.Y += p.Height()
		k.Figure(value, unit)
		return
	}
	k.Para(p, k.X, k.Y+c.Figure.Base()-p.Hand.Base())
	k.X, k.Width = k.X+beside, k.Width-beside
	k.Figure(value, unit)
	k.X, k.Width = k.X-beside, k.Width+beside
}

// Measured sets a figure as Labeled does, and behind it the box for it where there
// is one and it fits. It returns the boxes that are still to be drawn.
func (k *Column) Measured(label, value, unit string, boxes []string, boxUnit string) []string {
	c := k.C
	_, w := c.Extent(Says(label), c.Strong)
	end := w + 5*c.Beat/2 + c.FigureWidth(value, unit)
	if boxUnit == unit && end+c.Lone("", boxUnit) > k.Width {
		boxUnit = "" // it stands before the box
	}
	if len(boxes) != 1 || end+c.Lone(boxes[0], boxUnit) > k.Width {
		k.Labeled(label, value, unit)
		return boxes
	}
	from := k.Y
	k.OneBox(boxes[0], boxUnit)
	height := max(k.Y-from, c.Figure.Lead)
	k.Y = from + (height-c.Figure.Lead)/2
	k.Labeled(label, value, unit)
	k.Y = from + height
	return nil
}

// FigureWidth returns the width of a figure and its unit at full size.
func (c *Compositor) FigureWidth(value, unit string) int {
	w := typeface.Width(c.Figure.Font, c.Figure.Size, value)
	if unit != "" {
		w += c.Beat + typeface.Width(c.Units.Font, c.Units.Size, unit)
	}
	return w
}

// Figure sets the large figure and its unit on one base line. What does not fit
// the column is a Problem: a figure is never made smaller.
func (k *Column) Figure(value, unit string) {
	c := k.C
	value, unit = c.Clean(value), c.Clean(unit)
	h, b := c.Figure, c.Units
	if c.FigureWidth(value, unit) > k.Width {
		c.Problem(render.Problem{Kind: render.WordTooWide, Text: Joined(" ", value, unit)})
	}
	w := typeface.Width(h.Font, h.Size, value)
	base := k.Y + h.Base()
	k.Span(Span{Text: value, Font: h.Font, W: w}, h, k.X, base)
	if unit != "" {
		k.Span(Span{Text: unit, Font: b.Font, W: typeface.Width(b.Font, b.Size, unit)}, b, k.X+w+c.Beat, base)
	}
	k.Y += h.Lead
}

// Note sets what there is to heed as one paragraph: each is a sentence of its
// own.
func (k *Column) Note(lines [][]render.Run, h Hand) {
	var all []render.Run
	for _, l := range lines {
		if len(all) > 0 && len(l) > 0 {
			all = append(all, render.Run{Text: " "})
		}
		all = append(all, l...)
	}
	k.Text(all, h)
}
