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

// Read converts a shop.yaml. A nil tree gives nil.
func Read(t *syntax.Tree, msgs *diag.List) *Shop {
	if t == nil {
		return nil
	}
	return FromNode(t.Root, &value.Reader{Msgs: msgs, SchemaRefused: t.Refused})
}

// FromNode converts a mapping that describes a shop, as in a procedure that
// has no shop.yaml. It reports unreadable parts and leaves them out, and sets
// the reader's decimal mark to the shop's. A nil node gives nil.
func FromNode(n *syntax.Node, read *value.Reader) *Shop {
	if n == nil {
		return nil
	}
	s := &Shop{Decimal: quantity.Point, Language: "en", Paper: "A4", File: n.File, Root: n}
	if value.OneOf(read, n.Get("decimal"), "point", "comma") == "comma" {
		s.Decimal = quantity.Comma
	}
	read.Mark = s.Decimal
	r := reader{Reader: read, shop: s, firstByID: map[string]syntax.Field{}}
	s.Name = r.Text(n.Get("shop"))
	if text := r.Text(n.Get("language")); text != "" {
		s.Language = text
	}
	if text := r.Text(n.Get("paper")); text != "" {
		s.Paper = text
	}
	s.Distance = r.distance(n.Get("reading-distance"))
	s.TorqueTolerance = r.Percentage(n.Get("torque-tolerance"))
	s.AvoidFirst = value.OneOf(r.Reader, n.Get("callout-order"), "hazard-first", "avoid-first") == "avoid-first"
	rule := r.Mapping(n.Get("gauge-rule"))
	s.MarksWarn, s.MarksError = r.Number(rule.Get("warn")), r.Number(rule.Get("error"))
	s.UncertaintyRatio, s.GuardBand = r.Number(rule.Get("uncertainty-ratio")), r.guardBand(rule.Get("guard-band"))
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
		s.Tools = append(s.Tools, &Tool{r.item(f), r.Value(f.Value.Get("across-flats"), quantity.Length), r.Positive(f.Value.Get("ram"), quantity.Length, "a ram is", "write its diameter, such as `60 mm`")})
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
	r.checkReplacements()
	return s
}

// distance reads the reading distance of a card in micrometers: from hand to
// across the bench. 0 is the usual distance for the paper.
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

type reader struct {
	*value.Reader
	shop      *Shop
	firstByID map[string]syntax.Field // fields of tools, wrenches and gauges, by lower-case id
}

// forPart returns a reader for a part that is marked as bad on its own.
func (r reader) forPart() reader { return reader{r.ForPart(), r.shop, r.firstByID} }

// item reads what tools, wrenches and gauges have in common. They share one
// name space.
func (r reader) item(f syntax.Field) Item {
	n := f.Value
	r.Mapping(n)
	i := Item{
		ID: f.Key, Name: r.Name(f, "name"), Number: r.Text(n.Get("number")), Location: r.Text(n.Get("place")),
		OldNumber: r.Text(n.Get("old-number")), ReplacedBy: r.Text(n.Get("replaced-by")), At: r.Key(f), Node: n,
	}
	lower := strings.ToLower(f.Key)
	if other, twice := r.firstByID[lower]; r.ID(f.Key, i.At) && twice {
		d := r.Msgs.Report("id-twice", i.At, "give each its own id", "two tools, wrenches or gauges are called `%s`", f.Key)
		d.Related = append(d.Related, diag.Related{At: r.Key(other), Message: "the other one"})
	}
	r.firstByID[lower] = f
	for _, h := range r.List(n.Get("hazards")) {
		if r.hazard(r.Text(h), h.Place()) {
			i.Hazards = append(i.Hazards, r.Text(h))
		}
	}
	return i
}

// checkReplacements checks that each replaced tool leads to one in use.
func (r reader) checkReplacements() {
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
		replaced[i.ID] = i.ReplacedBy
	}
	inCycle := map[string]bool{} // ids of a cycle that has been reported
	for _, i := range items {
		by := i.Node.Get("replaced-by")
		if i.ReplacedBy == "" || inCycle[i.ID] || !r.KnownName("tool-unknown", "tool", by, r.shop.IDs(), "tools") {
			continue
		}
		way := []string{i.ID}
		for next := i.ReplacedBy; next != "" && !slices.Contains(way, next); next = replaced[next] {
			way = append(way, next)
		}
		next := replaced[i.ReplacedBy]
		switch last := way[len(way)-1]; {
		case i.ReplacedBy == i.ID:
			r.Msgs.Report("tool-circle", by.Place(), "name the one that takes its place, or leave `replaced-by` out", "`%s` cannot take its own place", i.ID)
		case replaced[last] == i.ID:
			for _, id := range way {
				inCycle[id] = true
			}
			r.Msgs.Report("tool-circle", by.Place(), "leave `replaced-by` out of the one in use", "`%s` take each other's place", strings.Join(way, "`, `"))
		case next != "" && next != i.ReplacedBy:
			r.Msgs.Report("tool-superseded", by.Place(), "write `"+last+"`", "`%s` is itself replaced, by `%s`", i.ReplacedBy, next)
		}
	}
}

func (r reader) wrench(f syntax.Field) *Wrench {
	n := f.Value
	w := &Wrench{Item: r.item(f), Accuracy: r.Percentage(n.Get("accuracy")), Length: r.Value(n.Get("length"), quantity.Length),
		EngravedUnit: r.Text(n.Get("marked")), Due: r.dueDate(n.Get("due"))}
	if w.Accuracy != nil && w.Accuracy.Cmp(big.NewRat(1, 1)) >= 0 {
		r.Msgs.Report("quantity-malformed", n.Get("accuracy").Place(), "write it as its calibration record has it, as in `4 %`", "an accuracy is below 100 %%")
		w.Accuracy = nil
	}
	w.Bad = r.scale(&w.Scale, n, "marks", quantity.Torque)
	r.checkEngravedUnit(n, w.Scale)
	return w
}

func (r reader) gauge(f syntax.Field) *Gauge {
	n := f.Value
	g := &Gauge{Item: r.item(f), EngravedUnit: r.Text(n.Get("marked")), Due: r.dueDate(n.Get("due"))}
	g.Infrared = r.Switch(n.Get("infrared"))
	g.ZeroAnywhere = r.Text(n.Get("zero")) != ""
	if g.Bad = r.scale(&g.Scale, n, "resolution", quantity.None); !g.Bad.IsSet() {
		g.Uncertainty = r.uncertainty(n.Get("uncertainty"), g.Scale.Unit.Difference().Dimension)
	}
	r.checkEngravedUnit(n, g.Scale)
	return g
}

// atmosphere reads the air pressure of the shop. Between the highest towns and
// the highest pressure at sea level it is from 50 to 110 kPa (common
// practice); other values are in another unit, or are gauge pressures.
func (r reader) atmosphere(n *syntax.Node) *quantity.Value {
	v := r.Value(n, quantity.Pressure)
	kilo := quantity.MustUnit("kPa")
	if v == nil || v.In(kilo).Value.Cmp(big.NewRat(50, 1)) >= 0 && v.In(kilo).Value.Cmp(big.NewRat(110, 1)) <= 0 {
		return v
	}
	r.Msgs.Report("quantity-malformed", n.Place(), "write it absolute and as it is at your height, near `101.3 kPa` at the sea", "no shop has air of %s", v.Unit.After(v.Text))
	return nil
}

// guardBand reads the fraction of a gauge's uncertainty by which limits are
// narrowed. A negative one would widen them.
func (r reader) guardBand(n *syntax.Node) *big.Rat {
	w := r.Number(n)
	if w == nil || w.Sign() > 0 {
		return w
	}
	r.Msgs.Report("quantity-malformed", n.Place(), "write `guard-band: 1`, or leave it out", "a guard band is more than nothing")
	return nil
}

// uncertainty reads a gauge's uncertainty, which may have a ±.
func (r reader) uncertainty(n *syntax.Node, kind quantity.Dimension) *quantity.Value {
	u := r.Deviation(n, kind)
	if u == nil || u.Value.Sign() > 0 {
		return u
	}
	r.Msgs.Report("quantity-malformed", n.Place(), "write it as the gauge's record states it, or leave it out", "an uncertainty is more than nothing")
	return nil
}

// dateForm matches a date. The schema reports any other form.
var dateForm = regexp.MustCompile(`^[0-9]{4}-[0-9]{2}-[0-9]{2}$`)

// IsDate reports whether text is an existing date, "2026-11-25".
func IsDate(text string) bool {
	_, err := time.Parse(time.DateOnly, text)
	return err == nil && dateForm.MatchString(text)
}

// dueDate reads the date at which a calibration expires, "" for none. The
// schema has checked the form and the month.
func (r reader) dueDate(n *syntax.Node) string {
	text := r.Text(n)
	switch {
	case text == "" || IsDate(text):
		return text
	case dateForm.MatchString(text) && text[5:7] >= "01" && text[5:7] <= "12" && text[8:] >= "01" && text[8:] <= "31":
		r.Refuse("value-kind", n.Place(), "look it up in the calibration record", "no calendar has the day `%s`", text)
	default:
		r.RefuseOnce("value-kind", n, "write it as year-month-day, such as `2026-10-02`", "`%s` is not a date", text)
	}
	return ""
}

// scale reads a scale's range and its step, at key, which share one unit. It
// returns the proof of an error it reported.
func (r reader) scale(s *quantity.Scale, n *syntax.Node, key string, kind quantity.Dimension) diag.Reported {
	r = r.forPart()
	if r.Require(n, key) {
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

// engravable reports whether step is a plausible interval of engraved marks: a
// fraction of one whose denominator has only the factors 2, 3 and 5.
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

// checkEngravedUnit reports an engraved unit that is none, or not the unit of the
// scale: the cards would print every number in a unit that the scale does not show.
func (r reader) checkEngravedUnit(n *syntax.Node, s quantity.Scale) {
	m := n.Get("marked")
	text := r.Text(m)
	if text == "" || s.Step == nil || quantity.Engraves(text, s.Unit) {
		return
	}
	const fix = "write the range as the scale is engraved"
	if u, ok := quantity.UnitOf(text); ok {
		r.Msgs.Report("measure-kind", m.Place(), fix, "`%s` is %s, and the range is in %s", text, u.Symbol, s.Unit.Symbol)
		return
	}
	r.Msgs.Report("measure-unknown", m.Place(), "write the unit of measure as it is engraved, or leave `marked` out to print "+s.Unit.Symbol,
		"no unit of measure is called `%s`", text)
}

func (r reader) stock(f syntax.Field) *Stock {
	n := f.Value
	r = r.forPart()
	s := &Stock{ID: f.Key, Name: r.Name(f, "name"), Location: r.Text(n.Get("place")), At: r.Key(f)}
	r.ID(f.Key, s.At)
	r.Require(n, "shims")
	for _, i := range r.Sequence(n.Get("shims")) {
		thick, most := i, 0
		if i.Kind == syntax.Mapping {
			thick, most = i.Get("thickness"), r.Count(i.Get("at-most"), 0)
			r.Require(i, "thickness")
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

// hazard reports an id that is not in the hazard table.
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
