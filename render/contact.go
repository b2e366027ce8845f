package render

// A contact pattern is a row a picture: the letter beside its box, the tooth, what
// it is called and what to do. The first is larger, with the edges of the tooth named round it.
func (p Contact) lay(c *compositor) block {
	u := c.beat
	b := block{runs: true}
	// The ground of a slab is that of a panel; together they look like one.
	slabOf := func(k column) slab {
		var out canvas
		height := c.beats(k.y)
		out.ground(0, 0, c.width, height, tint)
		out.ground(0, 0, u/2, height, accent)
		out.add(k.ops...)
		return slab{height: height, keep: len(b.slabs) == len(p.Rows)-1, ops: out.ops}
	}
	head := c.within()
	head.text(p.Title, c.strong)
	again := slabOf(head)
	b.again = &again
	for i, r := range p.Rows {
		k := head
		if i == 0 {
			k.pattern(r, min(34*u, k.width*36/100), 11*u, &p)
		} else {
			k = c.within()
			k.y = 0
			k.across(k.x, 0, k.width, c.hair, hairline)
			k.pattern(r, min(25*u, k.width*30/100), 9*u, nil)
		}
		b.slabs = append(b.slabs, slabOf(k))
	}
	k := c.within()
	k.y = 0
	k.across(k.x, 0, k.width, c.hair, hairline)
	k.y = u / 2
	k.lines(p.Under, c.text)
	k.text(p.Source, c.label)
	k.y += u
	b.slabs = append(b.slabs, slabOf(k))
	return b
}

// pattern sets one picture, its tooth so wide and high, with the names of the
// tooth's edges where edges is not nil.
func (k *column) pattern(r ContactRow, width, height int, edges *Contact) {
	c, u := k.c, k.c.beat
	letter, top := c.strong.in(accent), k.y+u
	box := k.x + letter.lead // a letter is never wider
	k.label(c, r.Letter, letter, k.x, top+c.tick/2, Left)
	k.frame(box, top, c.tick, c.tick, c.frame, u/4, white, ink, TickBox)
	x, y := box+c.tick+3*u/2, top
	end := x + width
	if edges != nil {
		x += k.label(c, edges.Toe, c.label, x, y+c.label.lead+height*6/10, Left) + u/2
		y += c.label.lead
		k.label(c, edges.Top, c.label, x+width/2, top+c.label.lead/2, Center)
		k.label(c, edges.Root, c.label, x+width/2, y+height+c.label.lead/2, Center)
		end = x + width + u/2
		end += k.label(c, edges.Heel, c.label, end, y+height*6/10, Left)
	}
	k.tooth(r, x, y, width, height)
	if edges != nil {
		height += 2 * c.label.lead
	}
	sub := column{canvas: k.canvas, c: c, x: end + 2*u, y: top - u/4, width: k.x + k.width - end - 2*u}
	sub.lines(r.Do, c.text)
	k.canvas = sub.canvas
	k.y = c.beats(max(sub.y, top+height, top+c.tick) + u/2)
}

// tooth draws a tooth of the gear as it is seen on one side: lower at the toe
// than at the heel, its top land behind, the patch on the flank.
func (k *column) tooth(r ContactRow, x, y, width, height int) {
	c := k.c
	back, deep := width/24, height/8 // the top land goes back to the right and up
	f := flank{x: x, width: width - back, toe: y + height*33/100, heel: y + deep, toeRoot: y + height*88/100, heelRoot: y + height}
	l, rt := f.x, f.x+f.width
	k.add(poly(tint, ink, c.frame, l, f.toe, l+back, f.toe-deep, rt+back, f.heel-deep, rt, f.heel),
		poly(white, ink, c.frame, l, f.toeRoot, l, f.toe, rt, f.heel, rt, f.heelRoot),
		f.patch(r))
}

// A flank is the side of a tooth, a figure of four corners; toe and heel are its
// top edge's ends.
type flank struct{ x, width, toe, heel, toeRoot, heelRoot int }

// at is the point so many thousandths along from the toe and up from the root.
func (f flank) at(along, up int) (x, y int) {
	root := f.toeRoot + (f.heelRoot-f.toeRoot)*along/1000
	top := f.toe + (f.heel-f.toe)*along/1000
	return f.x + f.width*along/1000, root + (top-root)*up/1000
}

// patch is the rounded patch that the paint leaves, solid, so that a grey printer
// shows it too.
func (f flank) patch(r ContactRow) Path {
	a, h := r.Half, r.Height
	ka, kh := a*5523/10000, h*5523/10000
	p := Path{Fill: accent, Stroke: NoColor}
	curve := func(x1, y1, x2, y2, x, y int) {
		s := Seg{Verb: 'C'}
		s.X1, s.Y1 = f.at(r.Along+x1, r.Up+y1)
		s.X2, s.Y2 = f.at(r.Along+x2, r.Up+y2)
		s.X, s.Y = f.at(r.Along+x, r.Up+y)
		p.Segs = append(p.Segs, s)
	}
	start := Seg{Verb: 'M'}
	start.X, start.Y = f.at(r.Along, r.Up+h)
	p.Segs = append(p.Segs, start)
	curve(ka, h, a, kh, a, 0)
	curve(a, -kh, ka, -h, 0, -h)
	curve(-ka, -h, -a, -kh, -a, 0)
	curve(-a, kh, -ka, h, 0, h)
	p.Segs = append(p.Segs, Seg{Verb: 'Z'})
	return p
}
