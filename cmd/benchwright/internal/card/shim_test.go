package card

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

const (
	shimShop = `shop: Fallow Lane Drive Works
gauges:
  dial: {name: Dial indicator, resolution: 0.01 mm, range: 0 to 10 mm}
  inch-dial: {name: Inch dial, resolution: 0.001 in, range: 0 to 0.5 in}
  micrometer: {name: Micrometer, resolution: 0.01 mm, range: 0 to 25 mm}
  inch-micrometer: {name: Inch micrometer, resolution: 0.0001 in, range: 0 to 1 in}
stock:
  steel: {name: Steel shims, place: cabinet 2, shims: [0.10 mm, 0.12 mm, 0.15 mm, 0.18 mm, 0.30 mm, 0.40 mm, 0.50 mm]}
  inch: {name: Inch shims, place: cabinet 3, shims: [0.002 in, 0.003 in, 0.005 in, 0.010 in, 0.020 in]}
`
	shimUnit = `unit: md-48
title: MD-48 right-angle drive
packs:
  gear-pack: {sits: behind the gear race, reading: lash, more-shim: opens, rate: theory, moves: gear, safe-side: more}
  pinion-pack: {sits: behind the pinion race, reading: gap, more-shim: closes, rate: 1, safe-side: less}
gears:
  bevel: {teeth: [16, 32], pressure-angle: 20°, spiral: 35°, shaft-angle: 90°}
limits:
  lash: {band: 0.15 to 0.25 mm, source: manual}
  gap: {band: 0.37 to 0.43 mm, source: manual}
`
)

// shimOf makes the card of a reading and a pack and returns the pack.
func shimOf(t *testing.T, expect, gauge, block string) *Shim {
	t.Helper()
	text := testFront + "## Work\n\n### Read {#read}\n\n```measurement\nof: a\nlimits: none\nbecause: b\nexpect: " + expect + "\ngauge: " + gauge +
		"\n```\n\n### Make\n\n```shim\n" + block + "\n```\n"
	c, messages := cardOf(t, shimShop, shimUnit, text, "")
	if len(messages) > 0 {
		t.Fatal(messages)
	}
	s, ok := c.Steps()[1].Items[0].(*Shim)
	if !ok || len(s.Rows) == 0 {
		t.Fatalf("no pack: %+v", s)
	}
	return s
}

func rowsOf(s *Shim) (out []string) {
	for _, row := range s.Rows {
		var shims []string
		for _, l := range row.Layers() {
			shims = append(shims, quantity.Decimal(l, quantity.Point))
		}
		ends := quantity.Marks{Scale: s.Read.Gauge.Scale, Low: row.Low, High: row.High}
		out = append(out, strings.ReplaceAll(fmt.Sprintf("%s: %s; %s", ends.Print(quantity.Point), strings.Join(shims, " "), row.Over.Print(quantity.Point)), "\u00a0", " "))
	}
	return out
}

// The theory's rate for the gear of 16/32 teeth, 20° and 35° is 0.7947,
// recomputed by hand: 2·tan 20°·(2/√5)/cos 35°. Aim 0.20, set-up pack 1.00.
func TestShimTable(t *testing.T) {
	s := shimOf(t, "0.03 to 0.38 mm", "dial", `pack: gear-pack
stock: steel
aim: lash
from: {reading: read, with-pack: 1.00 mm}
within: 0.04 mm
over-pack: ±0.01 mm
round: 0.05 mm
at-most: 3
micrometer: micrometer`)
	if got := s.Rate.FloatString(4); got != "0.7948" && got != "0.7947" {
		t.Errorf("the rate is %s", got)
	}
	want := []string{
		"0.03 to 0.06 mm: 0.5 0.3 0.4; 1.19 to 1.21 mm",
		"0.07 to 0.10 mm: 0.5 0.15 0.5; 1.14 to 1.16 mm",
		"0.11 to 0.14 mm: 0.5 0.1 0.5; 1.09 to 1.11 mm",
		"0.15 to 0.18 mm: 0.5 0.15 0.4; 1.04 to 1.06 mm",
		"0.19 to 0.21 mm: 0.5 0.5; 0.99 to 1.01 mm",
		"0.22 to 0.25 mm: 0.5 0.15 0.3; 0.94 to 0.96 mm",
		"0.26 to 0.29 mm: 0.5 0.4; 0.89 to 0.91 mm",
		"0.30 to 0.33 mm: 0.4 0.15 0.3; 0.84 to 0.86 mm",
		"0.34 to 0.37 mm: 0.5 0.3; 0.79 to 0.81 mm",
		"0.38 to 0.38 mm: 0.5 0.1 0.15; 0.74 to 0.76 mm",
	}
	if got := rowsOf(s); strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s", strings.Join(got, "\n"))
	}
}

// Stock and micrometer in inches, dial in millimetres, and the other way round:
// every mark of the dial has its row, and every pack that the micrometer
// accepts brings the reading within rate × within of the aim.
func TestShimTwoUnits(t *testing.T) {
	for _, c := range []struct{ expect, gauge, stock, micrometer, within, over string }{
		{"0.20 to 0.60 mm", "dial", "inch", "inch-micrometer", "0.001 in", "0.0003 in"},
		{"0.20 to 0.60 mm", "dial", "inch", "micrometer", "0.02 mm", "0.005 mm"},
		{"0.20 to 0.60 mm", "dial", "steel", "inch-micrometer", "0.02 mm", "0.01 mm"},
		{"0.008 to 0.024 in", "inch-dial", "steel", "micrometer", "0.0012 in", "0.01 mm"},
	} {
		s := shimOf(t, c.expect, c.gauge, "pack: pinion-pack\nstock: "+c.stock+"\naim: gap\nfrom: {reading: read, with-pack: 1.00 mm}\nwithin: "+c.within+"\nover-pack: "+c.over+"\nat-most: 7\nmicrometer: "+c.micrometer)
		read, over := s.Read.Gauge.Scale, s.Micrometer.Scale
		next := s.Read.Marks.Low
		within := quantity.Convert(s.Within.Value, s.Within.Unit, read.Unit)
		for _, row := range s.Rows {
			if row.Low.Cmp(next) != 0 {
				t.Fatalf("%+v: a hole before %s", c, row.Low.FloatString(4))
			}
			next = new(big.Rat).Add(row.High, read.Step)
			for _, mark := range []*big.Rat{row.Low, row.High} {
				for _, pack := range []*big.Rat{row.Over.Low, row.Over.High} {
					after := quantity.Convert(pack, over.Unit, read.Unit)
					after.Sub(after, quantity.Convert(big.NewRat(1, 1), s.From.WithPack.Unit, read.Unit))
					after.Sub(mark, after) // a rate of −1
					if d := after.Sub(after, s.Aim); d.Abs(d).Cmp(within) > 0 {
						t.Errorf("%+v: reading %s, pack %s: off by %s", c, mark.FloatString(4), pack.FloatString(4), d.FloatString(5))
					}
				}
			}
		}
		if last := s.Read.Marks.High; next.Cmp(new(big.Rat).Add(last, read.Step)) != 0 {
			t.Errorf("%+v: the table ends before %s", c, last.FloatString(4))
		}
	}
}
