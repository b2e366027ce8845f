package procedure

import (
	"regexp"
	"strings"

	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/value"
)

// LeakTest is a pressure or vacuum hold test: bring to a pressure, wait, read
// again. Its readings have no limits of their own; a computed table has them.
type LeakTest struct {
	Measurement
	Vacuum            bool
	Fluid             Fluid           // "" for a vacuum
	Start             quantity.Band   // the test pressure; for a vacuum, its depth
	Absolute          bool            // Start is absolute, not gauge pressure
	StartAt           source.Place    // place of the test pressure
	HoldTime          quantity.Value  // duration of the test
	Allowed           *quantity.Value // pressure loss allowed; nil if Rate is stated
	Rate              *quantity.Value // leak rate allowed
	Volume            *quantity.Value // of the gas, with Rate
	Reference         *quantity.Value // temperature to which the loss is referred; nil for that at the start
	ShopTemperature   quantity.Band   // temperature of the shop allowed at the start
	ShopTemperatureAt source.Place
	Thermometer       Named
	Example           *LeakExample // nil without one
}

// A Fluid is the gas used for a test.
type Fluid string

const (
	Air      Fluid = "air"
	Nitrogen Fluid = "nitrogen"
)

// A LeakExample is a worked example given by the writer.
type LeakExample struct {
	From, To quantity.Value // shop temperature at start and end
	Reading  quantity.Value // lowest reading allowed
	At       source.Place   // place of Reading
}

func (r reader) leakTest(b Base) Item {
	n := b.Node
	t := &LeakTest{Measurement: r.reading(b, quantity.None, "gauge"), Fluid: value.OneOf(r.Reader, n.Get("fluid"), Air, Nitrogen), Thermometer: r.named(n.Get("thermometer"))}
	t.Limits = Limits{None: true, Source: t.Limits.Source, At: b.At}
	t.IfLow = r.branch(n.Get("if-leak"))
	pressure, vacuum := n.Get("pressure"), n.Get("vacuum")
	if vacuum != nil {
		if pressure != nil {
			r.Refuse("limits-twice", vacuum.Place(), "keep the one that is drawn or pumped", "this test has both a pressure and a vacuum")
			return t
		}
		pressure, t.Vacuum = vacuum, true
	}
	allowed, rate := n.Get("allowed"), n.Get("rate")
	if rate != nil && allowed != nil {
		r.Refuse("limits-twice", rate.Place(), "keep the one that the manual gives", "this test has both a pressure that may be lost and a leak rate")
		return t
	}
	if pressure == nil {
		r.Require(n, "pressure")
	}
	if rate != nil {
		r.Require(n, "volume")
	} else {
		r.Require(n, "allowed")
	}
	r.Require(n, "hold", "temperature", "referred-to")
	t.Allowed = r.positive(allowed, quantity.Pressure, "what may be lost is")
	t.Rate, t.Volume = r.positive(rate, quantity.LeakRate, "a leak is"), r.positive(n.Get("volume"), quantity.Volume, "a volume is")
	start, hold, shop := r.pressureWithDatum(pressure, t), r.positive(n.Get("hold"), quantity.Time, "a hold is"), r.Band(n.Get("temperature"), quantity.Temperature)
	if shop != nil && (shop.Low == nil || shop.High == nil) {
		r.Refuse("limits-bare", n.Get("temperature").Place(), "write the coldest and the warmest shop, as in `15 to 25 °C`", "the shop is never at exactly one temperature")
	}
	if ref := n.Get("referred-to"); r.Text(ref) != "start" && !r.RefuseWord(ref, "write `start`, or a temperature such as `20 °C`") {
		t.Reference = r.Value(ref, quantity.Temperature)
	}
	if e := n.Get("example"); e != nil && r.Require(e, "from", "to", "reading") {
		from, to, reading := r.Value(e.Get("from"), quantity.Temperature), r.Value(e.Get("to"), quantity.Temperature), r.Value(e.Get("reading"), quantity.Pressure)
		if !r.Bad().IsSet() {
			t.Example = &LeakExample{*from, *to, *reading, e.Get("reading").Place()}
		}
	}
	if !r.Bad().IsSet() {
		t.Start, t.HoldTime, t.ShopTemperature, t.ShopTemperatureAt = *start, *hold, *shop, n.Get("temperature").Place()
	}
	return t
}

// gaugeLetter matches a pressure whose unit has a suffix for gauge or
// absolute: 5 psig, 136 kPa(a).
var gaugeLetter = regexp.MustCompile(`^(.*[0-9] ?(?i:psi|bar|kpa|mbar)) ?\(?(?i:(g|a))\)?$`)

// pressureWithDatum reads a pressure that is marked as gauge or absolute: "35
// kPa gauge", "136 kPa absolute". An unmarked one is ambiguous and reported.
func (r reader) pressureWithDatum(n *syntax.Node, t *LeakTest) *quantity.Band {
	text := r.Text(n)
	if text == "" {
		return nil
	}
	t.StartAt = n.Place()
	cut, absolute := "", false
	if m := gaugeLetter.FindStringSubmatch(n.Text); m != nil { // such as 5 psig, 136 kPa(a)
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
		if b := r.Band(n, quantity.Pressure); b != nil {
			r.Refuse("measure-varieties", n.Place(), "write `"+b.Written+" gauge`, or `"+b.Written+" absolute`", "`%s` may be gauge pressure or absolute pressure", b.Written)
		}
		return nil
	}
	t.Absolute = absolute
	b := r.BandBefore(n, cut, quantity.Pressure)
	if b != nil && (b.Form == quantity.Max || b.Form == quantity.Min) {
		r.Refuse("quantity-malformed", n.Place(), "write the pressure alone, or both ends of it", "a test pressure is one value, or a band with two ends")
	}
	return b
}
