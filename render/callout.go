package render

// A look is how a signal word's panel is drawn. The word, the weight and
// style of the border and the triangle tell one from another on a grey
// printer; the colour only helps.
//
// Colours after ANSI Z535.1 and ISO 3864, from memory; the red and the blue
// are darker than on signs, so that white words on them stand 7:1.
type look struct {
	ground, word Color
	alert        string // code of the triangle; NOTICE has none
	border       int    // in eighths of the style's frame
	dashed       bool
}

var looks = [...]look{
	Danger:  {ground: 0xA81226, word: white, alert: "alert-danger", border: 20},
	Warning: {ground: safetyOrange, word: black, alert: "alert-warning", border: 13},
	Caution: {ground: safetyYellow, word: black, alert: "alert-caution", border: 7},
	Notice:  {ground: 0x0B5596, word: white, border: 5, dashed: true},
}

func (s Signal) look() look { return looks[min(s, Notice)] }

// A full callout has its word in a strip, the symbols on the left, and what
// may happen and how to avoid it beside them.
func (o Callout) lay(c *compositor) block {
	if o.Short {
		return o.short(c)
	}
	u, l := c.beat, o.Signal.look()
	border := c.frame * l.border / 8
	left, strip := border+3*u/2, border+5*u
	rows := make([][]Run, 0, 2)
	rows = append(rows, sentence(o.Hazard, o.Result), o.Avoid)
	hands := []hand{c.text, c.strong}
	if o.AvoidFirst {
		rows[0], rows[1], hands[0], hands[1] = rows[1], rows[0], hands[1], hands[0]
	}
	fill := func(columns int) (column, int) {
		k := column{c: c, x: left, y: strip + u/2, width: c.width - 2*left}
		down := 0
		if n := len(o.Symbols); n > 0 {
			down = (n + columns - 1) / columns * (c.symbol + u)
			for i, code := range o.Symbols {
				c.symbolAt(&k.canvas, code, k.x+i%columns*(c.symbol+u), strip+u+i/columns*(c.symbol+u), c.symbol)
			}
			k.x += columns * (c.symbol + u)
			k.width -= columns * (c.symbol + u)
			k.x, k.width = k.x+u/2, k.width-u/2
		}
		for i, runs := range rows {
			k.text(runs, hands[i])
		}
		return k, max(k.y+u/2, strip+u+down) + border
	}
	// Symbols stand side by side or one under the other, whichever is lower.
	k, height := fill(1)
	for n := 2; n <= len(o.Symbols); n++ {
		if q, h := fill(n); h < height {
			k, height = q, h
		}
	}
	height = c.beats(height)
	var out canvas
	o.border(&out, c, height)
	out.ground(border, border, c.width-2*border, strip-border, l.ground)
	c.signalWord(&out, o.Signal, o.Word, c.signal, left, border, strip-border)
	out.add(k.ops...)
	return one(height, out)
}

// signalWord sets a word with its triangle in a strip and returns its width.
func (c *compositor) signalWord(k *canvas, s Signal, word string, h hand, x, y, strip int) int {
	l, at := s.look(), x
	if l.alert != "" {
		side := strip * 3 / 4
		c.symbolAt(k, l.alert, at, y+(strip-side)/2, side)
		at += side + strip/6
	}
	h = h.in(l.word)
	h.font = FontBold
	p := c.set(says(word), h, c.width, 0)
	k.para(p, at, y+(strip-h.lead)/2)
	return at + p.width - x
}

// sentence joins runs that follow one another in a paragraph.
func sentence(a, b []Run) []Run {
	if len(a) == 0 || len(b) == 0 {
		return append(append([]Run(nil), a...), b...)
	}
	return append(append(append([]Run(nil), a...), Run{Text: " "}), b...)
}

// short is one row: symbols, word, how to avoid.
func (o Callout) short(c *compositor) block {
	u := c.beat
	inset := c.frame*o.Signal.look().border/8 + u
	k := column{c: c, x: inset, y: inset, width: c.width - 2*inset}
	height := 0
	for _, code := range o.Symbols {
		c.symbolAt(&k.canvas, code, k.x, inset, c.minor)
		k.x += c.minor + u
		height = c.minor
	}
	if height > 0 {
		k.x += u / 2
	}
	k.width -= k.x - inset
	var scratch canvas
	chip := c.chip(&scratch, o.Signal, o.Word, 0, 0, c.text.lead, 0)
	p := c.set(o.Avoid, c.strong, k.width, chip+u)
	text := max(p.height(), c.text.lead)
	y := inset + max(0, (height-text)/2)
	c.chip(&k.canvas, o.Signal, o.Word, k.x, y, c.text.lead, 0)
	k.para(p, k.x, y)
	height = c.beats(2*inset + max(height, text))
	var out canvas
	o.border(&out, c, height)
	out.add(k.ops...)
	return one(height, out)
}

// chip is a signal word on its colour, as high as a line and at least so
// wide; it returns its width.
func (c *compositor) chip(k *canvas, s Signal, word string, x, y, lead, least int) int {
	u := c.beat
	h := lead - u/2
	var in canvas
	w := max(least, c.signalWord(&in, s, word, c.tag, x+u/2, y+u/4, h)+u)
	k.ground(x, y+u/4, w, h, s.look().ground)
	k.add(in.ops...)
	return w
}

// border draws a callout's own border.
func (o Callout) border(k *canvas, c *compositor, height int) {
	l := o.Signal.look()
	b := c.frame * l.border / 8
	if !l.dashed {
		k.frame(0, 0, c.width, height, b, 0, white, black, Ground)
		return
	}
	k.add(Rect{W: c.width, H: height, Fill: white, Stroke: NoColor, Role: Ground})
	x, y, r, t := b/2, b/2, c.width-b/2, height-b/2
	for _, line := range []Line{{X1: x, Y1: y, X2: r, Y2: y}, {X1: r, Y1: y, X2: r, Y2: t}, {X1: x, Y1: t, X2: r, Y2: t}, {X1: x, Y1: y, X2: x, Y2: t}} {
		line.Width, line.Color, line.Dash = b, black, c.beat
		k.add(line)
	}
}

// symbolAt draws a symbol, or reports that there is none of that code.
func (c *compositor) symbolAt(k *canvas, code string, x, y, size int) {
	ops, ok := Symbol(code, x, y, size)
	if !ok {
		c.problem(NoSymbol, code)
	}
	k.add(ops...)
}
