package procedure

import (
	"unicode"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// Shim is a shim pack to be made.
type Shim struct {
	Base
	Pack       Named
	Stock      Named
	Micrometer Named           // that the finished pack is measured with
	AimAt      Named           // a limit whose aim is meant; empty where Aim has it
	Aim        *quantity.Value // of the reading; nil where marks say all
	Source     string          // where Aim comes from
	From       ShimFrom
	Within     *quantity.Value // how near the pack must come
	OverPack   *quantity.Value // how far the finished pack may measure from its shims: a part of Within
	Round      *quantity.Value // packs are whole steps of this; nil for any
	AtLeast    int             // shims in a pack
	AtMost     int
	Span       *quantity.Band // of the reading; nil takes it from the reading
	Other      *ShimOther     // the pack on the other side; nil for none
	Example    *ShimExample   // nil where the writer states none
	Bad        diag.Reported  // something of it could not be read
}

// ShimFrom is what a pack is made from: a reading; or lengths, Plus and Minus,
// which make up the reading that there would be without a pack; or marks etched
// on the parts; or By, a step that the old pack is changed by either way. Where
// a pack is in place, WithPack or OldPack says how thick it is.
type ShimFrom struct {
	Reading     Named           // id of the step that takes it
	Plus, Minus []ShimLength    // nil unless the reading is made up
	WithPack    *quantity.Value // the pack in place, where the card fixes it
	OldPack     Named           // id of the step that measures the pack in place
	OldMark     Named           // what the mark of the part that goes out is called
	NewMark     Named           // and of the one that comes in
	First, Last int             // the lowest and the highest mark
	PerMark     *quantity.Value // how much the pack grows for each mark that the new one is above the old
	By          *quantity.Value // how much thicker or thinner than the old pack; nil unless it is made so
	At          source.Place
}

// Aimless says whether the pack is made without a reading that it aims at.
func (f *ShimFrom) Aimless() bool { return f.Etched() || f.By != nil }

// Etched says whether the pack is made from marks.
func (f *ShimFrom) Etched() bool { return f.NewMark.Name != "" }

// ShimLength is one length of a sum: measured in a step, or fixed.
type ShimLength struct {
	Step  Named
	Fixed *quantity.Value // nil for one that is measured
}

// ShimOther is the pack on the other side, which gives up what this one takes.
type ShimOther struct {
	Pack     Named
	WithPack *quantity.Value // in place
}

// ShimExample is a worked line that a writer states, to be computed again.
type ShimExample struct {
	Reading, OldPack, Pack *quantity.Value
}

// shimReader reads one shim block.
type shimReader struct {
	reader
	s *Shim
}

func (r reader) shim(b Base) Item {
	n := b.Node
	s := &Shim{Base: b, Pack: r.named(n.Get("pack")), Stock: r.named(n.Get("stock")), Micrometer: r.named(n.Get("micrometer")), Source: r.Text(n.Get("source"))}
	sr := shimReader{r.thing(), s}
	s.Within, s.OverPack, s.Round = sr.size(n, "within"), sr.size(n, "over-pack"), sr.size(n, "round")
	if aim := n.Get("aim"); aim != nil && isStep(aim) {
		s.AimAt = r.named(aim)
	} else {
		s.Aim = sr.length(n, "aim")
	}
	s.AtLeast, s.AtMost = sr.Count(n.Get("at-least"), 1), sr.Count(n.Get("at-most"), 0)
	s.Span = sr.Band(n.Get("span"), quantity.Length)
	if o := sr.Mapping(n.Get("other-pack")); o != nil {
		s.Other = &ShimOther{r.named(o.Get("pack")), sr.size(o, "with-pack")}
	}
	if e := sr.Mapping(n.Get("example")); e != nil {
		s.Example = &ShimExample{sr.length(e, "reading"), sr.length(e, "old-pack"), sr.length(e, "pack")}
	}
	if sr.Require(n, "from", "within", "over-pack") {
		if from := sr.Mapping(n.Get("from")); from != nil {
			sr.from(from)
		}
	}
	s.Bad = sr.Bad()
	return s
}

// isStep says whether a value is the id of a step or a limit and no length: it
// begins with a letter.
func isStep(n *syntax.Node) bool {
	for _, c := range n.Text {
		return unicode.IsLetter(c)
	}
	return false
}

// length reads a length with an optional ± before it.
func (r shimReader) length(n *syntax.Node, key string) *quantity.Value {
	return r.Deviation(n.Get(key), quantity.Length)
}

// size reads a length that is more than nothing.
func (r shimReader) size(n *syntax.Node, key string) *quantity.Value {
	v := r.length(n, key)
	if v != nil && v.Value.Sign() <= 0 {
		r.Refuse("quantity-malformed", n.Get(key).Place(), sizes[key], "`%s` is more than nothing", key)
	}
	return v
}

// sizes says of each length that is more than nothing how it is written.
var sizes = map[string]string{
	"within":    "write how far the pack may be off, such as `0.03 mm`",
	"over-pack": "write how far the finished pack may be off, such as `±0.01 mm`",
	"round":     "write the steps in which packs are made, such as `0.05 mm`",
	"by":        "write how much the pack changes: the card prints the thicker and the thinner one",
	"with-pack": "write how thick the pack in place is",
}

// from reads what the pack is made from, and asks that it is one thing, whole.
func (r shimReader) from(n *syntax.Node) {
	f := ShimFrom{Reading: r.named(n.Get("reading")), OldPack: r.named(n.Get("old-pack")),
		OldMark: r.named(n.Get("old-mark")), NewMark: r.named(n.Get("new-mark")), PerMark: r.length(n, "per-mark"), By: r.size(n, "by"), At: r.s.KeyPlace("from")}
	if w := n.Get("with-pack"); w == nil || !r.RefuseWord(w, "write how thick it is, such as `1.00 mm`; a step that measures it stands under `old-pack:`") {
		f.WithPack = r.size(n, "with-pack")
	}
	if p := f.PerMark; p != nil && p.Value.Sign() == 0 {
		r.Refuse("quantity-malformed", n.Get("per-mark").Place(), "write how much the pack grows for each mark, with a minus where it shrinks", "`per-mark` is not nothing")
	}
	f.Plus, f.Minus = r.lengths(n.Get("plus")), r.lengths(n.Get("minus"))
	f.First, f.Last = r.Marks(n.Get("marks"))
	r.s.From = f
	if fix, message := r.amiss(n, &f); message != "" && !r.Bad().IsSet() {
		at := f.At
		if r.s.Other != nil && r.s.Other.Pack.Name == r.s.Pack.Name {
			at = r.s.Other.Pack.At
		}
		r.Refuse("shim-from", at, fix, "%s", message)
	}
}

// amiss returns what is wrong with what a pack is made from, as a whole, and its
// fix; "" for nothing.
func (r shimReader) amiss(n *syntax.Node, f *ShimFrom) (fix, message string) {
	reading, sum, place := f.Reading.Name != "", len(f.Plus)+len(f.Minus) > 0, 0
	kinds := 0
	for _, is := range []bool{reading, sum, f.Etched(), f.By != nil} {
		if is {
			kinds++
		}
	}
	if n.Get("with-pack") != nil {
		place++
	}
	if f.OldPack.Name != "" {
		place++
	}
	switch {
	case kinds != 1:
		return "write `reading:`, or `plus:` and `minus:`, or `new-mark:`, or `by:`", "a pack is made from one of: a reading, lengths, marks, a step"
	case sum && place > 0:
		return "take the pack in place out: the lengths are measured without one", "lengths have no pack in place"
	case !sum && place != 1:
		return "write `with-pack:` with its thickness where the card fixes it, or `old-pack:` with the step that measures it", "the pack in place must be known, in one way"
	case f.By != nil && f.OldPack.Name == "":
		return "write `old-pack:` with the step that measures it", "a step is taken from the old pack as measured"
	case f.Etched() && (n.Get("marks") == nil || n.Get("per-mark") == nil):
		return "add `marks: -5 to 5` and `per-mark: 0.01 mm`, with a minus where a higher mark takes a thinner pack", "marks need their span and what each is worth"
	case !f.Aimless() && r.s.Node.Get("aim") == nil:
		return "add `aim:` with a limit of the unit, or a length", "nothing says what the reading is to be"
	case f.Aimless() && r.s.Node.Get("aim") != nil:
		return "take `aim:` out", "marks or a step say all: they leave nothing to aim at"
	case r.s.Other != nil && r.s.Other.Pack.Name == r.s.Pack.Name:
		return "name the pack on the other side", "a pack does not lie opposite itself"
	case r.s.Other != nil && (!reading || f.OldPack.Name != ""):
		return "read over two set-up packs: `reading:` and `with-pack:`", "two packs are made from one reading over packs that the card fixes"
	}
	return "", ""
}

// lengths reads the lengths on one side of a sum.
func (r shimReader) lengths(n *syntax.Node) []ShimLength {
	var out []ShimLength
	for _, i := range r.Items(n) {
		if isStep(i) {
			out = append(out, ShimLength{Step: r.named(i)})
			continue
		}
		out = append(out, ShimLength{Fixed: r.Value(i, quantity.Length)})
	}
	return out
}
