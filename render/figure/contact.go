package figure

import (
	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/sheet"
)

// Contact draws a contact pattern, a row a picture: the letter beside its box, the
// tooth, what it is called and what to do. The first is larger, with the edges of the tooth named round it.
func Contact(p render.Contact, c *compose.Compositor) compose.Block {
	u := c.Beat
	b := compose.Block{Runs: true}
	// The ground of a slab is that of a panel; together they look like one.
	slabOf := func(k compose.Column) compose.Slab {
		var out compose.Canvas
		height := k.Y
		out.Ground(0, 0, c.Width, height, compose.Tint)
		out.Ground(0, 0, u/2, height, compose.Accent)
		out.Add(k.Ops...)
		return compose.Slab{Height: height, Keep: len(b.Slabs) == len(p.Rows)-1, Ops: out.Ops}
	}
	head := c.Within()
	head.Text(p.Title, c.Strong)
	again := slabOf(head)
	b.Again = &again
	for i, r := range p.Rows {
		k := head
		if i == 0 {
			pattern(&k, r, min(34*u, k.Width*36/100), 11*u, &p)
		} else {
			k = c.Within()
			k.Y = 0
			k.Across(k.X, 0, k.Width, c.Hair, compose.Hairline)
			pattern(&k, r, min(25*u, k.Width*30/100), 9*u, nil)
		}
		b.Slabs = append(b.Slabs, slabOf(k))
	}
	k := c.Within()
	k.Y = 0
	k.Across(k.X, 0, k.Width, c.Hair, compose.Hairline)
	k.Y = u / 2
	k.Lines(p.Under, c.Text)
	k.Text(p.Source, c.Label)
	k.Y += u
	b.Slabs = append(b.Slabs, slabOf(k))
	return b
}

// pattern sets one picture, its tooth so wide and high, with the names of the
// tooth's edges where edges is not nil.
func pattern(k *compose.Column, r render.ContactRow, width, height int, edges *render.Contact) {
	c, u := k.C, k.C.Beat
	letter, top := c.Strong.In(compose.Accent), k.Y+u
	box := k.X + letter.Lead // a letter is never wider
	k.Label(c, r.Letter, letter, k.X, top+c.Tick/2, render.Left)
	k.Frame(box, top, c.Tick, c.Tick, c.Frame, u/4, compose.White, compose.Ink, sheet.TickBox)
	x, y := box+c.Tick+3*u/2, top
	end := x + width
	if edges != nil {
		x += k.Label(c, edges.Toe, c.Label, x, y+c.Label.Lead+height*6/10, render.Left) + u/2
		y += c.Label.Lead
		k.Label(c, edges.Top, c.Label, x+width/2, top+c.Label.Lead/2, render.Center)
		k.Label(c, edges.Root, c.Label, x+width/2, y+height+c.Label.Lead/2, render.Center)
		end = x + width + u/2
		end += k.Label(c, edges.Heel, c.Label, end, y+height*6/10, render.Left)
	}
	tooth(k, r, x, y, width, height)
	if edges != nil {
		height += 2 * c.Label.Lead
	}
	sub := compose.Column{Canvas: k.Canvas, C: c, X: end + 2*u, Y: top - u/4, Width: k.X + k.Width - end - 2*u}
	sub.Lines(r.Do, c.Text)
	k.Canvas = sub.Canvas
	k.Y = max(sub.Y, top+height, top+c.Tick) + u/2
}

// tooth draws a tooth of the gear as it is seen on one side: lower at the toe
// than at the heel, its top land behind, the patch on the flank.
func tooth(k *compose.Column, r render.ContactRow, x, y, width, height int) {
	c := k.C
	back, deep := width/24, height/8 // the top land goes back to the right and up
	f := flank{x: x, width: width - back, toe: y + height*33/100, heel: y + deep, toeRoot: y + height*88/100, heelRoot: y + height}
	l, rt := f.x, f.x+f.width
	k.Add(compose.Poly(compose.Tint, compose.Ink, c.Frame, l, f.toe, l+back, f.toe-deep, rt+back, f.heel-deep, rt, f.heel),
		compose.Poly(compose.White, compose.Ink, c.Frame, l, f.toeRoot, l, f.toe, rt, f.heel, rt, f.heelRoot),
		f.patch(r))
}

// A flank is the side of a tooth, a figure of four corners; toe and heel are its
// top edge's ends.
type flank struct{ x, width, toe, heel, toeRoot, heelRoot int }

// at returns the point so many thousandths along from the toe and up from the
// root.
func (f flank) at(along, up int) (x, y int) {
	root := f.toeRoot + (f.heelRoot-f.toeRoot)*along/1000
	top := f.toe + (f.heel-f.toe)*along/1000
	return f.x + f.width*along/1000, root + (top-root)*up/1000
}

// patch returns the rounded patch that the paint leaves. It is solid, so that a
// gray printer shows it too.
func (f flank) patch(r render.ContactRow) sheet.Path {
	a, h := r.Half, r.Height
	ka, kh := a*5523/10000, h*5523/10000
	p := sheet.Path{Fill: compose.Accent, Stroke: sheet.NoColor}
	curve := func(x1, y1, x2, y2, x, y int) {
		s := sheet.Seg{Verb: 'C'}
		s.X1, s.Y1 = f.at(r.Along+x1, r.Up+y1)
		s.X2, s.Y2 = f.at(r.Along+x2, r.Up+y2)
		s.X, s.Y = f.at(r.Along+x, r.Up+y)
		p.Segs = append(p.Segs, s)
	}
	start := sheet.Seg{Verb: 'M'}
	start.X, start.Y = f.at(r.Along, r.Up+h)
	p.Segs = append(p.Segs, start)
	curve(ka, h, a, kh, a, 0)
	curve(a, -kh, ka, -h, 0, -h)
	curve(-ka, -h, -a, -kh, -a, 0)
	curve(-a, kh, -ka, h, 0, h)
	p.Segs = append(p.Segs, sheet.Seg{Verb: 'Z'})
	return p
}
