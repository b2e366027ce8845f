package procedure

import (
	"math/big"
	"path"
	"strings"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// Figure is a picture with numbered call-outs.
type Figure struct {
	Base
	Image   Named // the path as it is written; empty where it is no picture's, which is reported
	Alt     string
	Caption string
	Spots   []Spot
}

// A Spot is one numbered place of a picture.
type Spot struct {
	At    Point
	To    *Point // what its line leads to; nil without one
	Says  string
	Place source.Place // of at
}

// A Point is a place on a picture, in thousandths of its width from the left
// and of its height from the top.
type Point struct{ X, Y int }

func (r *Reader) figure(b Base) Item {
	n := b.Node
	f := &Figure{Base: b, Image: named(n.Get("image")), Alt: text(n.Get("alt")), Caption: text(n.Get("caption"))}
	switch strings.ToLower(path.Ext(f.Image.Name)) {
	case ".png", ".jpg", ".jpeg":
	default:
		r.Msgs.Report("picture-kind", f.Image.At, "save it as PNG or JPEG", "the picture is not a PNG or JPEG file")
		f.Image.Name = ""
	}
	for _, c := range items(n.Get("call-outs")) {
		at := r.point(c.Get("at"))
		out := Spot{Says: text(c.Get("says")), Place: c.Get("at").Place()}
		if c.Get("to") != nil {
			out.To = r.point(c.Get("to"))
		}
		if at == nil || c.Get("to") != nil && out.To == nil {
			f.Image.Name = "" // a picture with a wrong place is worse than none
			continue
		}
		out.At = *at
		f.Spots = append(f.Spots, out)
	}
	return f
}

// point reads a place on a picture, nil where it is none (reported).
func (r *Reader) point(n *syntax.Node) *Point {
	at := items(n)
	if len(at) != 2 {
		return nil
	}
	var out [2]int
	for i, side := range []string{"left", "top"} {
		v := r.values().Value(at[i], quantity.Proportion)
		if v == nil {
			return nil
		}
		if v.Value.Sign() < 0 || v.Value.Cmp(big.NewRat(100, 1)) > 0 {
			r.Msgs.Report("call-out-place", at[i].Place(), "write 0 % to 100 %, from the picture's "+side+" edge", "`%s` is not on the picture", at[i].Text)
			return nil
		}
		thousandths := new(big.Rat).Mul(v.Value, big.NewRat(10, 1))
		thousandths.Add(thousandths, big.NewRat(1, 2)) // the whole part is now the nearest
		out[i] = int(new(big.Int).Quo(thousandths.Num(), thousandths.Denom()).Int64())
	}
	return &Point{out[0], out[1]}
}
