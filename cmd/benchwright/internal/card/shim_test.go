package card

import (
	"fmt"
	"math/big"
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/bench"
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
  left-pack: {safe-side: more}
gears:
  bevel: {teeth: [16, 32], pressure-angle: 20°, spiral: 35°, shaft-angle: 90°, pitch-radius: {pinion: 36 mm, gear: 72 mm}}
limits:
  lash: {band: 0.15 to 0.25 mm, source: manual, holds: {measured: tangent, at: pitch-radius, turned: gear}}
  height: {table-by: pinion-mark, nominal: 8.00 mm, per-mark: 0.01 mm, tolerance: ±0.05 mm, plus-mark-means: longer, marks: -5 to 5, source: manual}
  gap: {band: 0.37 to 0.43 mm, source: manual}
`
)

// shimOf makes the card of some readings and a pack and returns the pack. A
// reading is its step, what it expects and its gauge, with further keys behind.
func shimOf(t *testing.T, readings [][3]string, block string) *Shim {
	t.Helper()
	text := testFront + "## Work\n\n"
	for _, r := range readings {
		kind := "measurement"
		if strings.Contains(r[2], "turned:") {
			kind = "lash"
		}
		text += "### Read {#" + r[0] + "}\n\n```" + kind + "\nof: " + r[0] + "\nlimits: none\nbecause: b\nexpect: " + r[1] + "\ngauge: " + r[2] + "\n```\n\n"
	}
	text += "### Make\n\n```shim\n" + block + "\n```\n"
	c, messages := cardOf(t, shimShop, shimUnit, text, "")
	if len(messages) > 0 {
		t.Fatal(messages)
	}
	s, ok := c.Steps()[len(readings)].Items[0].(*Shim)
	if !ok || len(s.Packs) == 0 || s.Worked.Pack == nil {
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
		ends := quantity.Marks{Scale: s.Inputs[0].Scale, Low: row.Low, High: row.High}
		out = append(out, strings.ReplaceAll(fmt.Sprintf("%s: %s; %s", ends.Print(quantity.Point), strings.Join(shims, " "), row.Over.Print(quantity.Point)), "\u00a0", " "))
	}
	return out
}

const gearPack = `pack: gear-pack
stock: steel
aim: lash
from: {reading: read, with-pack: 1.00 mm}
within: 0.04 mm
over-pack: ±0.01 mm
round: 0.05 mm
at-most: 3
micrometer: micrometer`

// The theory's rate for the gear of 16/32 teeth, 20° and 35° is 0.7947,
// recomputed by hand: 2·tan 20°·(2/√5)/cos 35°. Aim 0.20, set-up pack 1.00.
func TestShimTable(t *testing.T) {
	s := shimOf(t, [][3]string{{"read", "0.03 to 0.38 mm", "dial\nmeasured: tangent\nat: pitch-radius\nturned: gear"}}, gearPack)
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

// At twice the pitch radius the dial shows twice the backlash: the same packs
// stand beside readings twice as large.
func TestShimAtTheDial(t *testing.T) {
	s := shimOf(t, [][3]string{{"read", "0.06 to 0.76 mm", "dial\nmeasured: tangent\nat: 144 mm\nturned: gear"}}, gearPack)
	if s.Aim.Cmp(big.NewRat(40, 100)) != 0 || s.Limits.High.Cmp(big.NewRat(50, 100)) != 0 {
		t.Errorf("aim %s, limits to %s", s.Aim.FloatString(3), s.Limits.High.FloatString(3))
	}
	for _, c := range [][2]int64{{6, 120}, {24, 110}, {40, 100}, {76, 75}} {
		at := big.NewRat(c[0], 100)
		n := slices.IndexFunc(s.Rows, func(r ShimRow) bool { return r.Low.Cmp(at) <= 0 && at.Cmp(r.High) <= 0 })
		if n < 0 || s.Rows[n].Total.Cmp(big.NewRat(c[1], 100)) != 0 {
			t.Errorf("at %d: row %d", c[0], n)
		}
	}
}

// Every pair of readings has a cell, and what the micrometer accepts there
// brings the reading within rate × within of the aim: old pack as measured,
// lengths, and the mark that an aim follows.
func TestShimGrids(t *testing.T) {
	for _, c := range []struct {
		why      string
		readings [][3]string
		from     string
		after    func(at []*big.Rat, pack *big.Rat) *big.Rat // the reading with the pack in place
		aim      func(at []*big.Rat) *big.Rat
	}{
		{"old pack and gap", [][3]string{{"old", "0.80 to 1.20 mm", "micrometer"}, {"read", "0.18 to 0.62 mm", "dial"}},
			"aim: gap\nfrom: {reading: read, old-pack: old}",
			func(at []*big.Rat, pack *big.Rat) *big.Rat { return sumOf(at[1], at[0], pack, -1) }, fixed("0.40")},
		{"two lengths and a fixed one", [][3]string{{"case", "12.00 to 12.20 mm", "micrometer"}, {"ring", "10.00 to 10.12 mm", "micrometer"}},
			"aim: gap\nfrom: {plus: [case], minus: [ring, 0.60 mm]}",
			func(at []*big.Rat, pack *big.Rat) *big.Rat {
				return sumOf(at[0], rat("-0.60"), sumOf(at[1], new(big.Rat), pack, 1), -1)
			}, fixed("0.40")},
		{"the mark of the pinion and a gap", [][3]string{{"read", "7.80 to 8.30 mm", "dial"}},
			"aim: height\nfrom: {reading: read, with-pack: 1.00 mm}",
			func(at []*big.Rat, pack *big.Rat) *big.Rat { return sumOf(at[0], rat("1.00"), pack, -1) },
			func(at []*big.Rat) *big.Rat {
				return sumOf(rat("8.00"), new(big.Rat), new(big.Rat).Mul(at[1], rat("0.01")), 1)
			}},
		{"the mark, an old pack and a gap", [][3]string{{"old", "0.90 to 1.10 mm", "micrometer"}, {"read", "7.90 to 8.10 mm", "dial"}},
			"aim: height\nfrom: {reading: read, old-pack: old}",
			func(at []*big.Rat, pack *big.Rat) *big.Rat { return sumOf(at[2], at[1], pack, -1) },
			func(at []*big.Rat) *big.Rat {
				return sumOf(rat("8.00"), new(big.Rat), new(big.Rat).Mul(at[0], rat("0.01")), 1)
			}},
	} {
		s := shimOf(t, c.readings, "pack: pinion-pack\nstock: steel\nwithin: 0.03 mm\nover-pack: ±0.01 mm\nround: 0.01 mm\nat-most: 8\nmicrometer: micrometer\n"+c.from)
		within, pairs := rat("0.03"), 0
		visit(s.Inputs, nil, func(at []*big.Rat) {
			var p *bench.Pack
			if s.Chain == nil {
				p = s.Grid.At(at[0], at[1])
			} else {
				a, b := s.Inputs[0].Axis, s.Inputs[1].Axis
				row := s.Chain.Letters[bench.SpanAt(s.Chain.Letters, a, b, at[0], at[1])]
				p = s.Grid.At(row.Low, at[2])
			}
			if p == nil {
				t.Fatalf("%s: no cell for %v", c.why, at)
			}
			pairs++
			for _, pack := range []*big.Rat{p.From, p.To} {
				d := new(big.Rat).Sub(c.after(at, pack), c.aim(at))
				if d.Abs(d).Cmp(within) > 0 {
					t.Fatalf("%s: %v with a pack of %s is off by %s", c.why, at, pack.FloatString(3), d.FloatString(3))
				}
			}
		})
		if pairs == 0 || len(s.Packs) == 0 || s.Worked.Pack == nil {
			t.Errorf("%s: %d readings", c.why, pairs)
		}
	}
}

// visit calls f with every combination of the inputs' marks.
func visit(inputs []*ShimInput, at []*big.Rat, f func([]*big.Rat)) {
	if len(inputs) == 0 {
		f(at)
		return
	}
	for _, m := range inputs[0].Axis.Marks {
		visit(inputs[1:], append(at[:len(at):len(at)], m), f)
	}
}

func rat(text string) *big.Rat { r, _ := new(big.Rat).SetString(text); return r }

func fixed(text string) func([]*big.Rat) *big.Rat {
	return func([]*big.Rat) *big.Rat { return rat(text) }
}

// sumOf is a + b + sign × c.
func sumOf(a, b, c *big.Rat, sign int64) *big.Rat {
	out := new(big.Rat).Mul(c, big.NewRat(sign, 1))
	return out.Add(out, a).Add(out, b)
}

// TM 9-2320-280-34 p. 19-12 table 9-1: change = (old − new) × 0.001 in; old −3,
// new +2 takes 0.005 in out. In three ways: old mark, new mark, old pack.
func TestShimMarks(t *testing.T) {
	s := shimOf(t, [][3]string{{"old", "0.045 to 0.055 in", "inch-dial"}}, `pack: pinion-pack
stock: inch
from: {old-mark: old mark, new-mark: new mark, marks: -5 to 5, per-mark: -0.001 in, old-pack: old}
within: 0.0015 in
over-pack: ±0.0005 in
round: 0.001 in
at-most: 8
micrometer: inch-micrometer`)
	a, b := s.Inputs[0].Axis, s.Inputs[1].Axis
	for _, c := range []struct{ old, now, pack, want string }{{"-3", "2", "0.050", "0.045"}, {"2", "-3", "0.050", "0.055"}, {"1", "1", "0.048", "0.048"}} {
		row := s.Chain.Letters[bench.SpanAt(s.Chain.Letters, a, b, rat(c.old), rat(c.now))]
		p := s.Grid.At(row.Low, rat(c.pack))
		if p == nil {
			t.Fatalf("%+v: no pack", c)
		}
		if d := new(big.Rat).Sub(p.Total, rat(c.want)); d.Abs(d).Cmp(rat("0.001")) > 0 {
			t.Errorf("%+v: %s", c, p.Total.FloatString(4))
		}
	}
	// One mark, for a pack whose thickness at mark 0 is known.
	s = shimOf(t, nil, `pack: pinion-pack
stock: steel
from: {new-mark: mark on the pinion, marks: -5 to 5, per-mark: 0.01 mm, with-pack: 1.00 mm}
within: 0.01 mm
over-pack: ±0.01 mm
at-most: 8
micrometer: micrometer`)
	for _, row := range s.Rows {
		want := new(big.Rat).Mul(row.Low, rat("0.01"))
		if want.Add(want, rat("1.00")).Cmp(row.Total) != 0 {
			t.Errorf("mark %s: %s", row.Low.FloatString(0), row.Total.FloatString(3))
		}
	}
}

// A step from the old pack: for every one that was measured both packs come
// within what is allowed of it, on either side, and are never the same.
func TestShimStep(t *testing.T) {
	s := shimOf(t, [][3]string{{"old", "0.80 to 1.20 mm", "micrometer"}}, `pack: pinion-pack
stock: steel
from: {old-pack: old, by: 0.05 mm}
within: 0.04 mm
over-pack: ±0.01 mm
round: 0.05 mm
at-most: 4
micrometer: micrometer`)
	if s.Grid == nil || len(s.Grid.Cols) != 2 {
		t.Fatalf("no grid of two columns: %+v", s.Miss)
	}
	for _, old := range s.Inputs[0].Axis.Marks {
		thinner, thicker := s.Grid.At(old, rat("-1")), s.Grid.At(old, rat("1"))
		for _, c := range []struct {
			pack *bench.Pack
			sign int64
		}{{thinner, -1}, {thicker, 1}} {
			want := sumOf(old, new(big.Rat), rat("0.05"), c.sign)
			for _, made := range []*big.Rat{c.pack.From, c.pack.To} {
				if d := new(big.Rat).Sub(made, want); d.Abs(d).Cmp(rat("0.04")) > 0 {
					t.Errorf("old pack %s: %s for %s", old.FloatString(2), made.FloatString(3), want.FloatString(3))
				}
			}
		}
		if thinner.Total.Cmp(old) >= 0 || thicker.Total.Cmp(old) <= 0 {
			t.Errorf("old pack %s: %s and %s", old.FloatString(2), thinner.Total.FloatString(3), thicker.Total.FloatString(3))
		}
	}
}

// TM 9-2320-289-34 p. 6-22: thicker on one side, thinner on the other by the
// same amount.
func TestShimTwoPacks(t *testing.T) {
	s := shimOf(t, [][3]string{{"read", "0.10 to 0.50 mm", "dial"}}, `pack: pinion-pack
stock: steel
aim: gap
from: {reading: read, with-pack: 1.00 mm}
other-pack: {pack: left-pack, with-pack: 1.20 mm}
within: 0.03 mm
over-pack: ±0.005 mm
round: 0.05 mm
at-most: 5
micrometer: micrometer`)
	for _, row := range s.Rows {
		if sum := new(big.Rat).Add(row.Total, row.Other.Total); sum.Cmp(rat("2.20")) != 0 {
			t.Errorf("%s and %s", row.Total.FloatString(2), row.Other.Total.FloatString(2))
		}
	}
}

// Stock and micrometer in inches, dial in millimeters, and the other way around:
// every mark of the dial has its row, and every pack that the micrometer
// accepts brings the reading within rate × within of the aim.
func TestShimTwoUnits(t *testing.T) {
	for _, c := range []struct{ expect, gauge, stock, micrometer, within, over string }{
		{"0.20 to 0.60 mm", "dial", "inch", "inch-micrometer", "0.001 in", "0.0003 in"},
		{"0.20 to 0.60 mm", "dial", "inch", "micrometer", "0.02 mm", "0.005 mm"},
		{"0.20 to 0.60 mm", "dial", "steel", "inch-micrometer", "0.02 mm", "0.01 mm"},
		{"0.008 to 0.024 in", "inch-dial", "steel", "micrometer", "0.0012 in", "0.01 mm"},
	} {
		s := shimOf(t, [][3]string{{"read", c.expect, c.gauge}}, "pack: pinion-pack\nstock: "+c.stock+"\naim: gap\nfrom: {reading: read, with-pack: 1.00 mm}\nwithin: "+c.within+"\nover-pack: "+c.over+"\nat-most: 7\nmicrometer: "+c.micrometer)
		read, over := s.Inputs[0].Scale, s.Micrometer.Scale
		marks := s.Inputs[0].Axis.Marks
		next := marks[0]
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
					if d := after.Sub(after, quantity.Convert(s.Aim, s.Unit, read.Unit)); d.Abs(d).Cmp(within) > 0 {
						t.Errorf("%+v: reading %s, pack %s: off by %s", c, mark.FloatString(4), pack.FloatString(4), d.FloatString(5))
					}
				}
			}
		}
		if last := marks[len(marks)-1]; next.Cmp(new(big.Rat).Add(last, read.Step)) != 0 {
			t.Errorf("%+v: the table ends before %s", c, last.FloatString(4))
		}
	}
}
