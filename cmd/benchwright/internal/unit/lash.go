package unit

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/value"
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

// ReadLashPlace returns what the keys measured, at and turned of a mapping say;
// nil where they could not be read, which marks the reader's thing.
func ReadLashPlace(r *value.Reader, n *syntax.Node) *LashPlace {
	if !r.Need(n, "measured", "at", "turned") {
		return nil
	}
	p := &LashPlace{Square: value.Word(r, n.Get("measured"), "along-the-turn", "square-to-flank") == "square-to-flank",
		Turned: value.Word(r, n.Get("turned"), PinionGear, LargeGear)}
	at := n.Get("at")
	if r.Text(at) != PitchRadius && !r.Wordy(at, "write a length such as `72 mm`, or `"+PitchRadius+"`") {
		p.Radius = r.Value(at, quantity.Length)
	}
	if p.Radius != nil && p.Radius.Value.Sign() <= 0 {
		r.Refuse("quantity-malformed", at.Place(), "write how far the place lies from the shaft's middle, such as `72 mm`, or `"+PitchRadius+"`", "a radius is more than zero")
	}
	if r.Bad().Is() {
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
