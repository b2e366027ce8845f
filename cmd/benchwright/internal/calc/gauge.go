package calc

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

var gauge = computation{
	name:  "gauge",
	about: "is a gauge fine enough for limits; limits with a guard band",
	options: []option{
		{name: "limits", example: "0.15 to 0.25 mm", about: "the limits", needed: true},
		{name: "marks", example: "0.01 mm", about: "one graduation of the gauge", needed: true},
		{name: "warn", example: "5", about: "the shop's rule; warn under so many marks"},
		{name: "refuse", example: "2", about: "the shop's rule; refuse under so many marks"},
		{name: "uncertainty", example: "0.01 mm", about: "the gauge's expanded uncertainty, from its record"},
		{name: "guard", example: "1", about: "guard band; how much of the uncertainty the limits lose at each side"},
	},
	example: `--limits "0.15 to 0.25 mm" --marks "0.01 mm" --warn 5 --refuse 2 --uncertainty "0.01 mm" --guard 1`,
	work:    gaugeSheet,
}

func gaugeSheet(a *answers) *sheet {
	limits := a.limits("limits", quantity.None)
	scale := a.scale(limits.Unit)
	var warn, refuse *big.Rat
	if a.has("warn") {
		warn = a.positiveNumber("warn").Value
	}
	if a.has("refuse") {
		refuse = a.positiveNumber("refuse").Value
	}
	if a.has("guard") {
		a.need("uncertainty")
	}
	u := a.positive("uncertainty", limits.Unit.Difference().Dimension)
	guard := a.positiveNumber("guard").Value
	if !a.ok() {
		return nil
	}
	s := a.sheet("Gauge against limits", "How many marks lie between the limits. A maximum counts from 0; a minimum has no width.")
	s.band("", "limits", limits, scale.Unit)
	s.marks("graduations, gauge", scale)
	s.formula("marks across = width / distance of the marks")
	width := limits.In(scale.Unit).Width()
	across, ok := bench.MarksAcross(limits, scale)
	if !ok {
		s.result("These limits have no width: no number of marks can be named.")
	} else {
		s.step("marks across = ", s.num(width), " / ", s.num(scale.Step), " ", s.equals(across))
		text := s.num(across) + " marks across the limits"
		switch bench.JudgeMarks(across, warn, refuse) {
		case bench.TooCoarse:
			s.refuse(text, ": too coarse. Take a gauge with finer marks.")
		case bench.Coarse:
			s.result(text, ": coarse. Take a gauge with finer marks if there is one.")
		default:
			if warn != nil || refuse != nil {
				text += ": fine enough"
			}
			s.result(text, ".")
		}
		if warn != nil || refuse != nil {
			s.source("The numbers of marks are the shop's rule (5 and 2 are common practice).")
		}
	}
	if a.has("uncertainty") {
		s.uncertainty(limits, u)
	}
	if a.has("guard") {
		s.guard(limits, scale, guard, u)
	}
	return s
}

func (s *sheet) uncertainty(limits quantity.Band, u quantity.Value) {
	difference := limits.Unit.Difference()
	s.value("U", "its uncertainty", u, difference)
	ratio, ok := bench.UncertaintyRatio(limits, u)
	if !ok {
		return
	}
	s.formula("ratio = width / (2 × U)")
	s.step("ratio = ", s.num(limits.Width()), " / (2 × ", s.num(u.In(difference).Value), ") ", s.equals(ratio))
	if ratio.Cmp(big.NewRat(4, 1)) < 0 {
		s.refuse("The ratio is ", s.num(ratio), ", under 4: the gauge is not sure enough for these limits.")
	} else {
		s.result("The ratio is ", s.num(ratio), ", 4 or more.")
	}
	s.source("4 to 1: ANSI/NCSL Z540.3, 5.3.")
}

func (s *sheet) guard(limits quantity.Band, scale quantity.Scale, w *big.Rat, u quantity.Value) {
	s.formula("low limit + w × U, high limit − w × U")
	s.input("w", "guard band", s.num(w))
	off := u.In(limits.Unit.Difference()).Value
	guarded, ok := bench.Guard(limits, w, u)
	s.source(s.local("Guard band: w is 1, or 0.825 after ISO 14253-1:2017 (secondary source)."))
	if !ok {
		s.refuse("The guard band leaves nothing between the limits.")
		return
	}
	for _, l := range limitsOf(limits, guarded) {
		sign := " − "
		if l.low {
			sign = " + "
		}
		s.step(l.name(": "), s.num(l.given), sign, s.num(w), " × ", s.num(off), " ", s.equalsIn(l.worked, limits.Unit))
	}
	if marks, ok := guarded.Inward(scale); ok {
		s.result("Accept ", marks.Print(s.mark), ".")
		return
	}
	s.refuse("With the guard band no mark of the gauge is left inside.")
}
