package shop

import (
	"fmt"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// read reads a shop.yaml in which « and » may mark a place, and returns the
// place and what was reported.
func read(t *testing.T, text string) (*Shop, source.Span, []diag.Diagnostic) {
	t.Helper()
	start := strings.Index(text, "«")
	text = strings.Replace(text, "«", "", 1)
	end := strings.Index(text, "»")
	text = strings.Replace(text, "»", "", 1)
	msgs := &diag.List{}
	tree := syntax.ReadTree(source.NewFile("shop.yaml", []byte(text)), msgs)
	s := Read(tree, msgs)
	return s, source.Span{Start: start, End: end}, msgs.Sorted()
}

func TestRead(t *testing.T) {
	s, _, msgs := read(t, `benchwright: 1
shop: Fallow Lane Drive Works
decimal: point
paper: A6
torque-tolerance: 5 %
callout-order: avoid-first
gauge-rule: {warn: 5, error: 2, uncertainty-ratio: 4, guard-band: 0.825}
lift-limit: 18 kg
atmosphere: 101.3 kPa
hazard-rules: {press: Shop rule 12}
tools:
  lug-socket-4: {name: Four-lug socket, number: FL-118, place: board 2, hazards: [bar], old-number: FL-101}
  lug-socket-3: {number: FL-101, replaced-by: lug-socket-4}
  spanner-36: {across-flats: 36 mm}
wrenches:
  tw-120: {name: Click wrench 120, range: 20 to 120 N·m, marks: 1 N·m, accuracy: ±4 %, length: 380 mm, place: drawer 3, due: 2027-03-01}
  tw-90: {range: 10..90 lb-ft, marks: 1 ft-lb, marked: ft-lb}
gauges:
  dial-indicator: {name: Dial indicator, resolution: 0.01 mm, range: 0 to 10 mm, place: drawer 1, uncertainty: 8 µm}
  spring-scale: {resolution: 0.1 kgf, range: max 10 kgf, marked: kg}
  thermometer: {resolution: 1 °C, uncertainty: 2 °C}
  rule: {resolution: 1/64 in}
stock:
  steel: {name: Steel shims, shims: [0.10 mm, {thickness: 0.50 mm, at-most: 2}]}
`)
	for _, m := range msgs {
		t.Errorf("%s: %s | %s", m.Slug, m.Message, m.Fix)
	}
	check := func(what string, got, want any) {
		t.Helper()
		if fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%s is %v, want %v", what, got, want)
		}
	}
	check("shop", []any{s.Name, string(s.Decimal), s.Language, s.Paper, s.TorqueTolerance, s.AvoidFirst}, "[Fallow Lane Drive Works . en A6 1/20 true]")
	check("gauge rule", []any{s.MarksWarn, s.MarksError, s.UncertaintyRatio, s.GuardBand}, "[5/1 2/1 4/1 33/40]")
	check("limits", []any{s.LiftLimit.Text, s.Atmosphere.Text, s.HazardRules}, "[18 101.3 map[press:Shop rule 12]]")
	check("ids", s.IDs(), "[lug-socket-4 lug-socket-3 spanner-36 tw-120 tw-90 dial-indicator spring-scale thermometer rule]")
	socket := s.Find("lug-socket-4").(*Tool)
	check("socket", []any{socket.Name, socket.Number, socket.Location, socket.Hazards, socket.OldNumber, socket.ReplacedBy}, "[Four-lug socket FL-118 board 2 [bar] FL-101 ]")
	check("old socket", []any{s.Tools[1].Name, s.Tools[1].ReplacedBy, s.Tools[2].AcrossFlats.Text}, "[Lug socket 3 lug-socket-4 36]")
	w := s.Find("tw-120").(*Wrench)
	check("wrench", []any{w.Scale.Low, w.Scale.High, w.Scale.Step, w.Scale.Unit.Symbol, w.Accuracy, w.Length.Text, w.Due, w.Bad.IsSet()}, "[20/1 120/1 1/1 N·m 1/25 380 2027-03-01 false]")
	check("marked", []any{s.Wrenches[1].EngravedUnit, s.Wrenches[1].Scale.Unit.Symbol, s.Wrenches[1].Scale.Low}, "[ft-lb lbf·ft 10/1]")
	g := s.Find("dial-indicator").(*Gauge)
	check("gauge", []any{g.Scale.Low, g.Scale.High, g.Scale.Step, g.Uncertainty.Text, g.Uncertainty.Unit.Symbol}, "[0/1 10/1 1/100 8 µm]")
	check("scale", []any{s.Gauges[1].Scale.Low == nil, s.Gauges[1].Scale.High, s.Gauges[1].EngravedUnit}, "[true 10/1 kg]")
	check("thermometer", []any{s.Gauges[2].Uncertainty.Unit.Dimension, s.Gauges[2].Scale.Unit.Dimension}, "[temperature difference temperature]")
	check("rule", s.Gauges[3].Scale.Fractions, true)
	check("stock", []any{s.Stock[0].Name, s.Stock[0].Shims[0].Thickness.Text, s.Stock[0].Shims[0].MaxCount, s.Stock[0].Shims[1].MaxCount}, "[Steel shims 0.10 0 2]")
	check("none", s.Find("no-such"), nil)
}

func TestDefaults(t *testing.T) {
	s, _, msgs := read(t, "benchwright: 1\nshop: A\n")
	if len(msgs) > 0 || s.Language != "en" || s.Paper != "A4" || s.Distance != 0 || s.Decimal != '.' || s.TorqueTolerance != nil || s.MarksWarn != nil || len(s.IDs()) > 0 {
		t.Errorf("%+v %v", s, msgs)
	}
	s, _, msgs = read(t, "decimal: comma\nlift-limit: \"18,5 kg\"\n")
	if len(msgs) > 0 || s.Decimal != ',' || s.LiftLimit.Text != "18,5" {
		t.Errorf("%+v %v", s, msgs)
	}
	var none *Shop
	if Read(nil, &diag.List{}) != nil || FromNode(nil, nil) != nil || none.Find("a") != nil || none.IDs() != nil {
		t.Error("nothing gives a shop")
	}
}

// Each slip gives one message, at the place between « and ».
func TestSlips(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"tools: {«Lug_Socket»: {}}\n", "id-malformed: `Lug_Socket` is not an id | write `lug-socket`"},
		{"tools: {«con»: {}}\n", "id-reserved: `con` is a name that an operating system keeps for itself | choose another, such as `con-a`"},
		{"tools: {dial: {}}\ngauges: {«dial»: {resolution: 1 mm}}\n", "id-twice: two tools, wrenches or gauges are called `dial` | give each its own id"},
		{"tools: {dial: {}, «Dial»: {}}\n", "id-malformed: `Dial` is not an id | write `dial`"},
		{"tools: {a: {hazards: «barr»}}\n", "hazard-unknown: no hazard is called `barr` | write `bar`"},
		{"hazard-rules: {«zzzz»: x}\n", "hazard-unknown: no hazard is called `zzzz` | write one of the hazards that `benchwright explain hazard-unknown` lists"},
		{"tools: {a: {replaced-by: «sockt»}, socket: {}}\n", "tool-unknown: no tool is called `sockt` | write `socket`"},
		{"tools: {a: {replaced-by: «b»}, b: {replaced-by: c}, c: {}}\n", "tool-superseded: `b` is itself replaced, by `c` | write `c`"},
		{"tools: {a: {replaced-by: «a»}}\n", "tool-circle: `a` cannot take its own place | name the one that takes its place, or leave `replaced-by` out"},
		{"torque-tolerance: 5 «N·m»\n", "measure-kind: N·m measures torque, not proportion"},
		{"lift-limit: 18 «mm»\n", "measure-kind: mm measures length, not mass"},
		{"wrenches: {w: {range: 20 to 120 «mm», marks: 1 N·m}}\n", "measure-kind: mm measures length, not torque"},
		{"wrenches: {w: {range: 20 to 120 N·m, marks: 1 «mm»}}\n", "measure-kind: mm measures length, not torque"},
		{"wrenches: {w: {range: 20 to 120 N·m, marks: «1 lbf·ft»}}\n", "measure-kind: the range is in N·m, and `marks` is in lbf·ft | write both as the scale is engraved; one with two scales is two entries"},
		{"wrenches: {w: {range: «120 N·m», marks: 1 N·m}}\n", "limits-bare: a range has two ends | write the lowest and the highest mark, as in `0 to 120 N·m`"},
		{"wrenches: {w: {range: 20 to 120 N·m, marks: 1 N·m, marked: «ft-lb»}}\n", "measure-kind: `ft-lb` is lbf·ft, and the range is in N·m | write the range as the scale is engraved"},
		{"wrenches: {w: {range: 20 to 120 N·m, marks: 1 N·m, accuracy: ±4 «mm»}}\n", "measure-kind: mm measures length, not proportion"},
		{"gauges: {g: {resolution: «0 mm», range: 0 to 1 mm}}\n", "quantity-malformed: the marks of a scale are more than nothing apart | write how far it is from one mark to the next"},
		{"gauges: {g: {resolution: 0.01 mm, uncertainty: 0.01 «kg»}}\n", "measure-kind: kg measures mass, not length"},
		{"stock: {s: {shims: [«0 mm»]}}\n", "quantity-malformed: a shim is more than nothing thick | write its thickness"},
		{"gauge-rule: {warn: «five»}\n", "quantity-malformed: "},
	} {
		_, at, msgs := read(t, c.text)
		var got []string
		for _, m := range msgs {
			got = append(got, m.Slug+": "+m.Message+" | "+m.Fix)
		}
		switch {
		case c.want == "none":
			if len(got) > 0 {
				t.Errorf("%s\n got %q, want nothing", c.text, got)
			}
			continue
		case len(got) != 1 || !strings.HasPrefix(got[0], c.want):
			t.Errorf("%s\n got %q\nwant %q", c.text, got, c.want)
			continue
		}
		if at.Start >= 0 && msgs[0].At.Span != at {
			t.Errorf("%s\nis reported at %q", c.text, msgs[0].At.Text())
		}
	}
}

// What the schema has reported is not said again.
func TestAfterTheSchema(t *testing.T) {
	for _, text := range []string{
		"decimal: [a]\ntools: [a]\nwrenches: {a: 1, b: {range: [1]}}\ngauges: 2\nstock: {a: 1, b: {shims: 3}, c: {shims: [[1]]}}\ngauge-rule: 1\nhazard-rules: 1\nlift-limit: {a: b}\n",
	} {
		msgs := &diag.List{}
		tree := syntax.ReadTree(source.NewFile("shop.yaml", []byte(text)), msgs)
		tree.Refused = (&diag.List{}).Report("value-kind", source.Place{}, "", "by the schema").Proof()
		if Read(tree, msgs); msgs.Len() > 0 {
			t.Errorf("%s\n%v", text, msgs.Sorted())
		}
	}
}

// A scale that cannot be read leaves its wrench there, and marked as bad.
func TestBadScale(t *testing.T) {
	s, _, msgs := read(t, "wrenches: {w: {range: 20-120 N·m, marks: 1 N·m}}\n")
	if len(msgs) != 1 || !s.Wrenches[0].Bad.IsSet() || s.Find("w") == nil {
		t.Errorf("%v %+v", msgs, s.Wrenches[0])
	}
}
