package check

import (
	"math/big"
	"regexp"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/unit"
)

// shims checks that a pack can be made, close enough, for every reading. It
// reports only the first thing that is missing.
func shims(p *pass) {
	each(p, func(_ *card.Step, i *card.Shim) {
		if i.Resolved() {
			_ = p.shimFacts(i) && p.shimAim(i) && p.shimTables(i) && p.shimPacks(i) && p.shimExample(i)
		}
	})
}

// shimFacts asks for the facts of the pack that differ between units, of which
// none is assumed.
func (p *pass) shimFacts(i *card.Shim) bool {
	key, what, fix := "", "", ""
	k, aimless := i.Pack, i.From.Aimless()
	switch {
	case i.Other != nil && i.Other.SafeSide == "":
		k = i.Other
		fallthrough
	case k.SafeSide == "":
		key, what, fix = "safe-side", "to which side it errs more safely", "add `safe-side: more` or `safe-side: less`"
	case aimless:
		return true
	case k.Reading == "":
		key, what, fix = "reading", "what is read to set it", "add `reading:` with a word for it, such as `lash`"
	case k.MoreShim.Sign() == 0:
		key, what, fix = "more-shim", "what a thicker pack does to the reading", "add `more-shim:` with `opens`, `closes`, `raises` or `lowers`"
	case k.Rate == nil && !k.RateFromGears:
		key, what, fix = "rate", "how far a thicker pack moves the reading", "add `rate:` with the manual's own number, or `rate: theory` to have it computed from the gears"
	case i.Rate == nil && k.MovesGear == "":
		key, what, fix = "moves", "which gear it moves", "add `moves: pinion` or `moves: gear`"
	case i.Rate == nil && notRightAngle(p.Unit.Pair(k.Gears)):
		what, fix = "how far it moves the reading: the theory is for shafts at 90°", "write the manual's own number in `rate:`"
	case i.Rate == nil && p.Unit.Pair(k.Gears) != nil:
		what, fix = "enough of its gears", "give the pair its `teeth`, `pressure-angle`, `spiral` where it has one, and `shaft-angle: 90°`"
	case i.Rate == nil:
		key, what, fix = "gears", "enough of its gears", "add `gears:` with the id of the pair, and `teeth`, `pressure-angle`, `spiral`, `shaft-angle: 90°` and `pitch-radius` to the pair"
	default:
		return true
	}
	if k.Node.Get(key) != nil {
		return false // unreadable, which is reported
	}
	named := i.Shim.Pack.At
	if k == i.Other {
		named = i.Shim.Other.Pack.At
	}
	d := p.msgs.Report("shim-fact", k.At, fix, "pack `%s` does not say %s", k.ID, what)
	d.Related = append(d.Related, related(named, "a shim block makes this pack"))
	return false
}

// notRightAngle reports whether a pair's shafts are stated to be at another
// angle than 90°.
func notRightAngle(g *unit.Pair) bool { return g != nil && g.ShaftAngle != nil && !g.RightAngle() }

// shimAim checks that there is an aim, and that a pack off by the allowed
// deviation still gives a reading inside the limits.
func (p *pass) shimAim(i *card.Shim) bool {
	if i.From.Aimless() {
		return true
	}
	at, mark := i.KeyPlace("aim"), p.Shop.Mark()
	if i.Aim == nil {
		switch {
		case i.AimLimit.Name == "":
		case i.Limit == nil:
			p.noLimits(&procedure.Limits{Named: i.AimLimit, At: at}, at, "pack", "")
		default:
			p.msgs.Report("shim-aim", at, "write what the reading is to be, such as `aim: 0.03 mm`, with its `source:`", "`%s` has one end only, and so no middle to aim at", i.AimLimit.Name)
		}
		return false
	}
	if i.AimLimit.Name == "" && i.Source == "" {
		p.msgs.Report("source-missing", at, "add `source:` with title, issue and table of the manual, or `source: shop practice`", "this aim has no source")
	}
	low, high, written := p.aimLimits(i)
	far := quantity.Convert(i.Within.Value, i.Within.Unit, i.Unit)
	far = new(big.Rat).Mul(far, i.Rate)
	far.Abs(far)
	least := new(big.Rat).Set(far)
	for _, end := range []*big.Rat{low, high} {
		if end == nil {
			continue
		}
		d := new(big.Rat).Sub(end, i.Aim)
		if end == high && d.Sign() < 0 || end == low && d.Sign() > 0 {
			p.msgs.Report("shim-aim", at, "write an aim inside them", "the aim lies outside %s", written)
			return false
		}
		if d.Abs(d).Cmp(least) < 0 {
			least = d
		}
	}
	if least.Cmp(far) == 0 {
		return true
	}
	most := new(big.Rat).Quo(least, new(big.Rat).Abs(i.Rate))
	most = i.Micrometer.Scale.Floor(quantity.Convert(most, i.Unit, i.Micrometer.Scale.Unit))
	fix := "aim nearer to the middle"
	if most.Sign() > 0 {
		fix = "write `within: " + i.Micrometer.Scale.Print(most, mark) + "`, or less"
	}
	p.msgs.Report("shim-aim", i.KeyPlace("within"), fix, "a pack that is %s off moves the %s by %s, out of %s",
		i.Within.Unit.After(i.Within.Text), i.Pack.Reading, length(far, i.Unit, mark), written)
	return false
}

// aimLimits returns the limits of the reading with the pack in place, as the
// gauge shows them; nil if not known.
func (p *pass) aimLimits(i *card.Shim) (low, high *big.Rat, written string) {
	last := i.Inputs[len(i.Inputs)-1]
	switch {
	case i.Limits != nil:
		return i.Limits.Low, i.Limits.High, i.Limit.Band.Written
	case i.AimLimit.Name != "":
		t := p.Unit.Limit(i.AimLimit.Name).Table
		half := new(big.Rat).Abs(quantity.Convert(t.Tolerance.Value, t.Tolerance.Unit, i.Unit))
		return new(big.Rat).Sub(i.Aim, half), half.Add(half, i.Aim), "its tolerance"
	case i.From.Reading.Name != "" && last.Limit != nil:
		b := last.OnGauge().In(i.Unit)
		return b.Low, b.High, last.Limit.Band.Written
	}
	return nil, nil, ""
}

// shimTables checks that the stock can make a pack for every reading.
func (p *pass) shimTables(i *card.Shim) bool {
	mark := p.Shop.Mark()
	switch {
	case i.Stacks == nil:
		if i.MinShims > i.MaxShims {
			p.msgs.Report("shim-no-stack", i.KeyPlace("at-most"), "write an `at-most:` that is as high as `at-least:`, or a lower `at-least:`", "a pack cannot have at least %d shims and at most %d", i.MinShims, i.MaxShims)
			return false
		}
		p.msgs.Report("shim-no-stack", i.KeyPlace("at-most"), "write how many shims such a pack really has, such as `at-most: 4`", "`%s` makes more stacks of so many shims than can be tried", i.Stock.ID)
		return false
	case i.RoundTo == nil && len(i.Inputs) > 1:
		p.msgs.Report("shim-from", i.From.At, "add `round:` with the steps in which packs are made, such as `round: 0.05 mm`", "this pack is looked up by %s, and packs of such a table come in whole steps", lookupCount(len(i.Inputs)))
		return false
	case i.Miss == nil:
		return true
	case i.Miss.Large:
		p.msgs.Report("shim-from", i.From.At, "narrow what the readings expect, or make `within:` wider", "the table of these readings would have %d places, more than anybody looks through", i.Miss.Count)
		return false
	}
	m := i.Miss
	at, where := i.Shim.Stock.At, p.missAt(i)
	if m.Other {
		at = i.Shim.Other.Pack.At
	}
	if m.Count > 1 {
		where += ", the first of " + quantity.Decimal(big.NewRat(int64(m.Count), 1), mark) + " such"
	}
	switch m.Fault {
	case bench.PackBelow:
		fix := "narrow the span of readings, or read over a thicker set-up pack"
		switch {
		case i.From.Etched():
			fix = "look `per-mark:` up again, its sign too, or narrow what the old pack expects"
		case i.From.By != nil:
			fix = "write a smaller `by:`, or narrow what the old pack expects"
		case len(i.From.Plus)+len(i.From.Minus) > 0:
			fix = "see whether a length stands on the wrong side, `plus:` for `minus:`, and what the readings expect"
		}
		p.msgs.Report("shim-no-stack", at, fix, "a pack thinner than zero would be needed for %s", where)
	case bench.PackSpread:
		key, fix := "over-pack", "write a `within:` that is more than `over-pack:`"
		if i.RoundTo != nil && i.Within.In(i.OverPack.Unit).Value.Cmp(i.OverPack.Value) > 0 {
			key, fix = "round", "write a finer `round:`, or a wider `within:`"
		}
		p.msgs.Report("shim-no-stack", i.KeyPlace(key), fix, "`%s` leaves nothing of `within: %s` for %s", key, i.Within.Unit.After(i.Within.Text), where)
	default:
		what := "no pack near enough to"
		if i.RoundTo != nil { // a whole step and nothing more
			what = "no pack of just"
		}
		p.msgs.Report("shim-no-stack", at, p.stacksBeside(i), "`%s` makes %s %s, for %s", i.Stock.ID, what, length(m.Want, i.Unit, mark), where)
	}
	return false
}

// missAt names the readings of a miss.
func (p *pass) missAt(i *card.Shim) string {
	inputs := i.Inputs
	if len(inputs) == 3 { // the letter stands for the first two
		inputs = append([]*card.ShimInput{nil}, inputs[2])
	}
	var out []string
	for n, in := range inputs {
		if in == nil || n >= len(i.Miss.At) {
			continue
		}
		what := "a reading"
		switch {
		case in.IsOldPack:
			what = "an old pack"
		case in.IsDirection:
			out = append(out, map[int]string{-1: "the step to a thinner one", 1: "the step to a thicker one"}[i.Miss.At[n].Sign()])
			continue
		case in.Measurement == nil:
			what = "a mark"
		}
		text := in.Scale.Number(i.Miss.At[n], p.Shop.Mark())
		if in.Measurement != nil {
			text = in.Scale.Unit.After(text)
		}
		out = append(out, what+" of "+text)
	}
	return strings.Join(out, " and ")
}

// stacksBeside names the two stacks nearest to the first pack that cannot be
// made, and the thickness to buy.
func (p *pass) stacksBeside(i *card.Shim) string {
	mark := p.Shop.Mark()
	want, scale := i.Miss.Want, i.Micrometer.Scale
	if i.RoundTo != nil {
		scale = quantity.Scale{Unit: i.RoundTo.Unit, Step: i.RoundTo.Value}
	}
	below, above := i.Stacks.Beside(want)
	half := new(big.Rat).Quo(scale.Step, big.NewRat(2, 1))
	nearest := scale.Floor(half.Add(half, quantity.Convert(want, i.Unit, scale.Unit)))
	if nearest.Sign() > 0 {
		want = quantity.Convert(nearest, scale.Unit, i.Unit) // a thickness that can be bought and measured
	}
	buy := i.Stacks.Buy(want)
	var lengths []*big.Rat // all that the mend names, printed with the same digits
	if buy != nil {
		lengths = append(lengths, buy)
	}
	var stacks []*bench.Stack
	for _, s := range []*bench.Stack{below, above} {
		if s != nil && len(s.Shims) > 0 {
			stacks = append(stacks, s)
			lengths = append(append(lengths, s.Total), s.Shims...)
		}
	}
	step := printStep(i.Unit, lengths...)
	var can []string
	for _, s := range stacks {
		var shims []string
		for _, t := range s.Shims {
			shims = append(shims, quantity.Format(t, step, mark))
		}
		can = append(can, i.Unit.After(quantity.Format(s.Total, step, mark))+" ("+strings.Join(shims, " + ")+")")
	}
	fix := "the stock can make " + strings.Join(can, " and ")
	if len(can) == 0 {
		fix = "the stock can make nothing"
	}
	if buy != nil {
		other := "widen `within:`"
		switch {
		case i.RoundTo != nil && len(i.Inputs) == 1:
			other = "take `round:` out"
		case i.RoundTo != nil:
			other = "write a `round:` whose steps the stock makes"
		}
		fix += "; buy shims of " + i.Unit.After(quantity.Format(buy, step, mark)) + ", or " + other
	}
	return fix
}

// shimPacks checks that the micrometer can judge every pack.
func (p *pass) shimPacks(i *card.Shim) bool {
	mark := p.Shop.Mark()
	for _, pack := range i.Packs {
		if pack.Over == nil {
			p.msgs.Report("no-mark-in-limits", i.KeyPlace("micrometer"), "name a finer gauge, or make `over-pack:` and `within:` wider", "`%s` has no mark inside %s to %s, what the pack of %s may measure",
				i.Micrometer.ID, length(pack.From, i.Unit, mark), length(pack.To, i.Unit, mark), length(pack.Total, i.Unit, mark))
			return false
		}
	}
	return true
}

// shimExample checks that the computation agrees with the manual's worked
// example.
func (p *pass) shimExample(i *card.Shim) bool {
	e := i.Example
	if e == nil || i.Worked == nil {
		return true
	}
	at := i.Node.Get("example")
	if i.Worked.Pack == nil {
		p.msgs.Report("example-wrong", at.Place(), "write readings of the table, and `old-pack:` where it asks for one", "the table has no such readings")
		return false
	}
	if total := i.Worked.Pack.Total; quantity.Convert(e.Pack.Value, e.Pack.Unit, i.Unit).Cmp(total) != 0 {
		p.msgs.Report("example-wrong", at.Get("pack").Place(), "look all of them up again: aim, rate and the pack in place give "+length(total, i.Unit, p.Shop.Mark()),
			"this example does not give a pack of %s", e.Pack.Unit.After(e.Pack.Text))
		return false
	}
	return true
}

// lookupCount says by how many readings a pack is looked up.
func lookupCount(inputs int) string {
	if inputs == 2 {
		return "two things"
	}
	return "three things"
}

// length prints a length to the thousandth of a millimeter or ten-thousandth
// of an inch if it has more than two decimals.
func length(x *big.Rat, u quantity.Unit, mark quantity.DecimalMark) string {
	return u.After(number(x, u, mark))
}

func number(x *big.Rat, u quantity.Unit, mark quantity.DecimalMark) string {
	return quantity.Format(x, printStep(u, x), mark)
}

// printStep returns the step in which lengths in unit u are printed together:
// a hundredth if that is enough for all, else the thousandth of a millimeter
// or the ten-thousandth of an inch.
func printStep(u quantity.Unit, lengths ...*big.Rat) *big.Rat {
	step := big.NewRat(1, 100)
	for _, x := range lengths {
		switch {
		case new(big.Rat).Quo(x, step).IsInt():
		case u.Symbol == "in":
			return big.NewRat(1, 10000)
		default:
			return big.NewRat(1, 1000)
		}
	}
	return step
}

// shimming matches words for more or less shim.
var shimming = regexp.MustCompile(`(?i)\b(thicker|thinner)\b|\b(add|remove|take out|more|less|fewer)( an?| the| some)? shims?\b`)

// shimWords warns of direction words in a step that makes a pack: the effect
// of a thicker pack is stated once, in the unit.
func shimWords(p *pass) {
	if !p.english() {
		return
	}
	each(p, func(s *card.Step, _ *card.Shim) {
		for _, t := range p.texts(s) {
			for _, at := range shimming.FindAllStringIndex(t.text, -1) {
				p.msgs.Report("shim-words", t.place(at[0], at[1]), "take it out: the table gives the stack, and the card says what a thicker pack does", "the step says itself which way the pack goes")
			}
		}
	})
}
