package check

import (
	"fmt"
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/unit"
)

// tightness compares each torque with what its fastener withstands and needs,
// which reveals a lost decimal point or a wrong unit.
func tightness(p *pass) {
	each(p, func(_ *card.Step, t *card.Torque) {
		for _, g := range t.Tightenings() {
			if g.Limit != nil && !positive(g.Limit.Band) {
				p.msgs.Report("quantity-malformed", g.StatedAt, "write it as the manual gives it", "a torque must be greater than zero")
			}
		}
	})

	each(p, func(_ *card.Step, t *card.Torque) {
		f := t.Fastener
		if f == nil {
			return
		}
		if duty, _, _, known := strength(f); known && duty == bench.Clamp && f.NutFactor == nil && f.Node.Get("nut-factor") == nil {
			d := p.msgs.Report("nut-factor-missing", t.Torque.Fastener.At, "add `nut-factor:` and `nut-factor-source:` to `"+f.ID+"` in unit.yaml, for its thread as it is lubricated",
				"nothing states the nut factor of `%s`, so its torque cannot be compared with what it can bear", f.ID)
			d.Related = append(d.Related, related(f.At, "the fastener is declared here"))
		}
		for _, g := range t.Tightenings() {
			if j, ok := p.tightnessOf(t, g); ok {
				p.reportTightness(t, g, j)
			}
		}
	})
}

// strength returns the duty, thread and proof load of a fastener. Ok is false
// if the unit does not state enough, or if it is tightened to yield.
func strength(f *unit.Fastener) (duty bench.Duty, thread bench.Thread, proof *big.Rat, ok bool) {
	duty, stated := bench.ParseDuty(string(f.Duty))
	thread, known := bench.ParseThread(f.Thread)
	proof, _, listed := thread.ProofLoad(f.Class)
	return duty, thread, proof, stated && known && listed && duty != bench.ToYield
}

// tightnessOf compares a torque with what its fastener withstands; ok is false
// if that is not known.
func (p *pass) tightnessOf(t *card.Torque, g *card.Tightening) (j bench.Tightness, ok bool) {
	f := t.Fastener
	if f == nil || f.NutFactor == nil || g.Limit == nil || !positive(g.Limit.Band) {
		return j, false
	}
	duty, thread, proof, known := strength(f)
	if !known {
		return j, false
	}
	return bench.JudgeTorque(g.Limit.Band, duty, thread, f.NutFactor, proof)
}

// positive reports whether limits are at or above zero and end above it.
func positive(b quantity.Band) bool {
	return (b.Low == nil || b.Low.Sign() >= 0) && (b.High == nil || b.High.Sign() > 0)
}

// reportTightness reports a torque that is far too high or too low for its
// fastener. A first torque followed by an angle or a second torque may be low.
func (p *pass) reportTightness(t *card.Torque, g *card.Tightening, j bench.Tightness) {
	f := t.Fastener
	pulls := fmt.Sprintf("%s pulls `%s` (%s, class %s)", g.Limit.Band.Written, f.ID, f.Thread, f.Class)
	followed := t.ThenTurn != nil || g == &t.Tightening && t.SecondTorque != nil
	fix := "check the torque, its unit of measure, the thread, the class and the nut factor again"
	if len(j.Slips) > 0 {
		slip := j.Slips[0]
		asks := "is the decimal point in its place?"
		if slip.Places == 0 {
			asks = "is it " + slip.Meant.Unit.Symbol + " in the source?"
		}
		fix = "check it again: " + asks + " " + slip.Meant.Range(p.Shop.Mark()) + " would be ordinary"
	}
	var d *diag.Diagnostic
	switch {
	case j.Finding == bench.TightAbove:
		d = p.msgs.Report("torque-over-proof", g.StatedAt, fix, "%s with up to %s of its proof load", pulls, percent(j.Most, j.Least, true))
	case j.Finding == bench.TightHigh:
		d = p.msgs.Report("torque-unlikely", g.StatedAt, fix, "%s with up to %s of its proof load; more than 90 %% is not usual", pulls, percent(j.Most, j.Least, true))
	case j.Finding == bench.TightLow && !followed:
		d = p.msgs.Report("torque-unlikely", g.StatedAt, fix, "%s with as little as %s of its proof load; less than 30 %% is not usual", pulls, percent(j.Least, j.Most, false))
	default:
		return
	}
	if g.Limit.At != g.StatedAt {
		d.Related = append(d.Related, related(g.Limit.At, "the torque is stated here"))
	}
	d.Related = append(d.Related, related(f.At, "the fastener is declared here"))
}

// percent prints a fraction of the proof load in percent, rounded up or down,
// away from the usual range.
func percent(a, or *big.Rat, up bool) string {
	if a == nil {
		a = or
	}
	x := new(big.Rat).Mul(a, big.NewRat(100, 1))
	n := new(big.Int).Quo(x.Num(), x.Denom())
	if up && !x.IsInt() {
		n.Add(n, big.NewInt(1))
	}
	return n.String() + " %"
}
