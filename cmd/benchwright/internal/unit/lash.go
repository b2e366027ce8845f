package unit

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/syntax"
)

// A LashPlace is where and how backlash is taken: on the gear that is turned,
// while the other is locked.
type LashPlace struct {
	Square bool            // square to the flank, not along the turn
	Radius *quantity.Value // from the shaft's middle; nil for the pitch radius
	Turned Member
}

// PitchRadius is how a place names the pitch radius of the gear that is turned.
const PitchRadius = "pitch-radius"

// LashPlace returns what the keys measured, at and turned of a mapping say, nil
// where one is missing, which the schema reports, or malformed.
func (r Reader) LashPlace(n *syntax.Node) *LashPlace {
	measured, turned, at := r.Text(n.Get("measured")), r.Text(n.Get("turned")), n.Get("at")
	if measured == "" || turned == "" || r.Text(at) == "" {
		return nil
	}
	p := &LashPlace{Square: measured == "square-to-flank", Turned: Member(turned)}
	if r.Text(at) == PitchRadius {
		return p
	}
	if r.Wordy(at, "write a length such as `72 mm`, or `"+PitchRadius+"`") {
		return nil
	}
	if p.Radius = r.Value(at, quantity.Length); p.Radius == nil {
		return nil
	}
	if p.Radius.Value.Sign() <= 0 {
		r.Msgs.Report("quantity-malformed", at.Place(), "write how far the place lies from the shaft's middle, such as `72 mm`, or `"+PitchRadius+"`", "a radius is more than zero")
		return nil
	}
	return p
}

// PitchRadius returns the pitch radius of a member, nil where it is not stated.
func (g *Pair) PitchRadius(m Member) *quantity.Value {
	if m == PinionGear {
		return g.PinionRadius
	}
	return g.GearRadius
}

// Pitch returns the diametral pitch, teeth to an inch of pitch diameter: as it
// is stated, else 25.4 mm ÷ module; nil without either.
func (g *Pair) Pitch() *big.Rat {
	if g.DiametralPitch != nil {
		return g.DiametralPitch
	}
	if g.Module == nil || g.Module.Value.Sign() <= 0 {
		return nil
	}
	return new(big.Rat).Inv(quantity.Convert(g.Module.Value, g.Module.Unit, quantity.MustUnit("in")))
}
