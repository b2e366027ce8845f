package check

import "benchwright/cmd/benchwright/internal/card"

// states checks that a rotating torque is read in the state in which its limit
// holds.
func states(p *pass) {
	each(p, func(_ *card.Step, i *card.Preload) {
		name := i.Limits.Named
		if name.Name == "" || i.Limit == nil {
			return // limits written in the block hold in its own state
		}
		limit := p.Unit.Limit(name.Name)
		switch {
		case limit.State == nil && limit.Node.Get("state") != nil: // unreadable, which is reported
		case limit.State == nil:
			d := p.msgs.Report("preload-state", name.At, "add `state:` to the limit in the unit, such as `state: {bearings: new, seal: out, gear: out, oil: gear oil, turns: 10}`",
				"`%s` does not say in which state it holds", name.Name)
			d.Related = append(d.Related, related(limit.At, "the limit is declared here"))
		default:
			if here, there, at := i.Block.State.Differences(limit.State); here != "" {
				d := p.msgs.Report("preload-state", at, "name the limit for this state, or bring the drive into the state of the limit",
					"`%s` holds with %s, and here it is read with %s", name.Name, there, here)
				d.Related = append(d.Related, related(limit.State.At, "the state of the limit"))
			}
		}
	})
}
