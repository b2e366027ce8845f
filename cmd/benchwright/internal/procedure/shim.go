package procedure

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
)

// Shim is a shim pack to be made.
type Shim struct {
	Base
	Pack       Named
	Stock      Named
	Micrometer Named           // that the finished pack is measured with
	AimAt      Named           // a limit whose aim is meant; empty where Aim has it
	Aim        *quantity.Value // of the reading
	Source     string          // where Aim comes from
	From       ShimFrom
	Within     *quantity.Value // how near the pack must come
	OverPack   *quantity.Value // how far the finished pack may measure from its shims: a part of Within
	Round      *quantity.Value // packs are whole steps of this; nil for any
	AtLeast    int             // shims in a pack
	AtMost     int
	Span       *quantity.Band // of the reading; nil takes it from the reading
	Example    *ShimExample   // nil where the writer states none
	Bad        bool           // something is there but could not be read
}

// ShimFrom is what a pack is made from.
type ShimFrom struct {
	Reading  Named           // id of the step that takes it
	WithPack *quantity.Value // the pack in place for it, where the card fixes it
	At       source.Place
}

// ShimExample is a worked line that a writer states, to be computed again.
type ShimExample struct {
	Reading, Pack *quantity.Value
	At            source.Place
}

func (r *Reader) shim(b Base) Item {
	n := b.Node
	s := &Shim{Base: b, Pack: named(n.Get("pack")), Stock: named(n.Get("stock")), Micrometer: named(n.Get("micrometer")), Source: text(n.Get("source"))}
	read := unit.Reader{Mark: r.Mark, Msgs: r.Msgs}
	length := func(n *syntax.Node, key string) *quantity.Value {
		f := n.Get(key)
		if f == nil {
			return nil
		}
		v := read.Either(f, quantity.Length)
		if v == nil {
			s.Bad = true
		}
		return v
	}
	size := func(key string) *quantity.Value {
		v := length(n, key)
		if v != nil && v.Value.Cmp(new(big.Rat)) <= 0 {
			r.Msgs.Report("quantity-malformed", n.Get(key).Place(), "write how far it may be off", "`%s` is more than nothing", key)
			s.Bad = true
		}
		return v
	}
	s.Within, s.OverPack, s.Round = size("within"), size("over-pack"), size("round")
	if aim := n.Get("aim"); aim != nil && IsName(aim.Text) {
		s.AimAt = named(aim)
	} else {
		s.Aim = length(n, "aim")
	}
	s.AtLeast, s.AtMost = read.Count(n.Get("at-least"), 1), read.Count(n.Get("at-most"), 0)
	if f := n.Get("span"); f != nil {
		if s.Span = r.band(f, quantity.Length); s.Span == nil {
			s.Bad = true
		}
	}
	from := n.Get("from")
	s.From = ShimFrom{Reading: named(from.Get("reading")), WithPack: length(from, "with-pack"), At: b.KeyPlace("from")}
	if e := n.Get("example"); e != nil {
		s.Example = &ShimExample{Reading: length(e, "reading"), Pack: length(e, "pack"), At: e.Place()}
	}
	return s
}
