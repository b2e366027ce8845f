package shop

import (
	"math/big"
	"regexp"
	"slices"
	"strings"
	"time"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/hazard"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/value"
)

// Read returns the shop that a shop.yaml describes. A nil tree gives nil.
func Read(t *syntax.Tree, msgs *diag.List) *Shop {
	if t == nil {
		return nil
	}
	return FromNode(t.Root, &value.Reader{Msgs: msgs, Refused: t.Refused})
}

// FromNode returns the shop that a mapping describes, as a procedure that
// stands alone carries it. Whatever of it cannot be read is left out, and
// reported. The shop says itself which decimal mark it has. A nil node gives nil.
func FromNode(n *syntax.Node, read *value.Reader) *Shop {
	if n == nil {
		return nil
	}
	s := &Shop{Decimal: quantity.Point, Language: "en", Paper: "A4", File: n.File, Root: n}
	if value.Word(read, n.Get("decimal"), "point", "comma") == "comma" {
		s.Decimal = quantity.Comma
	}
	read.Mark = s.Decimal
	r := reader{Reader: read, shop: s, first: map[string]syntax.Field{}}
	s.Name = r.Text(n.Get("shop"))
	if text := r.Text(n.Get("language")); text != "" {
		s.Language = text
	}
	if text := r.Text(n.Get("paper")); text != "" {
		s.Paper = text
	}
	s.Distance = r.distance(n.Get("reading-distance"))
	s.TorqueTolerance = r.Share(n.Get("torque-tolerance"))
	s.AvoidFirst = value.Word(r.Reader, n.Get("callout-order"), "hazard-first", "avoid-first") == "avoid-first"
	rule := r.Keys(n.Get("gauge-rule"))
	s.MarksWarn, s.MarksError = r.Number(rule.Get("warn")), r.Number(rule.Get("error"))
	s.UncertaintyTo, s.GuardBand = r.Number(rule.Get("uncertainty-ratio")), r.guard(rule.Get("guard-band"))
	s.LiftLimit, s.Atmosphere = r.liftLimit(n.Get("lift-limit")), r.atmosphere(n.Get("atmosphere"))
	for _, f := range r.Fields(n.Get("hazard-rules")) {
		if r.hazard(f.Key, r.Key(f)) {
			if s.HazardRules == nil {
				s.HazardRules = map[string]string{}
			}
			s.HazardRules[f.Key] = r.Text(f.Value)
		}
	}
	for _, f := range r.Fields(n.Get("tools")) {
		s.Tools = append(s.Tools, &Tool{r.item(f), r.Value(f.Value.Get("across-flats"), quantity.Length), r.Above(f.Value.Get("ram"), quantity.Length, "a ram is", "write its diameter, such as `60 mm`")})
	}
	for _, f := range r.Fields(n.Get("wrenches")) {
		s.Wrenches = append(s.Wrenches, r.wrench(f))
	}
	for _, f := range r.Fields(n.Get("gauges")) {
		s.Gauges = append(s.Gauges, r.gauge(f))
	}
	for _, f := range r.Fields(n.Get("stock")) {
		s.Stock = append(s.Stock, r.stock(f))
	}
	r.successors()
	return s
}

// distance reads how far from a card its reader stands, in micrometres: from the
// hand to across the bench. 0 is the usual distance of its paper.
func (r reader) distance(n *syntax.Node) int {
	v := r.Value(n, quantity.Length)
	if v == nil {
		return 0
	}
	micro := v.In(quantity.MustUnit("µm")).Value
	if micro.Cmp(big.NewRat(350000, 1)) < 0 || micro.Cmp(big.NewRat(1000000, 1)) > 0 {
		r.Refuse("quantity-malformed", n.Place(), "write how far the reader's eye is from the card, between `350 mm` and `1000 mm`", "no card is read at %s", v.Unit.After(v.Text))
		return 0
	}
	return int(new(big.Int).Quo(micro.Num(), micro.Denom()).Int64())
}

// A reader reads one shop.
type reader struct {
	*value.Reader
	shop  *Shop
	first map[string]syntax.Field // the fields of tools, wrenches and gauges by id in small letters
}

// thing returns a reader for what may be bad alone.
func (r reader) thing() reader { return reader{r.Thing(), r.shop, r.first} }

// item reads what every tool, wrench and gauge has. They share one name space.
func (r reader) item(f syntax.Field) Item {
	n := f.Value
	r.Keys(n)
	i := Item{
		ID: f.Key, Name: r.Name(f, "name"), Number: r.Text(n.Get("number")), Place: r.Text(n.Get("place")),
		Old: r.Text(n.Get("old-number")), Replaced: r.Text(n.Get("replaced-by")), At: r.Key(f), Node: n,
	}
	lower := strings.ToLower(f.Key)
	if other, twice := r.first[lower]; r.ID(f.Key, i.At) && twice {
		d := r.Msgs.Report("id-twice", i.At, "give each its own id", "two tools, wrenches or gauges are called `%s`", f.Key)
		d.Related = append(d.Related, diag.Related{At: r.Key(other), Message: "the other one"})
	}
	r.first[lower] = f
	for _, h := range r.List(n.Get("hazards")) {
		if r.hazard(r.Text(h), h.Place()) {
			i.Hazards = append(i.Hazards, r.Text(h))
		}
	}
	return i
}

// successors checks that each tool that is replaced names one in use.
func (r reader) successors() {
	var items []*Item
	for _, t := range r.shop.Tools {
		items = append(items, &t.Item)
	}
	for _, w := range r.shop.Wrenches {
		items = append(items, &w.Item)
	}
	for _, g := range r.shop.Gauges {
		items = append(items, &g.Item)
	}
	replaced := map[string]string{}
	for _, i := range items {
		replaced[i.ID] = i.Replaced
	}
	round := map[string]bool{} // in a circle that has been reported
	for _, i := range items {
		by := i.Node.Get("replaced-by")
		if i.Replaced == "" || round[i.ID] || !r.Known("tool-unknown", "tool", by, r.shop.IDs(), "tools") {
			continue
		}
		way := []string{i.ID}
		for next := i.Replaced; next != "" && !slices.Contains(way, next); next = replaced[next] {
			way = append(way, next)
		}
		next := replaced[i.Replaced]
		switch last := way[len(way)-1]; {
		case i.Replaced == i.ID:
			r.Msgs.Report("tool-circle", by.Place(), "name the one that takes its place, or leave `replaced-by` out", "`%s` cannot take its own place", i.ID)
		case replaced[last] == i.ID:
			for _, id := range way {
				round[id] = true
			}
			r.Msgs.Report("tool-circle", by.Place(), "leave `replaced-by` out of the one in use", "`%s` take each other's place", strings.Join(way, "`, `"))
		case next != "" && next != i.Replaced:
			r.Msgs.Report("tool-superseded", by.Place(), "write `"+last+"`", "`%s` is itself replaced, by `%s`", i.Replaced, next)
		}
	}
}

func (r reader) wrench(f syntax.Field) *Wrench {
	n := f.Value
	w := &Wrench{Item: r.item(f), Accuracy: r.Share(n.Get("accuracy")), Length: r.Value(n.Get("length"), quantity.Length),
		Marked: r.Text(n.Get("marked")), Due: r.due(n.Get("due"))}
	if w.Accuracy != nil && w.Accuracy.Cmp(big.NewRat(1, 1)) >= 0 {
		r.Msgs.Report("quantity-malformed", n.Get("accuracy").Place(), "write it as its calibration record has it, as in `4 %`", "an accuracy is below 100 %%")
		w.Accuracy = nil
	}
	w.Bad = r.scale(&w.Scale, n, "marks", quantity.Torque)
	r.marked(n, w.Scale)
	return w
}

func (r reader) gauge(f syntax.Field) *Gauge {
	n := f.Value
	g := &Gauge{Item: r.item(f), Marked: r.Text(n.Get("marked")), Due: r.due(n.Get("due"))}
	g.Infrared = r.Yes(n.Get("infrared"))
	g.ZeroAnywhere = r.Text(n.Get("zero")) != ""
	if g.Bad = r.scale(&g.Scale, n, "resolution", quantity.None); !g.Bad.Is() {
		g.Uncertainty = r.uncertainty(n.Get("uncertainty"), g.Scale.Unit.Difference().Dimension)
	}
	r.marked(n, g.Scale)
	return g
}

// atmosphere reads the air pressure of the shop. Between the highest towns and
// the heaviest weather it lies between 50 and 110 kPa (common practice); what
// does not is in another unit, or counts from the air itself.
func (r reader) atmosphere(n *syntax.Node) *quantity.Value {
	v := r.Value(n, quantity.Pressure)
	kilo := quantity.MustUnit("kPa")
	if v == nil || v.In(kilo).Value.Cmp(big.NewRat(50, 1)) >= 0 && v.In(kilo).Value.Cmp(big.NewRat(110, 1)) <= 0 {
		return v
	}
	r.Msgs.Report("quantity-malformed", n.Place(), "write it absolute and as it is at your height, near `101.3 kPa` at the sea", "no shop has air of %s", v.Unit.After(v.Text))
	return nil
}

// guard reads the share of a gauge's uncertainty by which limits are narrowed.
// One below zero would widen them.
func (r reader) guard(n *syntax.Node) *big.Rat {
	w := r.Number(n)
	if w == nil || w.Sign() > 0 {
		return w
	}
	r.Msgs.Report("quantity-malformed", n.Place(), "write `guard-band: 1`, or leave it out", "a guard band is more than nothing")
	return nil
}

// uncertainty reads a gauge's uncertainty: it may be written with its ±.
func (r reader) uncertainty(n *syntax.Node, kind quantity.Dimension) *quantity.Value {
	u := r.Either(n, kind)
	if u == nil || u.Value.Sign() > 0 {
		return u
	}
	r.Msgs.Report("quantity-malformed", n.Place(), "write it as the gauge's record states it, or leave it out", "an uncertainty is more than nothing")
	return nil
}

// dateForm is what the schema asks of a date; what has another form it has
// reported.
var dateForm = regexp.MustCompile(`^[0-9]{4}-[0-9]{2}-[0-9]{2}$`)

// IsDate reports whether text is a day of the calendar, "2026-11-25".
func IsDate(text string) bool {
	_, err := time.Parse(time.DateOnly, text)
	return err == nil && dateForm.MatchString(text)
}

// due reads the day on which a calibration falls due, "" for none. The schema
// knows the form of a date and the longest month.
func (r reader) due(n *syntax.Node) string {
	text := r.Text(n)
	switch {
	case text == "" || IsDate(text):
		return text
	case dateForm.MatchString(text) && text[5:7] >= "01" && text[5:7] <= "12" && text[8:] >= "01" && text[8:] <= "31":
		r.Refuse("value-kind", n.Place(), "look it up in the calibration record", "no calendar has the day `%s`", text)
	default:
		r.Wrong("value-kind", n, "write it as year-month-day, such as `2026-10-02`", "`%s` is no date", text)
	}
	return ""
}

// scale reads a range and the step under key, which have one unit. It returns
// what it reported where they could not be read.
func (r reader) scale(s *quantity.Scale, n *syntax.Node, key string, kind quantity.Dimension) diag.Reported {
	r = r.thing()
	if r.Need(n, key) {
		r.marks(s, n, key, kind)
	}
	return r.Bad()
}

func (r reader) marks(s *quantity.Scale, n *syntax.Node, key string, kind quantity.Dimension) {
	step := r.Value(n.Get(key), kind)
	if step == nil {
		return
	}
	if step.Value.Sign() <= 0 {
		r.Refuse("quantity-malformed", n.Get(key).Place(), "write how far it is from one mark to the next", "the marks of a scale are more than nothing apart")
		return
	}
	if !engravable(step.Value) {
		r.Refuse("quantity-malformed", n.Get(key).Place(), "write how far it is from one mark to the next, such as `0.01 mm` or `1/64 in`", "no scale has marks %s apart", step.Unit.After(step.Text))
		return
	}
	s.Unit, s.Step, s.Fractions = step.Unit, step.Value, step.Fraction()
	written := n.Get("range")
	if written == nil {
		return
	}
	b := r.Band(written, step.Unit.Dimension)
	switch {
	case b == nil:
		return
	case b.Form == quantity.Bare:
		r.Refuse("limits-bare", written.Place(), "write the lowest and the highest mark, as in `0 to "+r.Text(written)+"`", "a range has two ends")
		return
	case b.Unit.Symbol != step.Unit.Symbol:
		r.Refuse("measure-kind", n.Get(key).Place(), "write both as the scale is engraved; one with two scales is two entries",
			"the range is in %s, and `%s` is in %s", b.Unit.Symbol, key, step.Unit.Symbol)
		return
	}
	s.Low, s.High = b.Low, b.High
	if s.Low == nil || s.High == nil {
		return
	}
	if span := new(big.Rat).Sub(s.High, s.Low); span.Sign() > 0 && span.Cmp(s.Step) < 0 {
		r.Refuse("quantity-malformed", n.Get(key).Place(), "write how far it is from one mark to the next", "marks so far apart leave the range with one alone")
	}
}

// engravable says whether the marks of a scale may be so far apart: parts of one by
// twos, threes and fives.
func engravable(step *big.Rat) bool {
	d := new(big.Int).Set(step.Denom())
	for _, f := range []int64{2, 3, 5} {
		for q, m := new(big.Int), new(big.Int); ; d.Set(q) {
			if q.QuoRem(d, big.NewInt(f), m); m.Sign() != 0 {
				break
			}
		}
	}
	return d.Cmp(big.NewInt(1)) == 0
}

// marked reports an engraved unit that is not that of the scale: every number
// on the cards would be read on a scale that it is not of.
func (r reader) marked(n *syntax.Node, s quantity.Scale) {
	m := n.Get("marked")
	if u, ok := quantity.UnitOf(r.Text(m)); ok && u.Dimension == s.Unit.Dimension && u.Symbol != s.Unit.Symbol {
		r.Msgs.Report("measure-kind", m.Place(), "write the range as the scale is engraved",
			"`%s` is %s, and the range is in %s", r.Text(m), u.Symbol, s.Unit.Symbol)
	}
}

func (r reader) stock(f syntax.Field) *Stock {
	n := f.Value
	r = r.thing()
	s := &Stock{ID: f.Key, Name: r.Name(f, "name"), Place: r.Text(n.Get("place")), At: r.Key(f)}
	r.ID(f.Key, s.At)
	r.Need(n, "shims")
	for _, i := range r.Sequence(n.Get("shims")) {
		thick, most := i, 0
		if i.Kind == syntax.Mapping {
			thick, most = i.Get("thickness"), r.Count(i.Get("at-most"), 0)
			r.Need(i, "thickness")
		}
		switch v := r.Value(thick, quantity.Length); {
		case v == nil:
		case v.Value.Sign() <= 0:
			r.Refuse("quantity-malformed", thick.Place(), "write its thickness", "a shim is more than nothing thick")
		default:
			s.Shims = append(s.Shims, Shim{*v, most})
		}
	}
	s.Bad = r.Bad()
	return s
}

// hazard reports an id that the table of hazards does not have.
func (r reader) hazard(id string, at source.Place) bool {
	if _, ok := hazard.Find(id); ok {
		return true
	}
	d := r.Msgs.Report("hazard-unknown", at, "write one of the hazards that `benchwright explain hazard-unknown` lists", "no hazard is called `%s`", id)
	if near := diag.Nearest(id, hazard.IDs()); near != "" {
		d.Fix, d.Edit = "write `"+near+"`", &diag.Edit{At: at, Text: near}
	}
	return false
}
