package unit

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/value"
)

// A LashPlace is where and how backlash is measured: at a radius of the gear
// that is turned while its mate is locked.
type LashPlace struct {
	Square bool            // measured square to the tooth flank, not along the circumference
	Radius *quantity.Value // from the axis of the shaft; nil for the pitch radius
	Turned Member
}

// PitchRadius is the value of `at` that stands for the pitch radius of the
// turned gear.
const PitchRadius = "pitch-radius"

// ReadLashPlace reads the keys measured, at and turned of a mapping, nil if
// they are unreadable, which marks the reader's thing as bad.
func ReadLashPlace(r *value.Reader, n *syntax.Node) *LashPlace {
	if !r.Require(n, "measured", "at", "turned") {
		return nil
	}
	p := &LashPlace{Square: value.OneOf(r, n.Get("measured"), "tangent", "normal-to-flank") == "normal-to-flank",
		Turned: value.OneOf(r, n.Get("turned"), PinionGear, LargeGear)}
	at := n.Get("at")
	if r.Text(at) != PitchRadius && !r.RefuseWord(at, "write a length such as `72 mm`, or `"+PitchRadius+"`") {
		p.Radius = r.Value(at, quantity.Length)
	}
	if p.Radius != nil && p.Radius.Value.Sign() <= 0 {
		r.Refuse("quantity-malformed", at.Place(), "write how far the place lies from the shaft centerline, such as `72 mm`, or `"+PitchRadius+"`", "a radius must be greater than zero")
	}
	if r.Bad().IsSet() {
		return nil
	}
	return p
}

// PitchRadius returns the pitch radius of a member, nil if not stated.
func (g *Pair) PitchRadius(m Member) *quantity.Value {
	if m == PinionGear {
		return g.PinionRadius
	}
	return g.GearRadius
}

// Pitch returns the diametral pitch in teeth per inch of pitch diameter: as
// stated, else 25.4 mm ÷ module, nil without either.
func (g *Pair) Pitch() *big.Rat {
	if g.DiametralPitch != nil {
		return g.DiametralPitch
	}
	if g.Module == nil || g.Module.Value.Sign() <= 0 {
		return nil
	}
	return new(big.Rat).Inv(quantity.Convert(g.Module.Value, g.Module.Unit, quantity.MustUnit("in")))
}
