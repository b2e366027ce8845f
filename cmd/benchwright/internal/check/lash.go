package check

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/quantity"
)

// lashes checks that limits of backlash are plausible for the pitch of the
// gears.
func lashes(p *pass) {
	each(p, func(_ *card.Step, l *card.Lash) {
		if l.Limit == nil || l.Pair == nil || l.PerPitch == nil || tooSteep(l.Measurement) || l.Gauge == nil && p.Shop != nil {
			return
		}
		pitch := l.Pair.Pitch()
		if pitch == nil {
			return
		}
		atPitch := bench.Scaled(*l.OnGauge(), new(big.Rat).Inv(l.PerPitch), l.OnGauge().Unit)
		side := map[bench.LashFinding]string{bench.LashSmall: "below", bench.LashLarge: "above"}[bench.JudgeLash(atPitch, pitch)]
		if side == "" {
			return
		}
		low, high, _ := bench.UsualLash(pitch)
		inch := quantity.MustUnit("in")
		u, step := inch, thou
		if l.Limit.Band.Unit != inch {
			u = quantity.MustUnit("mm")
			step = big.NewRat(1, 100)
		}
		number := func(x *big.Rat) string { return quantity.Format(quantity.Convert(x, inch, u), step, p.Shop.Mark()) }
		usual := number(low) + " to " + u.After(number(high))
		p.msgs.Report("lash-unusual", l.Limits.At, "check the limits and their unit of measure; if the manual has them so, accept this with the reason",
			"%s lies %s what gears of `%s` usually run with, %s", l.Limit.Band.Written, side, l.Pair.ID, usual)
	})
}

// rates checks that a rate stated by a manual is plausible compared with the
// theoretical one.
func rates(p *pass) {
	each(p, func(_ *card.Step, i *card.Shim) {
		if i.Pack == nil || i.Pack.Rate == nil || p.Unit == nil {
			return
		}
		theory := card.TheoryRate(p.Unit, i.Pack)
		if theory == nil || !bench.FarFromTheory(i.Pack.Rate, theory) {
			return
		}
		mark := p.Shop.Mark()
		d := p.msgs.Report("rate-unlikely", i.Shim.Pack.At, "look the rate up again; if it stands so in the manual, accept this with the reason",
			"a rate of %s is far from the theory's %s", quantity.Decimal(i.Pack.Rate, mark), quantity.Format(theory, thou, mark))
		d.Related = append(d.Related, related(i.Pack.Node.Get("rate").Place(), "the rate of `"+i.Pack.ID+"` is stated here"))
	})
}

// maxTilt is the maximum tilt of a lever in degrees (common practice): beyond
// it, a small error of the angle is a large error of the reading.
var (
	maxTilt = big.NewRat(60, 1)
	thou    = big.NewRat(1, 1000)
)

// tooSteep reports whether a reading is taken with a lever tilted more than
// maxTilt.
func tooSteep(m *card.Measurement) bool {
	d := m.TiltDegrees()
	return d != nil && (d.Sign() < 0 || d.Cmp(maxTilt) > 0)
}

// tilts refuses a lever tilted more than maxTilt.
func tilts(p *pass) {
	eachReading(p, func(_ card.Item, m *card.Measurement) {
		if m.Tilt == nil {
			return
		}
		if tooSteep(m) {
			p.msgs.Report("tilt-steep", m.KeyPlace("tilt"), "set the lever flatter, best along the surface, and write the angle between the two", "a lever tilted by %s measures little of the movement", m.Tilt.Unit.After(m.Tilt.Text))
		}
	})
}
