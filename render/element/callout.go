package element

import (
	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
	"benchwright/render/symbol"
	"benchwright/render/typeface"
)

// A full callout has its word in a strip, the symbols on the left, and what
// may happen and how to avoid it beside them.
func callout(o render.Callout, c *compose.Compositor) compose.Block {
	if o.Short {
		return shortCallout(o, c)
	}
	u, l := c.Beat, compose.LookOf(o.Signal)
	border := c.Frame * l.Border / 8
	left, strip := border+3*u/2, border+5*u
	rows := make([][]render.Run, 0, 2)
	rows = append(rows, sentence(o.Hazard, o.Result), o.Avoid)
	hands := []compose.Hand{c.Text, c.Strong}
	if o.AvoidFirst {
		rows[0], rows[1], hands[0], hands[1] = rows[1], rows[0], hands[1], hands[0]
	}
	fill := func(columns int) (compose.Column, int) {
		k := compose.Column{C: c, X: left, Y: strip + u/2, Width: c.Width - 2*left}
		down := 0
		if n := len(o.Symbols); n > 0 {
			down = (n + columns - 1) / columns * (c.Symbol + u)
			for i, code := range o.Symbols {
				symbolAt(c, &k.Canvas, code, k.X+i%columns*(c.Symbol+u), strip+u+i/columns*(c.Symbol+u), c.Symbol)
			}
			k.X += columns * (c.Symbol + u)
			k.Width -= columns * (c.Symbol + u)
			k.X, k.Width = k.X+u/2, k.Width-u/2
		}
		for i, runs := range rows {
			k.Text(runs, hands[i])
		}
		return k, max(k.Y+u/2, strip+u+down) + border
	}
	// Symbols stand side by side or one under the other, whichever is lower.
	k, height := fill(1)
	for n := 2; n <= len(o.Symbols); n++ {
		if q, h := fill(n); h < height {
			k, height = q, h
		}
	}
	height = c.Beats(height)
	var out compose.Canvas
	drawBorder(o, &out, c, height)
	out.Ground(border, border, c.Width-2*border, strip-border, l.Ground)
	signalWord(c, &out, o.Signal, o.Word, c.Signal, left, border, strip-border)
	out.Add(k.Ops...)
	return compose.One(height, out)
}

// signalWord sets a word with its triangle in a strip and returns its width.
func signalWord(c *compose.Compositor, k *compose.Canvas, s render.Signal, word string, h compose.Hand, x, y, strip int) int {
	l, at := compose.LookOf(s), x
	if l.Alert != "" {
		side := strip * 3 / 4
		symbolAt(c, k, l.Alert, at, y+(strip-side)/2, side)
		at += side + strip/6
	}
	h = h.In(l.Word)
	h.Font = typeface.Bold
	p := c.Set(compose.Says(word), h, c.Width, 0)
	k.Para(p, at, y+(strip-h.Lead)/2)
	return at + p.Width - x
}

// sentence joins runs that follow one another in a paragraph.
func sentence(a, b []render.Run) []render.Run {
	if len(a) == 0 || len(b) == 0 {
		return append(append([]render.Run(nil), a...), b...)
	}
	return append(append(append([]render.Run(nil), a...), render.Run{Text: " "}), b...)
}

// short is one row: symbols, word, how to avoid.
func shortCallout(o render.Callout, c *compose.Compositor) compose.Block {
	u := c.Beat
	inset := c.Frame*compose.LookOf(o.Signal).Border/8 + u
	k := compose.Column{C: c, X: inset, Y: inset, Width: c.Width - 2*inset}
	height := 0
	for _, code := range o.Symbols {
		symbolAt(c, &k.Canvas, code, k.X, inset, c.Minor)
		k.X += c.Minor + u
		height = c.Minor
	}
	if height > 0 {
		k.X += u / 2
	}
	k.Width -= k.X - inset
	var scratch compose.Canvas
	chip := drawChip(c, &scratch, o.Signal, o.Word, 0, 0, c.Text.Lead, 0)
	p := c.Set(o.Avoid, c.Strong, k.Width, chip+u)
	text := max(p.Height(), c.Text.Lead)
	y := inset + max(0, (height-text)/2)
	drawChip(c, &k.Canvas, o.Signal, o.Word, k.X, y, c.Text.Lead, 0)
	k.Para(p, k.X, y)
	height = c.Beats(2*inset + max(height, text))
	var out compose.Canvas
	drawBorder(o, &out, c, height)
	out.Add(k.Ops...)
	return compose.One(height, out)
}

// drawChip sets a signal word on its colour, as high as a line and at least so
// wide; it returns its width.
func drawChip(c *compose.Compositor, k *compose.Canvas, s render.Signal, word string, x, y, lead, least int) int {
	u := c.Beat
	h := lead - u/2
	var in compose.Canvas
	w := max(least, signalWord(c, &in, s, word, c.Tag, x+u/2, y+u/4, h)+u)
	k.Ground(x, y+u/4, w, h, compose.LookOf(s).Ground)
	k.Add(in.Ops...)
	return w
}

// drawBorder draws a callout's own border.
func drawBorder(o render.Callout, k *compose.Canvas, c *compose.Compositor, height int) {
	l := compose.LookOf(o.Signal)
	b := c.Frame * l.Border / 8
	if !l.Dashed {
		k.Frame(0, 0, c.Width, height, b, 0, compose.White, compose.Black, sheet.Ground)
		return
	}
	k.Add(sheet.Rect{W: c.Width, H: height, Fill: compose.White, Stroke: sheet.NoColor, Role: sheet.Ground})
	x, y, r, t := b/2, b/2, c.Width-b/2, height-b/2
	for _, line := range []sheet.Line{{X1: x, Y1: y, X2: r, Y2: y}, {X1: r, Y1: y, X2: r, Y2: t}, {X1: x, Y1: t, X2: r, Y2: t}, {X1: x, Y1: y, X2: x, Y2: t}} {
		line.Width, line.Color, line.Dash = b, compose.Black, c.Beat
		k.Add(line)
	}
}

// symbolAt draws a symbol, or reports that there is none of that code.
func symbolAt(c *compose.Compositor, k *compose.Canvas, code string, x, y, size int) {
	ops, ok := symbol.Draw(code, x, y, size)
	if !ok {
		c.Problem(render.Problem{Kind: render.NoSymbol, Text: code})
	}
	k.Add(ops...)
}
