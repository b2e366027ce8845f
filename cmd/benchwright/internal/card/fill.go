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

func (r *resolver) fill(f *procedure.Fill) Item {
	out := &Fill{Measurement: r.reading(&f.Measurement, quantity.None, nil), Block: f}
	if l := out.Limit; l != nil && l.Band.Unit.Dimension != quantity.Volume && l.Band.Unit.Dimension != quantity.Mass {
		r.msgs.Report("unit-kind", f.Limits.At, "write it in a unit of volume or mass", "`%s` is of %s, and a volume or a mass is poured in", l.Band.Written, l.Band.Unit.Dimension)
		out.withoutLimits()
		return out
	}
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
	if full, last, ok := bench.Jugfuls(poured, out.Gauge.Scale); ok {
		if out.Full = full; full < MostJugs {
			out.Last = &last
		}
	}
	return out
}
