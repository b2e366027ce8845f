package check

import (
	"os"
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
)

const (
	testShop = `shop: Fallow Lane Drive Works
torque-tolerance: 5 %
tools:
  breaker-bar: {name: Breaker bar, hazards: [bar]}
  push-bridge: {name: Push bridge}
  push-screw: {name: Push screw}
  hoist: {name: Hoist, hazards: [hanging]}
  drain-pan: {name: Drain pan}
  socket-13: {name: Socket 13, across-flats: 13 mm}
  socket-18: {name: Socket 18, across-flats: 18 mm}
  socket-half: {name: Socket 1/2 in, across-flats: 1/2 in}
  socket-127: {name: Socket 12.7, across-flats: 12.7 mm}
wrenches:
  tw-30: {name: Click wrench 30, range: 6 to 30 N·m, marks: 0.5 N·m, accuracy: 4 %}
  tw-120: {name: Click wrench 120, range: 20 to 120 N·m, marks: 1 N·m, accuracy: 4 %}
  tw-plain: {name: Plain wrench, range: 150 to 300 N·m, marks: 5 N·m}
gauges:
  dial-indicator: {name: Dial indicator, resolution: 0.01 mm, range: 0 to 10 mm}
  calipers: {name: Calipers, resolution: 0.05 mm, range: 0 to 150 mm}
  rule: {name: Steel rule, resolution: 0.5 mm, range: 0 to 300 mm}
  bore-gauge: {name: Bore gauge, resolution: 0.001 mm, range: 20 to 30 mm, uncertainty: 0.02 mm}
`
	testUnit = `unit: md-48
title: MD-48 right-angle drive
variants: {early: {serials: 1 to 3999}, late: {serials: 4000 up}}
parts:
  pinion-nut: {name: Pinion nut}
  pinion-race: {name: Pinion head race}
  rotor: {name: Rotor, mass: 40 kg}
  rotor-cage: {name: Rotor cage, mass: 30 kg}
  rotor-cover: {name: Rotor cover, mass: 2 kg}
fasteners:
  pinion-nut: {thread: M24x1.5, hand: right, seen-from: input end, duty: bearing-nut}
  ring: {name: Ring retainer, thread: M160x2, hand: left, seen-from: output end, duty: ring}
  plain-bolt: {thread: M8, duty: gasket}
  cover-bolts: {thread: M8, across-flats: 13 mm, duty: gasket}
  cap-bolts: {thread: 5/16-18 UNC, across-flats: 1/2 in, duty: gasket}
limits:
  lash: {band: 0.15 to 0.25 mm, source: manual}
  late-gap: {by-variant: {late: {band: 0.30 to 0.45 mm, source: letter}}}
  nut-torque: {band: 95 to 105 N·m, source: manual}
  late-torque: {by-variant: {late: {band: 95 to 105 N·m, source: letter}}}
`
	testFront = "---\ncard: MD48-20\ntitle: Strip the drive\nunit: md-48\nrevision: A\ndate: 2026-10-02\n---\n\n## Work\n\n"
)

// A made is a card with what its rules need.
type made struct {
	card *card.Card
	lib  *card.Library
	msgs *diag.List // of reading
}

// cardOf makes the card of steps for a variant.
func cardOf(t *testing.T, shopText, text, variant string) made {
	t.Helper()
	msgs := &diag.List{}
	var s *shop.Shop
	if shopText != "" {
		s = shop.Read(syntax.ReadTree(source.NewFile("shop.yaml", []byte(shopText)), msgs), msgs)
	}
	u := unit.Read(syntax.ReadTree(source.NewFile("md-48/unit.yaml", []byte(testUnit)), msgs), quantity.Point, msgs)
	reader := procedure.Reader{Mark: quantity.Point, Msgs: msgs}
	p := reader.Read(syntax.ReadDoc(source.NewFile("md-48/strip.md", []byte(text)), msgs))
	lib := &card.Library{Procedures: []*procedure.Procedure{p},
		Picture: func(*source.File, string) (string, []byte, error) { return "", nil, os.ErrNotExist }}
	return made{card.Make(p, u, s, u.Variant(variant), lib, msgs), lib, msgs}
}

// found runs one rule over a card and returns "slug [text at the place]" for
// each message.
func (m made) found(rule func(*pass)) []string {
	list := &diag.List{}
	rule(&pass{Card: m.card, msgs: list})
	var out []string
	for _, d := range list.Sorted() {
		out = append(out, d.Slug+" ["+d.At.Text()+"]")
	}
	return out
}

// A trial is what stands in a card's steps, and what a rule says of it: one
// "slug [text at the place]" a message.
type trial struct {
	steps string
	want  []string
}

// try runs a rule over trials of the early variant.
func try(t *testing.T, rule func(*pass), trials []trial) {
	t.Helper()
	for _, c := range trials {
		m := cardOf(t, testShop, testFront+c.steps, "early")
		if m.msgs.Len() > 0 {
			t.Errorf("%q cannot be read: %s", c.steps, m.msgs.Sorted()[0].Message)
		}
		if got := m.found(rule); !slices.Equal(got, c.want) {
			t.Errorf("%q gives %q, want %q", c.steps, got, c.want)
		}
	}
}

// prose makes a step of one instruction.
func prose(text string) string { return "### Step\n\n" + text + "\n\n" }

// block makes a step of one typed block.
func block(kind, yaml string) string { return "### Step\n\n```" + kind + "\n" + yaml + "\n```\n\n" }

func say(s ...string) []string { return s }

// Every rule of the room has been tried here, and each by itself passes a card
// that keeps it.
func TestCleanCard(t *testing.T) {
	m := cardOf(t, testShop, testFront+prose("Wipe the flange dry.")+block("torque", "fastener: pinion-nut\nlimits: nut-torque\nthread: oiled")+
		block("measurement", "of: Lash\ngauge: dial-indicator\nlimits: lash\nif-low: Note it.\nif-high: Note it."), "early")
	list := &diag.List{}
	Card(m.card, list)
	Procedure(m.card.Procedure, []*card.Card{m.card}, m.lib, true, list)
	if list.Len() > 0 {
		t.Error(list.Sorted()[0].Message)
	}
}

// The rules about words hold for English alone.
func TestOtherLanguage(t *testing.T) {
	text := testFront + prose("Remove the nut and press the race out with the torch approximately, if it is hot, one two three four five six seven eight nine ten eleven. Lift the rotor out.")
	for _, rule := range []func(*pass){longSentences, twoActions, lateConditions, vagueWords, coveredHazards, liftedParts} {
		if got := cardOf(t, testShop, text, "early").found(rule); len(got) == 0 {
			t.Error("the text breaks no rule in English")
		}
		if got := cardOf(t, "language: de\n"+testShop, text, "early").found(rule); len(got) > 0 {
			t.Errorf("in German: %q", got)
		}
	}
}

// A rule's message does not name the variant: messages that all variants have
// in common are joined.
func TestMessagesOfVariants(t *testing.T) {
	text := testFront + block("measurement", "of: Gap\ngauge: rule\nlimits: lash")
	var said [2][]string
	for i, v := range []string{"early", "late"} {
		m := cardOf(t, testShop, text, v)
		list := &diag.List{}
		Card(m.card, list)
		for _, d := range list.Sorted() {
			said[i] = append(said[i], d.Message)
			if strings.Contains(d.Message, v) {
				t.Errorf("a message names the variant: %s", d.Message)
			}
		}
	}
	if !slices.Equal(said[0], said[1]) || len(said[0]) == 0 {
		t.Errorf("%q", said)
	}
}
