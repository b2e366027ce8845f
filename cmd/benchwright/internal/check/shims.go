package check

import (
	"math/big"
	"regexp"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
)

// shims asks whether a pack can be made for every reading, as near as it must
// be. One thing that is missing gives one message.
func shims(p *pass) {
	each(p, func(_ *card.Step, i *card.Shim) {
		if i.Bad || i.Pack == nil || i.Stock == nil || i.Micrometer == nil || i.Read == nil || len(i.Stock.Shims) == 0 {
			return // reported
		}
		_ = p.shimFacts(i) && p.shimAim(i) && p.shimRows(i) && p.shimExample(i)
	})
}

// shimFacts asks for what the unit must say of the pack: it differs from drive
// to drive, and nothing is assumed.
func (p *pass) shimFacts(i *card.Shim) bool {
	what, help := "", ""
	switch k := i.Pack; {
	case k.Reading == "":
		what, help = "what is read to set it", "add `reading:` with a word for it, such as `lash`"
	case k.MoreShim.Sign() == 0:
		what, help = "what a thicker pack does to the reading", "add `more-shim:` with `opens`, `closes`, `raises` or `lowers`"
	case k.SafeSide == "":
		what, help = "to which side it errs more safely", "add `safe-side: more` or `safe-side: less`"
	case k.Rate == nil && !k.Theory:
		what, help = "how far a thicker pack moves the reading", "add `rate:` with the manual's own number, or `rate: theory` to have it computed from the gears"
	case i.Rate == nil && k.Moves == "":
		what, help = "which gear it moves", "add `moves: pinion` or `moves: gear`"
	case i.Rate == nil:
		what, help = "its gears", "add `gears:` with the id of the pair, and `teeth`, `pressure-angle`, `spiral` and `pitch-radius` to the pair"
	default:
		return true
	}
	d := p.msgs.Report("shim-fact", i.Shim.Pack.At, help+" to the pack in the unit", "pack `%s` does not say %s", i.Pack.ID, what)
	d.Related = append(d.Related, related(i.Pack.At, "the pack is declared here"))
	return false
}

// shimAim asks that there is an aim, and that a pack as far from it as is
// allowed still gives a reading inside the limits.
func (p *pass) shimAim(i *card.Shim) bool {
	at, mark := i.KeyPlace("aim"), p.Shop.Mark()
	gauge := i.Read.Gauge.Scale
	if i.Aim == nil {
		if i.Limit == nil {
			p.noLimits(&procedure.Limits{Named: i.AimAt, At: at}, at, "pack", "")
			return false
		}
		p.msgs.Report("shim-aim", at, "write what the reading is to be, such as `aim: 0.03 mm`, with its `source:`", "`%s` has one end only, and so no middle to aim at", i.AimAt.Name)
		return false
	}
	if i.Limit == nil && i.Source == "" {
		p.msgs.Report("source-missing", at, "add `source:` with title, issue and table of the manual, or `source: shop practice`", "this aim has no source")
	}
	band := i.Read.OnGauge()
	if i.Limit != nil {
		band = &i.Limit.Band
	}
	if band == nil {
		return true
	}
	b := band.In(gauge.Unit)
	far := quantity.Convert(i.Within.Value, i.Within.Unit, gauge.Unit)
	far = new(big.Rat).Mul(far, i.Rate)
	far.Abs(far)
	room := func(end *big.Rat) *big.Rat {
		if end == nil {
			return far
		}
		d := new(big.Rat).Sub(i.Aim, end)
		return d.Abs(d)
	}
	switch {
	case b.Low != nil && i.Aim.Cmp(b.Low) < 0 || b.High != nil && i.Aim.Cmp(b.High) > 0:
		p.msgs.Report("shim-aim", at, "write an aim inside them", "the aim lies outside %s", plain(band.Written))
		return false
	case room(b.Low).Cmp(far) < 0 || room(b.High).Cmp(far) < 0:
		least := room(b.Low)
		if h := room(b.High); h.Cmp(least) < 0 {
			least = h
		}
		most := new(big.Rat).Quo(least, new(big.Rat).Abs(i.Rate))
		most = i.Micrometer.Scale.Floor(quantity.Convert(most, gauge.Unit, i.Micrometer.Scale.Unit))
		help := "aim nearer to the middle"
		if most.Sign() > 0 {
			help = "write `within: " + plain(i.Micrometer.Scale.Print(most, mark)) + "`, or less"
		}
		p.msgs.Report("shim-aim", i.KeyPlace("within"), help, "a pack that is %s off moves the %s by %s, out of %s",
			plain(i.Within.Unit.After(i.Within.Text)), i.Pack.Reading, length(far, gauge.Unit, mark), plain(band.Written))
		return false
	}
	return true
}

// shimRows asks that every reading has a pack which the stock can make and the
// micrometer can judge.
func (p *pass) shimRows(i *card.Shim) bool {
	mark := p.Shop.Mark()
	if i.Stacks == nil {
		p.msgs.Report("shim-no-stack", i.KeyPlace("at-most"), "write a lower `at-most:`, at least as high as `at-least:`", "`%s` cannot be searched with so many shims to a pack", i.Stock.ID)
		return false
	}
	if m := i.Miss; m != nil {
		at := i.Shim.Stock.At
		reading := plain(i.Read.Gauge.Scale.Print(m.Mark, mark))
		more := ""
		if m.Count > 1 {
			more = ", the first of " + quantity.Decimal(big.NewRat(int64(m.Count), 1), mark) + " such readings"
		}
		switch m.Fault {
		case bench.PackBelow:
			p.msgs.Report("shim-no-stack", at, "narrow the span of readings, or read over a thicker set-up pack", "a reading of %s would need a pack of less than nothing%s", reading, more)
		case bench.PackSpread:
			key, help := "over-pack", "write a `within:` that is more than `over-pack:`"
			if i.Round != nil {
				key, help = "round", "write a finer `round:`, or a wider `within:`"
			}
			p.msgs.Report("shim-no-stack", i.KeyPlace(key), help, "`%s` leaves nothing of `within: %s` for a reading of %s%s", key, plain(i.Within.Unit.After(i.Within.Text)), reading, more)
		default:
			p.msgs.Report("shim-no-stack", at, p.nearest(i), "`%s` makes no pack near enough to %s, for a reading of %s%s", i.Stock.ID, length(m.Want, i.Unit, mark), reading, more)
		}
		return false
	}
	for _, row := range i.Rows {
		if row.Over == nil {
			p.msgs.Report("no-mark-in-limits", i.KeyPlace("micrometer"), "name a finer gauge, or make `over-pack:` and `within:` wider", "`%s` has no mark inside %s to %s, what the pack of %s may measure",
				i.Micrometer.ID, length(row.From, i.Unit, mark), length(row.To, i.Unit, mark), length(row.Total, i.Unit, mark))
			return false
		}
	}
	return true
}

// nearest names the two stacks beside the first pack that cannot be made, and
// the thickness to buy.
func (p *pass) nearest(i *card.Shim) string {
	mark := p.Shop.Mark()
	below, above := i.Stacks.Beside(i.Miss.Want)
	var can []string
	for _, s := range []*bench.Stack{below, above} {
		if s == nil || len(s.Shims) == 0 {
			continue
		}
		var shims []string
		for _, t := range s.Shims {
			shims = append(shims, number(t, i.Unit, mark))
		}
		can = append(can, length(s.Total, i.Unit, mark)+" ("+strings.Join(shims, " + ")+")")
	}
	help := "the stock can make " + strings.Join(can, " and ")
	if len(can) == 0 {
		help = "the stock can make nothing"
	}
	want := i.Miss.Want
	scale := i.Micrometer.Scale
	if round := quantity.Convert(scale.Floor(quantity.Convert(want, i.Unit, scale.Unit)), scale.Unit, i.Unit); round.Sign() > 0 {
		want = round // what can be bought and measured
	}
	if buy := i.Stacks.Buy(want); buy != nil {
		help += "; buy shims of " + length(buy, i.Unit, mark) + ", or widen `within:`"
	}
	return help
}

// shimExample asks that the worked line of a manual is what we compute.
func (p *pass) shimExample(i *card.Shim) bool {
	e := i.Example
	if e == nil || e.Reading == nil || e.Pack == nil {
		return true
	}
	mark := p.Shop.Mark()
	if i.ShownAt == nil {
		p.msgs.Report("example-wrong", i.Node.Get("example").Get("reading").Place(), "write a reading of the table", "the table has no row for a reading of %s", plain(e.Reading.Unit.After(e.Reading.Text)))
		return false
	}
	row := i.Rows[i.Shown]
	if quantity.Convert(e.Pack.Value, e.Pack.Unit, i.Unit).Cmp(row.Total) != 0 {
		p.msgs.Report("example-wrong", i.Node.Get("example").Get("pack").Place(), "look both up again: aim, set-up pack and rate give "+length(row.Total, i.Unit, mark),
			"a reading of %s does not give a pack of %s", plain(e.Reading.Unit.After(e.Reading.Text)), plain(e.Pack.Unit.After(e.Pack.Text)))
		return false
	}
	return true
}

// length writes a length for a message, to the thousandth of a millimetre or
// the ten-thousandth of an inch where it has more than two decimals.
func length(x *big.Rat, u quantity.Unit, mark quantity.Mark) string {
	return plain(u.After(number(x, u, mark)))
}

func number(x *big.Rat, u quantity.Unit, mark quantity.Mark) string {
	step := big.NewRat(1, 100)
	switch {
	case new(big.Rat).Quo(x, step).IsInt():
	case u.Symbol == "in":
		step = big.NewRat(1, 10000)
	default:
		step = big.NewRat(1, 1000)
	}
	return quantity.Format(x, step, mark)
}

// plain is text with ordinary blanks.
func plain(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }

// shimming finds what a writer says of more or less shim.
var shimming = regexp.MustCompile(`(?i)\b(thicker|thinner)\b|\b(add|remove|take out|more|less|fewer)( an?| the| some)? shims?\b`)

// shimWords warns of direction words in a step that makes a pack: which way a
// thicker pack moves the reading stands once, in the unit.
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
