package element

import (
	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
)

// hold draws a hold point as a heavy black frame with a stop sign: nobody reads
// past it.
func hold(h render.Hold, c *compose.Compositor) compose.Block {
	u := c.Beat
	border, sign := 2*c.Frame, 5*u
	title := c.Set(compose.Says(h.Title), c.Title.In(compose.White), c.Width-2*border-sign-3*u, 0)
	strip := border + max(sign+u, title.Height()+u)
	k := compose.Column{C: c, X: border + c.Pad(), Y: strip + u/2, Width: c.Width - 2*(border+c.Pad())}
	for i, p := range []struct {
		runs   []render.Run
		weight render.Weight
	}{{h.Who, render.Semibold}, {h.Sees, render.Regular}, {h.Before, render.Semibold}} {
		if i > 0 && len(p.runs) > 0 {
			k.Y += u / 4
		}
		k.Text(heavy(p.runs, p.weight), c.Text)
	}
	if len(h.Boxes) > 0 {
		k.Boxes(h.Boxes, "", k.Width)
	}
	height := k.Y + c.Pad() + border
	var out compose.Canvas
	out.Frame(0, 0, c.Width, height, border, 0, compose.White, compose.Black, sheet.Ground)
	out.Ground(border, border, c.Width-2*border, strip-border, compose.Black)
	symbolAt(c, &out, "stop", border+u, border+(strip-border-sign)/2, sign)
	out.Para(title, border+sign+2*u, border+(strip-border-title.Height())/2)
	out.Add(k.Ops...)
	return compose.One(height, out)
}

// heavy returns runs of at least a weight.
func heavy(runs []render.Run, w render.Weight) []render.Run {
	out := append([]render.Run(nil), runs...)
	for i := range out {
		out[i].Weight = max(out[i].Weight, w)
	}
	return out
}
