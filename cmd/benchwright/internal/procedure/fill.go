package procedure

import "benchwright/cmd/benchwright/internal/quantity"

// Fill is a quantity of fluid poured in with a measure of the shop. In its
// Measurement, Of is the fluid, Limits the quantity and Gauge the measure.
type Fill struct {
	Measurement
	Into string // what it is poured into
}

func (r reader) fill(b Base) Item {
	n := b.Node
	f := &Fill{Measurement: r.reading(b, quantity.None, "measure"), Into: r.Text(n.Get("into"))}
	f.Of = r.Text(n.Get("fluid"))
	limits := r.forPart()
	f.Limits.At = b.KeyPlace("quantity")
	limits.readLimits(&f.Limits, n.Get("quantity"), quantity.None)
	if f.Limits.None {
		limits.Refuse("limits-missing", f.Limits.At, "name a limit of the unit, or write the band with its `source:`", "this fill has no quantity")
		f.Limits.None = false
	}
	f.Limits.Bad = f.Limits.Bad.Or(limits.Bad())
	return f
}
