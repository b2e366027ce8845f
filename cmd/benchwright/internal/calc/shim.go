package calc

import (
	"math/big"
	"strconv"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

// A shop stocks no more kinds of shim than this, and no pack has more.
const (
	mostKinds = 24
	mostShims = 10
)

var shim = computation{
	name:  "shim",
	about: "from a reading to the change, the pack and the stack that makes it",
	options: []option{
		{name: "aim", example: "0.20 mm", about: "the reading that is wanted"},
		{name: "reading", example: "0.30 mm", about: "the reading that was taken"},
		{name: "rate", example: "0.651", about: "how far the reading moves for each length of shim, without a sign"},
		{name: "more-shim", example: "closes", about: "what a thicker pack does to the reading: opens, closes, raises or lowers"},
		{name: "pack", example: "0.61 mm", about: "the pack in place, as measured"},
		{name: "etched", example: "-3 +2", about: "etched marks instead of a reading: old part, new part"},
		{name: "each-mark", example: "-0.001 in", about: "how much thicker for each mark more on the new part; with its sign"},
		{name: "depths", example: "75.10 - 62.00 - 12.34 mm", about: "measured lengths instead of a reading; the pack is their sum"},
		{name: "make", example: "0.76 mm", about: "the pack to make, where it is known"},
		{name: "stock", example: "0.10 0.12 0.15 0.18 0.30 0.40 0.50 mm", about: "the shims of the shop"},
		{name: "within", example: "0.01 mm", about: "how near the pack must come; 0 mm is exactly"},
		{name: "at-most", example: "4", about: "how many shims a pack may hold"},
		{name: "at-least", example: "1", about: "how many it must hold; 1 when left out"},
		{name: "safe-side", example: "more", about: "to which side the pack may rather be out: more or less"},
		{name: "round", example: "0.05 mm", about: "packs are whole steps of this"},
		{name: "over-pack", example: "0.01 mm", about: "how far the finished pack may measure from its shims; a part of --within"},
	},
	example: `--aim "0.20 mm" --reading "0.30 mm" --rate 0.651 --more-shim closes --pack "0.61 mm" --stock "0.10 0.12 0.15 0.18 0.30 0.40 0.50 mm" --within "0.01 mm" --at-most 4 --safe-side more`,
	work:    shimSheet,
}

func shimSheet(a *answers) *sheet {
	from := a.either(true, "reading", "etched", "depths", "make")
	switch from {
	case "reading":
		a.need("aim", "reading", "rate", "more-shim")
	case "etched":
		a.need("each-mark")
	case "make":
		a.need("stock")
	}
	if a.has("stock") {
		a.need("within", "at-most", "safe-side")
		if from == "reading" || from == "etched" {
			a.need("pack")
		}
	}
	rule := a.packRule()
	u := rule.grain.Unit
	p := a.packBasis(from)
	if !a.has("stock") {
		u = p.unit
	}
	if !a.ok() {
		return nil
	}
	s := a.sheet("Shim pack", "From a reading to the pack to make, and the shims that make it.")
	want := s.wantedPack(p, from, u, a.has("pack"))
	if want == nil {
		return s
	}
	if want.Sign() < 0 {
		s.refuse("The pack would have to be thinner than nothing. Measure again, and see that the right pack is changed.")
		return s
	}
	s.result("Make a pack of ", s.rounded(want, u), ".")
	if a.has("stock") {
		s.stack(want, rule)
	}
	return s
}

// stack gives the shims that make a pack, by the rule of the cards.
func (s *sheet) stack(want *big.Rat, rule packRule) {
	grain := rule.grain
	var names []string
	for _, t := range rule.stock {
		names = append(names, grain.Number(t.Value, s.mark))
	}
	s.input("", "stock", grain.Unit.After(strings.Join(names, " ")))
	s.input("", "within", s.amount(rule.Within, grain.Unit))
	s.input("", "shims in a pack", strconv.Itoa(rule.least)+" to "+strconv.Itoa(rule.most))
	s.source("The fewest shims that come near enough, of these the nearest (common practice), by exact search.")
	stacks, ok := bench.NewStacks(rule.stock, rule.least, rule.most)
	if !ok {
		s.refuse("This stock makes too many packs to search. Name fewer thicknesses, or allow fewer shims.")
		return
	}
	rule.Stacks = stacks
	if rule.Round != nil {
		s.input("", "packs in steps of", s.amount(rule.Round, grain.Unit))
	}
	if rule.Over.Sign() > 0 {
		s.input("", "finished pack within", s.amount(rule.Over, grain.Unit)+" of its shims")
	}
	pack, fault := rule.Serve(want, want)
	switch fault {
	case bench.PackGood:
		s.result("Take ", s.laid(pack.Stack, grain))
		if rule.Over.Sign() > 0 {
			s.result("Micrometer over the finished pack: ", s.span(quantity.Band{Low: pack.From, High: pack.To, Unit: grain.Unit}), ".")
		}
		return
	case bench.PackSpread:
		s.refuse("Steps and finished pack leave nothing of `--within`: allow more, or finer steps.")
		return
	}
	s.refuse("The stock cannot make ", s.rounded(want, grain.Unit), ".")
	below, above := stacks.Beside(want)
	for _, b := range []*bench.Stack{below, above} {
		if b != nil && len(b.Shims) > 0 {
			s.result("Nearest: ", s.laid(*b, grain))
		}
	}
	if buy := stacks.Buy(want); buy != nil {
		s.result("To make it exactly, buy ", s.rounded(buy, grain.Unit), ".")
	}
}

// laid prints a stack as it is laid and what it adds up to.
func (s *sheet) laid(stack bench.Stack, grain quantity.Scale) string {
	var names []string
	for _, shim := range stack.Layers() {
		names = append(names, grain.Number(shim, s.mark))
	}
	return grain.Unit.After(strings.Join(names, " + ")) + ", which is " + grain.Print(stack.Total, s.mark) + "."
}

// A packRule is the rule of the cards with the stock that it is for.
type packRule struct {
	bench.PackRule
	stock       []bench.Thickness
	grain       quantity.Scale // as the stock was typed
	least, most int
}

// packRule reads how a pack is made up.
func (a *answers) packRule() packRule {
	rule := packRule{least: a.count("at-least", 1, mostShims), most: a.count("at-most", 1, mostShims)}
	rule.stock, rule.grain = a.stock("stock")
	size := func(name string, least int) *big.Rat {
		v := a.value(name, quantity.Length)
		if a.ok() && a.has(name) && v.Value.Sign() < least {
			a.wrong(name, "this is too little: write it as in `%s`", a.example(name))
		}
		if !a.has(name) {
			return new(big.Rat)
		}
		return v.In(rule.grain.Unit).Value
	}
	rule.Within, rule.Over = size("within", 0), size("over-pack", 0)
	if a.has("round") {
		rule.Round = size("round", 1)
	}
	rule.Safe = bench.Thinner
	if a.choice("safe-side", "more", "less") == "more" {
		rule.Safe = bench.Thicker
	}
	if a.ok() && rule.least > rule.most {
		a.fail("`--at-least` is more than `--at-most`: write fewer")
	}
	return rule
}

// stock reads "0.10 0.12 mm", and the grain in which it was typed.
func (a *answers) stock(name string) (stock []bench.Thickness, grain quantity.Scale) {
	grain = quantity.Scale{Unit: mm, Step: big.NewRat(1, 1)}
	if !a.has(name) {
		return nil, grain
	}
	fields := strings.Fields(strings.NewReplacer(";", " ", "\u00a0", " ").Replace(a.text(name)))
	last := fields[len(fields)-1]
	unit, ok := quantity.UnitOf(last)
	if !ok || unit.Dimension != quantity.Length {
		a.wrong(name, "the unit of measure is missing: write it once, at the end, as in `%s`", a.example(name))
		return nil, grain
	}
	grain.Unit = unit
	for _, f := range fields[:len(fields)-1] {
		n, p := quantity.ParseNumber(f, a.mark)
		switch {
		case p != nil || n.Value.Sign() <= 0:
			a.wrong(name, "`%s` is not a thickness: write the stock as in `%s`", short(f), a.example(name))
		case len(stock) == mostKinds:
			a.wrong(name, "this is more than %d thicknesses: leave out those that are not at hand", mostKinds)
		}
		stock = append(stock, bench.Thickness{Value: n.Value})
		if place := n.DigitStep(); a.ok() && place.Cmp(grain.Step) < 0 {
			grain.Step = place
		}
		grain.Fractions = grain.Fractions || n.Fraction()
	}
	if len(stock) == 0 {
		a.wrong(name, "no thickness is named: write the stock as in `%s`", a.example(name))
	}
	return stock, grain
}
