package compile

import (
	"fmt"
	"strings"
	"testing"
)

// An overdue gauge or wrench is said once, with the cards that take it: not on
// the day itself, not where no card takes it, and never without a stated day.
func TestOverdue(t *testing.T) {
	const step = "```measurement\nof: Backlash\nlimits: output-lash\ngauge: dial-indicator\nif-low: Note it.\nif-high: Note it.\n```\n"
	const torque = "```torque\nfastener: pinion-nut\nlimits: pinion-nut-torque\nthread: dry\n```\n"
	another := func(number int) string {
		return fmt.Sprintf("---\ncard: MD48-%d\ntitle: Test\nunit: md-48\nrevision: A\ndate: 2026-10-02\n---\n\n## Flange\n\n### Read it\n\n%s", number, step)
	}
	for _, c := range []struct {
		step, on, dial, wrench string
		more                   int
		want                   []string
	}{
		{step, "2026-11-25", "2026-11-01", "", 0, []string{"`dial-indicator` fell due on 2026-11-01, before 2026-11-25, and MD48-20 takes it"}},
		{step, "2026-11-25", "2026-11-25", "", 0, nil},
		{step, "2026-11-25", "2026-11-24", "", 0, []string{"`dial-indicator` fell"}},
		{step, "2026-11-25", "2027-01-01", "2026-11-01", 0, nil}, // the wrench is not taken
		{step, "", "2026-11-01", "2026-11-01", 0, nil},
		{torque, "2026-11-25", "2026-11-01", "2026-11-01", 0, []string{"`tw-120` fell due on 2026-11-01, before 2026-11-25, and MD48-20 takes it"}},
		{step, "2026-11-25", "2026-11-01", "", 2, []string{"and MD48-20, MD48-30 and MD48-31 take it"}},
		{step, "2026-11-25", "2026-11-01", "", 7, []string{"and MD48-20, MD48-30, MD48-31, MD48-32, MD48-33, MD48-34 and others take it"}},
	} {
		files := sample{"step": c.step}.files(t)
		for i := range c.more {
			files[fmt.Sprintf("md-48/test-%d.md", i)] = another(30 + i)
		}
		dir := write(t, files)
		due := func(old, day string) {
			if day != "" {
				change(t, dir, "shop.yaml", old, old+", due: "+day)
			}
		}
		due("range: 0 to 10 mm", c.dial)
		due("marks: 1 N·m", c.wrench)
		list := messages(t, dir, Options{WorkDate: c.on})
		if len(list) != len(c.want) {
			t.Errorf("%+v: %s", c, shown(list))
			continue
		}
		for i, d := range list {
			if !strings.Contains(d.Message, c.want[i]) {
				t.Errorf("%q, want %q", d.Message, c.want[i])
			}
		}
	}
	for text, ok := range map[string]bool{"2026-11-25": true, "2024-02-29": true, "2026-02-29": false, "2026-13-01": false, "25-11-2026": false, "2026-1-5": false, "tomorrow": false, "": true} {
		if got := (Options{WorkDate: text}).Check() == nil; got != ok {
			t.Errorf("--on %q: %v", text, got)
		}
	}
}
