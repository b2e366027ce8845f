package calc

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
)

// unitSource is where every factor comes from.
const unitSource = "Factors are exact: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, g = 9.80665 m/s², gallons of 231 in³ (US) and 4.54609 L (imp). Rounded in NIST SP 811, appendix B.8."

var convert = computation{
	name:  "convert",
	about: "limits or a value in another unit of measure, limits inward to a mark",
	words: "LIMITS",
	options: []option{
		{name: "", example: "55 to 65 N·m", about: "the limits, or one value", needed: true},
		{name: "marks", example: "1 ft-lb", about: "one graduation of the scale; its unit of measure is the new one"},
		{name: "to", example: "ft-lb", about: "the new unit of measure, where there is no scale"},
		{name: "range", example: "15 to 75 ft-lb", about: "lowest and highest graduation of the scale"},
		{name: "also", example: "41 to 48 ft-lb", about: "what the manual prints beside it; is it the same?"},
	},
	example: `"55 to 65 N·m" --marks "1 ft-lb"`,
	work:    convertSheet,
}

func convertSheet(a *answers) *sheet {
	b := a.band("", quantity.None)
	scale := a.scale(b.Unit)
	u := scale.Unit
	if a.either(!a.has("also"), "marks", "to") == "to" {
		u = a.unit("to", b.Unit.Dimension)
	}
	also := a.band("also", b.Unit.Dimension)
	if a.has("range") {
		a.need("marks")
	}
	if !a.ok() {
		return nil
	}
	s := a.sheet("Conversion", "A low limit is rounded up and a high one down, to a mark: what the scale accepts, the manual accepts.")
	s.input("", "as written", b.Written)
	exact := b.In(u)
	if u.Symbol != b.Unit.Symbol {
		s.formula(s.relation(b.Unit, u))
	}
	if a.has("marks") {
		s.marks("graduations, scale", scale)
	}
	for _, l := range limitsOf(b, exact) {
		text := s.converted(l.given, b.Unit, u)
		switch {
		case a.has("marks") && l.low:
			text += ", up to the mark " + scale.Number(scale.Ceil(l.worked), a.mark)
		case a.has("marks"):
			text += ", down to the mark " + scale.Number(scale.Floor(l.worked), a.mark)
		}
		s.step(l.name("  "), text)
	}
	switch {
	case b.Form == quantity.Bare:
		x := quantity.Convert(b.Nominal.Value, b.Unit, u)
		s.step(s.converted(b.Nominal.Value, b.Unit, u))
		if u.Symbol != b.Unit.Symbol {
			s.result(b.Written, " is ", s.rounded(x, u), ".")
		}
		if a.has("marks") {
			s.result("It lies between the marks ", scale.Number(scale.Floor(x), a.mark), " and ", scale.Print(scale.Ceil(x), a.mark), ". One value has no limits: which mark to take, the manual's limits decide.")
		}
	case a.has("marks"):
		s.inward(b, scale, "")
	case u.Symbol != b.Unit.Symbol:
		s.result(b.Written, " ", s.equalsBand(exact), ".")
	}
	if a.has("also") {
		s.also(b, also)
	}
	s.source(s.local(unitSource))
	if a.has("marks") && b.Form != quantity.Bare {
		s.source("Rounding inward is this program's rule.")
	}
	return s
}

// inward gives limits, rounded inward to the marks of a scale, as the result,
// and where they are read: " on the dial".
func (s *sheet) inward(b quantity.Band, scale quantity.Scale, where string) {
	if marks, ok := b.Inward(scale); ok {
		s.result(marks.Print(s.mark), where)
		return
	}
	s.refuse("No mark of this scale lies inside ", s.span(b.In(scale.Unit)), ".")
	if step := b.CoarsestStep(scale.Unit); step != nil && step.Cmp(scale.Step) < 0 {
		s.result("Take one with marks ", s.amount(step, scale.Unit), " apart or finer.")
	}
}

// also reports whether the second of two printed bands is the first in its
// unit.
func (s *sheet) also(first, second quantity.Band) {
	s.input("", "printed beside it", second.Written)
	s.step("beside it   ", first.Written, " ", s.equalsBand(first.In(second.Unit)))
	switch quantity.CompareAlso(first, second) {
	case quantity.Agrees:
		s.result("The two agree, as far as their digits go.")
	case quantity.Wider:
		s.result("The second agrees, but reaches past the first by more than a tenth of its width. Work to the first.")
	default:
		s.refuse("The two disagree: ", quantity.InUnitOf(first, second, s.mark), " should stand beside it. Ask which one is right.")
	}
}

// unit reads the name of a unit.
func (a *answers) unit(name string, d quantity.Dimension) quantity.Unit {
	u, p := quantity.ParseUnit(a.text(name), d)
	if p != nil {
		a.wrong(name, "%s: %s", p.Message, p.Fix)
		return placeholder(d).Unit
	}
	return u
}

// relation gives the formula from one unit to another, by the factor that is a
// finite decimal if one is: "1 in = 25.4 mm".
func (s *sheet) relation(from, to quantity.Unit) string {
	switch {
	case from.Dimension != quantity.Temperature:
	case to.Symbol == "°F":
		return s.local("°F = °C × 1.8 + 32")
	default:
		return s.local("°C = (°F − 32) / 1.8")
	}
	one := big.NewRat(1, 1)
	there, back := quantity.Convert(one, from, to), quantity.Convert(one, to, from)
	if multiplies(there, back) {
		return from.After("1") + " " + s.equalsLong(there, to)
	}
	return to.After("1") + " " + s.equalsLong(back, from)
}

// multiplies reports whether a conversion is better shown as x × there than as
// x / back.
func multiplies(there, back *big.Rat) bool {
	n, finite := there.FloatPrec()
	m, backFinite := back.FloatPrec()
	return finite && (!backFinite || n <= m)
}

// converted is a conversion with its numbers put in.
func (s *sheet) converted(x *big.Rat, from, to quantity.Unit) string {
	out := quantity.Convert(x, from, to)
	if from.Symbol == to.Symbol {
		return s.amount(x, from)
	}
	if from.Dimension == quantity.Temperature {
		if to.Symbol == "°F" {
			return s.local(s.num(x)+" × 1.8 + 32 ") + s.equalsIn(out, to)
		}
		return s.local("("+s.num(x)+" − 32) / 1.8 ") + s.equalsIn(out, to)
	}
	one := big.NewRat(1, 1)
	there, back := quantity.Convert(one, from, to), quantity.Convert(one, to, from)
	if multiplies(there, back) {
		return s.num(x) + " × " + s.num(there) + " " + s.equalsIn(out, to)
	}
	return s.num(x) + " / " + s.num(back) + " " + s.equalsIn(out, to)
}
