package card

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/cmd/benchwright/internal/workspace"
)

// A shop and a unit that the tests of this package share.
const (
	testShop = `shop: Fallow Lane Drive Works
torque-tolerance: 5 %
hazard-rules: {press: "Shop rule 4, press work"}
tools:
  breaker-bar: {name: Breaker bar, hazards: [bar]}
  lug-socket: {name: Lug socket, hazards: [bar]}
  brass-drift: {name: Brass drift, hazards: [strike]}
  push-bridge: {name: Push bridge}
  push-screw: {name: Push screw, hazards: [press]}
  socket-36: {name: Socket 36, across-flats: 36 mm}
  rig: {name: Rig, hazards: [turning]}
wrenches:
  tw-30: {name: Click wrench 30, range: 6 to 30 N·m, marks: 0.5 N·m, accuracy: 4 %}
  tw-120: {name: Click wrench 120, range: 20 to 120 N·m, marks: 1 N·m, accuracy: 4 %}
  tw-250: {name: Click wrench 250, range: 50 to 250 N·m, marks: 5 N·m, accuracy: 4 %, hazards: [bar]}
gauges:
  dial-indicator: {name: Dial indicator, resolution: 0.01 mm, range: 0 to 10 mm}
  feelers: {name: Feeler gauges, resolution: 0.001 in, range: 0.002 to 0.035 in}
  probe: {name: Contact thermometer, resolution: 1 °C, range: 0 to 200 °C, hazards: [hot]}
`
	testUnit = `unit: md-48
title: MD-48 right-angle drive
variants: {early: {serials: 1 to 3999}, late: {serials: 4000 up}}
parts:
  pinion-nut: {name: Pinion nut, renew: always}
  pinion-race: {name: Pinion race}
fasteners:
  pinion-nut: {thread: M24x1.5, hand: right, seen-from: input end, across-flats: 36 mm}
  cover-bolts: {thread: M8, count: 6, across-flats: 13 mm}
limits:
  lash: {band: 0.15 to 0.25 mm, source: manual, by-variant: {late: {band: 0.10 to 0.20 mm, source: letter}}}
  late-gap: {by-variant: {late: {band: 0.30 to 0.45 mm, source: letter}}}
  nut-torque: {band: 95 to 105 N·m, source: manual}
  cover-torque: {band: 20 to 24 N·m, source: manual}
`
	testFront = "---\ncard: MD48-20\ntitle: Strip the drive\nunit: md-48\nrevision: A\ndate: 2026-10-02\n---\n"
)

// cardOf makes the card of a procedure for one variant, "" for the first, and
// returns it with the messages as lines "slug: message".
func cardOf(t *testing.T, shopText, unitText, text, variant string) (*Card, []string) {
	t.Helper()
	msgs := &diag.List{}
	var s *shop.Shop
	mark := quantity.Point
	if shopText != "" {
		s = shop.Read(syntax.ReadTree(source.NewFile("shop.yaml", []byte(shopText)), msgs), msgs)
		if s.Decimal != 0 {
			mark = s.Decimal
		}
	}
	u := unit.Read(syntax.ReadTree(source.NewFile("md-48/unit.yaml", []byte(unitText)), msgs), mark, msgs)
	reader := procedure.Reader{Mark: mark, Msgs: msgs}
	p := reader.Read(syntax.ReadDoc(source.NewFile("md-48/strip.md", []byte(text)), msgs))
	var v *unit.Variant
	if len(u.Variants) > 0 {
		v = u.Variants[0]
	}
	if variant != "" {
		v = u.Variant(variant)
	}
	lib := &Library{Procedures: []*procedure.Procedure{p}, Picture: func(_ *source.File, path string) (string, []byte, error) {
		if path == "figures/none.png" {
			return "", nil, os.ErrNotExist
		}
		return path, []byte("a picture"), nil
	}}
	c := Make(p, u, s, v, lib, msgs)
	var lines []string
	for _, d := range msgs.Sorted() {
		lines = append(lines, d.Slug+": "+d.Message)
	}
	return c, lines
}

// stepsOf makes the card of steps that stand in one stage.
func stepsOf(t *testing.T, steps string) (*Card, []string) {
	t.Helper()
	return cardOf(t, testShop, testUnit, testFront+"\n## Work\n\n"+steps, "")
}

// clean requires that nothing was reported.
func clean(t *testing.T, messages []string) {
	t.Helper()
	if len(messages) > 0 {
		t.Errorf("messages:\n%s", strings.Join(messages, "\n"))
	}
}

// block writes a typed block.
func block(kind, yaml string) string { return "```" + kind + "\n" + yaml + "\n```\n\n" }

// demoCards makes every card of the demo workspace.
func demoCards(t *testing.T) []*Card {
	t.Helper()
	msgs := &diag.List{}
	root := filepath.Join("..", "..", "..", "..", "procedures")
	spaces, err := workspace.Load(root, []string{"."}, nil, msgs)
	if err != nil {
		t.Fatal(err)
	}
	w := spaces[0]
	s := shop.Read(syntax.ReadTree(w.Shop, msgs), msgs)
	units := map[*source.File]*unit.Unit{}
	for _, f := range w.Units {
		units[f] = unit.Read(syntax.ReadTree(f, msgs), s.Decimal, msgs)
	}
	of := map[*procedure.Procedure]*unit.Unit{}
	lib := &Library{
		Picture: func(from *source.File, path string) (string, []byte, error) {
			name, err := workspace.Resolve(from.Name, path)
			if err != nil {
				return "", nil, err
			}
			data, err := workspace.Read(w.Root, name, workspace.MaxPicture)
			return name, data, err
		}}
	for _, e := range w.Procedures {
		reader := procedure.Reader{Mark: s.Decimal, Msgs: msgs}
		p := reader.Read(syntax.ReadDoc(e.File, msgs))
		of[p] = units[e.Unit]
		lib.Procedures = append(lib.Procedures, p)
	}
	var out []*Card
	for _, p := range lib.Procedures {
		variants := of[p].Variants
		if len(variants) == 0 {
			variants = []*unit.Variant{nil}
		}
		for _, v := range variants {
			out = append(out, Make(p, of[p], s, v, lib, msgs))
		}
	}
	if msgs.Errors() > 0 {
		t.Fatalf("the demo has errors: %s", msgs.Sorted()[0].Message)
	}
	return out
}

// short writes a step's callouts: "bar full, strike short".
func short(s *Step) string {
	var out []string
	for _, c := range s.Callouts {
		how := "full"
		if c.Short {
			how = "short"
		}
		if c.Written != nil {
			how = "written"
		}
		out = append(out, fmt.Sprint(strings.Join(c.IDs, "+"), " ", how))
	}
	return strings.Join(out, ", ")
}
