package layout

import (
	"benchwright/render"
	"benchwright/render/compose"
)

// panelEms is the least width of a panel beside a figure: it holds running text of
// 35 characters between its edges.
const panelEms = 17

// beside lays a panel and the figure next to it side by side, the panel at the left
// whichever comes first, where the column is wide enough for both and they stand
// lower so than one over the other.
func (p *pages) beside(first, second render.Element, x, gap int) (pair [2]placedBlock, height int, ok bool) {
	panel, figure := first, second
	if panels(second) {
		panel, figure = second, first
	}
	if !panels(panel) || !pictured(figure) {
		return pair, 0, false
	}
	c := p.c
	whole := c.Column - x
	gutter := 2 * c.Beat
	most := whole - gutter - panelEms*c.Text.Size
	for _, narrow := range []int{min(whole*3/10, most), most} { // the figure's width
		room := whole - narrow - gutter
		if most < whole/5 {
			break
		}
		a, one := p.trial(panel, room)
		b, two := p.trial(figure, narrow)
		if !one || !two || len(a.Slabs) != 1 || len(b.Slabs) != 1 {
			continue
		}
		over, _ := p.trial(panel, whole)
		under, _ := p.trial(figure, whole)
		height = max(a.Height(), b.Height())
		if height >= over.Height()+between(c, first.Content, second.Content)+under.Height() {
			continue
		}
		a.Slabs[0].Height = height // they leave the face together
		return [2]placedBlock{{Block: a, Element: panel, x: x, gap: gap}, {Block: b, Element: figure, x: x + room + gutter, level: true}}, height, true
	}
	return pair, 0, false
}

// trial lays an element out to a width and reports whether it went without a problem;
// it leaves none behind.
func (p *pages) trial(e render.Element, width int) (compose.Block, bool) {
	c := p.c
	found, drawn := len(c.Problems), c.Drawn
	c.Width = width
	b := p.block(e)
	ok := len(c.Problems) == found
	c.Problems, c.Drawn = c.Problems[:found], drawn
	return b, ok
}

// panels reports a panel with a number to set or to read.
func panels(e render.Element) bool {
	switch e.Content.(type) {
	case render.Setting, render.Reading:
		return true
	}
	return false
}

// pictured reports a figure that shows how to reach a panel's number.
func pictured(e render.Element) bool {
	switch e.Content.(type) {
	case render.Order, render.Cord, render.Indicator:
		return true
	}
	return false
}
