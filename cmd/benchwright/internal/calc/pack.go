package calc

import (
	"math/big"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

// A packBasis is what a pack is worked out from.
type packBasis struct {
	aim, reading quantity.Value
	rate         *big.Rat // below zero where more shim makes the reading less
	old, now     *big.Rat // etched marks
	each         quantity.Value
	depths       []quantity.Value
	pack, make   quantity.Value
	unit         quantity.Unit // of the sum, where no stock gives one
}

// packBasis reads what a pack is worked out from.
func (a *answers) packBasis(from string) packBasis {
	p := packBasis{
		aim: a.value("aim", quantity.Length), reading: a.value("reading", quantity.Length),
		rate: a.positiveNumber("rate").Value, each: a.value("each-mark", quantity.Length), depths: a.depths("depths"),
		pack: a.value("pack", quantity.Length), make: a.value("make", quantity.Length),
	}
	if w := a.choice("more-shim", "opens", "raises", "closes", "lowers"); w == "closes" || w == "lowers" {
		p.rate = new(big.Rat).Neg(p.rate)
	}
	p.old, p.now = a.etched("etched")
	for _, name := range []string{"pack", "make"} {
		if a.ok() && a.has(name) && a.value(name, quantity.Length).Value.Sign() < 0 {
			a.wrong(name, "a pack is not below 0: write its thickness as measured")
		}
	}
	switch from {
	case "reading":
		p.unit = p.aim.Unit
	case "etched":
		p.unit = p.each.Unit
	case "make":
		p.unit = p.make.Unit
	default:
		p.unit = mm
		if len(p.depths) > 0 {
			p.unit = p.depths[0].Unit
		}
	}
	return p
}

// wantedPack works out the pack to make, nil where only a change is asked for.
func (s *sheet) wantedPack(p packBasis, from string, u quantity.Unit, inPlace bool) *big.Rat {
	var change *big.Rat
	switch from {
	case "make":
		s.value("", "the pack to make", p.make, u)
		return p.make.In(u).Value
	case "depths":
		return s.fromDepths(p.depths, u)
	case "reading":
		change = s.fromReading(p.aim, p.reading, p.rate, u)
	default:
		change = s.fromMarks(p.old, p.now, p.each, u)
	}
	s.shimChange(change, u)
	if !inPlace {
		return nil
	}
	s.value("P", "pack in place", p.pack, u)
	in := p.pack.In(u).Value
	want := new(big.Rat).Add(in, change)
	s.step("new pack = ", s.num(in), s.plus(change), " ", s.equalsIn(want, u))
	return want
}

// fromDepths returns the sum of measured lengths.
func (s *sheet) fromDepths(depths []quantity.Value, u quantity.Unit) *big.Rat {
	s.formula("pack = the sum of the lengths, each with its sign")
	sum, text := new(big.Rat), ""
	for i, d := range depths {
		x := d.In(u).Value
		sum.Add(sum, x)
		if i == 0 {
			text = s.num(x)
		} else {
			text += s.plus(x)
		}
	}
	s.input("", "lengths", text+"\u00a0"+u.Symbol)
	s.step("pack = ", text, " ", s.equalsIn(sum, u))
	s.source("Addition of lengths as the manual's figure shows them.")
	return sum
}

// fromReading returns the change that brings a reading to its aim.
func (s *sheet) fromReading(aim, reading quantity.Value, rate *big.Rat, u quantity.Unit) *big.Rat {
	s.formula("change = (aim − reading) / rate, the rate below 0 where more shim makes the reading less")
	s.value("", "aim", aim, u)
	s.value("", "reading", reading, u)
	s.input("", "rate", s.num(rate))
	to, at := aim.In(u).Value, reading.In(u).Value
	change, _ := bench.ShimChange(to, at, rate)
	s.step("change = (", s.num(to), " − ", s.num(at), ") / ", s.num(rate), " ", s.equalsIn(change, u))
	s.source("The rate's own definition. The rate is your manual's, or see `benchwright calc bevel`.")
	return change
}

// fromMarks returns the change for a part with another etched mark.
func (s *sheet) fromMarks(old, now *big.Rat, each quantity.Value, u quantity.Unit) *big.Rat {
	s.formula("change = (new mark − old mark) × each mark")
	s.input("", "old mark, new mark", s.num(old)+", "+s.num(now))
	s.value("", "each mark", each, u)
	step := each.In(u).Value
	change := bench.MarkChange(old, now, step)
	s.step("change = (", s.num(now), " − ", s.bracket(old), ") × ", s.num(step), " ", s.equalsIn(change, u))
	s.source("TM 9-2320-280-34 p. 19-12, table 9-1, whose step is −0.001 in.")
	return change
}

func (s *sheet) bracket(x *big.Rat) string {
	if x.Sign() < 0 {
		return "(" + s.num(x) + ")"
	}
	return s.num(x)
}

// plus prints a number that is added: " + 0.154" or " − 0.154".
func (s *sheet) plus(x *big.Rat) string {
	if x.Sign() < 0 {
		return " − " + s.num(new(big.Rat).Abs(x))
	}
	return " + " + s.num(x)
}

// thicker says a change in words.
func (s *sheet) shimChange(change *big.Rat, u quantity.Unit) {
	size := s.rounded(new(big.Rat).Abs(change), u)
	switch change.Sign() {
	case 0:
		s.result("The pack stays as it is.")
	case 1:
		s.result(size, " more shim.")
	default:
		s.result(size, " less shim.")
	}
}

// etched reads "-3 +2".
func (a *answers) etched(name string) (old, now *big.Rat) {
	old, now = new(big.Rat), new(big.Rat)
	if !a.has(name) {
		return old, now
	}
	f := strings.Fields(a.text(name))
	if len(f) == 2 {
		x, p := quantity.ParseNumber(f[0], a.mark)
		y, q := quantity.ParseNumber(f[1], a.mark)
		if p == nil && q == nil {
			return x.Value, y.Value
		}
	}
	a.wrong(name, "`%s` is not a pair of marks: write the old and the new one, as in `-3 +2`", short(a.text(name)))
	return old, now
}

// depths reads "75.10 - 62.00 - 12.34 mm".
func (a *answers) depths(name string) []quantity.Value {
	if !a.has(name) {
		return nil
	}
	fields := strings.Fields(strings.NewReplacer("−", "-", "\u00a0", " ").Replace(a.text(name)))
	u, ok := quantity.UnitOf(fields[len(fields)-1])
	bad := !ok || u.Dimension != quantity.Length || len(fields)%2 != 0 || len(fields) > 40
	var out []quantity.Value
	for i := 0; !bad && i < len(fields)-1; i++ {
		if i%2 == 1 {
			bad = fields[i] != "+" && fields[i] != "-"
			continue
		}
		n, p := quantity.ParseNumber(fields[i], a.mark)
		if bad = p != nil; bad {
			break
		}
		if i > 0 && fields[i-1] == "-" {
			n.Value = new(big.Rat).Neg(n.Value)
		}
		out = append(out, quantity.Value{Number: n, Unit: u})
	}
	if bad {
		a.wrong(name, "`%s` is not a sum of lengths: write it with spaces around each sign and the unit of measure at the end, as in `%s`", short(a.text(name)), a.example(name))
		return nil
	}
	return out
}
