package card

import (
	"math/big"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/unit"
)

// A Lash is a backlash reading, its limits as the dial shows them where it
// stands.
type Lash struct {
	*Measurement
	Block  *procedure.Lash
	Pair   *unit.Pair      // nil where the unit has none
	Holds  *unit.LashPlace // where the limits hold; nil without limits
	Radius *quantity.Value // of the dial from the shaft's middle; nil where it is not known
	// PerPitch is what the dial shows of one length of backlash along the turn
	// at the pitch radius; nil where the unit lacks what it takes.
	PerPitch *big.Rat
}

func (r *resolver) lash(i *procedure.Lash) Item {
	out := &Lash{Block: i, Pair: r.pair(i.Gears, i.At)}
	var factor *big.Rat
	dial := i.Dial
	if out.Radius = dial.Radius; out.Radius == nil && out.Pair != nil {
		out.Radius = out.Pair.PitchRadius(dial.Turned)
	}
	out.PerPitch, _ = lashFactor(&unit.LashPlace{Turned: dial.Turned}, dial, out.Pair)
	if out.Holds = r.holds(i); out.Holds != nil {
		var lacks string
		if factor, lacks = lashFactor(out.Holds, dial, out.Pair); factor == nil {
			r.lacksFact(i, out.Pair, lacks)
		}
	}
	out.Measurement = r.scaled(&i.Measurement, quantity.Length, factor)
	if factor == nil && i.Limits.Stated() && !i.Limits.None {
		out.withoutLimits()
	}
	if out.PerPitch != nil && i.Tilt != nil {
		if shown, ok := bench.TiltedReading(out.PerPitch, degrees(i.Tilt)); ok {
			out.PerPitch = shown
		}
	}
	return out
}

// pair finds the gears that a block is about, nil where the unit has none. One of
// several must be named.
func (r *resolver) pair(named procedure.Named, block source.Place) *unit.Pair {
	u := r.card.Unit
	if u == nil {
		return nil
	}
	pair := u.Pair(named.Name)
	switch {
	case pair != nil:
	case named.Name != "":
		r.unknown(diag.OnUnit, "part-unknown", "gear pair", named, u.PairIDs(), "gears in the unit")
	case len(u.Gears) > 1:
		r.msgs.Report("key-missing", block, "add `gears:` with one of: "+strings.Join(u.PairIDs(), ", "), "the unit has several gear pairs, and this block names none")
	}
	return pair
}

// holdsForm is how a limit of backlash says where it holds, for a fix.
const holdsForm = "`holds: {measured: along-the-turn, at: pitch-radius, turned: gear}`"

// holds finds where the limits hold, nil where there are none or it is not
// said, which is reported.
func (r *resolver) holds(i *procedure.Lash) *unit.LashPlace {
	l, u := &i.Limits, r.card.Unit
	if l.None || l.Bad.IsSet() || !l.Stated() {
		return nil
	}
	if l.Band != nil || u == nil {
		if i.Holds == nil {
			r.msgs.Report("key-missing", l.At, "add "+holdsForm+" beside them, as the manual has it", "nothing says where these limits hold")
		}
		return i.Holds
	}
	named := u.Limit(l.Named.Name)
	switch {
	case named == nil || named.Bad.IsSet():
		return nil
	case named.LashPlace != nil && i.Holds != nil:
		d := r.msgs.Report("limits-twice", i.KeyPlace("holds"), "take it out here", "the unit says where `%s` holds", named.ID)
		d.Related = append(d.Related, diag.Related{At: named.At, Message: "the limit is declared here"})
	case named.LashPlace == nil && i.Holds == nil:
		if named.All == nil || named.All.Band.Unit.Dimension == quantity.Length { // else it is the wrong limit
			r.lacksHolds(named)
		}
	case named.LashPlace == nil:
		return i.Holds
	}
	return named.LashPlace
}

// lacksHolds reports a limit of backlash that does not say where it holds, at the
// limit: several blocks may name it.
func (r *resolver) lacksHolds(l *unit.Limit) {
	r.msgs.Report("key-missing", l.At, "add "+holdsForm+" to `"+l.ID+"` in the unit, as the manual has it", "nothing says where `%s` holds, and a backlash is read or set by it", l.ID)
}

// lacksFact reports a fact of the gears without which limits cannot be referred
// to the dial.
func (r *resolver) lacksFact(i *procedure.Lash, pair *unit.Pair, key string) {
	switch {
	case pair != nil && key == "":
		r.msgs.Report("quantity-malformed", i.KeyPlace("measured"), "look up the angles of `"+pair.ID+"` again: each is less than 90°",
			"the angles of `%s` are no pressure angle and spiral", pair.ID)
	case pair != nil && key == "pitch-radius" && (pair.PinionRadius == nil && pair.Node.Get(key).Get("pinion") != nil || pair.GearRadius == nil && pair.Node.Get(key).Get("gear") != nil),
		pair != nil && key == "pressure-angle" && pair.Node.Get(key) != nil: // it could not be read, which is reported
	case pair != nil:
		d := r.msgs.Report("key-missing", pair.At, "add `"+key+":` to `"+pair.ID+"` in the unit",
			"limits of backlash hold elsewhere than the dial stands, and `%s` does not say its %s", pair.ID, strings.ReplaceAll(key, "-", " "))
		d.Related = append(d.Related, diag.Related{At: i.KeyPlace("at"), Message: "a dial stands here"})
	case r.card.Unit != nil && len(r.card.Unit.Gears) == 0:
		r.msgs.Report("key-missing", i.KeyPlace("at"), "declare the pair under `gears` in the unit, with `pitch-radius` and `pressure-angle`",
			"the limits hold elsewhere, and the unit has no gear pair")
	}
}

// lashFactor returns by how much backlash at one place is to be multiplied to
// be that at another. At the pitch radii it is the same on both members. Where
// it is nil, lacks is the key of the pair without which it cannot be told.
func lashFactor(from, to *unit.LashPlace, pair *unit.Pair) (factor *big.Rat, lacks string) {
	pressure, spiral := new(big.Rat), new(big.Rat)
	if from.Square != to.Square {
		if pair == nil || pair.PressureAngle == nil {
			return nil, "pressure-angle"
		}
		pressure = degrees(pair.PressureAngle)
		if pair.Spiral != nil {
			spiral = degrees(pair.Spiral)
		}
	}
	var points [2]bench.LashPoint
	direct := from.Turned == to.Turned && from.Radius != nil && to.Radius != nil
	for i, p := range []*unit.LashPlace{from, to} {
		points[i] = bench.LashPoint{Radius: big.NewRat(1, 1), Square: p.Square}
		if p.Radius == nil {
			continue // measured in pitch radii, it is one
		}
		by := from.Radius
		if !direct {
			if by = nil; pair != nil {
				by = pair.PitchRadius(p.Turned)
			}
			if by == nil || by.Value.Sign() <= 0 {
				return nil, "pitch-radius"
			}
		}
		points[i].Radius.Quo(quantity.Convert(p.Radius.Value, p.Radius.Unit, by.Unit), by.Value)
	}
	return bench.LashFactor(points[0], points[1], pressure, spiral), ""
}

// TiltDegrees returns the tilt in degrees, nil where none is stated.
func (m *Measurement) TiltDegrees() *big.Rat {
	if m.Tilt == nil {
		return nil
	}
	return degrees(m.Tilt)
}
