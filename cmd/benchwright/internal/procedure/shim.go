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
	Micrometer Named           // measures the finished pack
	AimLimit   Named           // a limit whose target is the aim; empty if Aim is stated
	Aim        *quantity.Value // of the reading; nil if the pack is made from marks alone
	Source     string          // source of Aim
	From       ShimFrom
	Within     *quantity.Value // allowed deviation from the computed pack
	OverPack   *quantity.Value // part of Within that the finished pack may measure differently from the sum of its shims
	RoundTo    *quantity.Value // packs are multiples of this; nil for any
	MinShims   int             // number of shims in a pack
	MaxShims   int
	Span       *quantity.Band // of the reading; nil for that of the measurement
	Other      *ShimOther     // the pack on the other side; nil for none
	Example    *ShimExample   // nil without one
	Bad        diag.Reported  // part of it was unreadable
}

// ShimFrom is what a pack is computed from, one of these:
//
//   - Reading, the reading of a step;
//   - Plus and Minus, lengths whose sum is the reading there would be without a pack;
//   - OldMark and NewMark, marks etched on the parts;
//   - By, a change of the old pack in either direction.
//
// WithPack or OldPack gives the thickness of a pack that is in place.
type ShimFrom struct {
	Reading     Named           // id of the step that takes it
	Plus, Minus []ShimLength    // nil unless the reading is a sum
	WithPack    *quantity.Value // thickness of the pack in place, if the card fixes it
	OldPack     Named           // id of the step that measures the pack in place
	OldMark     Named           // name of the mark on the old part
	NewMark     Named           // name of the mark on the new part
	First, Last int             // lowest and highest mark
	PerMark     *quantity.Value // growth of the pack for each mark that the new part's is above the old one's
	By          *quantity.Value // thickness change; nil unless the pack is made this way
	At          source.Place
}

// Aimless reports whether the pack is made without a target reading.
func (f *ShimFrom) Aimless() bool { return f.Etched() || f.By != nil }

// Etched reports whether the pack is made from etched marks.
func (f *ShimFrom) Etched() bool { return f.NewMark.Name != "" }

// ShimLength is a term of a sum: measured in a step, or fixed.
type ShimLength struct {
	Step  Named
	Fixed *quantity.Value // nil for a measured length
}

// ShimOther is the pack on the other side, which loses what this one gains.
type ShimOther struct {
	Pack     Named
	WithPack *quantity.Value // pack in place
}

// ShimExample is a worked example given by the writer, to be recomputed.
type ShimExample struct {
	Reading, OldPack, Pack *quantity.Value
}

type shimReader struct {
	reader
	s *Shim
}

func (r reader) shim(b Base) Item {
	n := b.Node
	s := &Shim{Base: b, Pack: r.named(n.Get("pack")), Stock: r.named(n.Get("stock")), Micrometer: r.named(n.Get("micrometer")), Source: r.Text(n.Get("source"))}
	sr := shimReader{r.forPart(), s}
	s.Within, s.OverPack, s.RoundTo = sr.positiveLength(n, "within"), sr.positiveLength(n, "over-pack"), sr.positiveLength(n, "round")
	if aim := n.Get("aim"); aim != nil && isStep(aim) {
		s.AimLimit = r.named(aim)
	} else {
		s.Aim = sr.length(n, "aim")
	}
	s.MinShims, s.MaxShims = sr.Count(n.Get("at-least"), 1), sr.Count(n.Get("at-most"), 0)
	s.Span = sr.Band(n.Get("span"), quantity.Length)
	if o := sr.Mapping(n.Get("other-pack")); o != nil {
		s.Other = &ShimOther{r.named(o.Get("pack")), sr.positiveLength(o, "with-pack")}
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

// isStep reports whether a value is the id of a step or limit rather than a
// length: it begins with a letter.
func isStep(n *syntax.Node) bool {
	for _, c := range n.Text {
		return unicode.IsLetter(c)
	}
	return false
}

// length reads a length that may have a ± before it.
func (r shimReader) length(n *syntax.Node, key string) *quantity.Value {
	return r.Deviation(n.Get(key), quantity.Length)
}

// positiveLength reads a length above zero.
func (r shimReader) positiveLength(n *syntax.Node, key string) *quantity.Value {
	v := r.length(n, key)
	if v != nil && v.Value.Sign() <= 0 {
		r.Refuse("quantity-malformed", n.Get(key).Place(), exampleLengths[key], "`%s` must be greater than zero", key)
	}
	return v
}

// exampleLengths has an example for each key with a positive length.
var exampleLengths = map[string]string{
	"within":    "write how far the pack may be off, such as `0.03 mm`",
	"over-pack": "write how far the finished pack may be off, such as `±0.01 mm`",
	"round":     "write the steps in which packs are made, such as `0.05 mm`",
	"by":        "write how much the pack changes: the card prints the thicker and the thinner one",
	"with-pack": "write how thick the pack in place is",
}

// from reads what the pack is computed from, and checks that it is exactly one
// complete source.
func (r shimReader) from(n *syntax.Node) {
	f := ShimFrom{Reading: r.named(n.Get("reading")), OldPack: r.named(n.Get("old-pack")),
		OldMark: r.named(n.Get("old-mark")), NewMark: r.named(n.Get("new-mark")), PerMark: r.length(n, "per-mark"), By: r.positiveLength(n, "by"), At: r.s.KeyPlace("from")}
	if w := n.Get("with-pack"); w == nil || !r.RefuseWord(w, "write how thick it is, such as `1.00 mm`; a step that measures it stands under `old-pack:`") {
		f.WithPack = r.positiveLength(n, "with-pack")
	}
	if p := f.PerMark; p != nil && p.Value.Sign() == 0 {
		r.Refuse("quantity-malformed", n.Get("per-mark").Place(), "write how much the pack grows for each mark, with a minus where it shrinks", "`per-mark` must not be zero")
	}
	f.Plus, f.Minus = r.lengths(n.Get("plus")), r.lengths(n.Get("minus"))
	f.First, f.Last = r.Marks(n.Get("marks"))
	r.s.From = f
	if fix, message := r.sourceProblem(n, &f); message != "" && !r.Bad().IsSet() {
		at := f.At
		if r.s.Other != nil && r.s.Other.Pack.Name == r.s.Pack.Name {
			at = r.s.Other.Pack.At
		}
		r.Refuse("shim-from", at, fix, "%s", message)
	}
}

// sourceProblem returns what is wrong with the source of a pack as a whole,
// and the fix; "" if nothing is.
func (r shimReader) sourceProblem(n *syntax.Node, f *ShimFrom) (fix, message string) {
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

// lengths reads the positive or the negative terms of a sum.
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
