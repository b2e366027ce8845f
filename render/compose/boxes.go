package compose

import (
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// Boxes adds boxes to write in, each under its label, in rows of equal
// columns none wider than most. A unit stands behind each box.
func (k *Column) Boxes(labels []string, unit string, most int) {
	if len(labels) == 0 {
		return
	}
	if len(labels) == 1 && k.C.Lone(labels[0], unit) <= k.Width && labels[0] == "" {
		from := k.Width
		k.Width = k.C.Lone("", unit)
		k.OneBox("", unit)
		k.Width = from
		return
	}
	c, gap := k.C, max(LeastBoxGap, k.C.Beat)
	after := c.behind(unit)
	least := c.Boxes
	for _, l := range labels {
		w, _ := c.Extent(Says(l), c.Label)
		least = max(least, w)
	}
	n := min(len(labels), max(1, (k.Width+gap)/(least+after+gap)))
	w := min((k.Width-(n-1)*gap)/n-after, most)
	if rows := (len(labels) + n - 1) / n; rows > 1 { // no box alone on the last row
		n = (len(labels) + rows - 1) / rows
	}
	for from := 0; from < len(labels); from += n {
		row := labels[from:min(from+n, len(labels))]
		over := 0
		paras := make([]Para, len(row))
		for i, l := range row {
			paras[i] = c.Set(Says(l), c.Label, w+after, 0)
			over = max(over, paras[i].Height())
		}
		if from > 0 {
			k.Y += max(c.Beat/2, LeastBoxGap-over)
		}
		for i, p := range paras {
			x := k.X + i*(w+after+gap)
			k.Para(p, x, k.Y+over-p.Height())
			k.WriteBox(x, k.Y+over, w, unit)
		}
		k.Y += over + c.Box
	}
}

// behind returns the room that a unit takes behind a box.
func (c *Compositor) behind(unit string) int {
	if unit == "" {
		return 0
	}
	return typeface.Width(c.Name.Font, c.Name.Size, c.Clean(unit)) + c.Beat/2
}

// Lone returns the width of one box with its label before it and its unit
// behind.
func (c *Compositor) Lone(label, unit string) int {
	_, w := c.Extent(Says(label), c.Label)
	if w > 0 {
		w += c.Beat
	}
	return w + c.Boxes + c.behind(unit)
}

// OneBox draws one box at the right of the column, its label before it.
func (k *Column) OneBox(label, unit string) {
	c := k.C
	x := k.X + k.Width - c.Lone(label, unit)
	p := c.Set(Says(label), c.Label, k.Width, 0)
	if p.Width > 0 {
		k.Para(p, x, k.Y+(c.Box-p.Hand.Lead)/2)
		x += p.Width + c.Beat
	}
	k.WriteBox(x, k.Y, c.Boxes, unit)
	k.Y += c.Box
}

// WriteBox draws one box and the unit behind it.
func (k *Column) WriteBox(x, y, w int, unit string) {
	c := k.C
	k.Frame(x, y, w, c.Box, c.Frame, c.Beat/4, White, Ink, sheet.WriteBox)
	if unit = c.Clean(unit); unit != "" {
		h := c.Name
		k.Span(Span{Text: unit, Font: h.Font, W: typeface.Width(h.Font, h.Size, unit)}, h, x+w+c.Beat/2, y+(c.Box+h.Cap())/2)
	}
}
