package card

import (
	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
)

// MaxMeasures is the number of full measures that can be counted reliably.
const MaxMeasures = 6

// A Fill is a quantity of fluid: a number of full measures, and a last one
// filled to between two marks.
type Fill struct {
	*Measurement
	Block *procedure.Fill
	Full  int
	Last  *quantity.Marks // nil without a usable measure, which a rule reports
}

func (f *Fill) complete(c *Card) bool {
	return f.Measurement.complete(c) && (f.Gauge == nil || f.Last != nil)
}

func (r *resolver) fill(f *procedure.Fill) Item {
	if !r.pourable(f) {
		out := &Fill{Measurement: r.newReading(&f.Measurement), Block: f}
		out.withoutLimits()
		return out
	}
	out := &Fill{Measurement: r.reading(&f.Measurement, quantity.None, nil), Block: f}
	out.Answered = true // pouring to the mark keeps it within the limits
	if out.Limit == nil || out.Gauge == nil {
		return out
	}
	// A total above the capacity of the measure is still on its marks.
	endless := out.Gauge.Scale
	endless.Low, endless.High = nil, nil
	poured := *out.OnGauge()
	if out.Guarded != nil {
		poured = *out.Guarded
	} else if marks, ok := poured.Inward(endless); ok && !out.GuardLeftNoMark {
		out.Marks = &marks
	}
	if full, last, ok := bench.Fillings(poured, out.Gauge.Scale); ok {
		if out.Full = full; full < MaxMeasures {
			out.Last = &last
		}
	}
	return out
}

// pourable reports whether the quantity can be poured in, and reports an error
// if not. Unknown limits are reported when the reading is resolved.
func (r *resolver) pourable(f *procedure.Fill) bool {
	b := f.Limits.Band
	if u := r.card.Unit; b == nil && u != nil {
		if named := u.Limit(f.Limits.Named.Name); named != nil {
			if l := named.ForVariant(r.card.VariantID()); l != nil {
				b = &l.Band
			}
		}
	}
	switch {
	case b == nil:
		return true
	case b.Unit.Dimension != quantity.Volume && b.Unit.Dimension != quantity.Mass:
		r.msgs.Report("measure-kind", f.Limits.At, "write a volume or a mass, or name a limit that is one", "`%s` measures %s, and a fill takes a volume or a mass", b.Written, b.Unit.Dimension)
	case b.High != nil && b.High.Sign() <= 0 || b.Low != nil && b.Low.Sign() < 0:
		r.msgs.Report("quantity-malformed", f.Limits.At, "write the least and the most, as in `1.2 to 1.3 L`", "a fill must be greater than zero")
	default:
		return true
	}
	return false
}
