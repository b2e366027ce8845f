package card

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

// Nothing is used in a step that does not stand on the lay-out page with that
// step's number: every tool, wrench, gauge and size across flats.
func TestNothingIsUsedThatIsNotSetOut(t *testing.T) {
	t.Run("demo", func(t *testing.T) {
		used := 0
		for _, c := range demoCards(t) {
			used += setOut(t, c)
		}
		if used < 100 {
			t.Errorf("only %d uses were seen", used)
		}
	})
	t.Run("generated", func(t *testing.T) {
		for seed := range uint64(200) {
			text := generated(rand.New(rand.NewPCG(seed, 48)))
			for _, v := range []string{"early", "late"} {
				c, messages := cardOf(t, testShop, testUnit, text, v)
				if clean(t, messages); setOut(t, c) == 0 && strings.Contains(text, "```") && v == "late" {
					t.Errorf("nothing is used in\n%s", text)
				}
				if t.Failed() {
					t.Fatalf("seed %d, %s:\n%s", seed, v, text)
				}
			}
		}
	})
	t.Run("alone", func(t *testing.T) { // without a shop a tool is no more than its name
		c, messages := cardOf(t, "", testUnit, testFront+"\n## Work\n\n### A\n\n"+useBar+block("torque", "fastener: pinion-nut\nlimits: nut-torque"), "")
		clean(t, messages)
		if n := setOut(t, c); n != 2 || len(c.Kit) != 1 || c.Kit[0].Item.Name != "Breaker bar" {
			t.Errorf("%d uses, kit %v", n, c.Kit)
		}
	})
}

// setOut compares what a card's steps use with its lay-out lists, and returns
// how many uses there were.
func setOut(t *testing.T, c *Card) int {
	t.Helper()
	type use struct {
		what string
		step int
	}
	have := map[use]bool{}
	for _, k := range c.Kit {
		for _, n := range k.Steps {
			have[use{k.Item.ID, n}] = true
		}
	}
	for _, f := range c.Flats {
		for _, n := range f.Steps {
			have[use{f.Size.Text + f.Size.Unit.Symbol, n}] = true
		}
	}
	want := map[use]bool{}
	for _, s := range c.Steps() {
		need := func(what string) { want[use{what, s.Number}] = true }
		for _, i := range s.Items {
			switch i := i.(type) {
			case *Tool:
				for _, n := range slices.Concat(i.Use, i.Assemble) {
					if _, made := c.Assemblies[n.Name]; !made {
						need(n.Name)
					}
				}
				if n := i.With.Name; n != "" {
					if _, made := c.Assemblies[n]; !made {
						need(n)
					}
				}
			case *Torque:
				for _, g := range i.Tightenings() {
					if g.Choice != nil {
						need(g.Choice.Wrench.ID)
					}
				}
				if i.Adapter != nil {
					need(i.Adapter.Tool.ID)
				}
				if i.Fastener != nil && i.Fastener.AcrossFlats != nil {
					need(i.Fastener.AcrossFlats.Text + i.Fastener.AcrossFlats.Unit.Symbol)
				}
			case *Fit:
				for _, w := range i.Warmths() {
					for _, tool := range w.With {
						need(tool.ID)
					}
				}
				for _, p := range i.Pushes() {
					for _, tool := range p.With {
						need(tool.ID)
					}
					if p.Gauge != nil {
						need(p.Gauge.ID)
					}
				}
			case *LeakTest:
				if i.Thermometer != nil {
					need(i.Thermometer.ID)
				}
			case *Shim:
				if i.Stock != nil {
					need(i.Stock.ID)
				}
				if i.Micrometer != nil {
					need(i.Micrometer.ID)
				}
			}
			for _, m := range i.Readings() {
				if m.Gauge != nil {
					need(m.Gauge.ID)
				}
			}
		}
	}
	name := c.Procedure.Number.Name + " " + c.VariantID()
	for w := range want {
		if !have[w] {
			t.Errorf("%s: step %d uses %s, and the lay-out page does not say so", name, w.step, w.what)
		}
	}
	for h := range have {
		if !want[h] {
			t.Errorf("%s: the lay-out page lists %s for step %d, which does not use it", name, h.what, h.step)
		}
	}
	// What an assembly is made of has been set out where it was put together.
	for as, tools := range c.Assemblies {
		for _, i := range tools {
			if !slices.ContainsFunc(c.Kit, func(k *Kit) bool { return k.Item.ID == i.ID }) {
				t.Errorf("%s: %s of %s does not stand on the lay-out page", name, i.ID, as)
			}
		}
	}
	return len(want)
}

// generated writes a procedure of random blocks that is free of errors.
func generated(r *rand.Rand) string {
	pick := func(from ...string) string { return from[r.IntN(len(from))] }
	only := func() string { return pick("", "", "", "\nonly: late", "\nonly: [early, late]") }
	var b strings.Builder
	b.WriteString(testFront)
	made := []string{}
	for stage := range 1 + r.IntN(3) {
		fmt.Fprintf(&b, "\n## Stage %d%s\n\n", stage, pick("", "", "", " {only=late}"))
		inLate := strings.HasSuffix(b.String(), "{only=late}\n\n")
		for step := range 1 + r.IntN(4) {
			fmt.Fprintf(&b, "### Step %d %d\n\n", stage, step)
			for range 1 + r.IntN(3) {
				switch r.IntN(5) {
				case 0:
					b.WriteString(block("tool", "use: ["+pick("breaker-bar", "brass-drift", "rig", "socket-36", "feelers")+", "+pick("lug-socket", "tw-30", "push-screw")+"]"+only()))
				case 1:
					b.WriteString(block("tool", "hold-still: "+pick("pinion-nut", "pinion-race")+"\nwith: "+pick("breaker-bar", "socket-36")+only()))
				case 2:
					b.WriteString(block("torque", pick("fastener: pinion-nut\nlimits: nut-torque", "fastener: cover-bolts\nlimits: cover-torque",
						"fastener: cover-bolts\nvalue: 22 N·m", "fastener: pinion-nut\nwrench: tw-250\nlimits: nut-torque")+only()))
				case 3:
					b.WriteString(block("measurement", pick("of: Lash\ngauge: dial-indicator\nlimits: lash", "of: Gap\ngauge: feelers\nlimits: 0.20 to 0.60 mm\nsource: manual",
						"of: Heat\ngauge: probe\nlimits: none\nbecause: a note\nexpect: 20 to 80 °C")+only()))
				case 4:
					if inLate || len(made) > 2 {
						continue
					}
					as := fmt.Sprintf("pusher-%c", 'a'+len(made))
					made = append(made, as)
					b.WriteString(block("tool", "assemble: [push-bridge, push-screw]\nas: "+as))
					b.WriteString(block("tool", "use: "+as))
				}
			}
		}
	}
	return b.String()
}
