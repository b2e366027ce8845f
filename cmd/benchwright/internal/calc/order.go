package calc

import (
	"math/big"
	"regexp"
	"strconv"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

// mostBolts is the most on one circle.
const mostBolts = 200

var order = computation{
	name:  "order",
	about: "the order in which bolts are tightened, by pattern, and the passes",
	options: []option{
		{name: "bolts", example: "8", about: "how many there are", needed: true},
		{name: "pattern", example: "row", about: "how they stand: circle (left out), rectangle or row"},
		{name: "order", example: "1-5-3-7-2-6-4-8", about: "an order written by hand, to be checked"},
		{name: "setting", example: "60 N·m", about: "the whole setting of the wrench, for the passes"},
		{name: "passes", example: "30 % 70 % 100 %", about: "the passes; parts of the whole setting"},
		{name: "marks", example: "1 N·m", about: "one graduation of the wrench"},
		{name: "range", example: "20 to 120 N·m", about: "its lowest and highest graduation"},
	},
	example: `--bolts 8 --setting "60 N·m" --passes "30 % 70 % 100 %" --marks "1 N·m"`,
	work:    orderSheet,
}

func orderSheet(a *answers) *sheet {
	n := a.count("bolts", 1, mostBolts)
	byHand := a.handOrder("order")
	pattern, _ := bench.ParseBoltPattern(a.choice("pattern", "circle", "rectangle", "row"))
	if a.has("setting") || a.has("passes") || a.has("marks") {
		a.need("setting", "passes", "marks")
	}
	setting := a.positive("setting", quantity.Torque)
	scale := a.scale(newtonMeter)
	shares := a.shares("passes")
	if !a.ok() {
		return nil
	}
	about := "Numbers are positions, clockwise from 1 at the top, as seen from the heads."
	switch pattern {
	case bench.BoltRow:
		about = "Numbers are positions, from 1 at the left."
	case bench.BoltRectangle:
		about = "Numbers are positions, clockwise from 1 at the top left."
	}
	s := a.sheet("Tightening order", about)
	s.input("n", "bolts", strconv.Itoa(n))
	sequence := bench.OrderOf(pattern, n)
	switch {
	case byHand != nil:
	case pattern == bench.BoltRow:
		s.formula("A row goes from its middle outward, side by side.")
		s.source("Common practice.")
	case sequence == nil:
		s.refuse("The trade has no one order for this rectangle. Write the manual's by hand with `--order`.")
	case n%4 == 0:
		s.formula("n divides by 4: a cross. Groups of four a quarter turn apart, each bolt followed by the one opposite.")
		s.source("ASME PCC-1, legacy cross pattern, secondary sources.")
	case n%2 == 0:
		s.formula("n is even: pairs of opposite bolts.")
		s.source("Common practice.")
	default:
		s.formula("n is odd: a star, round in steps of nearly half.")
		s.source("Common practice.")
	}
	if byHand != nil {
		s.input("", "written by hand", dashed(byHand))
		s.judgeOrder(n, byHand)
		s.source("A hand-written order names each bolt once.")
	} else if sequence != nil {
		s.result(spaced(sequence))
	}
	if a.has("setting") {
		s.passes(setting, shares, scale)
	}
	return s
}

// judgeOrder says what is wrong with an order written by hand.
func (s *sheet) judgeOrder(n int, byHand []int) {
	f := bench.CheckOrder(n, byHand)
	if f.Good() {
		s.result("Each position is named once.")
		return
	}
	for _, k := range []struct {
		what string
		list []int
	}{{"not one of these bolts", f.Outside}, {"named more than once", f.Twice}, {"never named", f.Missing}} {
		if len(k.list) > 0 {
			s.refuse("Position ", strings.ReplaceAll(dashed(k.list), "-", ", "), ": ", k.what, ".")
		}
	}
}

func (s *sheet) passes(setting quantity.Value, shares []*big.Rat, scale quantity.Scale) {
	whole := setting.In(scale.Unit).Value
	s.value("S", "the whole setting", setting, scale.Unit)
	s.marks("graduations, wrench", scale)
	s.formula("pass = S × part, on the nearest mark, the lower of two")
	list, fault, at := bench.Passes(whole, shares, scale)
	share := ""
	if fault != bench.PassesGood && at < len(shares) {
		share = s.perCent(shares[at])
	}
	switch fault {
	case bench.PassesFall:
		s.refuse("The passes must rise: ", share, " is not above the one before.")
	case bench.PassesShort:
		s.refuse("The last pass must be 100 %, not ", share, ".")
	case bench.PassLow:
		s.refuse(share, " of the setting lies below the lowest mark. Begin with a larger part.")
	case bench.PassSame:
		s.refuse(share, " of the setting falls on the mark of the pass before. Take fewer passes or finer marks.")
	case bench.PassOff:
		s.refuse(s.amount(whole, scale.Unit), " is not a mark of this wrench. Begin with `benchwright calc wrench`.")
	}
	for i, p := range list {
		if p.Round {
			s.result("Then once around, from bolt to bolt, at ", scale.Print(p.Setting, s.mark), ".")
			continue
		}
		s.step(s.num(whole), " × ", s.num(p.Share), " ", s.equalsIn(new(big.Rat).Mul(whole, p.Share), scale.Unit))
		s.result("Pass ", strconv.Itoa(i+1), " in this order: set ", scale.Print(p.Setting, s.mark), ".")
	}
	s.source("Rising passes, the last of them whole, then once around: ASME PCC-1, secondary sources.")
}

var handForm = regexp.MustCompile(`^[0-9]{1,4}(?:[-, ]+[0-9]{1,4})*$`)

// handOrder reads 1-3-2-4.
func (a *answers) handOrder(name string) []int {
	text := a.text(name)
	if !a.has(name) {
		return nil
	}
	if len(text) > 2000 || !handForm.MatchString(text) {
		a.wrong(name, "`%s` is not an order: write the positions as in `%s`", short(text), a.example(name))
		return nil
	}
	var out []int
	for _, f := range strings.FieldsFunc(text, func(r rune) bool { return r == '-' || r == ',' || r == ' ' }) {
		n, _ := strconv.Atoi(f)
		out = append(out, n)
	}
	return out
}

// shares reads "30 % 70 % 100 %".
func (a *answers) shares(name string) []*big.Rat {
	var out []*big.Rat
	for _, f := range strings.FieldsFunc(a.text(name), func(r rune) bool { return r == '%' || r == ' ' || r == ';' || r == '\u00a0' }) {
		n, p := quantity.ParseNumber(f, a.mark)
		if p != nil || len(out) == 20 {
			a.wrong(name, "`%s` is not a part of the setting: write the passes as in `%s`", short(f), a.example(name))
			return nil
		}
		out = append(out, new(big.Rat).Quo(n.Value, big.NewRat(100, 1)))
	}
	if a.has(name) && !strings.Contains(a.text(name), "%") {
		a.wrong(name, "the unit of measure is missing: write `%s`", a.example(name))
	}
	return out
}

func dashed(list []int) string {
	var out []string
	for _, n := range list {
		out = append(out, strconv.Itoa(n))
	}
	return strings.Join(out, "-")
}

// spaced is for an order that may be too long for a line.
func spaced(list []int) string { return strings.ReplaceAll(dashed(list), "-", " - ") }
