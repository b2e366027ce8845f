package unit

import (
	"fmt"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// read reads a unit.yaml in which « and » may mark a place, and returns the
// place and what was reported.
func read(t *testing.T, text string, mark quantity.DecimalMark) (*Unit, source.Span, []diag.Diagnostic) {
	t.Helper()
	start := strings.Index(text, "«")
	text = strings.Replace(text, "«", "", 1)
	end := strings.Index(text, "»")
	text = strings.Replace(text, "»", "", 1)
	msgs := &diag.List{}
	tree := syntax.ReadTree(source.NewFile("unit.yaml", []byte(text)), msgs)
	u := Read(tree, mark, msgs)
	return u, source.Span{Start: start, End: end}, msgs.Sorted()
}

const drive = `unit: md-48
title: MD-48 right-angle drive
note: Invented
variants: {early: {serials: 1 to 3999}, late: {serials: 4000 up, title: "Late, short pinion"}}
parts:
  ring-retainer: {name: Ring retainer, count: 1}
  pinion-race: {matched-with: pinion-bearing, mass: 0.6 kg, tray: 3}
  pinion-bearing: {number: 48-1107, count: 2, only: late}
  pinion-nut: {renew: always, only: [early, late]}
fasteners:
  pinion-nut: {thread: M24x1.5, hand: left, seen-from: input end, across-flats: 36 mm, duty: bearing-nut}
  carrier-bolts: {thread: 1/2-13 UNC, class: "8.8", count: 8, pattern: circle, nut-factor: 0.18, nut-factor-source: sheet}
packs:
  gear-pack: {sits: behind the gear race, between: [gear race, case], reading: lash, more-shim: opens, rate: theory, safe-side: more}
  pinion-pack: {more-shim: lowers, rate: 0.651, moves: pinion, gears: bevel}
gears:
  bevel: {teeth: [16, 32], module: 4.5 mm, pressure-angle: 20°, spiral: 35°, shaft-angle: 90°, pitch-radius: {pinion: 36 mm, gear: 72 mm}}
limits:
  output-lash: {band: 0.15 to 0.25 mm, also: 0.006 to 0.010 in, source: manual, by-variant: {late: {band: 0.10 to 0.20 mm, source: letter}}}
  pinion-nut-torque: {band: 100 ±5 N·m, source: manual}
  only-late: {source: manual, by-variant: {late: {band: max 0.05 mm}}}
  pinion-size: {table-by: pinion-mark, nominal: 62.00 mm, per-mark: 0.01 mm, tolerance: ±0.02 mm, plus-mark-means: shorter, marks: -5 to +5, source: manual}
depends-on: {output-lash: [gear-pack, pinion-race, pinion-nut-torque]}
jobs: {overhaul: {cards: [MD48-10, MD48-20]}}
`

func TestRead(t *testing.T) {
	u, _, msgs := read(t, drive, quantity.Point)
	for _, m := range msgs {
		t.Errorf("%s: %s | %s", m.Slug, m.Message, m.Fix)
	}
	check := func(what string, got, want any) {
		t.Helper()
		if fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%s is %v, want %v", what, got, want)
		}
	}
	check("unit", []string{u.ID, u.Title, u.Note}, []string{"md-48", "MD-48 right-angle drive", "Invented"})
	check("variants", u.VariantIDs(), "[early late]")
	check("variant", *u.Variant("early"), Variant{"early", "1 to 3999", "Early", u.Variant("early").At, u.Variant("early").serialsAt})
	check("title of a variant", u.Variant("late").Title, "Late, short pinion")
	check("parts", u.PartIDs(), "[ring-retainer pinion-race pinion-bearing pinion-nut]")
	race := u.Part("pinion-race")
	check("race", []any{race.Name, race.MatchedWith, race.Mass.Text, race.Tray, race.Count, race.Renew, race.Only}, "[Pinion race pinion-bearing 0.6 3 1 false []]")
	check("bearing", []any{u.Part("pinion-bearing").Count, u.Part("pinion-bearing").Only, u.Part("pinion-bearing").Number}, "[2 [late] 48-1107]")
	check("nut", []any{u.Part("pinion-nut").Renew, u.Part("pinion-nut").Only}, "[true [early late]]")
	check("no part", u.Part("nut") == nil, true)
	check("fasteners", u.FastenerIDs(), "[pinion-nut carrier-bolts]")
	nut := u.Fastener("pinion-nut")
	check("nut", []any{nut.Name, nut.Thread, nut.Hand, nut.SeenFrom, nut.AcrossFlats.Text, nut.Duty, nut.Count}, "[Pinion nut M24×1.5 left input end 36 bearing-nut 1]")
	bolts := u.Fastener("carrier-bolts")
	check("bolts", []any{bolts.Thread, bolts.Class, bolts.Count, bolts.Pattern, bolts.NutFactor, bolts.Hand}, "[1/2-13 UNC 8.8 8 circle 9/50 right]")
	check("packs", []any{u.PackIDs(), u.Pack("gear-pack").RateFromGears, u.Pack("gear-pack").SafeSide, u.Pack("pinion-pack").Rate}, "[[gear-pack pinion-pack] true more 651/1000]")
	g := u.Gears[0]
	check("gears", []any{g.Teeth, g.Module.Text, g.Spiral.Value, g.PinionRadius.Text, g.GearRadius.Text}, "[[16 32] 4.5 35/1 36 72]")
	check("limits", u.LimitIDs(), "[output-lash pinion-nut-torque only-late pinion-size]")
	lash := u.Limit("output-lash")
	check("lash", []any{lash.ForVariant("").Band.Low, lash.ForVariant("early").Source, lash.ForVariant("late").Band.Low, lash.ForVariant("late").Source, lash.All.Also.Unit.Symbol, lash.Bad.IsSet()},
		"[3/20 manual 1/10 letter in false]")
	check("place of a band", lash.All.At.Text(), "0.15 to 0.25 mm")
	late := u.Limit("only-late")
	check("only late", []any{late.ForVariant("early") == nil, late.ForVariant("late").Source, late.Bad.IsSet()}, "[true manual false]")
	table := u.Limit("pinion-size").Table
	check("table", []any{table.Mark, table.Nominal.Text, table.PerMark.Value, table.Tolerance.Value, table.Shorter, table.Source}, "[pinion-mark 62.00 1/100 1/50 true manual]")
	check("marks", []any{table.First, table.Last, len(table.Marks())}, "[-5 5 11]")
	check("directions", []any{u.Pack("gear-pack").Between, u.Pack("gear-pack").Reading, u.Pack("gear-pack").MoreShim.Sign(), u.Pack("pinion-pack").MoreShim.Sign()}, "[[gear race case] lash 1 -1]")
	check("what a pack moves", []any{u.Pack("pinion-pack").MovesGear, u.Pack("pinion-pack").Gears, u.Pack("gear-pack").MovesGear, u.Pair("") == g, u.Pair("spur") == nil}, "[pinion bevel  true true]")
	check("dependencies", []any{u.DependsOn[0].Limit, u.DependsOn[0].VoidedBy}, "[output-lash [gear-pack pinion-race pinion-nut-torque]]")
	check("jobs", []any{u.Jobs[0].ID, u.Jobs[0].Title, u.Jobs[0].Cards[1].Number, u.Jobs[0].Cards[1].At.Text()}, "[overhaul Overhaul MD48-20 MD48-20]")
}

func TestReadComma(t *testing.T) {
	u, _, msgs := read(t, "unit: a\ntitle: b\nlimits: {x: {band: \"0,15 to 0,25 mm\", source: m}}\n", quantity.Comma)
	if len(msgs) > 0 || u.Limit("x").All.Band.Low.RatString() != "3/20" {
		t.Errorf("%v", msgs)
	}
}

// Each slip gives one message, at the place between « and ».
func TestSlips(t *testing.T) {
	head := "unit: md-48\ntitle: Drive\nvariants: {early: {}, late: {}}\nparts: {nut: {}, pinion-race: {}}\n"
	for _, c := range []struct{ text, want string }{
		{"unit: «MD-48»\ntitle: Drive\n", "id-malformed: `MD-48` is not an id | write `md-48`"},
		{"unit: md-48\nparts: {«Ring_Retainer»: {}}\n", "id-malformed: `Ring_Retainer` is not an id | write `ring-retainer`"},
		{"unit: md-48\nparts: {«ringretainerringretainerringretainerringre»: {}}\n", "id-malformed: the id is longer than 40 characters | shorten it"},
		{"unit: md-48\nparts: {«2nd-race»: {}}\n", "id-malformed: `2nd-race` is not an id | write small letters and digits, words joined by `-`, a letter first"},
		{"unit: md-48\nvariants: {«aux»: {}}\n", "id-reserved: `aux` is a name that an operating system keeps for itself | choose another, such as `aux-a`"},
		{head + "limits: {«none»: {band: max 1 mm, source: m}}\n", "id-reserved: `none` says that a reading has no limits | choose another"},
		{"unit: md-48\nparts: {race: {matched-with: «pinion-bering»}, pinion-bearing: {}}\n", "part-unknown: no part is called `pinion-bering` | write `pinion-bearing`"},
		{"unit: md-48\nparts: {race: {matched-with: «cup»}}\n", "part-unknown: no part is called `cup` | declare it under `parts`"},
		{head + "fasteners: {bolt: {only: [late, «erly»]}}\n", "variant-unknown: no variant is called `erly` | write `early`"},
		{"unit: md-48\nparts: {nut: {only: «late»}}\n", "variant-unknown: no variant is called `late` | declare it under `variants`"},
		{head + "limits: {a: {band: max 1 mm, source: m, by-variant: {«lat»: {band: max 2 mm}}}}\n", "variant-unknown: no variant is called `lat` | write `late`"},
		{head + "depends-on: {«lash»: [nut]}\n", "limit-unknown: no limit is called `lash` | declare it under `limits`"},
		{head + "limits: {lash: {band: max 1 mm, source: m}}\ndepends-on: {lash: «pinion-rack»}\n", "part-unknown: no part, pack, fastener or limit is called `pinion-rack` | write `pinion-race`"},
		{head + "limits: {a: {band: \"«0.2 mm»\", source: m}}\n", "limits-bare: 0.2 mm is a single value, not limits | write a band, such as `0.2 ±0.01 mm`, or `max` or `at least` before it"},
		{head + "limits: {a: {band: «100 Nm», source: m}}\n", "limits-bare: 100 N·m is a single value, not limits | write a band, such as `100 ±10 N·m`, or write it as `value:` in the torque block to have the shop's tolerance added"},
		{head + "limits: {a: {band: 40 to «50», source: m}}\n", "measure-missing: the unit of measure is missing | write it after the number, as in `40 to 50 mm` or `40 to 50 N·m`"},
		{head + "limits: {nut-torque: {band: 40 to «50», source: m}}\n", "measure-missing: the unit of measure is missing | write it after the number, as in `40 to 50 N·m`"},
		{head + "limits: {torque-arm: {band: 40 to 50 mm, source: m}}\n", "none"},
		{head + "limits: {a: {band: «0.1 to 0.2 mm»}}\n", "source-missing: these limits have no source | add `source:` with title, issue and table of the manual, or `source: shop practice`"},
		{head + "limits: {a: {by-variant: {late: {band: «0.1 to 0.2 mm»}}}}\n", "source-missing: these limits have no source | add `source:` with title, issue and table of the manual, or `source: shop practice`"},
		{head + "limits: {a: {band: «9 to 11 N·m»}}\n", "torque-source-missing: this torque has no source | add `source:` with title, issue and table of the manual, or `source: shop practice`"},
		{head + "fasteners: {bolt: {nut-factor: 0.2}}\n", "source-missing: the nut factor has no source | add `nut-factor-source:` with where it comes from"},
		{head + "limits: {a: {band: «0.25 to 0.15» mm, source: m}}\n", "limits-reversed: the limits are reversed: 0.25 is more than 0.15 | write `0.15 to 0.25 mm`"},
		{head + "limits: {a: {band: 0.12 to 0.15 mm, also: «0.005 to 0.007 in», source: m}}\n", "also-disagrees: 0.005 to 0.007 in is not 0.12 to 0.15 mm | check both again: 0.12 to 0.15 mm is 0.005 to 0.006 in"},
		{head + "limits: {a: {band: 5 to 15 lbf·in, also: «1 to 2 N·m», source: m}}\n", "also-wider: 1 to 2 N·m reaches past 5 to 15 lbf·in | nothing to fix if the source has both: the cards use the first alone"},
		{head + "limits: {a: {band: 0.12 to 0.15 mm, also: 1 to 2 «N·m», source: m}}\n", "measure-kind: N·m measures torque, not length"},
		{head + "limits: {a: {band: 0.12 to 0.15 mm, source: m, by-variant: {late: {band: 1 to 2 «N·m»}}}}\n", "measure-kind: N·m measures torque, not length"},
		{head + "fasteners: {bolt: {across-flats: 36 «kg»}}\n", "measure-kind: kg measures mass, not length"},
		{head + "gears: {bevel: {spiral: 35 «mm»}}\n", "measure-kind: mm measures length, not angle"},
		{head + "packs: {p: {rate: «theroy»}}\n", "quantity-malformed: "},
		{head + "packs: {p: {more-shim: closes, rate: «-1»}}\n", "quantity-malformed: a rate must be greater than zero, without a sign | write how far the reading moves; `more-shim:` says which way"},
		{head + "gears: {bevel: {}}\npacks: {p: {gears: «bevle»}}\n", "part-unknown: no gear pair is called `bevle` | write `bevel`"},
		{head + "limits: {a: {table-by: m, nominal: 6 mm, per-mark: 0.01 mm, tolerance: 0.1 mm, plus-mark-means: longer, marks: «5 to -5», source: m}}\n", "limits-reversed: the marks are reversed: 5 is more than -5 | write the lower mark first"},
	} {
		_, at, msgs := read(t, c.text, quantity.Point)
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
		"unit: md-48\ntitle: Drive\nvariants: {early: {}, late: {}}\nparts: {nut: {}, pinion-race: {}}\nfasteners: {bolt: {only: \"late, early\"}}\nlimits: {a: {band: max 1 mm, source: m}}\ndepends-on:\n  a: nut, pinion-race\n",
		"unit: []\ntitle: {a: b}\nparts: [a]\nfasteners: b\nlimits: {a: 1, b: {band: [1]}, c: {by-variant: {d: 2}}, e: {table-by: x}}\ndepends-on: 1\njobs: {a: 1}\ngears: {a: {teeth: 1}}\nvariants: {d: 1}\n",
	} {
		msgs := &diag.List{}
		tree := syntax.ReadTree(source.NewFile("unit.yaml", []byte(text)), msgs)
		tree.Refused = (&diag.List{}).Report("value-kind", source.Place{}, "", "by the schema").Proof()
		if Read(tree, quantity.Point, msgs); msgs.Len() > 0 {
			t.Errorf("%s\n%v", text, msgs.Sorted())
		}
	}
}

// A limit that cannot be read is there all the same, and marked as bad.
func TestBadLimit(t *testing.T) {
	for text, messages := range map[string]int{
		"band: 0.2 furlong, source: m":                   1,
		"band: 0.2 mm, source: m":                        1,
		"bnad: 0.1 to 0.2 mm, source: m":                 1, // the schema says it first, where it is asked
		"table-by: mark, nominal: 6 mm, source: m":       1,
		"source: m, by-variant: {late: {band: 2 to mm}}": 1,
	} {
		u, _, msgs := read(t, "unit: a\ntitle: b\nvariants: {late: {}}\nlimits: {x: {"+text+"}}\n", quantity.Point)
		if len(msgs) != messages || !u.Limit("x").Bad.IsSet() || u.Limit("x").ForVariant("late") != nil {
			t.Errorf("%s: %v, bad %v", text, msgs, u.Limit("x").Bad.IsSet())
		}
	}
}

func TestNil(t *testing.T) {
	if Read(nil, quantity.Point, &diag.List{}) != nil || FromNode(nil, nil) != nil {
		t.Error("nothing gives a unit")
	}
}
