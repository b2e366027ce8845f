package card

import (
	"math/big"
	"slices"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/unit"
)

// A Warmth is a part that is heated or chilled, and the temperature to reach.
type Warmth struct {
	*Measurement    // the temperature on the thermometer
	Method          *procedure.Method
	StatedLimit     *unit.LimitBand // as stated by the manual; nil if computed
	With            []*shop.Item
	Part, Other     Member   // the part that is heated or chilled, and the other one
	InTheHeat       []Member // other parts that get as hot
	Cap             *Cap     // the lowest that applies; nil if none is known
	RoomTemperature *quantity.Value
	Need            *big.Rat // the computed temperature in °C; nil if stated
	Fast            bool     // the other part warms up too: heat fast, pull at once
}

// A Cap is the maximum temperature of a part, in °C.
type Cap struct {
	Member
	Highest *big.Rat
	Shown   *quantity.Marks // on marks of the thermometer, high side only; nil without one
}

func (r *resolver) warmth(f *Fit, m *procedure.Method, hot bool) *Warmth {
	if m == nil {
		return nil
	}
	w := &Warmth{Method: m, With: r.toolsNamed(m.With), Part: f.Outer(), Other: f.Inner(), RoomTemperature: m.Room}
	if !hot {
		w.Part, w.Other = w.Other, w.Part
	}
	for _, n := range m.InTheHeat {
		w.InTheHeat = append(w.InTheHeat, r.member(n))
	}
	if hot {
		w.Cap = w.cap(!f.Direction.In())
	}
	if a, b := w.Part.expansion(), w.Other.expansion(); a != nil && b != nil && !f.Direction.In() {
		w.Fast = bench.HeatFast(a, b)
	}
	w.Measurement = r.newReading(&m.Measurement)
	w.Answered = true
	if m.Limits.Stated() {
		w.StatedLimit = r.limit(&m.Limits, quantity.Temperature)
		switch s := w.StatedLimit; {
		case s == nil: // reported, or a rule reports it
		case s.Band.Low != nil && quantity.Convert(s.Band.Low, s.Band.Unit, celsius).Cmp(bench.ChillFloor) < 0:
			r.msgs.Report("quantity-malformed", s.At, "check it again, with its sign and its unit of measure", "nothing in the shop is colder than %s", wholeDegrees.Print(bench.ChillFloor, r.card.Shop.Mark()))
			w.Mismatch = true
		case w.TooHot(s.Band.Low, s.Band.Unit):
			w.Mismatch = true // a rule reports it
		default:
			w.Limit = w.upToCap(*s)
		}
	} else if band := r.target(f, w, hot); band != nil {
		w.Limit = &unit.LimitBand{Band: *band, Source: "computed", At: m.At}
	} else {
		w.Mismatch = true // what is missing has been reported
	}
	r.toGauge(w.Measurement, nil)
	if w.Cap != nil && w.Gauge != nil {
		highest := quantity.Band{Form: quantity.Max, High: w.Cap.Highest, Unit: celsius}
		if marks, ok := highest.Inward(w.Gauge.Scale); ok {
			w.Cap.Shown = &marks
		}
	}
	return w
}

// TooHot reports whether a temperature is above the cap, false for nil.
func (w *Warmth) TooHot(at *big.Rat, u quantity.Unit) bool {
	return w.Cap != nil && at != nil && quantity.Convert(at, u, celsius).Cmp(w.Cap.Highest) > 0
}

// upToCap gives stated limits without a high side that of the cap.
func (w *Warmth) upToCap(l unit.LimitBand) *unit.LimitBand {
	if b := &l.Band; b.High == nil && w.Cap != nil {
		b.High = quantity.Convert(w.Cap.Highest, celsius, b.Unit)
		b.Numbers = nil
		if b.Low != nil {
			b.Form = quantity.Range
		}
	}
	return &l
}

// Degrees prints a cap in whole degrees, rounded down.
func (c *Cap) Degrees(mark quantity.DecimalMark) string {
	return wholeDegrees.Print(wholeDegrees.Floor(c.Highest), mark)
}

// NeedDegrees prints the computed temperature in whole degrees, rounded up.
func (w *Warmth) NeedDegrees(mark quantity.DecimalMark) string {
	return wholeDegrees.Print(wholeDegrees.Ceil(w.Need), mark)
}

// cap returns the lowest maximum temperature of the parts that get hot: the
// heated one, the one inside it, and those that the writer names.
func (w *Warmth) cap(together bool) *Cap {
	members := append([]Member{w.Part}, w.InTheHeat...)
	if together {
		members = append(members, w.Other)
	}
	members = slices.DeleteFunc(members, func(m Member) bool { return m.MaxHeat() == nil })
	var caps []bench.Cap
	for _, m := range members {
		caps = append(caps, bench.Cap{Why: m.At.Name, Highest: m.MaxHeat()})
	}
	if at, ok := bench.LowestCap(caps); ok {
		return &Cap{Member: members[at], Highest: caps[at].Highest}
	}
	return nil
}

// MaxHeat returns the maximum temperature of a part in °C, nil if not known.
func (m Member) MaxHeat() *big.Rat {
	switch p := m.Part; {
	case p == nil:
	case p.MaxHeat != nil:
		return p.MaxHeat.In(celsius).Value
	case p.Rolling():
		return bench.BearingCap
	}
	return nil
}

// expansion returns the thermal expansion of a part per °C, nil if not stated.
func (m Member) expansion() *big.Rat {
	if m.Part == nil || m.Part.Material.Expansion == nil {
		return nil
	}
	e := m.Part.Material.Expansion.In(perCelsius).Value
	return e.Mul(e, big.NewRat(1, 1000000))
}

// target computes the temperature to reach, as a band in °C. It returns nil if
// it cannot, which it reports, or if the cap is lower, which a rule reports.
func (r *resolver) target(f *Fit, w *Warmth, hot bool) *quantity.Band {
	if f.bad || w.Method.Limits.Bad.IsSet() {
		return nil
	}
	if lacks := f.missingKeys(need{"clearance", w.Method.Clearance != nil}, need{"room", w.RoomTemperature != nil}); lacks != "" {
		r.msgs.Report("key-missing", w.Method.At, "write `to:` with the manual's temperature and its `source:`, or state what is missing",
			"no temperature is stated, and it cannot be computed without %s", lacks)
		return nil
	}
	rise := r.rise(f, w, hot)
	if rise == nil {
		return nil
	}
	room := w.RoomTemperature.In(celsius).Value
	if !hot {
		band := bench.ChillBand(room, rise)
		w.Need = band.High
		if w.Need.Cmp(bench.ChillFloor) < 0 {
			r.msgs.Report("quantity-malformed", f.KeyPlace("interference"), "check the interference, the diameter and `clearance:`, or heat the other part as well",
				"the seat would open at %s, and nothing in the shop is colder than %s", wholeDegrees.Print(wholeDegrees.Floor(w.Need), r.card.Shop.Mark()), wholeDegrees.Print(bench.ChillFloor, r.card.Shop.Mark()))
			return nil
		}
		return r.inWholeDegrees(w, band)
	}
	w.Need = new(big.Rat).Add(room, rise)
	if w.Cap == nil {
		return nil
	}
	band, ok := bench.HeatBand(room, rise, w.Cap.Highest)
	if !ok {
		return nil
	}
	return r.inWholeDegrees(w, band)
}

// rise computes the temperature change in °C that opens the seat, nil if it
// cannot, which it reports. When parts come apart, both change.
func (r *resolver) rise(f *Fit, w *Warmth, hot bool) *big.Rat {
	together := !f.Direction.In()
	changed, other := w.Part.expansion(), w.Other.expansion()
	for _, m := range []struct {
		Member
		wanted bool
	}{{w.Part, changed == nil}, {w.Other, together && other == nil}} {
		if m.wanted && m.Part != nil && m.Part.Node.Get("material").Get("expansion") != nil {
			return nil // unreadable, which is reported
		}
		if m.wanted {
			r.msgs.Report("key-missing", m.At.At, "name a part of the unit that states `material: {expansion: 11.4e-6 /°C, source: …}`, or write `to:` with the manual's temperature",
				"nothing says how much `%s` grows with heat", m.At.Name)
			return nil
		}
	}
	clearance := new(big.Rat).Set(inMillimeters(w.Method.Clearance))
	if hot && f.Chill != nil {
		clearance.Sub(clearance, f.shrunk())
	}
	rise, ok := bench.TemperatureRise(f.size.max, clearance, changed, f.size.diameter)
	if together && !w.Fast {
		rise, ok = bench.RiseTogether(f.size.max, clearance, changed, other, f.size.diameter)
	}
	if !ok {
		r.msgs.Report("quantity-malformed", f.KeyPlace("interference"), "check the diameter and the expansion", "with this diameter and this expansion the seat never opens")
		return nil
	}
	return rise
}

// inWholeDegrees prints a computed band in whole degrees, rounded inward.
// Without a thermometer these are also its limits.
func (r *resolver) inWholeDegrees(w *Warmth, band quantity.Band) *quantity.Band {
	if marks, ok := band.Inward(wholeDegrees); ok {
		band.Written = marks.Print(r.card.Shop.Mark())
		if g, ok := r.card.Shop.Find(w.Method.Gauge.Name).(*shop.Gauge); !ok || g.Bad.IsSet() {
			band.Low, band.High = marks.Low, marks.High
		}
	} else {
		band.Written = wholeDegrees.Print(wholeDegrees.Ceil(w.Need), r.card.Shop.Mark())
	}
	return &band
}

// shrunk returns how much smaller a chilled part is on the diameter, in mm, at
// the highest temperature that the manual allows; 0 if not known.
func (f *Fit) shrunk() *big.Rat {
	c := f.Chill
	if c.StatedLimit == nil || c.StatedLimit.Band.High == nil || c.Part.expansion() == nil {
		return new(big.Rat)
	}
	warm := quantity.Convert(c.StatedLimit.Band.High, c.StatedLimit.Band.Unit, celsius)
	if f.Fit.Heat.Room == nil || warm == nil {
		return new(big.Rat)
	}
	fall := new(big.Rat).Sub(f.Fit.Heat.Room.In(celsius).Value, warm)
	if fall.Sign() < 0 {
		return new(big.Rat)
	}
	return bench.Opening(c.Part.expansion(), f.size.diameter, fall)
}
