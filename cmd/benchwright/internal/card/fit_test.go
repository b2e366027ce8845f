package card

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

const fitShop = `shop: Fallow Lane Drive Works
tools:
  oven: {name: Oven, hazards: [hot]}
  press: {name: Press, ram: 60 mm, hazards: [press]}
gauges:
  probe: {name: Contact thermometer, resolution: 1 °C, range: -80 to 200 °C}
  fahrenheit: {name: Old thermometer, resolution: 2 °F, range: 0 to 400 °F}
  press-gauge: {name: Press gauge, resolution: 0.1 MPa, range: 0 to 60 MPa}
  force-gauge: {name: Force gauge, resolution: 0.5 kN, range: 0 to 200 kN}
`

// The expansions are Callister's; that of steel and the moduli are from memory.
const fitUnit = `unit: md-48
title: MD-48 right-angle drive
parts:
  case: {name: Case, max-heat: 120 °C, max-heat-source: paint sheet, material: {expansion: 11.4e-6 /°C, modulus: 105 GPa, poisson: 0.26, source: Callister}}
  cover: {name: Cover, max-heat: 150 °C, max-heat-source: paint sheet, material: {expansion: 21.5e-6 /°C, source: Callister}}
  race: {name: Race, kind: race, material: {expansion: 12e-6 /°C, modulus: 207 GPa, poisson: 0.3, source: m}}
  bearing: {name: Bearing, kind: bearing}
  seal: {name: Seal, kind: seal, max-heat: 100 °C, max-heat-source: seal sheet}
  inch-hub: {name: Hub, max-heat: 600 °F, max-heat-source: m, material: {expansion: 12.8e-6 /°F, source: textbook}}
`

// fitOf makes the fit block of one step.
func fitOf(t *testing.T, yaml string) (*Fit, []string) {
	t.Helper()
	c, messages := cardOf(t, fitShop, fitUnit, testFront+"\n## Work\n\n### A\n\n"+block("fit", yaml), "")
	return c.Steps()[0].Items[0].(*Fit), messages
}

const (
	raceInCase = "part: race\ninto: case\ndiameter: 62 mm\ninterference: 0.010 to 0.035 mm\nsource: m\n"
	raceOut    = "part: race\nout-of: %s\ndiameter: 62 mm\ninterference: 0.010 to 0.035 mm\nsource: m\n"
)

func TestFitTemperature(t *testing.T) {
	for _, c := range []struct{ name, yaml, want string }{
		{"as the manual has it", "part: bearing\nonto: the shaft\nheat: {to: 90 to 110 °C, source: m, gauge: probe}", "90 to 110 °C"},
		{"on another scale, inward", "part: bearing\nonto: the shaft\nheat: {to: 90 to 110 °C, source: m, gauge: fahrenheit}", "194 to 230 °F"},
		{"open upward, closed by the cap", "part: bearing\nonto: the shaft\nheat: {to: at least 90 °C, source: m, gauge: probe}", "90 to 120 °C"},
		// (0.035 + 0.020)/(11.4e-6 × 62) = 77.8, from 20 °C.
		{"gray iron", raceInCase + "heat: {clearance: 0.02 mm, room: 20 °C, gauge: probe}", "98 to 120 °C"},
		{"on another scale", raceInCase + "heat: {clearance: 0.02 mm, room: 20 °C, gauge: fahrenheit}", "210 to 248 °F"}, // from 208.06
		{"a seal in the heat", raceInCase + "heat: {clearance: 0.02 mm, room: 20 °C, gauge: probe, in-the-heat: [seal]}", "98 to 100 °C"},
		{"nothing names a thermometer", raceInCase + "heat: {clearance: 0.02 mm, room: 20 °C}", "98 to 120 °C"},
		// 62 N7/h6 has 0.039 mm at most: 0.059/(11.4e-6 × 62) = 83.5.
		{"an ISO fit", "part: race\ninto: case\ninterference: 62 N7/h6\nsource: m\nheat: {clearance: 0.02 mm, room: 20 °C, gauge: probe}", "104 to 120 °C"},
		// The race stays in the case and follows it: too near, so α of the case alone.
		{"out of gray iron", fmt.Sprintf(raceOut, "case") + "heat: {clearance: 0.02 mm, room: 20 °C, gauge: probe}", "98 to 120 °C"},
		// Aluminum 356.0: only the difference counts: 0.055/(9.5e-6 × 62) = 93.4.
		{"out of aluminum", fmt.Sprintf(raceOut, "cover") + "heat: {clearance: 0.02 mm, room: 20 °C, gauge: probe}", "114 to 120 °C"},
		// The race chilled to −20 °C is 0.02976 mm smaller: 0.02524/… = 35.7.
		{"heated and chilled", raceInCase + "heat: {clearance: 0.02 mm, room: 20 °C, gauge: probe}\nchill: {to: max −20 °C, source: m, gauge: probe}", "56 to 120 °C"},
		// The textbook's aluminum hub of 1 in: 234.4 °F above 70 °F.
		{"inches", "part: inch-hub\nonto: the shaft\ndiameter: 1.000 in\ninterference: max 0.0010 in\nsource: m\nheat: {clearance: 0.0020 in, room: 70 °F, gauge: fahrenheit}", "306 to 400 °F"},
	} {
		f, messages := fitOf(t, c.yaml)
		if got := onGaugeOf(f.Heat.Measurement); got != c.want || len(messages) > 0 {
			t.Errorf("%s: %s, want %s %q", c.name, got, c.want, messages)
		}
	}
	// 0.055/(12e-6 × 62) = 73.9 below 15 °C.
	f, _ := fitOf(t, raceInCase+"chill: {clearance: 0.02 mm, room: 15 °C, gauge: probe}")
	if got := onGaugeOf(f.Chill.Measurement); got != "max −59 °C" {
		t.Errorf("chilled: %s", got)
	}
}

// onGaugeOf is the limits as they stand on the gauge, or as written without one.
func onGaugeOf(m *Measurement) string {
	switch {
	case m.Marks != nil:
		return strings.ReplaceAll(m.Marks.Print(quantity.Point), "\u00a0", " ")
	case m.Limit != nil:
		return strings.ReplaceAll(m.Limit.Band.Range(quantity.Point), "\u00a0", " ")
	}
	return ""
}

// A part above its cap has no temperature, and a rule says what it needed.
func TestFitAboveTheCap(t *testing.T) {
	f, messages := fitOf(t, "part: race\ninto: case\ndiameter: 62 mm\ninterference: max 0.06 mm\nsource: m\nheat: {clearance: 0.02 mm, room: 20 °C, gauge: probe}")
	if f.Heat.Limit != nil || f.Heat.Need == nil || f.Heat.Need.FloatString(1) != "133.2" || f.Heat.Cap.At.Name != "case" || len(messages) > 0 {
		t.Errorf("%v, need %v, %q", f.Heat.Limit, f.Heat.Need, messages)
	}
	// Said in whole degrees: the need rounded up, a cap of 600 °F, 315.6 °C, down.
	if got := f.Heat.NeedDegrees(quantity.Point); got != "134\u00a0°C" {
		t.Errorf("the need of 133.2 °C is said to be %s", got)
	}
	f, _ = fitOf(t, "part: inch-hub\nonto: the shaft\nheat: {to: 90 to 110 °C, source: m, gauge: probe}")
	if got := f.Heat.Cap.Degrees(quantity.Point); got != "315\u00a0°C" {
		t.Errorf("the cap of 600 °F is said to be %s", got)
	}
	f, _ = fitOf(t, fmt.Sprintf(raceOut, "cover")+"heat: {to: 90 to 110 °C, source: m, gauge: probe}")
	if f.Heat.Cap.At.Name != "race" || f.Heat.Cap.Highest.Cmp(big.NewRat(120, 1)) != 0 || f.Heat.Fast {
		t.Errorf("the race that sits in the cover caps it: %+v", f.Heat.Cap)
	}
	f, _ = fitOf(t, fmt.Sprintf(raceOut, "case")+"heat: {to: 90 to 110 °C, source: m, gauge: probe}")
	if !f.Heat.Fast {
		t.Error("steel in gray iron comes apart only fast")
	}
}

func TestFitForce(t *testing.T) {
	const press = "part: race\ninto: case\nhome: x\npress: {with: press, force: 20 to 40 kN, source: m, gauge: %s}"
	for gauge, want := range map[string]string{
		"press-gauge": "7.1 to 14.1 MPa", // 20 and 40 kN on 2827.43 mm²: 7.07 and 14.15
		"force-gauge": "20.0 to 40.0 kN",
	} {
		f, messages := fitOf(t, fmt.Sprintf(press, gauge))
		if got := onGaugeOf(f.Press.Measurement); got != want || len(messages) > 0 {
			t.Errorf("%s: %s, want %s %q", gauge, got, want, messages)
		}
	}
	f, _ := fitOf(t, "part: race\ninto: case\npress: {with: press, gauge: press-gauge}")
	if f.Press.HasReading || f.Press.Gauge == nil || len(f.Readings()) != 0 {
		t.Error("a gauge that is only watched is a reading")
	}
}

// A computed force on the marks of the press gauge lies inside what the thick
// cylinders give, here in floating point and written out.
func TestFitForceProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 4))
	for range 60 {
		d, least, more := 40+r.Int64N(80), 1+r.Int64N(20), 5+r.Int64N(40)
		outside, bore, length := d+20+r.Int64N(60), d-8-r.Int64N(20), 10+r.Int64N(30)
		f, messages := fitOf(t, fmt.Sprintf("part: race\ninto: case\ndiameter: %d mm\ninterference: 0.%03d to 0.%03d mm\nsource: m\npress: {with: press, gauge: press-gauge, friction: [0.10, 0.15], friction-source: m, length: %d mm, outside: %d mm, bore: %d mm}",
			d, least, least+more, length, outside, bore))
		m := f.Press.Marks
		if len(messages) > 0 {
			t.Fatal(messages)
		}
		if m == nil {
			continue // no mark between, which a rule says
		}
		s, o, b := float64(d), float64(outside), float64(bore)
		give := s * (((o*o+s*s)/(o*o-s*s)+0.26)/105000 + ((s*s+b*b)/(s*s-b*b)-0.3)/207000)
		gauge := func(delta int64, friction float64) float64 {
			return friction * float64(delta) / 1000 / give * math.Pi * s * float64(length) / (math.Pi * 900)
		}
		low, _ := m.Low.Float64()
		high, _ := m.High.Float64()
		if lo, hi := gauge(least, 0.10), gauge(least+more, 0.15); low < lo-1e-9 || high > hi+1e-9 || low > lo+0.1+1e-9 || high < hi-0.1-1e-9 {
			t.Fatalf("the gauge reads %v to %v, the cylinders give %v to %v", low, high, lo, hi)
		}
	}
}

func TestFitCauses(t *testing.T) {
	f, _ := fitOf(t, "part: seal\ninto: cover\nsealant: a film\nheat: {to: max 90 °C, source: m, with: oven}\nchill: {to: max 0 °C, source: m}\npress: {with: press}")
	var ids []string
	for _, c := range f.causes() {
		ids = append(ids, c.ID)
	}
	if want := []string{"hot", "hot", "cold", "press", "press", "chemical"}; !slices.Equal(ids, want) {
		t.Errorf("causes %q, want %q", ids, want)
	}
}
