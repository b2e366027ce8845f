package card

import (
	"math/big"
	"testing"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

// The pull stands on the marks of the spring scale, with half the cord in its
// lever: 2.0 N·m on 40 mm with 3 mm of cord are 48.2 N, not 50. What a mark
// makes, taken back, lies inside the torque.
func TestPreloadOnTheScale(t *testing.T) {
	for _, c := range []struct{ scale, limits, drum, cord, low, high string }{
		{"resolution: 1 N, range: 0 to 100 N", "1.0 to 2.0 N·m", "40 mm", "3 mm", "25", "48"},
		{"resolution: 0.2 kgf, range: 0 to 12 kgf", "1.0 to 2.0 N·m", "40 mm", "3 mm", "2.6", "4.8"},    // 2.457 to 4.914
		{"resolution: 0.5 lbf, range: 0 to 20 lbf", "15 to 25 lbf·in", "2 in", "1/8 in", "7.5", "12.0"}, // 7.27 to 12.12
		{"resolution: 1 N, range: 0 to 100 N", "max 2.0 N·m", "40 mm", "3 mm", "", "48"},
	} {
		step, messages := cardOf(t, testShop+"  pull: {name: Spring scale, "+c.scale+"}\n", testUnit,
			testFront+"\n## Work\n\n### A\n\n"+block("preload", "of: Rotating torque\nlimits: "+c.limits+"\nsource: m\nscale: pull\ndrum: "+c.drum+"\ncord: "+c.cord+
				"\nstate: {bearings: new, seal: out, gear: out, oil: oiled, turns: 5}\nif-low: Note it.\nif-high: Note it."), "")
		clean(t, messages)
		p := step.Steps()[0].Items[0].(*Preload)
		if p.Marks == nil {
			t.Errorf("%s on %s: no marks", c.limits, c.scale)
			continue
		}
		if low, high := p.Marks.Ends(quantity.Point); low != c.low || high != c.high {
			t.Errorf("%s on %s: %s to %s, want %s to %s", c.limits, c.scale, low, high, c.low, c.high)
		}
		newton, _ := quantity.UnitOf("N·m")
		limits := p.Limit.Band.In(newton)
		for _, mark := range []*big.Rat{p.Marks.Low, p.Marks.High} {
			if mark == nil {
				continue
			}
			torque := bench.RotatingTorque(quantity.Value{Number: quantity.Number{Value: mark}, Unit: p.Gauge.Scale.Unit}, *p.Block.Drum, *p.Block.Cord)
			if limits.Low != nil && torque.Cmp(limits.Low) < 0 || torque.Cmp(limits.High) > 0 {
				t.Errorf("%s on %s: %s makes %s N·m", c.limits, c.scale, mark, torque.FloatString(4))
			}
		}
	}
}
