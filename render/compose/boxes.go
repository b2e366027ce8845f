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
	c, gap := k.C, 2*k.C.Beat
	unit = c.Clean(unit)
	after := 0
	if unit != "" {
		after = typeface.Width(c.Units.Font, c.Label.Size, unit) + c.Beat
	}
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
		if from > 0 {
			k.Y += c.Beat
		}
		row := labels[from:min(from+n, len(labels))]
		over := 0
		paras := make([]Para, len(row))
		for i, l := range row {
			paras[i] = c.Set(Says(l), c.Label, w+after, 0)
			over = max(over, paras[i].Height())
		}
		for i, p := range paras {
			x := k.X + i*(w+after+gap)
			k.Para(p, x, k.Y+over-p.Height())
			k.Frame(x, k.Y+over, w, c.Box, c.Frame, c.Beat/4, White, Ink, sheet.WriteBox)
			if unit != "" {
				h := c.Label
				width := typeface.Width(c.Units.Font, h.Size, unit)
				k.Span(Span{Text: unit, Font: c.Units.Font, W: width}, h.In(Ink), x+w+c.Beat/2, k.Y+over+c.Box-c.Beat)
			}
		}
		k.Y += over + c.Box
	}
	k.Y = c.Beats(k.Y + c.Beat)
}
