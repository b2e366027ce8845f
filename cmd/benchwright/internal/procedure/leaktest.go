package procedure

import (
	"regexp"
	"strings"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// LeakTest is a pressure or vacuum hold: fill or draw to a pressure, wait, read
// again. Its readings have no limits of their own: a table has them.
type LeakTest struct {
	Measurement
	Vacuum      bool
	Fluid       string          // air, nitrogen; "" for a vacuum
	Start       quantity.Band   // the test pressure, of a vacuum its depth
	Absolute    bool            // Start counts from nothing, not from the shop's air
	StartAt     source.Place    // of the test pressure
	Hold        quantity.Value  // how long
	Allowed     *quantity.Value // the pressure that may be lost; nil where Rate says it
	Rate        *quantity.Value // the leak that is allowed
	Volume      *quantity.Value // of the gas, beside Rate
	Reference   *quantity.Value // the temperature to which the loss is referred; nil for that of the start
	Shop        quantity.Band   // where the shop's temperature may be at the start
	ShopAt      source.Place
	Thermometer Named
	Example     *LeakExample // nil without one
}

// A LeakExample is a worked example that the writer states.
type LeakExample struct {
	From, To quantity.Value // the shop at the start and at the end
	Reading  quantity.Value // the least that the gauge may show
	At       source.Place   // of the reading
}

func (r *Reader) leakTest(b Base) Item {
	n := b.Node
	u := r.values()
	t := &LeakTest{Measurement: r.reading(b, quantity.None, "gauge"), Fluid: text(n.Get("fluid")), Thermometer: named(n.Get("thermometer"))}
	t.Limits = Limits{None: true, Source: t.Limits.Source, At: b.At}
	t.IfLow = branch(n.Get("if-leak"))
	pressure := n.Get("pressure")
	if vacuum := n.Get("vacuum"); vacuum != nil {
		if pressure != nil {
			r.Msgs.Report("limits-twice", vacuum.Place(), "keep the one that is drawn or pumped", "this test has both a pressure and a vacuum")
			return &Invalid{b, "leak-test"}
		}
		pressure, t.Vacuum = vacuum, true
	}
	start := r.gauged(pressure, t)
	hold := r.above(n.Get("hold"), quantity.Time, "a hold is")
	t.Allowed = r.above(n.Get("allowed"), quantity.Pressure, "what may be lost is")
	if rate := n.Get("rate"); rate != nil {
		if n.Get("allowed") != nil {
			r.Msgs.Report("limits-twice", rate.Place(), "keep the one that the manual gives", "this test has both a pressure that may be lost and a leak rate")
			return &Invalid{b, "leak-test"}
		}
		t.Rate, t.Volume = r.above(rate, quantity.LeakRate, "a leak is"), r.above(n.Get("volume"), quantity.Volume, "a volume is")
	}
	shop := r.band(n.Get("temperature"), quantity.Temperature)
	if shop != nil && (shop.Low == nil || shop.High == nil) {
		r.Msgs.Report("limits-bare", n.Get("temperature").Place(), "write the coldest and the warmest shop, as in `15 to 25 °C`", "a shop is never at one temperature alone")
		shop = nil
	}
	ok := start != nil && hold != nil && shop != nil
	if ref := n.Get("referred-to"); text(ref) != "start" {
		if u.Wordy(ref, "write `start`, or a temperature such as `20 °C`") {
			return &Invalid{b, "leak-test"}
		}
		t.Reference = u.Value(ref, quantity.Temperature)
		ok = ok && t.Reference != nil
	}
	if t.Rate == nil || t.Volume == nil {
		ok = ok && t.Allowed != nil
	}
	if e := n.Get("example"); e != nil {
		from, to, reading := u.Value(e.Get("from"), quantity.Temperature), u.Value(e.Get("to"), quantity.Temperature), u.Value(e.Get("reading"), quantity.Pressure)
		if from == nil || to == nil || reading == nil {
			return &Invalid{b, "leak-test"}
		}
		t.Example = &LeakExample{*from, *to, *reading, e.Get("reading").Place()}
	}
	if !ok {
		return &Invalid{b, "leak-test"}
	}
	t.Start, t.Hold, t.Shop, t.ShopAt = *start, *hold, *shop, n.Get("temperature").Place()
	return t
}

// gaugeLetter matches a pressure whose unit says by a letter where it counts from.
var gaugeLetter = regexp.MustCompile(`^(.*[0-9] ?(?i:psi|bar|kpa|mbar)) ?\(?(?i:(g|a))\)?$`)

// gauged reads a pressure that says where it counts from: "35 kPa gauge",
// "136 kPa absolute". A bare one can be read two ways.
func (r *Reader) gauged(n *syntax.Node, t *LeakTest) *quantity.Band {
	t.StartAt = n.Place()
	cut, absolute := "", false
	if m := gaugeLetter.FindStringSubmatch(n.Text); m != nil { // 5 psig, 136 kPa(a)
		cut, absolute = m[1], strings.EqualFold(m[2], "a")
	}
	for _, w := range []struct {
		word     string
		absolute bool
	}{{" gauge", false}, {" absolute", true}, {" abs", true}} {
		if strings.HasSuffix(n.Text, w.word) {
			cut, absolute = strings.TrimSuffix(n.Text, w.word), w.absolute
		}
	}
	if cut == "" {
		if b := r.band(n, quantity.Pressure); b != nil {
			r.Msgs.Report("unit-varieties", n.Place(), "write `"+b.Written+" gauge`, or `"+b.Written+" absolute`", "`%s` may count from the air of the shop or from nothing", b.Written)
		}
		return nil
	}
	t.Absolute = absolute
	b, problem := quantity.ParseBandOf(cut, r.Mark, quantity.Pressure)
	if problem != nil {
		span := n.Sub(problem.Start, problem.End)
		r.Msgs.Report(problem.Slug, n.File.At(span.Start, span.End), problem.Help, "%s", problem.Message)
		return nil
	}
	if b.Form == quantity.Max || b.Form == quantity.Min {
		r.Msgs.Report("quantity-malformed", n.Place(), "write the pressure alone, or both ends of it", "a test pressure is one value, or a band with two ends")
		return nil
	}
	return &b
}
