package element

import (
	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
	"benchwright/render/symbol"
	"benchwright/render/typeface"
)

// callout draws a full callout: its word and its symbols in a cell at the left,
// and what may happen and how to avoid it beside them.
func callout(o render.Callout, c *compose.Compositor) compose.Block {
	if o.Short {
		return shortCallout(o, c)
	}
	u, l := c.Beat, compose.LookOf(o.Signal)
	border := c.Frame * l.Border / 8
	pad := max(u/2, compose.LeastBoxGap-border)
	first, then := heavy(sentence(o.Hazard, o.Result), render.Regular), heavy(o.Avoid, render.Semibold)
	if o.AvoidFirst {
		first, then = then, first
	}
	runs := sentence(first, then)
	var scratch compose.Canvas
	chip := drawChip(c, &scratch, o.Signal, o.Word, 0, 0, 0)
	// Symbols stand side by side or one under the other, whichever is lower.
	fill := func(columns int) (compose.Column, int) {
		n := len(o.Symbols)
		cell := max(chip, columns*(c.Symbol+u/2)-u/2)
		k := compose.Column{C: c, X: border + cell + 3*u/2, Y: border + u/4, Width: c.Width - 2*border - cell - 3*u/2 - pad}
		down := border + chipHeight(c)
		drawChip(c, &k.Canvas, o.Signal, o.Word, border, border, cell)
		for i, code := range o.Symbols {
			row := min(columns, n-i/columns*columns) // of this row: its symbols stand in the middle
			x := border + (cell-row*(c.Symbol+u/2)+u/2)/2 + i%columns*(c.Symbol+u/2)
			symbolAt(c, &k.Canvas, code, x, down+u/2+i/columns*(c.Symbol+u/2), c.Symbol)
		}
		if n > 0 {
			down += (n+columns-1)/columns*(c.Symbol+u/2) + u/2
		}
		k.Text(runs, c.Text)
		return k, max(k.Y+u/2, down) + border
	}
	k, height := fill(1)
	for n := 2; n <= len(o.Symbols); n++ {
		if q, h := fill(n); h <= height {
			k, height = q, h
		}
	}
	var out compose.Canvas
	drawBorder(o, &out, c, height)
	out.Add(k.Ops...)
	return compose.One(height, out)
}

// signalWord sets a word with its triangle in a strip and returns its width.
func signalWord(c *compose.Compositor, k *compose.Canvas, s render.Signal, word string, x, y, strip int) int {
	l, at := compose.LookOf(s), x
	if l.Alert != "" {
		side := strip * 3 / 4
		symbolAt(c, k, l.Alert, at, y+(strip-side)/2, side)
		at += side + strip/8
	}
	h := c.Name.In(l.Word)
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

// shortCallout draws one row: symbols, word, how to avoid.
func shortCallout(o render.Callout, c *compose.Compositor) compose.Block {
	u := c.Beat
	inset := max(c.Frame*compose.LookOf(o.Signal).Border/8+u/2, compose.LeastBoxGap)
	k := compose.Column{C: c, X: inset, Y: inset, Width: c.Width - 2*inset}
	height := 0
	for _, code := range o.Symbols {
		symbolAt(c, &k.Canvas, code, k.X, inset, c.Minor)
		k.X += c.Minor + u/2
		height = c.Minor
	}
	if height > 0 {
		k.X += u / 2
	}
	k.Width -= k.X - inset
	var scratch compose.Canvas
	chip := drawChip(c, &scratch, o.Signal, o.Word, 0, 0, 0)
	p := c.Set(o.Avoid, c.Strong, k.Width, chip+u)
	text := max(p.Height(), c.Text.Lead)
	y := inset + max(0, (height-text)/2)
	drawChip(c, &k.Canvas, o.Signal, o.Word, k.X, y+(c.Text.Lead-chipHeight(c))/2, 0)
	k.Para(p, k.X, y)
	height = 2*inset + max(height, text)
	var out compose.Canvas
	drawBorder(o, &out, c, height)
	out.Add(k.Ops...)
	return compose.One(height, out)
}

// chipHeight returns the height of a signal word on its color.
func chipHeight(c *compose.Compositor) int { return c.Name.Lead }

// drawChip draws a signal word on its color, at least so wide, and returns its
// width.
func drawChip(c *compose.Compositor, k *compose.Canvas, s render.Signal, word string, x, y, least int) int {
	u := c.Beat
	h := chipHeight(c)
	var in compose.Canvas
	w := max(least, signalWord(c, &in, s, word, x+u/2, y, h)+u)
	k.Ground(x, y, w, h, compose.LookOf(s).Ground)
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
