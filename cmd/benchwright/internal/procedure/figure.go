package procedure

import (
	"math/big"
	"path"
	"strings"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// Figure is a picture with a legend and numbered callouts.
type Figure struct {
	Base
	Image   Named // path of the picture, as written
	Alt     string
	Caption string
	Spots   []Spot
}

// A Spot is a numbered callout on a picture.
type Spot struct {
	At    *Point // nil if the picture itself shows the number
	To    *Point // end of its leader line; nil without one
	Text  string
	Place source.Place
}

// A Point is a position on a picture, in thousandths of its width from the
// left and of its height from the top.
type Point struct{ X, Y int }

func (r reader) figure(b Base) Item {
	n := b.Node
	f := &Figure{Base: b, Image: r.named(n.Get("image")), Alt: r.Text(n.Get("alt")), Caption: r.Text(n.Get("caption"))}
	switch strings.ToLower(path.Ext(f.Image.Name)) {
	case ".png", ".jpg", ".jpeg", ".svg":
	default:
		r.Refuse("picture-kind", f.Image.At, "save it as PNG or JPEG, a drawing as plain SVG", "the picture is not a PNG, JPEG or SVG file")
	}
	for _, c := range r.Items(n.Get("legend")) {
		f.Spots = append(f.Spots, Spot{Text: r.Text(c), Place: c.Place()})
	}
	for _, c := range r.Items(n.Get("call-outs")) {
		if !r.Require(c, "at", "says") {
			break
		}
		at := r.point(c.Get("at"))
		out := Spot{At: &at, Text: r.Text(c.Get("says")), Place: c.Get("at").Place()}
		if to := c.Get("to"); to != nil {
			end := r.point(to)
			out.To = &end
		}
		f.Spots = append(f.Spots, out)
	}
	return f
}

// point reads a position on a picture. An invalid one marks the figure as bad.
func (r reader) point(n *syntax.Node) Point {
	at := r.Pair(n, "write how far from the left and from the top, as in `[40 %, 25 %]`")
	if at == nil {
		return Point{}
	}
	var out [2]int
	for i, side := range []string{"left", "top"} {
		v := r.Value(at[i], quantity.Proportion)
		if v == nil {
			break
		}
		if v.Value.Sign() < 0 || v.Value.Cmp(big.NewRat(100, 1)) > 0 {
			r.Refuse("call-out-place", at[i].Place(), "write 0 % to 100 %, from the picture's "+side+" edge", "`%s` is not on the picture", at[i].Text)
			break
		}
		thousandths := new(big.Rat).Mul(v.Value, big.NewRat(10, 1))
		thousandths.Add(thousandths, big.NewRat(1, 2)) // truncation now rounds to the nearest
		out[i] = int(new(big.Int).Quo(thousandths.Num(), thousandths.Denom()).Int64())
	}
	return Point{out[0], out[1]}
}
