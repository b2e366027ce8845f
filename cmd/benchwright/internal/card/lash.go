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

// A Lash is a backlash reading, with its limits as the dial shows them at its
// place.
type Lash struct {
	*Measurement
	Block      *procedure.Lash
	Pair       *unit.Pair      // nil if the unit has none
	LimitPlace *unit.LashPlace // where the limits hold; nil without limits
	Radius     *quantity.Value // of the dial from the axis of the shaft; nil if not known
	// PerPitch is what the dial shows per unit of circumferential backlash at
	// the pitch radius; nil if the unit lacks the data.
	PerPitch *big.Rat
}

func (r *resolver) lash(i *procedure.Lash) Item {
	out := &Lash{Block: i, Pair: r.pair(i.Gears, i.At)}
	var factor *big.Rat
	dial := i.DialPlace
	if out.Radius = dial.Radius; out.Radius == nil && out.Pair != nil {
		out.Radius = out.Pair.PitchRadius(dial.Turned)
	}
	out.PerPitch, _ = lashFactor(&unit.LashPlace{Turned: dial.Turned}, dial, out.Pair)
	if out.LimitPlace = r.limitPlace(i); out.LimitPlace != nil {
		var lacks string
		if factor, lacks = lashFactor(out.LimitPlace, dial, out.Pair); factor == nil {
			r.reportMissingFact(i, out.Pair, lacks)
		}
	}
	out.Measurement = r.scaled(&i.Measurement, quantity.Length, factor)
	if factor == nil && i.Limits.Stated() && !i.Limits.None {
		out.withoutLimits()
	}
	if out.PerPitch != nil && i.Tilt != nil {
		if shown, ok := bench.TiltedReading(out.PerPitch, inDegrees(i.Tilt)); ok {
			out.PerPitch = shown
		}
	}
	return out
}

// pair returns the gears that a block refers to, nil if the unit has none. If
// it has several, the block must name one.
func (r *resolver) pair(named procedure.Named, block source.Place) *unit.Pair {
	u := r.card.Unit
	if u == nil {
		return nil
	}
	pair := u.Pair(named.Name)
	switch {
	case pair != nil:
	case named.Name != "":
		r.reportUnknown(diag.OnUnit, "part-unknown", "gear pair", named, u.PairIDs(), "gears in the unit")
	case len(u.Gears) > 1:
		r.msgs.Report("key-missing", block, "add `gears:` with one of: "+strings.Join(u.PairIDs(), ", "), "the unit has several gear pairs, and this block names none")
	}
	return pair
}

// limitPlaceForm shows, for a fix, how a limit states where it holds.
const limitPlaceForm = "`holds: {measured: tangent, at: pitch-radius, turned: gear}`"

// limitPlace returns where the limits hold, nil without limits, or if it is
// not stated, which it reports.
func (r *resolver) limitPlace(i *procedure.Lash) *unit.LashPlace {
	l, u := &i.Limits, r.card.Unit
	if l.None || l.Bad.IsSet() || !l.Stated() {
		return nil
	}
	if l.Band != nil || u == nil {
		if i.LimitPlace == nil {
			r.msgs.Report("key-missing", l.At, "add "+limitPlaceForm+" beside them, as the manual has it", "nothing says where these limits hold")
		}
		return i.LimitPlace
	}
	named := u.Limit(l.Named.Name)
	switch {
	case named == nil || named.Bad.IsSet():
		return nil
	case named.LashPlace != nil && i.LimitPlace != nil:
		d := r.msgs.Report("limits-twice", i.KeyPlace("holds"), "take it out here", "the unit says where `%s` holds", named.ID)
		d.Related = append(d.Related, diag.Related{At: named.At, Message: "the limit is declared here"})
	case named.LashPlace == nil && i.LimitPlace == nil:
		if named.All == nil || named.All.Band.Unit.Dimension == quantity.Length { // else the dimension of the limit is wrong
			r.reportNoLimitPlace(named)
		}
	case named.LashPlace == nil:
		return i.LimitPlace
	}
	return named.LashPlace
}

// reportNoLimitPlace reports a limit of backlash that does not state where it
// holds, at the limit, because several blocks may name it.
func (r *resolver) reportNoLimitPlace(l *unit.Limit) {
	r.msgs.Report("key-missing", l.At, "add "+limitPlaceForm+" to `"+l.ID+"` in the unit, as the manual has it", "nothing says where `%s` holds, and a backlash is read or set by it", l.ID)
}

// reportMissingFact reports data of the gears without which limits cannot be
// converted to the place of the dial.
func (r *resolver) reportMissingFact(i *procedure.Lash, pair *unit.Pair, key string) {
	switch {
	case pair != nil && key == "":
		r.msgs.Report("quantity-malformed", i.KeyPlace("measured"), "check the angles of `"+pair.ID+"` again: each is less than 90°",
			"the angles of `%s` are no pressure angle and spiral", pair.ID)
	case pair != nil && key == "pitch-radius" && (pair.PinionRadius == nil && pair.Node.Get(key).Get("pinion") != nil || pair.GearRadius == nil && pair.Node.Get(key).Get("gear") != nil),
		pair != nil && key == "pressure-angle" && pair.Node.Get(key) != nil: // unreadable, which is reported
	case pair != nil:
		d := r.msgs.Report("key-missing", pair.At, "add `"+key+":` to `"+pair.ID+"` in the unit",
			"limits of backlash hold elsewhere than the dial stands, and `%s` does not say its %s", pair.ID, strings.ReplaceAll(key, "-", " "))
		d.Related = append(d.Related, diag.Related{At: i.KeyPlace("at"), Message: "a dial stands here"})
	case r.card.Unit != nil && len(r.card.Unit.Gears) == 0:
		r.msgs.Report("key-missing", i.KeyPlace("at"), "declare the pair under `gears` in the unit, with `pitch-radius` and `pressure-angle`",
			"the limits hold elsewhere, and the unit has no gear pair")
	}
}

// lashFactor returns the factor that converts backlash at one place to that at
// another. At the pitch radii it is the same for both members. If factor is
// nil, lacks is the key of the pair that is missing.
func lashFactor(from, to *unit.LashPlace, pair *unit.Pair) (factor *big.Rat, lacks string) {
	pressure, spiral := new(big.Rat), new(big.Rat)
	if from.Square != to.Square {
		if pair == nil || pair.PressureAngle == nil {
			return nil, "pressure-angle"
		}
		pressure = inDegrees(pair.PressureAngle)
		if pair.Spiral != nil {
			spiral = inDegrees(pair.Spiral)
		}
	}
	var points [2]bench.LashPoint
	direct := from.Turned == to.Turned && from.Radius != nil && to.Radius != nil
	for i, p := range []*unit.LashPlace{from, to} {
		points[i] = bench.LashPoint{Radius: big.NewRat(1, 1), Square: p.Square}
		if p.Radius == nil {
			continue // in pitch radii this is one
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

// TiltDegrees returns the tilt in degrees, nil if not stated.
func (m *Measurement) TiltDegrees() *big.Rat {
	if m.Tilt == nil {
		return nil
	}
	return inDegrees(m.Tilt)
}
