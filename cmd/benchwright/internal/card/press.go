package card

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/unit"
)

// A Push is a part that is pressed or pulled, with the force on the gauge of
// the press.
type Push struct {
	*Measurement // what the gauge shows
	Method       *procedure.Method
	With         []*shop.Item
	HasReading   bool            // there is a number to read
	Force        *unit.LimitBand // as stated or computed; nil without a number
	Computed     bool
	Ram          *quantity.Value // ram diameter of the press; nil if the gauge shows force
}

func (r *resolver) push(f *Fit, m *procedure.Method) *Push {
	if m == nil {
		return nil
	}
	p := &Push{Measurement: r.newReading(&m.Measurement), Method: m, With: r.toolsNamed(m.With)}
	p.Answered = true
	switch {
	case m.Limits.Bad.IsSet():
	case m.Limits.Stated():
		p.HasReading, p.Force = true, r.limit(&m.Limits, quantity.Force)
	case len(m.Friction) > 0:
		p.HasReading, p.Computed, p.Force = true, true, r.force(f, m)
	} // a gauge may be watched without a number: it jumps when the part seats
	bare := m.Limits.Band != nil && p.Force == nil // a rule reports it
	if p.Force != nil && p.Force.Band.High != nil && p.Force.Band.High.Sign() <= 0 {
		r.msgs.Report("quantity-malformed", p.Force.At, "write it as the manual gives it", "a force must be greater than zero")
		p.Force = nil
	}
	p.Limit, p.Mismatch = p.Force, p.HasReading && p.Force == nil && !bare
	r.toGauge(p.Measurement, func(force quantity.Band, g *shop.Gauge) (*quantity.Band, bool) {
		if g.Scale.Unit.Dimension != quantity.Pressure {
			return nil, true
		}
		pressure := r.ramPressure(p, force)
		return pressure, pressure != nil
	})
	if m := p.Marks; m != nil && m.High != nil && m.High.Sign() <= 0 {
		p.Marks = nil // at its lowest mark nothing is pressed
	}
	return p
}

// ramPressure converts a force to the pressure that drives the ram of the
// press. It returns nil if no tool states the diameter of its ram, which it
// reports.
func (r *resolver) ramPressure(p *Push, force quantity.Band) *quantity.Band {
	for _, i := range p.With {
		if t, ok := r.card.Shop.Find(i.ID).(*shop.Tool); ok && p.Ram == nil {
			if p.Ram = t.RamDiameter; t.RamDiameter == nil && t.Node.Get("ram") != nil {
				return nil // unreadable, which is reported
			}
		}
	}
	if p.Ram == nil {
		if len(p.With) < len(p.Method.With) {
			return nil // unknown, which is reported
		}
		at := p.Method.At
		if len(p.Method.With) > 0 {
			at = p.Method.With[0].At
		}
		r.msgs.Report("key-missing", at, "add `ram: 60 mm`, the diameter of its ram, to the press in shop.yaml",
			"`%s` shows pressure, and no tool here says how large its ram is", p.Method.Gauge.Name)
		return nil
	}
	area := bench.RamArea(inMillimeters(p.Ram))
	out := quantity.Band{Form: force.Form, Unit: megapascal, Written: force.Written}
	in := force.In(newton)
	for _, side := range []struct{ from, to **big.Rat }{{&in.Low, &out.Low}, {&in.High, &out.High}} {
		if *side.from != nil {
			*side.to, _ = bench.RamPressure(*side.from, area)
		}
	}
	return &out
}

// force computes the force from the interference, in kN. It returns nil if it
// cannot, which it reports.
func (r *resolver) force(f *Fit, m *procedure.Method) *unit.LimitBand {
	if f.bad {
		return nil
	}
	if lacks := f.missingKeys(need{"length", m.Length != nil}, need{"outside", m.Outside != nil}, need{"bore", m.Bore != nil}); lacks != "" {
		r.msgs.Report("key-missing", m.At, "write `force:` with the manual's force and its `source:`, or state what is missing; a solid part has `bore: 0 mm`", "the force cannot be computed without %s", lacks)
		return nil
	}
	if m.FrictionSource == "" {
		r.msgs.Report("source-missing", m.KeyPlace("friction"), "add `friction-source:` with where it comes from", "the friction has no source")
	}
	hub, shaft := f.Outer(), f.Inner()
	for _, n := range []Member{hub, shaft} {
		if n.Part == nil || n.Part.Material.Modulus == nil || n.Part.Material.Poisson == nil {
			r.msgs.Report("key-missing", n.At.At, "name a part of the unit that states `material: {modulus: 207 GPa, poisson: 0.3, source: …}`, or write `force:` with the manual's force",
				"nothing says how stiff `%s` is", n.At.Name)
			return nil
		}
	}
	fit := bench.PressFit{Outer: inMillimeters(m.Outside), Seat: f.size.diameter, Bore: inMillimeters(m.Bore),
		HubModulus: hub.Part.Material.Modulus.In(megapascal).Value, ShaftModulus: shaft.Part.Material.Modulus.In(megapascal).Value,
		HubPoisson: hub.Part.Material.Poisson, ShaftPoisson: shaft.Part.Material.Poisson}
	length := inMillimeters(m.Length)
	most, ok := fit.Force(f.size.max, m.Friction[len(m.Friction)-1], length)
	if !ok {
		r.msgs.Report("quantity-malformed", m.KeyPlace("outside"), "check them again: the bore is the smallest, the outside the largest, and there is interference",
			"these diameters and this interference press nothing")
		return nil
	}
	band := quantity.Band{Form: quantity.Max, High: quantity.Convert(most, newton, kilonewton), Unit: kilonewton}
	if f.size.min != nil && f.size.min.Sign() > 0 {
		if least, ok := fit.Force(f.size.min, m.Friction[0], length); ok {
			band.Form, band.Low = quantity.Range, quantity.Convert(least, newton, kilonewton)
		}
	}
	tenth := quantity.Scale{Unit: kilonewton, Step: big.NewRat(1, 10)}
	if marks, ok := band.Inward(tenth); ok {
		band.Written = marks.Print(r.card.Shop.Mark())
		if r.card.Shop == nil || m.Gauge.Name == "" {
			band.Low, band.High = marks.Low, marks.High
		}
	}
	return &unit.LimitBand{Band: band, Source: "computed", At: m.At}
}
