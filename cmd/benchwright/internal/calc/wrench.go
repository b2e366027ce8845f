package calc

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
)

var wrench = computation{
	name:  "wrench",
	about: "what to set on a torque wrench",
	options: []option{
		{name: "limits", example: "55 to 65 N·m", about: "the torque's limits", needed: true},
		{name: "marks", example: "1 ft-lb", about: "one graduation of the wrench", needed: true},
		{name: "range", example: "15 to 75 ft-lb", about: "its lowest and highest graduation"},
		{name: "accuracy", example: "4 %", about: "its accuracy, of the reading"},
	},
	example: `--limits "55 to 65 N·m" --marks "1 ft-lb" --range "15 to 75 ft-lb" --accuracy "4 %"`,
	work:    wrenchSheet,
}

func wrenchSheet(a *answers) *sheet {
	limits := a.limits("limits", quantity.Torque)
	w := a.wrench(newtonMeter)
	if !a.ok() {
		return nil
	}
	s := a.sheet("Torque wrench", "The mark inside the limits that is nearest to the nominal, or to the middle of limits that have none.")
	s.band("T", "torque", limits, w.Scale.Unit)
	s.wrench(w)
	if limits.Unit.Symbol != w.Scale.Unit.Symbol {
		s.formula(s.relation(limits.Unit, w.Scale.Unit))
	}
	s.setting(limits, nil, w)
	if limits.Unit.Symbol != w.Scale.Unit.Symbol {
		s.source(s.local(unitSource))
	}
	return s
}

const wrenchSource = "Wrenches are tested at 20, 60 and 100 % of their range: ISO 6789:2003, secondary source. The choice of the mark is this program's rule."

// wrench reads the wrench; where its marks were not given, it is set in u.
func (a *answers) wrench(u quantity.Unit) *shop.Wrench {
	w := &shop.Wrench{Scale: a.scale(u)}
	if a.has("accuracy") {
		w.Accuracy = a.share("accuracy")
		if a.ok() && w.Accuracy.Cmp(big.NewRat(1, 1)) >= 0 {
			a.wrong("accuracy", "an accuracy is below 100 %%: write it as in `4 %%`")
		}
	}
	return w
}

// share reads a part as a percentage, 1/25 of "4 %".
func (a *answers) share(name string) *big.Rat {
	return new(big.Rat).Quo(a.positive(name, quantity.Proportion).Value, big.NewRat(100, 1))
}

// part prints a share in a result: "≈ 74.97 %".
func (s *sheet) roundedShare(share *big.Rat) string {
	return s.rounded(new(big.Rat).Mul(share, big.NewRat(100, 1)), percent)
}

// wrench enters the wrench.
func (s *sheet) wrench(w *shop.Wrench) {
	s.marks("graduations, wrench", w.Scale)
	if w.Accuracy != nil {
		s.input("a", "its accuracy", "±"+s.perCent(w.Accuracy)+" of the reading")
	}
}

// perCent prints a share: 1/25 as "4 %".
func (s *sheet) perCent(share *big.Rat) string {
	return s.num(new(big.Rat).Mul(share, big.NewRat(100, 1))) + "\u00a0%"
}

// setting works out what to set for limits at the fastener, through an adapter
// or none. It returns the mark, nil where there is none.
func (s *sheet) setting(limits quantity.Band, through *bench.Adapter, w *shop.Wrench) *big.Rat {
	s.source(wrenchSource)
	u := w.Scale.Unit
	exact := limits.In(u)
	choice, _ := bench.ChooseWrench(limits, through, []*shop.Wrench{w})
	exact, _ = through.Setting(exact, w.Length)
	if choice == nil {
		s.inward(exact, w.Scale, "")
		need := bench.NeedFor(exact, u)
		if need.Longest != nil {
			s.result("A wrench that does: its range holds ", s.span(exact), " and ends at ", s.rounded(need.Longest, u), " or below.")
		}
		return nil
	}
	s.step("marks inside the limits: ", choice.Marks.Print(s.mark))
	if target := exact.Target(); target != nil {
		what := "middle of the limits: "
		if exact.Nominal != nil {
			what = "nominal: "
		}
		s.step(what, s.amount(target, u))
	}
	s.result("Set ", w.Scale.Print(choice.Setting, s.mark), ".")
	if through != nil {
		long := w.Length.Value
		lever := bench.AdapterLever(long, through.Length.In(w.Length.Unit).Value, through.Angle)
		s.step("at the fastener ", s.num(choice.Setting), " × ", s.num(lever), " / ", s.num(long), " ", s.equalsIn(choice.Torque, u))
	}
	if w.Accuracy == nil {
		s.result("No accuracy was given: whether the wrench keeps inside the limits is not known.")
	} else {
		s.step("at the least ", s.num(choice.Torque), " × (1 − ", s.num(w.Accuracy), ") ", s.equalsIn(choice.Least, u))
		s.step("at the most  ", s.num(choice.Torque), " × (1 + ", s.num(w.Accuracy), ") ", s.equalsIn(choice.Most, u))
		switch {
		case choice.Keeps:
			s.result("With its accuracy it keeps inside the limits.")
		case choice.Under != nil && choice.Over != nil:
			s.result("Its accuracy can take it out of the limits, by ", s.rounded(choice.Under, u), " below and ", s.rounded(choice.Over, u), " above. Take a more accurate wrench.")
		case choice.Under != nil:
			s.result("Its accuracy can take it below the limits, by ", s.rounded(choice.Under, u), ". Take a more accurate wrench.")
		default:
			s.result("Its accuracy can take it above the limits, by ", s.rounded(choice.Over, u), ". Take a more accurate wrench.")
		}
	}
	if choice.LowInRange {
		s.result("This is below 20 % of the wrench's range. Take a smaller wrench if there is one.")
	}
	return choice.Setting
}
