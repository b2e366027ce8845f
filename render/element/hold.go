package element

import (
	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
)

// A hold point is a heavy black frame with a stop sign: nobody reads past it.
func hold(h render.Hold, c *compose.Compositor) compose.Block {
	u := c.Beat
	border, sign := 2*c.Frame, 13*u/2
	title := c.Set(compose.Says(h.Title), c.Title.In(compose.White), c.Width-2*border-sign-4*u, 0)
	strip := border + max(8*u, title.Height()+2*u)
	k := compose.Column{C: c, X: border + c.Pad(), Y: strip + u/2, Width: c.Width - 2*(border+c.Pad())}
	k.Text(h.Who, c.Strong)
	k.Text(h.Sees, c.Text)
	k.Text(h.Before, c.Strong)
	if len(h.Boxes) > 0 {
		k.Y += u
		k.Boxes(h.Boxes, "", k.Width)
	}
	height := c.Beats(k.Y + u + border)
	var out compose.Canvas
	out.Frame(0, 0, c.Width, height, border, 0, compose.White, compose.Black, sheet.Ground)
	out.Ground(border, border, c.Width-2*border, strip-border, compose.Black)
	symbolAt(c, &out, "stop", border+u, border+(strip-border-sign)/2, sign)
	out.Para(title, border+sign+3*u, border+(strip-border-title.Height())/2)
	out.Add(k.Ops...)
	return compose.One(height, out)
}
