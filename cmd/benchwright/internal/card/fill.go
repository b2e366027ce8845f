package card

import (
	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
)

// MostJugs is how many fillings of a measure nobody loses count of.
const MostJugs = 6

// A Fill is a quantity of fluid that is poured in: so many full measures, and a
// last one between two marks.
type Fill struct {
	*Measurement
	Block *procedure.Fill
	Full  int
	Last  *quantity.Marks // nil without a measure that can be used, which a rule reports
}

func (f *Fill) whole(c *Card) bool {
	return f.Measurement.whole(c) && (f.Gauge == nil || f.Last != nil)
}

func (r *resolver) fill(f *procedure.Fill) Item {
	if !r.pourable(f) {
		out := &Fill{Measurement: r.newReading(&f.Measurement), Block: f}
		out.withoutLimits()
		return out
	}
	out := &Fill{Measurement: r.reading(&f.Measurement, quantity.None, nil), Block: f}
	out.Answered = true // what is poured in is made to lie inside
	if out.Limit == nil || out.Gauge == nil {
		return out
	}
	// What is more than one measure holds lies on its marks all the same.
	endless := out.Gauge.Scale
	endless.Low, endless.High = nil, nil
	poured := *out.OnGauge()
	if out.Guarded != nil {
		poured = *out.Guarded
	} else if marks, ok := poured.Inward(endless); ok && !out.GuardTook {
		out.Marks = &marks
	}
	if full, last, ok := bench.Fillings(poured, out.Gauge.Scale); ok {
		if out.Full = full; full < MostJugs {
			out.Last = &last
		}
	}
	return out
}

// pourable says whether the quantity is one that can be poured in, and reports
// one that is not. What is unknown is told when the reading is resolved.
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
		r.msgs.Report("quantity-malformed", f.Limits.At, "write the least and the most, as in `1.2 to 1.3 L`", "what is poured in is more than nothing")
	default:
		return true
	}
	return false
}
