package shop

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/syntax"
)

// loadConstant is the heaviest load that the NIOSH lifting equation recommends
// to one person, under ideal conditions: 23 kg, 51 lb (Waters, Putz-Anderson,
// Garg and Fine, "Revised NIOSH equation for the design and evaluation of manual
// lifting tasks", Ergonomics 36, 1993; Applications Manual, DHHS (NIOSH) 94-110).
var loadConstant = quantity.Value{Number: quantity.Number{Value: big.NewRat(23, 1), Text: "23"}, Unit: quantity.MustUnit("kg")}

// MaxLift returns the mass above which one person does not lift alone: the
// shop's own limit, but at most 23 kg. A nil Shop gives 23 kg.
func (s *Shop) MaxLift() quantity.Value {
	if s == nil || s.LiftLimit == nil || heavier(*s.LiftLimit, loadConstant) {
		return loadConstant
	}
	return *s.LiftLimit
}

// TooHeavy reports whether a mass is too heavy for one person to lift.
func (s *Shop) TooHeavy(mass quantity.Value) bool { return heavier(mass, s.MaxLift()) }

func heavier(a, b quantity.Value) bool { return a.In(b.Unit).Value.Cmp(b.Value) > 0 }

// liftLimit reads the shop's limit. It warns of one above 23 kg, which the
// cards do not use.
func (r reader) liftLimit(n *syntax.Node) *quantity.Value {
	v := r.Positive(n, quantity.Mass, "a lift limit is", "write the heaviest part that one person lifts, such as `18 kg`, or leave it out for 23 kg")
	if v != nil && heavier(*v, loadConstant) {
		r.Msgs.Report("lift-limit-high", n.Place(), "write 23 kg or less, or leave it out: the cards use 23 kg",
			"%s %s is more than the NIOSH lifting equation gives one person under ideal conditions, 23 kg (51 lb)", v.Text, v.Unit.Symbol)
	}
	return v
}
