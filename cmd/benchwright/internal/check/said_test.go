package check

import (
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
)

// Words that only look like an order to tighten, to loosen or to oil a thread, or
// to show the work, are left alone.
func TestSaidElsewhere(t *testing.T) {
	const torque = "\n\n```torque\nfastener: pinion-nut\nlimits: 95 to 105 N·m\nsource: m\nthread: dry\n```\n"
	for _, text := range []string{
		"### Nut\n\nTighten the pinion nut until the hub drags.\n",
		"### Nut\n\nTighten the pinion nut by hand.\n",
		"### Nut\n\nTighten the pinion nut as in [step](#nut).\n",
		"### Nut\n\nTighten the pinion nut holder.\n",
		"### Nut\n\nDo not tighten the pinion nut yet.\n",
		"### Nut\n\nShow the apprentice the pinion nut.\n",
		"### Nut\n\nIf it is blue, show it to the shop lead.\n",
		"### Nut\n\nOil the thread of the puller screw." + torque,
		"### Nut\n\nNever oil the thread." + torque,
		"### Unscrew the pinion nut\n\nTurn the input shaft half a turn clockwise.\n",
		"### Unscrew the pinion nut\n\nPaint marks 2 to 4, clockwise.\n",
		"### Unscrew the pinion nut\n\nPull the bar toward you, counterclockwise.\n",
		"### Unscrew the pinion nut\n\nUnscrew the handle of the puller clockwise.\n",
		"### Unscrew the pinion nut\n\nTurn the nut (18) counterclockwise.\n",
	} {
		m := cardOf(t, testShop, testFront+text, "")
		list := &diag.List{}
		for _, rule := range []func(*pass){tightenSaid, showSaid, oilSaid, directions} {
			rule(&pass{Card: m.card, msgs: list})
		}
		for _, d := range list.Sorted() {
			t.Errorf("%q: %s: %s", text, d.Slug, d.Message)
		}
	}
}
