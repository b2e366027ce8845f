package deck

import (
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/render"
)

// figure builds a picture with its call-outs.
func (b *builder) figure(f *card.Figure) []render.Element {
	if f.Data == nil {
		return nil
	}
	p := render.Picture{Name: f.Name, Data: f.Data, Alt: f.Alt, Caption: plain(f.Caption)}
	for _, c := range f.Spots {
		o := render.Spot{Ref: b.ref(c.Place), Shown: c.At == nil, Says: plain(c.Text)}
		if c.At != nil {
			o.X, o.Y = c.At.X, c.At.Y
		}
		if c.To != nil {
			o.Leads, o.ToX, o.ToY = true, c.To.X, c.To.Y
		}
		p.Spots = append(p.Spots, o)
	}
	return []render.Element{b.technical(f.Image.At, p)}
}
