package calc

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
)

var fastener = computation{
	name:  "fastener",
	about: "torque, clamp force and proof load of a thread; likely typos",
	options: []option{
		{name: "thread", example: "M12x1.75", about: "the thread, M12x1.75 or 1/2-13", needed: true},
		{name: "class", example: "8.8", about: "property class, such as 8.8 or A2-70, or SAE grade 2, 5 or 8", needed: true},
		{name: "nut-factor", example: "0.20", about: "the nut factor K of the finish and oil, from its source", needed: true},
		{name: "torque", example: "82 N·m", about: "a torque or its limits, to be judged"},
		{name: "duty", example: "clamp", about: "what it is there for: clamp, bearing-nut, ring, plug, gasket or to-yield; needed to judge a torque"},
		{name: "force", example: "34 kN", about: "the clamp force that is wanted"},
		{name: "share", example: "70 %", about: "the part of the proof load that is wanted"},
	},
	example: `--thread M12x1.75 --class 8.8 --nut-factor 0.20 --share "70 %"`,
	work:    fastenerSheet,
}

const (
	nutFactorSource = "T = K × d × F with a stated K: published values for zinc alone run from 0.20 to 0.295."
	proofSource     = "ISO 898-1 (public tables), ASME B1.1, SAE J429."
)

func fastenerSheet(a *answers) *sheet {
	from := a.either(true, "torque", "force", "share")
	t, ok := bench.ParseThread(a.text("thread"))
	if !ok {
		a.wrong("thread", "`%s` is not a thread that is known here: write it with its pitch, as in `M12x1.75` or `1/2-13`", short(a.text("thread")))
	}
	k := a.positiveNumber("nut-factor").Value
	proof, listed, ok := t.ProofLoad(a.text("class"))
	if a.ok() && !ok {
		a.wrong("class", "no proof load is known for `%s` in this thread: write %s, in the sizes of the standard", short(a.text("class")), diag.Series(t.Classes(), "or"))
	}
	if from == "torque" {
		a.need("duty")
	}
	torque := a.band("torque", quantity.Torque)
	duty, _ := bench.ParseDuty(a.choice("duty", "clamp", "bearing-nut", "ring", "plug", "gasket", "to-yield"))
	force, share := a.positive("force", quantity.Force), a.share("share")
	if !a.ok() {
		return nil
	}
	s := a.sheet("Fastener", "Torque and clamp force, beside the proof load.")
	u := forUnits(t)
	s.formula("T = K × d × F")
	s.input("d", "thread", a.text("thread"))
	s.input("", "class or grade", a.text("class"))
	s.input("K", "nut factor", s.num(k))
	s.proof(t, proof, listed, u)
	d := quantity.Convert(t.Diameter, u.size, u.lever)
	if from == "torque" {
		s.band("T", "torque", torque, u.torque)
		limits := torque.In(u.torque)
		bare := []*big.Rat{limits.Low, limits.High}
		if torque.Form == quantity.Bare {
			bare = []*big.Rat{limits.Nominal.Value}
		}
		for _, x := range bare {
			if x == nil {
				continue
			}
			f := t.ClampForce(k, quantity.Convert(x, u.torque, newtonMeter))
			in := quantity.Convert(f, newton, u.force)
			s.step("F = ", s.num(x), " / (", s.num(k), " × ", s.num(d), ") ", s.equalsIn(in, u.force))
			of := new(big.Rat).Quo(f, proof)
			s.step("part of proof: ", s.num(in), " / ", s.num(quantity.Convert(proof, newton, u.force)), " ", s.equals(of))
			s.result(s.rounded(quantity.Convert(x, u.torque, torque.Unit), torque.Unit), " clamps with ", s.rounded(in, u.force), ", ", s.roundedShare(of), " of proof.")
		}
		s.tightness(torque, duty, t, k, proof)
	} else {
		f := force.In(newton).Value
		if from == "share" {
			f = new(big.Rat).Mul(proof, share)
			s.input("", "part of proof wanted", s.perCent(share))
			s.step("F = ", s.num(quantity.Convert(proof, newton, u.force)), " × ", s.num(share), " ", s.equalsIn(quantity.Convert(f, newton, u.force), u.force))
		} else {
			s.value("F", "clamp force wanted", force, u.force)
		}
		in := quantity.Convert(f, newton, u.force)
		x := quantity.Convert(t.TighteningTorque(k, f), newtonMeter, u.torque)
		text := s.equalsIn(x, u.torque)
		if u.foot.Symbol != u.torque.Symbol {
			text += " " + s.equalsIn(quantity.Convert(x, u.torque, u.foot), u.foot)
		}
		s.step("T = ", s.num(k), " × ", s.num(d), " × ", s.num(in), " ", text)
		s.result("Tighten to ", s.rounded(quantity.Convert(x, u.torque, u.foot), u.foot), "; it clamps with ", s.rounded(in, u.force), ", ", s.roundedShare(new(big.Rat).Quo(f, proof)), " of proof.")
		if f.Cmp(proof) > 0 {
			s.refuse("That is above the proof load: the fastener stretches for good.")
		}
	}
	s.source(s.local(nutFactorSource), proofSource)
	return s
}

// proof works out the stress area and the proof load.
func (s *sheet) proof(t bench.Thread, proof *big.Rat, listed bool, u fastenerUnits) {
	area := t.StressArea()
	in := quantity.Convert(proof, newton, u.force)
	if t.PerInch != nil {
		s.formula(s.local("As = 0.7854 × (D − 0.9743 / n)²"), "proof = As × Sp")
		s.step("As = ", s.local("0.7854"), " × (", s.num(t.Diameter), " − ", s.local("0.9743"), " / ", s.num(t.PerInch), ")² ", s.equals(area), " in²")
	} else {
		s.formula(s.local("As = π / 4 × (d − 0.9382 × P)²"), "proof = As × Sp, or the row of the table")
		s.step("As = π / 4 × (", s.num(t.Diameter), " − ", s.local("0.9382"), " × ", s.num(t.Pitch), ")² ", s.equals(area), " mm²")
	}
	if listed {
		s.step("proof ", s.equalsIn(in, u.force), ", the row of ISO 898-1")
		return
	}
	stress := new(big.Rat).Quo(in, area)
	s.step("proof = ", s.num(area), " × ", s.num(stress), " ", s.equalsIn(in, u.force))
}

// tightness judges a torque.
func (s *sheet) tightness(torque quantity.Band, duty bench.Duty, t bench.Thread, k, proof *big.Rat) {
	if duty == bench.ToYield {
		s.result("Tightened to yield: there is no proof check.")
		return
	}
	j, ok := bench.JudgeTorque(torque, duty, t, k, proof)
	if !ok {
		return
	}
	switch j.Finding {
	case bench.TightOrdinary:
		s.result("That is ordinary for its duty.")
	case bench.TightLow:
		s.result("That may be below 30 % of proof, which is little for a clamp. Is the number right?")
	case bench.TightHigh:
		s.result("That may be above 90 % of proof. Is the number right?")
	case bench.TightAbove:
		s.refuse("That may be above the proof load: the fastener stretches for good.")
	}
	for _, slip := range j.Slips {
		what := "another unit of measure"
		if slip.Places != 0 {
			what = "a decimal point one place on"
		}
		s.result("Ordinary would be ", s.span(slip.Meant), ": ", what, ". Was that meant?")
	}
}

// fastenerUnits are the units in which a kind of thread is worked.
type fastenerUnits struct{ size, lever, force, torque, foot quantity.Unit }

func forUnits(t bench.Thread) fastenerUnits {
	if t.PerInch != nil {
		return fastenerUnits{inch, inch, poundForce, poundInch, poundFoot}
	}
	return fastenerUnits{mm, meter, newton, newtonMeter, newtonMeter}
}
