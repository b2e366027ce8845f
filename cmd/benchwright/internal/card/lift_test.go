package card

import (
	"slices"
	"strings"
	"testing"
)

const liftUnit = `unit: md-48
title: MD-48 right-angle drive
parts:
  crank: {name: Crank, mass: 60 kg}
  wheel: {name: Wheel, mass: 18.0 kg}
  pan: {name: Oil pan, mass: 51 lb}
  cap: {name: Cap, mass: 50 lb}
  plug: {name: Plug}
`

// A part weighs on a card from the shop's limit on, or from 23 kg, which is
// 50.7 lb; what weighs as much as the limit is still lifted by one.
func TestHeavy(t *testing.T) {
	for _, c := range []struct {
		shop string
		want []string
	}{
		{"shop: s\n", []string{"Crank", "Oil pan"}},
		{"shop: s\nlift-limit: 18 kg\n", []string{"Crank", "Oil pan", "Cap"}},
		{"shop: s\nlift-limit: 40 lb\n", []string{"Crank", "Oil pan", "Cap"}},
		{"shop: s\nlift-limit: 39 lb\n", []string{"Crank", "Wheel", "Oil pan", "Cap"}},
		{"shop: s\nlift-limit: 70 kg\n", []string{"Crank", "Oil pan"}}, // never above 23 kg
		{"", []string{"Crank", "Oil pan"}},
	} {
		card, _ := cardOf(t, c.shop, liftUnit, testFront+"\n## Work\n\n### A\n\nWait.\n", "")
		var got []string
		for _, p := range card.Unit.Parts {
			if card.Heavy(p) {
				got = append(got, p.Name)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.shop, got, c.want)
		}
	}
}

// A fit that moves a heavy part brings the callout with what it weighs, also in what
// is left of a short one; one that moves another part into it does not.
func TestLifting(t *testing.T) {
	const press = "\npress: {force: max 40 kN, source: m}"
	steps := "### A\n\n" + block("fit", "part: crank\nonto: wheel"+press) +
		"### B\n\n" + block("fit", "part: crank\noff: wheel"+press) +
		"### C\n\n" + block("fit", "part: plug\ninto: crank"+press) +
		"### D\n\n" + block("fit", "part: wheel\nonto: crank"+press) +
		"### E\n\n" + block("tool", "hold-still: crank\nwith: press") +
		"### F\n\n" + block("fit", "part: crank\nonto: wheel"+press) + block("fit", "part: pan\nonto: wheel"+press) +
		"### G\n\n" + block("fit", "part: crank\nonto: wheel"+press) + block("caution", "level: warning\ncovers: [lift]\nhazard: It tips.\nresult: A crushed foot.\navoid: Sling it.")
	card, messages := cardOf(t, fitShop+"lift-limit: 18 kg\n", liftUnit, testFront+"\n## Work\n\n"+steps, "")
	clean(t, messages)
	one := "Crank, 60\u00a0kg. A heavy part strains the back and can drop."
	want := [][]string{{one}, {one}, nil, nil, nil, {"Crank, 60\u00a0kg; Oil pan, 51\u00a0lb. A heavy part strains the back and can drop."}, {"It tips."}}
	for i, s := range card.Steps() {
		var got []string
		for _, c := range s.Callouts {
			if slices.Contains(c.IDs, "lift") {
				got = append(got, c.Hazard)
				if c.Written == nil && !strings.HasPrefix(c.Avoid, "Lift 60\u00a0kg ") {
					t.Errorf("step %d: %q", s.Number, c.Avoid)
				}
			}
		}
		if !slices.Equal(got, want[i]) {
			t.Errorf("step %d: %q, want %q", s.Number, got, want[i])
		}
	}
	i := slices.IndexFunc(card.Hazards, func(h HazardUse) bool { return h.Symbols[0] == "W015" })
	if i < 0 || card.Hazards[i].Text != "Lifting: Crank 60\u00a0kg; Oil pan 51\u00a0lb" || !slices.Equal(card.Hazards[i].Steps, []int{1, 2, 6, 7}) {
		t.Errorf("the summary is %+v", card.Hazards)
	}
}

// A heavy part to have ready is carried to the bench, though no step moves it.
func TestHeavyPartReady(t *testing.T) {
	front := testFront[:len(testFront)-len("---\n")] + "parts: [plug, crank]\n---\n"
	card, messages := cardOf(t, "shop: s\n", liftUnit, front+"\n## Work\n\n### A\n\nWait.\n", "")
	clean(t, messages)
	if len(card.Hazards) != 1 || card.Hazards[0].Text != "Lifting: Crank 60\u00a0kg" || card.Hazards[0].Steps != nil {
		t.Errorf("the summary is %+v", card.Hazards)
	}
}
