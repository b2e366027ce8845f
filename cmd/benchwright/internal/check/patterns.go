package check

import (
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/unit"
)

// faultPlaces names the position of each fault.
var faultPlaces = map[unit.Fault]string{unit.High: "high", unit.Low: "low", unit.Toe: "at the toe", unit.Heel: "at the heel"}

// patterns checks that every picture of a contact pattern has a correction,
// and that correcting ends.
func patterns(p *pass) {
	each(p, func(_ *card.Step, c *card.Pattern) {
		if c.AsFound {
			return
		}
		p.wrongPack(c)
		var keys, where []string
		for _, f := range unit.Faults {
			if !c.Branches[f].Stated() {
				keys, where = append(keys, "`"+string(f)+": {go: STEP}`"), append(where, faultPlaces[f])
			}
		}
		switch {
		case len(keys) > 0:
			p.msgs.Report("branch-missing", c.At, "add "+strings.Join(keys, ", "), "nothing says where to go when the pattern is %s", diag.Series(where, "or"))
		case c.MaxRepeats == 0:
			p.msgs.Report("branch-missing", c.At, "add `again: 3` and `then:` with what to do when it is still wrong", "nothing says how often at most the pattern is corrected")
		}
	})
}

// wrongPack refuses a picture that leads to a step making another pack than
// the one that the unit changes for it. A step that makes no pack is allowed.
func (p *pass) wrongPack(c *card.Pattern) {
	if c.Contact == nil {
		return
	}
	for _, f := range unit.Faults {
		to := c.Go[f]
		if to == nil {
			continue
		}
		made, right := "", false
		for _, i := range to.Items {
			if s, ok := i.(*card.Shim); ok && s.Pack != nil {
				made, right = s.Pack.ID, right || s.Pack == c.Contact.Corrections[f].Pack
			}
		}
		if made != "" && !right {
			d := p.msgs.Report("contact-step", c.Branches[f].Go.At, "name the step that makes `"+c.Contact.Corrections[f].Pack.ID+"`, or look the pack up again in the manual",
				"this step makes `%s`, and the unit changes `%s` when the pattern is %s", made, c.Contact.Corrections[f].Pack.ID, faultPlaces[f])
			d.Related = append(d.Related, related(c.Contact.Corrections[f].At, "the unit says it here"))
		}
	}
}
